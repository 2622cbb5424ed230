import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { duration } from '@feedwright/core/base/instant';
import { ml, mlPerHour, type Rate, rate } from '@feedwright/core/base/volume';
import { CREDIBLE, isCredible } from '@feedwright/core/order/credible';
import type { Order } from '@feedwright/core/order/order';
import { judged, ofRule, orderWith } from './example.ts';

const paths = (order: Order): readonly string[] =>
  ofRule('OR3', judged(order)).map((one) => one.path.join('.'));

const atRate = (amount: Rate): Order => {
  const order = orderWith();
  return {
    ...order,
    regimen: { ...order.regimen, rate: { rate: amount, of: 'mixture' } } as Order['regimen'],
  };
};

test('[OR3] a number that a program made is held to the same bounds as one in a document', () => {
  assert.deepEqual(paths(atRate(rate(1))), []);
  assert.deepEqual(paths(atRate(mlPerHour(833))), [], '19,992 mL a day');
  for (const absurd of [rate(0), rate(-1), rate(200_001), mlPerHour(50_000)]) {
    assert.deepEqual(paths(atRate(absurd)), ['regimen.rateMlPerHour']);
  }
  const [problem] = ofRule('OR3', judged(atRate(mlPerHour(50_000))));
  assert.equal(problem?.level, 'stop');
  assert.deepEqual(problem?.data, { value: fraction(50_000), ...CREDIBLE.rate });
});

test('[OR3] nothing is worked out from a number that nobody can have meant', () => {
  const problems = judged({
    ...atRate(mlPerHour(50_000)),
    fluidLimitPerDay: ml(1_500),
    mostRate: mlPerHour(100),
  });
  assert.deepEqual(
    problems.filter((one) => ['OR26', 'OR27', 'OR31', 'OR37'].includes(one.rule)),
    [],
  );
});

test('[OR3] every part of an order that holds a number is looked at', () => {
  const order = orderWith({
    medicines: [{ name: 'a', times: ['08:00'], volumeMl: 10 }],
    modules: [{ name: 'b', times: ['08:00'], waterMl: 60, energyKcal: 24, proteinG: 6 }],
    otherEnergy: [{ name: 'c', kcalPerDay: 100 }],
  });
  const far = ml(1_000_000);
  const negative = fraction(-1);
  const absurd: Order = {
    ...order,
    patient: { ...order.patient, dosingWeight: { kg: fraction(70_000), on: null }, heightCm: fraction(1) },
    feed: { ...order.feed!, strength: fraction(0), statedKcalPerMl: negative },
    access: { ...order.access!, french: fraction(100) },
    regimen: {
      kind: 'intermittent',
      volume: { volume: far, of: 'mixture' },
      times: [0],
      lasts: duration(0),
      by: 'pump',
      advance: { start: far, step: ml(0), every: duration(1), goal: far },
    },
    water: { water: 'tap', given: [{ kind: 'interval', volume: ml(0), every: duration(1), from: null }] },
    medicines: [
      {
        ...order.medicines[0]!,
        volume: far,
        holdBefore: duration(-1),
        holdAfter: duration(1e9),
        waterBefore: far,
        waterAfter: far,
      },
    ],
    modules: [{ ...order.modules[0]!, water: far, energyKcal: negative, proteinG: negative }],
    mostRate: rate(0),
    mostVolumePerDay: ml(0),
    fluidLimitPerDay: ml(0),
    intravenousPerDay: far,
    otherEnergy: [{ name: 'c', kcalPerDay: negative }],
    needs: { energyKcalPerDay: negative, proteinGPerDay: negative, waterPerDay: ml(0) },
  };
  assert.deepEqual(paths(absurd).toSorted(), [
    'access.french',
    'feed.statedKcalPerMl',
    'feed.strength',
    'fluidLimitMlPerDay',
    'intravenousMlPerDay',
    'medicines.0.holdAfterMinutes',
    'medicines.0.holdBeforeMinutes',
    'medicines.0.volumeMl',
    'medicines.0.waterAfterMl',
    'medicines.0.waterBeforeMl',
    'modules.0.energyKcal',
    'modules.0.proteinG',
    'modules.0.waterMl',
    'mostRateMlPerHour',
    'mostVolumeMlPerDay',
    'needs.energyKcalPerDay',
    'needs.proteinGPerDay',
    'needs.waterMlPerDay',
    'otherEnergy.0.kcalPerDay',
    'patient.dosingWeight.kg',
    'patient.heightCm',
    'regimen.advance.everyHours',
    'regimen.advance.goalMl',
    'regimen.advance.startMl',
    'regimen.advance.stepMl',
    'regimen.minutes',
    'regimen.volumeMl',
    'water.given.0.everyHours',
    'water.given.0.volumeMl',
  ]);
});

test('[OR3] numbers that are credible one by one are not when a day of them is 20 L', () => {
  const times = (count: number) =>
    Array.from({ length: count }, (_, i) => `${String(i).padStart(2, '0')}:00`);
  const feeds = (count: number) =>
    orderWith({
      regimen: { kind: 'intermittent', volumeMl: 1_000, times: times(count), minutes: 20, by: 'pump' },
    });
  assert.deepEqual(paths(feeds(20)), []);
  assert.deepEqual(paths(feeds(21)), ['regimen']);
  const { regimen } = orderWith({ regimen: { kind: 'bolus', volumeMl: 1, times: ['00:00'] } });
  const many = { ...orderWith(), regimen: { ...regimen, times: Array(97).fill(0) } as Order['regimen'] };
  assert.deepEqual(paths(many), ['regimen.times']);
});

test('[OR3] a feed faster than anything can push it through a tube is a slip of the pen', () => {
  const feed = (minutes: number) =>
    orderWith({ method: 'syringe', regimen: { kind: 'bolus', volumeMl: 400, times: ['08:00'], minutes } });
  assert.deepEqual(paths(feed(4)), [], '100 mL/min');
  assert.deepEqual(paths(feed(3.9)), ['regimen.minutes']);
});

test('[OR3] the bounds of sense lie outside every number that is published for feeding by tube', () => {
  // S31: 240–480 mL a feed; S37: 150 mL/h; S41: 500 mL, 130 mL/h; a preterm infant of 500 g (S42) up to adults.
  for (const amount of [0.5, 60, 480, 500]) assert.ok(isCredible(fraction(amount * 2, 2), CREDIBLE.feed));
  for (const amount of [1, 25, 150, 300]) assert.ok(isCredible(fraction(amount), CREDIBLE.rate));
  for (const grams of [500, 70_000, 300_000]) assert.ok(isCredible(fraction(grams, 1_000), CREDIBLE.weight));
  // S31, S95: densities from 0.67 to 2.0 kcal/mL, and the same in kcal/L, which a rule of its own names.
  for (const density of [fraction(67, 100), fraction(2), fraction(2_000)])
    assert.ok(isCredible(density, CREDIBLE.density));
});
