/** [OR4] [OR5] [OR21] [OR29] [OR50] [OR54] Do the moments of the order fit each other, and the moment it is looked at? */
import { type Instant, later } from '../../base/instant.ts';
import type { Hold, Order, Problem } from '../order.ts';
import { problem } from '../problem.ts';
import type { Review } from '../review.ts';

const is = (wrong: boolean, found: () => Problem): readonly Problem[] => (wrong ? [found()] : []);

/** ISO days compare as text. */
function contradictions({ order, today }: Review): readonly Problem[] {
  const { birthDate, dosingWeight } = order.patient;
  const weighed = dosingWeight?.on ?? null;
  const { startsAt, endsAt, feed } = order;
  const wrong = (what: string, path: Problem['path'], first: unknown, second: unknown) => () =>
    problem('order/dates-contradict', path, { what, earlier: first, later: second });
  const weighedAt = ['patient', 'dosingWeight', 'on'];
  return [
    ...is(
      birthDate !== null && birthDate > today,
      wrong('born-later', ['patient', 'birthDate'], today, birthDate),
    ),
    ...is(weighed !== null && weighed > today, wrong('weighed-later', weighedAt, today, weighed)),
    ...is(
      weighed !== null && birthDate !== null && weighed < birthDate,
      wrong('weighed-before-birth', weighedAt, weighed, birthDate),
    ),
    ...is(
      startsAt !== null && endsAt !== null && endsAt <= startsAt,
      wrong('ends-before-start', ['endsAt'], endsAt, startsAt),
    ),
    ...is(
      feed !== null &&
        feed.preparedAt !== null &&
        feed.expiresAt !== null &&
        feed.expiresAt <= feed.preparedAt,
      wrong('expires-before-prepared', ['feed', 'expiresAt'], feed?.expiresAt, feed?.preparedAt),
    ),
  ];
}

/** When feed would first be given: now, or when the order begins. */
const firstGiven = ({ order, at }: Review): Instant =>
  order.startsAt === null ? at : later(at, order.startsAt);

function feedInTime(review: Review): readonly Problem[] {
  const { feed } = review.order;
  if (feed === null) return [];
  const at = firstGiven(review);
  const { expiresAt, preparedAt } = feed;
  return [
    ...is(expiresAt !== null && expiresAt <= at, () =>
      problem('order/feed-expired', ['feed', 'expiresAt'], { expiresAt, at }),
    ),
    ...is(preparedAt !== null && preparedAt > at, () =>
      problem('order/feed-prepared-later', ['feed', 'preparedAt'], { preparedAt, at }),
    ),
  ];
}

const endOf = (hold: Hold): number => hold.until ?? Number.POSITIVE_INFINITY;

/** Each pair once: overlapping holds count once, which is worth saying, for one of them may be meant for another day. */
function overlapping(holds: readonly Hold[]): readonly Problem[] {
  const sorted = holds.filter((hold) => endOf(hold) > hold.from).toSorted((a, b) => a.from - b.from);
  const found: Problem[] = [];
  let longest: Hold | undefined;
  for (const hold of sorted) {
    if (longest !== undefined && hold.from < endOf(longest)) {
      found.push(problem('order/holds-overlap', ['holds'], { holds: [longest.id, hold.id] }));
    }
    if (longest === undefined || endOf(hold) > endOf(longest)) longest = hold;
  }
  return found;
}

function holds({ holds: all }: Order): readonly Problem[] {
  const seen = new Set<string>();
  const each = all.flatMap((hold, i) => {
    const twice = seen.has(hold.id);
    seen.add(hold.id);
    const { id, from, until, why } = hold;
    return [
      ...is(twice, () =>
        problem('order/hold-contradicts', ['holds', i, 'id'], { what: 'id-twice', hold: id }),
      ),
      ...is(until !== null && until <= from, () =>
        problem('order/hold-contradicts', ['holds', i, 'until'], {
          what: 'ends-before-start',
          hold: id,
          from,
          until,
        }),
      ),
      ...is(until === null, () =>
        problem('order/hold-without-end', ['holds', i, 'until'], { hold: id, from, why }),
      ),
    ];
  });
  return [...each, ...overlapping(all)];
}

function beginning({ order, at }: Review): readonly Problem[] {
  const { startsAt, endsAt, prescribedAt } = order;
  const begins = startsAt ?? at;
  return [
    ...is(endsAt !== null && endsAt <= at, () => problem('order/ended', ['endsAt'], { endsAt, at })),
    ...is(startsAt === null, () => problem('order/no-start', ['startsAt'])),
    ...is(prescribedAt !== null && prescribedAt > begins, () =>
      problem('order/prescribed-later', ['prescribedAt'], { prescribedAt, startsAt: begins }),
    ),
  ];
}

export const dates = (review: Review): readonly Problem[] => [
  ...contradictions(review),
  ...beginning(review),
  ...feedInTime(review),
  ...holds(review.order),
];
