import assert from 'node:assert/strict';
import { test } from 'node:test';
import { calculationNamed } from '@feedwright/core/reckon/catalogue';
import { toDouble } from '@feedwright/core/reckon/exact';
import { EXAMPLE_SOURCES } from '@feedwright/core/reckon/printed-examples';
import { type Reckoned, reckon } from '@feedwright/core/reckon/reckon';
import { valueJson } from '@feedwright/core/screen/calculations/value';
import { ACCOUNT, ACCOUNT_TRAPS } from './examples/account.ts';
import { DELIVERY, DELIVERY_TRAPS } from './examples/delivery.ts';
import type { Run } from './examples/example.ts';
import { FURTHER, FURTHER_TRAPS } from './examples/further.ts';
import { INFANTS } from './examples/infants.ts';
import { MIXING, SMALL_BATCH } from './examples/mixing.ts';
import { NEEDS } from './examples/needs.ts';
import { REFEEDING, REFEEDING_TRAPS } from './examples/refeeding.ts';

const EXAMPLES = [...DELIVERY, ...MIXING, ...ACCOUNT, ...NEEDS, ...REFEEDING, ...INFANTS, ...FURTHER];
const TRAPS = [...DELIVERY_TRAPS, ...ACCOUNT_TRAPS, ...REFEEDING_TRAPS, ...FURTHER_TRAPS];

function worked({ work, given }: Pick<Run, 'work' | 'given'>): Reckoned {
  const calculation = calculationNamed(work);
  assert.ok(calculation, `no calculation ${work}`);
  const found = reckon(calculation, given);
  assert.ok(found.ok, `${work} ${JSON.stringify(given)}: ${found.ok ? '' : JSON.stringify(found.issues)}`);
  return found.value;
}

const within = 1e-6;

function check(run: Run): void {
  const { result, unrounded } = worked(run);
  for (const [key, printed] of Object.entries(run.shows ?? {})) {
    const shown = result[key];
    assert.ok(shown, `${run.work} gives no ${key}`);
    assert.equal(valueJson(shown), printed, key);
  }
  for (const [key, exact] of Object.entries(run.exact ?? {})) {
    const value = unrounded[key];
    assert.ok(value, `${run.work} gives no ${key}`);
    assert.ok(Math.abs(toDouble(value) - exact) < within, `${key}: ${toDouble(value)} is not ${exact}`);
  }
}

for (const { id, source, kind, runs, note = '' } of EXAMPLES) {
  const where = `${EXAMPLE_SOURCES[source].split(',')[0]}${note === '' ? '' : `; ${note}`}`;
  test(`[RK2] ${id} comes out as ${kind === 'printed' ? 'printed' : 'its rule says'}: ${where}`, () => {
    for (const run of runs) check(run);
  });
}

test(`[RK2] ${SMALL_BATCH.id} comes out as near its printed 22 kcal/oz as a hand recipe can: ${EXAMPLE_SOURCES[SMALL_BATCH.source]}`, () => {
  const value = worked({ work: 'powder', given: SMALL_BATCH.given }).unrounded.energyKcalPerOz;
  assert.ok(value);
  assert.ok(Math.abs(toDouble(value) - SMALL_BATCH.exact) < within);
  assert.ok(Math.abs(toDouble(value) - SMALL_BATCH.printed) < SMALL_BATCH.within);
});

for (const { id, source, run, printed, because } of TRAPS) {
  test(`[RK3] ${id} is not reproduced: ${because} (${EXAMPLE_SOURCES[source].split(',')[0]})`, () => {
    check(run);
    const { result } = worked(run);
    for (const [key, wrong] of Object.entries(printed)) {
      const shown = result[key];
      assert.ok(shown);
      assert.notEqual(valueJson(shown), wrong, `${key} is the misprint`);
    }
  });
}

test('[RK2] every example has its own id and a source that is listed', () => {
  const ids = EXAMPLES.map((one) => one.id);
  assert.equal(new Set(ids).size, ids.length);
  assert.ok(ids.length + 1 + new Set(TRAPS.map((one) => one.id)).size >= 94);
  assert.ok(EXAMPLES.every((one) => one.runs.length > 0 && one.runs.every((run) => run.shows ?? run.exact)));
});
