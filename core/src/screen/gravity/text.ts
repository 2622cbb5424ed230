/** How does an answer about gravity read: how fast with its band, what it comes to, what was assumed, what to mind? */
import { approximately, type Fraction } from '../../base/fraction.ts';
import type { Working } from '../../base/working.ts';
import type { Banded } from '../../reckon/gravity/figures.ts';
import type { Gravity, GravityFlow } from '../../reckon/gravity/gravity.ts';
import type { Assumption } from '../../reckon/gravity/setup.ts';
import { HYDRAULICS } from '../../reckon/gravity/sources.ts';
import { BLANK, type Line, line, section } from '../line.ts';
import { showFraction } from '../number.ts';
import { ALWAYS, ASSUMPTIONS, BEDSIDE, DEFERS, FINDINGS, YES_OR_NO } from './english.ts';

const PLACES = 4;
const number = (value: Fraction | null, never: string): string =>
  value === null ? never : showFraction(value, PLACES);

const unitText = (unit: string): string => (unit === '1' ? '' : ` ${unit}`);

/** `about 14 (8.1 to 24) mL/min`. */
function about({ low, mid, high, unit }: Banded, never: string): string {
  if (low === null && mid === null && high === null) return never;
  const likely = mid === null ? never : `about ${number(mid, never)}`;
  return `${likely} (${number(low, never)} to ${number(high, never)})${unitText(unit)}`;
}

/** `about +29 % (+25 % to +37 %)`. */
const percent = ({ low, mid, high }: Banded): string => {
  const change = (of: Fraction | null) =>
    of === null ? 'not to be said' : `${approximately(of) > 0 ? '+' : ''}${showFraction(of, PLACES)} %`;
  return mid === null ? change(mid) : `about ${change(mid)} (${change(low)} to ${change(high)})`;
};

const STOPS = 'stops before it is all in';
const TOO_HIGH = 'over 200';

function rows(of: GravityFlow): readonly (readonly [string, string])[] {
  return [
    ['flow at this height', about(of.flow, 'none')],
    [`time${of.pours > 1 ? `, filled ${of.pours} times` : ''}`, about(of.time, STOPS)],
    ['10 cm higher', percent(of.higher)],
    ['10 cm lower', percent(of.lower)],
    ['stands still at', `${about(of.standsAt, 'none')} over the stomach`],
    ...(of.heightFor === null
      ? []
      : [['height for the time wanted', about(of.heightFor, TOO_HIGH)] as const]),
    ['to prime', about(of.priming, 'none')],
    ['plain water would run', about(of.water, 'none')],
  ];
}

const assumptionText = ({ code, data, source }: Assumption): string =>
  `  ${ASSUMPTIONS[code]?.(data) ?? code}${source === null ? '' : ` [${source}${HYDRAULICS[source].provenance === 'from-memory' ? ', from memory' : ''}]`}`;

const takenForGranted = (assumptions: readonly Assumption[]): readonly Line[] =>
  [...assumptions.map(assumptionText), ...ALWAYS.map((one) => `  ${one}`)].map((one) => line(one));

const resultText = ({ result: { is } }: Pick<Working, 'result'>): string =>
  is.kind === 'quantity'
    ? `${showFraction(is.value, PLACES)}${unitText(is.unit)}`
    : is.kind === 'choice'
      ? is.code
      : '';

function workingLines({ equation, result, inputs, basis }: Working): readonly Line[] {
  const from = inputs
    .map(({ symbol, is }) => `${symbol} = ${resultText({ result: { symbol, is } })}`)
    .join(', ');
  const source = basis.kind === 'published' ? `  [${basis.source}]` : '';
  return [
    line(`  ${equation};  ${result.symbol} = ${resultText({ result })}${source}`),
    line(`      ${from}`, 'quiet'),
  ];
}

/** How far the sum may be from the equations: a bound, not the band. */
const errorText = ({ error }: GravityFlow): string =>
  `  the time is summed to within ${error < 0.05 ? '0.1' : error.toPrecision(1)} s of its equation; the band is what is not known of tube, feed and stomach, 90 of 100 times`;

export function gravityLines(of: Gravity): readonly Line[] {
  if (of.kind === 'yes-or-no')
    return [
      line('By gravity', 'title'),
      line(YES_OR_NO[of.answer], of.answer === 'no' ? 'stop' : 'body'),
      BLANK,
      ...section('Taken for granted', takenForGranted(of.assumptions)),
      line(DEFERS, 'note'),
    ];
  const all = rows(of);
  const width = Math.max(...all.map(([name]) => name.length));
  return [
    line('By gravity', 'title'),
    ...all.map(([name, value]) => line(`  ${name.padEnd(width)}  ${value}`)),
    BLANK,
    ...section(
      'What it comes to',
      of.findings.map(({ code, data }) => line(`  ${FINDINGS[code]?.(data) ?? code}`, 'ask')),
    ),
    ...section('Taken for granted', takenForGranted(of.assumptions)),
    ...section('Working', [
      ...workingLines(of.flow.working),
      ...workingLines(of.time.working),
      line(errorText(of)),
    ]),
    ...section(
      'At the bedside',
      BEDSIDE.map((one) => line(`  ${one}`)),
    ),
    line(DEFERS, 'note'),
  ];
}
