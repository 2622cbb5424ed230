import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { Issue } from '@feedwright/core/base/result';
import { daysOfYears } from '@feedwright/core/policy/age';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import { parsePolicy, policyJsonSchema, writePolicy } from '@feedwright/core/policy/document';
import { POLICY_KEYS } from '@feedwright/core/policy/keys';
import fc from 'fast-check';
import { runs } from '../runs.ts';
import { policies } from './arbitrary.ts';

const ROW = {
  key: 'hang.open-liquid',
  value: '6 h',
  source: 'feeding protocol 4',
  provenance: 'facility',
  setBy: 'nutrition board',
  setOn: '2026-11-01',
};
const documentOf = (...rows: readonly object[]) => ({
  document: 'feedwright-policy/1',
  name: 'here',
  version: '3',
  rows,
});

const issuesOf = (json: unknown): readonly Issue[] => {
  const read = parsePolicy(json);
  return read.ok ? [] : read.issues;
};
const codesOf = (json: unknown): readonly string[] =>
  issuesOf(json).map((one) => `${one.path.join('.')} ${one.code}`);

test('[PO7] policy → document → policy is the identity, through JSON text', () => {
  fc.assert(
    fc.property(policies, (policy) => {
      const text = JSON.stringify(writePolicy(policy));
      assert.deepEqual(parsePolicy(JSON.parse(text)), { ok: true, value: policy });
    }),
    runs(3000),
  );
});

test('[PO7] document → policy → document is the identity', () => {
  fc.assert(
    fc.property(policies, (policy) => {
      const written = writePolicy(policy);
      const read = parsePolicy(written);
      assert.ok(read.ok);
      assert.deepEqual(writePolicy(read.value), written);
    }),
    runs(1000),
  );
});

test('[PO7] the default policy goes out and comes back', () => {
  assert.deepEqual(parsePolicy(JSON.parse(JSON.stringify(writePolicy(DEFAULT_POLICY)))), {
    ok: true,
    value: DEFAULT_POLICY,
  });
});

test('[PO7] ages and moments are read as they are meant', () => {
  const read = parsePolicy(
    documentOf({ ...ROW, ageFrom: '18 years', setting: 'home', effectiveFrom: '2026-12-01T09:00:00+01:00' }),
  );
  assert.ok(read.ok);
  const [row] = read.value.rows;
  assert.deepEqual(row?.band, { fromDays: daysOfYears(18), belowDays: null });
  assert.equal(row?.setting, 'home');
  assert.equal(row?.effectiveFrom, Date.UTC(2026, 11, 1, 8));
  const young = parsePolicy(documentOf({ ...ROW, ageBelow: '28 days' }));
  assert.deepEqual(young.ok && young.value.rows[0]?.band, { fromDays: 0, belowDays: 28 });
});

test('[PO7] everything that is wrong is found at once, each with its place and, in a row, its key', () => {
  const issues = issuesOf(
    documentOf(
      { ...ROW, value: '8 mL', ageFrom: 'grown up' },
      { ...ROW, setOn: '2026-02-30', effectiveFrom: 'tomorrow' },
    ),
  );
  assert.deepEqual(
    issues.map((one) => [one.path.join('.'), one.code, one.data.key]),
    [
      ['rows.0.value', 'policy/unit', 'hang.open-liquid'],
      ['rows.0.ageFrom', 'policy/age', 'hang.open-liquid'],
      ['rows.1.effectiveFrom', 'time/not-an-instant', 'hang.open-liquid'],
      ['rows.1.setOn', 'time/not-a-day', 'hang.open-liquid'],
    ],
  );
});

test('[PO7] unknown keys and fields are named with the nearest that is known', () => {
  const [key] = issuesOf(documentOf({ ...ROW, key: 'hang.open-liqud' }));
  assert.equal(key?.code, 'field/not-a-choice');
  assert.deepEqual(key?.path, ['rows', 0, 'key']);
  assert.equal(key?.data.nearest, 'hang.open-liquid');
  const [field] = issuesOf(documentOf({ ...ROW, settng: 'home' }));
  assert.equal(field?.code, 'field/unknown');
  assert.equal(field?.data.nearest, 'setting');
  const { source: _, ...without } = ROW;
  assert.deepEqual(codesOf(documentOf(without)), ['rows.0.source field/missing']);
  assert.deepEqual(codesOf(documentOf({ ...ROW, provenance: 'certain' })), [
    'rows.0.provenance field/not-a-choice',
  ]);
  assert.deepEqual(codesOf(documentOf({ ...ROW, setBy: 'a\nb' })), ['rows.0.setBy text/control-character']);
});

test('[PO7] a document of a newer version, or of another kind, says so and nothing else', () => {
  const kind = (document: unknown) => codesOf({ ...documentOf(), document });
  assert.deepEqual(kind('feedwright-policy/2'), ['document document/newer-version']);
  assert.deepEqual(kind('feedwright-order/1'), ['document document/wrong-kind']);
  assert.deepEqual(kind('feedwright-policy/0'), ['document document/wrong-kind']);
  assert.deepEqual(kind(undefined), ['document document/no-kind']);
  for (const json of [null, 7, 'policy', []]) assert.deepEqual(codesOf(json), [' document/not-an-object']);
});

test('[PO7] nothing that JSON can hold makes reading throw', () => {
  const some = fc.oneof(
    fc.jsonValue(),
    fc.jsonValue().map((rows) => ({ ...documentOf(), rows })),
    fc
      .dictionary(fc.constantFrom(...Object.keys(ROW), 'ageFrom', 'ageBelow', 'alternatives'), fc.jsonValue())
      .map((changed) => documentOf({ ...ROW, ...changed })),
    fc
      .tuple(fc.constantFrom(...Object.keys(POLICY_KEYS)), fc.oneof(fc.string(), fc.double(), fc.boolean()))
      .map(([key, value]) => documentOf({ ...ROW, key, value })),
    fc
      .tuple(
        fc.constantFrom(...Object.keys(POLICY_KEYS)),
        fc.bigInt({ min: 0n, max: 10n ** 20n }),
        fc.string(),
      )
      .map(([key, n, unit]) => documentOf({ ...ROW, key, value: `${n} ${unit}` })),
  );
  fc.assert(
    fc.property(some, (json) => {
      const read = parsePolicy(json);
      assert.ok(read.ok || read.issues.length > 0);
    }),
    runs(5000),
  );
});

test('[PO7] the JSON Schema names every key and refuses further fields', () => {
  const schema = JSON.parse(JSON.stringify(policyJsonSchema()));
  const row = schema.properties.rows.items;
  assert.deepEqual(row.properties.key.enum, Object.keys(POLICY_KEYS));
  assert.equal(row.additionalProperties, false);
  assert.deepEqual(row.required, ['key', 'value', 'source', 'provenance', 'setBy', 'setOn']);
});
