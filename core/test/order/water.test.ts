import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { hours } from '@feedwright/core/base/instant';
import type { OrderDocument } from '@feedwright/core/order/document';
import { judged, ofRule, orderWith, policyOf, SILENT } from './example.ts';

type Given = NonNullable<NonNullable<OrderDocument['water']>['given']>[number];

const water = (given: Given, more: Partial<OrderDocument> = {}) =>
  orderWith({ water: { water: 'tap', given: [given] }, ...more });
const interval = (everyHours: number): Given => ({ kind: 'interval', volumeMl: 30, everyHours });
const SECOND_BAG: Given = { kind: 'second-bag', volumeMl: 30, everyHours: 4 };
const AROUND: Given = { kind: 'around-feeds', beforeMl: 30, afterMl: 30 };

const portions = {
  regimen: { kind: 'intermittent', volumeMl: 200, times: ['08:00'], minutes: 60, by: 'gravity' },
  method: 'gravity',
} as const satisfies Partial<OrderDocument>;

test('[OR30] the pump’s second bag needs a pump', () => {
  const codes = (order: ReturnType<typeof water>) =>
    ofRule('OR30', judged(order)).map((one) => one.data.what);
  assert.deepEqual(codes(water(SECOND_BAG)), []);
  assert.deepEqual(codes(water(SECOND_BAG, portions as never)), ['second-bag-without-pump']);
});

test('[OR49] another water than local policy’s for the tip is said; beyond the stomach its silence is too', () => {
  const policy = policyOf({ 'water.gastric': 'tap', 'water.jejunal': 'sterile' });
  const jejunal: NonNullable<OrderDocument['access']> = {
    device: 'jejunostomy',
    lumens: [{ name: 'port', tip: 'jejunal', uses: ['feed'] }],
    feedBy: 'port',
  };
  const at = (kind: 'tap' | 'sterile', access?: typeof jejunal) =>
    orderWith({ water: { water: kind, given: [interval(4)] }, ...(access ? { access } : {}) });
  const keys = (order: ReturnType<typeof at>) =>
    ofRule('OR49', judged(order, { policy })).map((one) => one.data.key);
  assert.deepEqual(keys(at('tap')), []);
  assert.deepEqual(keys(at('sterile')), ['water.gastric']);
  assert.deepEqual(keys(at('tap', jejunal)), ['water.jejunal']);
  assert.deepEqual(keys(at('sterile', jejunal)), []);
  const silent = (order: ReturnType<typeof at>) =>
    ofRule('OR40', judged(order, { policy: SILENT }))
      .map((one) => String(one.data.key))
      .filter((key) => key.startsWith('water'));
  assert.deepEqual(silent(at('tap', jejunal)), ['water.jejunal']);
  assert.deepEqual(silent(at('tap')), []);
});

/** S2 (from memory): a continuous feed is flushed every 4 h. */
test('[OR56] a running feed flushed less often than local policy has it is said', () => {
  const policy = policyOf({ 'flush.continuous.every': hours(4) });
  const found = (order: ReturnType<typeof water>) => ofRule('OR56', judged(order, { policy }));
  assert.deepEqual(found(water(interval(4))), []);
  const [note] = found(water(interval(6)));
  assert.deepEqual(
    [note?.data.value, note?.data.limit, note?.path.join('.')],
    [fraction(6), fraction(4), 'water.given.0.everyHours'],
  );
  assert.equal(found(water({ ...SECOND_BAG, everyHours: 6 } as Given)).length, 1);
  assert.deepEqual(
    found(water(interval(6), portions as never)),
    [],
    'a feed in portions has water around it',
  );
});

test('[OR56] water around feeds where feed never stops is said', () => {
  const codes = (more: Partial<OrderDocument>) =>
    ofRule('OR56', judged(water(AROUND, more))).map((one) => one.code);
  assert.deepEqual(codes({}), ['order/water-without-feeds']);
  assert.deepEqual(
    codes({ regimen: { kind: 'continuous', rateMlPerHour: 75, perDay: { from: '06:00', hours: 20 } } }),
    [],
  );
  assert.deepEqual(
    codes({ regimen: { kind: 'cyclic', from: '20:00', until: '06:00', rateMlPerHour: 75 } }),
    [],
  );
  assert.deepEqual(codes(portions as never), []);
});
