/**
 * How did this number come about?
 * Every number that is shown carries its working: symbols, the numbers put in and where each came from, the result,
 * the rule. The result in the working is made from the value itself, so what is shown is what was returned.
 * No sentences here: `screen/` turns a working into words.
 */
import { type Fraction, fraction, type Rounding } from './fraction.ts';
import type { Duration, Instant } from './instant.ts';
import { inMl, inMlPerHour, type Rate, type Volume } from './volume.ts';

/** A value that can be written down: an exact number with its UCUM unit, a moment, a time, or a named choice. */
export type Shown =
  | { readonly kind: 'quantity'; readonly value: Fraction; readonly unit: string }
  | { readonly kind: 'instant'; readonly at: Instant }
  | { readonly kind: 'duration'; readonly lasts: Duration }
  | { readonly kind: 'choice'; readonly code: string };

/** How sure we are of a published value: `read` in its source, `secondary` (read in a text that cites it), … */
export type Provenance = 'read' | 'secondary' | 'from-memory' | 'common-practice' | 'facility' | 'derived';

/** Where a number or a rule came from. `source` is a number in docs/sources.md. */
export type Basis =
  | { readonly kind: 'order'; readonly path: string }
  | { readonly kind: 'feed-list'; readonly feed: string; readonly field: string }
  | {
      readonly kind: 'policy';
      readonly key: string;
      readonly source: string;
      readonly provenance: Provenance;
      readonly setBy: string;
      readonly setOn: string;
    }
  | { readonly kind: 'published'; readonly source: string; readonly provenance: Provenance }
  | { readonly kind: 'entry'; readonly id: string }
  | { readonly kind: 'asked'; readonly name: string }
  | { readonly kind: 'working'; readonly working: Working }
  | { readonly kind: 'arithmetic' };

export type WorkingInput = { readonly symbol: string; readonly is: Shown; readonly basis: Basis };

export type Working = {
  /** Symbols only, in the trade's notation: `V = r × t`. */
  readonly equation: string;
  readonly inputs: readonly WorkingInput[];
  readonly result: { readonly symbol: string; readonly is: Shown };
  /** What it was before rounding, where that is worth showing. */
  readonly unrounded?: Shown;
  readonly rounded?: { readonly way: Rounding; readonly step: Fraction };
  /** The rule of RULES.md that this number obeys: `PL4`. */
  readonly rule: string;
  /** Where the equation or the limit comes from. */
  readonly basis: Basis;
};

/** A value together with how it came about. */
export type Worked<T> = { readonly value: T; readonly working: Working };

export const shownVolume = (amount: Volume): Shown => ({ kind: 'quantity', value: inMl(amount), unit: 'mL' });
export const shownRate = (at: Rate): Shown => ({ kind: 'quantity', value: inMlPerHour(at), unit: 'mL/h' });
export const shownInstant = (at: Instant): Shown => ({ kind: 'instant', at });
export const shownDuration = (lasts: Duration): Shown => ({ kind: 'duration', lasts });
export const shownChoice = (code: string): Shown => ({ kind: 'choice', code });
export const shownNumber = (value: Fraction | number, unit = '1'): Shown => ({
  kind: 'quantity',
  value: typeof value === 'number' ? fraction(value) : value,
  unit,
});

export const input = (symbol: string, is: Shown, basis: Basis): WorkingInput => ({ symbol, is, basis });

type How = Omit<Working, 'result'> & { readonly symbol: string };

/** Joins a value with its working; `show` makes the result that the working prints out of the value itself. */
export function worked<T>(value: T, show: (value: T) => Shown, { symbol, ...how }: How): Worked<T> {
  return { value, working: { ...how, result: { symbol, is: show(value) } } };
}

export const ARITHMETIC: Basis = { kind: 'arithmetic' };
