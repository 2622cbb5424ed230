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

const upTo = (most: number, unit: string): Credible => ({
  unit,
  least: ZERO,
  orLeast: false,
  most: fraction(most),
});
const orNone = (credible: Credible): Credible => ({ ...credible, orLeast: true });

export const CREDIBLE = {
  rate: upTo(2_000, 'mL/h'),
  volume: upTo(5_000, 'mL'),
  volumeOrNone: orNone(upTo(5_000, 'mL')),
  volumePerDay: upTo(20_000, 'mL/d'),
  volumePerDayOrNone: orNone(upTo(20_000, 'mL/d')),
  hours: upTo(336, 'h'),
  hoursPerDay: upTo(24, 'h'),
  minutes: upTo(1_440, 'min'),
  minutesOrNone: orNone(upTo(1_440, 'min')),
  strength: upTo(100, '1'),
  share: { ...upTo(1, '1') },
  weight: { unit: 'kg', least: fraction(2, 10), orLeast: true, most: fraction(650) },
  height: { unit: 'cm', least: fraction(20), orLeast: true, most: fraction(280) },
  french: upTo(60, '[Ch]'),
  // Wide on purpose: an energy density in the wrong unit is 1000 times off, and a rule of its own says so.
  density: upTo(10_000, 'kcal/mL'),
  energy: orNone(upTo(20_000, 'kcal')),
  protein: orNone(upTo(1_000, 'g')),
} as const satisfies Record<string, Credible>;

export type CredibleKind = keyof typeof CREDIBLE;

/** Whether a number can have been meant. */
export const isCredible = (value: Fraction, { least, orLeast, most }: Credible): boolean =>
  compare(value, most) <= 0 && (orLeast ? compare(value, least) >= 0 : compare(value, least) > 0);
