/** How much feed is needed up to a moment, from one moment to another, and when has so much been given? */
import { type Instant, later, overlap, type Span } from '../../base/instant.ts';
import { add, NOTHING, subtract, type Volume } from '../../base/volume.ts';
import {
  ARITHMETIC,
  input,
  shownDuration,
  shownRate,
  shownVolume,
  type Worked,
  type WorkingInput,
  worked,
} from '../../base/working.ts';
import { type NeedCurve, needCurve } from '../../programme/need-curve.ts';
import type { Piece, Programme } from '../../programme/programme.ts';

/** A programme made ready to be asked many times. */
export type Need = { readonly programme: Programme; readonly curve: NeedCurve };

export const needOf = (programme: Programme): Need => ({ programme, curve: needCurve(programme) });

export const needBetween = ({ curve }: Need, { from, until }: Span): Volume =>
  until <= from ? NOTHING : subtract(curve.upTo(until), curve.upTo(from));

/** The first ms at which `wanted` has been given since `from`; null if it is not given within the programme. */
export function whenGiven({ curve }: Need, from: Instant, wanted: Volume): Instant | null {
  const at = curve.reaches(add(curve.upTo(from), wanted));
  return at === null ? null : later(at, from);
}

/** The last moment, not after `by`, at which feed runs; null when none does between `from` and then. */
export function lastFed({ programme }: Need, { from, until }: Span): Instant | null {
  const piece = programme.pieces.findLast((one) => one.from < until && one.until > from);
  return piece === undefined ? null : piece.until < until ? piece.until : until;
}

const MOST_TERMS = 4;

function termOf(piece: Piece, span: Span): readonly WorkingInput[] {
  const shared = overlap(piece, span);
  if (shared === null) return [];
  const basis = { kind: 'working', working: piece.working } as const;
  const { gives } = piece;
  return gives.kind === 'rate'
    ? [
        input('r', shownRate(gives.rate), basis),
        input('t', shownDuration((shared.until - shared.from) as never), ARITHMETIC),
      ]
    : [input('V', shownVolume(gives.volume), basis)];
}

/** The same, with how it comes about: each rate with the time that it runs. */
export function workedNeed(need: Need, span: Span): Worked<Volume> {
  const inputs = need.programme.pieces.flatMap((piece) => termOf(piece, span));
  const rates = inputs.filter((one) => one.symbol === 'r').length;
  const terms = inputs.length - rates;
  const sum = terms > 1 ? 'Σ ' : '';
  return worked(needBetween(need, span), shownVolume, {
    symbol: 'V_need',
    equation: `V_need = ${sum}${rates === 0 ? 'V' : 'r × t'}`,
    inputs: terms > MOST_TERMS ? [] : inputs,
    rule: 'PL16',
    basis: ARITHMETIC,
  });
}
