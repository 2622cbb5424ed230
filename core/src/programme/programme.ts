/**
 * What should run, when and how fast? The programme is the rate over time that order, holds and limits give:
 * disjoint pieces in order; where there is no piece, nothing runs.
 *
 *   rate  ^        ┌───────┐          ┌─────
 *         │ ┌──────┘       │  hold    │
 *         └─┴──────────────┴──────────┴─────> time      need D(t) = what the pieces have given up to t
 */
import type { Fraction } from '../base/fraction.ts';
import type { Instant, Span } from '../base/instant.ts';
import { add, given, givenSoFar, NOTHING, type Rate, type Volume } from '../base/volume.ts';
import type { Worked, Working } from '../base/working.ts';

/** At a rate, or a volume over a time (a bolus): the latter gives the floor of the cumulative amount. */
export type Piece = Span & {
  readonly gives:
    | { readonly kind: 'rate'; readonly rate: Rate }
    | {
        readonly kind: 'volume';
        readonly volume: Volume;
        readonly whole: Span;
        readonly feed: string;
        /** May be given: only if less than this share of a meal was eaten. */
        readonly ifEatenLessThan?: Fraction;
      };
  readonly working: Working;
};

/** A stretch in which nothing runs although the order would have it, with the reason. */
export type Gap = Span & {
  readonly why: string;
  readonly holds: readonly string[];
  readonly untilKnown: boolean;
};

/** Why nothing runs although the order would have it: the `why` of a gap made here. */
export type GapReason =
  | 'hold'
  | 'hold-end-unknown'
  | 'volume-reached'
  | 'maximum-reached'
  | 'nothing-to-set'
  | 'amount-not-known'
  | 'day-start-not-known';

/** Why lost volume is not made up. */
export type CatchUpBar =
  | 'no-protocol'
  | 'refeeding-caution'
  | 'open-intolerance'
  | 'advancing'
  | 'first-day'
  | 'child'
  | 'age-not-known'
  | 'post-pyloric'
  | 'tip-not-known'
  | 'over-fluid-limit'
  | 'ceiling-not-known';

/** Why feed that the order wants is not given: held, no time, a ceiling, rounding down, a feed that ran into the next. */
export type LossReason =
  | GapReason
  | CatchUpBar
  | 'no-time-left'
  | 'ceiling'
  | 'rounding'
  | 'next-feed'
  | 'received-less';

/**
 * Feed that the order wants and the programme does not give. Over a hold it is lost where the hold is; what a day or a
 * window falls short of is known where that ends, and is said in the span that contains its end.
 */
export type Lost = Span & { readonly why: LossReason; readonly volume: Worked<Volume> };

export type Programme = {
  readonly span: Span;
  readonly pieces: readonly Piece[];
  readonly gaps: readonly Gap[];
  /** What the order wants in the span but the programme cannot give (no hours left, a ceiling). */
  readonly shortfall: Volume;
  /** The shortfall, part by part. */
  readonly lost?: readonly Lost[];
};

/** What a piece has given from its beginning up to `until`. */
export function pieceGives(piece: Piece, until: Instant): Volume {
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
