/**
 * How much mixture is meant? An ordered amount means the mixture unless it says "of formula": then the mixture that holds
 * so much formula is the formula divided by the strength. [PR16]
 */
import { type Fraction, ONE } from '../base/fraction.ts';
import { inMlPerHour, ml, mlPerHour, type Rate, rate, type Volume, volume } from '../base/volume.ts';
import {
  ARITHMETIC,
  type Basis,
  input,
  type Shown,
  shownNumber,
  shownRate,
  shownVolume,
  type Worked,
  worked,
} from '../base/working.ts';
import type { Of } from '../order/order.ts';
import type { Frame } from './frame.ts';

/** Past these no mixture was meant: a strength of next to nothing makes a swimming pool out of a bottle. */
const MOST_VOLUME = ml(20_000);
const MOST_RATE = mlPerHour(20_000);

const orderBasis = (path: string): Basis => ({ kind: 'order', path });

/** floor(amount / strength), or null where the strength or the answer makes no sense. */
function divided(amount: number, strength: Fraction, step: number, most: number): number | null {
  if (strength.n <= 0 || strength.d <= 0) return null;
  const whole = (BigInt(amount) * BigInt(strength.d)) / (BigInt(strength.n) * BigInt(step));
  const floor = whole * BigInt(step);
  return floor <= BigInt(most) ? Number(floor) : null;
}

const strengthOf = ({ order }: Frame): Fraction => order.feed?.strength ?? ONE;

/** A quantity just as the order says it. */
export const asOrdered = <Q>(value: Q, show: (value: Q) => Shown, symbol: string, path: string): Worked<Q> =>
  worked(value, show, {
    equation: symbol,
    inputs: [input(symbol, show(value), orderBasis(path))],
    symbol,
    rule: 'PR1',
    basis: orderBasis(path),
  });

/** The mixture's volume, down to the unit; null where the strength makes no sense of it. */
export function mixtureVolume(frame: Frame, ordered: Worked<Volume>, of: Of): Worked<Volume> | null {
  if (ordered.value < 0) return null;
  if (of === 'mixture') return ordered;
  const mixture = divided(ordered.value, strengthOf(frame), 1, MOST_VOLUME);
  if (mixture === null) return null;
  return worked(volume(mixture), shownVolume, {
    equation: 'V = V_formula / s',
    inputs: [
      input('V_formula', shownVolume(ordered.value), { kind: 'working', working: ordered.working }),
      input('s', shownNumber(strengthOf(frame)), orderBasis('feed.strength')),
    ],
    symbol: 'V',
    rule: 'PR16',
    basis: ARITHMETIC,
  });
}

/** The mixture's rate. As ordered it is left as it is; worked from formula it goes down to what the pump can be set to. */
export function mixtureRate(frame: Frame, ordered: Worked<Rate>, of: Of): Worked<Rate> | null {
  if (ordered.value < 0) return null;
  if (of === 'mixture') return ordered;
  const step = frame.pumpStep;
  const mixture = divided(ordered.value, strengthOf(frame), step.rate, MOST_RATE);
  if (mixture === null) return null;
  return worked(rate(mixture), shownRate, {
    equation: 'r = r_formula / s',
    inputs: [
      input('r_formula', shownRate(ordered.value), { kind: 'working', working: ordered.working }),
      input('s', shownNumber(strengthOf(frame)), orderBasis('feed.strength')),
      input('r_step', shownRate(step.rate), step.basis),
    ],
    symbol: 'r',
    rounded: { way: 'down', step: inMlPerHour(step.rate) },
    rule: 'PR16',
    basis: ARITHMETIC,
  });
}
