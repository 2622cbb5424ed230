/**
 * What cannot be done as asked, why, and what is the least that must be given up so that the rest can be planned?
 * A task without a slot is moved to the nearest one. Feed that cannot go on is helped by a start in protected time if
 * there is one that helps; where even that does not, what is needed in that one step of the grid is left out [PL6].
 */
import { furthestFed, reachOf } from './chain.ts';
import { mostOf } from './filling.ts';
import type { FeedDemand, Obstacle, OptimumProblem, TaskWindow } from './problem.ts';

/** The same problem, except for its obstacles. A task left out is null. */
export type Feasible = {
  readonly open: Uint8Array;
  readonly tasks: readonly (TaskWindow | null)[];
  readonly feed: FeedDemand;
  readonly obstacles: readonly Obstacle[];
};

export function feasible(problem: OptimumProblem): Feasible {
  const open = new Uint8Array(problem.slots).map((_, slot) => (problem.protectedSlots[slot] === 0 ? 1 : 0));
  const obstacles: Obstacle[] = [];
  const feed = fedThroughout(problem.feed ?? nothingNeeded(problem.slots), open, obstacles);
  const tasks = problem.tasks.map((task, index) => withSlot(problem, open, task, index, obstacles));
  return { open, tasks, feed, obstacles };
}

const nothingNeeded = (slots: number): FeedDemand => ({
  need: new Uint8Array(slots + 1),
  needAtLimit: new Uint8Array(slots),
  prime: new Uint8Array(slots),
  filling: { kind: 'packs', sizes: [] },
  up: null,
  ends: true,
});

export const firstSlotIn = (task: TaskWindow, slotLength: number): number =>
  Math.max(0, Math.ceil(task.earliest / slotLength));

export const lastSlotIn = (task: TaskWindow, slotLength: number, slots: number): number =>
  Math.min(slots - 1, Math.floor(task.latest / slotLength));

function withSlot(
  problem: OptimumProblem,
  open: Uint8Array,
  task: TaskWindow,
  index: number,
  obstacles: Obstacle[],
): TaskWindow | null {
  const first = firstSlotIn(task, problem.slotLength);
  const last = lastSlotIn(task, problem.slotLength, problem.slots);
  const found = open.indexOf(1, first);
  if (found !== -1 && found <= last) return task;
  const slot = nearestOpen(open, task.nominal / problem.slotLength);
  obstacles.push({ code: first > last ? 'empty-window' : 'protected-window', task: index, slot });
  if (slot === null) return null;
  const at = slot * problem.slotLength;
  return { ...task, earliest: Math.min(task.earliest, at), latest: Math.max(task.latest, at) };
}

/** Of two that are equally near, the earlier. */
function nearestOpen(open: Uint8Array, wanted: number): number | null {
  const later = open.indexOf(1, Math.max(0, Math.ceil(wanted)));
  const earlier = wanted < 0 ? -1 : open.lastIndexOf(1, Math.floor(wanted));
  if (later === -1 || earlier === -1) return later === -1 && earlier === -1 ? null : Math.max(later, earlier);
  return later - wanted < wanted - earlier ? later : earlier;
}

/** Opens slots where that helps, and leaves out what nothing helps, until feed goes on up to the end. */
function fedThroughout(asked: FeedDemand, open: Uint8Array, obstacles: Obstacle[]): FeedDemand {
  const slots = open.length;
  for (let feed = asked; ; ) {
    const { reach, upReach } = reachOf(feed, slots);
    const stuck = furthestFed(open, reach, upReach);
    if (stuck === slots) return feed;
    const slot = helpfulStart(open, reach, stuck);
    if (slot !== null) {
      open[slot] = 1;
      obstacles.push({ code: 'protected-start', slot });
    } else {
      leaveOut(feed, stuck, obstacles);
      feed = withoutStep(feed, stuck);
    }
  }
}

/** The protected slot from which feed gets furthest, if it gets further than where it is stuck; the earliest of such. */
function helpfulStart(open: Uint8Array, reach: Int32Array, stuck: number): number | null {
  let best: number | null = null;
  for (let slot = 0; slot <= stuck; slot++)
    if (open[slot] === 0 && reach[slot]! > (best === null ? stuck : reach[best]!)) best = slot;
  return best;
}

/** No container started at or before `slot` lasts to the next: so neither does one that is started at `slot` itself. */
function leaveOut(feed: FeedDemand, slot: number, obstacles: Obstacle[]): void {
  const most = mostOf(feed.filling);
  const lost = feed.need[slot + 1]! - feed.need[slot]!;
  const code =
    most === 0 || feed.prime[slot]! > most
      ? 'step-over-capacity'
      : feed.prime[slot]! + lost > most
        ? 'grid-over-capacity'
        : 'limit-too-short';
  const before = obstacles.at(-1);
  if (before !== undefined && 'until' in before && before.code === code && before.until === slot) {
    obstacles[obstacles.length - 1] = { ...before, until: slot + 1, lost: before.lost + lost };
  } else obstacles.push({ code, slot, until: slot + 1, lost });
}

/** The same demand as if nothing were needed from `slot` to the next. */
function withoutStep(feed: FeedDemand, slot: number): FeedDemand {
  const from = feed.need[slot]!;
  const lost = feed.need[slot + 1]! - from;
  const less = (needed: number): number => (needed <= from ? needed : Math.max(from, needed - lost));
  return {
    ...feed,
    need: Float64Array.from(feed.need, less),
    needAtLimit: Float64Array.from(feed.needAtLimit, less),
    up: feed.up === null ? null : { ...feed.up, needAtLimit: less(feed.up.needAtLimit) },
  };
}
