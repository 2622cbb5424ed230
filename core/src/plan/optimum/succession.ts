/**
 * Which container can follow which? Of the containers that may be started: how many still come after each, up to where
 * the next can be started, and what is wasted of it then. Place 0 stands for the container now up.
 */
import type { Chain } from './chain.ts';
import { wasteOfLast, wasteOfRun } from './filling.ts';
import type { Places } from './places.ts';
import type { FeedDemand } from './problem.ts';

export type Succession = {
  readonly places: Places;
  readonly feed: FeedDemand;
  /** The places at which a container may be started, and place 0, in order. */
  readonly starts: readonly number[];
  /** For each place how many containers are started after the one started there; `NONE` where none is started. */
  readonly following: Int32Array;
  /** For each of the starts the last place at which the next can be started; the last place of all when it is the last. */
  readonly rowEnd: Int32Array;
  /** From this place on the last container may be up. */
  readonly firstOfTail: number;
  /** The last place at which a container can be started that follows one started at or before each place. */
  readonly furthestStart: Int32Array;
};

const NONE = -2;

export function successionOf(places: Places, feed: FeedDemand, chain: Chain): Succession {
  const count = places.slot.length;
  const following = new Int32Array(count).fill(NONE);
  const rowEnd = new Int32Array(count);
  const furthestStart = new Int32Array(count);
  const starts: number[] = [];
  let [firstOfTail, furthest] = [count, 0];
  for (let place = 0; place < count; place++) {
    const slot = places.slot[place]!;
    if (place === 0 || chain.starts[slot] === 1) {
      const after = place === 0 ? chain.fewest : chain.left[slot]! - 1;
      const reach = place === 0 ? chain.upReach : chain.reach[slot]!;
      starts.push(place);
      following[place] = after;
      rowEnd[place] = after === 0 ? count - 1 : lastStart(places, chain, reach, after);
      if (after === 0) firstOfTail = Math.min(firstOfTail, place);
      else furthest = Math.max(furthest, rowEnd[place]!);
    }
    furthestStart[place] = furthest;
  }
  return { places, feed, starts, following, rowEnd, firstOfTail, furthestStart };
}

/** The last place not after a slot at which a container can be started that is the first of so many. */
function lastStart(places: Places, chain: Chain, reach: number, containers: number): number {
  let place = places.from[Math.min(reach + 1, chain.starts.length)]! - 1;
  while (chain.starts[places.slot[place]!] === 0 || chain.left[places.slot[place]!] !== containers) place--;
  return place;
}

/** Whether the container after the one started at `start` can be started at `next`, not beyond the end of its row. */
export const canFollow = (following: Int32Array, start: number, next: number): boolean =>
  following[next] === following[start]! - 1;

/** What is wasted of the container started at `start` when the next is started at `next`. */
export function wasteUntil({ feed, places }: Succession, start: number, next: number): number {
  const slot = places.slot[next]!;
  if (start > 0) return wasteOfRun(feed, places.slot[start]!, slot);
  return feed.up === null ? 0 : feed.up.remaining - feed.need[slot]!;
}

/** What is wasted of the last container. */
export function wasteAtEnd({ feed, places }: Succession, start: number): number {
  const end = feed.need.length - 1;
  if (start > 0) return wasteOfLast(feed, places.slot[start]!, end);
  return feed.ends && feed.up !== null ? feed.up.remaining - feed.need[end]! : 0;
}
