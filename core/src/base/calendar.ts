/**
 * Which day is that, and which comes next? Days of the Gregorian calendar as names and as a running number; no zone and
 * no clock in it. Arithmetic instead of a library: a plan walks over days thousands of times.
 */
import { impossible } from './result.ts';

/** A calendar day, as `2026-11-25`. */
export type DayName = string & { readonly __dayName?: never };

/** Calendar days counted from 1970-01-01: for walking over days without making a name for each. */
export type DayNumber = number & { readonly __dayNumber?: never };

/** Days of 400 years, after which the calendar repeats, and of a century and four years within them. */
const DAYS_OF_400 = 146_097;
const DAYS_OF_100 = 36_524;
const DAYS_OF_4 = 1_461;
/** From 0000-03-01 to 1970-01-01. Years are counted from March, so that the leap day is a year's last. */
const EPOCH = 719_468;

const MONTH_LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

const isLeap = (year: number): boolean => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);

/** How many days before the first of a month, in a year that starts in March: 0, 31, 61, 92 … */
const daysBefore = (monthFromMarch: number): number => Math.floor((153 * monthFromMarch + 2) / 5);

/** The number of a day by its year, month (from 1) and day of the month, or null if the calendar has no such day. */
export function dayNumberOf(year: number, month: number, day: number): DayNumber | null {
  const length = (MONTH_LENGTHS[month - 1] ?? 0) + (month === 2 && isLeap(year) ? 1 : 0);
  if (day < 1 || day > length) return null;
  const fromMarch = (month + 9) % 12;
  const y = month < 3 ? year - 1 : year;
  const leapDays = Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
  return y * 365 + leapDays + daysBefore(fromMarch) + day - 1 - EPOCH;
}

/** The number of a day, or null if the calendar has no such day or it is not written as ISO 8601 writes it. */
export function parseDay(text: string): DayNumber | null {
  const found = /^(\d{4}|[+-]\d{6})-(\d\d)-(\d\d)$/.exec(text);
  return found === null ? null : dayNumberOf(Number(found[1]), Number(found[2]), Number(found[3]));
}

/** The number of a day that has been parsed before; any other is a bug. */
export const dayNumber = (day: DayName): DayNumber => parseDay(day) ?? impossible(`day ${day}`);

const digits = (value: number, count: number): string => String(value).padStart(count, '0');

/** The name of a day: `2026-11-25`; beyond the years 0000 to 9999 with a sign and six digits, as ISO 8601 has it. */
export function dayNamed(number: DayNumber): DayName {
  const days = number + EPOCH;
  const era = Math.floor(days / DAYS_OF_400);
  const ofEra = days - era * DAYS_OF_400;
  const leapsPassed =
    Math.floor(ofEra / (DAYS_OF_4 - 1)) -
    Math.floor(ofEra / DAYS_OF_100) +
    Math.floor(ofEra / (DAYS_OF_400 - 1));
  const yearOfEra = Math.floor((ofEra - leapsPassed) / 365);
  const ofYear = ofEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const fromMarch = Math.floor((5 * ofYear + 2) / 153);
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
  const year = yearOfEra + era * 400 + (month < 3 ? 1 : 0);
  const named =
    year >= 0 && year <= 9999 ? digits(year, 4) : `${year < 0 ? '-' : '+'}${digits(Math.abs(year), 6)}`;
  return `${named}-${digits(month, 2)}-${digits(ofYear - daysBefore(fromMarch) + 1, 2)}`;
}

export const nextDay = (day: DayName): DayName => dayNamed(dayNumber(day) + 1);
export const previousDay = (day: DayName): DayName => dayNamed(dayNumber(day) - 1);
