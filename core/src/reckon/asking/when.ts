/**
 * Which moment did this person mean?
 * `08:00`, `0800`, `8 pm`, `24:00` on a clock without a day, `2026-10-25T00:30` on the clock of a named zone, or an
 * instant with its offset. On a bare clock an hour is an hour; over a clock change the day and the zone have to be known.
 */

import { type Duration, type Instant, instant, MINUTE } from '../../base/instant.ts';
import { bad, issue, ok, type Result } from '../../base/result.ts';
import { type Shown, shownChoice } from '../../base/working.ts';
import {
  type DayName,
  dayAt,
  instantOf,
  offsetAt,
  parseInstant,
  parseTimeOfDay,
  showInstant,
  timeOfDayAt,
  type Zone,
  zone as zoneNamed,
} from '../../base/zone.ts';
import type { Ask } from '../declare.ts';

export type Moment =
  /** Minutes after midnight, 0 to 1440. */
  | { readonly kind: 'clock'; readonly minute: number }
  | { readonly kind: 'local'; readonly day: DayName; readonly minute: number }
  | { readonly kind: 'instant'; readonly at: Instant };

const NAMED: ReadonlyMap<string, number> = new Map([
  ['noon', 720],
  ['midday', 720],
  ['midnight', 1440],
]);
const DAY_MINUTES = 1440;

/** Minutes after midnight on a 24-hour clock (`8:00`, `0800`, `24:00`) or a 12-hour one (`8 pm`); null for anything else. */
export function parseClock(text: string): number | null {
  const clean = text.trim().toLowerCase();
  const named = NAMED.get(clean);
  if (named !== undefined) return named;
  const found = /^(\d{1,2})(?:[:.]?(\d\d))?\s*(h|hrs?|am|pm|a\.m\.|p\.m\.)?$/.exec(clean);
  if (found === null) return null;
  const [, hour = '', minute, half = ''] = found;
  const is12 = /^[ap]/.test(half);
  if (!is12 && minute === undefined) return null;
  if (is12 && (Number(hour) < 1 || Number(hour) > 12)) return null;
  const hours = is12 ? (Number(hour) % 12) + (half.startsWith('p') ? 12 : 0) : Number(hour);
  const total = hours * 60 + Number(minute ?? 0);
  return Number(minute ?? 0) < 60 && total <= DAY_MINUTES ? total : null;
}

export const showClock = (minute: number): string =>
  `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;

function readMoment(text: string): Moment | null {
  const minute = parseClock(text);
  if (minute !== null) return { kind: 'clock', minute };
  const at = parseInstant(text.trim().replace(' ', 'T'));
  if (at !== null) return { kind: 'instant', at };
  const [, day = '', time = ''] = /^(\d{4}-\d\d-\d\d)[T ]\s*(\d\d:\d\d)$/.exec(text.trim()) ?? [];
  const local = parseTimeOfDay(time);
  if (local === null || parseInstant(`${day}T00:00Z`) === null) return null;
  return { kind: 'local', day, minute: local };
}

const showMoment = (moment: Moment): Shown =>
  moment.kind === 'instant'
    ? { kind: 'instant', at: moment.at }
    : shownChoice(`${moment.kind === 'local' ? `${moment.day}T` : ''}${showClock(moment.minute)}`);

const shape = {
  unit: '',
  band: null,
  choices: [],
  required: true,
  assumed: null,
  others: [],
  takes: () => false,
} as const;

export const moment = (symbol: string, ...also: readonly string[]): Ask<Moment> => ({
  ...shape,
  kind: 'moment',
  symbol,
  also,
  read: ([raw = '']) => {
    const found = readMoment(String(raw));
    return found === null ? bad(issue([], 'reckon/not-a-moment', { text: String(raw) })) : ok(found);
  },
  show: showMoment,
});

export const zone: Ask<Zone> = {
  ...shape,
  kind: 'zone',
  symbol: 'zone',
  also: ['timezone', 'tz'],
  read: ([raw = '']) => {
    const found = zoneNamed(String(raw).trim());
    return found === null ? bad(issue([], 'reckon/not-a-zone', { text: String(raw) })) : ok(found);
  },
  show: shownChoice,
};

/** A moment on the world's time line, or one on a bare clock; a day without a zone cannot be placed. */
export type Placed =
  | { readonly kind: 'clock'; readonly minute: number }
  | {
      readonly kind: 'at';
      readonly at: Instant;
      readonly zone: Zone | null;
      readonly cautions: readonly string[];
    };

export function place(moment: Moment, inZone: Zone | null, key: string): Result<Placed> {
  if (moment.kind === 'clock') return ok(moment);
  if (moment.kind === 'instant') return ok({ kind: 'at', at: moment.at, zone: inZone, cautions: [] });
  if (inZone === null) return bad(issue([key], 'reckon/zone-needed', {}));
  const at = instantOf(moment.day, moment.minute, inZone);
  return ok({ kind: 'at', at, zone: inZone, cautions: changeAt(moment, at, inZone) });
}

/** Whether that time of the clock is shown twice that night, or not at all. */
function changeAt(
  moment: { readonly day: DayName; readonly minute: number },
  at: Instant,
  inZone: Zone,
): readonly string[] {
  if (dayAt(at, inZone) !== moment.day || timeOfDayAt(at, inZone) !== moment.minute)
    return ['clock-skips-it'];
  const again = instant(at + offsetAt(at, inZone) - offsetAt(instant(at + 360 * MINUTE), inZone));
  return again !== at && timeOfDayAt(again, inZone) === moment.minute ? ['clock-shows-it-twice'] : [];
}

/** So long after a moment: the clock it shows, cut down to the minute, and how many midnights later. */
export function later(from: Placed, by: Duration): { readonly shown: Shown; readonly days: number } {
  if (from.kind === 'clock') {
    const minute = from.minute + Math.floor(by / MINUTE);
    return { shown: shownChoice(showClock(minute % DAY_MINUTES)), days: Math.floor(minute / DAY_MINUTES) };
  }
  const end = instant(Math.floor((from.at + by) / MINUTE) * MINUTE);
  const { zone: inZone } = from;
  const shown: Shown = inZone === null ? { kind: 'instant', at: end } : shownChoice(showInstant(end, inZone));
  const days =
    inZone === null
      ? Math.floor(by / (DAY_MINUTES * MINUTE))
      : daysBetween(dayAt(from.at, inZone), dayAt(end, inZone));
  return { shown, days };
}

function daysBetween(first: DayName, last: DayName): number {
  const at = (day: DayName): number => parseInstant(`${day}T00:00Z`) ?? 0;
  return Math.round((at(last) - at(first)) / (DAY_MINUTES * MINUTE));
}
