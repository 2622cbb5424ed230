import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { hours, minutes } from '@feedwright/core/base/instant';
import { numberText } from '@feedwright/core/base/number-text';
import { ml, mlPerHour } from '@feedwright/core/base/volume';
import type { PolicyKey } from '@feedwright/core/policy/keys';
import { parseValue, valueText } from '@feedwright/core/policy/value-text';
import fc from 'fast-check';
import { runs } from '../runs.ts';
import { rows } from './arbitrary.ts';

const read = (key: PolicyKey, given: string | number | boolean | null): unknown => {
  const result = parseValue(key, given);
  return result.ok ? result.value : result.issues.map((one) => one.code).join();
};

test('[PO5] each kind of value is read with its unit', () => {
  const cases: readonly (readonly [PolicyKey, string | number | boolean, unknown])[] = [
    ['hang.closed', '8 h', hours(8)],
    ['hang.closed', '8h', hours(8)],
    ['hang.closed', ' 0.5 d ', hours(12)],
    ['hang.closed', '480 min', hours(8)],
    ['hang.closed', '1,5 h', minutes(90)],
    ['flush.feed.after', '30 mL', ml(30)],
    ['flush.feed.after', '30 ml', ml(30)],
    ['bag.capacity', '1.5 L', ml(1500)],
    ['catch-up.ceiling', '150 mL/h', mlPerHour(150)],
    ['catch-up.ceiling', '62.5 mL/h', mlPerHour(62.5)],
    ['refeeding.start.kcal-per-kg', '10 kcal/kg/d', fraction(10)],
    ['placement.ph.limit', '5.5', fraction(11, 2)],
    ['placement.ph.limit', 5.5, fraction(11, 2)],
    ['placement.ph.limit', '5.5 [pH]', fraction(11, 2)],
    ['delivered.alert', '80 %', fraction(4, 5)],
    ['delivered.alert', '0.8', fraction(4, 5)],
    ['delivered.alert', 0.8, fraction(4, 5)],
    ['delivered.alert', '2/3', fraction(2, 3)],
    ['position.head-of-bed', '30 deg', 30],
    ['position.head-of-bed', '30°', 30],
    ['residual.consecutive', '2', 2],
    ['day.start', '08:00', 480],
    ['carton.keep', 'yes', true],
    ['carton.keep', false, false],
    ['residual.compare', 'at-least', 'at-least'],
  ];
  for (const [key, given, value] of cases) assert.deepEqual(read(key, given), value, `${key} ${given}`);
  assert.equal(read('hang.closed', null), null);
});

test('[PO5] another unit, no unit, another kind or an unknown choice is a question', () => {
  const cases: readonly (readonly [PolicyKey, string | number | boolean, string])[] = [
    ['hang.closed', '8 mL', 'policy/unit'],
    ['hang.closed', '8 hours', 'policy/unit'],
    ['hang.closed', '8', 'policy/unit-missing'],
    ['hang.closed', 8, 'policy/unit-missing'],
    ['hang.closed', true, 'policy/kind'],
    ['hang.closed', '', 'policy/unit-missing'],
    ['hang.closed', 'h', 'number/empty'],
    ['flush.feed.after', '30 mL/h', 'policy/unit'],
    ['catch-up.ceiling', '150 ml/hr', 'policy/unit'],
    ['catch-up.ceiling', '150 mL', 'policy/unit'],
    ['refeeding.start.kcal-per-kg', '10 kcal', 'policy/unit'],
    ['refeeding.start.kcal-per-kg', '10', 'policy/unit-missing'],
    ['placement.ph.limit', '5.5 mL', 'policy/unit'],
    ['day.start', '8:00', 'policy/time'],
    ['day.start', '24:00', 'policy/time'],
    ['carton.keep', 'maybe', 'policy/choice'],
    ['carton.keep', 1, 'policy/choice'],
    ['placement.pack', 'x-ray', 'policy/choice'],
    ['placement.pack', 'Radiograph-first', 'policy/choice'],
    ['residual.compare', '>', 'policy/choice'],
  ];
  for (const [key, given, code] of cases) assert.equal(read(key, given), code, `${key} ${given}`);
});

test('[PO5] a number that can be read in two ways is a question, never a guess', () => {
  const cases: readonly (readonly [string, string])[] = [
    ['1,500 mL', 'number/grouped'],
    ['1.500 mL', 'number/grouped'],
    ['1 000 mL', 'number/grouped'],
    ['.5 mL', 'number/no-digit-before-mark'],
    ['5. mL', 'number/no-digit-after-mark'],
    ['-5 mL', 'number/negative'],
    ['１２ mL', 'number/foreign-digits'],
    ['1e3 mL', 'policy/unit'],
    ['0.0000000001 mL', 'number/too-precise'],
    ['999999999999999 L', 'number/too-large'],
    ['1/0 mL', 'number/not-a-number'],
  ];
  for (const [given, code] of cases) assert.equal(read('bag.capacity', given), code, given);
  assert.equal(read('residual.consecutive', '2.5'), 'number/too-precise');
  assert.equal(read('delivered.alert', -0.8), 'number/negative');
  assert.equal(read('delivered.alert', 1e-9), 'number/exponent');
});

test('[PO7] a value is written so that it reads back as the same value', () => {
  fc.assert(
    fc.property(rows, ({ key, value }) => {
      if (value === null) return;
      assert.deepEqual(parseValue(key, valueText(key, value)), { ok: true, value });
    }),
    runs(20_000),
  );
});

test('[PO7] values are written the way a nurse writes them', () => {
  assert.equal(valueText('hang.open-liquid', hours(8)), '8 h');
  assert.equal(valueText('hang.open-liquid', minutes(90)), '1.5 h');
  assert.equal(valueText('hang.open-liquid', minutes(20)), '20 min');
  assert.equal(valueText('refeeding.fall.within', hours(120)), '5 d');
  assert.equal(valueText('catch-up.ceiling', mlPerHour(62.5)), '62.5 mL/h');
  assert.equal(valueText('delivered.alert', fraction(4, 5)), '0.8');
  assert.equal(valueText('delivered.alert', fraction(2, 3)), '2/3');
  assert.equal(valueText('day.start', 480), '08:00');
  assert.equal(valueText('carton.keep', true), 'yes');
});

test('[PO7] three places after the mark get a fourth, so that nobody can take them for thousands', () => {
  assert.equal(numberText(fraction(1125, 1000)), '1.1250');
  assert.equal(numberText(fraction(75, 1000)), '0.0750');
  assert.equal(numberText(fraction(-5, 4)), '-1.25');
  assert.equal(numberText(fraction(0)), '0');
});
