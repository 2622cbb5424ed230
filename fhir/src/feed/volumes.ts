/**
 * What do administrations of a volume make up? At several times, a bolus or an intermittent feed, which FHIR does not
 * tell apart; once a day, a window, one feed or a target that may be made up; several volumes, a climb.
 */
import { DAY, type Duration, HOUR, type Instant, MINUTE } from '@feedwright/core/base/instant';
import { type Rate, timeToGive, type Volume } from '@feedwright/core/base/volume';
import type { TimeOfDay } from '@feedwright/core/base/zone';
import type { Advancement, Regimen } from '@feedwright/core/order/order';
import { ask, type Place, stop } from '../read/reading.ts';
import type { Administration } from './administration.ts';
import {
  MINUTES_A_DAY,
  MIXTURE,
  mixed,
  recurAlike,
  showMl,
  showMlPerHour,
  stepsOf,
  type Work,
} from './feeding.ts';
import { advancementOf, inOrder, noteAdvancement } from './steps.ts';

type Feed = {
  readonly place: Place;
  readonly volume: Volume;
  readonly times: readonly TimeOfDay[];
  readonly lasts: Duration | null;
  readonly rate: Rate | null;
};

/** Rounding a rate to its step moves the end of a feed by seconds; more than a minute is a contradiction. */
function lengthOf({ place, lasts, rate, volume }: Feed): Duration | null {
  const byRate = rate === null ? null : timeToGive(volume, rate);
  if (rate === null || lasts === null || byRate === null) return lasts ?? byRate;
  if (Math.abs(lasts - byRate) <= MINUTE) return lasts;
  stop(place, 'FH12', 'fhir/amounts-contradict', {
    volume: showMl(volume),
    rate: showMlPerHour(rate),
    minutes: lasts / MINUTE,
    minutesByRate: byRate / MINUTE,
  });
  return null;
}

function feeds(work: Work, feed: Feed, advance: Advancement<Volume> | null): Regimen | null {
  const lasts = lengthOf(feed);
  const volume = { volume: feed.volume, of: MIXTURE } as const;
  const { times } = feed;
  if (work.method !== 'pump' && work.method !== 'gravity') {
    // Until a person says how it is given it counts as a bolus, which more rules stand against.
    return { kind: 'bolus', volume, times, lasts, meals: [], advance };
  }
  const takes = lasts ?? ask(feed.place, 'FH12', 'fhir/length-missing', 'minutes');
  return takes === null
    ? null
    : { kind: 'intermittent', volume, times, lasts: takes, by: work.method, advance };
}

function cyclic({ place, volume, rate, lasts }: Feed, from: TimeOfDay): Regimen | null {
  const takes = lasts ?? (rate === null ? null : timeToGive(volume, rate));
  if (takes === null) return null;
  if (takes >= DAY) {
    stop(place, 'FH12', 'fhir/longer-than-a-day', { hours: takes / HOUR });
    return null;
  }
  return {
    kind: 'cyclic',
    from,
    until: (from + Math.ceil(takes / MINUTE)) % MINUTES_A_DAY,
    rate: rate === null ? null : { rate, of: MIXTURE },
    volume: { volume, of: MIXTURE },
    advance: null,
  };
}

const targeted = (volume: Volume, rate: Rate): Regimen => ({
  kind: 'volume-targeted',
  volumePerDay: { volume, of: MIXTURE },
  baseRate: { rate, of: MIXTURE },
  mostRate: null,
  advance: null,
});

/** [FH12] One volume a day with a rate or a length: a window, one feed, or a target that may be made up. */
function onceADay(work: Work, feed: Feed): Regimen | null {
  const meant = ask(feed.place, 'FH12', 'fhir/once-a-day', 'regimen', {
    volume: showMl(feed.volume),
    rate: feed.rate === null ? null : showMlPerHour(feed.rate),
  });
  if (meant === 'volume-targeted') return feed.rate === null ? mixed(work) : targeted(feed.volume, feed.rate);
  if (meant === null) return null;
  const times =
    feed.times.length > 0 ? feed.times : ask(feed.place, 'FH12', 'fhir/volume-without-times', 'times');
  const [from] = times ?? [];
  if (times === null || from === undefined) return null;
  return meant === 'cyclic' ? cyclic(feed, from) : feeds(work, { ...feed, times }, null);
}

function oneVolume(work: Work, { volume, rate, schedule }: Administration): Regimen | null {
  const { place, lasts, repeats, times } = schedule;
  if (volume === null || (repeats && times === null)) return null;
  const feed = { place, volume, rate, lasts, times: times ?? [] };
  if (feed.times.length <= 1 && (rate !== null || lasts !== null)) return onceADay(work, feed);
  const known = times ?? ask(place, 'FH12', 'fhir/volume-without-times', 'times');
  return known === null ? null : feeds(work, { ...feed, times: known }, null);
}

const isSame = (values: readonly unknown[]): boolean => values.every((value) => value === values[0]);

const beginWithinADay = (starts: readonly (Instant | null)[]): boolean => {
  const known = starts.filter((at) => at !== null);
  return isSame(starts) || (known.length === starts.length && Math.max(...known) - Math.min(...known) < DAY);
};

/** One dose written as several administrations, each with its own times. */
function together(administrations: readonly Administration[]): Administration | null {
  const [first] = administrations;
  const schedules = administrations.map(({ schedule }) => schedule);
  const times = schedules.flatMap((schedule) => schedule.times ?? []);
  const alike =
    isSame(administrations.map(({ volume }) => volume)) &&
    isSame(administrations.map(({ rate }) => rate)) &&
    isSame(schedules.map(({ lasts }) => lasts)) &&
    isSame(schedules.map(({ until }) => until)) &&
    beginWithinADay(schedules.map(({ from }) => from));
  const fixed =
    schedules.every((schedule) => schedule.times !== null) && new Set(times).size === times.length;
  return first !== undefined && alike && fixed
    ? { ...first, schedule: { ...first.schedule, times: times.toSorted((a, b) => a - b) } }
    : null;
}

function climbing(work: Work, administrations: readonly Administration[]): Regimen | null {
  const [first] = administrations;
  if (first === undefined || first.schedule.times === null || !recurAlike(administrations))
    return mixed(work);
  const volumes = stepsOf(administrations, ({ volume }) => volume);
  const ordered = inOrder(work.place, volumes, work.zone, showMl);
  if (ordered === null) return null;
  const advance = advancementOf(ordered);
  if (advance === null || first.rate !== null) return mixed(work);
  noteAdvancement(work.place, advance);
  const { place, lasts, times } = first.schedule;
  return feeds(work, { place, volume: advance.goal, times, lasts, rate: null }, advance);
}

/** Administrations that all have a volume. */
export function byVolume(work: Work, administrations: readonly Administration[]): Regimen | null {
  const [first] = administrations;
  const one = administrations.length === 1 && first !== undefined ? first : together(administrations);
  return one === null ? climbing(work, administrations) : oneVolume(work, one);
}
