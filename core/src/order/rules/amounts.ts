/** [OR26] [OR27] [OR51] [OR58] Do the rates and volumes that the order names go together? */
import { DAY } from '../../base/instant.ts';
import { inMl, inMlPerHour, type Rate } from '../../base/volume.ts';
import {
  compare,
  type Exact,
  minus,
  of,
  ofFraction,
  over,
  rounded,
  times,
  toFraction,
} from '../../reckon/exact.ts';
import { mixtureOf, mixtureRateOf, strengthOf } from '../mixture.ts';
import type { Advancement, Order, OrderedRate, Problem, Regimen } from '../order.ts';
import { inHours, mixturePerDay, windowOf } from '../per-day.ts';
import { problem } from '../problem.ts';
import { exactRate, feedRate, runningRates } from '../rates.ts';
import { type Review, silent } from '../review.ts';

type Path = Problem['path'];

/** What a rate gives in a time beside the volume that the same order names. */
type Beside = {
  readonly what: string;
  readonly path: Path;
  readonly gives: Exact;
  readonly wanted: Exact;
  readonly hours: Exact;
};

const shown = ({ what, gives, wanted }: Beside) => ({
  what,
  value: toFraction(gives),
  limit: toFraction(wanted),
  unit: 'mL',
});

/**
 * A rate that misses its volume contradicts it, unless by no more than the step that a pump can be set in makes over that
 * time: 1200 mL in 14 h are 85.7 mL/h, and whoever wrote 85 meant that.
 */
function besideVolume(beside: Beside, step: Exact | null): readonly Problem[] {
  const { gives, wanted, hours, path } = beside;
  const short = minus(wanted, gives);
  if (compare(short, of(0)) === 0) return [];
  const rounding = step === null ? of(0) : times(step, hours);
  if (compare(short, of(0)) > 0) {
    return compare(short, rounding) <= 0
      ? [problem('order/short-by-rounding', path, { ...shown(beside), short: toFraction(short) })]
      : [problem('order/amounts-contradict', path, { ...shown(beside), short: toFraction(short) })];
  }
  const early = minus(hours, times(hours, over(wanted, gives)));
  return compare(minus(gives, wanted), rounding) <= 0
    ? []
    : [problem('order/done-early', path, { ...shown(beside), earlyHours: toFraction(early) })];
}

/** The rate that has to reach a volume: the ordered one, or while it steps up the goal of the steps. */
function reaching(ordered: OrderedRate, advance: Advancement<Rate> | null, what: string, field: string) {
  return advance === null
    ? { what, path: ['regimen', field], rate: ordered }
    : {
        what: 'goal',
        path: ['regimen', 'advance', 'goalMlPerHour'],
        rate: { rate: advance.goal, of: ordered.of },
      };
}

function besides(order: Order): readonly Beside[] {
  const { regimen } = order;
  const strength = strengthOf(order);
  if (regimen?.kind === 'volume-targeted') {
    const { what, path, rate } = reaching(regimen.baseRate, regimen.advance, 'base', 'baseRateMlPerHour');
    const hours = inHours(DAY);
    const wanted = mixtureOf(regimen.volumePerDay, strength);
    return [{ what, path, gives: times(mixtureRateOf(rate, strength), hours), wanted, hours }];
  }
  if (regimen?.kind === 'cyclic' && regimen.rate !== null && regimen.volume !== null) {
    const { what, path, rate } = reaching(regimen.rate, regimen.advance, 'window', 'rateMlPerHour');
    const hours = inHours(windowOf(regimen));
    const wanted = mixtureOf(regimen.volume, strength);
    // A window without length has a rule of its own.
    return hours.n === 0n
      ? []
      : [{ what, path, gives: times(mixtureRateOf(rate, strength), hours), wanted, hours }];
  }
  return [];
}

const contradict = (
  what: string,
  path: Path,
  value: Exact,
  limit: Exact,
  unit: string,
): readonly Problem[] =>
  compare(value, limit) <= 0
    ? []
    : [
        problem('order/amounts-contradict', path, {
          what,
          value: toFraction(value),
          limit: toFraction(limit),
          unit,
        }),
      ];

function withMost(regimen: Regimen, strength: Exact): readonly Problem[] {
  if (regimen.kind !== 'volume-targeted' || regimen.mostRate === null) return [];
  const most = mixtureRateOf(regimen.mostRate, strength);
  const path = ['regimen', 'mostRateMlPerHour'];
  return [
    ...contradict('base-over-most', path, mixtureRateOf(regimen.baseRate, strength), most, 'mL/h'),
    ...contradict(
      'most-too-slow',
      path,
      mixtureOf(regimen.volumePerDay, strength),
      times(most, inHours(DAY)),
      'mL',
    ),
  ];
}

/** The daily maximum of the order against what the regimen gives, as written and at the goal of its steps. */
function overDayMost({ regimen, mostVolumePerDay }: Order, strength: Exact): readonly Problem[] {
  if (regimen === null || mostVolumePerDay === null) return [];
  const most = ofFraction(inMl(mostVolumePerDay));
  const perDay = mixturePerDay(regimen, strength)?.ml ?? of(0);
  const atGoal = mixturePerDay(regimen, strength, 'goal')?.ml ?? of(0);
  const path = ['mostVolumeMlPerDay'];
  const ordered = contradict('over-day-most', path, perDay, most, 'mL');
  return ordered.length > 0 ? ordered : contradict('goal-over-day-most', path, atGoal, most, 'mL');
}

/** [OR27] */
function overOwnRate(order: Order): readonly Problem[] {
  const most = order.mostRate;
  if (most === null) return [];
  return [...runningRates(order), ...feedRate(order)]
    .filter(({ rate }) => compare(rate, exactRate(most)) > 0)
    .map(({ path, what, rate }) =>
      problem('order/over-own-rate', path, {
        what,
        value: toFraction(rate),
        limit: inMlPerHour(most),
        unit: 'mL/h',
      }),
    );
}

/** [OR58] What a rate of formula comes to as mixture is set down to the pump's step: what that leaves is said. */
function betweenSteps(order: Order, step: Rate): readonly Problem[] {
  const least = exactRate(step);
  if (least.n <= 0n) return [];
  return runningRates(order)
    .filter(({ of: what, what: named }) => what === 'formula' && named !== 'from-volume')
    .flatMap(({ path, what, rate }) => {
      const set = rounded(rate, least, 'down');
      return compare(set, rate) === 0
        ? []
        : [
            problem('order/rate-between-steps', path, {
              what,
              value: toFraction(rate),
              limit: toFraction(set),
              less: toFraction(minus(rate, set)),
              unit: 'mL/h',
            }),
          ];
    });
}

export function amounts({ order, local }: Review): readonly Problem[] {
  const beside = besides(order);
  const key = 'pump.rate-step';
  const step = local(key);
  const judged = beside.flatMap((one) => besideVolume(one, step.known ? exactRate(step.value) : null));
  return [
    ...judged,
    ...(judged.length > 0 && !step.known ? [silent(key, step.why, 'OR26')] : []),
    ...(order.regimen === null ? [] : withMost(order.regimen, strengthOf(order))),
    ...overDayMost(order, strengthOf(order)),
    ...overOwnRate(order),
    ...(step.known ? betweenSteps(order, step.value) : []),
  ];
}
