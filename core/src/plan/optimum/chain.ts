/**
 * What is the least number of containers, and at which slots can they be started if there are no more than that?
 * A container started at a slot lasts to every slot up to its reach: need never falls, so neither does what it costs to
 * go further. Time limit and capacity both go into the reach [PL4], and a chain has no gap [PL3].
 */
import { mostOf } from './filling.ts';
import type { FeedDemand } from './problem.ts';

export type Chain = {
  /** The last slot up to which a container started at each slot lasts; the slot itself where it cannot last at all. */
  readonly reach: Int32Array;
  readonly upReach: number;
  /** Fewest containers from a slot to the end, that started there included; `NEVER` where none gets there. */
  readonly left: Int32Array;
  /** Fewest containers to be started in all; `NEVER` when no chain of them gets to the end. */
  readonly fewest: number;
  /** 1 for the slots at which some chain of the fewest containers starts one. */
  readonly starts: Uint8Array;
};

export const NEVER = 0x7fffffff;

/** The last slot, not before `from`, up to which no more than `needed` is needed. */
function lastSlotNeeding(need: ArrayLike<number>, needed: number, from: number, end: number): number {
  let [low, high] = [from, end];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (need[middle]! <= needed) low = middle;
    else high = middle - 1;
  }
  return low;
}

export function reachOf(feed: FeedDemand, slots: number): { reach: Int32Array; upReach: number } {
  const { need, needAtLimit, prime, up } = feed;
  const most = mostOf(feed.filling);
  const reach = new Int32Array(slots);
  for (let slot = 0; slot < slots; slot++) {
    const needed = Math.min(needAtLimit[slot]!, need[slot]! + most - prime[slot]!);
    reach[slot] = lastSlotNeeding(need, needed, slot, slots);
  }
  const upReach = lastSlotNeeding(need, up === null ? 0 : Math.min(up.needAtLimit, up.remaining), 0, slots);
  return { reach, upReach };
}

/** One more than the fewest that any of the slots from `first` to `last` still needs. */
function fewestFrom(left: Int32Array, first: number, last: number): number {
  let fewest = NEVER;
  for (let slot = first; slot <= last; slot++) if (left[slot]! < fewest) fewest = left[slot]!;
  return fewest;
}

function fewestLeft(open: Uint8Array, reach: Int32Array): Int32Array {
  const slots = reach.length;
  const left = new Int32Array(slots).fill(NEVER);
  for (let slot = slots - 1; slot >= 0; slot--) {
    if (open[slot] === 0) continue;
    const next = reach[slot] === slots ? 0 : fewestFrom(left, slot + 1, reach[slot]!);
    if (next !== NEVER) left[slot] = next + 1;
  }
  return left;
}

/** Forwards from the container now up, only to slots from which the fewest still are enough. */
function startsOfFewest(reach: Int32Array, upReach: number, left: Int32Array, fewest: number): Uint8Array {
  const slots = reach.length;
  const starts = new Uint8Array(slots);
  const mark = (first: number, last: number, containers: number): void => {
    if (containers === 0) return;
    for (let slot = first; slot <= Math.min(last, slots - 1); slot++)
      if (left[slot] === containers) starts[slot] = 1;
  };
  mark(0, upReach, fewest);
  for (let slot = 0; slot < slots; slot++)
    if (starts[slot] === 1) mark(slot + 1, reach[slot]!, left[slot]! - 1);
  return starts;
}

export function chainOf(feed: FeedDemand, open: Uint8Array): Chain {
  const slots = open.length;
  const { reach, upReach } = reachOf(feed, slots);
  const left = fewestLeft(open, reach);
  const fewest = upReach === slots ? 0 : fewestFrom(left, 0, upReach);
  const starts = fewest === NEVER ? new Uint8Array(slots) : startsOfFewest(reach, upReach, left, fewest);
  return { reach, upReach, left, fewest, starts };
}

/** The furthest slot up to which feed can be kept going from the beginning: the end, or where every chain breaks. */
export function furthestFed(open: Uint8Array, reach: Int32Array, upReach: number): number {
  let furthest = upReach;
  for (let slot = 0; slot < open.length && slot <= furthest; slot++)
    if (open[slot] === 1) furthest = Math.max(furthest, reach[slot]!);
  return furthest;
}
