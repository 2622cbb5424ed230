/**
 * What the feeding day comes to. Energy, protein and free water against arithmetic of the published figures: a feed of
 * 1.5 kcal/mL with 64 g of protein a litre and 76 % water (intensive-care table of feeds, S95), flushes of 30 mL every 4 h
 * (ASPEN 2009, S2, from memory), 50 mL/h written as 1200 mL in 24 h (Brierley-Hobson 2019, S40).
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { ml } from '@feedwright/core/base/volume';
import type { DayTotals } from '@feedwright/core/plan/plan';
import { planFor } from '@feedwright/core/plan/plan-for';
import fc from 'fast-check';
import { runs } from '../runs.ts';
import { arbSituation } from './arbitrary-plan.ts';
import { requestOf } from './case-file.ts';

const dayOf = (own: Parameters<typeof requestOf>[0], now: string): DayTotals =>
  planFor(requestOf(own, now)).day as DayTotals;
const NOW = 'now 2026-11-25 08:00\npolicy quiet';

test('[PL22] [PL23] [PL24] a day of 50 mL/h of an energy-dense feed is 1200 mL, 1800 kcal and 76.8 g', () => {
  const day = dayOf({ feed: { id: 'energy-1.5' }, regimen: { kind: 'continuous', rateMlPerHour: 50 } }, NOW);
  assert.equal(day.formula.value, ml(1200));
  assert.deepEqual(day.energyKcal.value, fraction(1800));
  assert.deepEqual(day.proteinG.value, fraction(768, 10));
});

test('[PL24] 1500 mL at 76 % are 1140 mL of free water, and with six flushes of 30 mL 1320 mL', () => {
  const own = { feed: { id: 'energy-1.5' }, regimen: { kind: 'continuous', rateMlPerHour: 62.5 } };
  const { water, formula } = dayOf(own, NOW);
  assert.equal(formula.value, ml(1500));
  assert.deepEqual(
    [water.formula.value, water.flushes.value, water.total.value],
    [ml(1140), ml(180), ml(1320)],
  );
});

test('[PL22] what was received before the plan began counts, and what the plan gives after the day does not', () => {
  const own = {
    startsAt: '2026-11-24T08:00:00+00:00',
    prescribedAt: '2026-11-24T07:00:00+00:00',
    regimen: { kind: 'continuous', rateMlPerHour: 60 },
  };
  const now = 'now 2026-11-25 18:00\nuntil 2026-11-26 18:00\npolicy quiet\nreceived 500 mL\nwater 90 mL';
  const day = dayOf(own, now);
  // 14 h to 08:00; flushes at 20:00, 00:00 and 04:00.
  assert.deepEqual([day.formula.value, day.water.flushes.value], [ml(500 + 14 * 60), ml(90 + 3 * 30)]);
});

test('[PL22] [PL24] at half strength half is formula, and what dilutes it is water', () => {
  const own = { feed: { strength: 0.5 }, regimen: { kind: 'continuous', rateMlPerHour: 50 } };
  const day = dayOf(own, NOW);
  assert.deepEqual([day.mixture.value, day.formula.value], [ml(1200), ml(600)]);
  // 600 × 0.85 + 600
  assert.equal(day.water.formula.value, ml(1110));
});

test('[PL22] an ordered volume of formula is what its mixture holds', () => {
  const own = { feed: { strength: 0.75 }, regimen: { kind: 'continuous', rateMlPerHour: 45, of: 'formula' } };
  const day = dayOf(own, NOW);
  assert.deepEqual([day.mixture.value, day.formula.value], [ml(60 * 24), ml(45 * 24)]);
});

test('[PL23] modules given earlier today count once they are done, and never twice', () => {
  const own = {
    startsAt: '2026-11-24T08:00:00+00:00',
    prescribedAt: '2026-11-24T07:00:00+00:00',
    regimen: { kind: 'continuous', rateMlPerHour: 60 },
    modules: [{ name: 'protein', times: ['10:00', '18:00'], waterMl: 60, energyKcal: 20, proteinG: 5 }],
  };
  const at = 'now 2026-11-25 14:00\npolicy quiet\nreceived 360 mL';
  const protein = (more: string) => dayOf(own, `${at}${more}`).proteinG.value;
  // 57.6 g in the feed; the module of 18:00 is to come, that of 10:00 was given or was missed.
  assert.deepEqual(protein(''), fraction(626, 10));
  assert.deepEqual(protein('\ndone give-module:protein:2026-11-25T10:00Z'), fraction(676, 10));
});

test('[PL25] what is ordered is the order as it is written: a hold and its catching up do not change it', () => {
  const scan = {
    id: 'scan',
    from: '2026-11-25T13:00:00+00:00',
    until: '2026-11-25T15:00:00+00:00',
    why: 'procedure',
  };
  const fixed = { regimen: { kind: 'continuous', rateMlPerHour: 60 }, holds: [scan] };
  assert.equal(dayOf(fixed, NOW).ordered?.value, ml(1440));
  const target = {
    regimen: { kind: 'volume-targeted', volumeMlPerDay: 1300, baseRateMlPerHour: 60, mostRateMlPerHour: 150 },
    holds: [scan],
  };
  assert.equal(dayOf(target, NOW).ordered?.value, ml(1300));
  const late = { startsAt: '2026-11-25T20:00:00+00:00', regimen: { kind: 'continuous', rateMlPerHour: 60 } };
  assert.equal(dayOf(late, NOW).ordered?.value, ml(720));
});

test('[PL25] what was ordered of formula is not less for a mixture that the pump cannot be set to', () => {
  // By hand: 50 mL/h of formula all day are 1200 mL, in 1600 mL at ¾; set to 66 mL/h the pump gives 1584 mL of mixture.
  const own = { feed: { strength: 0.75 }, regimen: { kind: 'continuous', rateMlPerHour: 50, of: 'formula' } };
  const day = dayOf(own, NOW);
  assert.deepEqual(
    [day.ordered?.value, day.mixture.value, day.formula.value],
    [ml(1600), ml(1584), ml(1188)],
  );
  const night = {
    feed: { strength: 0.75 },
    regimen: { kind: 'cyclic', from: '20:00', until: '08:00', volumeMl: 900, of: 'formula' },
  };
  assert.equal(dayOf(night, NOW).ordered?.value, ml(1200));
});

test('[PL22] [PL23] [PL24] totals are exactly what their parts are, whatever the order', () => {
  fc.assert(
    fc.property(arbSituation({ protectedTimes: false }), ({ request }) => {
      const day = planFor(request).day as DayTotals;
      const { mixture, formula, water } = day;
      const { n, d } = request.order.feed?.strength ?? { n: 1, d: 1 };
      assert.equal(formula.value, Math.floor((mixture.value * n) / d));
      assert.equal(water.total.value, water.formula.value + water.flushes.value);
      assert.ok(water.formula.value <= mixture.value);
    }),
    runs(300),
  );
});
