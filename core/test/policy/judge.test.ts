import assert from 'node:assert/strict';
import { test } from 'node:test';
import { compare, type Fraction, fraction, plus } from '@feedwright/core/base/fraction';
import { instant } from '@feedwright/core/base/instant';
import { boundsOf } from '@feedwright/core/policy/bounds';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import { parsePolicy } from '@feedwright/core/policy/document';
import { judgePolicy } from '@feedwright/core/policy/judge';
import { type Key, POLICY_KEYS, type PolicyKey } from '@feedwright/core/policy/keys';
import type { Policy, PolicyRow } from '@feedwright/core/policy/policy';
import fc from 'fast-check';
import { runs } from '../runs.ts';
import { policies } from './arbitrary.ts';

type Written = { readonly key: PolicyKey; readonly value: string | null } & Readonly<Record<string, unknown>>;

const policyOf = (...rows: readonly Written[]): Policy => {
  const given = { source: 'protocol', provenance: 'facility', setBy: 'board', setOn: '2026-11-01' };
  const read = parsePolicy({
    document: 'feedwright-policy/1',
    name: 'here',
    version: '1',
    rows: rows.map((row) => ({ ...given, ...row })),
  });
  assert.ok(read.ok, JSON.stringify(read));
  return read.value;
};

/** What is refused, as `rule row:key`. */
const refused = (...rows: readonly Written[]): readonly string[] =>
  judgePolicy(policyOf(...rows)).map((one) => `${one.data.rule} ${one.path[1]}:${one.data.key}`);

const at = (key: PolicyKey, value: string | null, more: object = {}): Written => ({ key, value, ...more });

test('[PO1] the default policy can be followed: nothing in it is impossible', () => {
  assert.deepEqual(judgePolicy(DEFAULT_POLICY), []);
});

test('[PO10] [PO11] [PO14] each bound holds at, under and over itself', () => {
  const cases: readonly (readonly [
    string,
    PolicyKey,
    possible: readonly string[],
    impossible: readonly string[],
  ])[] = [
    ['PO11', 'hang.closed', ['1 min', '48 h'], ['0 h', '48.1 h', '80 h']],
    ['PO11', 'hang.blenderised', ['2 h', '48 h'], ['0 h', '49 h']],
    ['PO11', 'set.change.open', ['24 h', '48 h'], ['0 h', '72 h']],
    ['PO11', 'carton.keep-for', ['24 h', '48 h'], ['0 h', '49 h']],
    ['PO10', 'flush.continuous.every', ['1 h', '24 h'], ['0 h', '25 h']],
    ['PO10', 'flush.continuous.volume', ['0 mL', '500 mL'], ['501 mL']],
    ['PO10', 'hang.margin', ['0 min', '24 h'], ['25 h']],
    ['PO10', 'ceiling.rate.gastric', ['0.01 mL/h', '500 mL/h'], ['0 mL/h', '500.01 mL/h', '150000 mL/h']],
    ['PO10', 'ceiling.bolus', ['1 mL', '1000 mL'], ['0 mL', '1001 mL', '480 L']],
    ['PO10', 'bag.capacity', ['50 mL', '5 L'], ['0 mL', '5.01 L']],
    ['PO10', 'pump.rate-step', ['0.1 mL/h', '10 mL/h'], ['0 mL/h', '11 mL/h']],
    ['PO10', 'position.head-of-bed', ['0 deg', '90 deg'], ['91 deg']],
    ['PO10', 'residual.consecutive', ['1', '10'], ['0', '11']],
    ['PO10', 'delivered.alert', ['1 %', '100 %'], ['0 %', '101 %', '80']],
    ['PO10', 'account.tolerance.fraction', ['0', '1'], ['1.01', '10']],
    ['PO10', 'refeeding.nice.one.bmi', ['5 kg/m2', '60 kg/m2'], ['4.9 kg/m2', '61 kg/m2']],
    ['PO14', 'placement.ph.limit', ['1', '5.5', '7'], ['0.9', '7.1', '55']],
  ];
  for (const [rule, key, possible, impossible] of cases) {
    for (const value of possible) assert.deepEqual(refused(at(key, value)), [], `${key} ${value}`);
    for (const value of impossible)
      assert.deepEqual(refused(at(key, value)), [`${rule} 0:${key}`], `${key} ${value}`);
  }
});

const NUMBERS = Object.entries(POLICY_KEYS as Record<string, Key>)
  .filter(([, { kind }]) => kind !== 'switch' && kind !== 'choice')
  .map(([name]) => name as PolicyKey);

test('[PO10] every key that asks for a number has bounds, and they are kept to the last unit', () => {
  const [template] = policyOf(at('day.start', '08:00')).rows;
  const isRefused = (key: PolicyKey, value: Fraction): boolean => {
    const given = POLICY_KEYS[key].kind === 'fraction' ? value : value.n / value.d;
    return judgePolicy({ name: '', version: '', rows: [{ ...template!, key, value: given }] }).length > 0;
  };
  for (const key of NUMBERS) {
    const bounds = boundsOf(key);
    assert.ok(bounds !== null, key);
    const step = POLICY_KEYS[key].kind === 'fraction' ? fraction(1, 1000) : fraction(1);
    assert.ok(compare(bounds.least, bounds.most) < 0, key);
    assert.equal(isRefused(key, bounds.least), !bounds.orLeast, `${key} at its least`);
    assert.equal(
      isRefused(key, plus(bounds.least, fraction(-step.n, step.d))),
      true,
      `${key} under its least`,
    );
    assert.equal(isRefused(key, plus(bounds.least, step)), false, `${key} over its least`);
    assert.equal(isRefused(key, bounds.most), false, `${key} at its most`);
    assert.equal(isRefused(key, plus(bounds.most, step)), true, `${key} over its most`);
  }
});

test('[PO12] [PO13] [PO14] [PO15] [PO16] [PO17] [PO18] [PO19] rows that cannot hold together, at, under and over', () => {
  type Pair = readonly [
    rule: string,
    rows: readonly (readonly [PolicyKey, string])[],
    good: readonly string[],
    bad: readonly string[],
  ];
  // The last key takes the values; the rows before it stay.
  const cases: readonly (readonly [...Pair, varied: PolicyKey])[] = [
    ['PO12', [['hang.open-liquid', '8 h']], ['0 min', '479 min'], ['8 h', '9 h'], 'hang.margin'],
    ['PO12', [['hang.margin', '2 h']], ['121 min'], ['2 h', '1 h'], 'hang.blenderised'],
    ['PO13', [['ceiling.bolus', '480 mL']], ['400 mL', '480 mL'], ['481 mL'], 'ceiling.bolus.ask'],
    ['PO14', [['placement.ph.limit', '5.5']], ['5', '5.5'], ['5.6', '6'], 'placement.ph.second-checker-from'],
    [
      'PO15',
      [['position.head-of-bed', '30 deg']],
      ['30 deg', '45 deg'],
      ['29 deg'],
      'position.head-of-bed.target',
    ],
    [
      'PO15',
      [['stoma.bumper.slack.least', '10 mm']],
      ['10 mm', '20 mm'],
      ['9 mm'],
      'stoma.bumper.slack.most',
    ],
    ['PO16', [['bag.capacity', '500 mL']], ['10 mL', '500 mL'], ['501 mL'], 'pour.step'],
    [
      'PO16',
      [
        ['bag.capacity', '100 mL'],
        ['set.prime.line', '60 mL'],
      ],
      ['0 mL', '39 mL'],
      ['40 mL', '41 mL'],
      'set.prime.spill',
    ],
    ['PO17', [['flush.continuous.every', '4 h']], ['30 min', '2 h'], ['121 min'], 'window.flush'],
    ['PO17', [['check.tube.every', '4 h']], ['60 min', '2 h'], ['121 min'], 'window.check'],
    ['PO17', [['check.weight.every', '72 h']], ['120 min', '24 h'], [], 'window.daily'],
    ['PO17', [['check.glucose.every', '6 h']], ['3 h'], ['181 min'], 'window.daily'],
    ['PO17', [['hang.human-milk', '4 h']], ['15 min', '239 min'], ['4 h', '5 h'], 'warn.dry-within'],
    ['PO17', [['hang.human-milk', '4 h']], ['30 min', '239 min'], ['4 h', '5 h'], 'warn.paused-for'],
    ['PO18', [['residual.stop', '500 mL']], ['250 mL', '500 mL'], ['501 mL'], 'residual.alert'],
    ['PO18', [['residual.share.stop', '50 %']], ['25 %', '50 %'], ['51 %'], 'residual.share.alert'],
    [
      'PO19',
      [['refeeding.fall.moderate', '20 %']],
      ['10 %', '19.9 %'],
      ['20 %', '30 %'],
      'refeeding.fall.mild',
    ],
    [
      'PO19',
      [['refeeding.nice.one.bmi', '16 kg/m2']],
      ['16.1 kg/m2', '18.5 kg/m2'],
      ['16 kg/m2'],
      'refeeding.nice.two.bmi',
    ],
    [
      'PO19',
      [['refeeding.start.kcal-per-kg', '10 kcal/kg/d']],
      ['5 kcal/kg/d', '10 kcal/kg/d'],
      ['11 kcal/kg/d'],
      'refeeding.start.extreme.kcal-per-kg',
    ],
  ];
  for (const [rule, fixed, good, bad, varied] of cases) {
    const rows = fixed.map(([key, value]) => at(key, value));
    for (const value of good) assert.deepEqual(refused(...rows, at(varied, value)), [], `${varied} ${value}`);
    for (const value of bad) {
      assert.deepEqual(
        refused(...rows, at(varied, value)),
        [`${rule} ${rows.length}:${varied}`],
        `${varied} ${value}`,
      );
    }
  }
});

test('[PO13] rows contradict each other only where both hold: by age, by place, by time', () => {
  const ask = at('ceiling.bolus.ask', '400 mL', { ageFrom: '18 years' });
  assert.deepEqual(refused(ask, at('ceiling.bolus', '300 mL', { ageBelow: '18 years' })), []);
  assert.deepEqual(refused(ask, at('ceiling.bolus', '300 mL', { ageFrom: '65 years' })), [
    'PO13 1:ceiling.bolus',
  ]);
  const athome = { setting: 'home' };
  assert.deepEqual(
    refused({ ...ask, ...athome }, at('ceiling.bolus', '300 mL', { setting: 'hospital' })),
    [],
  );
  assert.deepEqual(refused({ ...ask, ...athome }, at('ceiling.bolus', '300 mL', athome)), [
    'PO13 1:ceiling.bolus',
  ]);
  // Both were lowered at the same moment: they never held together in the wrong order.
  const since = { effectiveFrom: '2026-12-01T00:00:00Z' };
  const lowered = [at('ceiling.bolus', '480 mL'), ask, at('ceiling.bolus', '300 mL', since)];
  assert.deepEqual(refused(...lowered), ['PO13 2:ceiling.bolus']);
  assert.deepEqual(
    refused(...lowered, at('ceiling.bolus.ask', '250 mL', { ageFrom: '18 years', ...since })),
    [],
  );
});

test('[PO13] what is not set contradicts nothing', () => {
  assert.deepEqual(refused(at('ceiling.bolus.ask', '400 mL'), at('ceiling.bolus', null)), []);
});

test('[PO8] the same people set twice at the same moment, and bands that overlap, are refused', () => {
  const hang = (more: object, value = '20 h'): Written => at('hang.closed', value, more);
  const twice = judgePolicy(policyOf(hang({}), hang({}, '22 h')));
  assert.deepEqual(
    twice.map((one) => [one.code, one.path[1]]),
    [['policy/set-twice', 1]],
  );
  assert.deepEqual(refused(hang({}), hang({ setting: 'home' })), []);
  assert.deepEqual(refused(hang({}), hang({ effectiveFrom: '2026-12-01T00:00:00Z' })), []);
  assert.deepEqual(refused(hang({}), hang({ ageFrom: '18 years' })), []);
  const adults = hang({ ageFrom: '18 years' });
  assert.deepEqual(refused(adults, hang({ ageFrom: '18 years' })), ['PO8 1:hang.closed']);
  // Below is not in the band: up to 18 years and from 18 years meet nowhere, a day more and they do.
  assert.deepEqual(refused(adults, hang({ ageBelow: '18 years' })), []);
  const overlapping = judgePolicy(policyOf(adults, hang({ ageBelow: '6576 days' })));
  assert.deepEqual(
    overlapping.map((one) => [one.code, one.path[1], one.data.ageBelow]),
    [['policy/bands-overlap', 1, '6576 days']],
  );
  assert.deepEqual(refused(adults, hang({ ageFrom: '65 years' })), ['PO8 1:hang.closed']);
});

test('[PO8] a band that ends before it begins holds nobody and is refused', () => {
  assert.deepEqual(refused(at('hang.closed', '20 h', { ageFrom: '28 days', ageBelow: '28 days' })), [
    'PO8 0:hang.closed',
  ]);
  assert.deepEqual(refused(at('hang.closed', '20 h', { ageFrom: '28 days', ageBelow: '29 days' })), []);
});

test('[PO5] a row whose value is of another kind than its key is refused, whoever made it', () => {
  const [row] = policyOf(at('hang.closed', '20 h')).rows;
  const kinds: readonly (readonly [PolicyKey, PolicyRow['value']])[] = [
    ['hang.closed', true],
    ['hang.closed', 1.5],
    ['hang.closed', fraction(1, 2)],
    ['placement.ph.limit', 5.5],
    ['placement.ph.limit', { n: 1, d: 0 }],
    ['carton.keep', 'yes'],
    ['placement.pack', 'x-ray'],
  ];
  for (const [key, value] of kinds) {
    const issues = judgePolicy({ name: '', version: '', rows: [{ ...row!, key, value }] });
    assert.deepEqual(
      issues.map((one) => [one.code, one.data.rule]),
      [['policy/kind', 'PO5']],
      `${key} ${JSON.stringify(value)}`,
    );
  }
});

test('[PO8] judging never throws, names a row that is there, and does not depend on the moment of asking', () => {
  fc.assert(
    fc.property(policies, (policy) => {
      for (const one of judgePolicy(policy)) {
        assert.equal(policy.rows[Number(one.path[1])]?.key, one.data.key);
        assert.match(String(one.data.rule), /^PO\d+$/);
      }
      const later = policy.rows.map((row) => ({
        ...row,
        effectiveFrom: instant((row.effectiveFrom ?? 0) + 1),
      }));
      const earlier = policy.rows.map((row) => ({ ...row, effectiveFrom: instant(row.effectiveFrom ?? 0) }));
      const codes = (rows: readonly PolicyRow[]) => judgePolicy({ ...policy, rows }).map((one) => one.code);
      assert.deepEqual(codes(later), codes(earlier));
    }),
    runs(1000),
  );
});
