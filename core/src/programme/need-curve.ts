/**
 * How much feed is needed up to any moment, asked thousands of times? The programme's D(t) with its sums made once, and
 * its inverse: when has so much been needed?
 */
import { timesOverUp } from '../base/fraction.ts';
import type { Instant } from '../base/instant.ts';
import { add, NOTHING, timeToGive, type Volume } from '../base/volume.ts';
import { type Piece, type Programme, pieceGives } from './programme.ts';

export type NeedCurve = {
  /** As `needUpTo`, in the time of a binary search. */
  readonly upTo: (at: Instant) => Volume;
  /** The first ms by which so much was needed; null when it never is in the programme's span. */
  readonly reaches: (wanted: Volume) => Instant | null;
  readonly total: Volume;
};

/** The last index whose value is at most `wanted`, or −1. */
function lastAtMost(values: readonly number[], wanted: number): number {
  let [low, high] = [0, values.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((values[middle] ?? 0) <= wanted) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** The first ms by which a piece has given so much, of no more than it gives. */
export function pieceReaches(piece: Piece, wanted: Volume): Instant {
  if (wanted <= 0) return piece.from;
  if (piece.gives.kind === 'rate')
    return (piece.from + (timeToGive(wanted, piece.gives.rate) ?? 0)) as Instant;
  const { volume, whole } = piece.gives;
  const before = pieceGives({ ...piece, from: whole.from }, piece.from);
  return (whole.from + timesOverUp(add(before, wanted), whole.until - whole.from, volume)) as Instant;
}

export function needCurve({ pieces }: Programme): NeedCurve {
  const starts = pieces.map((piece) => piece.from);
  const sums: Volume[] = [];
  let total = NOTHING;
  for (const piece of pieces) {
    sums.push(total);
    total = add(total, pieceGives(piece, piece.until));
  }
  const upTo = (at: Instant): Volume => {
    const i = lastAtMost(starts, at);
    const piece = pieces[i];
    return piece === undefined ? NOTHING : add(sums[i] ?? NOTHING, pieceGives(piece, at));
  };
  const reaches = (wanted: Volume): Instant | null => {
    if (wanted > total) return null;
    const i = lastAtMost(sums, wanted - 1);
    const piece = pieces[Math.max(i, 0)];
    return piece === undefined ? null : pieceReaches(piece, (wanted - (sums[Math.max(i, 0)] ?? 0)) as Volume);
  };
  return { upTo, reaches, total };
}
