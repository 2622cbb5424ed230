/**
 * What number did this person type?
 * One strict parser for every number field, flag and document. `1,5` and `1.5` are one and a half; whatever could be
 * read in two ways comes back as a question with its readings, never as a guess: a dropped mark is a tenfold dose.
 */
import { type Fraction, fractionOf } from './fraction.ts';
import { bad, issue, ok, type Result } from './result.ts';

/** `coefficient / 10^scale`: 62.50 is 6250 and 2, so that what was typed can be shown back. */
export type Decimal = { readonly coefficient: number; readonly scale: number };

export type DecimalOptions = {
  /** Whether a minus sign may stand before it. Off unless asked for: no dose is negative. */
  readonly negative?: boolean;
  /** On where a point is known to be the decimal mark (a command line, a JSON number): `1.065` is then no question. */
  readonly pointIsDecimal?: boolean;
};

const PLAIN = /^(-?)(\d+)(?:([.,])(\d+))?$/;
const MOST_DIGITS = 15;

const REASONS: readonly (readonly [RegExp, string])[] = [
  [/^$/, 'number/empty'],
  [/^[+\u2212\u2013\u2014]/, 'number/sign'],
  [/^-?\d+(?:[\s'\u2019_.,]+\d+)+$/, 'number/grouped'],
  [/[^ -~]/, 'number/foreign-digits'],
  [/^-?\d[\d.,]*e[+-]?\d+$/i, 'number/exponent'],
  [/^-?[.,]\d+$/, 'number/no-digit-before-mark'],
  [/^-?\d+[.,]$/, 'number/no-digit-after-mark'],
];

const question = (text: string, code: string, readings: readonly string[] = []): Result<Decimal> =>
  bad(issue([], code, { text, ...(readings.length > 0 ? { readings } : {}) }));

const reasonFor = (text: string): string =>
  REASONS.find(([shape]) => shape.test(text))?.[1] ?? 'number/not-a-number';

/** `1,500` is one and a half to one reader and fifteen hundred to another. `0,125` and `1,50` are not in doubt. */
const couldBeGrouped = (whole: string, mark: string, part: string, options: DecimalOptions): boolean =>
  part.length === 3 &&
  whole.length <= 3 &&
  whole !== '0' &&
  !(mark === '.' && options.pointIsDecimal === true);

/**
 * Reads a decimal number typed by a person. Leading and trailing spaces are ignored.
 * @returns the number exactly as typed, or one issue `number/…` with the text and, where there are two, its readings.
 */
export function parseDecimal(text: string, options: DecimalOptions = {}): Result<Decimal> {
  const trimmed = text.trim();
  const found = PLAIN.exec(trimmed);
  if (found === null) return question(trimmed, reasonFor(trimmed));
  const [, sign = '', whole = '', mark = '', part = ''] = found;
  if (sign === '-' && options.negative !== true) return question(trimmed, 'number/negative');
  if (whole.length > 1 && whole.startsWith('0')) return question(trimmed, 'number/leading-zero');
  if (couldBeGrouped(whole, mark, part, options)) {
    return question(trimmed, 'number/grouped', [`${whole}.${part}0`, `${whole}${part}`]);
  }
  if (whole.length + part.length > MOST_DIGITS) return question(trimmed, 'number/too-long');
  const size = Number(whole + part);
  return ok({ coefficient: sign === '-' && size !== 0 ? -size : size, scale: part.length });
}

/**
 * The decimal that a JSON number stands for: JSON has one decimal mark, so nothing is in doubt but its size.
 * `1e21` and other numbers that JavaScript itself would write with an exponent are refused.
 */
export function decimalOfJson(value: number): Result<Decimal> {
  const text = String(value);
  return Number.isFinite(value) && !text.includes('e')
    ? parseDecimal(text, { negative: true, pointIsDecimal: true })
    : question(text, Number.isFinite(value) ? 'number/exponent' : 'number/not-a-number');
}

export const decimalToFraction = (decimal: Decimal): Fraction =>
  fractionOf(BigInt(decimal.coefficient), 10n ** BigInt(decimal.scale));

/** The number of `1/perUnit` in it, or null if it is not a whole number of them: 62.5 with 100 is 6250. */
export function wholeUnits(decimal: Decimal, perUnit: number): number | null {
  const scaled = BigInt(decimal.coefficient) * BigInt(perUnit);
  const divisor = 10n ** BigInt(decimal.scale);
  if (scaled % divisor !== 0n) return null;
  const units = scaled / divisor;
  return units <= BigInt(Number.MAX_SAFE_INTEGER) && units >= -BigInt(Number.MAX_SAFE_INTEGER)
    ? Number(units)
    : null;
}
