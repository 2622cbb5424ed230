/**
 * How is a regimen said as administrations? A rate or a volume with its Timing; a climb as one administration for each
 * step, at its moment.
 */
import { type Duration, type Instant, instant, MINUTE, SECOND } from '@feedwright/core/base/instant';
import { showInstant, showTimeOfDay, type TimeOfDay } from '@feedwright/core/base/zone';
import type { Advancement, Regimen } from '@feedwright/core/order/order';
import type { Dialect, JsonObject } from '../dialect.ts';
import { mL, mLPerHour, type Out } from './quantity.ts';

export type Bounds = { readonly from: Instant | null; readonly until: Instant | null };

function boundsOf({ zone }: Out, { from, until }: Bounds): JsonObject {
  if (from === null && until === null) return {};
  return {
    boundsPeriod: {
      ...(from === null ? {} : { start: showInstant(from, zone) }),
      ...(until === null ? {} : { end: showInstant(until, zone) }),
    },
  };
}

const lasting = (lasts: Duration | null): JsonObject => {
  if (lasts === null) return {};
  return lasts % MINUTE === 0
    ? { duration: lasts / MINUTE, durationUnit: 'min' }
    : { duration: lasts / SECOND, durationUnit: 's' };
};

const daily = (times: readonly TimeOfDay[]): JsonObject => ({
  frequency: times.length,
  period: 1,
  periodUnit: 'd',
  timeOfDay: times.map((time) => `${showTimeOfDay(time)}:00`),
});

const administration = (dialect: Dialect, repeat: JsonObject, amounts: JsonObject): JsonObject =>
  Object.keys(repeat).length === 0 ? amounts : { schedule: dialect.toSchedule({ repeat }), ...amounts };

/** The steps of a climb at their moments; null where they cannot be put at any. */
function steps<Q extends number>(
  { start, step, every, goal }: Advancement<Q>,
  { from, until }: Bounds,
): readonly (Bounds & { readonly amount: Q })[] | null {
  if (from === null || step <= 0 || every <= 0 || goal <= start) return null;
  const count = Math.ceil((goal - start) / step);
  if (count > MOST_STEPS) return null;
  return Array.from({ length: count + 1 }, (_, place) => ({
    amount: Math.min(start + place * step, goal) as Q,
    from: instant(from + place * every),
    until: place === count ? until : instant(from + (place + 1) * every),
  }));
}

const MOST_STEPS = 96;

type Amounts<Q> = (amount: Q) => JsonObject;

/** One administration for each step, or one for the order as it stands. */
function climb<Q extends number>(
  out: Out,
  dialect: Dialect,
  bounds: Bounds,
  { advance, amount }: { readonly advance: Advancement<Q> | null; readonly amount: Q },
  repeat: JsonObject,
  amounts: Amounts<Q>,
): readonly JsonObject[] {
  const each = advance === null ? null : steps(advance, bounds);
  if (advance !== null && each === null) out.notCarried.add('regimen.advance');
  return (each ?? [{ ...bounds, amount }]).map((one) =>
    administration(dialect, { ...boundsOf(out, one), ...repeat }, amounts(one.amount)),
  );
}

const ofFormula = (regimen: Regimen): boolean =>
  Object.values(regimen).some(
    (value) => typeof value === 'object' && value !== null && 'of' in value && value.of === 'formula',
  );

type Feeds = Extract<Regimen, { kind: 'bolus' | 'intermittent' }>;

function feeds(out: Out, dialect: Dialect, bounds: Bounds, regimen: Feeds): readonly JsonObject[] {
  if (regimen.kind === 'bolus' && regimen.meals.length > 0) out.notCarried.add('regimen.meals');
  const repeat = { ...daily(regimen.times), ...lasting(regimen.lasts) };
  const { advance } = regimen;
  const climbs = { advance, amount: regimen.volume.volume };
  return climb(out, dialect, bounds, climbs, repeat, (volume) => ({
    quantity: mL(out, volume, 'regimen.volume'),
  }));
}

const windowLasts = (from: TimeOfDay, until: TimeOfDay): Duration =>
  (((until - from + 1440) % 1440) * MINUTE) as Duration;

/** A regimen as the administrations of an enteral formula. */
export function administrations(
  out: Out,
  dialect: Dialect,
  bounds: Bounds,
  regimen: Regimen,
): readonly JsonObject[] {
  if (ofFormula(regimen)) out.notCarried.add('regimen.of');
  switch (regimen.kind) {
    case 'continuous': {
      const { perDay, advance } = regimen;
      const repeat = perDay === null ? {} : { ...daily([perDay.from]), ...lasting(perDay.lasts) };
      const climbs = { advance, amount: regimen.rate.rate };
      return climb(out, dialect, bounds, climbs, repeat, (rate) => ({
        rateQuantity: mLPerHour(out, rate, 'regimen.rate'),
      }));
    }
    case 'cyclic': {
      const { from, until, rate, volume } = regimen;
      if (regimen.advance !== null) out.notCarried.add('regimen.advance');
      // A rate for some hours a day reads as a continuous one.
      if (volume === null) out.notCarried.add('regimen.kind');
      const repeat = { ...boundsOf(out, bounds), ...daily([from]), ...lasting(windowLasts(from, until)) };
      return [
        administration(dialect, repeat, {
          ...(volume === null ? {} : { quantity: mL(out, volume.volume, 'regimen.volume') }),
          ...(rate === null ? {} : { rateQuantity: mLPerHour(out, rate.rate, 'regimen.rate') }),
        }),
      ];
    }
    case 'intermittent':
    case 'bolus':
      return feeds(out, dialect, bounds, regimen);
    case 'volume-targeted': {
      if (regimen.advance !== null) out.notCarried.add('regimen.advance');
      if (regimen.mostRate !== null) out.notCarried.add('regimen.mostRate');
      return [
        administration(dialect, boundsOf(out, bounds), {
          quantity: mL(out, regimen.volumePerDay.volume, 'regimen.volumePerDay'),
          rateQuantity: mLPerHour(out, regimen.baseRate.rate, 'regimen.baseRate'),
        }),
      ];
    }
  }
}
