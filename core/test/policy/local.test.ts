import assert from 'node:assert/strict';
import { test } from 'node:test';
import { hours, instant } from '@feedwright/core/base/instant';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import { writePolicy } from '@feedwright/core/policy/document';
import { readLocalPolicy } from '@feedwright/core/policy/local';
import { ask, type PolicyContext } from '@feedwright/core/policy/policy';

const GROWN: PolicyContext = { ageDays: 20_000, setting: 'hospital', at: instant(Date.UTC(2026, 10, 25)) };
const OWN = { source: 'protocol 4', provenance: 'facility', setBy: 'nutrition board', setOn: '2026-11-01' };
const documentOf = (...rows: readonly object[]) => ({
  document: 'feedwright-policy/1',
  name: 'St Elsewhere',
  version: '3',
  rows,
});

test('[PO2] a facility’s document is laid over the default: its rows answer, the default answers the rest', () => {
  const read = readLocalPolicy(documentOf({ ...OWN, key: 'hang.open-liquid', value: '6 h' }));
  assert.ok(read.ok);
  assert.equal(read.value.name, 'St Elsewhere');
  assert.equal(read.value.version, '1+3');
  const own = ask(read.value, 'hang.open-liquid', GROWN);
  assert.ok(own.known && own.value === hours(6) && own.basis.kind === 'policy');
  assert.equal(own.basis.setBy, 'nutrition board');
  const rest = ask(read.value, 'hang.closed', GROWN);
  assert.ok(rest.known && rest.value === hours(24));
});

test('[PO2] an empty document is the default', () => {
  const read = readLocalPolicy(documentOf());
  assert.deepEqual(read.ok && read.value.rows, DEFAULT_POLICY.rows);
});

test('[PO9] the default policy, copied whole into a facility’s document, changes nothing', () => {
  const copy = { ...writePolicy(DEFAULT_POLICY), name: 'St Elsewhere', version: '3' };
  const read = readLocalPolicy(JSON.parse(JSON.stringify(copy)));
  assert.deepEqual(read.ok && read.value.rows, DEFAULT_POLICY.rows);
});

test('[PO9] a copied default whose value was changed is refused until the facility takes it over', () => {
  const rows = writePolicy(DEFAULT_POLICY).rows;
  const place = rows.findIndex((row) => row.key === 'hang.open-liquid');
  const changed = rows.map((row, index) => (index === place ? { ...row, value: '7 h' } : row));
  const refused = readLocalPolicy(documentOf(...changed));
  assert.deepEqual(refused.ok ? [] : refused.issues.map((one) => [one.code, one.path, one.data.key]), [
    ['policy/default-changed', ['rows', place, 'isDefault'], 'hang.open-liquid'],
  ]);
  const { isDefault: _, ...takenOver } = { ...rows[place], value: '7 h', setBy: 'nutrition board' };
  const read = readLocalPolicy(documentOf(...rows.map((row, index) => (index === place ? takenOver : row))));
  assert.ok(read.ok);
  const answer = ask(read.value, 'hang.open-liquid', GROWN);
  assert.ok(answer.known && answer.value === hours(7));
});

test('[PO18] what contradicts the default is refused, named by its place in the facility’s own document', () => {
  const read = readLocalPolicy(
    documentOf(
      { ...OWN, key: 'hang.closed', value: '20 h' },
      { ...OWN, key: 'residual.alert', value: '600 mL' },
    ),
  );
  assert.ok(!read.ok);
  assert.deepEqual(
    read.issues.map((one) => [one.path, one.code, one.data.rule, one.data.against]),
    [[['rows', 1, 'value'], 'policy/more-than', 'PO18', [{ key: 'residual.stop', value: '500 mL' }]]],
  );
});
