import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { minutes } from '@feedwright/core/base/instant';
import type { OrderDocument } from '@feedwright/core/order/document';
import type { Order } from '@feedwright/core/order/order';
import { judged, ofRule, orderWith, policyOf } from './example.ts';

const codes = (rule: string, order: Order) => ofRule(rule, judged(order)).map((one) => one.code);
const intermittent = (times: string[], lasts: number): Partial<OrderDocument> => ({
  regimen: { kind: 'intermittent', volumeMl: 200, times, minutes: lasts, by: 'pump' },
});

test('[OR24] a cyclic window that begins when it ends has no length; one over midnight has', () => {
  const window = (from: string, until: string) =>
    codes('OR24', orderWith({ regimen: { kind: 'cyclic', from, until, rateMlPerHour: 80 } }));
  assert.deepEqual(window('20:00', '20:00'), ['order/window-empty']);
  assert.deepEqual(window('20:00', '20:01'), []);
  assert.deepEqual(window('20:00', '06:00'), []);
});

test('[OR25] the same time twice stops, for feeds, meals, water, medicines and modules', () => {
  const twice: readonly Partial<OrderDocument>[] = [
    intermittent(['08:00', '12:00', '08:00'], 30),
    {
      method: 'syringe',
      regimen: {
        kind: 'bolus',
        volumeMl: 200,
        times: ['08:00'],
        minutes: 15,
        meals: [{ at: '08:00', ifEatenLessThan: '1/2' }],
      },
    },
    { water: { water: 'tap', given: [{ kind: 'times', volumeMl: 50, times: ['10:00', '10:00'] }] } },
    { medicines: [{ name: 'a', times: ['10:00', '10:00'], volumeMl: 5 }] },
    { modules: [{ name: 'a', times: ['10:00', '10:00'], waterMl: 60, energyKcal: 24, proteinG: 6 }] },
  ];
  for (const changes of twice) assert.deepEqual(codes('OR25', orderWith(changes)), ['order/time-twice']);
  assert.deepEqual(codes('OR25', orderWith(intermittent(['08:00', '12:00'], 30))), []);
});

test('[OR25] a feed that still runs when the next begins stops, over midnight too; to the minute', () => {
  const at = (times: string[], lasts: number) => codes('OR25', orderWith(intermittent(times, lasts)));
  assert.deepEqual(at(['08:00', '09:00'], 60), []);
  assert.deepEqual(at(['08:00', '09:00'], 60.5), ['order/feeds-overlap']);
  assert.deepEqual(at(['09:00', '08:00'], 61), ['order/feeds-overlap'], 'in whatever order they are written');
  assert.deepEqual(at(['00:30', '23:30'], 60), []);
  assert.deepEqual(at(['00:30', '23:30'], 61), ['order/feeds-overlap']);
  assert.deepEqual(at(['08:00'], 1_440), []);
  const [problem] = ofRule('OR25', judged(orderWith(intermittent(['00:30', '23:30'], 61))));
  assert.deepEqual(problem?.data, {
    at: 1_410,
    next: 30,
    value: fraction(61),
    limit: fraction(60),
    unit: 'min',
  });
});

test('[OR25] where the order leaves open how long a bolus takes, local policy says', () => {
  const order = orderWith({
    method: 'syringe',
    regimen: { kind: 'bolus', volumeMl: 200, times: ['08:00', '08:10'] },
  });
  assert.deepEqual(codes('OR25', order), []);
  const policy = policyOf({ 'bolus.least-duration': minutes(15) });
  assert.deepEqual(
    ofRule('OR25', judged(order, { policy })).map((one) => one.code),
    ['order/feeds-overlap'],
  );
});

test('[OR25] a time that is not on the clock stops', () => {
  const order = orderWith(intermittent(['08:00'], 30));
  const at = (times: readonly number[]) =>
    codes('OR25', { ...order, regimen: { ...order.regimen, times } as Order['regimen'] });
  for (const time of [0, 1_439]) assert.deepEqual(at([time]), []);
  assert.deepEqual(at([1_440]), ['order/time-off-clock']);
  assert.deepEqual(at([-1]), ['order/time-off-clock']);
  assert.deepEqual(at([90.5]), ['order/time-off-clock']);
  const off: Order = {
    ...orderWith(),
    regimen: { ...orderWith().regimen, perDay: { from: 2_000, lasts: minutes(60) } } as Order['regimen'],
  };
  assert.deepEqual(codes('OR25', off), ['order/time-off-clock']);
});
