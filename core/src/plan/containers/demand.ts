/**
 * What does the optimum have to know of feed? How much is needed up to each point of the grid, how far a container put up
 * there may go, what its prime takes, what it holds, and what the one now up still has.
 */
import { earlier, type Instant } from '../../base/instant.ts';
import { NOTHING, type Volume } from '../../base/volume.ts';
import type { Grid } from '../grid.ts';
import type { FeedDemand, Filling } from '../optimum/problem.ts';
import { type ContainerLimits, plannedDown } from './limits.ts';
import type { Need } from './need.ts';
import type { SetRule } from './sets.ts';

export type Ground = {
  readonly grid: Grid;
  readonly need: Need;
  /** Need from slot 0 up to the slots 0 to `slots`, the last one cut to the end of the plan. */
  readonly needs: Float64Array;
  /** Of a container with a set of its own age: the set's limit is one of them. */
  readonly limits: ContainerLimits;
  readonly sets: SetRule;
  readonly filling: Filling;
  readonly up: Up | null;
  /** Whether no feed is needed past the end of the plan within any container's limit. */
  readonly ends: boolean;
};

/** The container now up: what is in it at slot 0, and by when it must be down. */
export type Up = { readonly remaining: Volume; readonly downBy: Instant };

export function needsOn(grid: Grid, { curve: { upTo } }: Need): Float64Array {
  const from = upTo(grid.span.from);
  return Float64Array.from(
    { length: grid.slots + 1 },
    (_, slot) => upTo(earlier(grid.at(slot), grid.span.until)) - from,
  );
}

/** Only where feed is needed before the next slot is there a reason to put a container up: its clock runs from then. */
const isNeeded = (needs: Float64Array, slot: number): boolean =>
  (needs[slot + 1] as number) > (needs[slot] as number);

function nextNeeded(needs: Float64Array, from: number): number {
  for (let slot = Math.max(0, from); slot + 1 < needs.length; slot++) if (isNeeded(needs, slot)) return slot;
  return Number.POSITIVE_INFINITY;
}

const needBy = ({ need, grid }: Ground, at: Instant): number =>
  Math.max(0, need.curve.upTo(at) - need.curve.upTo(grid.span.from));

/** For a container started at each slot, the need up to the moment at which it must be down; none where none is needed yet. */
function needAtLimits(ground: Ground): Float64Array {
  const { grid, needs, limits } = ground;
  return Float64Array.from({ length: grid.slots }, (_, slot) =>
    isNeeded(needs, slot) ? needBy(ground, plannedDown(limits, grid.at(slot))) : (needs[slot] as number),
  );
}

/** The last slot to which the container now up lasts; the first where none is. */
function lastOfUp(ground: Ground): number {
  const { up, needs } = ground;
  if (up === null) return nextNeeded(needs, 0);
  const most = Math.min(up.remaining, needBy(ground, up.downBy));
  return needs.findLastIndex((needed) => needed <= most);
}

/**
 * [PL15] The slots at which a container would have a new set: those from which it could still be up when the set in use is
 * due, for each moment at which one is (`null`: a set of unknown age, which goes with the container that it carries).
 */
function newSetSlots(ground: Ground, dues: readonly (Instant | null)[], atLimit: Float64Array): Uint8Array {
  const { grid, needs } = ground;
  const marks = new Uint8Array(grid.slots);
  for (const due of dues) {
    const last = due === null ? lastOfUp(ground) : nextNeeded(needs, grid.slotDown(due));
    const needed = due === null ? -1 : needBy(ground, due);
    for (let slot = 0; slot <= Math.min(last, grid.slots - 1); slot++) {
      if (slot === last || (atLimit[slot] as number) > needed) marks[slot] = 1;
    }
  }
  return marks;
}

/** Every container is given a new set, or those that would outlast the set in use at these moments. */
export type NewSets = 'all' | readonly (Instant | null)[];

/** [PL13] The demand as the optimum wants it. */
export function demandOf(ground: Ground, newSets: NewSets): FeedDemand {
  const { grid, needs, sets, filling, up, ends } = ground;
  const needAtLimit = needAtLimits(ground);
  const prime = new Float64Array(grid.slots);
  if (sets.kind !== 'none') {
    const marks = newSets === 'all' ? null : newSetSlots(ground, newSets, needAtLimit);
    for (let slot = 0; slot < grid.slots; slot++) {
      prime[slot] = marks === null || marks[slot] === 1 ? sets.prime.value : NOTHING;
    }
  }
  return {
    need: needs,
    needAtLimit,
    prime,
    filling,
    up: up === null ? null : { remaining: up.remaining, needAtLimit: needBy(ground, up.downBy) },
    ends,
  };
}
