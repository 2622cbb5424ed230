/** How do the numbers and names in a problem's data become words? Small readers for catalogues, the same in every language. */
import { type Fraction, fraction } from '../base/fraction.ts';
import { duration, HOUR } from '../base/instant.ts';
import { showTimeOfDay, type TimeOfDay } from '../base/zone.ts';
import { showFraction } from './number.ts';
import { showDuration } from './time.ts';
import type { Data } from './words.ts';

const isFraction = (value: unknown): value is Fraction =>
  typeof value === 'object' && value !== null && 'n' in value && 'd' in value;

const MOST_PLACES = 8;

/** Two decimals, or as many more as show two digits of something small: 0.001 is not nought. */
function placesFor({ n, d }: Fraction): number {
  let places = 2;
  while (n !== 0 && places < MOST_PLACES && Math.abs(n) * 10 ** places < 10 * d) places++;
  return places;
}

/** A value as plain text: an exact number without needless decimals, a list with commas, anything else as it is. */
export function plainly(value: unknown): string {
  if (isFraction(value)) return showFraction(value, placesFor(value));
  if (typeof value === 'number')
    return Number.isSafeInteger(value) ? showFraction(fraction(value), 0) : String(value);
  if (Array.isArray(value)) return value.map(plainly).join(', ');
  return value === null || value === undefined ? '—' : String(value);
}

/** `500 mL`: a number of the data with the unit of the data. */
export function withUnit(value: unknown, unit: unknown): string {
  return unit === '1' || unit === undefined ? plainly(value) : `${plainly(value)} ${plainly(unit)}`;
}

export const foundOf = (data: Data): string => withUnit(data.value, data.unit);
export const limitOf = (data: Data): string => withUnit(data.limit, data.unit);
/** A number of hours as a time that lasts: `55 min`. */
export const hoursLast = (hours: unknown): string =>
  isFraction(hours) ? showDuration(duration(Math.floor((hours.n * HOUR) / hours.d))) : `${plainly(hours)} h`;

/** A sentence begins with a capital. */
export const tidy = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const clock = (time: unknown): string => showTimeOfDay(Number(time) as TimeOfDay);

/** `3/4`: a strength is read as parts, not as a decimal. */
export const parts = (value: unknown): string =>
  isFraction(value) ? `${value.n}/${value.d}` : plainly(value);
