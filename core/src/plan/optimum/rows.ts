/**
 * What does the rest of the plan cost from each visit on? That depends only on the visit and on the container that is up
 * then. A row has these costs for one container; it is worked backwards, from the rows of those that can be next:
 *
 *   row of ●        ●───v───v───v──┬─v──┬─v       the next container can be started at ┬
 *   row of a next one              ●───v───v──┬─v
 *
 * A cost is a pair: visits and deviation in one whole number, then waste. All last containers share one row, the tail.
 */
import type { Gaps } from './gaps.ts';
import { canFollow, type Succession, wasteAtEnd, wasteUntil } from './succession.ts';

export type Rows = {
  /** `cost[base[start] + place]`: the rest after a visit at `place`, while the container started at `start` stays up. */
  readonly base: Int32Array;
  readonly cost: Float64Array;
  readonly waste: Float64Array;
  /** The same right after a container was started at a place. */
  readonly startCost: Float64Array;
  readonly startWaste: Float64Array;
};

export function rowsOf(succession: Succession, gaps: Gaps): Rows {
  const { following, starts, firstOfTail } = succession;
  const count = following.length;
  const rows = blankRows(succession);
  const then = { cost: new Float64Array(count), waste: new Float64Array(count) };
  if (firstOfTail < count) fillRow(succession, gaps, rows, then, firstOfTail);
  for (const start of starts.toReversed()) {
    const isLast = following[start] === 0;
    if (!isLast) fillRow(succession, gaps, rows, then, start);
    const own = rows.base[start]! + start;
    rows.startCost[start] = rows.cost[own]!;
    rows.startWaste[start] = rows.waste[own]! + (isLast ? wasteAtEnd(succession, start) : 0);
  }
  return rows;
}

function blankRows({ following, rowEnd, starts, firstOfTail }: Succession): Rows {
  const count = following.length;
  const base = new Int32Array(count);
  let size = count - firstOfTail;
  for (const start of starts) {
    base[start] = following[start] === 0 ? -firstOfTail : size - start;
    if (following[start] !== 0) size += rowEnd[start]! - start + 1;
  }
  return {
    base,
    cost: new Float64Array(size),
    waste: new Float64Array(size),
    startCost: new Float64Array(count),
    startWaste: new Float64Array(count),
  };
}

/** `then` is the least from each place on when a visit is there, whether or not the next container is started at it. */
function fillRow(
  succession: Succession,
  gaps: Gaps,
  rows: Rows,
  then: { readonly cost: Float64Array; readonly waste: Float64Array },
  start: number,
): void {
  const { following, rowEnd } = succession;
  const { cost: gapCost, base: gapBase, last: gapLast, stop } = gaps;
  const { cost: thenCost, waste: thenWaste } = then;
  const { startCost, startWaste } = rows;
  const base = rows.base[start]!;
  const end = rowEnd[start]!;
  const isLast = following[start] === 0;
  for (let place = end; place >= start; place--) {
    let best = isLast ? stop[place]! : Number.POSITIVE_INFINITY;
    let bestWaste = 0;
    const gap = gapBase[place]!;
    for (let next = Math.min(gapLast[place]!, end); next > place; next--) {
      const sum = gapCost[gap + next]! + thenCost[next]!;
      if (sum < best || (sum === best && thenWaste[next]! < bestWaste)) {
        best = sum;
        bestWaste = thenWaste[next]!;
      }
    }
    rows.cost[base + place] = best;
    rows.waste[base + place] = bestWaste;
    if (canFollow(following, start, place) && startCost[place]! <= best) {
      const wasted = startWaste[place]! + wasteUntil(succession, start, place);
      if (startCost[place]! < best || wasted < bestWaste) {
        best = startCost[place]!;
        bestWaste = wasted;
      }
    }
    thenCost[place] = best;
    thenWaste[place] = bestWaste;
  }
}
