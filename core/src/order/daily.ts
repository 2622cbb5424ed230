/**
 * What does the order come to on a full feeding day, as it is written? Every feed given, no hold, no catching up, a day
 * of 24 hours. What depends on a meal counts as given.
 */

import { timesOver } from '../base/fraction.ts';
import { DAY, type Duration, type Instant } from '../base/instant.ts';
import { add, sum, type Volume, volume } from '../base/volume.ts';
import {
  ARITHMETIC,
  type Basis,
  input,
  shownDuration,
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
  /** Of what water around medicines needs, what neither the order nor local policy says: the totals lack it. */
  readonly unset: readonly PolicyKey[];
};

const RULE = 'OR57';
const fromOrder = (path: string): Basis => ({ kind: 'order', path });
const amount = (symbol: string, value: Volume, basis: Basis): WorkingInput =>
  input(symbol, shownVolume(value), basis);

const total = (value: Volume, equation: string, inputs: readonly WorkingInput[]): Worked<Volume> =>
  worked(value, shownVolume, { symbol: 'V', equation, inputs, rule: RULE, basis: ARITHMETIC });

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

/** What comes every so often: whole times where each day begins anew, else the share of a day. */
function everySoOften(one: Volume, every: Duration, beginsAnew: boolean, path: string): Worked<Volume> {
  const inputs = [
    amount('v', one, fromOrder(`${path}.volumeMl`)),
    input('T', shownDuration(every), fromOrder(`${path}.everyHours`)),
  ];
  return beginsAnew
    ? total(volume(one * Math.ceil(DAY / every)), 'V = v × ⌈24 h / T⌉', inputs)
    : total(volume(timesOver(one, DAY, every)), 'V = v × 24 h / T', inputs);
}

const counted = (one: Volume, count: number, from: Basis, counts: Basis): Worked<Volume> =>
  total(volume(one * count), 'V = v × n', [amount('v', one, from), input('n', shownNumber(count), counts)]);

function waterPerDay(given: WaterGiven, regimen: Regimen | null, path: string): Worked<Volume> {
  const at = (field: string): Basis => fromOrder(`${path}.${field}`);
  switch (given.kind) {
    case 'interval':
      return everySoOften(given.volume, given.every, given.from !== null, path);
    case 'second-bag':
      return everySoOften(given.volume, given.every, false, path);
    case 'times':
      return counted(given.volume, given.times.length, at('volumeMl'), at('times'));
    case 'around-feeds': {
      const around = total(add(given.before, given.after), 'V = b + a', [
        amount('b', given.before, at('beforeMl')),
        amount('a', given.after, at('afterMl')),
      ]);
      const basis: Basis = { kind: 'working', working: around.working };
      return counted(around.value, feedStarts(regimen), basis, fromOrder('regimen'));
    }
  }
}

/** The sum of what has a working of its own. */
function together(parts: readonly Worked<Volume>[], symbol = 'V'): Worked<Volume> {
  const inputs = parts.map((part, i) =>
    amount(`${symbol}${i + 1}`, part.value, { kind: 'working', working: part.working }),
  );
  return total(sum(parts.map((part) => part.value)), `V = Σ${symbol}ᵢ`, inputs);
}

const flushesPerDay = ({ water, regimen }: Order): Worked<Volume> =>
  together((water?.given ?? []).map((given, i) => waterPerDay(given, regimen, `water.given.${i}`)));

type Side = 'before' | 'after';
/** Null where neither the order nor local policy says. */
type Around = (medicine: MedicineByTube, side: Side, path: string) => { volume: Volume; basis: Basis } | null;

/** Each medicine with water of its own on both sides: two given together share some of it, so this is the most. */
const medicineWaterPerDay = ({ medicines }: Order, around: Around): Worked<Volume> =>
  together(
    medicines.flatMap((medicine, i) =>
      (['before', 'after'] as const).flatMap((side) => {
        const path = `medicines.${i}`;
        const said = around(medicine, side, path);
        return said === null
          ? []
          : [counted(said.volume, medicine.times.length, said.basis, fromOrder(`${path}.times`))];
      }),
    ),
  );

const eachTime = <T extends { readonly times: readonly unknown[] }>(
  items: readonly T[],
  one: (item: T) => Volume,
  path: string,
  field: string,
): Worked<Volume> =>
  together(
    items.map((item, i) =>
      counted(
        one(item),
        item.times.length,
        fromOrder(`${path}.${i}.${field}`),
        fromOrder(`${path}.${i}.times`),
      ),
    ),
  );

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
  const around: Around = (medicine, side, path) => {
    const [said, field] =
      side === 'before' ? [medicine.waterBefore, 'waterBeforeMl'] : [medicine.waterAfter, 'waterAfterMl'];
    if (said !== null) return { volume: said, basis: fromOrder(`${path}.${field}`) };
    const key = `flush.medicine.${side}` as const;
    const answer = ask(policy, key, context);
    if (answer.known) return { volume: answer.value, basis: answer.basis };
    unset.add(key);
    return null;
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
  const medicines = eachTime(order.medicines, (medicine) => medicine.volume, 'medicines', 'volumeMl');
  const { around, unset } = aroundMedicines(order, policy, at);
  const medicineWater = medicineWaterPerDay(order, around);
  const moduleWater = eachTime(order.modules, (module) => module.water, 'modules', 'waterMl');
  const parts = [
    ...(feed.mixture === null ? [] : [feed.mixture]),
    ...[flushes, medicines, medicineWater, moduleWater],
    total(order.intravenousPerDay, 'V = V₁', [
      amount('V₁', order.intravenousPerDay, fromOrder('intravenousMlPerDay')),
    ]),
  ];
  const fluid = together(parts);
  return { ...feed, flushes, medicines, medicineWater, moduleWater, fluid, unset: [...unset] };
}
