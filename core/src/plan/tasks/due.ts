/**
 * When may something be done that is due at a moment? A task carries its window and an id that is the same whenever it is
 * planned again, because it is made of what is due and of the clock, never of when somebody looked.
 */
import {
  after,
  before,
  DAY,
  type Duration,
  duration,
  type Instant,
  later,
  type Span,
} from '../../base/instant.ts';
import type { Rate, Volume } from '../../base/volume.ts';
import type { Worked } from '../../base/working.ts';
import {
  dayAt,
  dayNumberAt,
  instantOn,
  showTimeOfDay,
  type TimeOfDay,
  timeOfDayAt,
  type Zone,
} from '../../base/zone.ts';
import { feedingDays } from '../../programme/frame.ts';
import type { Course } from '../course.ts';
import { gridDown, gridUp, SLOT } from '../grid.ts';
import type { Task, TaskKind } from '../plan.ts';

const UTC = 'UTC' as Zone;

const minuteOf = (at: Instant): string => `${dayAt(at, UTC)}T${showTimeOfDay(timeOfDayAt(at, UTC))}Z`;

export type Window = { readonly earliest: Instant; readonly nominal: Instant; readonly latest: Instant };

type What = {
  readonly kind: TaskKind;
  readonly about?: string | null;
  readonly beside?: Task['beside'];
  readonly volume?: Worked<Volume> | null;
  readonly rate?: Worked<Rate> | null;
  readonly rule: string;
  /** When it was due before a hold moved it: what its id is made of. */
  readonly dueAt?: Instant;
};

/** [PL30] The id of a task: what, about what, and the minute at which it is due. */
export function taskId(
  { kind, beside, about }: Pick<What, 'kind' | 'beside' | 'about'>,
  due: Instant,
): string {
  return [kind, ...(beside === undefined ? [] : [beside]), about ?? '', minuteOf(due)].join(':');
}

export function task(what: What, window: Window): Task {
  const { kind, about = null, beside, volume = null, rate = null, rule } = what;
  const id = taskId(what, what.dueAt ?? window.nominal);
  const { earliest, nominal, latest } = window;
  const where = beside === undefined ? {} : { beside };
  return { id, kind, earliest, nominal, latest, volume, rate, about, ...where, rule };
}

/** As far before as after. */
export const around = (nominal: Instant, by: Duration): Window => ({
  earliest: before(nominal, by),
  nominal,
  latest: after(nominal, by),
});

/** Feed stops at its moment and never later: at the last grid point not after it. */
export const stopping = (nominal: Instant): Window => ({
  earliest: gridDown(nominal),
  nominal,
  latest: nominal,
});

/** Something starts at its moment and never earlier: at the first grid point not before it. */
export const starting = (nominal: Instant): Window => ({
  earliest: nominal,
  nominal,
  latest: gridUp(nominal),
});

/** At its moment: the grid points on either side of it will do. */
export const nearest = (nominal: Instant): Window => ({
  earliest: gridDown(nominal),
  nominal,
  latest: gridUp(nominal),
});

/** Not before its moment, and within a while after it. */
export const afterwards = (nominal: Instant, by: Duration): Window => ({
  earliest: nominal,
  nominal,
  latest: later(after(nominal, by), gridUp(nominal)),
});

/**
 * [PL31] Every so much elapsed time, counted anew from the anchor's time of day on every day, so that the same moments
 * come out whenever it is planned. A day or longer counts in whole days from the day of the order.
 */
export function everySoOften(
  every: Duration,
  anchor: TimeOfDay,
  within: Span,
  { begins, order, zone }: Pick<Course, 'begins' | 'order' | 'zone'>,
): readonly Instant[] {
  const found: Instant[] = [];
  const add = (at: Instant): void => {
    if (at >= within.from && at < within.until && at >= begins) found.push(at);
  };
  // No one comes more often than the grid has points.
  const step = duration(Math.max(every, SLOT));
  const wholeDays = Math.floor(every / DAY);
  const firstDay = dayNumberAt(order.startsAt ?? order.prescribedAt ?? begins, zone);
  for (const day of feedingDays(within, anchor, zone)) {
    if (wholeDays >= 1) {
      const number = dayNumberAt(day.from, zone);
      if ((number - firstDay) % wholeDays === 0) add(instantOn(number, anchor, zone));
    } else for (let at = day.from; at < day.until; at = after(at, step)) add(at);
  }
  return found;
}
