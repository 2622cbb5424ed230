import assert from 'node:assert/strict';
import { test } from 'node:test';
import { of } from '@feedwright/core/reckon/exact';
import { fallBand, fallPercent } from '@feedwright/core/reckon/risk/electrolytes';
import { aspenBand, type Findings, niceBand } from '@feedwright/core/reckon/risk/refeeding-criteria';
import { refuses, shows, worked } from './worked.ts';

const fall = (of: string, before: string, after: string, rest: Record<string, string> = {}) =>
  shows('electrolyte-fall', { of, before, after, ...rest });

/** ASPEN 2020 (S8): 10–20 mild, 20–30 moderate, over 30 severe. Doubles get the first and the third wrong. */
test('[RK10] falls of exactly 10, 20 and 30 % are banded exactly, by the rule that is stated', () => {
  assert.deepEqual([fall('k', '4.0', '3.6').band, fall('k', '4.0', '3.6').fallPercent], ['mild', 10]);
  assert.equal(fall('k', '4.0', '3.61').band, 'none');
  assert.equal(fall('phosphate', '0.80', '0.60').band, 'moderate');
  assert.equal(fall('mg', '1.0', '0.7').band, 'moderate');
  assert.equal(fall('phosphate', '1.0', '0.69').band, 'severe');
  assert.equal(fall('phosphate', '1.0', '0.8').band, 'moderate');
  assert.equal(fall('k', '4.0', '4.4').band, 'none');
  assert.ok((4.0 - 3.6) / 4.0 < 0.1 && (1.0 - 0.7) / 1.0 > 0.3, 'doubles have not changed');
});

test('[RK5, RK10] the other printed boundaries may be asked for, and the one used is said', () => {
  assert.equal(fall('mg', '1.0', '0.7', { boundary: '30-or-more' }).band, 'severe');
  assert.equal(fall('mg', '1.0', '0.8', { boundary: '20-is-mild' }).band, 'mild');
  assert.equal(fall('mg', '1.0', '0.7', { boundary: '20-is-mild' }).band, 'moderate');
  const used = worked('electrolyte-fall', { of: 'mg', before: '1', after: '0.8' }).conventions.find(
    (one) => one.convention === 'boundary',
  );
  assert.deepEqual([used?.used, used?.others.length], ['upper-band-at-20-not-at-30', 2]);
});

test('[RK10] organ dysfunction makes a fall severe, but not where nothing has fallen', () => {
  assert.equal(fall('k', '4.0', '3.5', { organ: 'yes' }).band, 'severe');
  assert.equal(fall('k', '4.0', '3.9', { organ: 'yes' }).band, 'none');
});

test('[RK10] a fall is the same in mg/dL, mEq/L and mmol/L, also mixed', () => {
  assert.equal(fall('mg', '2.4 mg/dL', '1.8 mg/dL').fallPercent, 25);
  assert.equal(fall('mg', '2.0 mEq/L', '1.5 mEq/L').fallPercent, 25);
  assert.equal(fall('k', '4.0 mEq/L', '3.0 mmol/L').fallPercent, 25);
  assert.equal(fall('phosphate', '3.097 mg/dL', '0.75 mmol/L').fallPercent, 25);
  assert.equal(fall('mg', '2.4', '1.8', { unit: 'mg/dL' }).beforeMmolPerL, 0.99);
});

test('[RK10] the third phosphate definition is shown beside: 2.0 mg/dL or less, or a fall over 0.5', () => {
  const low = (before: string, after: string) => fall('phosphate', before, after).lowPhosphateAfterStart;
  assert.deepEqual(
    [low('2.1 mg/dL', '2.0 mg/dL'), low('3.0 mg/dL', '2.5 mg/dL'), low('3.0 mg/dL', '2.49 mg/dL')],
    ['yes', 'no', 'yes'],
  );
  assert.equal(fall('k', '4', '3').lowPhosphateAfterStart, undefined);
});

test('[RK10] the functions behind the bands agree with themselves at every per cent', () => {
  for (let percent = 0; percent <= 50; percent++) {
    const exact = fallPercent(of(100), of(100 - percent));
    const band = fallBand(exact, 'upper-band-at-20-not-at-30');
    assert.equal(band, percent < 10 ? 'none' : percent < 20 ? 'mild' : percent <= 30 ? 'moderate' : 'severe');
  }
});

const NOTHING: Findings = {
  bmi: of(22),
  lossPercent: of(0),
  lossMonths: null,
  daysOfLittleIntake: of(0),
  intakePercentOfNeed: of(100),
  daysOfPoorIntake: of(0),
  acuteIllness: false,
  electrolytes: 'normal',
  alcoholOrDrugs: false,
  fatLoss: 'none',
  muscleLoss: 'none',
  higherRiskDisease: 'none',
};
const with_ = (some: Partial<Findings>): readonly [string, string] => [
  niceBand({ ...NOTHING, ...some }),
  aspenBand({ ...NOTHING, ...some }),
];

/** Criteria of NICE CG32 and ASPEN 2020 as printed side by side (S7, and PMC7843537 table 2). */
const CASES: readonly (readonly [why: string, some: Partial<Findings>, nice: string, aspen: string])[] = [
  ['nothing', {}, 'not-high', 'below-moderate'],
  ['BMI 15.9', { bmi: of('15.9') }, 'high', 'significant'],
  ['BMI exactly 16', { bmi: of(16) }, 'not-high', 'below-moderate'],
  [
    'BMI exactly 18.5 and 5 % in a month',
    { bmi: of('18.5'), lossPercent: of(5), lossMonths: of(1) },
    'not-high',
    'moderate',
  ],
  ['BMI 13.9', { bmi: of('13.9') }, 'extreme', 'significant'],
  ['BMI exactly 14', { bmi: of(14) }, 'high', 'significant'],
  ['16 days of nothing', { daysOfLittleIntake: of(16) }, 'extreme', 'significant'],
  ['15 days of nothing', { daysOfLittleIntake: of(15) }, 'high', 'significant'],
  ['10 days of nothing', { daysOfLittleIntake: of(10) }, 'not-high', 'significant'],
  ['15.1 % in 6 months', { lossPercent: of('15.1'), lossMonths: of(6) }, 'high', 'significant'],
  ['15 % in 6 months', { lossPercent: of(15), lossMonths: of(6) }, 'not-high', 'significant'],
  ['20 % in 12 months', { lossPercent: of(20), lossMonths: of(12) }, 'not-high', 'below-moderate'],
  ['7.5 % in 3 months', { lossPercent: of('7.5'), lossMonths: of(3) }, 'not-high', 'significant'],
  ['two of two', { bmi: of(18), daysOfLittleIntake: of(6) }, 'high', 'moderate'],
  [
    'alcohol and 11 %',
    { alcoholOrDrugs: true, lossPercent: of(11), lossMonths: of(5) },
    'high',
    'significant',
  ],
  ['alcohol alone', { alcoholOrDrugs: true }, 'not-high', 'below-moderate'],
  ['minimally low levels', { electrolytes: 'minimally-low' }, 'high', 'below-moderate'],
  ['clearly low levels', { electrolytes: 'moderately-or-significantly-low' }, 'high', 'significant'],
  ['severe muscle loss', { muscleLoss: 'severe' }, 'not-high', 'significant'],
  [
    'mild muscle loss, moderate disease',
    { muscleLoss: 'mild', higherRiskDisease: 'moderate' },
    'not-high',
    'moderate',
  ],
  [
    'mild fat loss, moderate disease',
    { fatLoss: 'mild', higherRiskDisease: 'moderate' },
    'not-high',
    'below-moderate',
  ],
  [
    'under half for 6 days, acute',
    { intakePercentOfNeed: of(49), daysOfPoorIntake: of(6), acuteIllness: true },
    'not-high',
    'significant',
  ],
  [
    'under half for 6 days, not acute',
    { intakePercentOfNeed: of(49), daysOfPoorIntake: of(6) },
    'not-high',
    'below-moderate',
  ],
];

for (const [why, some, nice, aspen] of CASES) {
  test(`[RK10] both bodies are counted: ${why}`, () => {
    assert.deepEqual(with_(some), [nice, aspen]);
  });
}

test('[RK10] what was not given is named and is not taken for absent', () => {
  const shown = shows('refeeding-risk', { bmi: '19' });
  assert.deepEqual([shown.niceBand, shown.aspenBand], ['not-high-so-far', 'below-moderate-so-far']);
  assert.match(String(shown.notGiven), /weight-loss, little-intake, low-electrolytes, alcohol-or-drugs/);
  assert.ok(worked('refeeding-risk', { bmi: '19' }).cautions.includes('criteria-not-given'));
  assert.equal(shows('refeeding-risk', { weight: '45', height: '170 cm' }).bmiKgPerM2, 15.6);
});

test('[RK10] body mass index decides energy and protein at 30, 40 and 50 as stated', () => {
  const groups = (weight: string) => {
    // At 2 m the body mass index is a quarter of the weight.
    const { energyGroup, proteinGroup } = shows('guideline-needs', { sex: 'male', weight, height: '200 cm' });
    return [energyGroup, proteinGroup];
  };
  assert.deepEqual(groups('119.99'), ['bmi-under-30', 'bmi-under-30']);
  assert.deepEqual(groups('120'), ['bmi-30-to-50', 'bmi-30-to-40']);
  assert.deepEqual(groups('159.99'), ['bmi-30-to-50', 'bmi-30-to-40']);
  assert.deepEqual(groups('160'), ['bmi-30-to-50', 'bmi-40-or-more']);
  assert.deepEqual(groups('200'), ['bmi-30-to-50', 'bmi-40-or-more']);
  assert.deepEqual(groups('200.01'), ['bmi-over-50', 'bmi-40-or-more']);
  const over50 = shows('guideline-needs', { sex: 'female', weight: '150', height: '165 cm' });
  assert.deepEqual([over50.lowKcal, over50.highKcal], [1252, 1423]);
});

test('[RK10] Penn State is the one made for this age and body mass index; the other is refused', () => {
  const person = { sex: 'm', height: '200 cm', ve: 9, tmax: 38 };
  const used = (age: number, weight: number) => shows('penn-state', { ...person, age, weight }).versionUsed;
  assert.deepEqual(
    [used(59, 160), used(60, 119.9), used(60, 120), used(80, 120)],
    ['2003b', '2003b', '2010', '2010'],
  );
  assert.deepEqual(refuses('penn-state', { ...person, age: 40, weight: 80, version: '2010' }), [
    'reckon/equation-for-others',
  ]);
});

test('[RK10] ages on a birthday belong to the next band, and 3, 10, 18, 30, 60 are where bands change', () => {
  const at = (age: string) =>
    shows('schofield', { sex: 'male', weight: '20', age, round: '0.001' }).restingKcal;
  const value = (k: number, c: number) => Math.round((k * 20 + c) * 1000) / 1000;
  assert.deepEqual([at('35 months'), at('3')], [value(59.512, -30.4), value(22.706, 504.3)]);
  assert.deepEqual([at('9.99'), at('10')], [value(22.706, 504.3), value(17.686, 658.2)]);
  assert.deepEqual([at('29'), at('30')], [value(15.057, 692.2), value(11.472, 873.1)]);
  assert.deepEqual([at('59'), at('60')], [value(11.472, 873.1), value(11.711, 587.7)]);
});

test('[RK10] residual bands take in 25 and 50 %', () => {
  const band = (residual: string) => shows('residual-percent', { residual, feed: '100' }).band;
  assert.deepEqual(['24.9', '25', '50', '50.1'].map(band), ['under-25', '25-to-50', '25-to-50', 'over-50']);
});

test('[RK5] an infant’s weight is the birth weight in the first week, unless it is heavier by then', () => {
  const used = (inputs: Record<string, string>) =>
    shows('infant-feed', { birthWeight: '3.0', currentWeight: '2.8', mlPerKg: '150', ...inputs });
  assert.deepEqual([used({ age: '5 d' }).weightUsed, used({ age: '5 d' }).volumeMl], ['birth-weight', 450]);
  assert.deepEqual(
    [used({ age: '7 d' }).weightUsed, used({ age: '8 d' }).weightUsed],
    ['birth-weight', 'current-weight'],
  );
  assert.equal(used({ age: '5 d', currentWeight: '3.1' }).weightUsed, 'current-weight');
  assert.equal(used({ age: '5 d', use: 'current' }).volumeMl, 420);
  assert.deepEqual(refuses('infant-feed', { birthWeight: '3', currentWeight: '2.8', mlPerKg: '150' }), [
    'reckon/which-weight',
  ]);
});

test('[RK10] the fewest feeds a day that WHO asks for', () => {
  const least = (weight: string) => shows('infant-feed', { weight, mlPerKg: 100, feeds: 8 }).leastFeeds;
  assert.deepEqual(['1.24', '1.25', '2.5', '2.51'].map(least), [12, 8, 8, undefined]);
  assert.ok(
    worked('infant-feed', { weight: '1.2', mlPerKg: 100, feeds: 8 }).cautions.includes(
      'fewer-feeds-than-who',
    ),
  );
});
