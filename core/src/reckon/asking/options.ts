/** What may be asked of every calculation: how to round what is shown, which ounce, which pound. */
import type { Rounding } from '../../base/fraction.ts';
import { bad, type Issue, issue, ok, type Result } from '../../base/result.ts';
import type { Exact } from '../exact.ts';
import { squash } from './asks.ts';
import { type Raw, readNumber } from './quantity-input.ts';
import {
  BEDSIDE_OUNCE,
  COURSE_POUND,
  type Conventions,
  EXACT_POUND,
  MEASURED_OUNCE,
  USUAL,
} from './units.ts';

export type Rounded = { readonly none: boolean; readonly step: Exact | null; readonly way: Rounding | null };

export type Asked = {
  readonly rounded: Rounded;
  readonly conventions: Conventions;
  readonly otherOunce: Exact;
  readonly otherPound: Exact;
  readonly named: ReadonlySet<string>;
};

export const UNIVERSAL: ReadonlySet<string> = new Set([
  'round',
  'rounding',
  'ounce',
  'pound',
  'mlperoz',
  'lbperkg',
]);

const WAYS: ReadonlyMap<string, Rounding> = new Map([
  ['down', 'down'],
  ['cut', 'down'],
  ['truncate', 'down'],
  ['floor', 'down'],
  ['up', 'up'],
  ['ceil', 'up'],
  ['nearest', 'half-up'],
  ['halfup', 'half-up'],
  ['whole', 'half-up'],
]);

const AS_DECLARED: Rounded = { none: false, step: null, way: null };

/** `none`, `down`, `0.1`, `down 5`: a way, a step, or both. */
function readRounding(text: string): Rounded | null {
  let [step, way]: [Exact | null, Rounding | null] = [null, null];
  for (const word of text.trim().split(/[\s:]+/)) {
    if (/^(none|exact|no|unrounded)$/i.test(word)) return { none: true, step: null, way: null };
    const asWay = WAYS.get(squash(word));
    const asStep = asWay === undefined ? readNumber(word) : null;
    if (asWay !== undefined) way = asWay;
    else if (asStep?.ok && asStep.value.n > 0n && step === null) step = asStep.value;
    else return null;
    if (/^whole$/i.test(word)) step = { n: 1n, d: 1n };
  }
  return { none: false, step, way };
}

type Pair = readonly [used: Exact, other: Exact];
const BEDSIDE: Pair = [BEDSIDE_OUNCE, MEASURED_OUNCE];
const MEASURED: Pair = [MEASURED_OUNCE, BEDSIDE_OUNCE];
const EXACT: Pair = [EXACT_POUND, COURSE_POUND];
const COURSE: Pair = [COURSE_POUND, EXACT_POUND];

const named = (names: string, pair: Pair): [string, Pair][] => names.split(' ').map((name) => [name, pair]);

const OUNCES: ReadonlyMap<string, Pair> = new Map([
  ...named('bedside 30 30ml', BEDSIDE),
  ...named('measured exact 29.57 29.5735 29.574 29.5735295625 29.57ml', MEASURED),
]);
const POUNDS: ReadonlyMap<string, Pair> = new Map([
  ...named('exact 0.45359237 2.20462 2.2046 2.205', EXACT),
  ...named('course 2.2', COURSE),
]);

const refused = (key: string, text: string, choices: readonly string[]): Issue =>
  issue([key], 'reckon/not-a-choice', { given: text, text, choices });

/** Reads the universal options out of the inputs; whatever is not said is as usual. */
export function readOptions(inputs: Readonly<Record<string, Raw | readonly Raw[]>>): Result<Asked> {
  const issues: Issue[] = [];
  const said = new Set<string>();
  let round: Rounded = AS_DECLARED;
  let [ounce, pound] = [BEDSIDE, EXACT];
  for (const [written, value] of Object.entries(inputs)) {
    const key = squash(written);
    if (!UNIVERSAL.has(key)) continue;
    const text = String(Array.isArray(value) ? value.at(-1) : value);
    if (key.startsWith('round')) {
      const read = readRounding(text);
      if (read === null)
        issues.push(refused(written, text, ['none', 'whole', '0.1', '5', 'down', 'up', 'down 5']));
      else round = read;
    } else {
      const [name, table] =
        key === 'ounce' || key === 'mlperoz' ? (['ounce', OUNCES] as const) : (['pound', POUNDS] as const);
      const found = table.get(squash(text));
      if (found === undefined)
        issues.push(refused(written, text, name === 'ounce' ? ['30', '29.57'] : ['exact', '2.2']));
      else if (name === 'ounce') ounce = found;
      else pound = found;
      said.add(name);
    }
  }
  if (issues.length > 0) return bad(...issues);
  return ok({
    rounded: round,
    conventions: said.size === 0 ? USUAL : { ounceMl: ounce[0], poundKg: pound[0] },
    otherOunce: ounce[1],
    otherPound: pound[1],
    named: said,
  });
}
