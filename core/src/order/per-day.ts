/**
 * How much mixture does a regimen give in a day? By the order as it is written, or while it advances at its first step
 * or at its goal.
 */
import type { Fraction } from '../base/fraction.ts';
import { DAY, type Duration, duration, HOUR, MINUTE } from '../base/instant.ts';
import { inMl, inMlPerHour, type Rate } from '../base/volume.ts';
import {
  ARITHMETIC,
  type Basis,
  input,
  shownDuration,
  shownNumber,
  type WorkingInput,
  worked,
} from '../base/working.ts';
import { type Exact, least, of, ofFraction, over, times, toFraction } from '../reckon/exact.ts';
import { mixtureOf } from './mixture.ts';
import type { Of, Regimen } from './order.ts';

export type Step = 'ordered' | 'start' | 'goal';

/** mL of mixture a day, with how it came about. */
export type PerDay = {
  readonly ml: Exact;
  readonly equation: string;
  readonly inputs: readonly WorkingInput[];
};

type Cyclic = Extract<Regimen, { kind: 'cyclic' }>;
type Feeds = Extract<Regimen, { kind: 'intermittent' | 'bolus' }>;
type Targeted = Extract<Regimen, { kind: 'volume-targeted' }>;

/** By the clock, on a day without a clock change; nothing when both are the same. */
export const windowOf = ({ from, until }: Pick<Cyclic, 'from' | 'until'>): Duration =>
  duration(((((until - from) % 1_440) + 1_440) % 1_440) * MINUTE);

export const inHours = (lasts: Duration): Exact => ({ n: BigInt(lasts), d: BigInt(HOUR) });

const path = (field: string): Basis => ({ kind: 'order', path: `regimen.${field}` });

/** An amount of mixture, and how it goes into a working. */
type Amount = { readonly value: Exact; readonly input: WorkingInput };

type Ordered = { readonly amount: Fraction; readonly of: Of; readonly unit: string; readonly field: string };

/** As ordered; where the order says formula, by way of the strength. */
function mixture(symbol: string, { amount, of: what, unit, field }: Ordered, strength: Exact): Amount {
  const show = (value: Exact) => shownNumber(toFraction(value), unit);
  if (what === 'mixture') {
    const value = ofFraction(amount);
    return { value, input: input(symbol, show(value), path(field)) };
  }
  const { value, working } = worked(over(ofFraction(amount), strength), show, {
    symbol,
    equation: `${symbol} = ${symbol}_formula / s`,
    inputs: [
      input(`${symbol}_formula`, shownNumber(amount, unit), path(field)),
      input('s', shownNumber(toFraction(strength)), { kind: 'order', path: 'feed.strength' }),
    ],
    rule: 'OR57',
    basis: ARITHMETIC,
  });
  return { value, input: input(symbol, show(value), { kind: 'working', working }) };
}

type OfRate = { readonly rate: Rate; readonly of: Of };

/** The rate at a step of an order that advances, else the ordered one. */
function rateAt(
  ordered: OfRate,
  advance: { readonly start: Rate; readonly goal: Rate } | null,
  step: Step,
  field: string,
  strength: Exact,
): Amount {
  const [rate, at] =
    advance === null || step === 'ordered'
      ? [ordered.rate, field]
      : [advance[step], `advance.${step}MlPerHour`];
  return mixture('r', { amount: inMlPerHour(rate), of: ordered.of, unit: 'mL/h', field: at }, strength);
}

const running = (rate: Amount, lasts: Duration, basis: Basis): PerDay => ({
  ml: times(rate.value, inHours(lasts)),
  equation: 'V = r × t',
  inputs: [rate.input, input('t', shownDuration(lasts), basis)],
});

const fixed = (volume: Amount): PerDay => ({ ml: volume.value, equation: 'V = V₁', inputs: [volume.input] });

/** Runs at the rate and stops at the volume. */
const stoppingAt = (volume: Amount, runs: PerDay): PerDay => ({
  ml: least(runs.ml, volume.value),
  equation: 'V = min(r × t, V₁)',
  inputs: [...runs.inputs, volume.input],
});

function cyclicPerDay(regimen: Cyclic, strength: Exact, step: Step): PerDay | null {
  const { advance } = regimen;
  const volume =
    regimen.volume === null
      ? null
      : mixture(
          'V₁',
          { amount: inMl(regimen.volume.volume), of: regimen.volume.of, unit: 'mL', field: 'volumeMl' },
          strength,
        );
  const stepped = advance === null || step === 'ordered' ? null : advance[step];
  const ofRate = regimen.rate?.of ?? regimen.volume?.of ?? 'mixture';
  const ordered = regimen.rate ?? (stepped === null ? null : { rate: stepped, of: ofRate });
  if (ordered === null) return volume === null ? null : fixed(volume);
  const rate = rateAt(ordered, advance, step, 'rateMlPerHour', strength);
  const runs = running(rate, windowOf(regimen), path('until'));
  return volume === null ? runs : stoppingAt(volume, runs);
}

/** How many feeds a day; those that depend on a meal count as given. */
export const feedsPerDay = (regimen: Feeds): number =>
  regimen.times.length + (regimen.kind === 'bolus' ? regimen.meals.length : 0);

const feedVolume = ({ volume, advance }: Feeds, step: Step) =>
  advance === null || step === 'ordered' ? volume.volume : advance[step];

/** The volume of one feed, in mL of mixture. */
export const oneFeed = (regimen: Feeds, strength: Exact, step: Step = 'ordered'): Exact =>
  mixtureOf({ volume: feedVolume(regimen, step), of: regimen.volume.of }, strength);

function feedsTogether(regimen: Feeds, strength: Exact, step: Step): PerDay | null {
  const count = feedsPerDay(regimen);
  if (count === 0) return null;
  const field = regimen.advance === null || step === 'ordered' ? 'volumeMl' : `advance.${step}Ml`;
  const amount = inMl(feedVolume(regimen, step));
  const one = mixture('v', { amount, of: regimen.volume.of, unit: 'mL', field }, strength);
  return {
    ml: times(one.value, of(count)),
    equation: 'V = v × n',
    inputs: [one.input, input('n', shownNumber(count), path('times'))],
  };
}

function targetedPerDay(regimen: Targeted, strength: Exact, step: Step): PerDay {
  const { volumePerDay, baseRate, advance } = regimen;
  const target = mixture(
    'V₁',
    { amount: inMl(volumePerDay.volume), of: volumePerDay.of, unit: 'mL', field: 'volumeMlPerDay' },
    strength,
  );
  if (advance === null || step === 'ordered') return fixed(target);
  const rate = rateAt(baseRate, advance, step, 'baseRateMlPerHour', strength);
  return stoppingAt(target, running(rate, DAY, ARITHMETIC));
}

/** Null where the regimen lacks its amount or its times. The strength must not be zero. */
export function mixturePerDay(regimen: Regimen, strength: Exact, step: Step = 'ordered'): PerDay | null {
  switch (regimen.kind) {
    case 'continuous': {
      const rate = rateAt(regimen.rate, regimen.advance, step, 'rateMlPerHour', strength);
      const { perDay } = regimen;
      return perDay === null
        ? running(rate, DAY, ARITHMETIC)
        : running(rate, perDay.lasts, path('perDay.hours'));
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
