import assert from 'node:assert/strict';
import { createRequire } from 'node:module';
import { test } from 'node:test';
import { calculationNamed } from '@feedwright/core/reckon/catalogue';
import { toDouble } from '@feedwright/core/reckon/exact';
import { reckon } from '@feedwright/core/reckon/reckon';
import { SUBSTANCES, type Substance } from '@feedwright/core/reckon/risk/substances';
import fc from 'fast-check';
import { runs } from '../runs.ts';

// Neither library has types of its own.
const require = createRequire(import.meta.url);
const { UcumLhcUtils } = require('@lhncbc/ucum-lhc');
const Quantity = require('js-quantities');
const ucum = UcumLhcUtils.getInstance();

/** Ours, UCUM's code, js-quantities' name. */
const PAIRS: readonly (readonly [
  from: string,
  to: string,
  ucumFrom: string,
  ucumTo: string,
  other: readonly [string, string] | null,
])[] = [
  ['mL', 'L', 'mL', 'L', ['mL', 'L']],
  ['dL', 'mL', 'dL', 'mL', ['dL', 'mL']],
  ['oz', 'mL', '[foz_us]', 'mL', ['floz', 'mL']],
  ['lb', 'kg', '[lb_av]', 'kg', ['lb', 'kg']],
  ['st', 'kg', '[stone_av]', 'kg', ['stone', 'kg']],
  ['oz', 'g', '[oz_av]', 'g', ['oz', 'g']],
  ['in', 'cm', '[in_i]', 'cm', ['in', 'cm']],
  ['ft', 'cm', '[ft_i]', 'cm', ['ft', 'cm']],
  ['m', 'cm', 'm', 'cm', ['m', 'cm']],
  ['Fr', 'mm', '[Ch]', 'mm', null],
  ['kcal', 'kJ', 'kcal', 'kJ', ['kcal', 'kJ']],
  ['MJ', 'kcal', 'MJ', 'kcal', ['MJ', 'kcal']],
  ['h', 'min', 'h', 'min', ['hour', 'minute']],
  ['day', 'h', 'd', 'h', ['day', 'hour']],
  ['week', 'day', 'wk', 'd', ['week', 'day']],
  ['mL/h', 'mL/min', 'mL/h', 'mL/min', ['mL/h', 'mL/min']],
  ['mL/day', 'mL/h', 'mL/d', 'mL/h', ['mL/day', 'mL/h']],
  ['kcal/L', 'kcal/mL', 'kcal/L', 'kcal/mL', ['kcal/L', 'kcal/mL']],
  ['kcal/oz', 'kcal/mL', 'kcal/[foz_us]', 'kcal/mL', ['kcal/floz', 'kcal/mL']],
  ['g/dL', 'g/L', 'g/dL', 'g/L', ['g/dL', 'g/L']],
  ['mg/mL', 'g/L', 'mg/mL', 'g/L', ['mg/mL', 'g/L']],
  ['mL/kg/day', 'mL/kg/h', 'mL/kg/d', 'mL/kg/h', null],
  ['mcg', 'mg', 'ug', 'mg', ['ug', 'mg']],
  ['m2', 'm2', 'm2', 'm2', ['m2', 'm2']],
  ['°C', '°F', 'Cel', '[degF]', ['tempC', 'tempF']],
  ['°F', '°C', '[degF]', 'Cel', ['tempF', 'tempC']],
];

function ours(value: number, from: string, to: string): number {
  const convert = calculationNamed('convert');
  assert.ok(convert);
  const found = reckon(convert, {
    value: `${value} ${from}`,
    to,
    ounce: 'measured',
    pound: 'exact',
    round: 'none',
  });
  assert.ok(found.ok, `${value} ${from} to ${to}: ${found.ok ? '' : JSON.stringify(found.issues)}`);
  const exact = found.value.unrounded.value;
  assert.ok(exact);
  return toDouble(exact);
}

/** UCUM-lhc rounds its table values to about ten digits; js-quantities carries doubles. */
const near = (a: number, b: number, within: number) =>
  Math.abs(a - b) <= within * Math.max(1, Math.abs(a), Math.abs(b));

test('[RK15] conversions agree with the UCUM reference library', () => {
  for (const [from, to, ucumFrom, ucumTo] of PAIRS) {
    for (const value of [1, 37.5, 250]) {
      const theirs = ucum.convertUnitTo(ucumFrom, value, ucumTo);
      assert.equal(theirs.status, 'succeeded', `${ucumFrom} to ${ucumTo}: ${theirs.msg}`);
      assert.ok(
        near(ours(value, from, to), theirs.toVal, 2e-9),
        `${value} ${from} → ${to}: ${ours(value, from, to)} v ${theirs.toVal}`,
      );
    }
  }
});

test('[RK15] conversions agree with a general library of units', () => {
  let compared = 0;
  for (const [from, to, , , other] of PAIRS) {
    if (other === null) continue;
    compared += 1;
    for (const value of [1, 37.5, 250]) {
      const theirs = new Quantity(value, other[0]).to(other[1]).scalar;
      assert.ok(
        near(ours(value, from, to), theirs, 1e-6),
        `${value} ${from} → ${to}: ${ours(value, from, to)} v ${theirs}`,
      );
    }
  }
  assert.ok(compared > 20);
});

test('[RK15] mg/dL, mmol/L and mEq/L agree with UCUM, given the molar mass', () => {
  const units = calculationNamed('electrolyte-units');
  assert.ok(units);
  for (const [of, { molarMass, valence }] of Object.entries(SUBSTANCES) as [
    Substance,
    (typeof SUBSTANCES)[Substance],
  ][]) {
    const found = reckon(units, { of, value: '2.5 mg/dL' });
    assert.ok(found.ok);
    const { valueMmolPerL, valueMeqPerL } = found.value.unrounded;
    assert.ok(valueMmolPerL);
    const theirs = ucum.convertUnitTo('mg/dL', 2.5, 'mmol/L', { molecularWeight: toDouble(molarMass) });
    assert.equal(theirs.status, 'succeeded', theirs.msg);
    assert.ok(
      near(toDouble(valueMmolPerL), theirs.toVal, 1e-9),
      `${of}: ${toDouble(valueMmolPerL)} v ${theirs.toVal}`,
    );
    if (valence === null) {
      assert.equal(valueMeqPerL, undefined);
      continue;
    }
    const charged = ucum.convertUnitTo('mg/dL', 2.5, 'meq/L', {
      molecularWeight: toDouble(molarMass),
      charge: valence,
    });
    assert.ok(valueMeqPerL && near(toDouble(valueMeqPerL), charged.toVal, 1e-9), `${of} in mEq/L`);
  }
});

test('[RK15] a level without a fixed charge is refused in mEq', () => {
  const units = calculationNamed('electrolyte-units');
  assert.ok(units);
  const found = reckon(units, { of: 'phosphate', value: '2 mEq/L' });
  assert.ok(!found.ok && found.issues[0]?.code === 'reckon/no-valence');
});

test('[RK9, RK15] there and back is where it was', () => {
  fc.assert(
    fc.property(fc.constantFrom(...PAIRS), fc.integer({ min: 1, max: 99_999 }), ([from, to], hundredths) => {
      const value = hundredths / 100;
      const there = ours(value, from, to);
      const places = Math.max(0, 13 - String(Math.trunc(Math.abs(there))).length);
      fc.pre(there > 0.001);
      const back = ours(Number(there.toFixed(places)), to, from);
      assert.ok(near(back, value, 1e-9), `${value} ${from} → ${to} → ${back}`);
    }),
    runs(2000),
  );
});

test('[RK15] the printed laboratory factors come out', () => {
  // A table of laboratory units (after Young 1987): phosphate × 0.3229, magnesium × 0.4114, calcium × 0.25, glucose × 0.0555.
  const units = calculationNamed('electrolyte-units');
  assert.ok(units);
  for (const [of, factor, places] of [
    ['phosphate', 0.3229, 4],
    ['magnesium', 0.4114, 4],
    ['calcium', 0.25, 2],
    ['glucose', 0.0555, 4],
  ] as const) {
    const found = reckon(units, { of, value: '1 mg/dL' });
    assert.ok(found.ok && found.value.unrounded.valueMmolPerL);
    assert.equal(Number(toDouble(found.value.unrounded.valueMmolPerL).toFixed(places)), factor, of);
  }
});
