/**
 * Which day do six digits of a code mean? YYMMDD: a day that the calendar has, or the end of a month where no day is
 * given. Two digits of a year mean the one nearest to the year of reading, by the window of the General Specifications
 * (I8, from memory): from 49 years back to 50 years ahead. Day 00 is the last of its month (I8, from memory); because it
 * was read in several ways, newer codes of regulated products name a day (I11), and here it is always said.
 */
import { type DayName, type DayNumber, dayNamed, dayNumberOf } from '../../base/calendar.ts';

export type ScannedDate = {
  readonly day: DayName;
  /** True where the code gave day 00: the month alone, read as its last day. */
  readonly isMonthOnly: boolean;
};

/** The year of two digits, read in a given year. */
export function yearOf(twoDigits: number, readIn: number): number {
  const century = readIn - (readIn % 100);
  const ahead = twoDigits - (readIn % 100);
  if (ahead > 50) return century - 100 + twoDigits;
  return ahead < -49 ? century + 100 + twoDigits : century + twoDigits;
}

const lastOfMonth = (year: number, month: number): DayNumber | null => {
  const next = month === 12 ? dayNumberOf(year + 1, 1, 1) : dayNumberOf(year, month + 1, 1);
  return next === null ? null : next - 1;
};

/** The day, or null for what is not six digits or no day of the calendar. [FE15] */
export function readDate(text: string, readIn: number): ScannedDate | null {
  const found = /^(\d\d)(\d\d)(\d\d)$/.exec(text);
  if (found === null) return null;
  const [year, month, day] = [yearOf(Number(found[1]), readIn), Number(found[2]), Number(found[3])];
  if (month === 0) return null;
  const number = day === 0 ? lastOfMonth(year, month) : dayNumberOf(year, month, day);
  return number === null ? null : { day: dayNamed(number), isMonthOnly: day === 0 };
}

/** The first day that may be meant: of a month alone, its first. */
export const earliestDay = ({ day, isMonthOnly }: ScannedDate): DayName =>
  isMonthOnly ? `${day.slice(0, 8)}01` : day;

export const writeDate = ({ day, isMonthOnly }: ScannedDate): string =>
  `${day.slice(2, 4)}${day.slice(5, 7)}${isMonthOnly ? '00' : day.slice(8, 10)}`;
