/**
 * What does a schedule come to, by the letter?
 * Over the 24 hours from its first beginning, and over a later day when all steps have been taken.
 */
import {
  after,
  between,
  DAY,
  type Instant,
  instant,
  overlap,
  type Span,
} from '@feedwright/core/base/instant';
import {
  add,
  given,
  NOTHING,
  rate,
  subtract,
  sum,
  timeToGive,
  type Volume,
  volume,
} from '@feedwright/core/base/volume';
import { dayAt, instantOf, nextDay, previousDay, timesWithin, type Zone } from '@feedwright/core/base/zone';
import type { Regimen } from '@feedwright/core/order/order';
import type { Feeding } from './feeding.ts';

/** What goes in from a moment: at a rate until another moment, or all at once. */
export type Share = { readonly at: Instant; readonly volume: Volume; readonly until: Instant };

type PerDay = Extract<Regimen, { kind: 'continuous' }>['perDay'];

/** When a daily window is open in a length of time; all of it where there is no window. */
function windows(perDay: PerDay, span: Span, zone: Zone): readonly Span[] {
  if (perDay === null) return [span];
  const open: Span[] = [];
  for (
    let day = previousDay(dayAt(span.from, zone));
    instantOf(day, 0, zone) < span.until;
    day = nextDay(day)
  ) {
    const from = instantOf(day, perDay.from, zone);
    const both = overlap({ from, until: after(from, perDay.lasts) }, span);
    if (both !== null) open.push(both);
  }
  return open;
}

/** The rates of a day, each until the next one begins. */
function rateShares({ rates, regimen }: Feeding, span: Span, zone: Zone): readonly Share[] {
  if (rates.length > 1 && rates.some(({ from }) => from === null)) return [];
  const perDay = regimen?.kind === 'continuous' ? regimen.perDay : null;
  const open = windows(perDay, span, zone);
  return rates.flatMap(({ from, until, amount }, place) => {
    const next = rates[place + 1]?.from ?? span.until;
    const runs = { from: from ?? span.from, until: instant(Math.min(next, until ?? span.until)) };
    return open.flatMap((one) => {
      const both = overlap(runs, one);
      return both === null
        ? []
        : [{ at: both.from, until: both.until, volume: given(amount, between(both.from, both.until)) }];
    });
  });
}

function feedShares(regimen: Regimen | null, span: Span, zone: Zone): readonly Share[] {
  if (regimen?.kind !== 'bolus' && regimen?.kind !== 'intermittent') return [];
  return timesWithin(regimen.times, span.from, span.until, zone).map((at) => ({
    at,
    until: at,
    volume: regimen.volume.volume,
  }));
}

/** When the shares, one after another, come to more than the most; null where they do not. */
export function passes(shares: readonly Share[], most: Volume): Instant | null {
  let sofar = NOTHING;
  for (const { at, until, volume: share } of shares) {
    const room = subtract(most, sofar);
    sofar = add(sofar, share);
    if (sofar <= most) continue;
    const wait = until <= at ? null : timeToGive(room, rate(share / (until - at)));
    return wait === null ? at : after(at, wait);
  }
  return null;
}

/** What a later day comes to, once every step has been taken. */
function laterDayOf({ regimen, rates, volumePerDay }: Feeding): Volume | null {
  switch (regimen?.kind) {
    case 'continuous':
      return given(regimen.rate.rate, regimen.perDay?.lasts ?? DAY);
    case 'bolus':
    case 'intermittent':
      return volume(regimen.volume.volume * regimen.times.length);
    case 'volume-targeted':
      return regimen.volumePerDay.volume;
    case 'cyclic':
      return regimen.volume?.volume ?? null;
    default: {
      const last = rates.at(-1);
      return last === undefined ? volumePerDay : given(last.amount, DAY);
    }
  }
}

export type Days = {
  readonly firstDay: Volume | null;
  readonly laterDay: Volume | null;
  readonly shares: readonly Share[];
};

export function daysOf(feeding: Feeding, zone: Zone): Days {
  const { from, regimen, rates } = feeding;
  const laterDay = laterDayOf(feeding);
  if (from === null) return { firstDay: null, laterDay, shares: [] };
  const span = { from, until: after(from, DAY) };
  const shares = rates.length > 0 ? rateShares(feeding, span, zone) : feedShares(regimen, span, zone);
  const firstDay = shares.length === 0 ? null : sum(shares.map((share) => share.volume));
  return { firstDay, laterDay, shares };
}
