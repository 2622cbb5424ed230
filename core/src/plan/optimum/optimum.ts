/**
 * When should somebody come, and which container should be put up when? One defined optimum, found exactly:
 *
 *   obstacles  what cannot be done as asked is named and set aside
 *   chain      the fewest containers, and where they can be started
 *   gaps       what two visits that follow each other cost
 *   rows       what the rest of the plan costs from each visit on
 *   path       of all plans of the least cost the earliest
 */
import { type Chain, chainOf } from './chain.ts';
import { lastFill, leastFill } from './filling.ts';
import { gapsOf } from './gaps.ts';
import { feasible, firstSlotIn, lastSlotIn } from './obstacles.ts';
import { earliestPath } from './path.ts';
import { deadlines, placesOf, placeTasks } from './places.ts';
import type { FeedDemand, Optimum, OptimumProblem, PlannedVisit, Run, TaskWindow } from './problem.ts';
import { rowsOf } from './rows.ts';
import { type Succession, successionOf } from './succession.ts';

/**
 * The one plan with the fewest containers started; then the fewest visits; then the least total deviation from nominal;
 * then the least waste; then the earliest visits [PL1]. Planning again with the same end after doing the plan so far
 * gives the rest of it [PL7], and more room never costs more [PL8]. Throws (a bug) where the deviations that the windows allow, times the visits, pass 2^53.
 */
export function optimum(problem: OptimumProblem): Optimum {
  const { open, tasks, feed, obstacles } = feasible(problem);
  const { slotLength } = problem;
  const doable = tasks.filter((task) => task !== null);
  const chain = chainOf(feed, open);
  const places = placesOf(usefulSlots(doable, open, chain, slotLength));
  const succession = successionOf(places, feed, chain);
  const placed = placeTasks(doable, places, slotLength);
  const deadline = deadlines(placed, places.slot.length);
  const gaps = gapsOf(placed, places, slotLength, lastNext(succession, deadline));
  const rows = rowsOf(succession, gaps);
  const path = earliestPath(succession, gaps, rows);
  const visits = path.visits.map((place) => places.slot[place]!);
  const starts = path.starts.map((place) => places.slot[place]!);
  return {
    containers: runsOf(feed, starts, problem.slots),
    visits: visitsOf(visits, tasks, slotLength),
    cost: {
      containers: path.starts.length,
      visits: visits.length,
      deviation: rows.startCost[0]! - visits.length * gaps.perVisit,
      waste: rows.startWaste[0]!,
    },
    obstacles,
  };
}

/** A visit is only of use where a task can be done or a container started; others would be one visit too many. */
function usefulSlots(
  tasks: readonly TaskWindow[],
  open: Uint8Array,
  chain: Chain,
  slotLength: number,
): Uint8Array {
  const slots = open.length;
  const change = new Int32Array(slots + 1);
  for (const task of tasks) {
    change[firstSlotIn(task, slotLength)]!++;
    change[lastSlotIn(task, slotLength, slots) + 1]!--;
  }
  let windows = 0;
  return open.map((isOpen, slot) => {
    windows += change[slot]!;
    return isOpen === 1 && (windows > 0 || chain.starts[slot] === 1) ? 1 : 0;
  });
}

/**
 * How far the gap after each place need be looked at: to the next task's deadline, but no further than a container can
 * be started there, unless the last one may be up.
 */
function lastNext({ firstOfTail, furthestStart }: Succession, deadline: Int32Array): Int32Array {
  const count = deadline.length;
  return deadline.map((by, place) =>
    place >= firstOfTail && by < count ? by : Math.max(place, Math.min(by, furthestStart[place]!)),
  );
}

function runsOf(feed: FeedDemand, starts: readonly number[], slots: number): readonly Run[] {
  return starts.map((start, index) => {
    const next = starts[index + 1];
    const end = next ?? slots;
    const needed = feed.need[end]! - feed.need[start]!;
    const prime = feed.prime[start]!;
    const fill = next === undefined ? lastFill(feed, start, end) : leastFill(feed.filling, prime + needed);
    const leftOver = next === undefined && !feed.ends ? 0 : fill - prime - needed;
    return { start, end, fill, prime, leftOver };
  });
}

/** Each task goes to the nearest visit in its window; one that is half-way, to the earlier [PL2]. */
function visitsOf(
  slots: readonly number[],
  tasks: readonly (TaskWindow | null)[],
  slotLength: number,
): readonly PlannedVisit[] {
  const visits = slots.map((slot) => ({ slot, tasks: [] as number[] }));
  const order = [...tasks.keys()].filter((task) => tasks[task] !== null);
  order.sort((a, b) => tasks[a]!.nominal - tasks[b]!.nominal);
  let later = 0;
  for (const index of order) {
    const { earliest, nominal, latest } = tasks[index]!;
    while (later < slots.length && slots[later]! * slotLength < nominal) later++;
    const [before, after] = [visits[later - 1], visits[later]];
    const early = before === undefined ? Number.NEGATIVE_INFINITY : before.slot * slotLength;
    const late = after === undefined ? Number.POSITIVE_INFINITY : after.slot * slotLength;
    const goesBefore = early >= earliest && (late > latest || nominal - early <= late - nominal);
    (goesBefore ? before : after)!.tasks.push(index);
  }
  return visits;
}
