/**
 * Where do the three records of one truth differ? Counter, rate × time, and what was left in the container are shown side by
 * side; a difference beyond local policy's tolerance is asked about. [ST11]
 */
import { compare } from '../base/fraction.ts';
import type { Instant } from '../base/instant.ts';
import { NOTHING, share, subtract, type Volume, volume } from '../base/volume.ts';
import { ask, type Policy, type PolicyContext } from '../policy/policy.ts';
import type { Course } from './course.ts';
import { sourceOf } from './course.ts';
import { type Container, forPatient, type TakenDown } from './readings/containers.ts';
import type { Contradiction } from './readings/contradictions.ts';
import { deliveredUpTo } from './readings/delivery.ts';
import { orderInForce } from './readings/orders.ts';
import { receivedBy } from './received.ts';
import { lastOf, told } from './trail.ts';

/** One container by all that is known of it. */
export type ContainerAccount = {
  readonly container: Container;
  readonly takenDownAt: Instant | null;
  /** Drawn from it by the pump's counter where that was read, else by rate × time, or as given by hand. */
  readonly drawn: Volume;
  readonly byRate: Volume;
  /** What was filled less prime less drawn; below nothing where more was drawn than went in. */
  readonly remaining: Volume;
  /** What was found in it; null where nobody looked, or it hangs. */
  readonly left: Volume | null;
};

/** Every container that hung or hangs, in that order; hung twice it is one. */
export function containerAccounts(course: Course, at: Instant): readonly ContainerAccount[] {
  const delivered = Map.groupBy(deliveredUpTo(course.delivery, at, sourceOf(course)), (one) => one.container);
  const { down, feedUp } = course.containers;
  const all: readonly (Container & Partial<TakenDown>)[] = [
    ...told(down).filter((one) => one.holds === 'feed'),
    ...(feedUp === null ? [] : [feedUp]),
  ];
  return [...Map.groupBy(all, (one) => one.id).values()].map((hung) => {
    const last = hung.at(-1)!;
    const own = delivered.get(last.id) ?? [];
    const drawn = volume(own.reduce((total, one) => total + one.volume, 0));
    return {
      container: last,
      takenDownAt: last.takenDownAt ?? null,
      drawn,
      byRate: volume(own.reduce((total, one) => total + one.byRate, 0)),
      remaining: subtract(subtract(last.filled, last.primed), drawn),
      left: last.left ?? null,
    };
  });
}

export type Tolerance = (expected: Volume, is: Volume) => boolean;

/** [ST11] Whether two records agree: within the greater of a share of what is expected and a volume. Null: policy is silent. */
export function toleranceOf(policy: Policy, context: PolicyContext): Tolerance | null {
  const part = ask(policy, 'account.tolerance.fraction', context);
  const least = ask(policy, 'account.tolerance.volume', context);
  if (!part.known && !least.known) return null;
  return (expected, is) => {
    const byShare = part.known ? share(expected, part.value) : NOTHING;
    const most = least.known ? Math.max(byShare, least.value) : byShare;
    return Math.abs(is - expected) <= most;
  };
}

const found = (
  code: Contradiction['code'],
  at: Instant,
  entries: readonly string[],
  data: Contradiction['data'],
): Contradiction => ({ code, at, entries, data });

function ofCounter(course: Course, agree: Tolerance): readonly Contradiction[] {
  return told(course.delivery.counted)
    .filter((one) => !agree(one.byRate, one.counted))
    .map(({ until, entry, counted, byRate, from }) =>
      found('counter-against-rate', until, [entry], { from, until, counted, byRate }),
    );
}

function ofContainers(course: Course, at: Instant, agree: Tolerance): readonly Contradiction[] {
  return containerAccounts(course, at).flatMap((one) => {
    const { container, drawn, remaining, left, takenDownAt } = one;
    const held = forPatient(container);
    const data = { container: container.id, held, drawn, remaining, left };
    if (left !== null && !agree(subtract(held, left), drawn))
      return [found('left-against-delivered', takenDownAt ?? at, [], data)];
    return remaining < 0 && !agree(held, drawn)
      ? [found('more-than-was-filled', takenDownAt ?? at, [], data)]
      : [];
  });
}

/** What the pump was set to say, and what it is recorded as doing since. */
function ofReadBack({ readBack, delivery: { running } }: Course): readonly Contradiction[] {
  if (readBack === null || running === null || readBack.at < running.since) return [];
  const { rate, volumeToBeDelivered } = readBack.fact;
  return rate === running.rate
    ? []
    : [
        found('read-back-differs', readBack.at, [readBack.entry], {
          readBack: rate,
          running: running.rate,
          volumeToBeDelivered,
        }),
      ];
}

function ofOrders(course: Course, at: Instant): readonly Contradiction[] {
  const inForce = orderInForce(course.orders, at);
  if (inForce.kind === 'fork') {
    const last = lastOf(course.orders.told);
    return [
      found('orders-fork', last?.happenedAt ?? at, last === null ? [] : [last.id], {
        orders: inForce.orders.map((one) => one.id),
      }),
    ];
  }
  const { feedUp } = course.containers;
  const ordered = inForce.kind === 'one' ? inForce.order.feed : null;
  if (feedUp === null || ordered === null) return [];
  const sameStrength = compare(feedUp.strength, ordered.strength) === 0;
  return feedUp.feed === ordered.id && sameStrength
    ? []
    : [
        found('other-feed-than-ordered', feedUp.putUpAt, [], {
          container: feedUp.id,
          up: { feed: feedUp.feed, strength: feedUp.strength },
          ordered: { feed: ordered.id, strength: ordered.strength },
        }),
      ];
}

function ofLosses(course: Course, at: Instant): readonly Contradiction[] {
  const { over } = receivedBy(course, at);
  const last = lastOf(course.liquids.lostBefore);
  return over > 0 && last !== null ? [found('lost-more-than-received', last.at, [], { over })] : [];
}

/** Everything that contradicts, in the order in which it showed. */
export function contradictionsAt(
  course: Course,
  policy: Policy,
  context: PolicyContext,
): readonly Contradiction[] {
  const agree = toleranceOf(policy, context);
  const { at } = context;
  return [
    ...told(course.contradictions),
    ...(agree === null ? [] : [...ofCounter(course, agree), ...ofContainers(course, at, agree)]),
    ...ofReadBack(course),
    ...ofOrders(course, at),
    ...ofLosses(course, at),
  ].toSorted((a, b) => a.at - b.at);
}
