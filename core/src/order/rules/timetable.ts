/** [OR24] [OR25] [OR3] Are the named times of the order on the clock, each once, and far enough apart? */
import { fraction } from '../../base/fraction.ts';
import { MINUTE } from '../../base/instant.ts';
import type { TimeOfDay } from '../../base/zone.ts';
import { compare, ofFraction, over, toFraction } from '../../reckon/exact.ts';
import { CREDIBLE } from '../credible.ts';
import { strengthOf } from '../mixture.ts';
import type { Order, Problem, Regimen } from '../order.ts';
import { oneFeed, windowOf } from '../per-day.ts';
import { problem } from '../problem.ts';
import type { Review } from '../review.ts';

type Path = Problem['path'];
type Timed = { readonly path: Path; readonly times: readonly TimeOfDay[] };

const MINUTES_A_DAY = 1_440;

function timesOfRegimen(regimen: Regimen | null): readonly Timed[] {
  switch (regimen?.kind) {
    case 'continuous':
      return regimen.perDay === null
        ? []
        : [{ path: ['regimen', 'perDay', 'from'], times: [regimen.perDay.from] }];
    case 'cyclic':
      return [
        { path: ['regimen', 'from'], times: [regimen.from] },
        { path: ['regimen', 'until'], times: [regimen.until] },
      ];
    case 'intermittent':
      return [{ path: ['regimen', 'times'], times: regimen.times }];
    case 'bolus':
      return [
        { path: ['regimen', 'times'], times: [...regimen.times, ...regimen.meals.map((meal) => meal.at)] },
      ];
    default:
      return [];
  }
}

const timesOf = ({ regimen, water, medicines, modules }: Order): readonly Timed[] => [
  ...timesOfRegimen(regimen),
  ...(water?.given ?? []).flatMap((given, i): readonly Timed[] =>
    given.kind === 'times'
      ? [{ path: ['water', 'given', i, 'times'], times: given.times }]
      : given.kind === 'interval' && given.from !== null
        ? [{ path: ['water', 'given', i, 'from'], times: [given.from] }]
        : [],
  ),
  ...medicines.map(({ times }, i) => ({ path: ['medicines', i, 'times'], times })),
  ...modules.map(({ times }, i) => ({ path: ['modules', i, 'times'], times })),
];

const isOnClock = (time: TimeOfDay): boolean => Number.isInteger(time) && time >= 0 && time < MINUTES_A_DAY;

function onClock({ path, times }: Timed): readonly Problem[] {
  const off = times.filter((time) => !isOnClock(time));
  const twice = [...new Set(times.filter((time, i) => times.indexOf(time) !== i))];
  return [
    ...off.map((time) => problem('order/time-off-clock', path, { minutes: time })),
    ...twice.filter(isOnClock).map((time) => problem('order/time-twice', path, { time })),
  ];
}

/** Where one feed still runs when the next begins; the last one of a day runs into the first of the next. */
function overlaps({ order, local }: Review): readonly Problem[] {
  const { regimen } = order;
  if (regimen?.kind !== 'intermittent' && regimen?.kind !== 'bolus') return [];
  const least = local('bolus.least-duration');
  const lasts = regimen.lasts ?? (least.known ? least.value : null);
  if (lasts === null) return [];
  const meals = regimen.kind === 'bolus' ? regimen.meals.map((meal) => meal.at) : [];
  const times = [...new Set([...regimen.times, ...meals])].filter(isOnClock).toSorted((a, b) => a - b);
  return times.flatMap((at, i) => {
    const next = times[i + 1] ?? times[0]! + MINUTES_A_DAY;
    const gap = (next - at) * MINUTE;
    return gap >= lasts
      ? []
      : [
          problem('order/feeds-overlap', ['regimen', 'times'], {
            at,
            next: next % MINUTES_A_DAY,
            value: fraction(lasts, MINUTE),
            limit: fraction(next - at),
            unit: 'min',
          }),
        ];
  });
}

/** [OR3] A feed so fast that nothing but a slip of the pen can be meant. */
function flow(order: Order): readonly Problem[] {
  const { regimen } = order;
  if (regimen?.kind !== 'intermittent' && regimen?.kind !== 'bolus') return [];
  if (regimen.lasts === null) return [];
  const perMinute = over(oneFeed(regimen, strengthOf(order)), ofFraction(fraction(regimen.lasts, MINUTE)));
  return compare(perMinute, ofFraction(CREDIBLE.flow.most)) <= 0
    ? []
    : [
        problem('order/not-credible', ['regimen', 'minutes'], {
          value: toFraction(perMinute),
          ...CREDIBLE.flow,
        }),
      ];
}

const window = ({ regimen }: Order): readonly Problem[] =>
  regimen?.kind === 'cyclic' && windowOf(regimen) === 0
    ? [problem('order/window-empty', ['regimen', 'until'], { from: regimen.from, until: regimen.until })]
    : [];

export const timetable = (review: Review): readonly Problem[] => [
  ...window(review.order),
  ...timesOf(review.order).flatMap(onClock),
  ...flow(review.order),
  ...overlaps(review),
];
