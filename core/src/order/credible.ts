/**
 * Which numbers can be no order at all, whoever wrote them?
 * These are limits of sense, not of safety: past them stands a slip of the pen (a rate typed in the volume's place, grams
 * for kilograms), which is given back to be written again. What is safe is for local policy and lies far inside them.
 * Common practice, set wide: no feeding pump runs near the most, no tube takes it, no person weighs it.
 */
import { compare, type Fraction, fraction, ZERO } from '../base/fraction.ts';

export type Credible = {
  readonly unit: string;
  readonly least: Fraction;
  /** On where the least itself is still credible: no water, no hold. */
  readonly orLeast: boolean;
  readonly most: Fraction;
};

const over = (least: Fraction, most: number, unit: string): Credible => ({
  unit,
  least,
  orLeast: false,
  most: fraction(most),
});
const from = (least: Fraction, most: number, unit: string): Credible => ({
  ...over(least, most, unit),
  orLeast: true,
});

export const CREDIBLE = {
  rate: over(ZERO, 2_000, 'mL/h'),
  /** What a syringe or gravity can push through a tube: several times the fastest that is taught. */
  flow: over(ZERO, 100, 'mL/min'),
  feed: over(ZERO, 2_000, 'mL'),
  dose: over(ZERO, 1_000, 'mL'),
  doseOrNone: from(ZERO, 1_000, 'mL'),
  volumePerDay: over(ZERO, 20_000, 'mL/d'),
  volumePerDayOrNone: from(ZERO, 20_000, 'mL/d'),
  /** Between two steps or two flushes. */
  interval: from(fraction(1, 12), 336, 'h'),
  hoursPerDay: over(ZERO, 24, 'h'),
  minutes: over(ZERO, 1_440, 'min'),
  minutesOrNone: from(ZERO, 1_440, 'min'),
  // Over one is no slip of size but a misunderstanding, and a rule of its own says so.
  strength: from(fraction(1, 10), 100, '1'),
  share: over(ZERO, 1, '1'),
  weight: from(fraction(1, 5), 650, 'kg'),
  height: from(fraction(20), 280, 'cm'),
  french: over(ZERO, 60, '[Ch]'),
  // Wide on purpose: an energy density in the wrong unit is 1000 times off, and a rule of its own says so.
  density: over(ZERO, 10_000, 'kcal/mL'),
  energy: from(ZERO, 20_000, 'kcal'),
  protein: from(ZERO, 1_000, 'g'),
  // What happened is recorded however much it was: only what nobody can have measured is given back.
  amount: over(ZERO, 20_000, 'mL'),
  amountOrNone: from(ZERO, 20_000, 'mL'),
  ph: from(ZERO, 14, '[pH]'),
  length: from(ZERO, 300, 'cm'),
  result: from(ZERO, 100_000, 'the unit that stands beside it'),
} as const satisfies Record<string, Credible>;

export type CredibleKind = keyof typeof CREDIBLE;

/** The longest lists that are read: beyond them a list was made by mistake. */
export const MOST_ITEMS = {
  times: 96,
  meals: 24,
  given: 12,
  medicines: 60,
  modules: 20,
  holds: 200,
  lumens: 6,
  otherEnergy: 20,
  identifiers: 20,
  allergies: 50,
  additives: 20,
  confirmations: 60,
} as const;

/** Whether a number can have been meant. */
export const isCredible = (value: Fraction, { least, orLeast, most }: Credible): boolean =>
  compare(value, most) <= 0 && (orLeast ? compare(value, least) >= 0 : compare(value, least) > 0);
