/**
 * What does the feeding day come to? What was received since it began, and what the plan still gives until it ends: the
 * feed in the mixture, its energy and protein, and all water. Worked once from volumes, on exact fractions.
 */
import { type Fraction, fraction, ONE } from '../base/fraction.ts';
import { earlier, later, type Span } from '../base/instant.ts';
import { add, inMl, NOTHING, share, subtract, sum, type Volume } from '../base/volume.ts';
import {
  ARITHMETIC,
  type Basis,
  input,
  shownNumber,
  shownVolume,
  type Worked,
  type WorkingInput,
  worked,
} from '../base/working.ts';
import { timesWithin } from '../base/zone.ts';
import type { Of, Order } from '../order/order.ts';
import type { Policy } from '../policy/policy.ts';
import { needUpTo } from '../programme/programme.ts';
import { programmeOf } from '../programme/programme-of.ts';
import { ofFraction, plus, times, toFraction } from '../reckon/exact.ts';
import type { Course } from './course.ts';
import type { DayTotals, Task } from './plan.ts';
import { taskId } from './tasks/due.ts';

const RECEIVED: Basis = { kind: 'entry', id: 'standing' };
const of = (one: Worked<unknown>): Basis => ({ kind: 'working', working: one.working });

const totalOf = (
  symbol: string,
  value: Volume,
  equation: string,
  inputs: readonly WorkingInput[],
): Worked<Volume> =>
  worked(value, shownVolume, {
    symbol,
    equation: `${symbol} = ${equation}`,
    inputs,
    rule: 'PL22',
    basis: ARITHMETIC,
  });

/** What the plan is known to give from now to the end of the day. */
export type StillToCome = {
  readonly mixture: Volume;
  /** Every task up to the end of the day whose volume is water or is given in water. */
  readonly tasks: readonly Task[];
  /** From a second bag. */
  readonly byPump: Volume;
};

function mixtureOf({ standing }: Course, { mixture }: StillToCome): Worked<Volume> {
  return totalOf('V_mixture', add(standing.receivedToday, mixture), 'V_received + V_to_come', [
    input('V_received', shownVolume(standing.receivedToday), RECEIVED),
    input('V_to_come', shownVolume(mixture), ARITHMETIC),
  ]);
}

function formulaOf({ ordered }: Course, mixture: Worked<Volume>): Worked<Volume> {
  return totalOf('V_formula', share(mixture.value, ordered.strength), 'V_mixture × s', [
    input('V_mixture', shownVolume(mixture.value), of(mixture)),
    input('s', shownNumber(ordered.strength), { kind: 'order', path: 'feed.strength' }),
  ]);
}

type Dose = { readonly name: string; readonly energyKcal: Fraction; readonly proteinG: Fraction };

/** Modules of the day that were given already or are still to come. */
function dosesOf(course: Course, { tasks }: StillToCome): readonly Dose[] {
  const { order, day, zone, begins, standing } = course;
  if (order.modules.length === 0) return [];
  const toCome = new Set(tasks.map((one) => one.id));
  return order.modules.flatMap((module) =>
    timesWithin(module.times, later(day.from, begins), day.until, zone)
      .map((at) => taskId({ kind: 'give-module', about: module.name }, at))
      .filter((id) => standing.done.has(id) || toCome.has(id))
      .map(() => module),
  );
}

type PerMl = {
  readonly symbol: string;
  readonly field: 'energyKcalPerMl' | 'proteinGPerMl';
  readonly unit: string;
};

/** [PL23] Volume × density, and what modules bring, exactly; rounded only where it is shown. */
function nutrient(
  { feed }: Course,
  formula: Worked<Volume>,
  { symbol, field, unit }: PerMl,
  doses: readonly { readonly name: string; readonly brings: Fraction }[],
): Worked<Fraction> {
  const fromFeed = times(ofFraction(inMl(formula.value)), ofFraction(feed[field]));
  const total = toFraction(plus(fromFeed, ...doses.map((one) => ofFraction(one.brings))));
  return worked(total, (value) => shownNumber(value, unit), {
    symbol,
    equation: doses.length === 0 ? `${symbol} = V_formula × d` : `${symbol} = V_formula × d + Σ module`,
    inputs: [
      input('V_formula', shownVolume(formula.value), of(formula)),
      input('d', shownNumber(feed[field], `${unit}/mL`), { kind: 'feed-list', feed: feed.id, field }),
      ...doses.map((one) =>
        input(one.name, shownNumber(one.brings, unit), { kind: 'order', path: 'modules' }),
      ),
    ],
    rule: 'PL23',
    basis: ARITHMETIC,
  });
}

/** [PL24] Water in the mixture: the share of the formula, and all that dilutes it. */
function waterInFeed({ feed }: Course, mixture: Worked<Volume>, formula: Worked<Volume>): Worked<Volume> {
  const dilutes = subtract(mixture.value, formula.value);
  return totalOf(
    'W_feed',
    add(share(formula.value, feed.waterFraction), dilutes),
    'V_formula × w + (V_mixture − V_formula)',
    [
      input('V_formula', shownVolume(formula.value), of(formula)),
      input('w', shownNumber(feed.waterFraction), {
        kind: 'feed-list',
        feed: feed.id,
        field: 'waterFraction',
      }),
      input('V_mixture', shownVolume(mixture.value), of(mixture)),
    ],
  );
}

const WATER: ReadonlySet<Task['kind']> = new Set(['flush', 'give-water', 'give-module']);

/** [PL24] Water that is given by itself: flushes, boluses, around medicines and holds, with modules, from a second bag. */
function waterGiven({ standing, day }: Course, { tasks, byPump }: StillToCome): Worked<Volume> {
  const toCome = sum(
    tasks
      .filter((one) => WATER.has(one.kind) && one.nominal < day.until)
      .map((one) => one.volume?.value ?? NOTHING),
  );
  const value = add(add(standing.waterToday, toCome), byPump);
  return totalOf('W_given', value, 'W_received + W_to_come + W_pump', [
    input('W_received', shownVolume(standing.waterToday), RECEIVED),
    input('W_to_come', shownVolume(toCome), ARITHMETIC),
    input('W_pump', shownVolume(byPump), ARITHMETIC),
  ]);
}

/** Whether every amount of the regimen is an amount of formula, and no maximum of mixture stands beside it. */
function isOfFormula({ regimen, mostRate, mostVolumePerDay }: Order): boolean {
  if (regimen === null || mostRate !== null || mostVolumePerDay !== null) return false;
  const amounts = Object.values(regimen).filter(
    (one): one is { of: Of } => typeof one === 'object' && one !== null && 'of' in one,
  );
  return amounts.length > 0 && amounts.every((one) => one.of === 'formula');
}

/**
 * [PL25] The order as it is written: the day's feed with no hold and nothing lost, from when the course began. Amounts of
 * formula are worked as formula, so that what the pump's step takes from their mixture is not taken off the order too.
 */
function orderedIn(course: Course, policy: Policy): Worked<Volume> | null {
  const { order, ordered, day, begins, standing } = course;
  const span: Span = { from: earlier(later(day.from, begins), day.until), until: day.until };
  const ofFormula = isOfFormula(order);
  const asWritten = programmeOf({
    order: {
      ...order,
      feed: ofFormula ? { ...ordered, strength: ONE } : ordered,
      holds: [],
      medicines: [],
    },
    policy,
    standing: { ...standing, at: span.from, receivedToday: NOTHING },
    span,
    pace: 'lowest',
  });
  const given = needUpTo(asWritten, span.until);
  const all = add(given, asWritten.shortfall);
  const terms = [
    input('D(end)', shownVolume(given), { kind: 'order', path: 'regimen' }),
    input('V_short', shownVolume(asWritten.shortfall), ARITHMETIC),
  ];
  if (!ofFormula) return totalOf('V_ordered', all, 'D(end) + V_short', terms);
  const { n, d } = ordered.strength;
  return totalOf('V_ordered', share(all, fraction(d, n)), '(D(end) + V_short) / s', [
    ...terms,
    input('s', shownNumber(ordered.strength), { kind: 'order', path: 'feed.strength' }),
  ]);
}

/** The feeding day that it is now: received, and still to come by the plan. */
export function dayTotals(course: Course, toCome: StillToCome, policy: Policy): DayTotals {
  const { needs } = course.order;
  const mixture = mixtureOf(course, toCome);
  const formula = formulaOf(course, mixture);
  const doses = dosesOf(course, toCome);
  const inFeed = waterInFeed(course, mixture, formula);
  const given = waterGiven(course, toCome);
  return {
    day: course.day,
    formula,
    mixture,
    energyKcal: nutrient(
      course,
      formula,
      { symbol: 'E', field: 'energyKcalPerMl', unit: 'kcal' },
      doses.map(({ name, energyKcal: brings }) => ({ name, brings })),
    ),
    proteinG: nutrient(
      course,
      formula,
      { symbol: 'm_protein', field: 'proteinGPerMl', unit: 'g' },
      doses.map(({ name, proteinG: brings }) => ({ name, brings })),
    ),
    water: {
      formula: inFeed,
      flushes: given,
      total: totalOf('W', add(inFeed.value, given.value), 'W_feed + W_given', [
        input('W_feed', shownVolume(inFeed.value), of(inFeed)),
        input('W_given', shownVolume(given.value), of(given)),
      ]),
    },
    ordered: orderedIn(course, policy),
    needs: { energyKcal: needs.energyKcalPerDay, proteinG: needs.proteinGPerDay, water: needs.waterPerDay },
  };
}
