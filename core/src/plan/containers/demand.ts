/**
 * What does the optimum have to know of feed? How much is needed up to each point of the grid, how far a container put up
 * there may go, what its prime takes, what it holds, and what the one now up still has.
 */
import { earlier, type Instant } from '../../base/instant.ts';
import { NOTHING, type Volume } from '../../base/volume.ts';
import type { Grid } from '../grid.ts';
import type { FeedDemand, Filling } from '../optimum/problem.ts';
import { type ContainerLimits, type FixedLimit, plannedDown } from './limits.ts';
import type { Need } from './need.ts';
import { type SetRule, setDue } from './sets.ts';

export type Ground = {
  readonly grid: Grid;
  readonly need: Need;
  /** Need from slot 0 up to the slots 0 to `slots`, the last one cut to the end of the plan. */
  readonly needs: Float64Array;
  readonly limits: ContainerLimits;
  readonly sets: SetRule;
  readonly filling: Filling;
  readonly up: Up | null;
};

/** The container now up: what is in it at slot 0, and by when it must be down whatever set it hangs on. */
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

function nextNeeded(needs: Float64Array, from: number): number | null {
  for (let slot = Math.max(0, from); slot + 1 < needs.length; slot++) if (isNeeded(needs, slot)) return slot;
  return null;
}

/** A set from the slot at which it is put up, −1 for the one now in use, to when it is due. */
export type SetLife = { readonly slot: number; readonly due: FixedLimit };

/** Where the container now up is at its end: a set of unknown age is changed with the next one, at the latest then. */
function endOfUp({ grid, need, needs, up }: Ground): number {
  if (up === null) return 0;
  const most = Math.min(up.remaining, need.curve.upTo(up.downBy) - need.curve.upTo(grid.span.from));
  return needs.findLastIndex((needed) => needed <= Math.max(0, most));
}

/**
 * [PL14] The sets of the plan one after the other: the first is new where the one in use is due or, if none is known,
 * with the first container; each later one where the one before is due. `first` brings the first change forward.
 */
export function setLives(ground: Ground, first: number | null = null): readonly SetLife[] {
  const { grid, needs, sets } = ground;
  if (sets.kind !== 'timed') return [];
  const lives: SetLife[] = sets.putUpAt === null ? [] : [{ slot: -1, due: setDue(sets.putUpAt, sets.limit) }];
  const changeAfter = (life: SetLife | undefined): number | null =>
    nextNeeded(
      needs,
      life === undefined ? endOfUp(ground) : Math.max(life.slot + 1, grid.slotDown(life.due.at)),
    );
  for (let slot = first ?? changeAfter(lives.at(-1)); slot !== null; slot = changeAfter(lives.at(-1))) {
    lives.push({ slot, due: setDue(grid.at(slot), sets.limit) });
  }
  return lives;
}

/** When the set of a container put up at a slot is due; null where containers have sets of their own or none. */
export const setDueFrom = (lives: readonly SetLife[], slot: number): FixedLimit | null =>
  lives.findLast((life) => life.slot <= slot)?.due ?? null;

export const isNewSet = ({ sets }: Ground, lives: readonly SetLife[], slot: number): boolean =>
  sets.kind === 'with-each' || (sets.kind === 'timed' && lives.some((life) => life.slot === slot));

/** The slot at which the set of a container put up at a slot goes, with whatever hangs on it. */
const changeAfter = (lives: readonly SetLife[], slot: number): number =>
  lives.find((life) => life.slot > slot)?.slot ?? Number.POSITIVE_INFINITY;

/** [PL13] The demand, with the sets changed where these begin. No container spans the change of its set. */
export function demandOf(ground: Ground, lives: readonly SetLife[], ends: boolean): FeedDemand {
  const { grid, need, needs, limits, sets, filling, up } = ground;
  const start = need.curve.upTo(grid.span.from);
  const needBy = (at: number): number => Math.max(0, need.curve.upTo(at as Instant) - start);
  const beforeChange = (down: Instant, slot: number): number => {
    const change = changeAfter(lives, slot);
    return Number.isFinite(change) ? Math.min(down, grid.at(change)) : down;
  };
  const needAtLimit = new Float64Array(grid.slots);
  const prime = new Float64Array(grid.slots);
  for (let slot = 0; slot < grid.slots; slot++) {
    prime[slot] = sets.kind !== 'none' && isNewSet(ground, lives, slot) ? sets.prime.value : NOTHING;
    const due = setDueFrom(lives, slot);
    needAtLimit[slot] = isNeeded(needs, slot)
      ? needBy(beforeChange(plannedDown(limits, grid.at(slot), due === null ? [] : [due]), slot))
      : (needs[slot] as number);
  }
  return {
    need: needs,
    needAtLimit,
    prime,
    filling,
    up: up === null ? null : { remaining: up.remaining, needAtLimit: needBy(beforeChange(up.downBy, -1)) },
    ends,
  };
}
