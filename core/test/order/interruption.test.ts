import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import type { OrderDocument } from '@feedwright/core/order/document';
import { DOCUMENT, judged, ofRule, orderWith } from './example.ts';

type Medicine = NonNullable<OrderDocument['medicines']>[number];

const held = (times: string[], before: number, after: number): Medicine => ({
  name: 'a medicine',
  times,
  volumeMl: 10,
  holdBeforeMinutes: before,
  holdAfterMinutes: after,
});
const cost = (medicines: readonly Medicine[], changes: Partial<OrderDocument> = {}) => {
  const [note] = ofRule('OR47', judged(orderWith({ medicines: [...medicines], ...changes })));
  return note === undefined ? null : [note.data.offMinutes, note.data.value];
};

test('[OR47] three holds of two hours take a quarter of a day’s feed', () => {
  // 6 h × 75 mL/h = 450 of 1800 mL; an hour each side is what texts give for phenytoin (S31, S63, read).
  assert.deepEqual(cost([held(['06:00', '14:00', '22:00'], 60, 60)]), [fraction(360), fraction(450)]);
});

test('[OR47] holds that overlap count once, over midnight as well', () => {
  assert.deepEqual(cost([held(['08:00'], 60, 60), held(['09:00'], 60, 60)]), [fraction(180), fraction(225)]);
  assert.deepEqual(cost([held(['23:30', '00:15'], 60, 60)]), [fraction(165), fraction(825, 4)]);
  assert.deepEqual(cost([held(['08:00', '16:00', '00:00'], 480, 480)]), [fraction(1_440), fraction(1_800)]);
});

test('[OR47] only the hours in which feed runs are lost', () => {
  const cyclic: Partial<OrderDocument> = {
    regimen: { kind: 'cyclic', from: '20:00', until: '06:00', rateMlPerHour: 100 },
  };
  assert.equal(cost([held(['12:00'], 60, 60)], cyclic), null);
  assert.deepEqual(cost([held(['06:00'], 60, 60)], cyclic), [fraction(60), fraction(100)]);
  assert.deepEqual(cost([held(['00:00'], 60, 60)], cyclic), [fraction(120), fraction(200)]);
  const sixteen: Partial<OrderDocument> = {
    regimen: { kind: 'continuous', rateMlPerHour: 100, perDay: { from: '16:00', hours: 16 } },
  };
  assert.deepEqual(cost([held(['08:30'], 60, 60)], sixteen), [fraction(30), fraction(50)]);
  const bolus: Partial<OrderDocument> = {
    method: 'syringe',
    regimen: { kind: 'bolus', volumeMl: 200, times: ['08:00'], minutes: 20 },
  };
  assert.equal(cost([held(['08:00'], 60, 60)], bolus), null, 'a portion waits');
  assert.equal(cost([held(['08:00'], 0, 0)]), null);
});

test('[OR47] whether it may be made up is said', () => {
  const madeUp = (changes: Partial<OrderDocument>) =>
    ofRule('OR47', judged(orderWith({ medicines: [held(['08:00'], 60, 60)], ...changes })))[0]?.data.madeUp;
  assert.equal(madeUp({}), false);
  assert.equal(madeUp({ catchUpProtocol: 'volume-based feeding' }), true);
  assert.equal(
    madeUp({ regimen: { kind: 'volume-targeted', volumeMlPerDay: 1_800, baseRateMlPerHour: 75 } }),
    true,
  );
  assert.equal(madeUp({ regimen: { kind: 'cyclic', from: '06:00', until: '22:00', volumeMl: 1_600 } }), true);
});

test('[OR52] why lost volume is not made up although the order would have it', () => {
  const targeted = {
    regimen: { kind: 'volume-targeted', volumeMlPerDay: 1_200, baseRateMlPerHour: 50 },
  } as const;
  const why = (changes: Partial<OrderDocument>) => ofRule('OR52', judged(orderWith(changes)))[0]?.data.why;
  const child = { patient: { ...DOCUMENT.patient, birthDate: '2020-01-01' } };
  const jejunal: Partial<OrderDocument> = {
    access: { device: 'nasojejunal', lumens: [{ name: 'p', tip: 'jejunal', uses: ['feed'] }], feedBy: 'p' },
  };
  assert.equal(why(targeted), undefined);
  assert.equal(why({ refeedingCaution: true }), undefined, 'a fixed rate is never made up');
  assert.deepEqual(why({ ...targeted, refeedingCaution: true }), ['refeeding-caution']);
  assert.deepEqual(why({ ...targeted, ...child, ...jejunal }), ['child', 'post-pyloric']);
  assert.equal(why({ ...targeted, ...child, ...jejunal, catchUpProtocol: 'a protocol' }), undefined);
  const advance = { startMlPerHour: 25, stepMlPerHour: 25, everyHours: 8, goalMlPerHour: 50 };
  assert.deepEqual(why({ regimen: { ...targeted.regimen, advance }, catchUpProtocol: 'a protocol' }), [
    'advancing',
  ]);
});
