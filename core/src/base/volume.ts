/**
 * How much? A volume is a whole number of 1/360,000,000 mL: just what 0.01 mL/h gives in 1 ms, so that a rate over a
 * time is a whole number and accounts balance to the last unit. Guarded against 2^53 (25,020 L).
 */
import { type Decimal, wholeUnits } from './decimal.ts';
import { type Fraction, fractionOf, timesOver, timesOverUp } from './fraction.ts';
import type { Duration } from './instant.ts';
import { bad, impossible, issue, ok, type Result } from './result.ts';

declare const volumeBrand: unique symbol;
declare const rateBrand: unique symbol;

/** A whole number of 1/360,000,000 mL. Use it for every amount of liquid: poured, delivered, flushed, lost. */
export type Volume = number & { readonly [volumeBrand]: 'mL/360,000,000' };
/** A whole number of hundredths of mL/h. Use it for what a pump is set to or an order says per hour. */
export type Rate = number & { readonly [rateBrand]: '0.01 mL/h' };

export const PER_ML = 360_000_000;
export const PER_ML_PER_HOUR = 100;
export const NOTHING = 0 as Volume;
export const STOPPED = 0 as Rate;

/** Throws (a bug, or 25,020 L) when a sum leaves the range in which whole numbers are exact. */
export const volume = (units: number): Volume =>
  Number.isSafeInteger(units) ? (units as Volume) : impossible(`volume of ${units} units`);

export const rate = (hundredths: number): Rate =>
  Number.isSafeInteger(hundredths) ? (hundredths as Rate) : impossible(`rate of ${hundredths} hundredths`);

/** For whole or half mL in code and tests; documents and people go through `volumeOfDecimal`. */
export const ml = (amount: number): Volume => volume(amount * PER_ML);
export const mlPerHour = (amount: number): Rate => rate(amount * PER_ML_PER_HOUR);

export const volumeOfDecimal = (decimal: Decimal): Result<Volume> => {
  const units = wholeUnits(decimal, PER_ML);
  return units === null ? bad(issue([], 'number/too-precise', { step: '0.0000001 mL' })) : ok(volume(units));
};

export const rateOfDecimal = (decimal: Decimal): Result<Rate> => {
  const units = wholeUnits(decimal, PER_ML_PER_HOUR);
  return units === null ? bad(issue([], 'number/too-precise', { step: '0.01 mL/h' })) : ok(rate(units));
};

export const add = (a: Volume, b: Volume): Volume => volume(a + b);
/** Signed: what is left may be less than nothing, and then says so. */
export const subtract = (a: Volume, b: Volume): Volume => volume(a - b);
export const sum = (volumes: readonly Volume[]): Volume => volumes.reduce(add, NOTHING);

/** What a rate gives in a time: exact. */
export const given = (at: Rate, during: Duration): Volume => volume(at * during);

/** The share of `total` that has gone in after `elapsed` of `whole`: the floor of the cumulative amount, so that pieces telescope. */
export function givenSoFar(total: Volume, elapsed: Duration, whole: Duration): Volume {
  if (elapsed >= whole) return total;
  return elapsed <= 0 ? NOTHING : volume(timesOver(total, elapsed, whole));
}

/** The first ms at which a rate has given the volume; null when it never does. */
export const timeToGive = (wanted: Volume, at: Rate): Duration | null =>
  wanted <= 0 ? (0 as Duration) : at <= 0 ? null : (Math.ceil(wanted / at) as Duration);

/** `part` of a volume (a strength, a water fraction), rounded down to the unit of the account. */
export const share = (of: Volume, part: Fraction): Volume => volume(timesOver(of, part.n, part.d));

/** The rate that gives a volume in a time, rounded down to 0.01 mL/h. */
export const rateFor = (wanted: Volume, during: Duration): Rate => rate(Math.floor(wanted / during));

export const volumeDownTo = (amount: Volume, step: Volume): Volume =>
  volume(Math.floor(amount / step) * step);
export const volumeUpTo = (amount: Volume, step: Volume): Volume =>
  volume(timesOverUp(amount, 1, step) * step);
export const rateDownTo = (at: Rate, step: Rate): Rate => rate(Math.floor(at / step) * step);

export const inMl = (amount: Volume): Fraction => fractionOf(BigInt(amount), BigInt(PER_ML));
export const inMlPerHour = (at: Rate): Fraction => fractionOf(BigInt(at), BigInt(PER_ML_PER_HOUR));
