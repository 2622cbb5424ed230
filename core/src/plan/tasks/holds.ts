/**
 * What is done where feed stops and starts again? Around a hold the tube is flushed: feed that stands in it clots. Holds
 * that overlap are one stop and one start. Where feed ends or begins by its own schedule the water is that of feeds.
 */
import { after, type Instant } from '../../base/instant.ts';
import type { Volume } from '../../base/volume.ts';
import type { Worked } from '../../base/working.ts';
import { timeOfDayAt } from '../../base/zone.ts';
import type { MedicineByTube } from '../../order/order.ts';
import type { Held } from '../../programme/holds.ts';
import type { Course } from '../course.ts';
import type { Task } from '../plan.ts';
import { stopping, task } from './due.ts';
import {
  beginsDaily,
  heldBy,
  heldFrom,
  heldUntil,
  isToStart,
  isToStop,
  type Stretch,
  startWindow,
  stretchesOf,
} from './feeding.ts';
import { waterAround, waterBy, waterOf } from './water.ts';

const MEDICINE = 'medicine:';

/** The medicine that feed stops for where a hold begins; null where a hold of the order itself begins it. */
export function medicineThatStops({ order, zone }: Course, held: Held | null): MedicineByTube | null {
  if (held === null || order.holds.some((hold) => hold.from === held.from)) return null;
  return (
    order.medicines.find(
      ({ name, times, holdBefore }) =>
        held.holds.includes(`${MEDICINE}${name}`) &&
        times.includes(timeOfDayAt(after(held.from, holdBefore), zone)),
    ) ?? null
  );
}

/** Before a medicine the water that the order has for it, else what policy has. */
export function beforeMedicine({ order, local }: Course, medicine: MedicineByTube): Worked<Volume> | null {
  const path = `medicines.${order.medicines.indexOf(medicine)}.waterBeforeMl`;
  return medicine.waterBefore === null
    ? waterBy(local.should('flush.medicine.before'))
    : waterOf(medicine.waterBefore, { kind: 'order', path });
}

/** Water where feed stops: for a hold of its own kind, else as after a feed. */
export function stopWater(course: Course, at: Instant): Worked<Volume> | null | undefined {
  const held = heldFrom(course, at);
  if (held === null) return waterAround(course).after;
  const medicine = medicineThatStops(course, held);
  return medicine === null
    ? waterBy(course.local.should('flush.hold.before'))
    : beforeMedicine(course, medicine);
}

function startWater(course: Course, at: Instant): Worked<Volume> | null | undefined {
  if (heldUntil(course, at) !== null) return waterBy(course.local.should('flush.hold.after'));
  return beginsDaily(course) ? waterAround(course).before : undefined;
}

const amounts = (volume: Worked<Volume> | null | undefined): volume is Worked<Volume> | null =>
  volume !== undefined && volume?.value !== 0;

export type AroundStops = { readonly afterStops: readonly Task[]; readonly beforeStarts: readonly Task[] };

/** [PL37] The flushes where feed at a rate stops and starts: after the one, before the other, at the same visit. */
export function flushesAroundStops(course: Course): AroundStops {
  const { programme } = course;
  const stretches = stretchesOf(programme);
  const stopped = (stretch: Stretch): readonly Task[] => {
    const { until } = stretch;
    const volume = isToStop(course, stretch) ? stopWater(course, until) : undefined;
    const about = heldBy(heldFrom(course, until)) ?? 'feed';
    return amounts(volume)
      ? [task({ kind: 'flush', about, beside: 'after', volume, rule: 'PL37' }, stopping(until))]
      : [];
  };
  const started = (stretch: Stretch): readonly Task[] => {
    const { from } = stretch;
    const volume = isToStart(course, stretch) ? startWater(course, from) : undefined;
    const about = heldBy(heldUntil(course, from)) ?? 'feed';
    return amounts(volume)
      ? [task({ kind: 'flush', about, beside: 'before', volume, rule: 'PL37' }, startWindow(course, from))]
      : [];
  };
  return { afterStops: stretches.flatMap(stopped), beforeStarts: stretches.flatMap(started) };
}
