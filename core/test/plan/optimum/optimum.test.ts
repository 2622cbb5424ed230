import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { optimum } from '../../../src/plan/optimum/optimum.ts';
import type { Optimum } from '../../../src/plan/optimum/problem.ts';
import { runs } from '../../runs.ts';
import { bruteForce, compareLists } from './brute-force.ts';
import { anyStory, deviationOf, fillOf, inWindow, problemOf, type Story, upLasts, wasteOf } from './story.ts';

const costOf = ({ cost }: Optimum): number[] => [cost.containers, cost.visits, cost.deviation, cost.waste];
const slotsOf = ({ visits }: Optimum): number[] => visits.map(({ slot }) => slot);
const startsOf = ({ containers }: Optimum): number[] => containers.map(({ start }) => start);

test('[PL1] is what trying every plan finds, down to the last tie', () => {
  let compared = 0;
  fc.assert(
    fc.property(anyStory({ slots: 10, tasks: 5 }), (story) => {
      const found = optimum(problemOf(story));
      const best = bruteForce(story);
      assert.equal(found.obstacles.length === 0, best !== null);
      if (best === null) return;
      compared++;
      const { cost, visits, starts } = best;
      assert.deepEqual([costOf(found), slotsOf(found), startsOf(found)], [cost, visits, starts]);
    }),
    runs(5000),
  );
  assert.ok(compared > 100, `only ${compared} were feasible`);
});

/** Large stories that can be planned as asked. */
const planned = (slots: number, tasks: number) =>
  anyStory({ slots, tasks })
    .map((story) => ({ story, found: optimum(problemOf(story)) }))
    .filter(({ found }) => found.obstacles.length === 0);

test('[PL2] every task is at one visit, the nearest in its window, and no visit is in protected time', () => {
  fc.assert(
    fc.property(planned(120, 30), ({ story, found }) => {
      const slots = slotsOf(found);
      assert.ok(slots.every((slot) => slot >= 0 && slot < story.slots && !story.closed[slot]));
      assert.deepEqual(
        found.visits.flatMap((visit) => visit.tasks).toSorted((a, b) => a - b),
        story.tasks.map((_, index) => index),
      );
      for (const visit of found.visits)
        for (const index of visit.tasks) {
          const task = story.tasks[index]!;
          const nearest = slots
            .filter((slot) => inWindow(story, task, slot))
            .toSorted((a, b) => deviationOf(story, task, a) - deviationOf(story, task, b) || a - b)[0];
          assert.equal(visit.slot, nearest);
        }
    }),
    runs(1000),
  );
});

test('[PL3] [PL4] feed never ends before the next container, and none is past its limit or its capacity', () => {
  let containers = 0;
  fc.assert(
    fc.property(planned(120, 10), ({ story, found }) => {
      const starts = startsOf(found);
      assert.ok(starts.every((start) => slotsOf(found).includes(start)));
      assert.ok(upLasts(story.feed, starts[0] ?? story.slots));
      for (const [i, run] of found.containers.entries()) {
        containers++;
        assert.equal(run.end, starts[i + 1] ?? story.slots);
        const least = fillOf(story.feed, run.start, run.end);
        assert.ok(least !== null && run.fill >= least);
        if (run.end < story.slots || story.feed.ends) assert.equal(run.fill, least);
        assert.equal(run.prime + run.leftOver, wasteOf(story, run.start, run.end));
      }
    }),
    runs(1000),
  );
  assert.ok(containers > 100, `only ${containers} containers`);
});

const hours = (count: number): number => count * 12;
/** 60 mL/h on a 5-minute grid, in mL; 24 h of it are planned. */
const steady = (story: Partial<Story['feed']>, tasks: Story['tasks'] = []): Story => ({
  slots: hours(24),
  slotLength: 5,
  closed: Array<boolean>(hours(24)).fill(false),
  tasks,
  feed: {
    steps: Array<number>(hours(48)).fill(5),
    lasts: Array<number>(hours(24)).fill(hours(8)),
    prime: Array<number>(hours(24)).fill(0),
    filling: { kind: 'poured', capacity: 1000, step: 10 },
    up: null,
    ends: false,
    ...story,
  },
});

test('[PL3] with nothing up the first container is started no later than feed is needed', () => {
  const steps = Array<number>(hours(48)).fill(5).fill(0, 0, 30);
  const with150 = optimum(problemOf(steady({ steps }, [{ earliest: 150, nominal: 170, latest: 170 }])));
  assert.deepEqual([startsOf(with150)[0], with150.cost.visits], [30, 3]);
  const with155 = optimum(problemOf(steady({ steps }, [{ earliest: 155, nominal: 170, latest: 170 }])));
  assert.deepEqual([startsOf(with155)[0]! <= 30, with155.cost.visits], [true, 4]);
});

test('[PL1] of visits that could as well start a container the earlier does', () => {
  const exactly = (time: number) => ({ earliest: time * 60, nominal: time * 60, latest: time * 60 });
  const lasts = Array<number>(hours(24)).fill(hours(10));
  const found = optimum(problemOf(steady({ lasts }, [exactly(6), exactly(7)])));
  assert.deepEqual(slotsOf(found), [0, hours(6), hours(7), hours(14)]);
  assert.deepEqual(startsOf(found), [0, hours(6), hours(14)]);
});

test('[PL2] a task half-way between two visits goes to the earlier', () => {
  const exactly = (time: number) => ({ earliest: time, nominal: time, latest: time });
  const tasks = [exactly(30), { earliest: 0, nominal: 35, latest: 60 }, exactly(40)];
  assert.deepEqual(optimum({ ...problemOf(steady({})), tasks, feed: null }).visits, [
    { slot: 6, tasks: [0, 1] },
    { slot: 8, tasks: [2] },
  ]);
});

test('[PL4] eight hours at 60 mL/h are 480 mL, and the last container is filled as if the order went on', () => {
  const { containers } = optimum(problemOf(steady({})));
  assert.deepEqual(
    containers.map(({ start, end, fill, leftOver }) => [start, end, fill, leftOver]),
    [
      [0, hours(8), 480, 0],
      [hours(8), hours(16), 480, 0],
      [hours(16), hours(24), 480, 0],
    ],
  );
  const shorter = { ...steady({}), slots: hours(20), closed: Array<boolean>(hours(20)).fill(false) };
  const goesOn = optimum(problemOf(shorter)).containers.at(-1)!;
  assert.deepEqual([goesOn.end, goesOn.fill, goesOn.leftOver], [hours(20), 480, 0]);
  const over = {
    ...shorter,
    feed: { ...shorter.feed, ends: true, steps: shorter.feed.steps.slice(0, hours(20)) },
  };
  assert.equal(
    optimum(problemOf(over)).containers.reduce((sum, { fill }) => sum + fill, 0),
    20 * 60,
  );
});

test('[PL4] a limit between two slots is kept, and costs no whole slot where nothing is needed by then', () => {
  const problem = problemOf(steady({}));
  const feed = problem.feed!;
  const limit = (minutesEarly: number) =>
    Array.from({ length: problem.slots }, (_, slot) => (slot + hours(8)) * 5 - minutesEarly);
  const kept = optimum({ ...problem, feed: { ...feed, needAtLimit: limit(0) } });
  const early = optimum({ ...problem, feed: { ...feed, needAtLimit: limit(1) } });
  assert.deepEqual([kept.cost.containers, early.cost.containers], [3, 4]);
  assert.ok(early.containers.every(({ start, end }) => end - start < hours(8)));
});

test('[PL4] an idle stretch of a cyclic programme forces no container, whatever the limit', () => {
  const day = [...Array<number>(hours(4)).fill(5), ...Array<number>(hours(20)).fill(0)];
  const found = optimum(
    problemOf(steady({ steps: [...day, ...day], lasts: Array(hours(24)).fill(hours(4)) })),
  );
  assert.deepEqual([startsOf(found), found.containers[0]!.fill], [[0], 240]);
});

test('[PL5] the least fill holds prime and need in whole pour steps, or in the smallest pack', () => {
  const prime = Array<number>(hours(24)).fill(15);
  const poured = optimum(problemOf(steady({ prime }))).containers[0]!;
  assert.deepEqual([poured.fill, poured.prime, poured.leftOver], [500, 15, 5]);
  const sizes = [1500, 500, 1000];
  const spiked = optimum(problemOf(steady({ prime, filling: { kind: 'packs', sizes } }))).containers;
  assert.ok(spiked.every(({ fill }) => fill === 500));
  const lasts = Array<number>(hours(24)).fill(hours(24));
  const day = optimum(problemOf(steady({ prime, lasts, filling: { kind: 'packs', sizes } }))).containers;
  assert.deepEqual(
    day.map(({ fill }) => fill),
    [1500],
  );
});

test('[PL5] pouring for the order that goes on stops at the step below the limit, but never below the need', () => {
  const prime = Array<number>(hours(24)).fill(7);
  const last = (slots: number) =>
    optimum(
      problemOf({ ...steady({ prime }), slots, closed: Array<boolean>(slots).fill(false) }),
    ).containers.at(-1)!;
  assert.equal(last(hours(4)).fill, 480);
  assert.equal(last(hours(8)).fill, 490);
  const spiked = problemOf({
    ...steady({ filling: { kind: 'packs', sizes: [300, 500, 1000] } }),
    slots: hours(4),
    closed: Array<boolean>(hours(4)).fill(false),
  });
  assert.equal(optimum(spiked).containers[0]!.fill, 500);
});

test('[PL7] planning again after doing the plan so far gives the rest of it', () => {
  let replanned = 0;
  fc.assert(
    fc.property(planned(60, 12), fc.double({ min: 0, max: 1, noNaN: true }), ({ story, found }, part) => {
      const done = Math.floor(part * found.visits.length);
      const from = done === 0 ? 0 : found.visits[done - 1]!.slot + 1;
      const until = found.visits[done]?.slot ?? story.slots - 1;
      if (from > until) return;
      const now = from + Math.floor(((part * 7919) % 1) * (until - from + 1));
      const again = optimum(problemOf(restOf(story, found, done, now)));
      replanned++;
      const rest = found.containers.filter(({ start }) => start >= now);
      assert.deepEqual(again.obstacles, []);
      assert.deepEqual(
        slotsOf(again).map((slot) => slot + now),
        slotsOf(found).slice(done),
      );
      assert.deepEqual(
        again.containers.map((run) => ({ ...run, start: run.start + now, end: run.end + now })),
        rest,
      );
    }),
    runs(3000),
  );
  assert.ok(replanned > 100, `only ${replanned} were planned again`);
});

/** What is still to be done at `now`, after the first visits of a plan. */
function restOf(story: Story, found: Optimum, done: number, now: number): Story {
  const { feed } = story;
  const finished = new Set(found.visits.slice(0, done).flatMap(({ tasks }) => tasks));
  const up = found.containers.findLast(({ start }) => start < now);
  const since = up?.start ?? 0;
  const delivered = feed.steps.slice(since, now).reduce((sum, step) => sum + step, 0);
  const later = story.slotLength * now;
  return {
    ...story,
    slots: story.slots - now,
    closed: story.closed.slice(now),
    tasks: story.tasks
      .filter((_, index) => !finished.has(index))
      .map((task) => ({
        earliest: task.earliest - later,
        nominal: task.nominal - later,
        latest: task.latest - later,
      })),
    feed: {
      ...feed,
      steps: feed.steps.slice(now),
      lasts: feed.lasts.slice(now),
      prime: feed.prime.slice(now),
      up:
        up !== undefined
          ? { remaining: up.fill - up.prime - delivered, lasts: since + feed.lasts[since]! - now }
          : feed.up && { remaining: feed.up.remaining - delivered, lasts: feed.up.lasts - now },
    },
  };
}

/** Ways of giving more room, each at a random place. */
const roomier: readonly ((story: Story, at: number) => Story)[] = [
  (story, at) => ({
    ...story,
    tasks: story.tasks.map((task, i) =>
      i === at % story.tasks.length
        ? { ...task, earliest: task.earliest - 7, latest: task.latest + 9 }
        : task,
    ),
  }),
  (story, at) => ({ ...story, closed: story.closed.with(at % story.slots, false) }),
  (story, at) => ({
    ...story,
    feed: {
      ...story.feed,
      lasts: story.feed.lasts.with(at % story.slots, story.feed.lasts[at % story.slots]! + 3),
    },
  }),
  (story) => {
    const { filling } = story.feed;
    const larger =
      filling.kind === 'packs'
        ? { ...filling, sizes: [...filling.sizes, 60] }
        : { ...filling, capacity: filling.capacity + filling.step };
    return { ...story, feed: { ...story.feed, filling: larger } };
  },
];

test('[PL8] more room never costs more, and a further task never less', () => {
  fc.assert(
    fc.property(
      planned(60, 12),
      fc.nat(),
      fc.nat({ max: roomier.length - 1 }),
      ({ story, found }, at, kind) => {
        const more = optimum(problemOf(roomier[kind]!(story, at)));
        assert.ok(compareLists(costOf(more), costOf(found)) <= 0);
        const fewer = optimum(problemOf({ ...story, tasks: story.tasks.slice(1) }));
        assert.ok(compareLists(costOf(fewer), costOf(found)) <= 0);
      },
    ),
    runs(2000),
  );
});
