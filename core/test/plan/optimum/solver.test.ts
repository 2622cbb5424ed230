import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { optimum } from '../../../src/plan/optimum/optimum.ts';
import { runs } from '../../runs.ts';
import { solve } from './oracle.ts';
import { anyStory, problemOf, type Story } from './story.ts';

// HiGHS, an open solver for integer programmes, in successive stages with zero gap: see oracle.ts.
test('[PL1] costs what an integer programme costs, stage by stage, and is impossible only where that is', () => {
  const counts = { feasible: 0, infeasible: 0 };
  fc.assert(
    fc.property(anyStory({ slots: 40, tasks: 10 }), (story) => {
      const found = optimum(problemOf(story));
      const solved = solve(story);
      assert.equal(found.obstacles.length === 0, solved !== null);
      counts[solved === null ? 'infeasible' : 'feasible']++;
      if (solved !== null) assert.deepEqual(found.cost, solved);
    }),
    runs(400),
  );
  assert.ok(counts.feasible > 10 && counts.infeasible > 2, JSON.stringify(counts));
});

const DAY = 1440;
const night = { from: 1020, until: 1230 };

/** 60 mL/h for a day, a night without visits, a set that is new for some time after noon, 200 mL still up. */
function wholeDay(slots: number, tasks: number): Story {
  const slotLength = DAY / slots;
  const isNight = (time: number) => time > night.from && time < night.until;
  const windows = Array.from({ length: tasks }, (_, i) => {
    const nominal = (i * 6_151) % DAY;
    return { earliest: nominal - 30 - ((i * 37) % 60), nominal, latest: nominal + 30 + ((i * 53) % 60) };
  });
  return {
    slots,
    slotLength,
    closed: Array.from({ length: slots }, (_, slot) => isNight(slot * slotLength)),
    tasks: windows.filter(({ earliest, latest }) => !isNight(earliest) || !isNight(latest)),
    feed: {
      steps: Array<number>(2 * slots).fill(slotLength),
      lasts: Array<number>(slots).fill(slots / 3),
      prime: Array.from({ length: slots }, (_, slot) => (slot >= slots / 2 && slot < slots * 0.6 ? 15 : 0)),
      filling: { kind: 'poured', capacity: 450, step: 10 },
      up: { remaining: 200, lasts: slots / 4 },
      ends: false,
    },
  };
}

const soak = process.env.FEEDWRIGHT_SOAK === '1';

for (const [slots, tasks] of [
  [96, 20],
  [288, 60],
] as const)
  test(`[PL1] costs the same for a whole day of ${slots} slots and ${tasks} tasks`, {
    skip: soak ? false : 'a minute of solver time: in the soak',
  }, () => {
    const story = wholeDay(slots, tasks);
    const found = optimum(problemOf(story));
    assert.deepEqual(found.obstacles, []);
    assert.deepEqual(found.cost, solve(story));
  });
