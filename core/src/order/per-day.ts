/**
 * How much mixture does a regimen give in a day? By the order as it is written, or while it advances at its first step
 * or at its goal.
 */
import { DAY, type Duration, duration, HOUR, MINUTE } from '../base/instant.ts';
import type { Rate, Volume } from '../base/volume.ts';
import { input, shownDuration, shownNumber, type WorkingInput } from '../base/working.ts';
import { type Exact, least, of, times, toFraction } from '../reckon/exact.ts';
import { mixtureOf, mixtureRateOf } from './mixture.ts';
import type { Of, Regimen } from './order.ts';

export type Step = 'ordered' | 'start' | 'goal';

/** mL of mixture a day, with how it came about. */
export type PerDay = {
  readonly ml: Exact;
  readonly equation: string;
  readonly inputs: readonly WorkingInput[];
};

type Cyclic = Extract<Regimen, { kind: 'cyclic' }>;

/** By the clock, on a day without a clock change; nothing when both are the same. */
export const windowOf = ({ from, until }: Pick<Cyclic, 'from' | 'until'>): Duration =>
  duration(((((until - from) % 1_440) + 1_440) % 1_440) * MINUTE);

export const inHours = (lasts: Duration): Exact => ({ n: BigInt(lasts), d: BigInt(HOUR) });

const path = (field: string) => ({ kind: 'order', path: `regimen.${field}` }) as const;
const mL = (symbol: string, value: Exact, field: string) =>
  input(symbol, shownNumber(toFraction(value), 'mL'), path(field));
const mLPerHour = (value: Exact, field: string) =>
  input('r', shownNumber(toFraction(value), 'mL/h'), path(field));
const during = (lasts: Duration, field: string) => input('t', shownDuration(lasts), path(field));

function atRate(rate: Exact, lasts: Duration, rateField: string, timeField: string): PerDay {
  return {
    ml: times(rate, inHours(lasts)),
    equation: 'V = r × t',
    inputs: [mLPerHour(rate, rateField), during(lasts, timeField)],
  };
}

/** Runs at the rate and stops at the volume. */
function stoppingAt(most: Exact, field: string, running: PerDay): PerDay {
  const inputs = [...running.inputs, mL('V₁', most, field)];
  return { ml: least(running.ml, most), equation: 'V = min(r × t, V₁)', inputs };
}

const steppedRate = (regimen: { advance: { start: Rate; goal: Rate } | null }, step: Step): Rate | null =>
  step === 'ordered' ? null : (regimen.advance?.[step] ?? null);

function cyclicPerDay(regimen: Cyclic, strength: Exact, step: Step): PerDay | null {
  const stepped = steppedRate(regimen, step);
  const rateOf = regimen.rate?.of ?? regimen.volume?.of ?? 'mixture';
  const rate = stepped === null ? regimen.rate : { rate: stepped, of: rateOf };
  const volume = regimen.volume === null ? null : mixtureOf(regimen.volume, strength);
  if (rate === null) {
    return volume === null
      ? null
      : { ml: volume, equation: 'V = V₁', inputs: [mL('V₁', volume, 'volumeMl')] };
  }
  const running = atRate(mixtureRateOf(rate, strength), windowOf(regimen), 'rateMlPerHour', 'until');
  return volume === null ? running : stoppingAt(volume, 'volumeMl', running);
}

type Feeds = Extract<Regimen, { kind: 'intermittent' | 'bolus' }>;

/** How many feeds a day; those that depend on a meal count as given. */
export const feedsPerDay = (regimen: Feeds): number =>
  regimen.times.length + (regimen.kind === 'bolus' ? regimen.meals.length : 0);

/** The volume of one feed, in mL of mixture. */
export function oneFeed(regimen: Feeds, strength: Exact, step: Step = 'ordered'): Exact {
  const stepped: Volume | null = step === 'ordered' ? null : (regimen.advance?.[step] ?? null);
  const what: Of = regimen.volume.of;
  return mixtureOf(stepped === null ? regimen.volume : { volume: stepped, of: what }, strength);
}

function feedsTogether(regimen: Feeds, strength: Exact, step: Step): PerDay | null {
  const count = feedsPerDay(regimen);
  if (count === 0) return null;
  const one = oneFeed(regimen, strength, step);
  return {
    ml: times(one, of(count)),
    equation: 'V = v × n',
    inputs: [mL('v', one, 'volumeMl'), input('n', shownNumber(count), path('times'))],
  };
}

function targetedPerDay(
  regimen: Extract<Regimen, { kind: 'volume-targeted' }>,
  strength: Exact,
  step: Step,
): PerDay {
  const target = mixtureOf(regimen.volumePerDay, strength);
  const stepped = steppedRate(regimen, step);
  if (stepped === null) {
    return { ml: target, equation: 'V = V₁', inputs: [mL('V₁', target, 'volumeMlPerDay')] };
  }
  const rate = mixtureRateOf({ rate: stepped, of: regimen.baseRate.of }, strength);
  return stoppingAt(target, 'volumeMlPerDay', atRate(rate, DAY, `advance.${step}MlPerHour`, 'kind'));
}

/** Null where the regimen lacks its amount or its times. The strength must not be zero. */
export function mixturePerDay(regimen: Regimen, strength: Exact, step: Step = 'ordered'): PerDay | null {
  switch (regimen.kind) {
    case 'continuous': {
      const rate = { rate: steppedRate(regimen, step) ?? regimen.rate.rate, of: regimen.rate.of };
      const lasts = regimen.perDay?.lasts ?? DAY;
      return atRate(mixtureRateOf(rate, strength), lasts, 'rateMlPerHour', 'perDay');
    }
    case 'cyclic':
      return cyclicPerDay(regimen, strength, step);
    case 'intermittent':
    case 'bolus':
      return feedsTogether(regimen, strength, step);
    case 'volume-targeted':
      return targetedPerDay(regimen, strength, step);
  }
}
