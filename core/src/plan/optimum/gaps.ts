/**
 * What do two visits that follow each other cost, whatever came before and comes after? A task whose nominal time lies
 * between them goes to the nearer one that is in its window:
 *
 *   visit i ●───────n────────────● visit j       n − i or j − n
 *
 * So the tasks' part of a plan is a sum over its gaps. "Before the first visit" is place 0, at minus infinity.
 */
import type { TaskWindow } from './problem.ts';

/** Places are the slots at which a visit can be of use, in order, after place 0. */
export type Places = {
  readonly slot: Int32Array;
  /** The first place at or after each slot; the number of places where there is none. */
  readonly from: Int32Array;
};

export type Gaps = {
  /** What one visit counts, more than all deviation together, so that fewer visits always cost less. */
  readonly perVisit: number;
  /** The last place at which the next visit may be. */
  readonly last: Int32Array;
  /** `cost[base[i] + j]` is what a visit at j costs when the one before it is at i < j ≤ last[i]. */
  readonly base: Int32Array;
  readonly cost: Float64Array;
  /** What it costs to have no visit after each place; infinite if a task would be left undone. */
  readonly stop: Float64Array;
};

/** The tasks in the order of their nominal times, with the places of their windows. */
export type PlacedTasks = {
  readonly nominal: Float64Array;
  readonly firstPlace: Int32Array;
  readonly lastPlace: Int32Array;
};

export function placesOf(useful: Uint8Array): Places {
  const slots = useful.length;
  const count = 1 + useful.reduce((sum, one) => sum + one, 0);
  const slot = new Int32Array(count).fill(-1);
  const from = new Int32Array(slots + 1).fill(count);
  for (let at = slots - 1, place = count; at >= 0; at--) {
    if (useful[at] === 1) slot[--place] = at;
    from[at] = place;
  }
  return { slot, from };
}

/** The first place that is not before a time. */
export function placeAtOrAfter(places: Places, time: number, slotLength: number): number {
  const slot = Math.ceil(time / slotLength);
  return places.from[Math.min(Math.max(slot, 0), places.from.length - 1)]!;
}

export function placeTasks(tasks: readonly TaskWindow[], places: Places, slotLength: number): PlacedTasks {
  const sorted = tasks.toSorted((a, b) => a.nominal - b.nominal);
  return {
    nominal: Float64Array.from(sorted, (task) => task.nominal),
    firstPlace: Int32Array.from(sorted, (task) => placeAtOrAfter(places, task.earliest, slotLength)),
    lastPlace: Int32Array.from(sorted, (task) => placeAtOrAfter(places, task.latest + 1, slotLength) - 1),
  };
}

/** The last place at which the next visit may be so that no task is missed; the number of places if none can be. */
export function deadlines(tasks: PlacedTasks, count: number): Int32Array {
  const deadline = new Int32Array(count).fill(count);
  tasks.firstPlace.forEach((first, task) => {
    deadline[first - 1] = Math.min(deadline[first - 1]!, tasks.lastPlace[task]!);
  });
  for (let place = count - 2; place >= 0; place--)
    deadline[place] = Math.min(deadline[place]!, deadline[place + 1]!);
  return deadline;
}

/** One visit more than makes up for all deviation that the windows allow. */
function visitWeight(tasks: PlacedTasks, time: Float64Array): number {
  const most = tasks.nominal.reduce((sum, nominal, task) => {
    const early = Math.abs(nominal - time[tasks.firstPlace[task]!]!);
    const late = Math.abs(time[tasks.lastPlace[task]!]! - nominal);
    return sum + Math.max(early, late);
  }, 0);
  return most + 1;
}

export function gapsOf(tasks: PlacedTasks, places: Places, slotLength: number, last: Int32Array): Gaps {
  const count = places.slot.length;
  const time = Float64Array.from(places.slot, (slot) => slot * slotLength);
  time[0] = Number.NEGATIVE_INFINITY;
  const perVisit = visitWeight(tasks, time);
  const base = new Int32Array(count);
  let size = 0;
  for (let place = 0; place < count; place++) {
    base[place] = size - place - 1;
    size += last[place]! - place;
  }
  const cost = new Float64Array(size);
  const leaving = { count: new Int32Array(count), sum: new Float64Array(count) };
  for (let place = 0, after = 0; place < count; place++) {
    while (after < tasks.nominal.length && tasks.nominal[after]! <= time[place]!) after++;
    sweep(place, after);
  }
  return { perVisit, last, base, cost, stop: stops(tasks, time) };

  /**
   * The next visit moves away from `place`. A task that it passes waits for it, at a cost that grows with it, until
   * `place` is as near or the window closes: then it leaves for `place`, if its window was open there, and costs no more.
   */
  function sweep(place: number, firstTask: number): void {
    const end = last[place]!;
    const at = time[place]!;
    let [task, waiting, sumWaiting, settled] = [firstTask, 0, 0, perVisit];
    for (let next = place + 1; next <= end; next++) {
      const nextAt = time[next]!;
      for (; task < tasks.nominal.length && tasks.nominal[task]! <= nextAt; task++) {
        const nominal = tasks.nominal[task]!;
        const leaves = tasks.firstPlace[task]! > place ? count : leavesAt(task, nominal, at);
        if (leaves > next) {
          waiting++;
          sumWaiting += nominal;
          if (leaves <= end) {
            leaving.count[leaves]!++;
            leaving.sum[leaves]! += nominal;
          }
        } else settled += nominal - at;
      }
      const left = leaving.count[next]!;
      if (left > 0) {
        const sum = leaving.sum[next]!;
        waiting -= left;
        sumWaiting -= sum;
        settled += sum - left * at;
        leaving.count[next] = 0;
        leaving.sum[next] = 0;
      }
      cost[base[place]! + next] = settled + waiting * nextAt - sumWaiting;
    }
  }

  function leavesAt(task: number, nominal: number, at: number): number {
    return Math.min(tasks.lastPlace[task]! + 1, placeAtOrAfter(places, 2 * nominal - at, slotLength));
  }
}

/** Without a further visit, the tasks still to come are done at the place, if all of their windows are open there. */
function stops(tasks: PlacedTasks, time: Float64Array): Float64Array {
  const stop = new Float64Array(time.length).fill(Number.POSITIVE_INFINITY);
  const lastToOpen = tasks.firstPlace.reduce((latest, first) => Math.max(latest, first), 0);
  let [task, count, sum] = [tasks.nominal.length - 1, 0, 0];
  for (let place = time.length - 1; place >= lastToOpen; place--) {
    for (; task >= 0 && tasks.nominal[task]! > time[place]!; task--) {
      count++;
      sum += tasks.nominal[task]!;
    }
    stop[place] = count === 0 ? 0 : sum - count * time[place]!;
  }
  return stop;
}
