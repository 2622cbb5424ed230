/** What is true of everybody on a ward? Each course by its name, each in its own order's zone. */
import type { Instant } from '../base/instant.ts';
import type { Zone } from '../base/zone.ts';
import type { FeedList } from '../feeds/feed.ts';
import type { Policy } from '../policy/policy.ts';
import type { AnyEntry } from '../record/entry.ts';
import { emptyCourse, type HeldCourse, holdCourse, holdEntry, standingOf } from './held-course.ts';
import type { CourseStanding } from './standing-at.ts';

export type Ward = ReadonlyMap<string, HeldCourse>;

export const EMPTY_WARD: Ward = new Map();

/** Entries of any courses, in any order. */
export const wardOf = (entries: Iterable<AnyEntry>): Ward =>
  new Map([...Map.groupBy(entries, (one) => one.course)].map(([name, own]) => [name, holdCourse(own)]));

/** With one entry more; the same ward where it had been there. */
export function wardWith(ward: Ward, entry: AnyEntry): Ward {
  const before = ward.get(entry.course) ?? emptyCourse();
  const held = holdEntry(before, entry);
  return held === before ? ward : new Map(ward).set(entry.course, held);
}

export type WardView = {
  readonly at: Instant;
  readonly policy: Policy;
  readonly feeds: FeedList;
  /** Of a course that has no order yet. */
  readonly zone: Zone;
};

export const zoneOf = ({ course }: HeldCourse, otherwise: Zone): Zone =>
  course.orders.placed?.zone ?? otherwise;

export const wardStandings = (ward: Ward, view: WardView): ReadonlyMap<string, CourseStanding> =>
  new Map(
    [...ward].map(([name, held]) => [name, standingOf(held, { ...view, zone: zoneOf(held, view.zone) })]),
  );
