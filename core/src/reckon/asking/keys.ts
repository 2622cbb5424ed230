/** Which input does this key mean, however somebody wrote it? `rate`, `rate_mL_h`, `weightLb`, `protein_g_per_237mL`, `kcal_per_can`. */
import { type Issue, issue } from '../../base/result.ts';
import type { Asks } from '../declare.ts';
import { nearest } from '../nearest.ts';
import { squash } from './asks.ts';
import { UNIVERSAL } from './options.ts';
import type { Raw } from './quantity-input.ts';
import { type Conventions, parseUnit } from './units.ts';

/** Several values under one key are a list. */
export type Inputs = Readonly<Record<string, Raw | readonly Raw[]>>;

export type Given = { readonly raw: readonly Raw[]; readonly unit?: string };
type Found = { readonly key: string; readonly unit?: string };

/** A calculation, or whatever else asks. */
type Asking = { readonly asks: Asks };

const namesOf = new WeakMap<Asks, ReadonlyMap<string, readonly string[]>>();

/** Every name of every input; a second name may stand for two of different kinds: `protein` in g and in g/L. */
function names({ asks }: Asking): ReadonlyMap<string, readonly string[]> {
  const known = namesOf.get(asks);
  if (known !== undefined) return known;
  const made = new Map<string, readonly string[]>();
  for (const [key, ask] of Object.entries(asks)) {
    for (const name of ask.also) made.set(squash(name), [...(made.get(squash(name)) ?? []), key]);
  }
  for (const key of Object.keys(asks)) made.set(squash(key), [key]);
  namesOf.set(asks, made);
  return made;
}

const MOST_WORDS = 12;

/** `rate_mL_h` by its marks; `rateMlPerHour`, which has none, by its capitals. */
const wordsOf = (key: string): readonly string[] =>
  (/[\s_-]/.test(key) ? key : key.replace(/([a-z0-9])([A-Z])/g, '$1 $2'))
    .replace(/(per)(\d)/gi, '$1 $2')
    .split(/[\s_-]+/)
    .slice(0, MOST_WORDS);

/** `mL kg day` and `mL per kg per day` are both mL/kg/day; a number belongs to what follows it. */
const unitIn = (tokens: readonly string[]): string =>
  tokens
    .filter((token) => !/^per$/i.test(token))
    .map((token, index, all) => (index === 0 || /^\d+$/.test(all[index - 1] ?? '') ? token : `/${token}`))
    .join('');

function withUnit(
  keys: readonly string[],
  asks: Asks,
  written: string,
  conventions: Conventions,
): Found | null {
  const unit = parseUnit(written, conventions);
  const key = unit === null ? undefined : keys.find((one) => asks[one]?.takes(unit));
  return key === undefined ? null : { key, unit: written };
}

/** A key that is nothing but a unit (`kcal_per_can`) means the one input that takes it. */
function onlyOneThatTakes(written: string, asks: Asks, conventions: Conventions): Found | null {
  const unit = parseUnit(written, conventions);
  const keys = unit === null ? [] : Object.keys(asks).filter((key) => asks[key]?.takes(unit));
  return keys.length === 1 && keys[0] !== undefined ? { key: keys[0], unit: written } : null;
}

/** Of several inputs that share a name, the first that can read the value: `can=237mL` is its size, `can=2` how many. */
function reading(
  keys: readonly string[],
  raw: readonly Raw[],
  asks: Asks,
  conventions: Conventions,
): string | undefined {
  if (keys.length < 2) return keys[0];
  return keys.find((key) => asks[key]?.read(raw, { conventions }, () => {}).ok) ?? keys[0];
}

function keyOf(
  written: string,
  raw: readonly Raw[],
  calculation: Asking,
  conventions: Conventions,
): Found | null {
  const known = names(calculation);
  const whole = reading(known.get(squash(written)) ?? [], raw, calculation.asks, conventions);
  if (whole !== undefined) return { key: whole };
  const tokens = wordsOf(written);
  for (let end = tokens.length - 1; end > 0; end--) {
    const keys = known.get(squash(tokens.slice(0, end).join('')));
    const found = keys && withUnit(keys, calculation.asks, unitIn(tokens.slice(end)), conventions);
    if (found) return found;
  }
  return onlyOneThatTakes(unitIn(tokens), calculation.asks, conventions);
}

/** The nearest of its keys, or else of its other names, and all keys that it asks for. */
function unknown(written: string, { asks }: Asking): Issue {
  const known = Object.keys(asks);
  const others = Object.values(asks).flatMap((ask) => ask.also);
  const near = nearest(written, [...known, 'round', 'ounce', 'pound']) ?? nearest(written, others);
  return issue([written], 'reckon/unknown-input', { nearest: near, known });
}

const isList = (calculation: Asking, key: string): boolean =>
  /^(quantities|entries)$/.test(calculation.asks[key]?.kind ?? '');

/** What was given for each input; unknown and doubled keys are issues. */
export function match(
  calculation: Asking,
  inputs: Inputs,
  conventions: Conventions,
): { readonly given: ReadonlyMap<string, Given>; readonly issues: Issue[] } {
  const given = new Map<string, Given>();
  const issues: Issue[] = [];
  for (const [written, value] of Object.entries(inputs)) {
    if (UNIVERSAL.has(squash(written))) continue;
    const raw: readonly Raw[] = Array.isArray(value) ? (value as readonly Raw[]) : [value as Raw];
    const found = keyOf(written, raw, calculation, conventions);
    if (found === null) {
      issues.push(unknown(written, calculation));
      continue;
    }
    const before = given.get(found.key)?.raw ?? [];
    const all = [...before, ...raw];
    if (all.length !== 1 && !(isList(calculation, found.key) && all.length > 1))
      issues.push(issue([written], 'reckon/given-twice', { key: found.key }));
    given.set(found.key, { raw: all, ...(found.unit === undefined ? {} : { unit: found.unit }) });
  }
  return { given, issues };
}
