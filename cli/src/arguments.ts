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

/** The moments at which the clock of the zone shows that time that day: one, two where it goes back, none where it skips. */
function localInstants(text: string, inZone: Zone): readonly Instant[] | null {
  const [day = '', clock = ''] = text.split('T');
  const time = parseTimeOfDay(clock);
  if (!/^\d{4}-\d\d-\d\d$/.test(day) || time === null || parseInstant(`${day}T00:00Z`) === null) return null;
  const first = instantOf(day, time, inZone);
  const again = instant(first + offsetAt(first, inZone) - offsetAt(instant(first + 6 * 3_600_000), inZone));
  const shows = (at: Instant): boolean => dayAt(at, inZone) === day && timeOfDayAt(at, inZone) === time;
  return [first, ...(again === first ? [] : [again])].filter(shows);
}

/** `2026-11-25T08:00:00+00:00`, or `2026-11-25T08:00` by the clock of the order's own zone. */
export function momentArgument(flag: string, text: string, inZone: Zone): Instant {
  const exact = parseInstant(text);
  if (exact !== null) return exact;
  const shown = localInstants(text, inZone);
  const [only] = shown ?? [];
  if (shown?.length === 1 && only !== undefined) return only;
  const code = shown === null ? 'instant' : only === undefined ? 'instant-never' : 'instant-twice';
  return refuse(flag, `argument/${code}`, { text, zone: inZone });
}

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
  sofar: Readonly<Record<string, string>> = {},
): Readonly<Record<string, string>> => {
  const at = text.indexOf('=');
  if (at < 1 || at === text.length - 1) refuse('--confirm', 'argument/confirm', { text });
  return { ...sofar, [text.slice(0, at).trim()]: text.slice(at + 1).trim() };
};
