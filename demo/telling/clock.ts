/**
 * When was that? `Sat 08:05` by the ward's clock, in the three days of the story. The night from Saturday to Sunday has
 * the hour from 01:00 twice: `Sun 01:30` is the first one, `Sun 01:30 GMT` the second.
 */

import { after, type Duration, HOUR, type Instant } from '@feedwright/core/base/instant';
import { impossible } from '@feedwright/core/base/result';
import { type DayName, instantOf, parseTimeOfDay, type Zone } from '@feedwright/core/base/zone';

export const LONDON = 'Europe/London' as Zone;

const DAYS: Readonly<Record<string, DayName>> = {
  Thu: '2026-10-22' as DayName,
  Fri: '2026-10-23' as DayName,
  Sat: '2026-10-24' as DayName,
  Sun: '2026-10-25' as DayName,
  Mon: '2026-10-26' as DayName,
  Tue: '2026-10-27' as DayName,
};

export function when(text: string): Instant {
  const [name = '', clock = '', again] = text.split(' ');
  const day = DAYS[name] ?? impossible(`no day of the story: ${text}`);
  const time = parseTimeOfDay(clock) ?? impossible(`no time of day: ${text}`);
  const first = instantOf(day, time, LONDON);
  return again === 'GMT' ? after(first, HOUR) : first;
}

/** Every so much elapsed time from a moment on, counted anew from each of the next ones; the last is left out. */
export function everySince(moments: readonly string[], every: Duration): readonly Instant[] {
  const [from, ...later] = moments.map(when);
  const found: Instant[] = [];
  let start = from ?? impossible('no moment to begin at');
  for (const until of later) {
    for (let at = start; at < until; at = after(at, every)) found.push(at);
    start = until;
  }
  return found;
}
