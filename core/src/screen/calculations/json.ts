/** What does a program get for a calculation? Keys carry the unit; every number has its working and its source. */
import type { Basis, Working } from '../../base/working.ts';
import { acceptedFor } from '../../reckon/asking/quantity-input.ts';
import { CALCULATIONS, SUBJECTS } from '../../reckon/catalogue.ts';
import type { Ask, Calculation } from '../../reckon/declare.ts';
import { decimalText } from '../../reckon/exact.ts';
import type { Reckoned } from '../../reckon/reckon.ts';
import { SOURCES, type SourceId } from '../../reckon/sources.ts';
import { CAUTIONS, DEFER, REASONS, TITLES } from './english.ts';
import { unitText, valueJson } from './value.ts';

/** Where a number put in came from: asked, printed (with its source), worked out before, or plain arithmetic. */
const from = (basis: Basis): string =>
  basis.kind === 'published' ? `${basis.source} (${basis.provenance})` : basis.kind;

const workingJson = (working: Working) => ({
  symbol: working.result.symbol,
  equation: working.equation,
  inputs: working.inputs.map((one) => ({
    symbol: one.symbol,
    value: valueJson(one.is),
    ...(one.is.kind === 'quantity' ? { unit: unitText(one.is.unit) } : {}),
    from: from(one.basis),
  })),
  result: valueJson(working.result.is),
  ...(working.result.is.kind === 'quantity' ? { unit: unitText(working.result.is.unit) } : {}),
  ...(working.unrounded === undefined ? {} : { unrounded: valueJson(working.unrounded) }),
  ...(working.rounded === undefined
    ? {}
    : {
        rounded: {
          way: working.rounded.way,
          step: valueJson({ kind: 'quantity', value: working.rounded.step, unit: '1' }),
        },
      }),
  rule: working.rule,
  ...(working.basis.kind === 'published'
    ? { source: working.basis.source, provenance: working.basis.provenance }
    : { source: working.basis.kind }),
});

/** The published sources that the workings name, each once. */
export const sourcesOf = (workings: readonly Working[]): readonly SourceId[] => {
  const named = workings.flatMap((working) => [working.basis, ...working.inputs.map((one) => one.basis)]);
  return [
    ...new Set(named.flatMap((basis) => (basis.kind === 'published' ? [basis.source as SourceId] : []))),
  ];
};

const mapped = <T, U>(record: Readonly<Record<string, T>>, change: (value: T) => U): Record<string, U> =>
  Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value)]));

export const reckonedJson = (reckoned: Reckoned) => ({
  calculation: reckoned.name,
  result: mapped(reckoned.result, (shown) => valueJson(shown)),
  unrounded: mapped(reckoned.unrounded, (exact) => Number(decimalText(exact, 9))),
  working: reckoned.working.map(workingJson),
  conventions: reckoned.conventions,
  understood: mapped(reckoned.understood, (shown) => valueJson(shown)),
  sources: sourcesOf(reckoned.working).map((id) => ({
    id,
    cite: SOURCES[id].cite,
    provenance: SOURCES[id].provenance,
  })),
  cautions: [
    ...reckoned.cautions.map((code) => ({ code, says: CAUTIONS[code] ?? code })),
    { code: 'defer', says: DEFER },
  ],
});

const askJson = (key: string, ask: Ask<unknown>) => ({
  key,
  also: ask.also,
  kind: ask.kind,
  required: ask.required,
  ...(ask.unit === ''
    ? {}
    : { unit: unitText(ask.unit), accepted: acceptedFor(ask.unit).filter((one) => one !== '') }),
  ...(ask.band === null
    ? {}
    : {
        band: {
          least: Number(decimalText(ask.band.least)),
          most: Number(decimalText(ask.band.most)),
          because: REASONS[ask.band.because],
        },
      }),
  ...(ask.choices.length === 0 ? {} : { choices: ask.choices }),
  ...(ask.assumed === null ? {} : { assumed: ask.assumed }),
  ...(ask.others.length === 0 ? {} : { othersInPrint: ask.others }),
});

export const calculationJson = (calculation: Calculation) => ({
  name: calculation.name,
  title: TITLES[calculation.name] ?? calculation.name,
  also: calculation.also,
  inputs: Object.entries(calculation.asks).map(([key, ask]) => askJson(key, ask)),
  oneOf: calculation.oneOf,
  gives: Object.entries(calculation.gives).map(([key, give]) => ({ key, unit: unitText(give.unit) })),
  equations: calculation.equations,
  sources: calculation.sources.map((id) => ({
    id,
    cite: SOURCES[id].cite,
    provenance: SOURCES[id].provenance,
  })),
  example: calculation.example,
});

export const catalogueJson = () => ({
  calculations: CALCULATIONS.map((one) => ({
    subject: Object.entries(SUBJECTS).find(([, list]) => (list as readonly Calculation[]).includes(one))?.[0],
    ...calculationJson(one),
  })),
});
