/** What did the person mean by this flag? Each flag is read once, strictly, and refused by its own name. */
import { type Instant, instant } from '@feedwright/core/base/instant';
import {
  dayAt,
  instantOf,
  offsetAt,
  parseInstant,
  parseTimeOfDay,
  timeOfDayAt,
  type Zone,
  zone,
} from '@feedwright/core/base/zone';
import { refuse } from './fail.ts';

/** The wall clock of the zone, where it shows that time exactly once that day. */
function localInstant(text: string, inZone: Zone): Instant | null {
  const [day = '', clock = ''] = text.split('T');
  const time = parseTimeOfDay(clock);
  if (!/^\d{4}-\d\d-\d\d$/.test(day) || time === null || parseInstant(`${day}T00:00Z`) === null) return null;
  const at = instantOf(day, time, inZone);
  const shows = dayAt(at, inZone) === day && timeOfDayAt(at, inZone) === time;
  // The hour that comes twice is two moments: the offset has to be written.
  const later = instant(at + offsetAt(at, inZone) - offsetAt(instant(at + 6 * 3_600_000), inZone));
  const again = later !== at && timeOfDayAt(later, inZone) === time && dayAt(later, inZone) === day;
  return shows && !again ? at : null;
}

/** `2026-11-25T08:00:00+00:00`, or `2026-11-25T08:00` by the clock of the order's own zone. */
export const momentArgument = (flag: string, text: string, inZone: Zone): Instant =>
  parseInstant(text) ?? localInstant(text, inZone) ?? refuse(flag, 'argument/instant', { text });

export const zoneArgument = (flag: string, text: string): Zone =>
  zone(text) ?? refuse(flag, 'argument/zone', { text });

const MOST_HOURS = 168;

export function hoursArgument(flag: string, text: string): number {
  const hours = /^\d{1,3}$/.test(text) ? Number(text) : 0;
  return hours >= 1 && hours <= MOST_HOURS ? hours : refuse(flag, 'argument/hours', { text });
}

/** `KEY=VALUE`, as often as there are things to confirm. */
export const confirmArgument = (
  text: string,
  sofar: Readonly<Record<string, string>>,
): Readonly<Record<string, string>> => {
  const at = text.indexOf('=');
  if (at < 1 || at === text.length - 1) refuse('--confirm', 'argument/confirm', { text });
  return { ...sofar, [text.slice(0, at).trim()]: text.slice(at + 1).trim() };
};
