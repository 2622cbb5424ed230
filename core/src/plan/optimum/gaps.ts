/**
 * What do two visits that follow each other cost, whatever came before and comes after? A task whose nominal time lies
 * between them goes to the nearer one that is in its window [PL2], so that the tasks' part of a plan is a sum over its gaps:
 *
 *   visit i ●───────n────────────● visit j       n − i or j − n
 *
 * "Before the first visit" is place 0, at minus infinity.
 */
import { impossible } from '../../base/result.ts';
import { type PlacedTasks, type Places, placeAtOrAfter } from './places.ts';

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

/** One visit more than makes up for all deviation that the windows allow. */
function visitWeight(tasks: PlacedTasks, time: Float64Array): number {
  const most = tasks.nominal.reduce((sum, nominal, task) => {
    const early = Math.abs(nominal - time[tasks.firstPlace[task]!]!);
    const late = Math.abs(time[tasks.lastPlace[task]!]! - nominal);
    return sum + Math.max(early, late);
  }, 0);
  return Number.isSafeInteger((most + 1) * time.length)
    ? most + 1
    : impossible(`a deviation of ${most} in ${time.length} visits`);
}

export function gapsOf(tasks: PlacedTasks, places: Places, slotLength: number, last: Int32Array): Gaps {
  const count = places.slot.length;
  const { nominal, firstPlace, lastPlace } = tasks;
  const time = new Float64Array(places.slot).map((slot) => slot * slotLength);
  time[0] = Number.NEGATIVE_INFINITY;
  const perVisit = visitWeight(tasks, time);
  const { base, size } = layOut(last);
  const cost = new Float64Array(size);
  const leaving = { count: new Int32Array(count), sum: new Float64Array(count) };
  for (let place = 0, first = 0; place < count; place++) {
    while (first < nominal.length && nominal[first]! <= time[place]!) first++;
    sweep(place, first);
  }
  return { perVisit, last, base, cost, stop: stops(tasks, time) };

  /**
   * The next visit moves away from `place`. A task that it passes waits for it, at a cost that grows with it, until
   * `place` is as near or the window closes: then it leaves for `place`, if its window was open there, and costs no more.
   */
  function sweep(place: number, firstTask: number): void {
    const end = last[place]!;
    const at = time[place]!;
    let [task, waiting, sumWaiting, left] = [firstTask, 0, 0, 0];
    for (let next = place + 1; next <= end; next++) {
      const nextAt = time[next]!;
      for (; task < nominal.length && nominal[task]! <= nextAt; task++) {
        waiting++;
        sumWaiting += nominal[task]!;
        if (firstPlace[task]! > place) continue;
        const asNear = placeAtOrAfter(places, 2 * nominal[task]! - at, slotLength);
        const leaves = Math.max(next, Math.min(lastPlace[task]! + 1, asNear));
        if (leaves > end) continue;
        leaving.count[leaves]!++;
        leaving.sum[leaves]! += nominal[task]!;
      }
      if (leaving.count[next]! > 0) {
        waiting -= leaving.count[next]!;
        sumWaiting -= leaving.sum[next]!;
        left += leaving.sum[next]! - leaving.count[next]! * at;
        leaving.count[next] = 0;
        leaving.sum[next] = 0;
      }
      cost[base[place]! + next] = perVisit + left + waiting * nextAt - sumWaiting;
    }
  }
}

/** The costs of the gaps after each place follow those after the place before it. */
function layOut(last: Int32Array): { readonly base: Int32Array; readonly size: number } {
  let size = 0;
  const base = last.map((end, place) => {
    const from = size - place - 1;
    size += end - place;
    return from;
  });
  return { base, size };
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
