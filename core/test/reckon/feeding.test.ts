import assert from 'node:assert/strict';
import { test } from 'node:test';
import { compare, of, ofFraction, over, plus, times, toDouble } from '@feedwright/core/reckon/exact';
import fc from 'fast-check';
import { runs } from '../runs.ts';
import { refuses, shows, worked } from './worked.ts';

/** Rule and ceiling of the PEP uP ward sheet (source S37); the numbers are derived, none are printed. */
const CATCH_UP = [
  { why: 'nothing lost', goal: 1200, received: 400, hoursLeft: 16, needed: 50, rate: 50, short: 0 },
  { why: '4 h lost', goal: 1200, received: 400, hoursLeft: 12, needed: 66.7, rate: 66, short: 8 },
  { why: 'over the ceiling', goal: 1800, received: 400, hoursLeft: 8, needed: 175, rate: 150, short: 200 },
  {
    why: 'over the ceiling, late',
    goal: 1600,
    received: 300,
    hoursLeft: 4,
    needed: 325,
    rate: 150,
    short: 700,
  },
  { why: 'goal met', goal: 1200, received: 1200, hoursLeft: 5, needed: 0, rate: 0, short: 0 },
] as const;

for (const { why, needed, rate, short, ...given } of CATCH_UP) {
  test(`[RK7] catches up under its ceiling: ${why}`, () => {
    const shown = shows('catch-up', { ...given, ceiling: 150 });
    assert.equal(shown.neededRateMlPerHour, needed);
    assert.equal(shown.rateMlPerHour, rate);
    assert.equal(shown.shortfallMl, short);
    assert.equal(shown.atCeiling, needed > 150 ? 'yes' : 'no');
  });
}

test('[RK7] more than the goal gives no negative rate, and says how much more', () => {
  const shown = shows('catch-up', { goal: 1200, received: 1260, hoursLeft: 5, ceiling: 150 });
  assert.deepEqual([shown.rateMlPerHour, shown.remainingMl, shown.overMl], [0, 0, 60]);
});

test('[RK7] no hours left gives no rate, only the shortfall', () => {
  for (const given of [{ hoursLeft: 0 }, { hoursLeft: 3, plannedHold: 3 }]) {
    const found = worked('catch-up', { goal: 1200, received: 1000, ceiling: 150, ...given });
    assert.equal(found.result.rateMlPerHour, undefined);
    assert.equal(toDouble(found.unrounded.shortfallMl ?? of(0)), 200);
    assert.ok(found.cautions.includes('no-hours-left'));
  }
  assert.deepEqual(refuses('catch-up', { goal: 1200, received: 0, hoursLeft: 2, plannedHold: 3 }), [
    'reckon/longer-than-what-is-left',
  ]);
});

test('[RK7] the hours that are left may be named by the clock, over a clock change too', () => {
  const at = (now: string, until: string, rest: Record<string, string> = {}) =>
    shows('catch-up', { goal: 1200, received: 400, now, until, ceiling: 150, ...rest });
  assert.deepEqual([at('16:00', '06:00').hoursToRun, at('16:00', '06:00').rateMlPerHour], [14, 57]);
  const night = at('2026-10-24T22:00', '2026-10-25T06:00', { zone: 'Europe/London' });
  assert.deepEqual([night.hoursToRun, night.rateMlPerHour], [9, 88]);
});

test('[RK6] a goal may be so much for each kg', () => {
  const shown = shows('volume-for-energy', { weight: '70 kg', kcal_per_kg: '25', density: '1.5', hours: 24 });
  assert.deepEqual(
    [shown.goalKcal, shown.volumeMl, shown.rateMlPerHour, shown.deliveredVolumeMl],
    [1750, 1167, 49, 1176],
  );
});

test('[RK7] a planned hold is left out of the hours that run', () => {
  const shown = shows('catch-up', { goal: 1200, received: 400, hoursLeft: 16, plannedHold: 2, ceiling: 150 });
  assert.deepEqual([shown.hoursToRun, shown.neededRateMlPerHour, shown.rateMlPerHour], [14, 57.1, 57]);
});

test('[RK7] the catch-up rate never passes the ceiling nor the goal, whatever rounding is asked for', () => {
  const round = fc.constantFrom('up', 'nearest 5', '10', 'none', 'up 25', '0.1');
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 3000 }),
      fc.integer({ min: 0, max: 3000 }),
      fc.integer({ min: 1, max: 24 }),
      fc.integer({ min: 10, max: 200 }),
      round,
      (goal, received, hoursLeft, ceiling, rounding) => {
        const found = worked('catch-up', { goal, received, hoursLeft, ceiling, round: rounding });
        const rate = found.result.rateMlPerHour;
        assert.ok(rate?.kind === 'quantity');
        const programmed = ofFraction(rate.value);
        assert.ok(compare(programmed, of(ceiling)) <= 0);
        const { deliverableMl, remainingMl, shortfallMl } = found.unrounded;
        assert.ok(deliverableMl && remainingMl && shortfallMl);
        assert.equal(compare(deliverableMl, times(programmed, of(hoursLeft))), 0);
        assert.ok(compare(deliverableMl, remainingMl) <= 0);
        assert.equal(compare(plus(deliverableMl, shortfallMl), remainingMl), 0);
      },
    ),
    runs(2000),
  );
});

test('[RK7] ceilings of energy round down whatever is asked', () => {
  for (const round of ['up', 'nearest', 'none', '1']) {
    const shown = shows('refeeding-start', { weight: '35.77 kg', round });
    assert.equal(shown.niceCeilingKcal, 357);
    assert.equal(shown.niceExtremeCeilingKcal, 178);
  }
  const withDextrose = shows('refeeding-start', { weight: 48, other: 200 });
  assert.deepEqual([withDextrose.leftUnderNiceKcal, withDextrose.leftUnderNiceExtremeKcal], [280, 40]);
  assert.equal(shows('refeeding-start', { weight: 30, other: 400 }).leftUnderNiceKcal, 0);
});

test('[RK7] holds that overlap count once, and an uncapped rate says that no ceiling was given', () => {
  const shown = shows('hold-adjusted-rate', {
    volume: 1200,
    holds: '10:00-12:00; 11:30-14:00; 23:00-01:00',
    ceiling: 150,
  });
  assert.deepEqual(
    [shown.hoursHeld, shown.hoursToRun, shown.neededRateMlPerHour, shown.rateMlPerHour],
    [6, 18, 66.7, 66],
  );
  assert.equal(shown.shortfallMl, 12);
  assert.ok(worked('hold-adjusted-rate', { volume: 1200, held: 4 }).cautions.includes('no-ceiling-given'));
  assert.ok(
    worked('catch-up', { goal: 1200, received: 0, hoursLeft: 4 }).cautions.includes('no-ceiling-given'),
  );
  assert.deepEqual(refuses('hold-adjusted-rate', { volume: 1200, held: '20; 5' }), [
    'reckon/longer-than-the-day',
  ]);
});

test('[RK6] what is delivered comes from the rate that is programmed', () => {
  fc.assert(
    fc.property(fc.integer({ min: 500, max: 3000 }), fc.integer({ min: 1, max: 24 }), (volume, hours) => {
      const shown = shows('rate', { volume, hours });
      assert.equal(shown.deliveredVolumeMl, Number(shown.rateMlPerHour) * hours);
    }),
    runs(500),
  );
  const energy = shows('volume-for-energy', { goal: 1850, energyKcalPerMl: '1.2', hours: 22, round: '5' });
  assert.deepEqual([energy.rateMlPerHour, energy.deliveredVolumeMl, energy.energyKcal], [70, 1540, 1850]);
});

test('[RK6] what is delivered comes from whole containers and whole boluses', () => {
  const cans = { volume: 1500, canMl: 237, kcal_per_can: 250 };
  const up = shows('containers-a-day', cans);
  assert.deepEqual(
    [up.containers, up.wholeContainers, up.volumeMl, up.energyKcal, up.leftOverMl],
    [6.33, 7, 1659, 1750, 159],
  );
  const half = shows('containers-a-day', { ...cans, whole: 'half' });
  assert.deepEqual([half.wholeContainers, half.energyKcal], [6.5, 1625]);
  assert.equal(shows('containers-a-day', { ...cans, whole: 'down' }).leftOverMl, -78);
  const bolus = shows('bolus', { volume: 1000, feeds: 6, energyKcalPerMl: 1 });
  assert.deepEqual([bolus.bolusMl, bolus.deliveredVolumeMl, bolus.energyKcal], [167, 1002, 1002]);
  const goal = shows('bolus', { goal: '1422 kcal', energyKcalPerMl: 1, feeds: 4, can: '237 mL' });
  assert.deepEqual([goal.volumeMl, goal.bolusMl, goal.containersPerFeed], [1422, 356, 1.5]);
  assert.deepEqual(refuses('bolus', { volume: 1000, every: '5 h' }), ['reckon/does-not-divide-day']);
  const over = shows('bolus', { volume: 1800, feeds: 4, ceiling: '400 mL' });
  assert.deepEqual([over.overCeiling, over.leastFeeds], ['yes', 5]);
});

test('[RK11] a whole number of drops gives another rate, and takes another time', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 50, max: 3000 }),
      fc.integer({ min: 1, max: 24 }),
      fc.constantFrom(10, 15, 20, 60),
      (volume, hours, dropFactor) => {
        const found = worked('drip-rate', { volume, hours, dropFactor });
        const drops = found.result.dropsPerMinute;
        assert.ok(drops?.kind === 'quantity' && drops.value.d === 1);
        if (drops.value.n === 0) return assert.ok(found.cautions.includes('less-than-a-drop-a-minute'));
        const minutes = over(times(of(volume), of(dropFactor)), of(drops.value.n));
        const { reallyHours, exactDropsPerMinute } = found.unrounded;
        assert.ok(reallyHours && exactDropsPerMinute);
        assert.equal(compare(times(reallyHours, of(60)), minutes), 0);
        // Fewer drops than exact take longer, more drops are sooner done.
        assert.equal(compare(of(drops.value.n), exactDropsPerMinute), compare(of(hours), reallyHours));
      },
    ),
    runs(1000),
  );
  assert.equal(shows('drip-rate', { volume: 1000, hours: 12, dropFactor: 10 }).reallyLasts, '11 h 54 min');
  // 60 drops to the mL: drops a minute are mL an hour (printed in a dosage practice set, example B15).
  assert.equal(shows('drip-rate', { rate: 37, dropFactor: 60 }).dropsPerMinute, 37);
});

test('[RK7] an advanced rate never passes its goal', () => {
  const at = (after: string) =>
    shows('advance-rate', { start: 20, step: 20, every: '6 h', goal: 75, after }).rateMlPerHour;
  assert.deepEqual(['0 h', '5.9 h', '6 h', '13 h', '18 h', '72 h'].map(at), [20, 20, 40, 60, 75, 75]);
  assert.deepEqual(refuses('advance-rate', { start: 80, step: 20, every: '6 h', goal: 75 }), [
    'reckon/goal-below-start',
  ]);
  const infant = (day: number) =>
    shows('infant-advance', { weight: 1, start: 20, step: 30, day, ceiling: 150 }).volumeMlPerKg;
  assert.deepEqual([1, 2, 5, 6, 20].map(infant), [20, 50, 140, 150, 150]);
});

test('[RK5] what counts against a fluid limit is said: whole liquid or its water', () => {
  const whole = worked('total-fluid', { limit: 2000, feed: 1500, flushes: '6 x 30 mL', iv: 100 });
  assert.equal(
    shows('total-fluid', { limit: 2000, feed: 1500, flushes: '6 x 30 mL', iv: 100 }).totalMl,
    1780,
  );
  assert.equal(whole.conventions.find((one) => one.convention === 'counts')?.used, 'whole-volume');
  const free = {
    limit: 2000,
    feed: 1500,
    waterFraction: '80 %',
    flushMl: '6 x 30 mL',
    iv: '100',
    counts: 'free-water',
  };
  assert.equal(shows('total-fluid', free).totalMl, 1480);
  assert.deepEqual(refuses('total-fluid', { feed: 1500, counts: 'free-water' }), ['reckon/missing']);
  assert.deepEqual(
    [
      shows('total-fluid', { limit: 1000, feed: 1500 }).overMl,
      shows('total-fluid', { limit: 1000, feed: 1500 }).leftMl,
    ],
    [500, 0],
  );
});

test('[RK6] flushes: size for a count, count for a size, and never less than none', () => {
  const goal = { goal: 2000, volume: 1500, water: '80 %' };
  assert.equal(shows('flushes', { ...goal, flushes: 8 }).flushMl, 100);
  assert.deepEqual(
    [
      shows('flushes', { ...goal, flushMl: 150 }).flushesNeeded,
      shows('flushes', { ...goal, every: '4 h' }).flushes,
    ],
    [6, 6],
  );
  const enough = shows('flushes', { goal: 1000, volume: 1500, water: '80 %', other: 50 });
  assert.deepEqual([enough.extraWaterMl, enough.overMl], [0, 250]);
});
