/**
 * How much of it is feed? An ordered amount means the mixture unless it says formula: at ¾ strength 75 mL of formula are
 * 100 mL of mixture. Exact; nothing is rounded on the way.
 */

import type { Fraction } from '../base/fraction.ts';
import { inMl, inMlPerHour, PER_ML, type Volume, volume } from '../base/volume.ts';
import { type Exact, of, ofFraction, over, rounded, times } from '../reckon/exact.ts';
import type { Of, Order, OrderedRate, OrderedVolume } from './order.ts';

/** Parts of feed in one of mixture; one where no feed is ordered yet, which a rule of its own stops. */
export const strengthOf = (order: Order): Exact =>
  order.feed === null ? of(1) : ofFraction(order.feed.strength);

const asMixture = (amount: Fraction, what: Of, strength: Exact): Exact =>
  what === 'mixture' ? ofFraction(amount) : over(ofFraction(amount), strength);

/** mL of mixture. The strength must not be zero. */
export const mixtureOf = (ordered: OrderedVolume, strength: Exact): Exact =>
  asMixture(inMl(ordered.volume), ordered.of, strength);

/** mL/h of mixture. The strength must not be zero. */
export const mixtureRateOf = (ordered: OrderedRate, strength: Exact): Exact =>
  asMixture(inMlPerHour(ordered.rate), ordered.of, strength);

/** mL as a volume, rounded down to the unit of the account where a strength such as 1/3 leaves a rest. */
export const asVolume = (ml: Exact): Volume =>
  volume(Number(rounded(times(ml, of(PER_ML)), of(1), 'down').n));
