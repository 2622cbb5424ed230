/**
 * What stops when the order's most volume for a day has been given? Everything, at the first ms that reaches it, until
 * the next feeding day. [PR15]
 */
import { type Instant, type Span, within } from '../base/instant.ts';
import { NOTHING, subtract, type Volume } from '../base/volume.ts';
import { type Draft, missedFor } from './draft.ts';
import type { Frame } from './frame.ts';
import { pieceReaches } from './need-curve.ts';
import { type Piece, pieceGives } from './programme.ts';
import { cutTo, meeting, without } from './spans.ts';

/** When the day's maximum is reached, counting from `already` given; null when it is not. */
function reachedAt(pieces: readonly Piece[], most: Volume, already: Volume): Instant | null {
  let left = subtract(most, already);
  for (const piece of pieces) {
    if (left <= 0) return piece.from;
    const gives = pieceGives(piece, piece.until);
    if (gives >= left) return pieceReaches(piece, left);
    left = subtract(left, gives);
  }
  return null;
}

/** As planned from the day's beginning; on the day of the standing, from then on with what was received. */
function stopsOn(frame: Frame, day: Span, pieces: readonly Piece[], most: Volume): readonly Span[] {
  const { at, receivedToday } = frame.standing;
  const until = (from: Instant | null, to: Instant): readonly Span[] =>
    from === null || from >= to ? [] : [{ from, until: to }];
  if (!within(day, at)) return until(reachedAt(pieces, most, NOTHING), day.until);
  const before = cutTo(pieces, { from: day.from, until: at });
  const after = cutTo(pieces, { from: at, until: day.until });
  return [
    ...until(reachedAt(before, most, NOTHING), at),
    ...until(reachedAt(after, most, receivedToday), day.until),
  ];
}

export function withinDailyMaximum(frame: Frame, draft: Draft): Draft {
  const most = frame.order.mostVolumePerDay;
  if (most === null) return draft;
  const parts = frame.days.map((day) => {
    const pieces = cutTo(draft.pieces, day);
    const stops = stopsOn(frame, day, pieces, most);
    return { pieces: without(pieces, stops), stopped: meeting(pieces, stops) };
  });
  return {
    ...draft,
    pieces: parts.flatMap((part) => part.pieces),
    missed: [
      ...draft.missed,
      ...missedFor(
        'maximum-reached',
        parts.flatMap((part) => part.stopped),
      ),
    ],
  };
}
