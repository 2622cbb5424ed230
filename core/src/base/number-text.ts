/**
 * How is an exact number written in a document, and read back?
 * As a plain decimal wherever it ends, as `2/3` where it does not, so that document → value → document loses nothing.
 */
import { decimalOfJson, decimalToFraction, parseDecimal } from './decimal.ts';
import { compare, type Fraction, fraction } from './fraction.ts';
import { bad, issue, ok, type Result } from './result.ts';

const MOST_DIGITS = 15;

/** Reads what a document has for a number: a JSON number, or text by the strict rules for what people type. */
export function readNumber(given: string | number): Result<Fraction> {
  const ratio = typeof given === 'string' ? /^(\d{1,16})\/(\d{1,16})$/.exec(given.trim()) : null;
  if (ratio !== null) return readRatio(given, Number(ratio[1]), Number(ratio[2]));
  const decimal = typeof given === 'number' ? decimalOfJson(given) : parseDecimal(given);
  return decimal.ok ? ok(decimalToFraction(decimal.value)) : decimal;
}

const readRatio = (text: unknown, n: number, d: number): Result<Fraction> =>
  d > 0 && Number.isSafeInteger(n) && Number.isSafeInteger(d)
    ? ok(fraction(n, d))
    : bad(issue([], 'number/not-a-number', { text }));

/** The decimal that stands for it exactly, or null where there is none of at most 15 digits. */
export function decimalText(of: Fraction): string | null {
  for (let scale = 0; scale <= MOST_DIGITS; scale += 1) {
    const power = 10n ** BigInt(scale);
    if (power % BigInt(of.d) === 0n) return placed((BigInt(of.n) * power) / BigInt(of.d), scale);
  }
  return null;
}

function placed(coefficient: bigint, scale: number): string | null {
  const sign = coefficient < 0n ? '-' : '';
  const digits = String(coefficient)
    .replace('-', '')
    .padStart(scale + 1, '0');
  const [whole, part] = [digits.slice(0, digits.length - scale), digits.slice(digits.length - scale)];
  // Three places after the mark could be read as thousands: the strict parser asks, a fourth place answers.
  const places = part.length === 3 ? `${part}0` : part;
  if (whole.length + places.length > MOST_DIGITS) return null;
  return scale === 0 ? `${sign}${whole}` : `${sign}${whole}.${places}`;
}

export const numberText = (of: Fraction): string => decimalText(of) ?? `${of.n}/${of.d}`;

/** As a JSON number where that reads back as the same number, else as `2/3`. */
export function jsonNumber({ n, d }: Fraction): number | string {
  const nearest = decimalOfJson(n / d);
  return nearest.ok && compare(decimalToFraction(nearest.value), { n, d }) === 0 ? n / d : `${n}/${d}`;
}
