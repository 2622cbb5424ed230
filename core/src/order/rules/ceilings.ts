/** [OR31] [OR32] [OR33] [OR34] [OR35] [OR36] [OR55] Is it more, or faster, than local policy lets pass unasked? */
import { fraction } from '../../base/fraction.ts';
import { after, duration, type Instant, MINUTE } from '../../base/instant.ts';
import { inMl, inMlPerHour, PER_ML, PER_ML_PER_HOUR } from '../../base/volume.ts';
import type { Basis } from '../../base/working.ts';
import type { PolicyKey } from '../../policy/keys.ts';
import {
  compare,
  type Exact,
  minus,
  of,
  ofFraction,
  over,
  rounded,
  times,
  toFraction,
} from '../../reckon/exact.ts';
import { strengthOf } from '../mixture.ts';
import type { Of, Order, Problem, Regimen } from '../order.ts';
import { oneFeed } from '../per-day.ts';
import { type OrderProblemCode, problem } from '../problem.ts';
import { feedRate, type NamedRate, runningRates } from '../rates.ts';
import { isPostPyloric, type Review, restsOn, silent } from '../review.ts';

/** What one may ask without being asked, and who says so; in the unit of what is compared with it. */
type Ceiling = {
  readonly code: OrderProblemCode;
  readonly key: PolicyKey;
  readonly basis: Basis;
  readonly limit: Exact;
  readonly says?: Problem['data'];
};

/** What a group of policy keys comes to: ceilings, or what stands in the way of them. */
type Asked = { readonly ceilings: readonly Ceiling[]; readonly problems: readonly Problem[] };

type RateKey = 'ceiling.rate.gastric' | 'ceiling.rate.jejunal' | 'ceiling.rate.cyclic';

/** By the tip of the lumen that is fed into; a cyclic feed has a ceiling of its own besides. */
const rateKeys = ({ order, feedLumen }: Review): readonly RateKey[] => [
  isPostPyloric(feedLumen) ? 'ceiling.rate.jejunal' : 'ceiling.rate.gastric',
  ...(order.regimen?.kind === 'cyclic' ? (['ceiling.rate.cyclic'] as const) : []),
];

type PerKgKey = 'ceiling.rate.per-kg' | 'ceiling.bolus.per-kg';

/** Per kg of dosing weight. A ceiling that lacks its weight cannot be checked, and that is said. */
function perKg({ order, local }: Review, key: PerKgKey, code: OrderProblemCode): Asked {
  const answer = local(key);
  if (!answer.known) return { ceilings: [], problems: [] };
  const weight = order.patient.dosingWeight;
  if (weight === null) {
    const says = { ...restsOn(key, answer.basis), lacks: 'dosing-weight' };
    return { ceilings: [], problems: [problem('order/cannot-check', ['patient', 'dosingWeight'], says)] };
  }
  const limit = times(ofFraction(answer.value), ofFraction(weight.kg));
  const says = { perKg: answer.value, weightKg: weight.kg, weighedOn: weight.on };
  return { ceilings: [{ code, key, basis: answer.basis, limit, says }], problems: [] };
}

/** Where nothing limits an amount, each key that could have is named. */
const orSilent = (review: Review, asked: Asked, keys: readonly PolicyKey[], rule: string): Asked =>
  asked.ceilings.length > 0 || asked.problems.length > 0
    ? asked
    : {
        ceilings: [],
        problems: keys.flatMap((key) => {
          const answer = review.local(key);
          return answer.known ? [] : [silent(key, answer.why, rule)];
        }),
      };

function rateCeilings(review: Review): Asked {
  const keys = rateKeys(review);
  const flat = keys.flatMap((key): readonly Ceiling[] => {
    const answer = review.local(key);
    if (!answer.known) return [];
    const limit = ofFraction(inMlPerHour(answer.value));
    return [{ code: 'order/rate-over-local', key, basis: answer.basis, limit }];
  });
  const byWeight = perKg(review, 'ceiling.rate.per-kg', 'order/rate-over-per-kg');
  const asked = { ceilings: [...flat, ...byWeight.ceilings], problems: byWeight.problems };
  return orSilent(review, asked, [...keys, 'ceiling.rate.per-kg'], 'OR31');
}

function feedCeilings(review: Review): Asked {
  const flat = (
    [
      ['ceiling.bolus', 'order/bolus-over-local'],
      ['ceiling.bolus.ask', 'order/bolus-over-usual'],
    ] as const
  ).flatMap(([key, code]): readonly Ceiling[] => {
    const answer = review.local(key);
    return answer.known ? [{ code, key, basis: answer.basis, limit: ofFraction(inMl(answer.value)) }] : [];
  });
  const byWeight = perKg(review, 'ceiling.bolus.per-kg', 'order/bolus-over-per-kg');
  const asked = { ceilings: [...flat, ...byWeight.ceilings], problems: byWeight.problems };
  return orSilent(review, asked, ['ceiling.bolus', 'ceiling.bolus.ask', 'ceiling.bolus.per-kg'], 'OR33');
}

const overCeiling = (
  value: Exact,
  ceiling: Ceiling,
  path: Problem['path'],
  unit: string,
  says: Problem['data'],
): Problem =>
  problem(ceiling.code, path, {
    value: toFraction(value),
    limit: toFraction(ceiling.limit),
    unit,
    ...restsOn(ceiling.key, ceiling.basis),
    ...ceiling.says,
    ...says,
  });

/** The ceilings that are passed. */
function passed(value: Exact, ceilings: readonly Ceiling[]): readonly Ceiling[] {
  const above = ceilings.filter(({ limit }) => compare(value, limit) > 0);
  // Whoever confirms more than the most has confirmed more than the usual.
  return above.some(({ code }) => code === 'order/bolus-over-local')
    ? above.filter(({ code }) => code !== 'order/bolus-over-usual')
    : above;
}

/** When the steps would first pass a limit, if each were confirmed as soon as it may be. */
function passesAt(order: Order, limit: Exact, per: number, what: Of): Instant | null {
  const advance = order.regimen?.advance ?? null;
  if (advance === null || order.startsAt === null || advance.step <= 0) return null;
  const asOrdered = what === 'mixture' ? limit : times(limit, strengthOf(order));
  const room = minus(times(asOrdered, of(per)), of(advance.start));
  const steps = Number(rounded(over(room, of(advance.step)), of(1), 'down').n) + 1;
  const stepsToGoal = Math.ceil((advance.goal - advance.start) / advance.step);
  return after(order.startsAt, duration(Math.max(0, Math.min(steps, stepsToGoal)) * advance.every));
}

function rates(review: Review): readonly Problem[] {
  const { order } = review;
  const named: readonly NamedRate[] = [
    ...runningRates(order),
    // Into the stomach a feed in portions is held against the ceilings of portions.
    ...(isPostPyloric(review.feedLumen) ? feedRate(order) : []),
  ];
  if (named.length === 0) return [];
  const { ceilings, problems } = rateCeilings(review);
  const found = named.flatMap(({ path, what, rate, of: amountOf }) =>
    passed(rate, ceilings).map((ceiling) =>
      overCeiling(rate, ceiling, path, 'mL/h', {
        what,
        ...(what === 'goal' ? { passesAt: passesAt(order, ceiling.limit, PER_ML_PER_HOUR, amountOf) } : {}),
      }),
    ),
  );
  return [...found, ...problems];
}

type Feeds = Extract<Regimen, { kind: 'intermittent' | 'bolus' }>;

function portions(review: Review, regimen: Feeds): readonly Problem[] {
  const { order } = review;
  const { ceilings, problems } = feedCeilings(review);
  const strength = strengthOf(order);
  const ordered = oneFeed(regimen, strength);
  const atGoal = oneFeed(regimen, strength, 'goal');
  const found = [
    ...passed(ordered, ceilings).map((ceiling) =>
      overCeiling(ordered, ceiling, ['regimen', 'volumeMl'], 'mL', { what: 'ordered' }),
    ),
    ...(regimen.advance === null ? [] : passed(atGoal, ceilings)).map((ceiling) =>
      overCeiling(atGoal, ceiling, ['regimen', 'advance', 'goalMl'], 'mL', {
        what: 'goal',
        passesAt: passesAt(order, ceiling.limit, PER_ML, regimen.volume.of),
      }),
    ),
  ];
  return [...found, ...problems];
}

/** [OR36] */
function tooFast({ local }: Review, { lasts }: Feeds): readonly Problem[] {
  const key = 'bolus.least-duration';
  const least = local(key);
  if (!least.known) return [silent(key, least.why, 'OR36')];
  // Left open by the order, local policy alone says how long one takes.
  return lasts === null || lasts >= least.value
    ? []
    : [
        problem('order/faster-than-least', ['regimen', 'minutes'], {
          value: fraction(lasts, MINUTE),
          limit: fraction(least.value, MINUTE),
          unit: 'min',
          ...restsOn(key, least.basis),
        }),
      ];
}

export function ceilings(review: Review): readonly Problem[] {
  const { regimen } = review.order;
  const inPortions = regimen?.kind === 'intermittent' || regimen?.kind === 'bolus';
  return [
    ...rates(review),
    ...(inPortions ? [...portions(review, regimen), ...tooFast(review, regimen)] : []),
  ];
}
