/**
 * Where can a visit be of any use, and which of these places are in a task's window? Places are the useful slots in order;
 * place 0 stands for "before the first visit". Working with places leaves all other slots out of the search.
 */
import type { TaskWindow } from './problem.ts';

/** Places are the slots at which a visit can be of use, in order, after place 0. */
export type Places = {
  readonly slot: Int32Array;
  /** The first place at or after each slot; the number of places where there is none. */
  readonly from: Int32Array;
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
