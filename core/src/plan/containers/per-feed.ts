/**
 * What is poured for each feed where every feed is a pour of its own? Its volume, and the prime where the set is new then:
 * nothing hangs on from one feed to the next.
 */
import { after, between, type Duration, duration, type Instant } from '../../base/instant.ts';
import { add, givenSoFar, NOTHING, subtract, type Volume, volume } from '../../base/volume.ts';
import { ARITHMETIC, input, shownInstant, shownVolume, type Worked, worked } from '../../base/working.ts';
import { leastFill, mostOf } from '../optimum/filling.ts';
import type { Infeasible, PlannedContainer } from '../plan.ts';
import type { Feeding } from '../tasks/feeding.ts';
import { fillingOf, type Pouring, workedFill } from './fill.ts';
import { type ContainerLimits, type FixedLimit, takeDown } from './limits.ts';
import { contentOf } from './planned.ts';
import { NO_PRIME, type SetRule, setDue } from './sets.ts';

/** A feed and the visit at which it begins. */
export type PouredFeed = { readonly feeding: Feeding; readonly at: Instant };

type Pour = {
  readonly limits: ContainerLimits;
  readonly sets: SetRule;
  readonly pouring: Pouring;
  readonly feed: string;
  readonly closed: boolean;
};

const from = (one: Worked<unknown>) => ({ kind: 'working', working: one.working }) as const;

const lasts = ({ feeding: { whole } }: PouredFeed): Duration => between(whole.from, whole.until);

/** The set that a feed hangs on: the one in use if it is not due before the feed is done, else a new one. */
function setFor(
  sets: SetRule,
  inUse: FixedLimit | null,
  feed: PouredFeed,
): { newSet: boolean; due: FixedLimit | null } {
  if (sets.kind === 'none') return { newSet: false, due: null };
  if (sets.kind === 'with-each') return { newSet: true, due: setDue(feed.at, sets.limit) };
  const end = after(feed.at, lasts(feed));
  return inUse !== null && inUse.at >= end
    ? { newSet: false, due: inUse }
    : { newSet: true, due: setDue(feed.at, sets.limit) };
}

function pourFor(pour: Pour, feed: PouredFeed, set: ReturnType<typeof setFor>): PlannedContainer {
  const { feeding, at } = feed;
  const need = feeding.volume;
  const prime = set.newSet && pour.sets.kind !== 'none' ? pour.sets.prime : NO_PRIME;
  const filling = fillingOf(pour.pouring);
  const least = leastFill(filling, add(need.value, prime.value));
  const poured = volume(Math.min(least, mostOf(filling)));
  const fill = workedFill(pour.pouring, { fill: poured, prime, need, asMuchAsLasts: false });
  const content = contentOf(fill, prime);
  const end: FixedLimit = {
    because: 'feed-ends',
    at: after(at, lasts(feed)),
    basis: { kind: 'order', path: 'regimen' },
  };
  const down = takeDown(pour.limits, at, set.due === null ? [end] : [set.due, end]);
  const inTime = givenSoFar(need.value, duration(down.by.value - at), lasts(feed));
  const deliver = volume(Math.max(0, Math.min(content.value, inTime)));
  const inputs = [
    input('V_in', shownVolume(content.value), from(content)),
    input('V_feed', shownVolume(need.value), from(need)),
  ];
  return {
    putUpAt: at,
    alreadyUp: false,
    feed: pour.feed,
    closed: pour.closed,
    fill,
    newSet: set.newSet,
    prime,
    volumeToDeliver: worked(deliver, shownVolume, {
      symbol: 'V_deliver',
      equation: 'V_deliver = min(V_in, V_feed in the time it may hang)',
      inputs,
      rule: 'PL20',
      basis: ARITHMETIC,
    }),
    runsDryAt:
      content.value <= inTime
        ? worked(end.at, shownInstant, {
            symbol: 't_dry',
            equation: 't_dry = t_up + t_feed',
            inputs: [input('t_up', shownInstant(at), ARITHMETIC)],
            rule: 'PL18',
            basis: ARITHMETIC,
          })
        : null,
    runsDryEarliest: null,
    takeDownBy: down.by,
    because: down.because,
    nextAt: null,
    leftOver: worked(subtract(content.value, deliver), shownVolume, {
      symbol: 'V_left',
      equation: 'V_left = V_in − V_deliver',
      inputs: [...inputs.slice(0, 1), input('V_deliver', shownVolume(deliver), ARITHMETIC)],
      rule: 'PL19',
      basis: ARITHMETIC,
    }),
    cartons: [],
  };
}

export type Poured = {
  readonly containers: readonly PlannedContainer[];
  readonly infeasible: readonly Infeasible[];
};

/** What of a feed cannot be given from one pour: it is more than fits, or would hang past its limit. */
function shortOf(
  { feeding, at }: PouredFeed,
  { volumeToDeliver }: PlannedContainer,
  lifeTooShort: boolean,
): readonly Infeasible[] {
  const missing = subtract(feeding.volume.value, volumeToDeliver.value);
  if (missing <= NOTHING) return [];
  const code = lifeTooShort ? 'limit-too-short' : 'feed-over-capacity';
  return [{ rule: 'PL20', code, about: 'give-feed', at, data: { missing: missing as Volume } }];
}

/** [PL20] One pour for each feed, the set changed with the first feed that it would not last through. */
export function pourPerFeed(pour: Pour, feeds: readonly PouredFeed[]): Poured {
  let inUse =
    pour.sets.kind === 'timed' && pour.sets.putUpAt !== null
      ? setDue(pour.sets.putUpAt, pour.sets.limit)
      : null;
  const containers: PlannedContainer[] = [];
  const infeasible: Infeasible[] = [];
  for (const feed of feeds) {
    const set = setFor(pour.sets, inUse, feed);
    inUse = set.due;
    const poured = pourFor(pour, feed, set);
    containers.push(poured);
    infeasible.push(...shortOf(feed, poured, poured.because !== 'feed-ends'));
  }
  return { containers, infeasible };
}
