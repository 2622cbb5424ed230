/** How does a calculation read: the result first, then how it came about, which convention, from where, and with what care? */
import type { Working } from '../../base/working.ts';
import { acceptedFor } from '../../reckon/asking/quantity-input.ts';
import { SUBJECTS, type Subject } from '../../reckon/catalogue.ts';
import type { Ask, Calculation } from '../../reckon/declare.ts';
import { decimalText } from '../../reckon/exact.ts';
import type { Reckoned } from '../../reckon/reckon.ts';
import { SOURCES } from '../../reckon/sources.ts';
import { ENGLISH } from '../english/english.ts';
import { type Line, line } from '../line.ts';
import { CAUTIONS, CONVENTIONS, DEFER, REASONS, SUBJECT_TITLES, TITLES } from './english.ts';
import { sourcesOf } from './json.ts';
import { unitText, valueText } from './value.ts';

const SUFFIX =
  /(MlPerKgPerHour|MlPerHour|MlPerKg|MlPerM2|KcalPerMl|KcalPerKg|KcalPerG|KcalPerOz|MmolPerL|MosmPerKg|MgPerDl|MeqPerL|KgPerM2|GPerKg|GPerL|PerMinute|Ml|Oz|Kcal|Kg|Lb|Mg|G|M2|L|Mosm|Mmol|Percent|Mm|Cm|Cel|Hours|Years)$/;

/** `deliveredVolumeMl` is “delivered volume”: the unit stands behind the number. */
export function label(key: string): string {
  const bare = key.replace(SUFFIX, '') || key;
  return bare.replace(
    /([a-z0-9])([A-Z])/g,
    (_, before: string, after: string) => `${before} ${after.toLowerCase()}`,
  );
}

const padded = (rows: readonly (readonly [string, string])[]): readonly string[] => {
  const width = Math.max(0, ...rows.map(([name]) => name.length));
  return rows.map(([name, value]) => `  ${name.padEnd(width)}  ${value}`);
};

function workingText(working: Working): readonly string[] {
  const { result, rounded, unrounded, basis } = working;
  const exact = unrounded === undefined ? '' : valueText(unrounded);
  const shown = valueText(result.is);
  const how =
    rounded === undefined || exact === shown
      ? ''
      : `; shown ${ENGLISH.rounded[rounded.way](decimalText({ n: BigInt(rounded.step.n), d: BigInt(rounded.step.d) }))}: ${shown}`;
  const source = basis.kind === 'published' ? `  [${basis.source}]` : '';
  const inputs = working.inputs.map((one) => `${one.symbol} = ${valueText(one.is)}`).join(', ');
  return [
    `  ${working.equation}  =  ${exact === '' ? shown : exact}${how}${source}`,
    ...(inputs === '' ? [] : [`      ${inputs}`]),
  ];
}

const conventionText = ({ convention, used, others, asked }: Reckoned['conventions'][number]): string =>
  `  ${CONVENTIONS[convention] ?? label(convention)}: ${used}${asked ? ', as asked' : ''}${others.length === 0 ? '' : ` (also in print: ${others.join(', ')}; ask with ${convention}=…)`}`;

export function reckonedLines(reckoned: Reckoned): readonly Line[] {
  const understood = Object.entries(reckoned.understood).map(
    ([key, shown]) => [label(key), valueText(shown)] as const,
  );
  const results = Object.entries(reckoned.result).map(
    ([key, shown]) => [label(key), valueText(shown)] as const,
  );
  const sources = sourcesOf(reckoned.working);
  return [
    line(`${reckoned.name}: ${TITLES[reckoned.name] ?? ''}`, 'title'),
    ...padded(results).map((text) => line(text)),
    line(''),
    line('From', 'heading'),
    ...padded(understood).map((text) => line(text)),
    line('Working', 'heading'),
    ...reckoned.working.flatMap(workingText).map((text) => line(text)),
    ...(reckoned.conventions.length === 0
      ? []
      : [line('Conventions', 'heading'), ...reckoned.conventions.map((one) => line(conventionText(one)))]),
    ...(sources.length === 0
      ? []
      : [
          line('Sources', 'heading'),
          ...sources.map((id) =>
            line(`  ${id}  ${SOURCES[id].cite}; ${ENGLISH.provenance[SOURCES[id].provenance]}`, 'quiet'),
          ),
        ]),
    line(''),
    ...reckoned.cautions.map((code) => line(CAUTIONS[code] ?? code, 'note')),
    line(DEFER, 'note'),
  ];
}

function askText(ask: Ask<unknown>): string {
  const accepted = ask.choices.length > 0 ? ask.choices : ask.unit === '' ? [] : acceptedFor(ask.unit);
  const names = accepted.filter((one) => one !== '').join(', ');
  const band = ask.band === null ? '' : ` ${decimalText(ask.band.least)}–${decimalText(ask.band.most)}`;
  const unit = ask.band === null ? '' : ` ${unitText(ask.unit)}`;
  const need =
    ask.assumed !== null ? `; ${ask.assumed} if not said` : ask.required ? '' : '; may be left out';
  const others = ask.others.length === 0 ? '' : ` (also in print: ${ask.others.join(', ')})`;
  return `${`${band}${unit}`.trimEnd()}${names === '' ? '' : ` [${names}]`}${need}${others}`.replace(
    /^;? /,
    '',
  );
}

export const exampleText = (calculation: Calculation): string =>
  `feedwright work ${calculation.name} ${Object.entries(calculation.example)
    .map(([key, value]) => (/[\s;"'()<>&|*]/.test(value) ? `${key}="${value}"` : `${key}=${value}`))
    .join(' ')}`;

/** One calculation with its inputs, units, bands, equations and an example. */
export function aboutLines(calculation: Calculation): readonly Line[] {
  const inputs = Object.entries(calculation.asks).map(([key, ask]) => [key, askText(ask)] as const);
  return [
    line(`${calculation.name}: ${TITLES[calculation.name] ?? ''}`, 'title'),
    ...padded(inputs).map((text) => line(text)),
    ...calculation.oneOf.map((group) =>
      line(`  one of: ${group.map((keys) => keys.join(' + ')).join(', or ')}`, 'quiet'),
    ),
    ...calculation.equations.map((equation) => line(`  ${equation}`, 'quiet')),
    line(`  ${exampleText(calculation)}`, 'quiet'),
  ];
}

/** All of them by subject: inputs, units and bands, one line an input. */
export const listLines = (): readonly Line[] => [
  ...Object.entries(SUBJECTS).flatMap(([subject, list]) => [
    line(SUBJECT_TITLES[subject as Subject], 'heading'),
    ...list.flatMap((one) => [...aboutLines(one), line('')]),
  ]),
  line(`A band is there because ${Object.values(REASONS).join('; or ')}.`, 'quiet'),
  line('Of any: round=none, round=0.1, round=down, round="down 5"; ounce=29.57; pound=2.2.', 'quiet'),
  line(DEFER, 'note'),
];
