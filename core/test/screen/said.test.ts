/** Do the numbers in a sentence stay what they are, however small or large? */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '../../src/base/fraction.ts';
import { ENGLISH } from '../../src/screen/english/english.ts';
import { hoursLast, plainly, withUnit } from '../../src/screen/said.ts';

test('[SC1] a small number is not shown as nought, and a large one is shown as it was typed', () => {
  const cases: readonly (readonly [unknown, string])[] = [
    [fraction(1, 1000), '0.001'],
    [fraction(-1, 3000), '−0.00033'],
    [fraction(1, 20), '0.05'],
    [fraction(6, 5), '1.2'],
    [fraction(0), '0'],
    [1e308, '1e+308'],
    [2 ** 60, String(2 ** 60)],
    [1_500, '1,500'],
    [null, '—'],
  ];
  for (const [value, shown] of cases) assert.equal(plainly(value), shown);
  assert.equal(withUnit(fraction(1, 1000), 'kcal/mL'), '0.001 kcal/mL');
});

test('[SC1] hours that are no whole number are hours and minutes', () => {
  assert.equal(hoursLast(fraction(11, 12)), '55 min');
  assert.equal(hoursLast(fraction(5, 2)), '2 h 30 min');
});

test('[SC3] a sentence begins with a capital, and once is not one times', () => {
  for (const [code, say] of Object.entries(ENGLISH.problems)) {
    const { says } = say({ allergies: [], answers: [], names: [], nearest: null, what: 'x', path: 'Path' });
    assert.match(says, /^[^a-z]/, code);
  }
  const left = ENGLISH.problems['plan/water-in-hold']?.({ times: 1, volume: 30, unit: 'mL' });
  assert.match(left?.says ?? '', /into a hold once: 30 mL/);
});
