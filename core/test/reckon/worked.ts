/** Works a calculation by its name, for tests: what it gives, or the codes of what it refuses. */
import assert from 'node:assert/strict';
import type { Inputs } from '@feedwright/core/reckon/asking/keys';
import { calculationNamed } from '@feedwright/core/reckon/catalogue';
import type { Calculation } from '@feedwright/core/reckon/declare';
import type { Exact } from '@feedwright/core/reckon/exact';
import { type Reckoned, reckon } from '@feedwright/core/reckon/reckon';
import { valueJson } from '@feedwright/core/screen/calculations/value';

export function named(name: string): Calculation {
  const found = calculationNamed(name);
  assert.ok(found, `no calculation ${name}`);
  return found;
}

export function worked(name: string, inputs: Inputs): Reckoned {
  const found = reckon(named(name), inputs);
  assert.ok(found.ok, `${name} ${JSON.stringify(inputs)}: ${found.ok ? '' : JSON.stringify(found.issues)}`);
  return found.value;
}

/** What is shown, by key. */
export const shows = (name: string, inputs: Inputs): Readonly<Record<string, number | string>> =>
  Object.fromEntries(
    Object.entries(worked(name, inputs).result).map(([key, shown]) => [key, valueJson(shown)]),
  );

/** The number before rounding. */
export function exactly(name: string, inputs: Inputs, key: string): Exact {
  const value = worked(name, { ...inputs, round: 'none' }).unrounded[key];
  assert.ok(value, `${name} gives no ${key}`);
  return value;
}

export function refuses(name: string, inputs: Inputs): readonly string[] {
  const found = reckon(named(name), inputs);
  return found.ok ? [] : found.issues.map((one) => one.code);
}
