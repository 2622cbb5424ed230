import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { inMl, ml, sum } from '@feedwright/core/base/volume';
import { type OrderedDay, orderedPerDay } from '@feedwright/core/order/daily';
import type { OrderDocument } from '@feedwright/core/order/document';
import type { Step } from '@feedwright/core/order/per-day';
import fc from 'fast-check';
import { runs } from '../runs.ts';
import { arbOrder } from './arbitrary.ts';
import { AT, orderWith, policyOf, SILENT } from './example.ts';

type Regimen = NonNullable<OrderDocument['regimen']>;

const day = (changes: Partial<OrderDocument>, step?: Step): OrderedDay =>
  orderedPerDay(orderWith(changes), SILENT, AT, step);
const mixture = (regimen: Regimen, more: Partial<OrderDocument> = {}, step?: Step) => {
  const worked = day({ regimen, ...more }, step).mixture;
  return worked === null ? null : inMl(worked.value);
};

/** S30 (read): 2400 mL/d are 100 mL/h. S40 (read): 50 mL/h is 1200 mL/24 h. S45 (read): 720 mL/d are 30 mL/h. */
test('[OR57] a rate over a day, against published pairs of the two', () => {
  for (const [rateMlPerHour, perDay] of [
    [100, 2_400],
    [50, 1_200],
    [30, 720],
  ] as const) {
    assert.deepEqual(mixture({ kind: 'continuous', rateMlPerHour }), fraction(perDay));
  }
  // S35 prints "about 50" for 1166.7 mL a day: 48.6 mL/h come to 1166.4 mL, 50 would be 1200.
  assert.deepEqual(mixture({ kind: 'continuous', rateMlPerHour: 48.6 }), fraction(11_664, 10));
});

test('[OR57] each regimen comes to what it says for a full day', () => {
  const cyclic = { kind: 'cyclic', from: '20:00', until: '06:00' } as const;
  const table: readonly (readonly [Regimen, number | null])[] = [
    [{ kind: 'continuous', rateMlPerHour: 60, perDay: { from: '06:00', hours: 20 } }, 1_200],
    [{ ...cyclic, rateMlPerHour: 80 }, 800],
    [{ ...cyclic, volumeMl: 750 }, 750],
    [{ ...cyclic, rateMlPerHour: 80, volumeMl: 750 }, 750],
    [{ ...cyclic, rateMlPerHour: 70, volumeMl: 750 }, 700],
    [{ ...cyclic }, null],
    [
      { kind: 'intermittent', volumeMl: 250, times: ['06:00', '12:00', '18:00'], minutes: 40, by: 'pump' },
      750,
    ],
    [{ kind: 'intermittent', volumeMl: 250, minutes: 40, by: 'pump' }, null],
    [
      {
        kind: 'bolus',
        volumeMl: 240,
        times: ['08:00', '12:00'],
        meals: [{ at: '18:00', ifEatenLessThan: '1/2' }],
      },
      720,
    ],
    [{ kind: 'volume-targeted', volumeMlPerDay: 1_500, baseRateMlPerHour: 60 }, 1_500],
  ];
  for (const [regimen, perDay] of table) {
    assert.deepEqual(mixture(regimen), perDay === null ? null : fraction(perDay), JSON.stringify(regimen));
  }
  assert.equal(day({ regimen: null }).mixture, null);
});

test('[OR57] at ¾ strength 1800 mL of mixture hold 1350 mL of formula, and 75 mL/h of formula are 100 of mixture', () => {
  const feed = { id: 'standard', strength: '3/4' };
  const of = (worked: OrderedDay) => [inMl(worked.mixture!.value), inMl(worked.formula!.value)];
  assert.deepEqual(of(day({ feed })), [fraction(1_800), fraction(1_350)]);
  const regimen = { kind: 'continuous', rateMlPerHour: 75, of: 'formula' } as const;
  assert.deepEqual(of(day({ feed, regimen })), [fraction(2_400), fraction(1_800)]);
});

test('[OR57] an order that steps up, at its first step, as written, and at its goal', () => {
  const advance = { startMlPerHour: 20, stepMlPerHour: 20, everyHours: 8, goalMlPerHour: 80 };
  const at = (regimen: Regimen) =>
    (['start', 'ordered', 'goal'] as const).map((step) => mixture(regimen, {}, step)?.n);
  assert.deepEqual(at({ kind: 'continuous', rateMlPerHour: 40, advance }), [480, 960, 1_920]);
  assert.deepEqual(
    at({ kind: 'cyclic', from: '20:00', until: '06:00', rateMlPerHour: 40, volumeMl: 700, advance }),
    [200, 400, 700],
  );
  assert.deepEqual(
    at({ kind: 'volume-targeted', volumeMlPerDay: 1_500, baseRateMlPerHour: 40, advance }),
    [480, 1_500, 1_500],
  );
  const volumes = { startMl: 120, stepMl: 60, everyHours: 8, goalMl: 300 };
  assert.deepEqual(
    at({ kind: 'bolus', volumeMl: 180, times: ['08:00', '16:00'], advance: volumes }),
    [240, 360, 600],
  );
});

test('[OR57] water of a day: every so often, around feeds, at times, from a second bag', () => {
  const feeds: Partial<OrderDocument> = {
    regimen: {
      kind: 'intermittent',
      volumeMl: 250,
      times: ['06:00', '12:00', '18:00'],
      minutes: 40,
      by: 'pump',
    },
  };
  const flushes = (given: object, more: Partial<OrderDocument> = {}) =>
    inMl(day({ water: { water: 'tap', given: [given as never] }, ...more }).flushes.value);
  // S2 (from memory): 30 mL every 4 h; six a day.
  assert.deepEqual(flushes({ kind: 'interval', volumeMl: 30, everyHours: 4 }), fraction(180));
  assert.deepEqual(flushes({ kind: 'interval', volumeMl: 30, everyHours: 5 }), fraction(144), '4.8 a day');
  assert.deepEqual(
    flushes({ kind: 'interval', volumeMl: 30, everyHours: 5, from: '06:00' }),
    fraction(150),
    'five of each day',
  );
  assert.deepEqual(flushes({ kind: 'interval', volumeMl: 30, everyHours: 4, from: '06:00' }), fraction(180));
  assert.deepEqual(flushes({ kind: 'second-bag', volumeMl: 25, everyHours: 1 }), fraction(600));
  assert.deepEqual(flushes({ kind: 'times', volumeMl: 100, times: ['07:00', '21:00'] }), fraction(200));
  assert.deepEqual(flushes({ kind: 'around-feeds', beforeMl: 30, afterMl: 40 }, feeds), fraction(210));
  assert.deepEqual(
    flushes({ kind: 'around-feeds', beforeMl: 30, afterMl: 40 }),
    fraction(0),
    'it never stops',
  );
});

test('[OR57] water around a medicine is the order’s, else local policy’s, else named as unset', () => {
  const order = orderWith({
    medicines: [
      { name: 'a', times: ['08:00', '20:00'], volumeMl: 10, waterBeforeMl: 20 },
      { name: 'b', times: ['08:00'], volumeMl: 5, waterBeforeMl: 0, waterAfterMl: 0 },
    ],
  });
  const policy = policyOf({ 'flush.medicine.before': ml(50), 'flush.medicine.after': ml(15) });
  const said = orderedPerDay(order, policy, AT);
  assert.deepEqual(
    [inMl(said.medicines.value), inMl(said.medicineWater.value)],
    [fraction(25), fraction(70)],
  );
  assert.deepEqual(said.unset, []);
  const unsaid = orderedPerDay(order, SILENT, AT);
  assert.deepEqual(inMl(unsaid.medicineWater.value), fraction(40));
  assert.deepEqual(unsaid.unset, ['flush.medicine.after']);
});

test('[OR57] the fluid of a day is the sum of its parts, and each number is the one in its working', () => {
  fc.assert(
    fc.property(arbOrder('sane'), (order) => {
      const of = orderedPerDay(order, SILENT, AT);
      const parts = [of.mixture!, of.flushes, of.medicines, of.medicineWater, of.moduleWater];
      assert.equal(of.fluid.value, sum([...parts.map((part) => part.value), order.intravenousPerDay]));
      for (const { value, working } of [...parts, of.formula!, of.fluid]) {
        assert.deepEqual(working.result.is, { kind: 'quantity', value: inMl(value), unit: 'mL' });
        assert.equal(working.rule, 'OR57');
      }
    }),
    runs(500),
  );
});
