/**
 * How old is this patient, in the days that age bands count in?
 * A birthday must open its band on the day itself, but calendar years differ in length: so a year of age is counted as
 * 365 or 366 days by a fixed rule, and the last day of a longer year waits at its end.
 */
import { Temporal } from 'temporal-polyfill';
import type { DayName } from '../base/zone.ts';

/** The first day of the year of age that begins after so many whole years: 18 years are 6575 days. */
export const daysOfYears = (years: number): number => Math.ceil((years * 1461) / 4);

const plainDate = (day: DayName): Temporal.PlainDate | null => {
  try {
    return Temporal.PlainDate.from(day);
  } catch {
    return null;
  }
};

/**
 * Age in days for a `PolicyContext`. On every birthday exactly `daysOfYears(age)`; in the first year of life plain days.
 * Someone born on 29 February has their birthday on 1 March in other years.
 * @returns null for a day that is none, or one before birth: an age that is not known.
 */
export function ageInDays(born: DayName, on: DayName): number | null {
  const [from, until] = [plainDate(born), plainDate(on)];
  if (from === null || until === null || Temporal.PlainDate.compare(from, until) > 0) return null;
  const years = wholeYears(from, until);
  const sinceBirthday = birthday(from, years).until(until, { largestUnit: 'days' }).days;
  return Math.min(daysOfYears(years) + sinceBirthday, daysOfYears(years + 1) - 1);
}

function birthday(born: Temporal.PlainDate, years: number): Temporal.PlainDate {
  const leapDay = born.month === 2 && born.day === 29;
  const firstOfMarch = born.with({ month: 3, day: 1 }).add({ years });
  return leapDay && !firstOfMarch.inLeapYear ? firstOfMarch : born.add({ years });
}

function wholeYears(born: Temporal.PlainDate, on: Temporal.PlainDate): number {
  const years = on.year - born.year;
  return Temporal.PlainDate.compare(birthday(born, years), on) <= 0 ? years : years - 1;
}
