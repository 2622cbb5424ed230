/**
 * What does the order come to on a full feeding day, as it is written? Every feed given, no hold, no catching up, a day
 * of 24 hours. What depends on a meal counts as given.
 */

import { timesOver } from '../base/fraction.ts';
import { DAY, type Duration, type Instant } from '../base/instant.ts';
import { add, NOTHING, sum, type Volume, volume } from '../base/volume.ts';
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
import type { PolicyKey } from '../policy/keys.ts';
import { ask, type Policy } from '../policy/policy.ts';
import { times, toFraction } from '../reckon/exact.ts';
import { asVolume, strengthOf } from './mixture.ts';
import type { MedicineByTube, Order, Regimen, WaterGiven } from './order.ts';
import { feedsPerDay, mixturePerDay, type Step } from './per-day.ts';
import { policyContext } from './review.ts';

export type OrderedDay = {
  /** Feed as it is given; null where the order has no regimen, or one without its amount or times. */
  readonly mixture: Worked<Volume> | null;
  /** The feed in the mixture. */
  readonly formula: Worked<Volume> | null;
  /** Water by itself: by syringe, around feeds, from a second bag. */
  readonly flushes: Worked<Volume>;
  /** Medicines as they are given. */
  readonly medicines: Worked<Volume>;
  /** Water before and after medicines. */
  readonly medicineWater: Worked<Volume>;
  readonly moduleWater: Worked<Volume>;
  /** All of these with what runs into a vein: whole liquid volumes, as a fluid limit counts them. */
  readonly fluid: Worked<Volume>;
  /** What the water around medicines would have to be asked of local policy, and it does not say. */
  readonly unset: readonly PolicyKey[];
};

const RULE = 'OR57';
const fromOrder = (path: string): Basis => ({ kind: 'order', path });
const amount = (symbol: string, value: Volume, basis: Basis): WorkingInput =>
  input(symbol, shownVolume(value), basis);

const total = (value: Volume, equation: string, inputs: readonly WorkingInput[]): Worked<Volume> =>
  worked(value, shownVolume, { symbol: 'V', equation, inputs, rule: RULE, basis: ARITHMETIC });

/** Times a day, for what comes every so often: whole ones where each day begins anew, else the share of a day. */
const howOften = (one: Volume, every: Duration, beginsAnew: boolean): Volume =>
  volume(beginsAnew ? one * Math.ceil(DAY / every) : timesOver(one, DAY, every));

/** How many times a day a feed begins, so that water goes before and after it; a feed that never stops has none. */
export function feedStarts(regimen: Regimen | null): number {
  switch (regimen?.kind) {
    case 'intermittent':
    case 'bolus':
      return feedsPerDay(regimen);
    case 'cyclic':
      return 1;
    case 'continuous':
      return regimen.perDay === null ? 0 : 1;
    default:
      return 0;
  }
}

function waterPerDay(given: WaterGiven, regimen: Regimen | null): Volume {
  switch (given.kind) {
    case 'interval':
      return howOften(given.volume, given.every, given.from !== null);
    case 'second-bag':
      return howOften(given.volume, given.every, false);
    case 'times':
      return volume(given.volume * given.times.length);
    case 'around-feeds':
      return volume(add(given.before, given.after) * feedStarts(regimen));
  }
}

function flushesPerDay(order: Order): Worked<Volume> {
  const each = (order.water?.given ?? []).map((given) => waterPerDay(given, order.regimen));
  const inputs = each.map((value, i) => amount(`V${i + 1}`, value, fromOrder(`water.given.${i}`)));
  return total(sum(each), 'V = ΣVᵢ', inputs);
}

type Around = (medicine: MedicineByTube, side: 'before' | 'after') => { volume: Volume; basis: Basis };

/** Each medicine with water of its own on both sides: two given together share some of it, so this is the most. */
function medicineWaterPerDay(order: Order, around: Around): Worked<Volume> {
  const inputs: WorkingInput[] = [];
  const each = order.medicines.flatMap((medicine, i) =>
    (['before', 'after'] as const).map((side) => {
      const { volume: one, basis } = around(medicine, side);
      inputs.push(amount(`${side === 'before' ? 'b' : 'a'}${i + 1}`, one, basis));
      return volume(one * medicine.times.length);
    }),
  );
  return total(sum(each), 'V = Σ(bᵢ + aᵢ) × nᵢ', inputs);
}

function timesOfEach<T extends { readonly times: readonly unknown[] }>(
  items: readonly T[],
  one: (item: T) => Volume,
  path: string,
): Worked<Volume> {
  const inputs = items.flatMap((item, i) => [
    amount(`v${i + 1}`, one(item), fromOrder(`${path}.${i}`)),
    input(`n${i + 1}`, shownNumber(item.times.length), fromOrder(`${path}.${i}.times`)),
  ]);
  return total(sum(items.map((item) => volume(one(item) * item.times.length))), 'V = Σvᵢ × nᵢ', inputs);
}

function feedPerDay(order: Order, step: Step): Pick<OrderedDay, 'mixture' | 'formula'> {
  const strength = strengthOf(order);
  const perDay = order.regimen === null ? null : mixturePerDay(order.regimen, strength, step);
  if (perDay === null) return { mixture: null, formula: null };
  const mixture = total(asVolume(perDay.ml), perDay.equation, perDay.inputs);
  const formula = total(asVolume(times(perDay.ml, strength)), 'V = s × M', [
    input('s', shownNumber(toFraction(strength)), fromOrder('feed.strength')),
    amount('M', mixture.value, { kind: 'working', working: mixture.working }),
  ]);
  return { mixture, formula };
}

/** Asks local policy for the water around a medicine where the order leaves it open, and remembers what it did not say. */
function aroundMedicines(
  order: Order,
  policy: Policy,
  at: Instant,
): { around: Around; unset: Set<PolicyKey> } {
  const context = policyContext(order, at);
  const unset = new Set<PolicyKey>();
  const around: Around = (medicine, side) => {
    const said = side === 'before' ? medicine.waterBefore : medicine.waterAfter;
    if (said !== null) return { volume: said, basis: fromOrder('medicines') };
    const key = `flush.medicine.${side}` as const;
    const answer = ask(policy, key, context);
    if (answer.known) return { volume: answer.value, basis: answer.basis };
    unset.add(key);
    return { volume: NOTHING, basis: fromOrder('medicines') };
  };
  return { around, unset };
}

/**
 * The volumes of a full feeding day by the order as it is written, each with its working.
 * @param step which rate or volume an advancing order is reckoned at: as written, at its first step, at its goal.
 * Precondition: the numbers of the order are credible ([OR3]) and its strength is not zero ([OR17]).
 */
export function orderedPerDay(order: Order, policy: Policy, at: Instant, step: Step = 'ordered'): OrderedDay {
  const feed = feedPerDay(order, step);
  const flushes = flushesPerDay(order);
  const medicines = timesOfEach(order.medicines, (medicine) => medicine.volume, 'medicines');
  const { around, unset } = aroundMedicines(order, policy, at);
  const medicineWater = medicineWaterPerDay(order, around);
  const moduleWater = timesOfEach(order.modules, (module) => module.water, 'modules');
  const parts = [
    ...(feed.mixture === null ? [] : [['feed', feed.mixture] as const]),
    ['flushes', flushes],
    ['medicines', medicines],
    ['medicine water', medicineWater],
    ['module water', moduleWater],
  ] as const;
  const inputs = [
    ...parts.map(([symbol, part]) => amount(symbol, part.value, { kind: 'working', working: part.working })),
    amount('intravenous', order.intravenousPerDay, fromOrder('intravenousMlPerDay')),
  ];
  const everything = sum([...parts.map(([, part]) => part.value), order.intravenousPerDay]);
  const fluid = total(everything, 'V = ΣVᵢ', inputs);
  return { ...feed, flushes, medicines, medicineWater, moduleWater, fluid, unset: [...unset] };
}
