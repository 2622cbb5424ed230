/**
 * On which grid does a plan lie? Visits are planned on five-minute points of the clock, the same ones whenever it is
 * planned again, from the first point that is not past up to the end of the plan.
 */
import { type Duration, type Instant, instant, minutes, type Span } from '../base/instant.ts';
import { lastTime, nextTime, type TimeOfDay, type Zone } from '../base/zone.ts';

export const SLOT: Duration = minutes(5);

export const gridDown = (at: Instant): Instant => instant(Math.floor(at / SLOT) * SLOT);
export const gridUp = (at: Instant): Instant => instant(Math.ceil(at / SLOT) * SLOT);

export type Grid = {
  /** From slot 0 up to the end of the plan. */
  readonly span: Span;
  readonly slots: number;
  readonly at: (slot: number) => Instant;
  /** The last slot that is not after the moment; below 0 before the grid begins. */
  readonly slotDown: (at: Instant) => number;
};

/** The grid of a plan that begins at `from`. Empty when its end is not after it. */
export function gridFor(from: Instant, until: Instant): Grid {
  const first = gridUp(from);
  return {
    span: { from: first, until },
    slots: Math.max(0, Math.ceil((until - first) / SLOT)),
    at: (slot) => instant(first + slot * SLOT),
    slotDown: (at) => Math.floor((at - first) / SLOT),
  };
}

/** Slots in which no visit may be: those whose point lies in one of the spans. */
export function protectedSlots(grid: Grid, spans: readonly Span[]): Uint8Array {
  const marks = new Uint8Array(grid.slots);
  for (const span of spans) {
    const from = Math.max(0, Math.ceil((span.from - grid.span.from) / SLOT));
    const until = Math.min(grid.slots, Math.ceil((span.until - grid.span.from) / SLOT));
    if (from < until) marks.fill(1, from, until);
  }
  return marks;
}

/** [PL11] The feeding day in which a moment lies, from its start by local policy to the next: 23, 24 or 25 hours. */
export const feedingDay = (at: Instant, start: TimeOfDay, zone: Zone): Span => ({
  from: lastTime(start, at, zone),
  until: nextTime(start, at, zone),
});
