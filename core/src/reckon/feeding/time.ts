/** When does it run dry, when does it end, how long is it in between? Over midnight and over clock changes. */
import { type Duration, duration, HOUR, type Instant, MINUTE } from '../../base/instant.ts';
import type { Bad } from '../../base/result.ts';
import { shownDuration } from '../../base/working.ts';
import type { Zone } from '../../base/zone.ts';
import { gives, names, optional } from '../asking/asks.ts';
import { hours as hoursAsk, rate, volume } from '../asking/usual-asks.ts';
import { later, type Moment, moment, type Placed, place, zone } from '../asking/when.ts';
import { calculation, type Known, type Line, type Sheet } from '../declare.ts';
import { type Exact, of, over, rounded, times, UNITY } from '../exact.ts';

/** The first whole ms at which so many hours have gone by. */
export const msOf = (hours: Exact): Duration =>
  duration(Number(rounded(times(hours, of(HOUR)), UNITY, 'up').n));

export const start = moment('start', 'from', 'startAt', 'startsAt', 'startTime', 'begin', 'hungAt');

export const endGives = { lasts: names('t'), endsAt: names('end'), daysLater: gives('days', '1') };

/** The lines that say when it ends; none without a start. */
export function endLines(
  from: Moment | null,
  inZone: Zone | null,
  t: Known,
  sheet: Sheet<keyof typeof endGives>,
): readonly Line[] | Bad {
  const lasts = msOf(t);
  const shownLasts = sheet.shown('lasts', 't', [t], shownDuration(lasts));
  if (from === null) return [shownLasts];
  const placed = place(from, inZone, 'start');
  if (!placed.ok) return placed;
  return [shownLasts, ...endOf(placed.value, lasts, t, sheet)];
}

function endOf(
  placed: Placed,
  lasts: Duration,
  t: Known,
  sheet: Sheet<keyof typeof endGives>,
): readonly Line[] {
  if (placed.kind === 'at') placed.cautions.forEach(sheet.caution);
  else sheet.caution('no-clock-change');
  const { shown, days } = later(placed, lasts);
  return [
    sheet.shown('endsAt', 'end = start + t', [t], shown),
    sheet.number('daysLater', 'midnights from start to end', [], of(days), 'arithmetic'),
  ];
}

export const runOut = calculation({
  name: 'run-out',
  also: [
    'time-to-empty',
    'runs-dry',
    'run-out-time',
    'time-to-give',
    'infusion-time',
    'hours-to-empty',
    'duration',
  ],
  asks: { volumeMl: volume, rateMlPerHour: rate, start: optional(start), zone: optional(zone) },
  gives: { hours: gives('t', 'h', '0.01'), ...endGives },
  equations: ['t = V / r', 'end = start + t'],
  sources: ['E4'],
  rule: 'RK14',
  example: { volume: '1000 mL', rate: '65 mL/h', start: '19:30' },
  compute: ({ volumeMl: V, rateMlPerHour: r, start: from, zone: inZone }, sheet) => {
    const t = sheet.number('hours', 't = V / r', [V, r], over(V, r));
    const end = endLines(from, inZone, t, sheet);
    return 'ok' in end ? end : [t, ...end];
  },
});

export const endTime = calculation({
  name: 'end-time',
  also: ['finish-time', 'end', 'ends-at'],
  asks: { start, hours: hoursAsk, zone: optional(zone) },
  gives: endGives,
  equations: ['end = start + t'],
  sources: ['E4'],
  rule: 'RK14',
  example: { start: '2026-03-28T22:00', hours: '10', zone: 'Europe/London' },
  compute: ({ start: from, hours: t, zone: inZone }, sheet) => endLines(from, inZone, t, sheet),
});

const WHOLE_DAY = 1440;

/** From one moment to the next time the other is shown, in ms; the hours of the clock where no day is known. */
function elapsed(from: Placed, until: Placed): Duration | null {
  if (from.kind === 'clock' && until.kind === 'clock') {
    const minutes = (until.minute - from.minute + WHOLE_DAY) % WHOLE_DAY;
    return duration((minutes === 0 ? WHOLE_DAY : minutes) * MINUTE);
  }
  if (from.kind === 'clock' || until.kind === 'clock') return null;
  return duration((until.at as Instant) - from.at);
}

/** The hours from one moment to the other, or why there are none. */
export function hoursFromTo(
  from: Moment,
  until: Moment,
  inZone: Zone | null,
  sheet: Pick<Sheet<string>, 'refuse' | 'caution'>,
): Known | Bad {
  const [first, last] = [place(from, inZone, 'start'), place(until, inZone, 'until')];
  if (!first.ok) return first;
  if (!last.ok) return last;
  const lasts = elapsed(first.value, last.value);
  if (lasts === null) return sheet.refuse('until', 'reckon/mixed-moments');
  if (lasts <= 0) return sheet.refuse('until', 'reckon/ends-before-start');
  if (first.value.kind === 'clock') sheet.caution('no-clock-change');
  return { ...over(of(lasts), of(HOUR)), symbol: 't', unit: 'h', basis: { kind: 'arithmetic' } };
}

export const hoursBetween = calculation({
  name: 'hours-between',
  also: ['elapsed', 'time-between', 'hours-from-to'],
  asks: { start, until: moment('until', 'end', 'to', 'endAt', 'stop', 'endTime'), zone: optional(zone) },
  gives: { hours: gives('t', 'h', '0.01'), lasts: names('t') },
  equations: ['t = end − start'],
  sources: ['E4'],
  rule: 'RK14',
  example: { start: '20:00', until: '08:00' },
  compute: ({ start: from, until, zone: inZone }, sheet) => {
    const t = hoursFromTo(from, until, inZone, sheet);
    if ('ok' in t) return t;
    return [
      sheet.number('hours', 't = end − start', [], t),
      sheet.shown('lasts', 't = end − start', [], shownDuration(msOf(t))),
    ];
  },
});
