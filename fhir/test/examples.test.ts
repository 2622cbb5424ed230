/**
 * The specification's own orders for tube feeding (HL7 FHIR R4 4.0.1 and R5 5.0.0; I2 and I3 in docs/sources.md): every
 * element, and every contradiction that is in them. The amounts were worked out by hand from the examples' own figures.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { inMl, ml, mlPerHour } from '@feedwright/core/base/volume';
import { parseInstant } from '@feedwright/core/base/zone';
import { coded, example, imported, only, standing } from './given.ts';

const VERSIONS = ['R4', 'R5'] as const;

const UTC = { zone: 'UTC' };

for (const version of VERSIONS) {
  const path = (steps: string): string =>
    version === 'R4' ? steps : steps.replace('repeat', 'timing.0.repeat');

  test(`[FH1] [FH2] ${version}: each enteral example is told apart by its shape and kept to the byte`, () => {
    for (const name of ['enteralbolus', 'enteralcontinuous', 'infantenteral']) {
      const text = example(version, name);
      const read = imported(text);
      assert.equal(read.version, version);
      assert.equal(read.original, text);
      assert.equal(read.order.id, name);
    }
  });

  test(`[FH3] ${version}: of the bolus example nothing is passed over unseen`, () => {
    const read = imported(example(version, 'enteralbolus'));
    const left = ['text', 'encounter', 'excludeFoodModifier[0].coding[0].version'];
    assert.deepEqual(read.ignored, version === 'R4' ? left : [...left, 'meta']);
    assert.deepEqual(
      coded(read, 'fhir/not-used').map(({ level }) => level),
      read.ignored.map(() => 'note'),
    );
    for (const element of [
      'status',
      'intent',
      'dateTime',
      'orderer.display',
      'allergyIntolerance[0].display',
      'foodPreferenceModifier[0].coding[0].code',
      'enteralFormula.baseFormulaProductName',
      'enteralFormula.caloricDensity.code',
      'enteralFormula.administration[0].quantity.value',
      'enteralFormula.maxVolumeToDeliver.value',
      'enteralFormula.administrationInstruction',
    ]) {
      assert.ok(read.read.includes(element), element);
    }
  });

  test(`[FH6] [FH11] [FH15] ${version}: enteralbolus is 6 × 240 mL = its maximum of 1440 mL, 0.0015 kcal/mL by the letter`, () => {
    const read = imported(example(version, 'enteralbolus'), UTC);
    const { order } = read;
    assert.deepEqual(order.regimen, {
      kind: 'bolus',
      volume: { volume: ml(240), of: 'mixture' },
      times: [0, 240, 480, 720, 960, 1200],
      lasts: null,
      meals: [],
      advance: null,
    });
    assert.equal(order.startsAt, parseInstant('2014-09-17T16:00:00Z'));
    assert.equal(order.endsAt, null);
    assert.equal(order.mostVolumePerDay, ml(1440));
    assert.deepEqual(order.feed?.statedKcalPerMl, { n: 3, d: 2000 });
    assert.equal(order.access?.device, 'gastrostomy');
    assert.equal(order.access?.lumens[0]?.tip, 'gastric');
    assert.deepEqual(order.patient.allergies, ['Cashew Nuts']);
    assert.equal(order.patient.name, 'Peter Chalmers');
    assert.equal(order.prescriber?.name, 'Dr Adam Careful');
    const density = only(read, 'fhir/density-impossible');
    assert.equal(density.level, 'stop');
    assert.deepEqual(
      [density.data.written, density.data.kcalPerMl, density.data.likely, density.data.confirm],
      ['1.5 cal/mL', '0.0015', '1.5', 'energyKcalPerMl'],
    );
    const day = only(read, 'fhir/day-comes-to').data;
    assert.deepEqual([day.firstDay, day.laterDay, day.most], ['1440 mL', '1440 mL', '1440 mL']);
    assert.deepEqual(only(read, 'fhir/additive-without-amount').data.additives, ['Acme Lipid Additive']);
    assert.deepEqual(standing(read), [
      'ask FH11 fhir/day-without-time',
      'stop FH6 fhir/density-impossible',
      'ask FH17 fhir/feed-not-listed',
      'ask FH18 fhir/additive-without-amount',
      'ask FH10 fhir/method-unsaid',
    ]);
  });

  test(`[FH6] ${version}: with 1.5 kcal/mL confirmed, enteralbolus gives 2160 kcal a day`, () => {
    const read = imported(example(version, 'enteralbolus'), {
      ...UTC,
      energyKcalPerMl: '1.5',
      by: 'N. Nurse',
    });
    assert.deepEqual(read.order.feed?.statedKcalPerMl, { n: 3, d: 2 });
    assert.equal(only(read, 'fhir/day-comes-to').data.firstDay, '1440 mL, 2160 kcal');
    const density = only(read, 'fhir/density-impossible');
    assert.deepEqual([density.level, density.data.answer, density.confirmedBy], ['note', '1.5', 'N. Nurse']);
    assert.deepEqual(only(read, 'fhir/feed-not-listed').data.candidates, [
      'energy-1.5',
      'energy-1.5-closed',
      'energy-low-carbohydrate-1.5',
      'energy-low-carbohydrate-1.5-closed',
      'peptide-1.5',
      'peptide-1.5-closed',
    ]);
  });

  test(`[FH11] ${version}: 16:00Z is 17:00 on London's clock in September, and both are shown`, () => {
    const read = imported(example(version, 'enteralbolus'), { zone: 'Europe/London' });
    assert.deepEqual(
      read.order.regimen?.kind === 'bolus' && read.order.regimen.times,
      [60, 300, 540, 780, 1020, 1260],
    );
    assert.deepEqual(only(read, 'fhir/clock-differs').data, {
      utc: '2014-09-17T16:00:00+00:00',
      local: '2014-09-17T17:00:00+01:00',
    });
    assert.equal(coded(imported(example(version, 'enteralbolus'), UTC), 'fhir/clock-differs').length, 0);
  });

  test(`[FH13] [FH15] ${version}: enteralcontinuous passes its 880 mL at 18:12Z, 2160 mL if nobody stops it`, () => {
    const read = imported(example(version, 'enteralcontinuous'), UTC);
    assert.deepEqual(read.order.regimen, {
      kind: 'continuous',
      rate: { rate: mlPerHour(100), of: 'mixture' },
      perDay: null,
      advance: { start: mlPerHour(60), step: mlPerHour(20), every: 14_400_000, goal: mlPerHour(100) },
    });
    assert.equal(read.order.mostVolumePerDay, ml(880));
    assert.equal(read.order.access?.device, 'nasogastric');
    const past = only(read, 'fhir/past-maximum');
    assert.deepEqual(
      [past.level, past.data.most, past.data.firstDay, past.data.laterDay, past.data.at, past.data.confirm],
      ['stop', '880 mL', '2160 mL', '2400 mL', '2014-09-17T18:12:00+00:00', 'maximum'],
    );
    assert.deepEqual(past.path.join('.'), 'enteralFormula.administration');
    const ends = only(read, 'fhir/steps-without-end');
    assert.deepEqual([ends.data.together, ends.data.confirm], ['240 mL/h', 'steps']);
    assert.deepEqual(ends.data.steps, [
      '60 mL/h from 2014-09-17T07:00:00+00:00',
      '80 mL/h from 2014-09-17T11:00:00+00:00',
      '100 mL/h from 2014-09-17T15:00:00+00:00',
    ]);
  });

  test(`[FH15] [FH16] ${version}: in the hours that the text speaks of, enteralcontinuous is 960 mL, still past 880`, () => {
    const answers = { ...UTC, feedingHours: '07:00-19:00', energyKcalPerMl: '1' };
    const read = imported(example(version, 'enteralcontinuous'), answers);
    assert.equal(read.order.regimen?.kind === 'continuous' && read.order.regimen.perDay?.lasts, 43_200_000);
    const past = only(read, 'fhir/past-maximum').data;
    assert.deepEqual(
      [past.firstDay, past.most, past.at],
      ['960 mL, 960 kcal', '880 mL, 880 kcal', '2014-09-17T18:12:00+00:00'],
    );
  });

  test(`[FH15] ${version}: where the maximum governs, enteralcontinuous runs in its hours and ends at 880 mL each day`, () => {
    const answers = { ...UTC, maximum: 'governs', feedingHours: '07:00-19:00' };
    const read = imported(example(version, 'enteralcontinuous'), answers);
    assert.equal(only(read, 'fhir/past-maximum').level, 'note');
    assert.equal(only(read, 'fhir/hold-in-text').data.answer, '07:00-19:00');
    assert.deepEqual(read.order.regimen, {
      kind: 'cyclic',
      from: 420,
      until: 1140,
      rate: { rate: mlPerHour(100), of: 'mixture' },
      volume: { volume: ml(880), of: 'mixture' },
      advance: { start: mlPerHour(60), step: mlPerHour(20), every: 14_400_000, goal: mlPerHour(100) },
    });
    const allDay = imported(example(version, 'enteralcontinuous'), { ...UTC, maximum: 'governs' });
    assert.equal(only(allDay, 'fhir/maximum-needs-hours').level, 'ask');
    assert.equal(allDay.order.regimen, null);
  });

  test(`[FH15] ${version}: another maximum from the prescriber settles it where it suffices, and is kept in sight`, () => {
    const corrected = (maximumMlPerDay: string) =>
      imported(example(version, 'enteralcontinuous'), { ...UTC, maximumMlPerDay });
    const enough = corrected('2400');
    assert.deepEqual(
      coded(enough, 'fhir/past-maximum').map(({ level, data }) => [level, data.most, data.answer]),
      [['note', '880 mL', '2400']],
    );
    assert.equal(enough.order.mostVolumePerDay, ml(2400));
    assert.equal(enough.order.regimen?.kind, 'continuous');
    assert.deepEqual(
      coded(corrected('2399'), 'fhir/past-maximum').map(({ level, data }) => [level, data.most]),
      [
        ['note', '880 mL'],
        ['stop', '2399 mL'],
      ],
    );
  });

  test(`[FH16] ${version}: the hold of enteralcontinuous is only in its text: asked, and no hold of the order`, () => {
    const read = imported(example(version, 'enteralcontinuous'), UTC);
    const hold = only(read, 'fhir/hold-in-text');
    assert.deepEqual([hold.level, hold.data.confirm], ['ask', 'feedingHours']);
    assert.match(String(hold.data.text), /^Hold feedings from 7 pm to 7 am/);
    assert.deepEqual(read.order.holds, []);
    const density = only(read, 'fhir/density-in-text').data;
    assert.deepEqual([density.text, density.field], [['1.0 cal/mL', '1.5 cal/mL'], '1 cal/mL']);
    // The oil that it speaks of is no additive of the order.
    assert.deepEqual(only(read, 'fhir/only-in-text').data.topics, ['additive']);
    assert.equal(coded(imported(example(version, 'infantenteral'), UTC), 'fhir/only-in-text').length, 0);
  });

  test(`[FH20] ${version}: enteralcontinuous has a SNOMED CT id that fails its check digit`, () => {
    const read = imported(example(version, 'enteralcontinuous'));
    assert.equal(only(read, 'fhir/check-digit').data.code, '6547210000124112');
    assert.equal(coded(read, 'fhir/name-with-spaces').length, version === 'R4' ? 1 : 0);
    assert.equal(read.order.feed?.id, 'Acme Diabetes Formula');
    for (const other of ['enteralbolus', 'infantenteral']) {
      assert.equal(coded(imported(example(version, other)), 'fhir/check-digit').length, 0, other);
    }
  });

  test(`[FH9] [FH11] [FH14] [FH16] ${version}: infantenteral goes by mouth, from no moment, to no maximum, at three densities`, () => {
    const read = imported(example(version, 'infantenteral'), UTC);
    assert.equal(only(read, 'fhir/route-no-tube').data.code, 'PO');
    assert.equal(read.order.access, null);
    const start = coded(read, 'fhir/day-without-time').find(({ data }) => data.confirm === 'start');
    assert.equal(
      start?.path.join('.'),
      path('enteralFormula.administration.0.schedule.repeat.boundsPeriod.start'),
    );
    assert.equal(read.order.startsAt, null);
    const most = only(read, 'fhir/maximum-without-time').data;
    // 32 × 29.5735295625 mL.
    assert.deepEqual([most.written, most.ml, most.confirm], ['32 [foz_us]', '946.352946', 'maximumMlPerDay']);
    assert.equal(read.order.mostVolumePerDay, null);
    const density = only(read, 'fhir/density-impossible').data;
    // 20 cal in 29.5735295625 mL.
    assert.deepEqual(
      [density.written, density.kcalPerMl, density.likely],
      ['20 cal/[foz_us]', '0.00067628', '0.67628045'],
    );
    const text = only(read, 'fhir/density-in-text').data;
    assert.deepEqual([text.text, text.field], [['24 cal/oz', '27 cal/oz'], '20 cal/[foz_us]']);
    assert.equal(only(read, 'fhir/times-not-fixed').data.inHours, 3);
    assert.equal(read.order.regimen, null);
    assert.equal(only(read, 'fhir/day-comes-to').data.laterDay, '946.352946 mL');
  });

  test(`[FH11] [FH12] [FH14] ${version}: what infantenteral leaves open can be answered, but never its route`, () => {
    const read = imported(example(version, 'infantenteral'), {
      ...UTC,
      start: '2014-09-17T06:00:00Z',
      maximumMlPerDay: '946',
      method: 'syringe',
      energyKcalPerMl: '0.67',
      feed: 'infant-0.67',
    });
    const { regimen } = read.order;
    assert.ok(regimen?.kind === 'bolus');
    assert.deepEqual(regimen.times, [0, 180, 360, 540, 720, 900, 1080, 1260]);
    // 4 × 29.5735295625 mL, exactly.
    assert.deepEqual(inMl(regimen.volume.volume), { n: 473176473, d: 4000000 });
    assert.equal(read.order.mostVolumePerDay, ml(946));
    // 946.35 mL pass 946 mL with the last bolus of the day.
    const past = only(read, 'fhir/past-maximum');
    assert.deepEqual([past.level, past.data.at], ['stop', '2014-09-18T03:00:00+00:00']);
    assert.equal(only(read, 'fhir/route-no-tube').level, 'stop');
  });
}

const OTHERS: readonly (readonly [name: string, holds: readonly string[]])[] = [
  ['cardiacdiet', ['oralDiet']],
  ['diabeticdiet', ['oralDiet']],
  ['fiberrestricteddiet', ['oralDiet']],
  ['pureeddiet', ['oralDiet']],
  ['pureeddiet-simple', ['oralDiet', 'supplement']],
  ['renaldiet', ['oralDiet']],
  ['texturemodified', ['oralDiet']],
  ['diabeticsupplement', ['supplement']],
  ['energysupplement', ['supplement']],
  ['proteinsupplement', ['supplement']],
];

for (const version of VERSIONS) {
  for (const [name, holds] of OTHERS) {
    test(`[FH5] ${version}: ${name} is recognised and declined`, () => {
      const read = imported(example(version, name));
      assert.equal(read.version, version);
      assert.deepEqual(
        coded(read, 'fhir/no-tube-feeding').map(({ level, data }) => `${level} ${data.name}`),
        holds.map((held) => `stop ${held}`),
      );
      assert.deepEqual([read.order.feed, read.order.regimen, read.order.access], [null, null, null]);
    });
  }
}

test('[FH5] a supplement beside a formula for a tube is noted and left to others', () => {
  const both = JSON.parse(example('R4', 'enteralbolus'));
  both.supplement = JSON.parse(example('R4', 'energysupplement')).supplement;
  const read = imported(both);
  assert.equal(only(read, 'fhir/by-mouth-too').level, 'note');
  assert.ok(read.order.regimen !== null);
});
