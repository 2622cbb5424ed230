/** Which rates does an order name or lead to? Each as mL/h of mixture, with the field it stands in. */

import { inMlPerHour, type Rate } from '../base/volume.ts';
import { type Exact, ofFraction, over } from '../reckon/exact.ts';
import { mixtureOf, mixtureRateOf, strengthOf } from './mixture.ts';
import type { Of, Order, OrderedRate, Problem } from './order.ts';
import { inHours, oneFeed, windowOf } from './per-day.ts';

export type NamedRate = {
  readonly path: Problem['path'];
  /** What the rate is for: said, led to by a volume over a time, the most that is allowed, or the goal of its steps. */
  readonly what: 'ordered' | 'from-volume' | 'most' | 'goal';
  readonly rate: Exact;
  /** What the order says it is a rate of; `rate` itself is mixture. */
  readonly of: Of;
};

const named = (
  what: NamedRate['what'],
  field: string,
  ordered: OrderedRate | null,
  strength: Exact,
): readonly NamedRate[] =>
  ordered === null
    ? []
    : [{ path: ['regimen', field], what, rate: mixtureRateOf(ordered, strength), of: ordered.of }];

/** The goal of the steps; every rate before it is less. */
const goal = (advance: { readonly goal: Rate } | null, of: Of, strength: Exact): readonly NamedRate[] =>
  advance === null
    ? []
    : [
        {
          path: ['regimen', 'advance', 'goalMlPerHour'],
          what: 'goal',
          rate: mixtureRateOf({ rate: advance.goal, of }, strength),
          of,
        },
      ];

/** The rates at which a pump would run for hours. The strength must not be zero. */
export function runningRates(order: Order): readonly NamedRate[] {
  const { regimen } = order;
  const strength = strengthOf(order);
  switch (regimen?.kind) {
    case 'continuous':
      return [
        ...named('ordered', 'rateMlPerHour', regimen.rate, strength),
        ...goal(regimen.advance, regimen.rate.of, strength),
      ];
    case 'cyclic': {
      const window = inHours(windowOf(regimen));
      const fromVolume =
        regimen.rate !== null || regimen.volume === null || window.n === 0n
          ? []
          : [
              {
                path: ['regimen', 'volumeMl'],
                what: 'from-volume' as const,
                rate: over(mixtureOf(regimen.volume, strength), window),
                of: regimen.volume.of,
              },
            ];
      const of = regimen.rate?.of ?? regimen.volume?.of ?? 'mixture';
      return [
        ...named('ordered', 'rateMlPerHour', regimen.rate, strength),
        ...fromVolume,
        ...goal(regimen.advance, of, strength),
      ];
    }
    case 'volume-targeted':
      return [
        ...named('ordered', 'baseRateMlPerHour', regimen.baseRate, strength),
        ...named('most', 'mostRateMlPerHour', regimen.mostRate, strength),
        ...goal(regimen.advance, regimen.baseRate.of, strength),
      ];
    default:
      return [];
  }
}

/** The rate at which a pump gives one feed of an intermittent order. */
export function feedRate(order: Order): readonly NamedRate[] {
  const { regimen } = order;
  if (regimen?.kind !== 'intermittent' || regimen.by !== 'pump') return [];
  const rate = over(oneFeed(regimen, strengthOf(order)), inHours(regimen.lasts));
  return [{ path: ['regimen', 'volumeMl'], what: 'from-volume', rate, of: regimen.volume.of }];
}

export const exactRate = (rate: Rate): Exact => ofFraction(inMlPerHour(rate));
