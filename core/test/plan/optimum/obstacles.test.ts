import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { optimum } from '../../../src/plan/optimum/optimum.ts';
import type { Obstacle } from '../../../src/plan/optimum/problem.ts';
import { runs } from '../../runs.ts';
import { bruteForce } from './brute-force.ts';
import { solve } from './oracle.ts';
import { anyStory, inWindow, problemOf, type Story } from './story.ts';

/** The story without what an obstacle says was given up. */
function without(story: Story, obstacle: Obstacle): Story {
  const { feed } = story;
  switch (obstacle.code) {
    case 'empty-window':
    case 'protected-window': {
      const at = (obstacle.slot ?? 0) * story.slotLength;
      const { earliest, nominal, latest } = story.tasks[obstacle.task]!;
      const moved = { earliest: Math.min(earliest, at), nominal, latest: Math.max(latest, at) };
      return { ...story, tasks: story.tasks.with(obstacle.task, moved) };
    }
    case 'protected-start':
      return { ...story, closed: story.closed.with(obstacle.slot, false) };
    default:
      return {
        ...story,
        feed: { ...feed, steps: feed.steps.with(obstacle.slot, 0).fill(0, obstacle.slot, obstacle.until) },
      };
  }
}

/** Whether what an obstacle says of the story is so. `before` is the story without the obstacles named before it. */
function isSo(before: Story, obstacle: Obstacle): boolean {
  const { closed, feed, tasks } = before;
  const { filling } = feed;
  const holds =
    filling.kind === 'packs'
      ? Math.max(...filling.sizes)
      : filling.capacity - (filling.capacity % filling.step);
  switch (obstacle.code) {
    case 'empty-window':
      return !closed.some((_, slot) => inWindow(before, tasks[obstacle.task]!, slot));
    case 'protected-window': {
      const inside = closed.filter((_, slot) => inWindow(before, tasks[obstacle.task]!, slot));
      return inside.length > 0 && inside.every(Boolean);
    }
    case 'protected-start':
      return closed[obstacle.slot] === true;
    case 'step-over-capacity':
      return holds === 0 || feed.prime[obstacle.slot]! > holds;
    case 'grid-over-capacity':
      return (
        feed.prime[obstacle.slot]! <= holds && feed.prime[obstacle.slot]! + feed.steps[obstacle.slot]! > holds
      );
    case 'limit-too-short':
      return feed.lasts[obstacle.slot]! < 1;
  }
}

const anyStep = ['step-over-capacity', 'grid-over-capacity', 'limit-too-short'] as const;

type Trouble = { readonly kind: (typeof anyStep)[number] | 'protected'; readonly at: number };

function troubledBy(story: Story, { kind, at }: Trouble): Story {
  const { feed, closed } = story;
  const slot = at % story.slots;
  const near = (other: number, by: number): boolean => Math.abs(other - slot) < by;
  switch (kind) {
    case 'protected':
      return { ...story, closed: closed.map((one, other) => one || near(other, 6)) };
    case 'limit-too-short':
      return { ...story, feed: { ...feed, lasts: feed.lasts.with(slot, 0) } };
    case 'grid-over-capacity':
      return { ...story, feed: { ...feed, steps: feed.steps.with(slot, 70) } };
    case 'step-over-capacity':
      return {
        ...story,
        feed: { ...feed, prime: feed.prime.map((one, other) => (near(other, 3) ? 99 : one)) },
      };
  }
}

/** Stories in which much goes wrong: hang limits of no slot at all, steps or primes larger than any container. */
const troubled = (slots: number, tasks: number): fc.Arbitrary<Story> =>
  fc
    .record({
      story: anyStory({ slots, tasks }),
      troubles: fc.array(
        fc.record({ kind: fc.constantFrom(...anyStep, 'protected' as const), at: fc.nat() }),
        { maxLength: 3 },
      ),
    })
    .map(({ story, troubles }) => troubles.reduce(troubledBy, story));

test('[PL6] every obstacle named is there, and the plan is the best without them', () => {
  const seen = new Map<string, number>();
  fc.assert(
    fc.property(troubled(10, 4), (story) => {
      const found = optimum(problemOf(story));
      let amended = story;
      for (const obstacle of found.obstacles) {
        seen.set(obstacle.code, (seen.get(obstacle.code) ?? 0) + 1);
        assert.ok(isSo(amended, obstacle), obstacle.code);
        if ('lost' in obstacle) {
          const needed = amended.feed.steps.slice(obstacle.slot, obstacle.until);
          assert.equal(
            obstacle.lost,
            needed.reduce((sum, step) => sum + step, 0),
          );
        }
        amended = without(amended, obstacle);
      }
      const leftOut = found.obstacles.flatMap((one) =>
        'task' in one && one.slot === null ? [one.task] : [],
      );
      amended = { ...amended, tasks: amended.tasks.filter((_, index) => !leftOut.includes(index)) };
      const best = bruteForce(amended);
      assert.ok(best !== null);
      const { containers, visits, deviation, waste } = found.cost;
      assert.deepEqual([containers, visits, deviation, waste], best.cost);
      assert.deepEqual(
        found.visits.map(({ slot }) => slot),
        best.visits,
      );
    }),
    runs(5000),
  );
  for (const code of ['empty-window', 'protected-window', 'protected-start', ...anyStep])
    assert.ok((seen.get(code) ?? 0) > 0, `${code} never came up`);
});

test('[PL6] nothing is given up that did not have to be', () => {
  let tried = 0;
  fc.assert(
    fc.property(troubled(10, 3), (story) => {
      const { obstacles } = optimum(problemOf(story));
      for (const kept of obstacles) {
        const others = obstacles.filter((one) => one !== kept);
        if (kept.code === 'protected-start' && others.some((one) => 'lost' in one)) continue;
        if (others.some((one) => 'task' in one && one.slot === null)) continue;
        tried++;
        assert.equal(bruteForce(others.reduce(without, story)), null);
      }
    }),
    runs(2000),
  );
  assert.ok(tried > 50, `only ${tried} were tried`);
});

// HiGHS, an open solver for integer programmes, in successive stages with zero gap: see oracle.ts.
test('[PL6] an integer programme finds no plan where one is called impossible, and the same one without the obstacles', () => {
  let impossible = 0;
  fc.assert(
    fc.property(troubled(30, 6), (story) => {
      const found = optimum(problemOf(story));
      if (found.obstacles.length === 0) return;
      if (found.obstacles.some((one) => 'task' in one && one.slot === null)) return;
      impossible++;
      assert.equal(solve(story), null);
      assert.deepEqual(solve(found.obstacles.reduce(without, story)), found.cost);
    }),
    runs(200),
  );
  assert.ok(impossible > 5, `only ${impossible} were impossible`);
});

const noFeed = (tasks: Story['tasks'], closed: readonly boolean[]) =>
  optimum({ slots: closed.length, slotLength: 5, protectedSlots: closed.map(Number), tasks, feed: null });

test('[PL6] a task whose window has no slot goes to the nearest one, the earlier of two, and to none if there is none', () => {
  const window = [{ earliest: 11, nominal: 12, latest: 14 }];
  const open = noFeed(window, [false, false, false, false, false]);
  assert.deepEqual(open.obstacles, [{ code: 'empty-window', task: 0, slot: 2 }]);
  assert.deepEqual([open.visits, open.cost.deviation], [[{ slot: 2, tasks: [0] }], 2]);
  const halfWay = noFeed([{ earliest: 10, nominal: 10, latest: 10 }], [false, false, true, false, false]);
  assert.deepEqual(halfWay.obstacles, [{ code: 'protected-window', task: 0, slot: 1 }]);
  const never = noFeed(window, [true, true, true, true, true]);
  assert.deepEqual(never.obstacles, [{ code: 'empty-window', task: 0, slot: null }]);
  assert.deepEqual(never.visits, []);
});

test('[PL6] a task that is overdue is done at once', () => {
  const { visits, obstacles } = noFeed([{ earliest: -60, nominal: -40, latest: -20 }], [false, false]);
  assert.deepEqual(
    [visits, obstacles],
    [[{ slot: 0, tasks: [0] }], [{ code: 'empty-window', task: 0, slot: 0 }]],
  );
});

/** 60 mL/h for a day on a 5-minute grid, in mL, 8 h a container. */
const day = (capacity: number, closedFrom: number, up: Story['feed']['up']): Story => ({
  slots: 288,
  slotLength: 5,
  closed: Array<boolean>(288).fill(false).fill(true, closedFrom),
  tasks: [],
  feed: {
    steps: Array<number>(288).fill(5),
    lasts: Array<number>(288).fill(96),
    prime: Array<number>(288).fill(0),
    filling: { kind: 'poured', capacity, step: 10 },
    up,
    ends: true,
  },
});

test('[PL6] in a night without visits a container is started as late as feed lasts, but no later than helps', () => {
  const night = optimum(problemOf(day(1000, 60, null)));
  assert.deepEqual(night.obstacles, [
    { code: 'protected-start', slot: 59 + 96 },
    { code: 'protected-start', slot: 288 - 96 },
  ]);
  const rich = optimum(problemOf(day(1000, 12, { remaining: 1200, lasts: 288 })));
  assert.deepEqual(rich.obstacles, [{ code: 'protected-start', slot: 192 }]);
});

test('[PL6] a limit inside the step that is left out is then at its beginning', () => {
  const problem = problemOf(day(60, 288, null));
  const need = Array.from({ length: 289 }, (_, slot) => (slot === 0 ? 0 : slot === 1 ? 5 : 75));
  const feed = { ...problem.feed!, need, needAtLimit: Array<number>(288).fill(30) };
  const { obstacles, containers } = optimum({ ...problem, feed });
  assert.deepEqual(obstacles, [{ code: 'grid-over-capacity', slot: 1, until: 2, lost: 70 }]);
  assert.deepEqual(containers, [{ start: 0, end: 288, fill: 10, prime: 0, leftOver: 5 }]);
});

test('[PL6] a pour step larger than the container is named once for the whole day, and no feed is planned', () => {
  const { obstacles, containers, visits } = optimum(problemOf(day(9, 288, null)));
  assert.deepEqual(obstacles, [{ code: 'step-over-capacity', slot: 0, until: 288, lost: 1440 }]);
  assert.deepEqual([containers, visits], [[], []]);
});
