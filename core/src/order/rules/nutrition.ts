/** [OR37] [OR38] [OR39] [OR45] [OR46] What does a day of it come to, against limits and needs? */
import type { Fraction } from '../../base/fraction.ts';
import { inMl, NOTHING } from '../../base/volume.ts';
import type { Feed } from '../../feeds/feed.ts';
import {
  compare,
  type Exact,
  minus,
  of,
  ofFraction,
  over,
  plus,
  times,
  toFraction,
} from '../../reckon/exact.ts';
import { type OrderedDay, orderedPerDay } from '../daily.ts';
import { strengthOf } from '../mixture.ts';
import type { Order, Problem } from '../order.ts';
import { mixturePerDay, type Step } from '../per-day.ts';
import { problem } from '../problem.ts';
import { type Review, restsOn, silent } from '../review.ts';

const isAdvancing = ({ regimen }: Order): boolean => (regimen?.advance ?? null) !== null;

/** The day as written and at the goal of the steps: the same where the order does not step. */
type Days = Readonly<Record<'ordered' | 'goal', OrderedDay>>;

function daysOf({ order, policy, at }: Review): Days {
  const ordered = orderedPerDay(order, policy, at);
  return { ordered, goal: isAdvancing(order) ? orderedPerDay(order, policy, at, 'goal') : ordered };
}

const FLUID_PARTS = ['mixture', 'flushes', 'medicines', 'medicineWater', 'moduleWater'] as const;

/** [OR37] As written, and where that is within the limit, at the goal of its steps. */
function fluid(order: Order, days: Days): readonly Problem[] {
  const limit = order.fluidLimitPerDay;
  if (limit === null) return [];
  const step = (['ordered', 'goal'] as const).find((one) => days[one].fluid.value > limit);
  if (step === undefined) return [];
  const day = days[step];
  const parts = FLUID_PARTS.map((part) => [part, inMl(day[part]?.value ?? NOTHING)] as const);
  return [
    problem('order/over-fluid-limit', ['fluidLimitMlPerDay'], {
      what: step,
      value: inMl(day.fluid.value),
      limit: inMl(limit),
      unit: 'mL',
      parts: { ...Object.fromEntries(parts), intravenous: inMl(order.intravenousPerDay) },
      unset: day.unset,
    }),
  ];
}

const added = (amounts: readonly Fraction[]): Exact => plus(...amounts.map(ofFraction));
const timesADay = (amount: Fraction, count: number): Exact => times(ofFraction(amount), of(count));

type Intake = { readonly feed: Exact; readonly modules: Exact; readonly other: Exact; readonly total: Exact };

const together = (feed: Exact, modules: Exact, other: Exact): Intake => ({
  feed,
  modules,
  other,
  total: plus(feed, modules, other),
});

/** mL of feed a day, less its water of dilution; null where the order does not say. */
function formulaPerDay(order: Order, step: Step): Exact | null {
  const strength = strengthOf(order);
  const mixture = order.regimen === null ? null : mixturePerDay(order.regimen, strength, step);
  return mixture === null ? null : times(mixture.ml, strength);
}

/** All energy that is running, from wherever it comes. */
function energyPerDay(order: Order, feed: Feed, step: Step): Intake | null {
  const formula = formulaPerDay(order, step);
  return formula === null
    ? null
    : together(
        times(formula, ofFraction(feed.energyKcalPerMl)),
        plus(...order.modules.map((module) => timesADay(module.energyKcal, module.times.length))),
        added(order.otherEnergy.map((other) => other.kcalPerDay)),
      );
}

function proteinPerDay(order: Order, feed: Feed, step: Step): Intake | null {
  const formula = formulaPerDay(order, step);
  return formula === null
    ? null
    : together(
        times(formula, ofFraction(feed.proteinGPerMl)),
        plus(...order.modules.map((module) => timesADay(module.proteinG, module.times.length))),
        of(0),
      );
}

const partsOf = ({ feed, modules, other }: Intake) => ({
  feed: toFraction(feed),
  modules: toFraction(modules),
  other: toFraction(other),
});

const REFEEDING = 'refeeding.start.kcal-per-kg';

const unchecked = (lacks: string, path: Problem['path'], data: Problem['data'] = {}): readonly Problem[] => [
  problem('order/refeeding-unchecked', path, { lacks, ...data }),
];

/** [OR38] Under refeeding caution the energy of the first day, all of it, against what local policy starts with. */
function refeeding({ order, feed, local }: Review): readonly Problem[] {
  if (!order.refeedingCaution) return [];
  const step: Step = isAdvancing(order) ? 'start' : 'ordered';
  const energy = feed === null ? null : energyPerDay(order, feed, step);
  // What the order lacks is already named by [OR2] and [OR12].
  if (energy === null) return [];
  const weight = order.patient.dosingWeight;
  if (weight === null) return unchecked('dosing-weight', ['patient', 'dosingWeight']);
  const perKg = local(REFEEDING);
  if (!perKg.known) return unchecked('policy', ['policy', REFEEDING], { key: REFEEDING, why: perKg.why });
  const limit = times(ofFraction(perKg.value), ofFraction(weight.kg));
  if (compare(energy.total, limit) <= 0) return [];
  const extreme = local('refeeding.start.extreme.kcal-per-kg');
  return [
    problem('order/over-refeeding-ceiling', ['refeedingCaution'], {
      what: step,
      value: toFraction(energy.total),
      limit: toFraction(limit),
      unit: 'kcal/d',
      perKg: perKg.value,
      weightKg: weight.kg,
      weighedOn: weight.on,
      parts: partsOf(energy),
      /** In extreme risk less; the order does not say how great the risk is. */
      extremePerKg: extreme.known ? extreme.value : null,
      ...restsOn(REFEEDING, perKg.basis),
    }),
  ];
}

const NEEDS = [
  ['energyKcalPerDay', 'energy', 'kcal/d', energyPerDay],
  ['proteinGPerDay', 'protein', 'g/d', proteinPerDay],
] as const;

/** [OR45] Energy and protein, at the goal of the steps, further from the need than local policy's tolerance. */
function needs({ order, feed, local }: Review): readonly Problem[] {
  const key = 'account.tolerance.fraction';
  const tolerance = local(key);
  const wanted = NEEDS.filter(([field]) => order.needs[field] !== null);
  if (feed === null || wanted.length === 0) return [];
  if (!tolerance.known) return [silent(key, tolerance.why, 'OR45')];
  return wanted.flatMap(([field, what, unit, perDay]) => {
    const need = order.needs[field];
    const intake = perDay(order, feed, 'goal');
    if (need === null || intake === null) return [];
    const apart = minus(intake.total, ofFraction(need));
    const allowed = times(ofFraction(tolerance.value), ofFraction(need));
    const below = compare(apart, of(0)) < 0;
    const isNear = compare(below ? minus(of(0), apart) : apart, allowed) <= 0;
    return isNear
      ? []
      : [
          problem('order/away-from-needs', ['needs', field], {
            what,
            direction: below ? 'below' : 'above',
            value: toFraction(intake.total),
            limit: need,
            unit,
            parts: partsOf(intake),
            ...restsOn(key, tolerance.basis),
          }),
        ];
  });
}

/** [OR46] Water: in the feed, of its dilution, by the tube, into a vein. What is in medicines is not known. */
function water({ order, feed }: Review, { goal: day }: Days): readonly Problem[] {
  const need = order.needs.waterPerDay;
  const formula = formulaPerDay(order, 'goal');
  if (need === null || feed === null || formula === null) return [];
  const dilution = minus(over(formula, strengthOf(order)), formula);
  const parts = {
    feed: times(formula, ofFraction(feed.waterFraction)),
    dilution,
    flushes: ofFraction(inMl(day.flushes.value)),
    medicineWater: ofFraction(inMl(day.medicineWater.value)),
    moduleWater: ofFraction(inMl(day.moduleWater.value)),
    intravenous: ofFraction(inMl(order.intravenousPerDay)),
  };
  const total = plus(...Object.values(parts));
  if (compare(total, ofFraction(inMl(need))) >= 0) return [];
  return [
    problem('order/water-under-needs', ['needs', 'waterMlPerDay'], {
      value: toFraction(total),
      limit: inMl(need),
      unit: 'mL/d',
      parts: Object.fromEntries(Object.entries(parts).map(([part, amount]) => [part, toFraction(amount)])),
    }),
  ];
}

/** Water around medicines that neither the order nor local policy says: the day's totals lack it. */
const unset = ({ local }: Review, { ordered }: Days): readonly Problem[] =>
  ordered.unset.map((key) => {
    const answer = local(key);
    return silent(key, answer.known ? 'not-set' : answer.why, 'OR57');
  });

export function nutrition(review: Review): readonly Problem[] {
  const days = daysOf(review);
  return [
    ...fluid(review.order, days),
    ...refeeding(review),
    ...needs(review),
    ...water(review, days),
    ...unset(review, days),
  ];
}
