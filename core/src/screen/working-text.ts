/**
 * How is a working read aloud? `V = r × t = 62.5 mL/h × 8 h = 500 mL`, then where each number came from.
 */
import type { Basis, Shown, Working } from '../base/working.ts';
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
      const number = showFraction(shown.value, shown.unit === 'mL' ? 2 : 4);
      return UNITLESS.has(shown.unit) ? number : `${number} ${shown.unit}`;
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

/** The lines of a working: the equation with its result, each number put in with its basis, how it was rounded, the rule. */
export function workingLines(working: Working, reading: Reading): readonly string[] {
  const { words } = reading;
  const result = `${working.result.symbol} = ${showShown(working.result.is, reading)}`;
  const inputs = working.inputs.map(
    (one) => `  ${one.symbol} = ${showShown(one.is, reading)}  (${showBasis(one.basis, words)})`,
  );
  const rounded =
    working.rounded === undefined
      ? []
      : [`  ${words.rounded[working.rounded.way](showFraction(working.rounded.step, 4))}`];
  return [`${working.equation};  ${result}  [${working.rule}]`, ...inputs, ...rounded];
}
