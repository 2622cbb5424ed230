/** On what does a calculation write its results? Each one with its working, and rounded only where it is shown. */
import { bad, issue } from '../base/result.ts';
import { ARITHMETIC, type Basis, type Shown, type Working } from '../base/working.ts';
import { shownKnown } from './asking/asks.ts';
import type { Asked, Rounded } from './asking/options.ts';
import type { Calculation, Give, Known, Line, NumberLine, Sheet } from './declare.ts';
import { type Exact, rounded, toFraction } from './exact.ts';
import { basisOf, type SourceId } from './sources.ts';

export type Used = {
  readonly convention: string;
  readonly used: string;
  readonly others: readonly string[];
  /** Whether it was asked for, or is what is taken when nothing is said. */
  readonly asked: boolean;
};

/** What came up while working. */
export type Extra = {
  readonly cautions: string[];
  readonly conventions: Used[];
  readonly by: Set<'ounce' | 'pound'>;
};

/** A ceiling keeps its own way; everything else follows what was asked. */
function roundingOf(give: Give, asked: Rounded): { readonly step: Exact; readonly way: Give['way'] } | null {
  if (asked.none) return give.fixed ? { step: give.step, way: give.way } : null;
  return { step: asked.step ?? give.step, way: give.fixed ? give.way : (asked.way ?? give.way) };
}

const inputs = (from: readonly Known[]): Working['inputs'] =>
  from.map((known) => ({ symbol: known.symbol, is: shownKnown(known), basis: known.basis }));

export function sheetFor(calculation: Calculation, asked: Asked, extra: Extra): Sheet<string> {
  const [own] = calculation.sources;
  const giveOf = (key: string): Give => calculation.gives[key] as Give;
  const basis = (source: SourceId | 'arithmetic' | undefined = own ?? 'arithmetic'): Basis =>
    source === 'arithmetic' ? ARITHMETIC : basisOf(source);
  const shown: Sheet<string>['shown'] = (key, equation, from, is, source): Line => {
    const result = { symbol: giveOf(key).symbol, is };
    const working: Working = {
      equation,
      inputs: inputs(from),
      result,
      rule: calculation.rule,
      basis: basis(source),
    };
    return { key, shown: is, exact: null, working };
  };
  const number: Sheet<string>['number'] = (key, equation, from, value, source): NumberLine => {
    const { symbol, unit } = giveOf(key);
    const how = roundingOf(giveOf(key), asked.rounded);
    const as = (exact: Exact): Shown => ({ kind: 'quantity', value: toFraction(exact), unit });
    const is = as(how === null ? value : rounded(value, how.step, how.way));
    const working: Working = {
      equation,
      inputs: inputs(from),
      result: { symbol, is },
      unrounded: as(value),
      ...(how === null ? {} : { rounded: { way: how.way, step: toFraction(how.step) } }),
      rule: calculation.rule,
      basis: basis(source),
    };
    return {
      ...value,
      symbol,
      unit,
      basis: { kind: 'working', working },
      key,
      shown: is,
      exact: value,
      working,
    };
  };
  return {
    number,
    shown,
    choice: (key, equation, from, code, source) =>
      shown(key, equation, from, { kind: 'choice', code }, source),
    rounded: (line) => {
      const how = roundingOf(giveOf(line.key), asked.rounded);
      return how === null ? line : { ...line, ...rounded(line, how.step, how.way) };
    },
    printed: (symbol, value, unit, source) => ({ ...value, symbol, unit, basis: basis(source) }),
    conventions: asked.conventions,
    note: (by) => {
      extra.by.add(by);
    },
    ounce: () => {
      extra.by.add('ounce');
      return { ...asked.conventions.ounceMl, symbol: 'oz', unit: 'mL/[foz_us]', basis: basisOf('E50') };
    },
    pound: () => {
      extra.by.add('pound');
      return { ...asked.conventions.poundKg, symbol: 'lb', unit: 'kg/[lb_av]', basis: basisOf('E50') };
    },
    refuse: (key, code, data) => bad(issue([key], code, data)),
    caution: (code) => {
      extra.cautions.push(code);
    },
    used: (convention, used, others) => {
      extra.conventions.push({ convention, used, others, asked: false });
    },
  };
}
