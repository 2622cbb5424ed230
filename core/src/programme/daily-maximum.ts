/**
 * What stops when the order's most volume for a day has been given? Everything, at the first ms that reaches it, until
 * the next feeding day. A bolus that does not fit whole is not begun. What a hold took is lost only so far as the day
 * then falls short of its most. [PR15]
 */
import { type Instant, type Span, within } from '../base/instant.ts';
import { NOTHING, subtract, sum, type Volume } from '../base/volume.ts';
import { ARITHMETIC, input, shownVolume, worked } from '../base/working.ts';
import { type Draft, drafts, type Missed, missedFor, NO_FEED, type Short } from './draft.ts';
import type { Frame } from './frame.ts';
import { pieceReaches } from './need-curve.ts';
import { type Piece, pieceGives } from './programme.ts';
import { ALWAYS, cutTo, without } from './spans.ts';

/** The part of a day that is counted in one go, with what had been given before it. */
type Count = Span & { readonly already: Volume };

/** As planned from the day's beginning; on the day of the standing, from then on with what was received. */
function countsOf({ standing }: Frame, day: Span): readonly Count[] {
  const { at, receivedToday } = standing;
  return within(day, at)
    ? [
        { from: day.from, until: at, already: NOTHING },
        { from: at, until: day.until, already: receivedToday },
      ]
    : [{ ...day, already: NOTHING }];
}

/** When so much is reached; null when it is not. `whole`: a piece that does not fit is not begun. */
function reachedAt(pieces: readonly Piece[], most: Volume, whole: boolean): Instant | null {
  let left = most;
  for (const piece of pieces) {
    if (left <= 0) return piece.from;
    const gives = pieceGives(piece, piece.until);
    if (gives > left && whole) return piece.from;
    if (gives >= left) return pieceReaches(piece, left);
    left = subtract(left, gives);
  }
  return null;
}

const givenBy = (pieces: readonly Piece[]): Volume =>
  sum(pieces.map((piece) => pieceGives(piece, piece.until)));

const lostIn = (missed: readonly Missed[]): Volume =>
  givenBy(missed.flatMap(({ from, until, loses }) => (loses === null ? [] : [{ ...loses, from, until }])));

function shortOfMost(count: Count, day: Span, most: Volume, gives: Volume): readonly Short[] {
  const missing = subtract(subtract(most, count.already), gives);
  if (missing <= 0) return [];
  const { working } = worked(missing, shownVolume, {
    equation: 'V_short = V_most − V_received − V_planned',
    inputs: [
      input('V_most', shownVolume(most), { kind: 'order', path: 'mostVolumePerDay' }),
      input('V_received', shownVolume(count.already), ARITHMETIC),
      input('V_planned', shownVolume(gives), ARITHMETIC),
    ],
    symbol: 'V_short',
    rule: 'PR15',
    basis: ARITHMETIC,
  });
  return [{ ...day, why: 'hold', volume: missing, working }];
}

/** Boluses count where they begin, or now if one is being given; everything else counts where it runs. */
function inCount<T extends Span>(
  { order, standing }: Frame,
  things: readonly T[],
  count: Count,
): readonly T[] {
  if (order.regimen?.kind !== 'bolus') return cutTo(things, count);
  const past = cutTo(things, { from: ALWAYS.from, until: standing.at });
  const toCome = cutTo(things, { from: standing.at, until: ALWAYS.until });
  return [...past, ...toCome].filter((one) => within(count, one.from));
}

/** What is left of a draft in a count. */
function counted(frame: Frame, draft: Draft, day: Span, count: Count, most: Volume): Draft {
  const isWhole = frame.order.regimen?.kind === 'bolus';
  const here = <T extends Span>(things: readonly T[]): readonly T[] => inCount(frame, things, count);
  const [pieces, missed] = [here(draft.pieces), here(draft.missed)];
  const stop = reachedAt(pieces, subtract(most, count.already), isWhole) ?? ALWAYS.until;
  const kept = isWhole
    ? pieces.filter((one) => one.from < stop)
    : cutTo(pieces, { from: ALWAYS.from, until: stop });
  const gives = givenBy(kept);
  const lost = lostIn(missed);
  const isOver = lost > 0 && count.until === day.until && count.already + gives + lost > most;
  return {
    pieces: kept,
    missed: [
      ...(isOver ? missed.map((one) => ({ ...one, loses: null })) : missed),
      ...missedFor('maximum-reached', without(pieces, kept)),
    ],
    short: isOver ? shortOfMost(count, day, most, gives) : [],
  };
}

export function withinDailyMaximum(frame: Frame, draft: Draft): Draft {
  const most = frame.order.mostVolumePerDay;
  if (most === null) return draft;
  const parts = frame.nearDays.flatMap((day) =>
    countsOf(frame, day).map((count) => counted(frame, draft, day, count, most)),
  );
  return drafts([...parts, { ...NO_FEED, short: draft.short }]);
}
