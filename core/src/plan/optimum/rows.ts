/**
 * What does the rest of the plan cost from each visit on? That depends only on the visit and on the container that is up
 * then. A row has these costs for one container; it is worked backwards, from the rows of those that can be next:
 *
 *   row of ●        ●───v───v───v──┬─v──┬─v       the next container can be started at ┬
 *   row of a next one              ●───v───v──┬─v
 *
 * A cost is a pair: visits and deviation in one whole number, then waste. Place 0 stands for the container now up.
 */
import type { Chain } from './chain.ts';
import { wasteOfLast, wasteOfRun } from './filling.ts';
import type { Gaps, Places } from './gaps.ts';
import type { FeedDemand } from './problem.ts';

export type Ground = {
  readonly places: Places;
  readonly feed: FeedDemand;
  readonly chain: Chain;
};

/** For the place of each container that may be started, and place 0. */
export type Succession = {
  /** How many containers are started after it. */
  readonly following: Int32Array;
  /** The last place at which the next visit of its row can be; that of the row's last start, if there is one. */
  readonly rowEnd: Int32Array;
  /** The places themselves, in order. */
  readonly starts: readonly number[];
  /** From this place on the last container may be up. */
  readonly firstOfTail: number;
  /** The last place at which a container can be started that follows one started at or before each place. */
  readonly furthestStart: Int32Array;
};

export type Rows = {
  /** `cost[base[start] + place]`: the rest after a visit at `place`, while the container started at `start` stays up. */
  readonly base: Int32Array;
  readonly cost: Float64Array;
  readonly waste: Float64Array;
  /** The same right after a container was started at a place. */
  readonly startCost: Float64Array;
  readonly startWaste: Float64Array;
};

export function successionOf({ places, chain }: Ground): Succession {
  const count = places.slot.length;
  const following = new Int32Array(count);
  const rowEnd = new Int32Array(count);
  const furthestStart = new Int32Array(count);
  const starts: number[] = [];
  let [firstOfTail, furthest] = [count, 0];
  for (let place = 0; place < count; place++) {
    const slot = places.slot[place]!;
    if (place === 0 || chain.starts[slot] === 1) {
      starts.push(place);
      const after = place === 0 ? chain.fewest : chain.left[slot]! - 1;
      following[place] = after;
      rowEnd[place] = after === 0 ? count - 1 : lastNextStart(place, after);
      if (after === 0) firstOfTail = Math.min(firstOfTail, place);
      else furthest = Math.max(furthest, rowEnd[place]!);
    }
    furthestStart[place] = furthest;
  }
  return { following, rowEnd, starts, firstOfTail, furthestStart };

  function lastNextStart(place: number, containers: number): number {
    const reach = place === 0 ? chain.upReach : chain.reach[places.slot[place]!]!;
    let next = places.from[Math.min(reach + 1, places.from.length - 1)]! - 1;
    while (chain.starts[places.slot[next]!] === 0 || chain.left[places.slot[next]!] !== containers) next--;
    return next;
  }
}

/** Whether the container after the one started at `start` can be started at `next`; the row's end keeps its reach. */
export const canFollow = (ground: Ground, succession: Succession, start: number, next: number): boolean =>
  ground.chain.starts[ground.places.slot[next]!] === 1 &&
  succession.following[next] === succession.following[start]! - 1;

/** What is wasted of the container started at `start` when the next is started at `next`. */
export function wasteUntil({ feed, places }: Ground, start: number, next: number): number {
  const slot = places.slot[next]!;
  if (start > 0) return wasteOfRun(feed, places.slot[start]!, slot);
  return feed.up === null ? 0 : feed.up.remaining - feed.need[slot]!;
}

/** What is wasted of the last container. */
function wasteAtEnd({ feed, places, chain }: Ground, start: number): number {
  const end = chain.starts.length;
  if (start > 0) return wasteOfLast(feed, places.slot[start]!, end);
  return feed.ends && feed.up !== null ? feed.up.remaining - feed.need[end]! : 0;
}

export function rowsOf(ground: Ground, gaps: Gaps, succession: Succession): Rows {
  const { following, rowEnd, starts, firstOfTail } = succession;
  const count = following.length;
  const base = new Int32Array(count);
  let size = count - firstOfTail;
  for (const start of starts) {
    base[start] = following[start] === 0 ? -firstOfTail : size - start;
    if (following[start] !== 0) size += rowEnd[start]! - start + 1;
  }
  const cost = new Float64Array(size);
  const waste = new Float64Array(size);
  const startCost = new Float64Array(count);
  const startWaste = new Float64Array(count);
  const thenCost = new Float64Array(count);
  const thenWaste = new Float64Array(count);
  if (firstOfTail < count) fillRow(firstOfTail);
  for (const start of starts.toReversed()) {
    if (following[start] !== 0) fillRow(start);
    startCost[start] = cost[base[start]! + start]!;
    startWaste[start] = waste[base[start]! + start]!;
    if (following[start] === 0) startWaste[start]! += wasteAtEnd(ground, start);
  }
  return { base, cost, waste, startCost, startWaste };

  function fillRow(start: number): void {
    const end = rowEnd[start]!;
    const isLast = following[start] === 0;
    for (let place = end; place >= start; place--) {
      let best = isLast ? gaps.stop[place]! : Number.POSITIVE_INFINITY;
      let bestWaste = 0;
      const gap = gaps.base[place]!;
      const last = Math.min(gaps.last[place]!, end);
      for (let next = place + 1; next <= last; next++) {
        const sum = gaps.cost[gap + next]! + thenCost[next]!;
        if (sum < best || (sum === best && thenWaste[next]! < bestWaste)) {
          best = sum;
          bestWaste = thenWaste[next]!;
        }
      }
      cost[base[start]! + place] = best;
      waste[base[start]! + place] = bestWaste;
      if (canFollow(ground, succession, start, place)) {
        const wasted = startWaste[place]! + wasteUntil(ground, start, place);
        if (startCost[place]! < best || (startCost[place] === best && wasted < bestWaste)) {
          best = startCost[place]!;
          bestWaste = wasted;
        }
      }
      thenCost[place] = best;
      thenWaste[place] = bestWaste;
    }
  }
}
