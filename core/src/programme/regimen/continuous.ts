/** How does a continuous feed run? At its rate, all day or for so many hours of it from a named time. */
import { after, before, later, type Span, union, within } from '../../base/instant.ts';
import type { Rate } from '../../base/volume.ts';
import { timesWithin } from '../../base/zone.ts';
import type { Regimen } from '../../order/order.ts';
import { type Level, rateLevels } from '../advancement.ts';
import { mayCatchUp } from '../catch-up.ts';
import {
  type Draft,
  drafts,
  missedFor,
  missedInHolds,
  NO_FEED,
  runAroundHolds,
  type Stretch,
} from '../draft.ts';
import { type Frame, firstFed } from '../frame.ts';
import { cutTo, without } from '../spans.ts';
import { comesTo, type Target, towards } from '../target.ts';

type Continuous = Extract<Regimen, { kind: 'continuous' }>;

/** The hours in which the order would have it run. Elapsed time from the wall-clock time at which they begin. [PR4] */
export function continuousHours({ order, near, ordered }: Frame, { perDay }: Continuous): readonly Span[] {
  if (perDay === null) return cutTo([near], ordered);
  const starts = timesWithin([perDay.from], before(near.from, perDay.lasts), near.until, order.zone);
  return cutTo(union(starts.map((from) => ({ from, until: after(from, perDay.lasts) }))), ordered);
}

export const atLevels = (hours: readonly Span[], levels: readonly Level<Rate>[]): readonly Stretch[] =>
  hours.flatMap((span) =>
    cutTo(levels, span).map(({ from, until, is }) => ({ from, until, rate: is.value, working: is.working })),
  );

/** A protocol makes up, day by day, towards what the rate would have come to; ahead of it the rate still stays. [PR9] */
function byProtocol(frame: Frame, day: Span, rates: readonly Stretch[]): Draft {
  const { at, receivedToday } = frame.standing;
  const ofDay = cutTo(rates, { from: later(day.from, firstFed(frame)), until: day.until });
  const target: Target = {
    period: day,
    open: without(ofDay, frame.held),
    wanted: comesTo(ofDay),
    received: within(day, at) ? { at, volume: receivedToday } : null,
    stops: false,
    because: null,
  };
  return drafts([
    towards(frame, target, mayCatchUp(frame, day, null)),
    { ...NO_FEED, missed: missedInHolds(ofDay, frame.held) },
  ]);
}

export function continuousDraft(frame: Frame, regimen: Continuous): Draft {
  const hours = continuousHours(frame, regimen);
  const levels = rateLevels(frame, regimen.rate, regimen.advance, 'regimen.rate');
  if (levels === null) return { ...NO_FEED, missed: missedFor('amount-not-known', hours) };
  const rates = atLevels(hours, levels);
  return frame.order.catchUpProtocol === null
    ? runAroundHolds(rates, frame.held)
    : drafts(frame.days.map((day) => byProtocol(frame, day, rates)));
}
