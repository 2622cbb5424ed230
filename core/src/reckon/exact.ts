/**
 * How does a long calculation stay exact?
 * As a fraction of two whole numbers of any size, which is brought into lowest terms only where it is shown. A base
 * `Fraction` stops at 2^53, which a chain of printed coefficients with a weight in pounds goes past.
 */
import { type Fraction, fractionOf, type Rounding } from '../base/fraction.ts';
import { impossible } from '../base/result.ts';

/** n / d with d > 0; not always in lowest terms. */
export type Exact = { readonly n: bigint; readonly d: bigint };

const made = (n: bigint, d: bigint): Exact =>
  d === 0n ? impossible('exact number with denominator zero') : d < 0n ? { n: -n, d: -d } : { n, d };

/** A decimal or a fraction of whole numbers that has been looked at: `237`, `0.5`, `3/4`. */
export function ofText(written: string): Exact {
  const [over = '', under = '1'] = written.split('/');
  const [whole = '', part = ''] = over.split('.');
  return made(BigInt(whole + part), 10n ** BigInt(part.length) * BigInt(under));
}

/** The constants that calculations are written with, each understood once. */
const constants = new Map<string, Exact>();

/** A number written in code: `of('13.7516')`, `of('5/11')`, `of(24)`. */
export function of(written: string | number): Exact {
  if (typeof written === 'number') return { n: BigInt(written), d: 1n };
  const known = constants.get(written) ?? ofText(written);
  constants.set(written, known);
  return known;
}

export const ofFraction = (a: Fraction): Exact => ({ n: BigInt(a.n), d: BigInt(a.d) });

/** The double itself, to its last bit: it is a whole number over a power of two. */
export function ofDouble(value: number): Exact {
  if (!Number.isFinite(value)) return impossible(`exact number of ${value}`);
  let [scaled, d] = [value, 1n];
  while (!Number.isInteger(scaled)) {
    scaled *= 2;
    d *= 2n;
  }
  return { n: BigInt(scaled), d };
}

export const NOUGHT: Exact = { n: 0n, d: 1n };
export const UNITY: Exact = { n: 1n, d: 1n };

const two = {
  plus: (a: Exact, b: Exact): Exact =>
    a.d === b.d ? { n: a.n + b.n, d: a.d } : { n: a.n * b.d + b.n * a.d, d: a.d * b.d },
  times: (a: Exact, b: Exact): Exact => ({ n: a.n * b.n, d: a.d * b.d }),
};

export const plus = (...terms: readonly Exact[]): Exact => terms.reduce(two.plus, NOUGHT);
export const times = (...factors: readonly Exact[]): Exact => factors.reduce(two.times, UNITY);
export const minus = (a: Exact, b: Exact): Exact => two.plus(a, { n: -b.n, d: b.d });
/** Throws (a bug) when b is zero: the band of a divisor keeps zero out. */
export const over = (a: Exact, b: Exact): Exact => made(a.n * b.d, a.d * b.n);

/** Negative, zero or positive as a is less than, equal to or more than b. */
export function compare(a: Exact, b: Exact): number {
  const difference = a.n * b.d - b.n * a.d;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

export const less = (a: Exact, b: Exact): boolean => compare(a, b) < 0;
export const least = (a: Exact, b: Exact): Exact => (less(b, a) ? b : a);
export const most = (a: Exact, b: Exact): Exact => (less(a, b) ? b : a);
export const notNegative = (a: Exact): Exact => most(a, NOUGHT);

const floorOf = (n: bigint, d: bigint): bigint => (n >= 0n ? n / d : -((-n + d - 1n) / d));

/** The whole number of `step`s in the way asked; `half-up` takes a half towards more. */
export function rounded(a: Exact, step: Exact, way: Rounding): Exact {
  const [n, d] = [a.n * step.d, a.d * step.n];
  const floor = floorOf(n, d);
  const rest = n - floor * d;
  const up = way === 'up' ? rest > 0n : way === 'half-up' ? rest * 2n >= d : false;
  return { n: (floor + (up ? 1n : 0n)) * step.n, d: step.d };
}

const ceilingDigits = 15;
const MOST_SAFE = BigInt(Number.MAX_SAFE_INTEGER);
const fits = (a: bigint): boolean => a <= MOST_SAFE && a >= -MOST_SAFE;

const gcd = (a: bigint, b: bigint): bigint => {
  let [x, y] = [a < 0n ? -a : a, b];
  while (y !== 0n) [x, y] = [y, x % y];
  return x;
};

/** In lowest terms, for whole numbers that a double holds: many times faster. */
function lowest(n: number, d: number): Fraction {
  let [x, y] = [Math.abs(n), d];
  while (y !== 0) [x, y] = [y, x % y];
  return { n: n / x, d: d / x };
}

/**
 * The number as a base `Fraction`, to be shown: itself where it fits, else the nearest decimal of fifteen digits.
 * Nothing is decided on it.
 */
export function toFraction(a: Exact): Fraction {
  if (fits(a.n) && fits(a.d)) return lowest(Number(a.n), Number(a.d));
  const common = gcd(a.n, a.d);
  const [n, d] = [a.n / common, a.d / common];
  if (fits(n) && fits(d)) return { n: Number(n), d: Number(d) };
  const whole = String(n < 0n ? -n / d : n / d).length;
  if (whole > ceilingDigits) return impossible('number beyond 10^15');
  const scale = 10n ** BigInt(ceilingDigits - whole);
  return fractionOf(rounded({ n: n * scale, d }, UNITY, 'half-up').n, scale);
}

/** As a decimal: half-up to so many places, without trailing zeros. */
export function decimalText(a: Exact, places = 6): string {
  const scaled = rounded({ n: a.n * 10n ** BigInt(places), d: a.d }, UNITY, 'half-up').n;
  const digits = String(scaled < 0n ? -scaled : scaled).padStart(places + 1, '0');
  const part = digits.slice(digits.length - places).replace(/0+$/, '');
  const whole = digits.slice(0, digits.length - places);
  const sign = scaled < 0n ? '-' : '';
  return `${sign}${whole}${part === '' || places === 0 ? '' : `.${part}`}`;
}

/** For powers and square roots, and for JSON; no boundary is decided on it. */
export function toDouble(a: Exact): number {
  if (fits(a.n) && fits(a.d)) return Number(a.n) / Number(a.d);
  const { n, d } = toFraction(a);
  return n / d;
}
