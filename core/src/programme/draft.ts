/**
 * What does a regimen come to over whole days and windows, before the day's maximum and the span are laid over it?
 * What runs, what does not run and why, and what a day or window is found short of where it ends.
 */
import type { Span } from '../base/instant.ts';
import type { Rate, Volume } from '../base/volume.ts';
import type { Working } from '../base/working.ts';
import type { Held } from './holds.ts';
import type { GapReason, LossReason, Piece } from './programme.ts';
import { meeting, without } from './spans.ts';

/** A time at one rate. */
export type Stretch = Span & { readonly rate: Rate; readonly working: Working };

/** Where the order would have feed run and none does; `loses` is what would have run, if that is lost. */
export type Missed = Span & {
  readonly why: GapReason;
  readonly holds: readonly string[];
  readonly untilKnown: boolean;
  readonly loses: Pick<Piece, 'gives' | 'working'> | null;
};

/** What the order wants by the end of a day, a window or a feed and will not have been given then. */
export type Short = Span & {
  readonly volume: Volume;
  readonly why: LossReason;
  readonly working: Working;
};

export type Draft = {
  readonly pieces: readonly Piece[];
  readonly missed: readonly Missed[];
  readonly short: readonly Short[];
};

export const NO_FEED: Draft = { pieces: [], missed: [], short: [] };

export const drafts = (parts: readonly Draft[]): Draft => ({
  pieces: parts.flatMap((part) => part.pieces),
  missed: parts.flatMap((part) => part.missed),
  short: parts.flatMap((part) => part.short),
});

export const missedFor = (why: GapReason, spans: readonly Span[]): readonly Missed[] =>
  spans.map(({ from, until }) => ({ from, until, why, holds: [], untilKnown: true, loses: null }));

/** The held parts of some hours. Nothing is said to be lost: that depends on what the order is for. */
export const missedInHolds = (hours: readonly Span[], held: readonly Held[]): readonly Missed[] =>
  meeting(held, hours).map((one) => ({
    ...one,
    why: one.untilKnown ? 'hold' : 'hold-end-unknown',
    loses: null,
  }));

export const asPiece = ({ from, until, rate, working }: Stretch): Piece => ({
  from,
  until,
  gives: { kind: 'rate', rate },
  working,
});

/** Rates that are fixed, cut by holds: what the holds take is lost and said, and never made up. [PR2] [PR9] */
export function runAroundHolds(stretches: readonly Stretch[], held: readonly Held[]): Draft {
  const running = stretches.filter((one) => one.rate > 0);
  const missed = running.flatMap((one) =>
    missedInHolds([one], held).map((gap) => ({ ...gap, loses: asPiece(one) })),
  );
  const idle = missedFor(
    'nothing-to-set',
    without(
      stretches.filter((one) => one.rate <= 0),
      held,
    ),
  );
  return { pieces: without(running, held).map(asPiece), missed: [...missed, ...idle], short: [] };
}
