import assert from 'node:assert/strict';
import { test } from 'node:test';
import { inWindow } from '@feedwright/core/reckon/account/entries';
import fc from 'fast-check';
import { runs } from '../runs.ts';
import { refuses, shows, worked } from './worked.ts';

test('[RK16] an entry on the hour counts in the shift that begins then', () => {
  const intake = (start: string, until: string) =>
    shows('intake-output', { feed: '07:00 100; 15:00 200; 23:00 400', start, until }).intakeMl;
  assert.deepEqual(
    [intake('07:00', '15:00'), intake('15:00', '23:00'), intake('23:00', '07:00')],
    [100, 200, 400],
  );
});

test('[RK16] three shifts that follow each other count every entry once', () => {
  const minute = fc.integer({ min: 0, max: 1440 });
  fc.assert(
    fc.property(
      fc.array(minute, { minLength: 1 }),
      fc.uniqueArray(fc.integer({ min: 0, max: 1439 }), { minLength: 3, maxLength: 3 }),
      (entries, ends) => {
        const [a = 0, b = 0, c = 0] = ends.toSorted((x, y) => x - y);
        const shifts = [
          { from: a, until: b },
          { from: b, until: c },
          { from: c, until: a },
        ];
        for (const at of entries) assert.equal(shifts.filter((shift) => inWindow(at, shift)).length, 1);
      },
    ),
    runs(1000),
  );
});

test('[RK16] ice counts half, returned residual not at all, discarded residual as policy says', () => {
  const given = { oral: '200', ice: '100', urine: '150', discarded: '50', returned: '80' };
  const shown = shows('intake-output', given);
  assert.deepEqual([shown.intakeMl, shown.outputMl, shown.balanceMl], [250, 200, 50]);
  const off = shows('intake-output', { ...given, discardedAs: 'off-intake' });
  assert.deepEqual([off.intakeMl, off.outputMl, off.balanceMl], [200, 150, 50]);
  const nothing = shows('intake-output', { ...given, discardedAs: 'nothing' });
  assert.deepEqual([nothing.outputMl, nothing.balanceMl], [150, 100]);
  const used = worked('intake-output', given).conventions.find(
    (one) => one.convention === 'discardedCountsAs',
  );
  assert.deepEqual([used?.used, used?.others], ['output', ['off-intake', 'nothing']]);
});

test('[RK16] entries as people write them', () => {
  const intake = (oral: string | readonly string[]) =>
    shows('intake-output', { oral, start: '08:00', until: '16:00' }).intakeMl;
  assert.equal(intake('0830 120; 5 pm 200 mL; 10:00=180 mL'), 300);
  assert.equal(intake(['08:30 120', '10:00 6 oz']), 300);
  assert.equal(intake('6 x 30 mL'), 180);
  assert.equal(intake('1500 mL'), 1500);
  assert.equal(intake('1500 200'), 200);
  assert.deepEqual(refuses('intake-output', { oral: '99:00 120' }), ['reckon/not-a-moment']);
  assert.deepEqual(refuses('intake-output', { oral: '120', start: '08:00' }), ['reckon/half-a-window']);
  assert.deepEqual(refuses('irrigation', { bag: 100, rate: 50, hours: 5 }), ['reckon/bag-below-irrigant']);
});

test('[RK17] a result is rounded half-up to its stated step, and the unrounded value stands in the working', () => {
  const found = worked('rate', { volume: 875, hours: 2 });
  const [line] = found.working;
  assert.deepEqual(line?.rounded, { way: 'half-up', step: { n: 1, d: 1 } });
  assert.deepEqual(line?.unrounded, { kind: 'quantity', value: { n: 875, d: 2 }, unit: 'mL/h' });
  assert.deepEqual(line?.result.is, { kind: 'quantity', value: { n: 438, d: 1 }, unit: 'mL/h' });
  assert.deepEqual(found.result.rateMlPerHour, line?.result.is);
});

test('[RK17] another rounding may be asked for, and what has two readings is refused', () => {
  const rate = (round: string) => shows('rate', { volume: 1000, hours: 15, round }).rateMlPerHour;
  assert.deepEqual(
    ['whole', 'down', 'up', '0.1', '5', 'down 5', '5 up', 'none'].map(rate),
    [67, 66, 67, 66.7, 65, 65, 70, 66.666666667],
  );
  for (const round of ['sideways', '', '0', '5 5', '-1', 'down down x'])
    assert.deepEqual(refuses('rate', { volume: 1000, hours: 15, round }), ['reckon/not-a-choice'], round);
  assert.deepEqual(refuses('rate', { volume: 1000, hours: 15, ounce: '31' }), ['reckon/not-a-choice']);
});

test('[RK5] where two conventions are in print the one used is said, and each of the others can be asked for', () => {
  const weights = { sex: 'male', height: '175 cm', weight: '130 kg' };
  assert.equal(shows('adjusted-weight', weights).adjustedWeightKg, 85.3);
  assert.equal(shows('adjusted-weight', { ...weights, factor: '0.4' }).adjustedWeightKg, 94.3);
  assert.deepEqual(
    worked('adjusted-weight', weights).conventions.map(({ convention, used, asked }) => [
      convention,
      used,
      asked,
    ]),
    [
      ['by', 'devine', false],
      ['factor', '0.25', false],
    ],
  );
  // In printed tables a woman of 5 ft 8 in is ideally 63.9 kg by Devine and 63.5 kg (140 lb) by Hamwi.
  const ideal = (by: string) => shows('ideal-weight', { sex: 'female', height: '5ft 8in', by }).idealWeightKg;
  assert.deepEqual([ideal('devine'), ideal('hamwi')], [63.9, 63.5]);
  assert.equal(shows('body-surface', { weight: 70, height: 170, by: 'du-bois' }).surfaceM2, 1.81);
  assert.equal(
    shows('bmi', { weight: '150 lb', height: '65 in', form: '703', round: '0.01' }).bmiKgPerM2,
    24.96,
  );
  assert.equal(shows('renal-solute-load', { protein: 15, na: 8, k: 18, cl: 12, form: 'older' }).loadMosm, 98);
  assert.deepEqual(refuses('ideal-weight', { sex: 'female', height: '5ft 8in', frame: 'large' }), [
    'reckon/frame-is-hamwi',
  ]);
  assert.deepEqual(refuses('ideal-weight', { sex: 'female', height: '59 in' }), ['reckon/outside-band']);
});

test('[RK5] adult fluid: each rule in print', () => {
  const by = (rule: string, rest: Record<string, string> = {}) =>
    shows('adult-fluid', { weight: 70, by: rule, ...rest }).fluidMl;
  assert.deepEqual(
    [by('stepped'), by('stepped', { further: '15' }), by('stepped', { further: '25' })],
    [2500, 2250, 2750],
  );
  assert.deepEqual(
    ['54', '55', '75', '76'].map((age) => by('by-age', { age })),
    [2450, 2100, 2100, 1750],
  );
  assert.equal(by('per-kcal', { energy: '1800 kcal' }), 1800);
  assert.deepEqual(refuses('adult-fluid', { weight: 70, by: 'by-age' }), ['reckon/missing']);
});

test('[RK3] protein kcal, total and non-protein, are never mixed', () => {
  const shown = shows('energy-to-nitrogen', { energy: 2000, protein: 100 });
  assert.deepEqual(
    [shown.nitrogenG, shown.nonProteinKcal, shown.nonProteinKcalPerG, shown.totalKcalPerG],
    [16, 1600, 100, 125],
  );
  assert.deepEqual(refuses('energy-to-nitrogen', { energy: 300, protein: 100 }), [
    'reckon/more-protein-than-energy',
  ]);
  assert.equal(shows('grams-from-percent', { energy: 1800, percent: 30, of: 'fat' }).nutrientG, 60);
  assert.equal(shows('grams-from-percent', { energy: 1800, grams: '60 g', of: 'fat' }).percentOfEnergy, 30);
});
