/**
 * When does this Timing say to feed?
 * Bounds, times of the day and how long one takes, in the order's own terms: named times on the ward's clock. "Every 4
 * hours from 16:00Z" fixes them; "six times a day", codes such as `BID` or `AC`, ranges and counts do not, and are asked.
 */
import { DAY, type Duration, duration, HOUR, type Instant, MINUTE } from '@feedwright/core/base/instant';
import {
  parseTimeOfDay,
  showTimeOfDay,
  type TimeOfDay,
  timeOfDayAt,
  type Zone,
} from '@feedwright/core/base/zone';
import { type Exact, of, times as product } from '@feedwright/core/reckon/exact';
import { conceptOf, labelOf } from '../read/coded.ts';
import { type Element, excerpt, field, items, numeralOf, text, textOf } from '../read/element.ts';
import { momentOf } from '../read/moment.ts';
import { exactOf } from '../read/numeral.ts';
import { shown } from '../read/quantity.ts';
import { answered, ask, note, type Place, stop, within } from '../read/reading.ts';
import { parseUcum } from '../ucum.ts';

export type Schedule = {
  readonly place: Place;
  readonly from: Instant | null;
  readonly until: Instant | null;
  /** Whether it is said to come again; if not, it runs on from its beginning. */
  readonly repeats: boolean;
  /** The times of the day at which it begins; null where it does not repeat, and while they are not fixed. */
  readonly times: readonly TimeOfDay[] | null;
  /** How often a day, also while the times are not fixed; null where that is not said. */
  readonly timesADay: number | null;
  readonly lasts: Duration | null;
};

const DAY_MINUTES = DAY / MINUTE;
/** Longer than any course that one order covers, and short enough for exact amounts. */
const LONGEST = 366 * DAY;
/** More often than every quarter of an hour is no feed by the clock. */
export const MOST_TIMES = 96;
const WEEK = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

/** Ranges of how often, which name no time. */
const RANGES = ['frequencyMax', 'periodMax'] as const;
/** Ends that are no moment: a number of times, a length from nowhere. */
const VAGUE_ENDS = ['boundsDuration', 'boundsRange', 'count', 'countMax'] as const;

const exactAt = (repeat: Element, name: string): Exact | null => {
  const numeral = numeralOf(repeat, name);
  const value = numeral === null ? null : exactOf(numeral);
  if (numeral !== null && (value === null || value.n <= 0n)) {
    stop(field(repeat, name)!, 'FH8', 'fhir/not-positive', { written: excerpt(numeral) });
    return null;
  }
  return value;
};

/** A length of time in whole ms, or null where there is none, or none that is whole. */
function lengthOf(repeat: Element, name: string, unitName: string): Duration | null {
  const value = exactAt(repeat, name);
  const code = textOf(repeat, unitName);
  if (value === null) return null;
  const unit = parseUcum(code ?? '');
  if (unit === null || unit.dimension !== 'time') {
    stop(field(repeat, name)!, 'FH12', 'fhir/length-without-unit', { unit: code });
    return null;
  }
  const ms = product(value, unit.factor, of(HOUR));
  const whole = ms.n % ms.d === 0n && ms.n / ms.d <= BigInt(LONGEST);
  if (!whole) stop(field(repeat, name)!, 'FH8', 'fhir/number-too-long', { value: code });
  return whole ? duration(Number(ms.n / ms.d)) : null;
}

type Bounds = { readonly from: Instant | null; readonly until: Instant | null };

function vagueEnd(repeat: Element | null): Instant | null {
  const name = VAGUE_ENDS.find((one) => field(repeat, one) !== null);
  if (repeat === null || name === undefined) return null;
  for (const count of ['count', 'countMax']) numeralOf(repeat, count);
  const end = ask(within(repeat, name), 'FH12', 'fhir/end-without-moment', 'end', { name });
  return end === 'open' ? null : end;
}

function boundsOf(timing: Element, repeat: Element | null, zone: Zone): Bounds {
  const period = field(repeat, 'boundsPeriod');
  const events = items(timing, 'event');
  const first = events.length === 1 && repeat === null ? events[0]! : null;
  const from = momentOf(field(period, 'start') ?? first, zone, 'start') ?? answered(timing, 'start');
  const until = momentOf(field(period, 'end'), zone, 'end') ?? vagueEnd(repeat);
  if (period !== null && from !== null && until !== null && until <= from) {
    stop(period, 'FH11', 'fhir/ends-before-start');
  }
  return { from, until };
}

/** Every `step` minutes around the clock, from a time; only where they come round to it again. */
const around = (start: TimeOfDay, step: number): readonly TimeOfDay[] | null =>
  step >= DAY_MINUTES / MOST_TIMES && DAY_MINUTES % step === 0
    ? Array.from({ length: DAY_MINUTES / step }, (_, place) => (start + place * step) % DAY_MINUTES).toSorted(
        (a, b) => a - b,
      )
    : null;

const timesText = (times: readonly TimeOfDay[] | null): string | null =>
  times === null ? null : times.map(showTimeOfDay).join(',');

/** FHIR's `time` has seconds; a feed begins on the minute. */
function namedTimes(repeat: Element): readonly TimeOfDay[] | null {
  const written = items(repeat, 'timeOfDay');
  const read = written.map((element) => {
    const [, minute = '', seconds = ''] = /^(\d\d:\d\d):(\d\d)(?:\.0+)?$/.exec(text(element) ?? '') ?? [];
    const time = parseTimeOfDay(minute);
    if (time === null || seconds !== '00') {
      stop(element, 'FH12', 'fhir/not-a-time', { value: text(element) });
      return null;
    }
    return time;
  });
  const known = read.filter((time) => time !== null);
  return known.length > 0 && known.length === read.length && known.length <= MOST_TIMES
    ? [...new Set(known)].toSorted((a, b) => a - b)
    : null;
}

/** What keeps the times of the day from being fixed, most telling first; null where nothing does. */
function looseness(
  timing: Element,
  repeat: Element | null,
): { readonly code: string; readonly value: string } | null {
  const open = RANGES.find((name) => numeralOf(repeat, name) !== null);
  if (open !== undefined) return { code: 'fhir/schedule-open', value: open };
  const whens = items(repeat, 'when').map((element) => text(element) ?? '');
  if (whens.length > 0) return { code: 'fhir/schedule-by-event', value: whens.join(', ') };
  if (repeat !== null) return null;
  if (items(timing, 'event').length > 1) return { code: 'fhir/schedule-by-dates', value: 'event' };
  const code = labelOf(conceptOf(field(timing, 'code')));
  return code === null ? null : { code: 'fhir/schedule-by-code', value: code };
}

function stopWeekdays(repeat: Element | null): void {
  const days = items(repeat, 'dayOfWeek').map((element) => text(element) ?? '');
  if (days.length > 0 && WEEK.some((day) => !days.includes(day))) {
    stop(field(repeat, 'dayOfWeek')!, 'FH12', 'fhir/not-every-day', { days: days.join(', ') });
  }
}

/** How often in a period: a whole number, 1 where it is not said. */
function frequencyOf(repeat: Element): number | null {
  const written = field(repeat, 'frequency');
  if (written === null) return 1;
  const often = exactAt(repeat, 'frequency');
  if (often === null) return null;
  if (often.n % often.d === 0n) return Number(often.n / often.d);
  stop(written, 'FH12', 'fhir/not-a-count', { value: shown(often) });
  return null;
}

type Rhythm = {
  readonly named: readonly TimeOfDay[] | null;
  readonly often: number | null;
  readonly period: Duration | null;
};

const rhythmOf = (repeat: Element): Rhythm => ({
  named: namedTimes(repeat),
  often: frequencyOf(repeat),
  period: lengthOf(repeat, 'period', 'periodUnit'),
});

function timesADay({ named, often, period }: Rhythm): number | null {
  if (named !== null) return named.length;
  return often === null || period === null || (often * DAY) % period !== 0 ? null : (often * DAY) / period;
}

/** The times that a frequency in a period gives, or the question that it leaves. */
function timesOf(
  repeat: Element,
  { named, often, period }: Rhythm,
  from: Instant | null,
  zone: Zone,
): readonly TimeOfDay[] | null {
  if (named !== null) {
    const agrees = often === 1 || often === named.length;
    if (agrees && (period === null || period === DAY)) return named;
    return ask(repeat, 'FH12', 'fhir/times-disagree', 'times', { often, likely: timesText(named) });
  }
  if (period === null || often === null) return null;
  if (period > often * DAY) {
    stop(repeat, 'FH12', 'fhir/not-every-day', { often, inHours: period / HOUR });
    return null;
  }
  const step = period % (often * MINUTE) === 0 ? period / often / MINUTE : null;
  const onTheMinute = from !== null && from % MINUTE === 0;
  const likely = onTheMinute && step !== null ? around(timeOfDayAt(from, zone), step) : null;
  // "Six times a day" does not say when; "once in four hours" from a moment does.
  if (often === 1 && likely !== null) return likely;
  return ask(repeat, 'FH12', 'fhir/times-not-fixed', 'times', {
    often,
    inHours: period / HOUR,
    likely: timesText(likely),
  });
}

function lastingOf(repeat: Element | null): Duration | null {
  if (repeat === null) return null;
  const lasts = lengthOf(repeat, 'duration', 'durationUnit');
  const most = numeralOf(repeat, 'durationMax');
  if (most === null) return lasts;
  return ask(within(repeat, 'durationMax'), 'FH12', 'fhir/duration-range', 'minutes', {
    leastMinutes: lasts === null ? null : lasts / MINUTE,
    most: excerpt(most),
  });
}

type Recurrence = Pick<Schedule, 'repeats' | 'times' | 'timesADay'>;

function recurrenceOf(timing: Element, repeat: Element | null, from: Instant | null, zone: Zone): Recurrence {
  const rhythm = repeat === null ? null : rhythmOf(repeat);
  const daily = rhythm === null ? null : timesADay(rhythm);
  const loose = looseness(timing, repeat);
  if (loose !== null) {
    const times = ask(timing, 'FH12', loose.code, 'times', { value: loose.value });
    return { repeats: true, times, timesADay: times?.length ?? daily };
  }
  const repeats = ['frequency', 'period', 'timeOfDay'].some((name) => field(repeat, name) !== null);
  if (repeat === null || rhythm === null || !repeats) return { repeats: false, times: null, timesADay: null };
  return { repeats, times: timesOf(repeat, rhythm, from, zone), timesADay: daily };
}

/** [FH12] A Timing as bounds, times of the day and a length; what it leaves open is asked. */
export function scheduleOf(timing: Element, zone: Zone): Schedule {
  const repeat = field(timing, 'repeat');
  const { from, until } = boundsOf(timing, repeat, zone);
  stopWeekdays(repeat);
  numeralOf(repeat, 'offset');
  const recurrence = recurrenceOf(timing, repeat, from, zone);
  const code = field(timing, 'code');
  if (repeat !== null && code !== null) {
    note(code, 'FH12', 'fhir/schedule-code-beside', { value: labelOf(conceptOf(code)) });
  }
  return { place: timing, from, until, ...recurrence, lasts: lastingOf(repeat) };
}
