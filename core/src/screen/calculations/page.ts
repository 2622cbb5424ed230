/** What stands on the page that lists every calculation? Made from the declarations, so that it cannot say anything else. */

import { acceptedFor } from '../../reckon/asking/quantity-input.ts';
import { SUBJECTS, type Subject } from '../../reckon/catalogue.ts';
import type { Ask, Calculation } from '../../reckon/declare.ts';
import { decimalText } from '../../reckon/exact.ts';
import { reckon } from '../../reckon/reckon.ts';
import { SOURCES, type SourceId } from '../../reckon/sources.ts';
import { ENGLISH } from '../english/english.ts';
import { CAUTIONS, DEFER, REASONS, SUBJECT_TITLES, TITLES } from './english.ts';
import { exampleText, label } from './text.ts';
import { unitText, valueText } from './value.ts';

const cell = (text: string): string => text.replaceAll('|', '\\|');
const row = (...cells: readonly string[]): string => `| ${cells.map(cell).join(' | ')} |`;

function unitCell(ask: Ask<unknown>): string {
  if (ask.choices.length > 0) return ask.choices.join(', ');
  if (ask.unit === '')
    return ask.kind === 'entries' ? 'times' : ask.kind === 'zone' ? 'Europe/London' : '08:00';
  return acceptedFor(ask.unit)
    .filter((one) => one !== '')
    .join(', ');
}

function bandCell({ band, unit }: Ask<unknown>): string {
  if (band === null) return '';
  const range = `${decimalText(band.least)}–${decimalText(band.most)} ${unitText(unit)}`.trim();
  return `${range}: ${REASONS[band.because]}`;
}

function needCell(ask: Ask<unknown>): string {
  if (ask.assumed !== null)
    return `${ask.assumed} if not said${ask.others.length === 0 ? '' : `; also in print: ${ask.others.join(', ')}`}`;
  return ask.required ? 'needed' : 'may be left out';
}

const inputs = (calculation: Calculation): readonly string[] => [
  '| input | other names | units or choices | band, and why | needed? |',
  '| --- | --- | --- | --- | --- |',
  ...Object.entries(calculation.asks).map(([key, ask]) =>
    row(`\`${key}\``, ask.also.join(', '), unitCell(ask), bandCell(ask), needCell(ask)),
  ),
];

const source = (id: SourceId): string =>
  `- ${id}: ${SOURCES[id].cite} (${ENGLISH.provenance[SOURCES[id].provenance]})`;

function worked(calculation: Calculation): readonly string[] {
  const found = reckon(calculation, calculation.example);
  if (!found.ok) return [];
  const results = Object.entries(found.value.result).map(
    ([key, shown]) => `${label(key)} ${valueText(shown)}`,
  );
  return ['', `\`${exampleText(calculation)}\``, '', `→ ${results.join('; ')}`];
}

const section = (calculation: Calculation): readonly string[] => [
  `### ${calculation.name}`,
  '',
  `${(TITLES[calculation.name] ?? '').replace(/^./, (first) => first.toUpperCase())}.${calculation.also.length === 0 ? '' : ` Also found as ${calculation.also.join(', ')}.`}`,
  '',
  ...inputs(calculation),
  '',
  ...calculation.oneOf.flatMap((group) => [
    `One of: ${group.map((keys) => keys.map((key) => `\`${key}\``).join(' + ')).join(', or ')}.`,
    '',
  ]),
  `Gives ${Object.entries(calculation.gives)
    .map(
      ([key, give]) =>
        `\`${key}\`${give.unit === '' || give.unit === '1' ? '' : ` (${unitText(give.unit)})`}`,
    )
    .join(', ')}.`,
  '',
  ...calculation.equations.map((equation) => `    ${equation}`),
  '',
  ...(calculation.sources.length === 0
    ? ['- arithmetic: no source is needed']
    : calculation.sources.map(source)),
  ...calculation.cautions.map((code) => `- ${CAUTIONS[code] ?? code}`),
  ...worked(calculation),
  '',
];

/** docs/calculations.md, whole. */
export const calculationsPage = (): string =>
  [
    '# The calculations',
    '',
    'Written by `node tools/calculations.ts` from the calculations’ own declarations; do not edit it here.',
    '',
    DEFER,
    '',
    'Every result is rounded half-up to the step that suits its unit (whole mL, kcal, g, mL/h; a tenth of a kg) unless `round=` asks otherwise: `round=none`, `round=0.1`, `round=down`, `round="down 5"`. A ceiling is rounded down whatever is asked. The unrounded value stands in the working. `ounce=29.57` and `pound=2.2` ask for the other convention. A source that is marked “from memory” was not read: check it before use.',
    '',
    ...Object.entries(SUBJECTS).flatMap(([subject, list]) => [
      `## ${SUBJECT_TITLES[subject as Subject]}`,
      '',
      ...(list as readonly Calculation[]).flatMap(section),
    ]),
  ]
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trimEnd()
    .concat('\n');

const HOW: Readonly<Record<string, string>> = {
  read: 'read',
  secondary: 'secondary',
  'from-memory': 'from memory',
};

/** The table of section “Equations” of docs/sources.md. */
export const equationSources = (): string =>
  [
    '| id | source | what was taken from it, and how |',
    '| --- | --- | --- |',
    ...Object.entries(SOURCES)
      .filter(([id]) => id.startsWith('E'))
      .map(([id, { cite, taken, provenance }]) =>
        row(id, cite, `${HOW[provenance] ?? provenance}: ${taken}`),
      ),
  ].join('\n');
