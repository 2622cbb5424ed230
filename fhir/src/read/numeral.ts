/**
 * Which number did the sender write? A FHIR decimal means its digits (`1.50` is not `1.5` measured to a tenth), and a
 * binary double would bend it; so a number stays the text it was until it is read as an exact fraction.
 */
import { type Exact, of, over, times } from '@feedwright/core/reckon/exact';

const WRITTEN = Symbol('a JSON number as written');

export type Numeral = { readonly [WRITTEN]: string };

/** For the JSON reader: what becomes of each number. */
export const numeral = (written: string): Numeral => ({ [WRITTEN]: written });

export const isNumeral = (json: unknown): json is Numeral =>
  typeof json === 'object' && json !== null && WRITTEN in json;

export const writtenAs = (json: Numeral): string => json[WRITTEN];

const MOST_DIGITS = 15;
const MOST_EXPONENT = 12;
/** With leading zeros and decimals: a number of a million noughts is written to tie up whoever reads it. */
const MOST_WRITTEN = 40;
const SHAPE = /^(-?\d+(?:\.\d+)?)(?:[eE]([+-]?\d+))?$/;

/** The exact number; null where it has more digits, or a larger exponent, than any amount at a bedside. */
export function exactOf(json: Numeral): Exact | null {
  const [, decimal = '', exponent = '0'] = SHAPE.exec(writtenAs(json)) ?? [];
  const power = Number(exponent);
  const digits = decimal.replace(/[-.]/g, '').replace(/^0+/, '');
  if (
    decimal === '' ||
    decimal.length > MOST_WRITTEN ||
    digits.length > MOST_DIGITS ||
    Math.abs(power) > MOST_EXPONENT
  )
    return null;
  const scale = of(10 ** Math.abs(power));
  return power < 0 ? over(of(decimal), scale) : times(of(decimal), scale);
}
