/**
 * How fast may feed run where the programme, not the order, chooses the rate? As fast as the least of what local policy,
 * the order and the patient's weight allow. A ceiling that nobody states is not known: then nothing is raised. [PR11]
 */
import { type Fraction, fraction, times } from '../base/fraction.ts';
import { type Rate, rate } from '../base/volume.ts';
import { type Basis, input, shownNumber, shownRate, type Worked, worked } from '../base/working.ts';
import type { Lumen, Order } from '../order/order.ts';
import { lumenNamed } from '../order/review.ts';
import type { PolicyKey } from '../policy/keys.ts';
import type { Frame } from './frame.ts';

export const feedLumen = (order: Order): Lumen | null => lumenNamed(order, order.access?.feedBy ?? null);

type Asked = {
  /** Whether lost volume is being made up, for which policy has a ceiling of its own. */
  readonly catchUp: boolean;
  /** What the regimen itself names as the most. */
  readonly most: Worked<Rate> | null;
};

type Limit = { readonly symbol: string; readonly rate: Rate; readonly basis: Basis };

type RateKey = Extract<PolicyKey, `ceiling.rate.${string}` | 'catch-up.ceiling'>;

/** By where the tip lies; where nobody says, both hold. */
function keysFor({ order }: Frame, { catchUp }: Asked): readonly Exclude<RateKey, 'ceiling.rate.per-kg'>[] {
  const tip = feedLumen(order)?.tip ?? null;
  return [
    ...(catchUp ? (['catch-up.ceiling'] as const) : []),
    ...(tip === null || tip === 'gastric' ? (['ceiling.rate.gastric'] as const) : []),
    ...(tip === 'gastric' ? [] : (['ceiling.rate.jejunal'] as const)),
    ...(order.regimen?.kind === 'cyclic' ? (['ceiling.rate.cyclic'] as const) : []),
  ];
}

function policyLimits(frame: Frame, asked: Asked): readonly Limit[] {
  return keysFor(frame, asked).flatMap((key) => {
    const answer = frame.local(key);
    return answer.known ? [{ symbol: `r_${key}`, rate: answer.value, basis: answer.basis }] : [];
  });
}

function orderLimits({ order }: Frame, { most }: Asked): readonly Limit[] {
  const basis: Basis = { kind: 'order', path: 'mostRate' };
  return [
    ...(order.mostRate === null ? [] : [{ symbol: 'r_order', rate: order.mostRate, basis }]),
    ...(most === null
      ? []
      : [
          {
            symbol: 'r_regimen',
            rate: most.value,
            basis: { kind: 'working', working: most.working },
          } as const,
        ]),
  ];
}

const HUNDREDTHS: Fraction = fraction(100);

/** mL/kg/h × kg, down to 0.01 mL/h; 'not-known' where policy has one and the order no weight to work it from. */
function weightLimit(frame: Frame): Limit | 'none' | 'not-known' {
  const perKg = frame.local('ceiling.rate.per-kg');
  if (!perKg.known) return 'none';
  const weight = frame.order.patient.dosingWeight;
  if (weight === null) return 'not-known';
  const exact = times(times(perKg.value, weight.kg), HUNDREDTHS);
  const limit = worked(rate(Math.floor(exact.n / exact.d)), shownRate, {
    equation: 'r_weight = q × w',
    inputs: [
      input('q', shownNumber(perKg.value, 'mL/kg/h'), perKg.basis),
      input('w', shownNumber(weight.kg, 'kg'), { kind: 'order', path: 'patient.dosingWeight' }),
    ],
    symbol: 'r_weight',
    rounded: { way: 'down', step: fraction(1, 100) },
    rule: 'PR11',
    basis: perKg.basis,
  });
  return { symbol: 'r_weight', rate: limit.value, basis: { kind: 'working', working: limit.working } };
}

/** The least ceiling that anybody states; null where nobody does, or where one that is stated cannot be worked. */
export function leastCeiling(frame: Frame, asked: Asked): Worked<Rate> | null {
  const byWeight = weightLimit(frame);
  if (byWeight === 'not-known') return null;
  const limits = [
    ...policyLimits(frame, asked),
    ...orderLimits(frame, asked),
    ...(byWeight === 'none' ? [] : [byWeight]),
  ];
  const least = limits.reduce<Limit | null>((a, b) => (a === null || b.rate < a.rate ? b : a), null);
  if (least === null) return null;
  return worked(least.rate, shownRate, {
    equation: `r_most = min(${limits.map((limit) => limit.symbol).join(', ')})`,
    inputs: limits.map((limit) => input(limit.symbol, shownRate(limit.rate), limit.basis)),
    symbol: 'r_most',
    rule: 'PR11',
    basis: least.basis,
  });
}
