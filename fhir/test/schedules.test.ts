/** Schedules as FHIR writes them (Timing, I2 in docs/sources.md), and the regimen each comes to. Amounts by hand. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { HOUR, MINUTE } from '@feedwright/core/base/instant';
import { ml, mlPerHour } from '@feedwright/core/base/volume';
import { parseInstant } from '@feedwright/core/base/zone';
import {
  ANSWERED,
  type Answers,
  coded,
  imported,
  type Nested,
  only,
  plainOrder,
  quantity,
  standing,
} from './given.ts';

const START = '2026-11-25T18:00:00+00:00';

const read = (
  administrations: readonly Nested[],
  answers: Answers = {},
  change: (order: Nested) => void = () => {},
) =>
  imported(
    plainOrder((order) => {
      order.enteralFormula.administration = administrations;
      delete order.enteralFormula.maxVolumeToDeliver;
      change(order);
    }),
    { ...ANSWERED, ...answers },
  );

const scheduled = (repeat: Nested, amounts: Nested): Nested => ({ schedule: { repeat }, ...amounts });
const rate = (value: number, code = 'mL/h'): Nested => ({ rateQuantity: quantity(value, code) });
const volume = (value: number, code = 'mL'): Nested => ({ quantity: quantity(value, code) });
const from = (start: string, end?: string): Nested => ({
  boundsPeriod: { start, ...(end === undefined ? {} : { end }) },
});

test('[FH12] once in four hours from 18:00 is six named times, and a bolus by syringe', () => {
  const { order, ...rest } = read(
    [scheduled({ ...from(START), frequency: 1, period: 4, periodUnit: 'h' }, volume(240))],
    { method: 'syringe' },
  );
  assert.deepEqual(order.regimen, {
    kind: 'bolus',
    volume: { volume: ml(240), of: 'mixture' },
    times: [120, 360, 600, 840, 1080, 1320],
    lasts: null,
    meals: [],
    advance: null,
  });
  assert.equal(coded({ order, ...rest }, 'fhir/day-comes-to')[0]?.data.firstDay, '1440 mL, 1440 kcal');
});

test('[FH12] by pump or gravity the same volume needs its length, and is intermittent', () => {
  const six = [scheduled({ timeOfDay: ['06:00:00', '12:00:00', '18:00:00'] }, volume(300))];
  assert.equal(only(read(six, { method: 'gravity' }), 'fhir/length-missing').data.confirm, 'minutes');
  const { order } = read(six, { method: 'gravity', minutes: '35' });
  assert.deepEqual(order.regimen, {
    kind: 'intermittent',
    volume: { volume: ml(300), of: 'mixture' },
    times: [360, 720, 1080],
    lasts: 35 * MINUTE,
    by: 'gravity',
    advance: null,
  });
});

test('[FH12] the length of a feed comes from the schedule, or from its volume and rate', () => {
  const times = { timeOfDay: ['06:00:00', '18:00:00'] };
  const byLength = read([scheduled({ ...times, duration: 90, durationUnit: 'min' }, volume(300))]);
  const byRate = read([scheduled(times, { ...volume(300), ...rate(200) })]);
  const byRatio = read([
    scheduled(times, {
      ...volume(300),
      rateRatio: { numerator: quantity(300, 'mL'), denominator: quantity(90, 'min') },
    }),
  ]);
  for (const { order } of [byLength, byRate, byRatio]) {
    assert.equal(order.regimen?.kind === 'intermittent' && order.regimen.lasts, 90 * MINUTE);
  }
});

test('[FH12] runs of a rate several times a day give what the rate gives in their length', () => {
  const { order } = read([
    scheduled({ timeOfDay: ['06:00:00', '14:00:00'], duration: 2, durationUnit: 'h' }, rate(120)),
  ]);
  assert.deepEqual(
    order.regimen?.kind === 'intermittent' && [order.regimen.volume.volume, order.regimen.lasts],
    [ml(240), 2 * HOUR],
  );
});

test('[FH12] a rate for some hours of the day is continuous in those hours', () => {
  const { order } = read([
    scheduled(
      { frequency: 1, period: 1, periodUnit: 'd', timeOfDay: ['20:00:00'], duration: 12, durationUnit: 'h' },
      rate(100),
    ),
  ]);
  assert.deepEqual(order.regimen, {
    kind: 'continuous',
    rate: { rate: mlPerHour(100), of: 'mixture' },
    perDay: { from: 1200, lasts: 12 * HOUR },
    advance: null,
  });
});

test('[FH12] one volume a day is a window, a feed or a target, as a person says', () => {
  const nightly = [
    scheduled(
      { ...from(START), frequency: 1, period: 1, periodUnit: 'd', timeOfDay: ['20:00:00'] },
      { ...volume(1000), ...rate(100) },
    ),
  ];
  const meant = (regimen: string) => read(nightly, { regimen }).order.regimen;
  const cyclic = meant('cyclic');
  assert.deepEqual(
    cyclic?.kind === 'cyclic' && [cyclic.from, cyclic.until, cyclic.rate?.rate, cyclic.volume?.volume],
    [1200, 360, mlPerHour(100), ml(1000)],
  );
  const intermittent = meant('intermittent');
  assert.deepEqual(intermittent?.kind === 'intermittent' && [intermittent.times, intermittent.lasts], [
    [1200],
    10 * HOUR,
  ]);
  const target = meant('volume-targeted');
  assert.deepEqual(target?.kind === 'volume-targeted' && [target.volumePerDay.volume, target.baseRate.rate], [
    ml(1000),
    mlPerHour(100),
  ]);
  assert.equal(read(nightly).order.regimen, null);
});

test('[FH12] one dose written as several administrations is one regimen at all their times', () => {
  const { order } = read(
    ['06:00:00', '12:00:00', '18:00:00'].map((time) =>
      scheduled({ ...from(START), timeOfDay: [time], frequency: 1, period: 1, periodUnit: 'd' }, volume(250)),
    ),
    { method: 'syringe' },
  );
  assert.deepEqual(order.regimen?.kind === 'bolus' && order.regimen.times, [360, 720, 1080]);
});

test('[FH12] all seven days are every day, and a code beside a schedule is only noted', () => {
  const all = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
  const seen = read(
    [
      {
        schedule: { repeat: { timeOfDay: ['06:00:00', '18:00:00'], dayOfWeek: all }, code: { text: 'BID' } },
        ...volume(250),
      },
    ],
    { method: 'syringe' },
  );
  assert.deepEqual(standing(seen), []);
  assert.equal(only(seen, 'fhir/schedule-code-beside').data.value, 'BID');
});

test('[FH12] times that are answered take the place of a schedule by code, meals or an odd interval', () => {
  for (const schedule of [
    { code: { text: 'TID' } },
    { repeat: { when: ['PCM'] } },
    { repeat: { ...from(START), frequency: 1, period: 5, periodUnit: 'h' } },
  ]) {
    const { order } = read([{ schedule, ...volume(250) }], {
      method: 'syringe',
      times: '08:00, 13:00,18:00',
    });
    assert.deepEqual(order.regimen?.kind === 'bolus' && order.regimen.times, [480, 780, 1080]);
  }
});

test('[FH13] a climb with its ends is an advancement, and asks nothing', () => {
  const steps = [
    scheduled(from('2026-11-25T18:00:00Z', '2026-11-25T22:00:00Z'), rate(20)),
    scheduled(from('2026-11-25T22:00:00Z', '2026-11-26T02:00:00Z'), rate(45)),
    scheduled(from('2026-11-26T02:00:00Z', '2026-11-30T02:00:00Z'), rate(65)),
  ];
  const seen = read(steps.toReversed());
  assert.deepEqual(standing(seen), []);
  assert.deepEqual(seen.order.regimen?.advance, {
    start: mlPerHour(20),
    step: mlPerHour(25),
    every: 4 * HOUR,
    goal: mlPerHour(65),
  });
  assert.equal(seen.order.startsAt, parseInstant('2026-11-25T18:00:00Z'));
  assert.equal(seen.order.endsAt, parseInstant('2026-11-30T02:00:00Z'));
  assert.equal(only(seen, 'fhir/steps-become-advancement').data.everyMinutes, 240);
  // 4 h at 20, 4 h at 45, 16 h at 65 mL/h.
  assert.equal(only(seen, 'fhir/day-comes-to').data.firstDay, '1300 mL, 1300 kcal');
});

test('[FH13] a climb of volumes at the same times is an advancement too', () => {
  const step = (start: string, amount: number, end?: string): Nested =>
    scheduled({ ...from(start, end), timeOfDay: ['06:00:00', '18:00:00'] }, volume(amount));
  const { order } = read(
    [
      step('2026-11-25T06:00:00Z', 100, '2026-11-26T06:00:00Z'),
      step('2026-11-26T06:00:00Z', 150, '2026-11-27T06:00:00Z'),
      step('2026-11-27T06:00:00Z', 200),
    ],
    { method: 'syringe' },
  );
  assert.deepEqual(order.regimen?.advance, { start: ml(100), step: ml(50), every: 24 * HOUR, goal: ml(200) });
  assert.equal(order.regimen?.kind === 'bolus' && order.regimen.volume.volume, ml(200));
});

test('[FH13] uneven steps, a gap between steps and a last step too high are no climb', () => {
  const step = (start: string, value: number, end?: string): Nested =>
    scheduled(from(start, end), rate(value));
  const uneven: readonly (readonly Nested[])[] = [
    [step('2026-11-25T18:00:00Z', 20), step('2026-11-25T22:00:00Z', 40), step('2026-11-26T04:00:00Z', 60)],
    [step('2026-11-25T18:00:00Z', 20, '2026-11-25T21:00:00Z'), step('2026-11-25T22:00:00Z', 40)],
    [step('2026-11-25T18:00:00Z', 20), step('2026-11-25T22:00:00Z', 40), step('2026-11-26T02:00:00Z', 70)],
  ];
  for (const steps of uneven) {
    assert.equal(only(read(steps, { steps: 'replace' }), 'fhir/steps-uneven').level, 'ask');
    const { order } = read(steps, { steps: 'replace', rateMlPerHour: '40' });
    assert.deepEqual(order.regimen?.kind === 'continuous' && order.regimen.rate.rate, mlPerHour(40));
  }
});

test('[FH15] a rate that ends before the day does counts to its end', () => {
  const seen = read([scheduled(from('2026-11-25T18:00:00Z', '2026-11-25T22:00:00Z'), rate(100))]);
  assert.equal(only(seen, 'fhir/day-comes-to').data.firstDay, '400 mL, 400 kcal');
});

test('[FH8] amounts are exact in any unit: 250 mL/4 h, 0.06 L/h, 1.5e2 mL/h', () => {
  const rates: readonly (readonly [Nested, number])[] = [
    [{ rateRatio: { numerator: quantity(250, 'mL'), denominator: quantity(4, 'h') } }, 62.5],
    [rate(0.06, 'L/h'), 60],
    [rate(1, 'mL/min'), 60],
    [rate(1440, 'mL/d'), 60],
    [rate(1440, 'mL/(24.h)'), 60],
  ];
  for (const [amounts, expected] of rates) {
    const { order } = read([scheduled(from(START), amounts)]);
    assert.equal(order.regimen?.kind === 'continuous' && order.regimen.rate.rate, mlPerHour(expected));
  }
  const written = JSON.stringify(plainOrder()).replace('"value":62.5', '"value":1.500e2');
  const { order } = imported(written, ANSWERED);
  assert.equal(order.regimen?.kind === 'continuous' && order.regimen.rate.rate, mlPerHour(150));
});

test('[FH8] the digits that were written are shown back, with their trailing zeros', () => {
  const written = JSON.stringify(plainOrder()).replace('"value":1500', '"value":100.00');
  assert.equal(only(imported(written, { ...ANSWERED }), 'fhir/past-maximum').data.most, '100 mL, 100 kcal');
  const negative = JSON.stringify(plainOrder()).replace('"value":62.5', '"value":-62.500');
  assert.equal(only(imported(negative, ANSWERED), 'fhir/not-positive').data.written, '-62.500 mL/h');
});

test('[FH8] a rate that no pump can be set to takes the rate that a person says', () => {
  const { order } = read([scheduled(from(START), rate(1, 'L/d'))], { rateMlPerHour: '41.66' });
  assert.equal(order.regimen?.kind === 'continuous' && order.regimen.rate.rate, 4166);
});

test('[FH14] a maximum in mL/d, L/d, mL/(24.h) or ounces a day is the same limit', () => {
  for (const [value, code, expected] of [
    [1500, 'mL/d', 1500],
    [1.5, 'L/d', 1500],
    [1500, 'ml/(24.h)', 1500],
    [48, '[foz_us]/d', 1419.529419],
  ] as const) {
    const { order } = read([scheduled(from(START), rate(20))], {}, (changed) => {
      changed.enteralFormula.maxVolumeToDeliver = quantity(value, code);
    });
    assert.equal(order.mostVolumePerDay, Math.round(expected * 360_000_000));
  }
});

test('[FH15] a maximum that is reached exactly is not passed', () => {
  const exactly = imported(plainOrder(), ANSWERED);
  assert.equal(only(exactly, 'fhir/day-comes-to').data.firstDay, '1500 mL, 1500 kcal');
  const over = imported(
    plainOrder((order) => {
      order.enteralFormula.maxVolumeToDeliver = quantity(1499.9, 'mL/d');
    }),
    ANSWERED,
  );
  assert.equal(only(over, 'fhir/past-maximum').level, 'stop');
});

test('[FH15] a window over a clock change is reckoned by the ward’s clock', () => {
  // London's clocks go forward on 29 March 2026: the next window opens 23 h after this one, so 8 h + 1 h lie within 24 h.
  const seen = read([
    scheduled(
      { ...from('2026-03-28T22:00:00Z'), timeOfDay: ['22:00:00'], duration: 8, durationUnit: 'h' },
      rate(100),
    ),
  ]);
  assert.equal(only(seen, 'fhir/day-comes-to').data.firstDay, '900 mL, 900 kcal');
});
