/**
 * Is this a product number as GS1 gives them out? Eight, twelve, thirteen or fourteen digits of which the last is the
 * check digit. The modulo-10 rule catches every single wrong digit, and every swap of neighbours but that of two digits
 * five apart (0 and 5, 1 and 6 …): their weights, 3 and 1, differ by two, and twice five is ten.
 */
import { bad, issue, ok, type Result } from '../../base/result.ts';

declare const gtinBrand: unique symbol;
/** A Global Trade Item Number with its right check digit, filled up with zeros in front to fourteen digits. */
export type Gtin = string & { readonly [gtinBrand]: 'fourteen digits' };

const LENGTHS: readonly number[] = [8, 12, 13, 14];
const LONGEST = 14;

/** The check digit of digits that lack it: from the right 3, 1, 3, 1 …, up to the next ten (GS1, I8). */
export function checkDigit(digits: string): number {
  const sum = [...digits]
    .toReversed()
    .reduce((total, digit, place) => total + Number(digit) * (place % 2 === 0 ? 3 : 1), 0);
  return (10 - (sum % 10)) % 10;
}

/**
 * A product number as it is printed under a retail code. [FE12]
 * @returns the number in fourteen digits, by which two writings of it are the same; or what is wrong with it.
 */
export function readGtin(text: string): Result<Gtin> {
  if (!/^\d+$/.test(text)) return bad(issue([], 'gtin/not-digits', { text }));
  if (!LENGTHS.includes(text.length)) return bad(issue([], 'gtin/length', { text, digits: text.length }));
  if (/^0+$/.test(text)) return bad(issue([], 'gtin/nought', { text }));
  return checkDigit(text.slice(0, -1)) === Number(text.at(-1))
    ? ok(text.padStart(LONGEST, '0') as Gtin)
    : bad(issue([], 'gtin/check-digit', { text }));
}
