/**
 * What does the unit somebody wrote stand for?
 * `g per 237 mL`, `kcal/oz` and `mL/kg/day` are made of named units with exact factors. Two of these are a matter of
 * convention and are said when used: a bedside fluid ounce is 30 mL, a measured one 29.5735295625 mL; a pound is
 * 0.45359237 kg, on course sheets 1/2.2 kg.
 */
import { type Exact, of, ofText, over, times, UNITY } from '../exact.ts';
import { type Named, UNITS } from './unit-table.ts';

/** The powers it is made of, as `M1V-1` for g/mL; nothing for a plain number. */
export type Dimension = string;
export type Unit = {
  readonly dimension: Dimension;
  /** How many of the dimension's unit (mL, g, kcal, h, cm, mmol, mEq, mosm, item, drop, °C) it is. */
  readonly factor: Exact;
  /** Added after the factor: only °F has one. */
  readonly offset?: Exact;
  readonly by?: 'ounce' | 'pound';
  /** Whether it is so much a day: `mL/kg/day`, `kcal/24h`. */
  readonly daily: boolean;
};

export type Conventions = { readonly ounceMl: Exact; readonly poundKg: Exact };
export const BEDSIDE_OUNCE = of(30);
export const MEASURED_OUNCE = of('29.5735295625');
export const EXACT_POUND = of('0.45359237');
export const COURSE_POUND = of('5/11');
export const USUAL: Conventions = { ounceMl: BEDSIDE_OUNCE, poundKg: EXACT_POUND };

const FAHRENHEIT: Unit = { dimension: 'C1', factor: of('5/9'), offset: of('-160/9'), daily: false };
const PLAIN: Unit = { dimension: '', factor: UNITY, daily: false };

const tidy = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(/[µμ]/g, 'u')
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/\bper\b/g, '/')
    .replace(/[\s.]+(?!\d)/g, '');

type Piece = { readonly unit: Named; readonly factor: Exact };

function whole(unit: Named, conventions: Conventions): Exact {
  if (unit.by === undefined) return unit.factor;
  const one = unit.by === 'ounce' ? conventions.ounceMl : times(conventions.poundKg, of(1000));
  return times(unit.factor, one);
}

/** One part between the strokes: `kcal`, `237 mL`. */
function piece(written: string, conventions: Conventions, wanted: Dimension | undefined): Piece | null {
  const [, count = '', name = ''] = /^\s*(\d{1,9}(?:\.\d{1,6})?)?\s*(\S*)$/.exec(written) ?? [];
  const unit = UNITS.get(wanted === 'M1' && /^(oz|ounces?)$/.test(name) ? 'massounce' : name);
  if (unit === undefined) return null;
  const factor = whole(unit, conventions);
  if (count === '') return { unit, factor };
  return Number(count) === 0 ? null : { unit, factor: times(factor, ofText(count)) };
}

const dimensionOf = (powers: ReadonlyMap<string, number>): Dimension =>
  [...powers]
    .filter(([, power]) => power !== 0)
    .map(([letter, power]) => `${letter}${power}`)
    .toSorted()
    .join('');

/** What has been understood already under each pair of conventions; few units are ever written. */
const understood = new WeakMap<Conventions, Map<string, Unit | null>>();
const MOST_UNDERSTOOD = 500;

/** The unit, or null if it has no meaning here. `oz` is a fluid ounce unless a mass is `wanted`. */
export function parseUnit(text: string, conventions: Conventions, wanted?: Dimension): Unit | null {
  const before = understood.get(conventions) ?? new Map<string, Unit | null>();
  const name = wanted === 'M1' ? `mass ${text}` : text;
  const known = before.get(name);
  if (known !== undefined) return known;
  const unit = understand(text, conventions, wanted);
  if (before.size < MOST_UNDERSTOOD) understood.set(conventions, before.set(name, unit));
  return unit;
}

function understand(text: string, conventions: Conventions, wanted: Dimension | undefined): Unit | null {
  const clean = tidy(text);
  if (clean === '') return PLAIN;
  if (/^(°f|degf|fahrenheit|f)$/.test(clean)) return FAHRENHEIT;
  const powers = new Map<string, number>();
  let [factor, by]: [Exact, Unit['by']] = [UNITY, undefined];
  for (const [index, written] of clean.split('/').entries()) {
    const one = piece(written, conventions, wanted);
    if (one === null || (index === 0 && /^\d+\D/.test(written))) return null;
    factor = index === 0 ? one.factor : over(factor, one.factor);
    by ??= one.unit.by;
    for (const [letter, power] of Object.entries(one.unit.powers)) {
      powers.set(letter, (powers.get(letter) ?? 0) + (index === 0 ? power : -power));
    }
  }
  const daily = /\/(d|days?|24(h|hrs?|hours?))$/.test(clean);
  return { dimension: dimensionOf(powers), factor, daily, ...(by === undefined ? {} : { by }) };
}
