/**
 * What is done where feed stops and starts again? Around a hold the tube is flushed: feed that stands in it clots. Holds
 * that overlap are one stop and one start. Where feed ends or begins by its own schedule the water is that of feeds.
 */
import type { Instant } from '../../base/instant.ts';
import type { Volume } from '../../base/volume.ts';
import type { Worked } from '../../base/working.ts';
import type { MedicineByTube } from '../../order/order.ts';
import type { Gap } from '../../programme/programme.ts';
import type { Course } from '../course.ts';
import type { Task } from '../plan.ts';
import { starting, stopping, task } from './due.ts';
import { heldBy, heldFrom, heldUntil, type Stretch, stretchesOf } from './feeding.ts';
import { waterAround, waterBy, waterOf } from './water.ts';

const MEDICINE = 'medicine:';

/** The medicines whose hold begins a gap; none where a hold of the order begins it or reaches over its beginning. */
export function medicinesThatStop({ order }: Course, gap: Gap | null): readonly MedicineByTube[] {
  if (gap === null) return [];
  const held = order.holds.some((hold) => hold.from <= gap.from && (hold.until ?? gap.until) > gap.from);
  return held ? [] : order.medicines.filter((one) => gap.holds.includes(`${MEDICINE}${one.name}`));
}

/** Before a medicine the water that the order has for it, else what policy has. */
export function beforeMedicine({ order, local }: Course, medicine: MedicineByTube): Worked<Volume> | null {
  const path = `medicines.${order.medicines.indexOf(medicine)}.waterBeforeMl`;
  return medicine.waterBefore === null
    ? waterBy(local.should('flush.medicine.before'))
    : waterOf(medicine.waterBefore, { kind: 'order', path });
}

function stopWater(course: Course, at: Instant): Worked<Volume> | null | undefined {
  const gap = heldFrom(course.programme, at);
  if (gap === null) return waterAround(course)?.after;
  const medicine = medicinesThatStop(course, gap)[0];
  return medicine === undefined
    ? waterBy(course.local.should('flush.hold.before'))
    : beforeMedicine(course, medicine);
}

/** Feed that runs all day begins without a flush of its own; whatever begins daily has one. */
const beginsDaily = ({ regimen }: Course): boolean =>
  regimen.kind === 'cyclic' || (regimen.kind === 'continuous' && regimen.perDay !== null);

function startWater(course: Course, at: Instant): Worked<Volume> | null | undefined {
  if (heldUntil(course.programme, at) !== null) return waterBy(course.local.should('flush.hold.after'));
  return beginsDaily(course) ? waterAround(course)?.before : undefined;
}

const amounts = (volume: Worked<Volume> | null | undefined): volume is Worked<Volume> | null =>
  volume !== undefined && volume?.value !== 0;

export type AroundStops = { readonly afterStops: readonly Task[]; readonly beforeStarts: readonly Task[] };

/** [PL37] The flushes where feed at a rate stops and starts: after the one, before the other, at the same visit. */
export function flushesAroundStops(course: Course): AroundStops {
  const { programme } = course;
  const stretches = stretchesOf(programme);
  const stopped = ({ until }: Stretch): readonly Task[] => {
    const volume = until < programme.span.until ? stopWater(course, until) : undefined;
    const about = heldBy(heldFrom(programme, until));
    return amounts(volume)
      ? [task({ kind: 'flush', about, beside: 'after', volume, rule: 'PL37' }, stopping(until))]
      : [];
  };
  const started = ({ from }: Stretch): readonly Task[] => {
    const volume = from > programme.span.from ? startWater(course, from) : undefined;
    const about = heldBy(heldUntil(programme, from));
    return amounts(volume)
      ? [task({ kind: 'flush', about, beside: 'before', volume, rule: 'PL37' }, starting(from))]
      : [];
  };
  return { afterStops: stretches.flatMap(stopped), beforeStarts: stretches.flatMap(started) };
}
