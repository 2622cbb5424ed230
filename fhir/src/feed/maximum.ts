/**
 * What is the most in a day, and what if the schedule goes past it?
 * A maximum whose time base is missing or is no day is no limit that anybody can keep: asked. A schedule that goes past
 * its maximum stops, with the moment, until a person says that feeding ends there each day or what the most really is.
 */
import { MINUTE } from '@feedwright/core/base/instant';
import { inMl, type Volume } from '@feedwright/core/base/volume';
import { showInstant, type Zone } from '@feedwright/core/base/zone';
import type { Regimen } from '@feedwright/core/order/order';
import { ofFraction, times } from '@feedwright/core/reckon/exact';
import { type Element, field } from '../read/element.ts';
import { amountOf, isMeant, shown } from '../read/quantity.ts';
import { ask, note, type Place, stop, stopUntil } from '../read/reading.ts';
import { volumeOf } from './administration.ts';
import type { Density } from './density.ts';
import { type Feeding, MINUTES_A_DAY, showMl } from './feeding.ts';
import { type Days, daysOf, passes } from './reckoning.ts';

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
    return ask(quantity, 'FH14', code, 'maximumMlPerDay', {
      written,
      ml: unit.per === null ? shown(amount.value) : null,
    });
  }
  // In mL/h so far, by the unit's factor.
  const perDay = { ...amount, value: { n: amount.value.n * 24n, d: amount.value.d } };
  return isMeant(quantity, perDay, 'volumePerDay') ? volumeOf(perDay.value) : null;
}

/** mL, and kcal where the density is settled. */
function says(amount: Volume | null, { kcalPerMl, settled }: Density): string | null {
  if (amount === null) return null;
  if (kcalPerMl === null || !settled) return showMl(amount);
  return `${showMl(amount)}, ${shown(times(ofFraction(inMl(amount)), ofFraction(kcalPerMl)))} kcal`;
}

type Continuous = Extract<Regimen, { kind: 'continuous' }>;

/** A rate that stops at a volume is a window with both; all day round there is no window to stop in. */
function stoppingAt(place: Place, { rate, perDay, advance }: Continuous, most: Volume): Regimen | null {
  if (perDay === null) {
    ask(place, 'FH15', 'fhir/maximum-needs-hours', 'feedingHours', { most: showMl(most) });
    return null;
  }
  const { from, lasts } = perDay;
  const until = (from + Math.ceil(lasts / MINUTE)) % MINUTES_A_DAY;
  return { kind: 'cyclic', from, until, rate, volume: { volume: most, of: rate.of }, advance };
}

const highest = ({ firstDay, laterDay }: Days): number => Math.max(firstDay ?? 0, laterDay ?? 0);

export type Settled = { readonly most: Volume | null; readonly regimen: Regimen | null };
type Work = { readonly place: Place; readonly zone: Zone; readonly density: Density };

/** [FH15] */
function past(work: Work, feeding: Feeding, days: Days, most: Volume): Settled {
  const { place, zone, density } = work;
  const { regimen, rates } = feeding;
  const at = passes(days.shares, most);
  const data = {
    firstDay: says(days.firstDay, density),
    laterDay: says(days.laterDay, density),
    most: says(most, density),
    at: at === null ? null : showInstant(at, zone),
  };
  const corrected = place.reading.answers.maximumMlPerDay;
  if (corrected !== undefined && corrected !== most) {
    stopUntil(place, 'FH15', 'fhir/past-maximum', 'maximumMlPerDay', data);
    return highest(days) <= corrected ? { most: corrected, regimen } : past(work, feeding, days, corrected);
  }
  if (rates.length > 0) {
    const governs = stopUntil(place, 'FH15', 'fhir/past-maximum', 'maximum', data) !== null;
    return {
      most,
      regimen: governs && regimen?.kind === 'continuous' ? stoppingAt(place, regimen, most) : regimen,
    };
  }
  if (corrected === undefined) stopUntil(place, 'FH15', 'fhir/past-maximum', 'maximumMlPerDay', data);
  else stop(place, 'FH15', 'fhir/past-maximum', data);
  return { most, regimen };
}

/** [FH15] What the schedule comes to against the maximum, and the regimen and maximum as they are settled. */
export function settleMaximum(work: Work, feeding: Feeding, most: Volume | null): Settled {
  const days = daysOf(feeding, work.zone);
  if (most !== null && highest(days) > most) return past(work, feeding, days, most);
  const { place, density } = work;
  if (highest(days) > 0) {
    note(place, 'FH15', 'fhir/day-comes-to', {
      firstDay: says(days.firstDay, density),
      laterDay: says(days.laterDay, density),
      most: says(most, density),
    });
  }
  return { most, regimen: feeding.regimen };
}
