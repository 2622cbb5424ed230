/** [OR12] [OR15] [OR16] [OR17] [OR18] [OR19] [OR20] [OR42] [OR43] Is this feed the one that is meant, and can it be given like that? */

import { nearest } from '../../base/document-issues.ts';
import type { Feed } from '../../feeds/feed.ts';
import { compare, type Exact, of, ofFraction, over, times } from '../../reckon/exact.ts';
import type { Order, Problem } from '../order.ts';
import { problem } from '../problem.ts';
import type { Review } from '../review.ts';

type OrderedFeed = NonNullable<Order['feed']>;

/**
 * The densities of all published classes lie within a factor of three of each other (0.67 to 2.0 kcal/mL, S31, S95), so
 * that one five times off is no other feed but another unit or a lost decimal mark.
 */
const SLIP = of(5);

/** The power of ten that a ratio is nearest to, as `1000` or `1/1000`. */
function factorOf(ratio: Exact): string {
  const [big, up] = compare(ratio, of(1)) >= 0 ? [ratio, true] : [over(of(1), ratio), false];
  const powers = [10, 100, 1_000, 10_000];
  const factor = powers.findLast((power) => compare(times(big, of(3)), of(power)) >= 0) ?? 10;
  return up ? `${factor}` : `1/${factor}`;
}

/** The number must be credible first. */
export function density({ order, feed }: Review): readonly Problem[] {
  const stated = order.feed?.statedKcalPerMl ?? null;
  if (feed === null || stated === null || compare(ofFraction(stated), ofFraction(feed.energyKcalPerMl)) === 0)
    return [];
  const path = ['feed', 'statedKcalPerMl'];
  const says = { value: stated, listed: feed.energyKcalPerMl, unit: 'kcal/mL', feed: feed.id };
  // A feed without energy has no ratio: whatever else is stated is not it.
  if (feed.energyKcalPerMl.n === 0) return [problem('order/density-differs', path, says)];
  const ratio = over(ofFraction(stated), ofFraction(feed.energyKcalPerMl));
  const slipped = compare(ratio, SLIP) >= 0 || compare(times(ratio, SLIP), of(1)) <= 0;
  return [
    slipped
      ? problem('order/density-off', path, { ...says, factor: factorOf(ratio) })
      : problem('order/density-differs', path, says),
  ];
}

const isDiluted = ({ strength }: OrderedFeed): boolean => strength.n !== strength.d;

/**
 * [OR18] A closed container is spiked as it comes: nothing can be mixed into it. [OR19] Where the feed list has the same
 * feed in cartons it can be poured and mixed, and is an open feed from then on.
 */
function closed(ordered: OrderedFeed, feed: Feed): readonly Problem[] {
  const mixed = [
    ...(isDiluted(ordered) ? ['water'] : []),
    ...ordered.additives.map((additive) => additive.name),
  ];
  if (feed.system !== 'closed' || mixed.length === 0) return [];
  const hasCartons = feed.packs.some((pack) => pack.kind === 'carton');
  return [
    problem(hasCartons ? 'order/closed-poured' : 'order/closed-mixed', ['feed'], {
      mixed,
      feed: feed.id,
      strength: ordered.strength,
    }),
  ];
}

const strength = ({ strength: parts }: OrderedFeed): readonly Problem[] =>
  parts.n <= 0 || parts.n > parts.d
    ? [problem('order/strength-impossible', ['feed', 'strength'], { value: parts })]
    : [];

const worthKnowing = (ordered: OrderedFeed, feed: Feed): readonly Problem[] => [
  // S2: full strength from the start; dilution is unnecessary.
  ...(isDiluted(ordered)
    ? [problem('order/diluted', ['feed', 'strength'], { strength: ordered.strength })]
    : []),
  ...(feed.system === 'powder' ? [problem('order/powder', ['feed', 'id'], { feed: feed.id })] : []),
];

/** [OR20] The label on human milk is matched with a number, not with a name alone. */
const humanMilk = ({ patient }: Order, feed: Feed): readonly Problem[] =>
  feed.system === 'human-milk' && patient.identifiers.length === 0
    ? [problem('order/human-milk-no-number', ['patient', 'identifiers'], { feed: feed.id })]
    : [];

export function feed({ order, feeds, feed: listed }: Review): readonly Problem[] {
  const ordered = order.feed;
  if (ordered === null) return [];
  if (listed === null) {
    const near = nearest(
      ordered.id,
      feeds.feeds.map((one) => one.id),
    );
    return [
      problem('order/feed-not-listed', ['feed', 'id'], { feed: ordered.id, nearest: near }),
      ...strength(ordered),
    ];
  }
  return [
    ...strength(ordered),
    ...closed(ordered, listed),
    ...humanMilk(order, listed),
    ...worthKnowing(ordered, listed),
  ];
}
