/**
 * Which moment is this dateTime?
 * A FHIR time has an offset, which fixes the moment but not the ward's clock: `16:00Z` is 17:00 in London in September.
 * A day alone is no moment, and a time without offset is not FHIR: both are asked about.
 */
import type { Instant } from '@feedwright/core/base/instant';
import {
  type DayName,
  instantOf,
  parseInstant,
  parseTimeOfDay,
  showInstant,
  type Zone,
} from '@feedwright/core/base/zone';
import type { AnswerKey } from '../answers.ts';
import { type Element, text } from './element.ts';
import { ask, note, type Place, stop } from './reading.ts';

type MomentKey = Extract<AnswerKey, 'start' | 'end' | 'prescribedAt'>;

const DAY_ALONE = /^\d{4}(-\d\d(-\d\d)?)?$/;
const NO_OFFSET = /^(\d{4}-\d\d-\d\d)T(\d\d:\d\d)(?::00(?:\.0+)?)?$/;

const isDay = (day: string): boolean => parseInstant(`${day}T00:00Z`) !== null;

/** [FH11] The ward's zone; UTC stands in for it, with the question open, where nobody said. */
export function zoneOf(place: Place): Zone {
  return ask(place, 'FH11', 'fhir/zone-missing', 'zone') ?? ('UTC' as Zone);
}

function withoutOffset(element: Element, day: string, time: string, zone: Zone): Instant | null {
  const meant = ask(element, 'FH11', 'fhir/no-offset', 'offset', { value: `${day}T${time}` });
  const at = parseTimeOfDay(time);
  if (meant === null || at === null || !isDay(day)) return null;
  return meant === 'utc' ? parseInstant(`${day}T${time}Z`) : instantOf(day, at, zone);
}

/** [FH11] The moment, or null; then why is on record, with the answer that would settle it. */
export function momentOf(element: Element | null, zone: Zone, key: MomentKey): Instant | null {
  const written = text(element)?.trim();
  if (element === null || written === undefined) return null;
  const known = parseInstant(written);
  if (known !== null) return known;
  if (DAY_ALONE.test(written)) {
    const answer = ask(element, 'FH11', 'fhir/day-without-time', key, { value: written });
    return answer === 'open' ? null : answer;
  }
  const [, day, time] = NO_OFFSET.exec(written) ?? [];
  if (day !== undefined && time !== undefined && isDay(day)) return withoutOffset(element, day, time, zone);
  stop(element, 'FH11', 'fhir/not-a-moment', { value: written });
  return null;
}

/** The day on which something was measured: the date as it is written, in its writer's own offset. */
export function dayWritten(element: Element | null): DayName | null {
  const day = text(element)?.slice(0, 10) ?? '';
  return /^\d{4}-\d\d-\d\d$/.test(day) && isDay(day) ? day : null;
}

/** [FH11] Where times are written in UTC and the ward's clock shows others, both are shown. */
export function noteClock(place: Place, at: Instant | null, zone: Zone): void {
  if (at === null) return;
  const local = showInstant(at, zone);
  const utc = showInstant(at, 'UTC' as Zone);
  if (local.slice(0, 16) !== utc.slice(0, 16)) note(place, 'FH11', 'fhir/clock-differs', { utc, local });
}
