/** How is each kind of input asked for, read and held to its band? */
import { bad, type Issue, issue, ok, type Result } from '../../base/result.ts';
import { type Shown, shownChoice } from '../../base/working.ts';
import type { Ask, Band, Because, Give, Known } from '../declare.ts';
import { compare, decimalText, type Exact, of, toFraction } from '../exact.ts';
import {
  acceptedFor,
  fits,
  type Raw,
  type Reading,
  readAmount,
  type Wanted,
  wanting,
} from './quantity-input.ts';

export type Limits = readonly [least: string, most: string, because?: Because];

export const shownKnown = (known: Known): Shown => ({
  kind: 'quantity',
  value: toFraction(known),
  unit: known.unit,
});

const bandOf = ([least, most, because = 'slip']: Limits): Band => ({
  least: of(least),
  most: of(most),
  because,
});

const beyond = (value: Exact, band: Band): boolean =>
  compare(value, band.least) < 0 || compare(value, band.most) > 0;

export const outside = (value: Exact, band: Band, unit: string): Issue =>
  issue([], 'reckon/outside-band', {
    value: decimalText(value),
    least: decimalText(band.least),
    most: decimalText(band.most),
    unit,
    because: band.because,
    accepted: acceptedFor(unit),
  });

type Note = (by: 'ounce' | 'pound') => void;

function readKnown(
  raw: Raw,
  of: Wanted,
  symbol: string,
  band: Band,
  reading: Reading,
  note: Note,
): Result<Known> {
  const amount = readAmount(raw, of, reading);
  if (!amount.ok) return amount;
  const { value, by } = amount.value;
  if (by !== undefined) note(by);
  if (beyond(value, band)) return bad(outside(value, band, of.unit));
  return ok({ ...value, symbol, unit: of.unit, basis: { kind: 'asked', name: symbol } });
}

const shape = { choices: [], required: true, assumed: null, others: [], takes: () => false } as const;

/** One amount. `limits` are in `unit`, both included. A day's amount may be written `/day`. */
export function quantity(
  symbol: string,
  unit: string,
  limits: Limits,
  ...also: readonly string[]
): Ask<Known> {
  const [wanted, band] = [wanting(unit), bandOf(limits)];
  return {
    ...shape,
    takes: (of) => fits(of, wanted),
    kind: 'quantity',
    symbol,
    unit,
    also,
    band,
    read: ([raw = ''], reading, note) => readKnown(raw, wanted, symbol, band, reading, note),
    show: shownKnown,
  };
}

/** How many there are: whole, and at least one. */
export function count(symbol: string, most: string, ...also: readonly string[]): Ask<Known> {
  const any = quantity(symbol, '1', ['1', most, 'definition'], ...also);
  return {
    ...any,
    read: (raw, reading, note) => {
      const found = any.read(raw, reading, note);
      return found.ok && found.value.n % found.value.d !== 0n ? bad(issue([], 'reckon/not-whole')) : found;
    },
  };
}

const MOST_IN_LIST = 200;

/** `6 x 30 mL` is six of them. */
function repeated(part: string): readonly string[] {
  const [, times = '', one = ''] = /^(\d{1,2})\s*[x×*]\s*(.+)$/i.exec(part) ?? [];
  return times === '' ? [part] : Array.from({ length: Number(times) }, () => one);
}

/** `120; 180 mL`, `120 + 180`, `6 x 30 mL`, `120, 180` with a space, or the key given again. */
export const listed = (raw: readonly Raw[]): readonly Raw[] =>
  raw.flatMap((one): readonly Raw[] =>
    typeof one === 'string' ? one.split(/;|\+|,\s+/).flatMap((part) => repeated(part.trim())) : [one],
  );

/** Several amounts of one kind. */
export function quantities(
  symbol: string,
  unit: string,
  limits: Limits,
  ...also: readonly string[]
): Ask<readonly Known[]> {
  const [wanted, band] = [wanting(unit), bandOf(limits)];
  return {
    ...shape,
    takes: (of) => fits(of, wanted),
    kind: 'quantities',
    symbol,
    unit,
    also,
    band,
    read: (raw, reading, note) => {
      const parts = listed(raw);
      if (parts.length > MOST_IN_LIST) return bad(issue([], 'reckon/too-many', { most: MOST_IN_LIST }));
      const found: Known[] = [];
      for (const part of parts) {
        const known = readKnown(part, wanted, symbol, band, reading, note);
        if (!known.ok) return known;
        found.push(known.value);
      }
      return ok(found);
    },
    show: (all) => shownChoice(all.map((one) => `${decimalText(one)} ${unit}`).join(' + ')),
  };
}

export const squash = (text: string): string => text.toLowerCase().replace(/[^a-z0-9%.]/g, '');

/** One of a few named things, each with the other words for it. */
export function choice<const C extends Readonly<Record<string, readonly string[]>>>(
  symbol: string,
  names: C,
  ...also: readonly string[]
): Ask<keyof C & string> {
  const choices = Object.keys(names);
  return {
    ...shape,
    kind: 'choice',
    symbol,
    unit: '',
    also,
    band: null,
    choices,
    read: ([raw = '']) => {
      const text = squash(String(raw));
      const found = choices.find(
        (name) => squash(name) === text || names[name]?.some((it) => squash(it) === text),
      );
      return found === undefined
        ? bad(issue([], 'reckon/not-a-choice', { text: String(raw), choices }))
        : ok(found as keyof C & string);
    },
    show: shownChoice,
  };
}

export function yesOrNo(symbol: string, ...also: readonly string[]): Ask<boolean> {
  const either = choice(symbol, { yes: ['y', 'true', '1'], no: ['n', 'false', '0'] }, ...also);
  return {
    ...either,
    kind: 'switch',
    read: (raw, reading, note) => {
      const found = either.read(raw, reading, note);
      return found.ok ? ok(found.value === 'yes') : found;
    },
    show: (is) => shownChoice(is ? 'yes' : 'no'),
  };
}

/** May be left out; then it is null. */
export const optional = <V>(ask: Ask<V>): Ask<V | null> => ({
  ...ask,
  required: false,
  show: (value) => (value === null ? shownChoice('') : ask.show(value)),
});

/** Taken to be `text` when left out. `others` are what else is in print: then it is a convention, and is said. */
export const assumed = <V>(ask: Ask<V>, text: string, ...others: readonly string[]): Ask<V> => ({
  ...ask,
  required: false,
  assumed: text,
  others,
});

const give = (symbol: string, unit: string, step: string, way: Give['way'], fixed: boolean): Give => ({
  symbol,
  unit,
  step: of(step),
  way,
  fixed,
});

/** A result, shown half-up to the nearest `step`. */
export const gives = (symbol: string, unit: string, step = '1'): Give =>
  give(symbol, unit, step, 'half-up', false);
/** Most that may be: rounded down, whatever rounding is asked for. */
export const givesMost = (symbol: string, unit: string, step = '1'): Give =>
  give(symbol, unit, step, 'down', true);
/** A choice, a moment or a time: nothing to round. */
export const names = (symbol: string): Give => give(symbol, '', '1', 'half-up', true);
