/**
 * How is a moment written? On a 24-hour clock, with the day named where it is not today, and the offset where a clock
 * change makes the same hour come twice.
 */
import type { Duration, Instant } from '../base/instant.ts';
import { DAY, HOUR, MINUTE } from '../base/instant.ts';
import {
  type DayName,
  dayAt,
  instantOf,
  offsetAt,
  showTimeOfDay,
  timeOfDayAt,
  type Zone,
} from '../base/zone.ts';
import type { Words } from './words.ts';

/** `25 Nov`: never figures alone, which are read in two orders. */
export function showDay(day: DayName, words: Words): string {
  const [, month = '01', date = '01'] = day.split('-');
  return `${Number(date)} ${words.months[Number(month) - 1]}`;
}

/** Whether the wall clock shows this time twice that day. */
const comesTwice = (at: Instant, zone: Zone): boolean => {
  const first = instantOf(dayAt(at, zone), timeOfDayAt(at, zone), zone);
  const here = offsetAt(at, zone);
  return first < at - (at % MINUTE) || offsetAt((at + HOUR) as Instant, zone) < here;
};

const offsetText = (offset: number): string => {
  const minutes = Math.abs(offset) / MINUTE;
  return `UTC${offset < 0 ? '−' : '+'}${showTimeOfDay(minutes)}`;
};

/** `18:00` today; `18:00 on 26 Nov` otherwise; `01:30 (UTC+00:00)` where the hour comes twice. */
export function showMoment(at: Instant, today: DayName, zone: Zone, words: Words): string {
  const time = showTimeOfDay(timeOfDayAt(at, zone));
  const twice =
    comesTwice(at, zone) &&
    offsetAt((at - DAY / 4) as Instant, zone) !== offsetAt((at + DAY / 4) as Instant, zone);
  const exact = twice ? `${time} (${offsetText(offsetAt(at, zone))})` : time;
  const day = dayAt(at, zone);
  return day === today ? exact : words.onDay(exact, showDay(day, words));
}

/** `6 h 40 min`; parts of a minute are cut. */
export function showDuration(lasts: Duration): string {
  const wholeMinutes = Math.floor(lasts / MINUTE);
  const [hours, minutes] = [Math.floor(wholeMinutes / 60), wholeMinutes % 60];
  if (hours === 0) return `${minutes} min`;
  return minutes === 0 ? `${hours} h` : `${hours} h ${minutes} min`;
}
