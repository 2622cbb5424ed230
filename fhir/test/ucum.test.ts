/** Units against UCUM's reference library (@lhncbc/ucum-lhc): which codes are valid, and what each stands for. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { toDouble } from '@feedwright/core/reckon/exact';
import ucum from '@lhncbc/ucum-lhc';
import { isBracketTrap, likelyUcum, parseUcum } from '../src/ucum.ts';

const library = ucum.UcumLhcUtils.getInstance();

/** Every atom of our table, in the unit that its dimension is counted in. */
const ATOMS: Readonly<Record<string, readonly string[]>> = {
  mL: ['mL', 'ml', 'L', 'l', 'dL', 'dl', 'cm3', '[foz_us]', '[tbs_us]', '[tsp_us]', '[cup_us]', '[foz_br]'],
  h: ['s', 'min', 'h', 'd', 'wk'],
  kcal: ['kcal', 'cal', 'kcal_th', 'cal_th', '[Cal]', 'kJ', 'J'],
  kg: ['kg', 'g', 'mg', '[lb_av]', '[oz_av]'],
  cm: ['cm', 'm', 'mm', '[in_i]', '[ft_i]'],
  '[Ch]': ['[Ch]'],
};

const BUILT: Readonly<Record<string, readonly string[]>> = {
  'mL/h': [
    'mL/h',
    'ml/h',
    'mL/d',
    'mL/(24.h)',
    'mL/(8.h)',
    'mL/min',
    'L/d',
    'dL/h',
    '[foz_us]/h',
    '[foz_us]/(3.h)',
  ],
  'kcal/mL': [
    'kcal/mL',
    'cal/mL',
    'kcal/L',
    'kcal/(100.mL)',
    'kcal/dL',
    'kcal/[foz_us]',
    'cal/[foz_us]',
    'kJ/mL',
    'kJ/(100.mL)',
    '[Cal]/mL',
  ],
  'mL/kg/h': ['mL/kg/h', 'mL/kg/d', 'mL/g/h'],
  'kcal/kg/h': ['kcal/kg/d', 'kJ/kg/d'],
};

for (const [base, codes] of Object.entries({ ...ATOMS, ...BUILT })) {
  for (const code of codes) {
    test(`[FH7] ${code} is valid UCUM and stands for as many ${base} as the reference library says`, () => {
      const unit = parseUcum(code);
      assert.ok(unit !== null);
      assert.equal(library.validateUnitString(code).status, 'valid');
      const { status, toVal } = library.convertUnitTo(code, 1, base);
      assert.equal(status, 'succeeded');
      assert.ok(typeof toVal === 'number');
      // The library reckons in doubles; ours is exact.
      assert.ok(Math.abs(toDouble(unit.factor) / toVal - 1) < 1e-12, `${toDouble(unit.factor)} and ${toVal}`);
      assert.equal(unit.dimension, parseUcum(base)?.dimension);
    });
  }
}

/** What the library refuses, with the code that was surely meant. */
const INVALID: readonly (readonly [written: string, meant: string])[] = [
  ['ml/hr', 'mL/h'],
  ['mL/hr', 'mL/h'],
  ['cc', 'mL'],
  ['cc/hr', 'mL/h'],
  ['Cal', 'kcal'],
  ['Cal/mL', 'kcal/mL'],
  ['kCal/mL', 'kcal/mL'],
  ['kcal/oz', 'kcal/[foz_us]'],
  ['mL/day', 'mL/d'],
  ['mL/24h', 'mL/d'],
  ['mls', 'mL'],
  ['lbs', '[lb_av]'],
  ['Fr', '[Ch]'],
];

for (const [written, meant] of INVALID) {
  test(`[FH7] ${written} is no UCUM, and ${meant} is put in its place for a person to confirm`, () => {
    assert.notEqual(library.validateUnitString(written).status, 'valid');
    assert.equal(parseUcum(written), null);
    assert.equal(likelyUcum(written), meant);
    assert.equal(library.validateUnitString(meant).status, 'valid');
  });
}

test('[FH7] mL/24.h is valid UCUM and multiplies by the hour: it is told from mL/(24.h), and mL/d is put in its place', () => {
  assert.equal(library.validateUnitString('mL/24.h').status, 'valid');
  assert.equal(library.convertUnitTo('mL/24.h', 1, 'mL/h').status, 'failed');
  assert.equal(parseUcum('mL/24.h'), null);
  assert.equal(isBracketTrap('mL/24.h'), true);
  assert.equal(isBracketTrap('mL/(24.h)'), false);
  assert.equal(likelyUcum('mL/24.h'), 'mL/d');
});

test('[FH7] UCUM tells capitals apart: ML is a megalitre and mL/H a mL per henry, and neither is taken for a mL', () => {
  assert.equal(library.convertUnitTo('ML', 1, 'L').toVal, 1e6);
  assert.equal(parseUcum('ML'), null);
  assert.equal(library.validateUnitString('mL/H').status, 'valid');
  assert.equal(parseUcum('mL/H'), null);
  assert.equal(likelyUcum('ML'), 'mL');
  assert.equal(likelyUcum('mL/H'), 'mL/h');
});

test('[FH7] the small calorie is a thousandth of the one on a label', () => {
  assert.equal(library.convertUnitTo('cal', 1000, '[Cal]').toVal, 1);
  assert.deepEqual(parseUcum('cal')?.factor, { n: 1n, d: 1000n });
});

test('[FH7] what is no unit of ours is no unit: empty, foreign, unbalanced, nought', () => {
  for (const code of [
    '',
    '/',
    '/h',
    'mL/',
    'mL//h',
    '(mL',
    'mL/(24h)',
    'mL/(0.h)',
    'constructor',
    'µL',
    'mL h',
    '[foz_xx]',
  ]) {
    assert.equal(parseUcum(code), null, code);
  }
  assert.equal(likelyUcum('furlong'), null);
  assert.equal(likelyUcum(''), null);
});
