/**
 * What should run, when and how fast? The programme is the rate over time that order, holds and limits give:
 * disjoint pieces in order; where there is no piece, nothing runs.
 *
 *   rate  ^        ┌───────┐          ┌─────
 *         │ ┌──────┘       │  hold    │
 *         └─┴──────────────┴──────────┴─────> time      need D(t) = what the pieces have given up to t
 */
import type { Instant, Span } from '../base/instant.ts';
import { add, given, givenSoFar, NOTHING, type Rate, type Volume } from '../base/volume.ts';
import type { Working } from '../base/working.ts';

/** At a rate, or a volume over a time (a bolus): the latter gives the floor of the cumulative amount. */
export type Piece = Span & {
  readonly gives:
    | { readonly kind: 'rate'; readonly rate: Rate }
    | { readonly kind: 'volume'; readonly volume: Volume; readonly whole: Span; readonly feed: string };
  readonly working: Working;
};

/** A stretch in which nothing runs although the order would have it, with the reason. */
export type Gap = Span & {
  readonly why: string;
  readonly holds: readonly string[];
  readonly untilKnown: boolean;
};

export type Programme = {
  readonly span: Span;
  readonly pieces: readonly Piece[];
  readonly gaps: readonly Gap[];
  /** What the order wants in the span but the programme cannot give (no hours left, a ceiling). */
  readonly shortfall: Volume;
};

function pieceGives(piece: Piece, until: Instant): Volume {
  const end = until < piece.until ? until : piece.until;
  if (end <= piece.from) return NOTHING;
  if (piece.gives.kind === 'rate') return given(piece.gives.rate, (end - piece.from) as never);
  const { volume: total, whole } = piece.gives;
  const lasts = (whole.until - whole.from) as never;
  const sofar = (at: Instant): Volume => givenSoFar(total, (at - whole.from) as never, lasts);
  return (sofar(end) - sofar(piece.from)) as Volume;
}

/** D(t): what the programme has given from its beginning up to `at`. Exact, and additive over adjoining spans. */
export const needUpTo = (programme: Programme, at: Instant): Volume =>
  programme.pieces.reduce((total, piece) => add(total, pieceGives(piece, at)), NOTHING);

export const needWithin = (programme: Programme, span: Span): Volume =>
  (needUpTo(programme, span.until) - needUpTo(programme, span.from)) as Volume;
