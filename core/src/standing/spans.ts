/**
 * Which feeding day and which shift is it? Days begin when local policy says, by the policy that held when they began, and
 * follow each other without a gap; shifts are counted from the beginning of the day. [ST14]
 */
import {
  after,
  type Duration,
  duration,
  earlier,
  type Instant,
  instant,
  type Span,
} from '../base/instant.ts';
import { dayAt, lastTime, nextTime, type Zone } from '../base/zone.ts';
import { ageInDays } from '../policy/age.ts';
import { ask, type Policy, type PolicyContext } from '../policy/policy.ts';
import type { Course } from './course.ts';
import { orderOf } from './readings/orders.ts';

/** From where, and by what, a course is looked at. */
export type Place = { readonly policy: Policy; readonly zone: Zone };

/** Whose rows of local policy hold: by the order, else by who the person was said to be. */
export function contextAt(course: Course, at: Instant, zone: Zone): PolicyContext {
  const order = orderOf(course.orders, at);
  const birthDate = order?.patient.birthDate ?? course.person.identified?.birthDate ?? null;
  const ageDays = birthDate === null ? null : ageInDays(birthDate, dayAt(at, zone));
  return { ageDays, setting: order?.setting ?? 'hospital', at };
}

/** The feeding day of a moment; null where local policy does not say when one begins. */
export function feedingDayAt(course: Course, at: Instant, { policy, zone }: Place): Span | null {
  const start = ask(policy, 'day.start', contextAt(course, at, zone));
  if (!start.known) return null;
  return { from: lastTime(start.value, at, zone), until: nextTime(start.value, at, zone) };
}

/** The day before: it ends where this one begins, whatever policy said then. */
export function dayBefore(course: Course, day: Span, place: Place): Span | null {
  const before = feedingDayAt(course, instant(day.from - 1), place);
  return before === null ? null : { from: before.from, until: day.from };
}

/** The shifts of a feeding day; the last is as long as the day leaves. Empty where policy names no length. */
export function shiftsOf(course: Course, day: Span, { policy, zone }: Place): readonly Span[] {
  const length = ask(policy, 'shift.length', contextAt(course, day.from, zone));
  if (!length.known || length.value <= 0) return [];
  const lasts: Duration = duration(length.value);
  const shifts: Span[] = [];
  for (let from = day.from; from < day.until; from = after(from, lasts))
    shifts.push({ from, until: earlier(after(from, lasts), day.until) });
  return shifts;
}
