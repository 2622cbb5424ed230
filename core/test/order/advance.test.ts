import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import type { OrderDocument } from '@feedwright/core/order/document';
import { judged, moment, ofRule, orderWith } from './example.ts';

const steps = (startMlPerHour: number, stepMlPerHour: number, goalMlPerHour: number, everyHours = 8) => ({
  startMlPerHour,
  stepMlPerHour,
  everyHours,
  goalMlPerHour,
});
const found = (
  rule: string,
  rateMlPerHour: number,
  advance: ReturnType<typeof steps>,
  more: Partial<OrderDocument> = {},
) => ofRule(rule, judged(orderWith({ regimen: { kind: 'continuous', rateMlPerHour, advance }, ...more })));

test('[OR28] steps lead from start to goal, and the ordered amount is on the way', () => {
  const whats = (rate: number, advance: ReturnType<typeof steps>) =>
    found('OR28', rate, advance).map((one) => one.data.what);
  assert.deepEqual(whats(20, steps(20, 20, 80)), []);
  assert.deepEqual(whats(80, steps(20, 20, 80)), [], 'the goal');
  assert.deepEqual(whats(50, steps(20, 20, 80)), [], 'on the way');
  assert.deepEqual(whats(20, steps(20, 20, 20)), [], 'there already');
  assert.deepEqual(whats(80, steps(80.01, 20, 80)), ['away-from-goal']);
  assert.deepEqual(whats(19.99, steps(20, 20, 80)), ['ordered-not-on-the-way']);
  assert.deepEqual(whats(80.01, steps(20, 20, 80)), ['ordered-not-on-the-way']);
});

test('[OR28] the same for the volume of a bolus', () => {
  const bolus = (volumeMl: number, startMl: number, goalMl: number) =>
    ofRule(
      'OR28',
      judged(
        orderWith({
          method: 'syringe',
          regimen: {
            kind: 'bolus',
            volumeMl,
            times: ['08:00'],
            minutes: 20,
            advance: { startMl, stepMl: 60, everyHours: 8, goalMl },
          },
        }),
      ),
    ).length;
  assert.deepEqual([bolus(120, 120, 300), bolus(120, 300, 120), bolus(301, 120, 300)], [0, 1, 1]);
});

/** S34 (read): start at 20 mL/h, 20 mL/h more every 8 h. To 75 mL/h that is three steps, the last of 15. */
test('[OR48] how many steps there are, how large the last is, and when it could be taken at the earliest', () => {
  const [note] = found('OR48', 20, steps(20, 20, 75));
  assert.deepEqual(note?.data, {
    start: fraction(20),
    step: fraction(20),
    goal: fraction(75),
    unit: 'mL/h',
    steps: 3,
    everyHours: fraction(8),
    lastStep: fraction(15),
    reachedAt: moment('2026-11-26T08:00:00Z'),
  });
  assert.equal(found('OR48', 20, steps(20, 20, 80))[0]?.data.steps, 3);
  assert.equal(found('OR48', 20, steps(20, 20, 80.01))[0]?.data.steps, 4);
  assert.equal(found('OR48', 20, steps(20, 20, 20))[0]?.data.steps, 0);
  assert.equal(found('OR48', 20, steps(20, 20, 75), { startsAt: null })[0]?.data.reachedAt, null);
  assert.deepEqual(found('OR48', 80, steps(90, 20, 80)), [], 'a contradiction is not explained');
});
