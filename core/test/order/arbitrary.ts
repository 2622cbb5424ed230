/**
 * Orders to try properties on.
 * `sane`: numbers and times that a prescriber could have written, complete, on a gastric tube.
 * `odd`: whatever an order document can hold, however senseless: it must be read, judged, written, never thrown at.
 * `wild`: beyond that: zero, negative and vast numbers, such as only a program could make.
 */

import { type Fraction, fraction } from '@feedwright/core/base/fraction';
import {
  type Duration,
  duration,
  HOUR,
  hours,
  type Instant,
  instant,
  MINUTE,
  minutes,
} from '@feedwright/core/base/instant';
import { ml, mlPerHour, NOTHING, type Rate, rate, type Volume, volume } from '@feedwright/core/base/volume';
import { type Zone, zone } from '@feedwright/core/base/zone';
import type {
  AccessDevice,
  Advancement,
  Lumen,
  Order,
  Regimen,
  WaterGiven,
} from '@feedwright/core/order/order';
import fc from 'fast-check';

export type Wildness = 'sane' | 'odd' | 'wild';

const ZONES = ['Europe/London', 'America/New_York', 'Australia/Lord_Howe', 'Asia/Kolkata', 'UTC'];
const DEVICES = [
  'nasogastric',
  'orogastric',
  'nasoduodenal',
  'nasojejunal',
  'gastrostomy',
  'gastrostomy-button',
  'gastro-jejunal',
  'jejunostomy',
] as const;

/** Plain objects, as parsing makes them. */
const record = <T extends object>(model: { [K in keyof T]: fc.Arbitrary<T[K]> }): fc.Arbitrary<T> =>
  fc.record(model, { noNullPrototype: true }) as fc.Arbitrary<T>;

const SENSELESS = [0, -1, 1, Number.MAX_SAFE_INTEGER, -Number.MAX_SAFE_INTEGER];

/** A whole number from `least` to `most`, or in wild orders one that makes no sense at all. */
const whole = (wildness: Wildness, least: number, most: number): fc.Arbitrary<number> =>
  wildness === 'wild'
    ? fc.oneof({ weight: 3, arbitrary: fc.integer({ min: least, max: most }) }, fc.constantFrom(...SENSELESS))
    : fc.integer({ min: least, max: most });

const arbRate = (w: Wildness): fc.Arbitrary<Rate> =>
  w === 'sane' ? fc.integer({ min: 20, max: 100 }).map(mlPerHour) : whole(w, 1, 200_000).map(rate);

const arbVolume = (w: Wildness, saneMost = 300): fc.Arbitrary<Volume> =>
  w === 'sane'
    ? fc.integer({ min: 5, max: saneMost }).map(ml)
    : fc.oneof(fc.integer({ min: 1, max: 1_000 }).map(ml), whole(w, 1, ml(1_000)).map(volume));

const arbDuration = (w: Wildness, saneHours: readonly number[]): fc.Arbitrary<Duration> =>
  w === 'sane'
    ? fc.constantFrom(...saneHours).map((count) => duration(count * HOUR))
    : fc.oneof(fc.integer({ min: 1, max: 24 }).map(hours), whole(w, 5 * MINUTE, 24 * HOUR).map(duration));

const arbFraction = (w: Wildness, least: number, most: number): fc.Arbitrary<Fraction> =>
  fc
    .tuple(whole(w, least * 1_000, most * 1_000), fc.constantFrom(1_000, w === 'sane' ? 1_000 : 1_003))
    .map(([n, d]) => fraction(n, d));

const arbTime = fc.integer({ min: 0, max: 1_439 });
const arbMoment: fc.Arbitrary<Instant> = fc
  .integer({ min: Date.UTC(2020, 0, 1), max: Date.UTC(2030, 0, 1) })
  .map(instant);
const arbText = fc
  .string({ minLength: 1, maxLength: 12, unit: 'grapheme' })
  .filter((text) => /^[^\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069]+$/u.test(text));
const arbName = (w: Wildness) => (w === 'sane' ? fc.constantFrom('Ada', 'Bo', 'Ceri') : arbText);

const maybe = <T>(w: Wildness, of: fc.Arbitrary<T>): fc.Arbitrary<T | null> =>
  w === 'sane' ? of : fc.option(of, { nil: null });
const few = <T>(w: Wildness, of: fc.Arbitrary<T>): fc.Arbitrary<readonly T[]> =>
  fc.array(of, { maxLength: w === 'sane' ? 1 : 3 });

/** Every `gap` minutes from a first time: sane feeds do not run into each other. */
const arbTimes = (w: Wildness): fc.Arbitrary<readonly number[]> =>
  w === 'sane'
    ? fc
        .tuple(fc.integer({ min: 0, max: 239 }), fc.integer({ min: 1, max: 6 }))
        .map(([first, count]) => Array.from({ length: count }, (_, i) => first + i * 240))
    : fc.array(arbTime, { maxLength: 8 });

const arbOf = (w: Wildness) =>
  w === 'sane' ? fc.constant('mixture' as const) : fc.constantFrom('mixture' as const, 'formula' as const);

const arbAdvance = <Q>(w: Wildness, of: fc.Arbitrary<Q>): fc.Arbitrary<Advancement<Q> | null> =>
  w === 'sane'
    ? fc.constant(null)
    : fc.option(record({ start: of, step: of, every: arbDuration(w, [8]), goal: of }), { nil: null });

export function arbRegimen(w: Wildness): fc.Arbitrary<Regimen> {
  const ofRate = record({ rate: arbRate(w), of: arbOf(w) });
  const ofVolume = (most = 300) => record({ volume: arbVolume(w, most), of: arbOf(w) });
  const continuous = record({
    kind: fc.constant('continuous' as const),
    rate: ofRate,
    perDay: fc.option(record({ from: arbTime, lasts: arbDuration(w, [16, 20]) }), { nil: null }),
    advance: arbAdvance(w, arbRate(w)),
  });
  const cyclic = record({
    kind: fc.constant('cyclic' as const),
    from: w === 'sane' ? fc.constant(20 * 60) : arbTime,
    until: w === 'sane' ? fc.constant(8 * 60) : arbTime,
    rate: maybe(w, ofRate),
    volume: w === 'sane' ? fc.constant(null) : fc.option(ofVolume(), { nil: null }),
    advance: arbAdvance(w, arbRate(w)),
  });
  const intermittent = record({
    kind: fc.constant('intermittent' as const),
    volume: ofVolume(),
    times: arbTimes(w),
    lasts: arbDuration(w, [0.5, 1]),
    by: fc.constantFrom('pump' as const, 'gravity' as const),
    advance: arbAdvance(w, arbVolume(w)),
  });
  const bolus = record({
    kind: fc.constant('bolus' as const),
    volume: ofVolume(240),
    times: arbTimes(w),
    lasts: maybe(w, arbDuration(w, [0.5])),
    meals: few(
      w === 'sane' ? 'odd' : w,
      record({ at: arbTime, ifEatenLessThan: fc.constant(fraction(1, 2)) }),
    ),
    advance: arbAdvance(w, arbVolume(w)),
  });
  const targeted = record({
    kind: fc.constant('volume-targeted' as const),
    volumePerDay: ofVolume(1_500),
    baseRate: ofRate,
    mostRate: maybe(w, ofRate),
    advance: arbAdvance(w, arbRate(w)),
  });
  if (w !== 'sane') return fc.oneof(continuous, cyclic, intermittent, bolus, targeted);
  const plainBolus = bolus.map((one) => ({ ...one, meals: [] }));
  const saneTargeted = arbRate(w).map((base) => ({
    kind: 'volume-targeted' as const,
    volumePerDay: { volume: volume(base * HOUR * 24), of: 'mixture' as const },
    baseRate: { rate: base, of: 'mixture' as const },
    mostRate: { rate: rate(Math.floor((base * 3) / 2)), of: 'mixture' as const },
    advance: null,
  }));
  return fc.oneof(continuous, cyclic, intermittent, plainBolus, saneTargeted);
}

const GASTRIC: Lumen = { name: 'feeding port', tip: 'gastric', uses: ['feed', 'medicine'] };

function arbAccess(w: Wildness): fc.Arbitrary<AccessDevice> {
  const french = fc.constantFrom(fraction(8), fraction(12), fraction(13, 2));
  if (w === 'sane') {
    return record({
      device: fc.constantFrom('nasogastric' as const, 'gastrostomy' as const),
      french,
      lumens: fc.constant([GASTRIC]),
      feedBy: fc.constant(GASTRIC.name),
      medicineBy: fc.constant(GASTRIC.name),
      placedAt: arbMoment,
    });
  }
  const name = fc.constantFrom('gastric port', 'jejunal port', 'feeding port');
  return record({
    device: fc.constantFrom(...DEVICES),
    french: maybe(w, french),
    lumens: few(
      w,
      record({
        name,
        tip: maybe(w, fc.constantFrom('gastric' as const, 'duodenal' as const, 'jejunal' as const)),
        uses: fc.subarray(['feed', 'medicine', 'drain', 'vent'] as const),
      }),
    ),
    feedBy: maybe(w, name),
    medicineBy: maybe(w, name),
    placedAt: maybe(w, arbMoment),
  }) as fc.Arbitrary<AccessDevice>;
}

const arbPatient = (w: Wildness): fc.Arbitrary<Order['patient']> =>
  record({
    name: maybe(w, arbName(w)),
    birthDate: maybe(w, fc.constantFrom('1950-02-28', '1988-02-29', ...(w === 'sane' ? [] : ['2026-06-01']))),
    identifiers:
      w === 'sane'
        ? fc.constant([{ kind: 'hospital-number', value: '000111' }])
        : few(w, record({ kind: arbText, value: arbText })),
    place: maybe(w, arbName(w)),
    allergies: w === 'sane' ? fc.constant([]) : few(w, fc.constantFrom('milk', 'soya', 'Fish')),
    dosingWeight: maybe(
      w,
      record({
        kg: arbFraction(w, 40, 110),
        on: maybe(w, fc.constantFrom('2019-12-20', ...(w === 'sane' ? [] : ['2026-11-20']))),
      }),
    ),
    heightCm: maybe(w, arbFraction(w, 140, 200)),
  });

function arbGiven(w: Wildness): fc.Arbitrary<WaterGiven> {
  const amount = arbVolume(w, 60);
  const every = arbDuration(w, [4, 6]);
  const interval = record({
    kind: fc.constant('interval' as const),
    volume: amount,
    every,
    from: fc.option(arbTime, { nil: null }),
  });
  const atTimes = record({ kind: fc.constant('times' as const), volume: amount, times: arbTimes(w) });
  // Whether these two fit depends on the regimen and the method.
  const aroundFeeds = record({ kind: fc.constant('around-feeds' as const), before: amount, after: amount });
  const secondBag = record({ kind: fc.constant('second-bag' as const), volume: amount, every });
  return w === 'sane' ? fc.oneof(interval, atTimes) : fc.oneof(interval, atTimes, aroundFeeds, secondBag);
}

const arbHold = (w: Wildness) =>
  record({
    id: arbText,
    from: arbMoment,
    until: fc.option(arbMoment, { nil: null }),
    why: fc.constantFrom('procedure', 'fast', 'medicine', 'intolerance', 'tube', 'other' as const),
    note: maybe(w, arbText),
  }) as fc.Arbitrary<Order['holds'][number]>;

const arbHoldMinutes = fc.integer({ min: 0, max: 180 }).map(minutes);

const arbMedicine = (w: Wildness): fc.Arbitrary<Order['medicines'][number]> =>
  record({
    name: arbName(w),
    times: arbTimes(w),
    volume: arbVolume(w, 20),
    holdBefore: w === 'sane' ? fc.constant(minutes(0)) : arbHoldMinutes,
    holdAfter: w === 'sane' ? fc.constant(minutes(0)) : arbHoldMinutes,
    waterBefore: maybe(w, arbVolume(w, 30)),
    waterAfter: maybe(w, arbVolume(w, 30)),
    lowersGlucose: fc.boolean(),
  });

const METHODS = { continuous: 'pump', cyclic: 'pump', bolus: 'syringe', 'volume-targeted': 'pump' } as const;
const methodFor = (regimen: Regimen): Order['method'] =>
  regimen.kind === 'intermittent' ? regimen.by : METHODS[regimen.kind];

/** An order as senseless as asked for. Its feed is one of `feeds`. */
export function arbOrder(
  w: Wildness = 'sane',
  feeds: readonly string[] = ['standard-1.0'],
): fc.Arbitrary<Order> {
  const parts = record({
    id: arbName(w),
    replaces: w === 'sane' ? fc.constant(null) : fc.option(arbText, { nil: null }),
    zone: fc.constantFrom(...ZONES).map((name) => zone(name) as Zone),
    setting: fc.constantFrom('hospital' as const, 'residential-care' as const, 'home' as const),
    patient: arbPatient(w),
    prescriber: maybe(w, record({ name: arbName(w), role: maybe(w, arbName(w)) })),
    prescribedAt: maybe(w, arbMoment),
    startsAt: maybe(w, arbMoment),
    endsAt: w === 'sane' ? fc.constant(null) : fc.option(arbMoment, { nil: null }),
    feed: maybe(
      w,
      record({
        id: w === 'sane' ? fc.constantFrom(...feeds) : fc.oneof(fc.constantFrom(...feeds), arbText),
        strength:
          w === 'sane'
            ? fc.constant(fraction(1))
            : arbFraction(w, 1, 2).map(({ n, d }) => fraction(n, 2 * d)),
        additives:
          w === 'sane' ? fc.constant([]) : few(w, record({ name: arbText, amount: maybe(w, arbText) })),
        statedKcalPerMl: w === 'sane' ? fc.constant(null) : maybe(w, arbFraction(w, 1, 2_000)),
        preparedAt: w === 'sane' ? fc.constant(null) : maybe(w, arbMoment),
        expiresAt: w === 'sane' ? fc.constant(null) : maybe(w, arbMoment),
      }),
    ),
    access: maybe(w, arbAccess(w)),
    method: maybe(w, fc.constantFrom('pump' as const, 'gravity' as const, 'syringe' as const)),
    regimen: maybe(w, arbRegimen(w)),
    water: maybe(
      w,
      record({
        water: fc.constantFrom('tap' as const, 'cooled-boiled' as const, 'sterile' as const),
        given: fc.array(arbGiven(w), { minLength: w === 'sane' ? 1 : 0, maxLength: 2 }),
      }),
    ),
    holds: w === 'sane' ? fc.constant([]) : few(w, arbHold(w)),
    medicines: few(w, arbMedicine(w)),
    modules:
      w === 'sane'
        ? fc.constant([])
        : few(
            w,
            record({
              name: arbText,
              times: arbTimes(w),
              water: arbVolume(w, 60),
              energyKcal: arbFraction(w, 0, 200),
              proteinG: arbFraction(w, 0, 30),
            }),
          ),
    mostRate: w === 'sane' ? fc.constant(null) : maybe(w, arbRate(w)),
    mostVolumePerDay: w === 'sane' ? fc.constant(null) : maybe(w, arbVolume(w, 3_000)),
    fluidLimitPerDay: w === 'sane' ? fc.constant(null) : maybe(w, arbVolume(w, 4_000)),
    intravenousPerDay:
      w === 'sane' ? fc.constant(NOTHING) : fc.oneof(fc.constant(NOTHING), arbVolume(w, 2_000)),
    otherEnergy:
      w === 'sane' ? fc.constant([]) : few(w, record({ name: arbText, kcalPerDay: arbFraction(w, 0, 800) })),
    needs: record({
      energyKcalPerDay: maybe(w, arbFraction(w, 1_200, 2_400)),
      proteinGPerDay: maybe(w, arbFraction(w, 50, 120)),
      waterPerDay: maybe(w, arbVolume(w, 2_500)),
    }),
    catchUpProtocol: w === 'sane' ? fc.constant(null) : maybe(w, arbText),
    refeedingCaution: w === 'sane' ? fc.constant(false) : fc.boolean(),
    confirmations:
      w === 'sane'
        ? fc.constant([])
        : few(
            w,
            record({
              rule: fc.integer({ min: 1, max: 60 }).map((n) => `OR${n}`),
              by: arbText,
              at: maybe(w, arbMoment),
              why: maybe(w, arbText),
            }),
          ),
  }) as fc.Arbitrary<Order>;
  if (w !== 'sane') return parts;
  return parts.map((order) => ({
    ...order,
    method: methodFor(order.regimen!),
    prescribedAt: order.startsAt,
  }));
}
