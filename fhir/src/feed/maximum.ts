/**
 * Does what is scheduled go past the most that may be given, and when?
 * Reckoned by the letter of the schedule: over the 24 hours from its first beginning, and over a later day when all steps
 * have been taken. A maximum whose time base is missing or is no day is no limit that anybody can keep: asked.
 */
import { after, DAY, type Instant, instant, overlap, type Span } from '@feedwright/core/base/instant';
import {
  add,
  given,
  inMl,
  NOTHING,
  subtract,
  sum,
  timeToGive,
  type Volume,
  volume,
} from '@feedwright/core/base/volume';
import {
  dayAt,
  instantOf,
  nextDay,
  previousDay,
  showInstant,
  timesWithin,
  type Zone,
} from '@feedwright/core/base/zone';
import type { Regimen } from '@feedwright/core/order/order';
import { ofFraction, times } from '@feedwright/core/reckon/exact';
import { type Element, field } from '../read/element.ts';
import { amountOf, isMeant, shown } from '../read/quantity.ts';
import { need, note, type Place } from '../read/reading.ts';
import { volumeOf } from './administration.ts';
import type { Density } from './density.ts';
import { type Feeding, showMl } from './feeding.ts';

/** What goes in from a moment: at a rate until another moment, or all at once. */
type Share = { readonly at: Instant; readonly volume: Volume; readonly until: Instant };

/** [FH14] The most in a day; null where there is none, or none that can be kept. */
export function maximumOf(formula: Element): Volume | null {
  const quantity = field(formula, 'maxVolumeToDeliver');
  if (quantity === null) return null;
  const amount = amountOf(quantity, ['volume', 'volume/time'], 'unit.maximum');
  if (amount === null) return null;
  const { unit, written } = amount;
  const daily = unit.per === 'd' || unit.per === '(24.h)';
  if (!daily) {
    const code = unit.per === null ? 'fhir/maximum-without-time' : 'fhir/maximum-of-another-time';
    return need(quantity, 'FH14', code, 'maximumMlPerDay', {
      written,
      ml: unit.per === null ? shown(amount.value) : null,
    });
  }
  // In mL/h so far, by the unit's factor.
  const perDay = { ...amount, value: { n: amount.value.n * 24n, d: amount.value.d } };
  return isMeant(quantity, perDay, 'volumePerDay') ? volumeOf(perDay.value) : null;
}

type PerDay = Extract<Regimen, { kind: 'continuous' }>['perDay'];

/** When a daily window is open around a day's length of time. */
function windows(perDay: PerDay, span: Span, zone: Zone): readonly Span[] {
  if (perDay === null) return [span];
  const first = previousDay(dayAt(span.from, zone));
  const days = [first, nextDay(first), nextDay(nextDay(first)), nextDay(nextDay(nextDay(first)))];
  return days.flatMap((day) => {
    const from = instantOf(day, perDay.from, zone);
    const open = overlap({ from, until: after(from, perDay.lasts) }, span);
    return open === null ? [] : [open];
  });
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
        : [{ at: both.from, until: both.until, volume: given(amount, (both.until - both.from) as never) }];
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
function passes(shares: readonly Share[], most: Volume): Instant | null {
  let sofar = NOTHING;
  for (const { at, until, volume: share } of shares) {
    const room = subtract(most, sofar);
    sofar = add(sofar, share);
    if (sofar <= most) continue;
    if (until <= at) return at;
    const rate = share / (until - at);
    return after(at, timeToGive(room, rate as never) ?? (0 as never));
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

type Days = { readonly firstDay: Volume | null; readonly laterDay: Volume | null };

/** mL, and kcal where the density is settled. */
function says(amount: Volume | null, { kcalPerMl, settled }: Density): string | null {
  if (amount === null) return null;
  if (kcalPerMl === null || !settled) return showMl(amount);
  return `${showMl(amount)}, ${shown(times(ofFraction(inMl(amount)), ofFraction(kcalPerMl)))} kcal`;
}

function daysOf(feeding: Feeding, zone: Zone): Days & { readonly shares: readonly Share[] } {
  const { from, regimen, rates } = feeding;
  const laterDay = laterDayOf(feeding);
  if (from === null) return { firstDay: null, laterDay, shares: [] };
  const span = { from, until: after(from, DAY) };
  const shares = rates.length > 0 ? rateShares(feeding, span, zone) : feedShares(regimen, span, zone);
  const firstDay = shares.length === 0 ? null : sum(shares.map((share) => share.volume));
  return { firstDay, laterDay, shares };
}

/** [FH15] What the schedule comes to against the maximum; going past it is asked, with the moment. */
export function compareWithMaximum(
  place: Place,
  feeding: Feeding,
  most: Volume | null,
  density: Density,
  zone: Zone,
): void {
  const { firstDay, laterDay, shares } = daysOf(feeding, zone);
  const highest = Math.max(firstDay ?? 0, laterDay ?? 0);
  const data = {
    firstDay: says(firstDay, density),
    laterDay: says(laterDay, density),
    most: says(most, density),
  };
  if (most !== null && highest > most) {
    const at = passes(shares, most);
    need(place, 'FH15', 'fhir/past-maximum', 'maximum', {
      ...data,
      at: at === null ? null : showInstant(at, zone),
    });
  } else if (highest > 0) note(place, 'FH15', 'fhir/day-comes-to', data);
}
