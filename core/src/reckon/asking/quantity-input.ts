/**
 * What amount did this person write?
 * `500mL`, `0.5 L`, `8 oz`, `150 lb`, `5ft 2in`, `7 lb 4 oz`, `6 h 40 min`, `3/4`, `1 1/2 cans`. The number goes through
 * the strict parser, so that whatever has two readings is a question; a unit that is not known names those that are.
 */
import { decimalOfJson, parseDecimal } from '../../base/decimal.ts';
import type { Fraction } from '../../base/fraction.ts';
import { bad, impossible, issue, ok, type Result } from '../../base/result.ts';
import { type Exact, of, ofFraction, ofText, over, plus, times, UNITY } from '../exact.ts';
import { type Conventions, parseUnit, type Unit, USUAL } from './units.ts';

/** As it comes from a command line, a document, or code. A number or a fraction is in the asked unit. */
export type Raw = string | number | Fraction;

export type Wanted = { readonly unit: string; readonly is: Unit };

export type Reading = {
  readonly conventions: Conventions;
  /** A unit that the key itself carried: `weight_lb`. The value's own unit goes before it. */
  readonly unitOfKey?: string;
};

export type Amount = { readonly value: Exact; readonly by?: 'ounce' | 'pound' };

/** What people write for the UCUM codes that they do not write. */
const PLAIN: Readonly<Record<string, string>> = {
  '[Ch]': 'fr',
  Cel: 'c',
  'cm[H2O]': 'cmH2O',
  a: 'y',
  '1': '',
};

/** The unit in which an amount is asked for, understood once. */
export function wanting(unit: string): Wanted {
  const is = parseUnit(PLAIN[unit] ?? unit.replace(/[{}]/g, ''), USUAL);
  return is === null ? impossible(`a calculation asks for the unknown unit ${unit}`) : { unit, is };
}

/** How many of the unit are one of its own kind: a day's amount may be written `/day`, a can's without `/can`. */
function scaleTo(unit: Unit, wanted: Wanted): Exact | null {
  const [from, to] = [unit.dimension, wanted.is.dimension];
  if (from === to) return UNITY;
  if (unit.daily && from === perDay(to)) return of(24);
  // A litre of a feed is taken for a kilogram of water: said with every osmolality.
  if (to === 'M-1O1' && from === 'O1V-1') return UNITY;
  return to === perItem(from) ? UNITY : null;
}

const perDay = (dimension: string): string => sorted(dimension, 'T-1');
const perItem = (dimension: string): string => sorted(dimension, 'I-1');
const sorted = (dimension: string, more: string): string =>
  [...(dimension.match(/[A-Z]-?\d+/g) ?? []), more].toSorted().join('');

export const fits = (unit: Unit, wanted: Wanted): boolean => scaleTo(unit, wanted) !== null;

/** The units that are taken for an amount asked for in this one; the first is the one asked for. */
export const ACCEPTED: Readonly<Record<string, readonly string[]>> = {
  mL: ['mL', 'L', 'cc', 'oz', 'tbsp', 'tsp', 'dL'],
  'mL/h': ['mL/h', 'mL/min', 'mL/day', 'L/day', 'oz/h'],
  h: ['h', 'min', 'day', 'h min'],
  d: ['d', 'week', 'month', 'h'],
  mo: ['mo', 'week', 'd', 'y'],
  a: ['y', 'month', 'week', 'day'],
  kcal: ['kcal', 'kJ', 'MJ'],
  'kcal/mL': ['kcal/mL', 'kcal/L', 'kcal/100mL', 'kcal/237mL', 'kcal/oz'],
  'kcal/kg': ['kcal/kg', 'kcal/kg/day', 'kJ/kg', 'kcal/lb'],
  'kcal/g': ['kcal/g', 'kJ/g'],
  g: ['g', 'mg', 'kg'],
  'g/L': ['g/L', 'g/mL', 'g/100mL', 'g/237mL', 'g/oz', 'mg/mL'],
  'g/kg': ['g/kg', 'g/kg/day', 'g/lb'],
  'mL/kg': ['mL/kg', 'mL/kg/day', 'mL/lb', 'oz/kg'],
  'mL/kg/h': ['mL/kg/h', 'mL/kg/day'],
  'mL/kcal': ['mL/kcal', 'mL/100kcal'],
  'mL/m2': ['mL/m2', 'mL/m2/day', 'L/m2'],
  'mL/g': ['mL/g', 'mL/100g', 'oz/g'],
  kg: ['kg', 'g', 'lb', 'lb oz', 'st', 'st lb'],
  cm: ['cm', 'm', 'mm', 'in', 'ft in'],
  mm: ['mm', 'cm'],
  min: ['min', 's', 'h'],
  'mPa.s': ['mPa·s', 'cP'],
  'cm[H2O]': ['cmH2O', 'mmHg'],
  m2: ['m2'],
  'kg/m2': ['kg/m2'],
  '[Ch]': ['Fr'],
  'L/min': ['L/min', 'mL/min', 'L/h'],
  Cel: ['°C', '°F'],
  '{gtt}/min': ['gtt/min', 'gtt/h'],
  'mmol/L': ['mmol/L', 'mg/dL', 'mEq/L'],
  mmol: ['mmol', 'mEq', 'mg'],
  'mosm/kg': ['mosm/kg', 'mosm/L'],
  'g/dL': ['g/dL', 'g/L'],
  'mL/mL': ['mL/mL', 'mL/L', 'mL/237mL', '%'],
  '%': ['%'],
  '1': ['', '%'],
};

export const acceptedFor = (unit: string): readonly string[] => ACCEPTED[unit] ?? [unit.replace(/[{}]/g, '')];

/** A number alone: a decimal by the strict parser, `3/4`, or `1 1/2`. */
export function readNumber(text: string): Result<Exact> {
  const parts = /^(?:(\d{1,9})\s+)?(\d{1,9})\s?\/\s?(\d{1,9})$/.exec(text.trim());
  if (parts !== null) {
    const [, whole = '0', top = '', bottom = ''] = parts;
    if (Number(bottom) === 0) return bad(issue([], 'number/not-a-number', { text }));
    return ok(plus(ofText(whole), over(ofText(top), ofText(bottom))));
  }
  const found = parseDecimal(text, { pointIsDecimal: true });
  if (!found.ok) return found;
  return ok({ n: BigInt(found.value.coefficient), d: 10n ** BigInt(found.value.scale) });
}

const COMPOUND =
  /^([\d.,]+)\s*(ft|feet|foot|'|lbs?|pounds?|st|stones?|h|hrs?|hours?|d|days?|y|yrs?|years?)\s*(?:and\s+)?([\d.,]+)\s*([a-z]+|"|'')?$/i;

/** What a second number without a unit means after the first one's unit. */
const SMALLER: Readonly<Record<string, string>> = {
  f: 'in',
  "'": 'in',
  s: 'lb',
  l: 'oz',
  p: 'oz',
  h: 'min',
  d: 'h',
  y: 'mo',
};

function convert(number: Exact, unit: Unit, wanted: Wanted): Exact | null {
  const scale = scaleTo(unit, wanted);
  if (scale === null) return null;
  const scaled = times(number, unit.factor, scale);
  return over(unit.offset === undefined ? scaled : plus(scaled, unit.offset), wanted.is.factor);
}

function one(number: Exact, written: string, wanted: Wanted, reading: Reading): Result<Amount> {
  const name = written === "'" ? 'ft' : written === "''" ? 'in' : written;
  const unit = parseUnit(name, reading.conventions, wanted.is.dimension);
  const data = { unit: written.trim(), accepted: acceptedFor(wanted.unit) };
  if (unit === null) return bad(issue([], 'reckon/unknown-unit', data));
  const value = convert(number, unit, wanted);
  if (value === null) return bad(issue([], 'reckon/unit-of-another-kind', data));
  return ok(unit.by === undefined ? { value } : { value, by: unit.by });
}

function compound(parts: RegExpExecArray, wanted: Wanted, reading: Reading): Result<Amount> {
  const [, large = '', largeUnit = '', small = '', smallUnit] = parts;
  const smaller = smallUnit ?? SMALLER[largeUnit.charAt(0).toLowerCase()] ?? '';
  const numbers = [readNumber(large), readNumber(small)] as const;
  if (!numbers[0].ok) return numbers[0];
  if (!numbers[1].ok) return numbers[1];
  const first = one(numbers[0].value, largeUnit, wanted, reading);
  const second = one(numbers[1].value, smaller, wanted, reading);
  if (!first.ok) return first;
  if (!second.ok) return second;
  const by = first.value.by ?? second.value.by;
  const value = plus(first.value.value, second.value.value);
  return ok(by === undefined ? { value } : { value, by });
}

/** The amount in the wanted unit, exact; or one issue that says what will not do and what will. */
export function readAmount(raw: Raw, wanted: Wanted, reading: Reading): Result<Amount> {
  if (typeof raw === 'object') return ok({ value: ofFraction(raw) });
  if (typeof raw === 'number') {
    const found = decimalOfJson(raw);
    if (!found.ok) return found;
    const { coefficient, scale } = found.value;
    if (coefficient < 0) return bad(issue([], 'number/negative', { text: String(raw) }));
    return bare({ n: BigInt(coefficient), d: 10n ** BigInt(scale) }, wanted, reading);
  }
  const text = raw.trim();
  const parts = COMPOUND.exec(text);
  if (parts !== null) return compound(parts, wanted, reading);
  const letters = /^[^\p{L}%°"]*/u.exec(text)?.[0] ?? '';
  const exponent = /^[\d.,]+e[+-]?\d+$/i.test(text);
  const number = readNumber(exponent ? text : letters);
  if (!number.ok) return number;
  const written = text.slice(letters.length);
  if (written === '') return bare(number.value, wanted, reading);
  return one(number.value, written, wanted, reading);
}

/** Without a unit of its own a number is in the key's unit, or in the asked one. */
const bare = (number: Exact, wanted: Wanted, reading: Reading): Result<Amount> =>
  reading.unitOfKey === undefined ? ok({ value: number }) : one(number, reading.unitOfKey, wanted, reading);
