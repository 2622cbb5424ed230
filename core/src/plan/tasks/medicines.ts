/**
 * What is given by the tube beside feed and water, and what water goes around it? A medicine never goes into the feed: the
 * tube is flushed before it, between two, and after it. Where feed is held for one the stop, the dose and the restart are
 * moments of their own, and the flush before it is the one at which feed stops.
 */
import { before, duration, type Instant, later } from '../../base/instant.ts';
import type { Volume } from '../../base/volume.ts';
import { type Basis, input, shownVolume, type Worked, worked } from '../../base/working.ts';
import { timesWithin } from '../../base/zone.ts';
import type { MedicineByTube } from '../../order/order.ts';
import type { Course } from '../course.ts';
import type { Task } from '../plan.ts';
import { around, starting, task, taskId, type Window } from './due.ts';
import { heldBy, heldFrom, isRunning } from './feeding.ts';
import { beforeMedicine, medicineThatStops } from './holds.ts';
import { outsideHolds, waterBy, waterOf } from './water.ts';

type Dose = { readonly at: Instant; readonly medicine: MedicineByTube; readonly window: Window };

const asOrdered = (volume: Volume, basis: Basis): Worked<Volume> =>
  worked(volume, shownVolume, {
    symbol: 'V',
    equation: 'V',
    inputs: [input('V', shownVolume(volume), basis)],
    rule: 'PL38',
    basis,
  });

const isHeld = ({ holdBefore, holdAfter }: MedicineByTube): boolean => holdBefore > 0 || holdAfter > 0;

function dosesOf({ order, zone, horizon, local, begins }: Course): readonly Dose[] {
  if (order.medicines.length === 0) return [];
  const by = local.should('window.medicine')?.value ?? duration(0);
  const from = later(before(horizon.from, by), begins);
  const due = order.medicines
    .flatMap((medicine) =>
      timesWithin(medicine.times, from, horizon.until, zone).map((at) => ({ at, medicine })),
    )
    .toSorted((a, b) => a.at - b.at);
  // The order counts its holds from the dose, so a dose with a hold stays where it is, and what goes with it too.
  const fixed = new Set(due.filter(({ medicine }) => isHeld(medicine)).map(({ at }) => at));
  return due.map((dose) => ({
    ...dose,
    window: fixed.has(dose.at) ? starting(dose.at) : around(dose.at, by),
  }));
}

/** Between two medicines of the same moment one flush: what the order has after the one or before the other, else policy's. */
function waterAfter(
  { order, local }: Course,
  { medicine }: Dose,
  next: Dose | undefined,
): Worked<Volume> | null {
  const path = (one: MedicineByTube, field: string): Basis => ({
    kind: 'order',
    path: `medicines.${order.medicines.indexOf(one)}.${field}`,
  });
  if (medicine.waterAfter !== null) return waterOf(medicine.waterAfter, path(medicine, 'waterAfterMl'));
  if (next === undefined) return waterBy(local.should('flush.medicine.after'));
  return next.medicine.waterBefore === null
    ? waterBy(local.should('flush.medicine.between'))
    : waterOf(next.medicine.waterBefore, path(next.medicine, 'waterBeforeMl'));
}

/** Whether feed runs until it is stopped for this dose, or was: then the tube is flushed there. */
function stoppedFor(course: Course, { at, medicine }: Dose): boolean {
  const { programme, feedFrom, standing } = course;
  const from = before(at, medicine.holdBefore);
  const held = heldFrom(course, from);
  if (medicineThatStops(course, held) !== medicine) return false;
  if (!isRunning(programme, before(from, duration(1)))) return false;
  // A feed that the hold cuts short has its own flush after it.
  const isFlushed = [heldBy(held), 'feed'].some((about) =>
    standing.done.has(taskId({ kind: 'flush', beside: 'after', about }, from)),
  );
  return from > feedFrom || (from === feedFrom && standing.running !== null) || isFlushed;
}

function doseTasks(
  course: Course,
  dose: Dose,
  last: Dose | undefined,
  next: Dose | undefined,
): readonly Task[] {
  const { medicine, window } = dose;
  const path: Basis = {
    kind: 'order',
    path: `medicines.${course.order.medicines.indexOf(medicine)}.volumeMl`,
  };
  const about = medicine.name;
  const flush = (beside: NonNullable<Task['beside']>, volume: Worked<Volume> | null): readonly Task[] =>
    volume?.value === 0 ? [] : [task({ kind: 'flush', about, beside, volume, rule: 'PL38' }, window)];
  const clear = last !== undefined || stoppedFor(course, dose);
  const ahead = clear ? [] : flush('before', beforeMedicine(course, medicine));
  return [
    ...ahead,
    task({ kind: 'give-medicine', about, volume: asOrdered(medicine.volume, path), rule: 'PL38' }, window),
    ...flush(next === undefined ? 'after' : 'between', waterAfter(course, dose, next)),
  ];
}

/** [PL38] Each dose with its water; doses of the same moment one after the other, with water between. */
export function medicineTasks(course: Course): readonly Task[] {
  const doses = dosesOf(course);
  const together = (a: Dose | undefined, b: Dose | undefined): boolean => a !== undefined && a.at === b?.at;
  return doses.flatMap((dose, index) => {
    const [last, next] = [doses[index - 1], doses[index + 1]];
    return doseTasks(
      course,
      dose,
      together(last, dose) ? last : undefined,
      together(next, dose) ? next : undefined,
    );
  });
}

/** [PL39] Modules in their water, at their named times, never during a hold that closes the tube. */
export function moduleTasks(course: Course): readonly Task[] {
  const { order, zone, horizon, local, begins } = course;
  if (order.modules.length === 0) return [];
  const by = local.should('window.medicine')?.value ?? duration(0);
  const from = later(before(horizon.from, by), begins);
  return order.modules.flatMap((module, index) =>
    timesWithin(module.times, from, horizon.until, zone).flatMap((nominal) => {
      const window = outsideHolds(around(nominal, by), course);
      const volume = asOrdered(module.water, { kind: 'order', path: `modules.${index}.waterMl` });
      const what = { kind: 'give-module', about: module.name, volume, dueAt: nominal, rule: 'PL39' } as const;
      return window === null ? [] : [task(what, window)];
    }),
  );
}
