/**
 * How is a working read aloud? `V = r × t = 62.5 mL/h × 8 h = 500 mL`, then where each number came from.
 */
import type { Basis, Shown, Working, WorkingInput } from '../base/working.ts';
import type { DayName, Zone } from '../base/zone.ts';
import { showFraction } from './number.ts';
import { showDuration, showMoment } from './time.ts';
import type { Words } from './words.ts';

export type Reading = { readonly zone: Zone; readonly today: DayName; readonly words: Words };

const UNITLESS = new Set(['1', '']);

/** A value as it is written: the number with its unit, a moment, a time, a choice. */
export function showShown(shown: Shown, { zone, today, words }: Reading): string {
  switch (shown.kind) {
    case 'quantity': {
      const { value, unit } = shown;
      if (UNITLESS.has(unit) && 10_000 % value.d !== 0) return `${value.n}/${value.d}`;
      const number = showFraction(value, unit === 'mL' ? 2 : 4);
      return UNITLESS.has(unit) ? number : `${number} ${unit}`;
    }
    case 'instant':
      return showMoment(shown.at, today, zone, words);
    case 'duration':
      return showDuration(shown.lasts);
    case 'choice':
      return shown.code;
  }
}

export function showBasis(basis: Basis, words: Words): string {
  const said = words.basis;
  switch (basis.kind) {
    case 'order':
      return said.order(basis.path);
    case 'feed-list':
      return said.feedList(basis.feed, basis.field);
    case 'policy':
      return said.policy(
        basis.key,
        basis.setBy,
        basis.source,
        words.provenance[basis.provenance] ?? basis.provenance,
      );
    case 'published':
      return said.published(basis.source, words.provenance[basis.provenance] ?? basis.provenance);
    case 'entry':
      return said.entry(basis.id);
    case 'asked':
      return said.asked(basis.name);
    case 'working':
      return said.working;
    case 'arithmetic':
      return said.arithmetic;
  }
}

/** A working that only hands on one number: what it rests on is what that number rests on. */
const handedOn = ({ equation, result, inputs }: Working): WorkingInput | null =>
  equation === result.symbol && inputs.length === 1 ? (inputs[0] ?? null) : null;

/** A number that was put in: its basis, or where it was worked out itself how, one step further in. */
function inputLines(one: WorkingInput, reading: Reading, told: Set<Working>): readonly string[] {
  const { basis } = one;
  const value = `${one.symbol} = ${showShown(one.is, reading)}`;
  if (basis.kind !== 'working') return [`${value}  (${showBasis(basis, reading.words)})`];
  const plain = handedOn(basis.working);
  if (plain !== null) return inputLines({ ...one, basis: plain.basis }, reading, told);
  if (told.has(basis.working)) return [`${value}  (${showBasis(basis, reading.words)})`];
  const { equation, rule } = basis.working;
  return [`${value}:  ${equation}  [${rule}]`, ...putIn(basis.working, reading, told)];
}

function roundedText({ rounded, result }: Working, reading: Reading): readonly string[] {
  if (rounded === undefined) return [];
  const unit = result.is.kind === 'quantity' ? result.is.unit : '1';
  const step = showShown({ kind: 'quantity', value: rounded.step, unit }, reading);
  return [reading.words.rounded[rounded.way](step)];
}

function putIn(working: Working, reading: Reading, told: Set<Working>): readonly string[] {
  told.add(working);
  return [
    ...working.inputs.flatMap((one) => inputLines(one, reading, told)),
    ...roundedText(working, reading),
  ].map((text) => `  ${text}`);
}

/**
 * The lines of several workings: the equation with its result and rule, then each number put in with its basis and how it
 * was rounded. Numbers that were worked out themselves have theirs below them, to the bottom; what was told is not told again.
 */
export function workingsLines(workings: readonly Working[], reading: Reading): readonly string[] {
  const told = new Set<Working>();
  return workings.flatMap((working) => {
    const result = `${working.result.symbol} = ${showShown(working.result.is, reading)}`;
    return [`${working.equation};  ${result}  [${working.rule}]`, ...putIn(working, reading, told)];
  });
}

export const workingLines = (working: Working, reading: Reading): readonly string[] =>
  workingsLines([working], reading);
