/** Which weight is an infant fed by: the birth weight in the first week, the current one, or the one that was given? */
import { assumed, choice, optional, quantity } from '../asking/asks.ts';
import type { Known } from '../declare.ts';
import { less, of } from '../exact.ts';

export const infantWeight = quantity(
  'W',
  'kg',
  ['0.3', '20', 'equation'],
  'weight',
  'wt',
  'w',
  'dosingWeight',
);

export const weightAsks = {
  weightKg: optional(infantWeight),
  birthWeightKg: optional(quantity('Wb', 'kg', ['0.3', '7', 'equation'], 'birthWeight', 'bw', 'birth')),
  currentWeightKg: optional(
    quantity('Wc', 'kg', ['0.3', '20', 'equation'], 'currentWeight', 'current', 'yesterdaysWeight', 'today'),
  ),
  ageDays: optional(quantity('d', 'd', ['0', '730', 'definition'], 'age', 'dayOfLife', 'days')),
  use: assumed(
    choice('use', {
      'birth-weight-in-first-week': ['auto'],
      birth: ['birthweight'],
      current: ['currentweight', 'today'],
    }),
    'birth-weight-in-first-week',
    'birth',
    'current',
  ),
};

type Weights = {
  readonly weightKg: Known | null;
  readonly birthWeightKg: Known | null;
  readonly currentWeightKg: Known | null;
  readonly ageDays: Known | null;
  readonly use: 'birth-weight-in-first-week' | 'birth' | 'current';
};

type Used = { readonly W: Known; readonly which: 'the-weight-given' | 'birth-weight' | 'current-weight' };
const A_WEEK = of(7);

/** In the first week the birth weight governs, unless the infant is heavier by then; afterwards the last weight. */
export function weightUsed(given: Weights): Used | null {
  const { weightKg, birthWeightKg: birth, currentWeightKg: current, ageDays: d, use } = given;
  if (weightKg !== null) return { W: weightKg, which: 'the-weight-given' };
  const byBirth = birth && ({ W: birth, which: 'birth-weight' } as const);
  const byCurrent = current && ({ W: current, which: 'current-weight' } as const);
  if (use !== 'birth-weight-in-first-week') return use === 'birth' ? byBirth : byCurrent;
  if (birth === null) return byCurrent;
  const isPastWeek = d !== null && less(A_WEEK, d);
  if (current === null) return isPastWeek ? null : byBirth;
  if (d === null) return null;
  return isPastWeek || less(birth, current) ? byCurrent : byBirth;
}
