/**
 * What does the ward's clock say, and when is "06:00" on a day when the clocks change?
 * Named times are wall clock in a named zone; everything else is elapsed time. Temporal knows the zones; because asking
 * it costs microseconds, offsets are remembered between two clock changes.
 */
import { Temporal } from 'temporal-polyfill';
import { type DayName, type DayNumber, dayNamed, dayNumber, dayNumberOf } from './calendar.ts';
import { DAY, HOUR, type Instant, instant, MINUTE, SECOND } from './instant.ts';

export { type DayName, type DayNumber, nextDay, previousDay } from './calendar.ts';

declare const zoneBrand: unique symbol;
/** An IANA zone that this host knows, such as `Europe/London`. */
export type Zone = string & { readonly [zoneBrand]: 'IANA' };

/** Minutes after midnight on the wall clock, 0 to 1439. */
export type TimeOfDay = number & { readonly __timeOfDay?: never };

type Stretch = { readonly from: number; readonly until: number; readonly offset: number };
const remembered = new Map<string, Stretch[]>();

/** The zone as it is properly written, or null if this host does not know it. Offsets such as `+02:00` are no zones: they do not know summer. */
export function zone(name: string): Zone | null {
  if (!/^[A-Za-z][A-Za-z0-9_+-]*(\/[A-Za-z0-9_+-]+)*$/.test(name)) return null;
  try {
    return Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(name).timeZoneId as Zone;
  } catch {
    return null;
  }
}

function stretchAt(at: number, inZone: Zone): Stretch {
  const known = remembered.get(inZone) ?? [];
  const hit = known.find((stretch) => at >= stretch.from && at < stretch.until);
  if (hit !== undefined) return hit;
  const zoned = Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(inZone);
  const next = zoned.getTimeZoneTransition('next');
  const last = zoned.add({ milliseconds: 1 }).getTimeZoneTransition('previous');
  const stretch = {
    from: last?.epochMilliseconds ?? Number.NEGATIVE_INFINITY,
    until: next?.epochMilliseconds ?? Number.POSITIVE_INFINITY,
    offset: zoned.offsetNanoseconds / 1e6,
  };
  remembered.set(inZone, [...known, stretch]);
  return stretch;
}

/** How far the wall clock is ahead of UTC at that instant, in ms. */
export const offsetAt = (at: Instant, inZone: Zone): number => stretchAt(at, inZone).offset;

const wall = (at: Instant, inZone: Zone): number => at + offsetAt(at, inZone);

export const dayNumberAt = (at: Instant, inZone: Zone): DayNumber => Math.floor(wall(at, inZone) / DAY);
export const dayAt = (at: Instant, inZone: Zone): DayName => dayNamed(dayNumberAt(at, inZone));
export const timeOfDayAt = (at: Instant, inZone: Zone): TimeOfDay => {
  const ms = wall(at, inZone);
  return Math.floor((ms - Math.floor(ms / DAY) * DAY) / MINUTE);
};

/**
 * The instant of a wall-clock time, as RFC 5545 reads it (3.3.5): in spring's gap the clock is read as if it had not
 * been changed (02:30 is what then shows 03:30, so it falls after 03:00), and a time that comes twice in autumn is
 * meant the first time.
 */
export const instantOf = (day: DayName, time: TimeOfDay, inZone: Zone): Instant =>
  instantOn(dayNumber(day), time, inZone);

/** As `instantOf`, for a day by its number. Two clock changes within two days are beyond it. */
export function instantOn(day: DayNumber, time: TimeOfDay, inZone: Zone): Instant {
  const wallMs = day * DAY + time * MINUTE;
  const before = stretchAt(wallMs - DAY, inZone).offset;
  const after = stretchAt(wallMs + DAY, inZone).offset;
  const isAfter = before !== after && stretchAt(wallMs - before, inZone).offset !== before;
  return instant(wallMs - (isAfter && stretchAt(wallMs - after, inZone).offset === after ? after : before));
}

/** The most recent instant, not after `at`, at which the wall clock showed `time`: the start of the feeding day, say. */
export function lastTime(time: TimeOfDay, at: Instant, inZone: Zone): Instant {
  for (let day = dayNumberAt(at, inZone) + 1; ; day -= 1) {
    const candidate = instantOn(day, time, inZone);
    if (candidate <= at) return candidate;
  }
}

/** The first instant after `at` at which the wall clock shows `time`. */
export function nextTime(time: TimeOfDay, at: Instant, inZone: Zone): Instant {
  for (let day = dayNumberAt(at, inZone) - 1; ; day += 1) {
    const candidate = instantOn(day, time, inZone);
    if (candidate > at) return candidate;
  }
}

/** Every instant in [from, until) at which the wall clock shows one of the times, in order. */
export function timesWithin(
  times: readonly TimeOfDay[],
  from: Instant,
  until: Instant,
  inZone: Zone,
): readonly Instant[] {
  const found: Instant[] = [];
  for (let day = dayNumberAt(from, inZone) - 1; instantOn(day, 0, inZone) < until; day += 1) {
    const instants = times.map((time) => instantOn(day, time, inZone));
    found.push(...instants.filter((at) => at >= from && at < until));
  }
  return found.toSorted((a, b) => a - b);
}

const two = (count: number): string => String(count).padStart(2, '0');

/** `HH:MM` on a 24-hour clock, or null. */
export function parseTimeOfDay(text: string): TimeOfDay | null {
  const found = /^([01]\d|2[0-3]):([0-5]\d)$/.exec(text);
  return found === null ? null : Number(found[1]) * 60 + Number(found[2]);
}

export const showTimeOfDay = (time: TimeOfDay): string => `${two(Math.floor(time / 60))}:${two(time % 60)}`;

const RFC_3339 =
  /^\d{4}-\d\d-\d\dT(?:[01]\d|2[0-3]):[0-5]\d(?::[0-5]\d(?:\.\d{1,3})?)?(?:Z|[+-](?:[01]\d|2[0-3]):[0-5]\d)$/;

const ZERO = 48;

/** The number that two digits of a text write. */
const twoDigits = (text: string, at: number): number =>
  (text.charCodeAt(at) - ZERO) * 10 + text.charCodeAt(at + 1) - ZERO;

/** The minutes of HH:MM within a text. */
const minutesIn = (text: string, at: number): number => twoDigits(text, at) * 60 + twoDigits(text, at + 3);

/**
 * An RFC 3339 instant with its offset; null for a date alone, a time without zone, an impossible date, or parts of a ms.
 * Arithmetic and no library: a ward's record holds two of them in each of a million entries.
 */
export function parseInstant(text: string): Instant | null {
  if (!RFC_3339.test(text)) return null;
  const year = twoDigits(text, 0) * 100 + twoDigits(text, 2);
  const day = dayNumberOf(year, twoDigits(text, 5), twoDigits(text, 8));
  if (day === null) return null;
  const isUtc = text.endsWith('Z');
  const end = text.length - (isUtc ? 1 : 6);
  const offset = isUtc ? 0 : (text[end] === '-' ? -1 : 1) * minutesIn(text, end + 1);
  const ms = end > 17 ? Math.round(Number(text.slice(17, end)) * SECOND) : 0;
  return instant(day * DAY + (minutesIn(text, 11) - offset) * MINUTE + ms);
}

/** RFC 3339 with the zone's offset then: `2026-11-25T18:00:00+00:00`. */
export function showInstant(at: Instant, inZone: Zone): string {
  const offset = offsetAt(at, inZone);
  const ms = at + offset - dayNumberAt(at, inZone) * DAY;
  const seconds = two(Math.floor((ms % MINUTE) / SECOND));
  const parts = ms % SECOND === 0 ? '' : `.${String(ms % SECOND).padStart(3, '0')}`;
  const ahead = Math.abs(offset);
  const from = `${offset < 0 ? '-' : '+'}${two(Math.floor(ahead / HOUR))}:${two((ahead % HOUR) / MINUTE)}`;
  return `${dayAt(at, inZone)}T${showTimeOfDay(timeOfDayAt(at, inZone))}:${seconds}${parts}${from}`;
}
