/** What does a calculation answer on the command line, and how does it refuse? */
import { issue } from '@feedwright/core/base/result';
import { CALCULATIONS, calculationNamed, nearestCalculation } from '@feedwright/core/reckon/catalogue';
import type { Calculation } from '@feedwright/core/reckon/declare';
import { reckon } from '@feedwright/core/reckon/reckon';
import { CALCULATION_ISSUES } from '@feedwright/core/screen/calculations/english-issues';
import { calculationJson, catalogueJson, reckonedJson } from '@feedwright/core/screen/calculations/json';
import { aboutLines, listLines, reckonedLines } from '@feedwright/core/screen/calculations/text';
import { ENGLISH } from '@feedwright/core/screen/english/english';
import { GRAVITY_ISSUES } from '@feedwright/core/screen/gravity/english';
import { BAD_INPUT, Refused, refusalLines } from './fail.ts';
import { gravity } from './gravity.ts';
import { plain, printJson, printLines } from './print.ts';

export type WorkOptions = { readonly json?: boolean; readonly about?: boolean };

const WORDS = { ...ENGLISH, issues: { ...ENGLISH.issues, ...CALCULATION_ISSUES, ...GRAVITY_ISSUES } };

/** Gravity answers with bands and a curve, so it is not one of the declared calculations. */
const GRAVITY_TOO =
  'gravity: how fast it runs from a barrel or a bag, as a band; `work gravity --about` says what it asks for.';

/** `KEY=VALUE`; a key given again is a list. */
function inputsOf(pairs: readonly string[]): Readonly<Record<string, readonly string[]>> {
  const inputs = new Map<string, string[]>();
  for (const pair of pairs) {
    const at = pair.indexOf('=');
    if (at < 1) throw new Refused('work', [issue([], 'reckon/not-key-value', { text: pair })]);
    const key = pair.slice(0, at).trim();
    inputs.set(key, [...(inputs.get(key) ?? []), pair.slice(at + 1).trim()]);
  }
  return Object.fromEntries(inputs);
}

function named(name: string): Calculation {
  const found = calculationNamed(name);
  if (found !== null) return found;
  throw new Refused('work', [
    issue([], 'reckon/unknown-calculation', {
      text: name,
      nearest: nearestCalculation(name),
      of: CALCULATIONS.length,
    }),
  ]);
}

function answer(calculation: Calculation, pairs: readonly string[], asJson: boolean): void {
  const found = reckon(calculation, inputsOf(pairs));
  if (!found.ok) throw new Refused(`work ${calculation.name}`, found.issues);
  if (asJson) printJson(reckonedJson(found.value));
  else printLines(reckonedLines(found.value));
}

function orThrow(
  name: string | undefined,
  pairs: readonly string[],
  { json = false, about = false }: WorkOptions,
): void {
  if (name === undefined) {
    if (json) printJson(catalogueJson());
    else printLines([...listLines(), plain(GRAVITY_TOO)]);
    return;
  }
  if (/^(by-?)?gravity$/i.test(name.trim())) {
    gravity(inputsOf(pairs), { json, about });
    return;
  }
  const calculation = named(name);
  if (!about) answer(calculation, pairs, json);
  else if (json) printJson(calculationJson(calculation));
  else printLines(aboutLines(calculation));
}

export function work(name: string | undefined, pairs: readonly string[], options: WorkOptions): void {
  try {
    orThrow(name, pairs, options);
  } catch (problem) {
    if (!(problem instanceof Refused)) throw problem;
    process.stderr.write(`${refusalLines(problem, WORDS).join('\n')}\n`);
    process.exitCode = BAD_INPUT;
  }
}
