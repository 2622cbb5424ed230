/**
 * How old is this patient, in the days that age bands count in?
 * A birthday must open its band on the day itself, but calendar years differ in length: so a year of age is counted as
 * 365 or 366 days by a fixed rule, and the last day of a longer year waits at its end. [PO3]
 */
import { type DayName, type DayNumber, parseDay } from '../base/calendar.ts';

/** The first day of the year of age that begins after so many whole years: 18 years are 6575 days. */
export const daysOfYears = (years: number): number => Math.ceil((years * 1461) / 4);

/** The birthday in a calendar year; for 29 February, 1 March in years without one. */
function birthdayIn(year: number, born: DayName): DayNumber {
  const name = String(year).padStart(4, '0');
  return parseDay(`${name}${born.slice(4)}`) ?? parseDay(`${name}-03-01`)!;
}

const yearOf = (day: DayName): number => Number(day.slice(0, 4));

const dayOfFourDigitYear = (day: DayName): DayNumber | null => (/^\d{4}-/.test(day) ? parseDay(day) : null);

/**
 * Age in days for a `PolicyContext`. On every birthday exactly `daysOfYears(age)`; in the first year of life plain days.
 * @returns null for a day that is none, or one before birth: an age that is not known.
 */
export function ageInDays(born: DayName, on: DayName): number | null {
  const [from, until] = [dayOfFourDigitYear(born), dayOfFourDigitYear(on)];
  if (from === null || until === null || from > until) return null;
  const inThisYear = birthdayIn(yearOf(on), born);
  const birthday = inThisYear <= until ? inThisYear : birthdayIn(yearOf(on) - 1, born);
  const years = yearOf(on) - yearOf(born) - (inThisYear <= until ? 0 : 1);
  return Math.min(daysOfYears(years) + until - birthday, daysOfYears(years + 1) - 1);
}
