/** What a person may answer, how strictly it is read, and what an answer does. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { ml } from '@feedwright/core/base/volume';
import { ANSWERS, type AnswerKey, readAnswers } from '../src/answers.ts';
import {
  ANSWERED,
  coded,
  example,
  imported,
  only,
  plainOrder,
  quantity,
  refusal,
  standing,
} from './given.ts';

test('[FH21] every answer is documented with an example that it takes', () => {
  for (const [key, { kind, example: shown, about }] of Object.entries(ANSWERS)) {
    assert.ok(kind.length > 2 && about.length > 10, key);
    const read = readAnswers({ [key]: shown });
    assert.ok(read.ok && read.value[key as AnswerKey] !== undefined, `${key}=${shown}`);
  }
});

const REFUSED: readonly (readonly [key: string, text: string])[] = [
  ['zone', 'London'],
  ['zone', '+01:00'],
  ['energyKcalPerMl', '1.5x'],
  ['energyKcalPerMl', '1,500'],
  ['energyKcalPerMl', '0'],
  ['energyKcalPerMl', '-1.5'],
  ['rateMlPerHour', '60.001'],
  ['rateMlPerHour', '6e1'],
  ['start', '2026-11-25'],
  ['start', '2026-11-25T18:00'],
  ['times', '06:00,25:00'],
  ['times', '06:00,06:00'],
  ['times', '6:00'],
  ['feedingHours', '07:00'],
  ['feedingHours', '07:00-07:00'],
  ['feedingHours', '07:00-19:00-20:00'],
  ['strength', '5/4'],
  ['strength', '0/4'],
  ['strength', '75'],
  ['method', 'by hand'],
  ['unit.rate', 'ml/hr'],
  ['maximum', 'yes'],
  ['birthDate', '1950-02-30'],
  ['patientName', 'Ada\u001b[2JExample'],
  ['minutes', '0'],
];

for (const [key, text] of REFUSED) {
  test(`[FH21] ${key}=${JSON.stringify(text)} is refused, with an example of what is taken`, () => {
    const [issue, ...more] = refusal(JSON.stringify(plainOrder()), { [key]: text });
    assert.equal(more.length, 0);
    assert.deepEqual([issue?.code, issue?.path], ['answer/not-understood', ['confirm', key]]);
    assert.equal(issue?.data.example, ANSWERS[key as AnswerKey].example);
  });
}

test('[FH21] a key that is none is refused; one that names a rule is left to others', () => {
  const [issue] = refusal(JSON.stringify(plainOrder()), { enrgyKcalPerMl: '1.5' });
  assert.deepEqual([issue?.code, issue?.data.key], ['answer/unknown', 'enrgyKcalPerMl']);
  assert.ok(Array.isArray(issue?.data.known) && issue.data.known.includes('energyKcalPerMl'));
  assert.equal(refusal('{}', { constructor: '1' })[0]?.code, 'answer/unknown');
  assert.deepEqual(standing(imported(plainOrder(), { ...ANSWERED, OR31: 'Dr A. Careful' })), []);
});

test('[FH21] an answered question stays in sight, with the answer and who gave it', () => {
  const { zone: _, ...rest } = ANSWERED;
  const answered = only(
    imported(plainOrder(), { ...rest, zone: 'Asia/Kolkata', by: 'N. Nurse' }),
    'fhir/zone-missing',
  );
  assert.deepEqual(
    [answered.level, answered.data.answer, answered.confirmedBy],
    ['note', 'Asia/Kolkata', 'N. Nurse'],
  );
});

test('[FH21] an answer that settled nothing is noted', () => {
  const read = imported(plainOrder(), { ...ANSWERED, lumen: 'jejunal' });
  assert.deepEqual(
    coded(read, 'answer/idle').map(({ data }) => data.key),
    ['lumen'],
  );
  assert.deepEqual(coded(imported(plainOrder(), ANSWERED), 'answer/idle'), []);
});

test('[FH7] a unit that is answered is used for what could not be read, and for nothing else', () => {
  const wrong = plainOrder((order) => {
    order.enteralFormula.administration[0].rateQuantity = quantity(60, 'ml/hr');
  });
  const read = imported(wrong, { ...ANSWERED, 'unit.rate': 'mL/h' });
  assert.equal(read.order.regimen?.kind === 'continuous' && read.order.regimen.rate.rate, 6000);
  assert.equal(only(read, 'fhir/unit-not-valid').level, 'note');
  const right = imported(plainOrder(), { ...ANSWERED, 'unit.rate': 'mL/min' });
  assert.equal(right.order.regimen?.kind === 'continuous' && right.order.regimen.rate.rate, 6250);
  const kind = imported(wrong, { ...ANSWERED, 'unit.rate': 'kg' });
  assert.equal(only(kind, 'fhir/unit-of-another-kind').level, 'stop');
});

test('[FH17] a feed that is answered must be on the list', () => {
  const known = imported(example('R4', 'enteralbolus'), {
    zone: 'UTC',
    feed: 'energy-1.5',
    energyKcalPerMl: '1.5',
  });
  assert.equal(known.order.feed?.id, 'energy-1.5');
  assert.equal(coded(known, 'fhir/full-strength').length, 1);
  const unknown = imported(example('R4', 'enteralbolus'), { zone: 'UTC', feed: 'energy-9' });
  assert.deepEqual(only(unknown, 'fhir/feed-answer-not-listed').level, 'stop');
});

test('[FH17] the strength is what a person says where the density is not the feed’s', () => {
  const half = plainOrder((order) => {
    order.enteralFormula.caloricDensity = quantity(0.5, 'kcal/mL');
  });
  const read = imported(half, { ...ANSWERED, strength: '1/2' });
  assert.deepEqual(read.order.feed?.strength, { n: 1, d: 2 });
  assert.deepEqual(standing(read), []);
});

test('[FH18] amounts of additives are taken in their order, and all at once', () => {
  const two = JSON.parse(example('R5', 'enteralbolus'));
  two.enteralFormula.additive.push({
    productName: 'Fibre',
    quantity: { value: 10, code: 'g', system: 'http://unitsofmeasure.org' },
  });
  const read = imported(two, { additives: '20 mL/d; 10 g/d' });
  assert.deepEqual(read.order.feed?.additives, [
    { name: 'Acme Lipid Additive', amount: '20 mL/d' },
    { name: 'Fibre', amount: '10 g' },
  ]);
  assert.equal(only(imported(two, { additives: '20 mL/d' }), 'fhir/additive-answers').level, 'stop');
});

test('[FH10] the lumen, the kind of tube and its tip are what a person says', () => {
  const routed = (code: string) =>
    plainOrder((order) => {
      order.enteralFormula.routeofAdministration.coding[0].code = code;
    });
  const both = imported(routed('GJT'), { ...ANSWERED, lumen: 'jejunal' }).order.access;
  assert.equal(both?.feedBy, 'jejunal');
  assert.deepEqual(both?.lumens, [
    { name: 'gastric', tip: 'gastric', uses: [] },
    { name: 'jejunal', tip: 'jejunal', uses: ['feed'] },
  ]);
  const naso = imported(routed('EFT'), { ...ANSWERED, device: 'nasojejunal' }).order.access;
  assert.deepEqual([naso?.device, naso?.lumens[0]?.tip], ['nasojejunal', 'jejunal']);
  const button = imported(routed('GT'), { ...ANSWERED, device: 'gastrostomy-button' });
  assert.deepEqual(
    [button.order.access?.device, coded(button, 'fhir/device-disagrees').length],
    ['gastrostomy-button', 0],
  );
  const other = imported(routed('NGT'), { ...ANSWERED, device: 'jejunostomy' });
  assert.deepEqual(only(other, 'fhir/device-disagrees').data.answer, 'jejunostomy');
});

test('[FH14] a maximum that is answered takes the place of one that nobody could keep', () => {
  const read = imported(
    plainOrder((order) => {
      order.enteralFormula.maxVolumeToDeliver = quantity(1500, 'mL');
    }),
    { ...ANSWERED, maximumMlPerDay: '1600' },
  );
  assert.equal(read.order.mostVolumePerDay, ml(1600));
});

test('[FH4] an order on hold is a hold without an end; a draft is an order once it is authorised', () => {
  const held = imported({ ...plainOrder(), status: 'on-hold' }, ANSWERED);
  assert.deepEqual(held.order.holds, [
    { id: 'on-hold', from: held.order.startsAt, until: null, why: 'other', note: null },
  ]);
  const draft = imported({ ...plainOrder(), status: 'draft' }, { ...ANSWERED, authorised: 'yes' });
  assert.deepEqual(standing(draft), []);
  assert.equal(only(draft, 'fhir/not-authorised').level, 'note');
});

test('[FH11] a time without its offset is the ward’s clock or UTC, as a person says', () => {
  const local = plainOrder((order) => {
    order.enteralFormula.administration[0].schedule.repeat.boundsPeriod.start = '2026-07-01T18:00:00';
  });
  const start = (offset: string) => imported(local, { ...ANSWERED, offset }).order.startsAt;
  assert.equal(start('local'), 1_782_925_200_000);
  assert.equal(start('utc'), 1_782_928_800_000);
  assert.equal(imported(local, ANSWERED).order.startsAt, null);
});

test('[FH19] what nobody wrote of the patient can be answered', () => {
  const bare = plainOrder((order) => {
    order.patient = { reference: 'Patient/1' };
  });
  const { patient } = imported(bare, {
    ...ANSWERED,
    patientName: 'Ada Example',
    birthDate: '1950-02-28',
    identifier: 'HN 2',
    place: 'Bed 2',
    allergies: 'soya; milk',
    weightKg: '70.5',
    weightOn: '2026-11-24',
  }).order;
  assert.deepEqual(patient, {
    name: 'Ada Example',
    birthDate: '1950-02-28',
    identifiers: [{ kind: 'identifier', value: 'HN 2' }],
    place: 'Bed 2',
    allergies: ['soya', 'milk'],
    dosingWeight: { kg: { n: 141, d: 2 }, on: '2026-11-24' },
    heightCm: null,
  });
});

test('[FH21] an answer in the place of what is written stands beside it on record', () => {
  const read = imported(plainOrder(), { ...ANSWERED, energyKcalPerMl: '1.2', tip: 'jejunal' });
  assert.deepEqual(
    coded(read, 'answer/instead').map(({ data }) => [data.key, data.written, data.answer]),
    [
      ['energyKcalPerMl', '1 kcal/mL', '1.2'],
      ['tip', 'gastric', 'jejunal'],
    ],
  );
  const same = imported(plainOrder(), {
    ...ANSWERED,
    energyKcalPerMl: '1',
    strength: 'full',
    tip: 'gastric',
  });
  assert.deepEqual(coded(same, 'answer/instead'), []);
  const half = imported(plainOrder(), { ...ANSWERED, strength: '1/2' });
  assert.deepEqual([half.order.feed?.strength, coded(half, 'answer/instead').length], [{ n: 1, d: 2 }, 1]);
});

test('[FH16] hours are asked for a rate that runs all day; where the schedule has them, a person considers the text', () => {
  const held = (repeat: object) =>
    plainOrder((order) => {
      Object.assign(order.enteralFormula.administration[0].schedule.repeat, repeat);
      order.enteralFormula.administrationInstruction = 'Hold for physio';
    });
  const allDay = imported(held({}), { ...ANSWERED, feedingHours: '08:00-20:00' });
  assert.equal(only(allDay, 'fhir/hold-in-text').data.answer, '08:00-20:00');
  const nightly = { timeOfDay: ['20:00:00'], duration: 10, durationUnit: 'h' };
  assert.equal(only(imported(held(nightly), ANSWERED), 'fhir/hold-in-text').data.confirm, 'instruction');
  const scheduled = imported(held(nightly), { ...ANSWERED, instruction: 'considered' });
  assert.deepEqual(standing(scheduled), []);
});
