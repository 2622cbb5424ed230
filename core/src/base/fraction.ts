/**
 * How are strengths, densities and per-kilogram figures kept exact?
 * As a fraction of two whole numbers. Comparing multiplies crosswise, so K 4.0 → 3.6 is a fall of exactly 10 %.
 */
import { impossible } from './result.ts';

export type Fraction = { readonly n: number; readonly d: number };

const gcd = (a: bigint, b: bigint): bigint => {
  let [x, y] = [a < 0n ? -a : a, b < 0n ? -b : b];
  while (y !== 0n) [x, y] = [y, x % y];
  return x;
};

const MOST = BigInt(Number.MAX_SAFE_INTEGER);

/** A fraction in lowest terms with a positive denominator. Throws (a bug) on a zero denominator or beyond 2^53. */
export function fractionOf(numerator: bigint, denominator: bigint): Fraction {
  if (denominator === 0n) impossible('fraction with denominator zero');
  const common = gcd(numerator, denominator) * (denominator < 0n ? -1n : 1n);
  const n = numerator / common;
  const d = denominator / common;
  if (n > MOST || n < -MOST || d > MOST) impossible('fraction beyond 2^53');
  return { n: Number(n), d: Number(d) };
}

/** `fraction(3, 4)` is ¾. Both whole numbers, the denominator not zero. */
export const fraction = (n: number, d = 1): Fraction => fractionOf(BigInt(n), BigInt(d));

export const ZERO: Fraction = { n: 0, d: 1 };
export const ONE: Fraction = { n: 1, d: 1 };

export const plus = (a: Fraction, b: Fraction): Fraction =>
  fractionOf(BigInt(a.n) * BigInt(b.d) + BigInt(b.n) * BigInt(a.d), BigInt(a.d) * BigInt(b.d));

export const minus = (a: Fraction, b: Fraction): Fraction => plus(a, { n: -b.n, d: b.d });

export const times = (a: Fraction, b: Fraction): Fraction =>
  fractionOf(BigInt(a.n) * BigInt(b.n), BigInt(a.d) * BigInt(b.d));

export const over = (a: Fraction, b: Fraction): Fraction =>
  fractionOf(BigInt(a.n) * BigInt(b.d), BigInt(a.d) * BigInt(b.n));

/** Negative, zero or positive as a is less than, equal to or more than b; exact. */
export function compare(a: Fraction, b: Fraction): number {
  const left = BigInt(a.n) * BigInt(b.d);
  const right = BigInt(b.n) * BigInt(a.d);
  return left < right ? -1 : left > right ? 1 : 0;
}

/** floor(n / d), also below zero, where BigInt's own division goes the other way. d > 0. */
const floorOver = (n: bigint, d: bigint): bigint => (n >= 0n ? n / d : -((d - 1n - n) / d));

/** floor(a × b / c) without rounding on the way. c > 0, all whole. */
export const timesOver = (a: number, b: number, c: number): number => {
  const product = a * b;
  // A quotient of two safe integers is never rounded up to a whole number that it does not reach.
  if (Number.isSafeInteger(product)) return Math.floor(product / c);
  return Number(floorOver(BigInt(a) * BigInt(b), BigInt(c)));
};

/** ceil(a × b / c) without rounding on the way. c > 0, all whole. */
export const timesOverUp = (a: number, b: number, c: number): number =>
  Number(-floorOver(-(BigInt(a) * BigInt(b)), BigInt(c)));

export type Rounding = 'down' | 'up' | 'half-up';

/** The whole number of `step`s nearest to `a` in the way asked: `roundTo(437.5, 1, 'half-up')` is 438. */
export function roundTo(a: Fraction, step: Fraction, way: Rounding): Fraction {
  const n = BigInt(a.n) * BigInt(step.d);
  const d = BigInt(a.d) * BigInt(step.n);
  const floor = floorOver(n, d);
  const rest = n - floor * d;
  const up = way === 'up' ? rest > 0n : way === 'half-up' ? rest * 2n >= d : false;
  return fractionOf((floor + (up ? 1n : 0n)) * BigInt(step.n), BigInt(step.d));
}

/** For drawing and for nothing else: a boundary must never be decided on it. */
export const approximately = (a: Fraction): number => a.n / a.d;
