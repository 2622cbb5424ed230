/**
 * Requests for a plan to try properties on: orders that may be planned, of every regimen and kind of feed, around the days
 * on which clocks change, with holds, medicines, modules and water that meet them, protected times, and a standing.
 */
import { fraction } from '@feedwright/core/base/fraction';
import { HOUR, type Instant, instant, MINUTE, minutes, type Span } from '@feedwright/core/base/instant';
import { ml, mlPerHour } from '@feedwright/core/base/volume';
import { showInstant, type Zone, zone } from '@feedwright/core/base/zone';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import type { Hold, MedicineByTube, Module, Order, Regimen, WaterGiven } from '@feedwright/core/order/order';
import type { PlanRequest } from '@feedwright/core/plan/plan';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import type { Policy } from '@feedwright/core/policy/policy';
import { blankStanding, type Standing } from '@feedwright/core/standing/standing';
import fc from 'fast-check';
import { arbRegimen } from '../order/arbitrary.ts';
import { orderFor } from '../programme/situation.ts';

const NEAR = ['2026-03-28', '2026-10-24', '2026-03-07', '2026-10-31', '2026-04-04', '2026-06-15'];
const ZONES = ['Europe/London', 'America/New_York', 'Australia/Lord_Howe', 'Asia/Kolkata'];
const SYSTEMS = [
  'standard-1.0',
  'energy-1.5',
  'standard-1.0-closed',
  'infant-0.67-powder',
  'human-milk',
  'infant-0.67-concentrate',
];

const arbQuarters = (least: number, most: number) =>
  fc.integer({ min: least * 4, max: most * 4 }).map((quarters) => quarters * 15 * MINUTE);
const arbTime = fc.integer({ min: 0, max: 95 }).map((quarters) => quarters * 15);

const arbHold = (base: number, id: string): fc.Arbitrary<Hold> =>
  fc
    .record({
      from: arbQuarters(0, 30),
      lasts: fc.option(arbQuarters(1, 6), { nil: null, freq: 5 }),
      why: fc.constantFrom('procedure' as const, 'fast' as const, 'other' as const),
    })
    .map(({ from, lasts, why }) => ({
      id,
      from: instant(base + from),
      until: lasts === null ? null : instant(base + from + lasts),
      why,
      note: null,
    }));

const arbMedicine = (name: string): fc.Arbitrary<MedicineByTube> =>
  fc
    .record({
      times: fc.uniqueArray(arbTime, { minLength: 1, maxLength: 3 }),
      before: fc.constantFrom(0, 0, 60),
      after: fc.constantFrom(0, 0, 60),
      own: fc.boolean(),
    })
    .map(({ times, before, after, own }) => ({
      name,
      times,
      volume: ml(10),
      holdBefore: minutes(before),
      holdAfter: minutes(after),
      waterBefore: own ? ml(20) : null,
      waterAfter: own ? ml(25) : null,
      lowersGlucose: false,
    }));

const arbModule: fc.Arbitrary<Module> = fc
  .uniqueArray(arbTime, { minLength: 1, maxLength: 2 })
  .map((times) => ({
    name: 'protein powder',
    times,
    water: ml(60),
    energyKcal: fraction(40),
    proteinG: fraction(10),
  }));

const arbWater: fc.Arbitrary<WaterGiven> = fc.oneof(
  fc.record({
    kind: fc.constant('interval' as const),
    volume: fc.constantFrom(ml(30), ml(50)),
    every: fc.constantFrom(4 * HOUR, 6 * HOUR).map((ms) => ms as never),
    from: fc.option(arbTime, { nil: null }),
  }),
  fc.record({
    kind: fc.constant('times' as const),
    volume: fc.constant(ml(100)),
    times: fc.uniqueArray(arbTime, { minLength: 1, maxLength: 4 }),
  }),
  fc.constant({ kind: 'second-bag' as const, volume: ml(50), every: (4 * HOUR) as never }),
);

const few = <T>(of: fc.Arbitrary<T>, most: number): fc.Arbitrary<readonly T[]> =>
  fc.array(of, { maxLength: most });

/** What has to be asked about an order is not the matter here: somebody has confirmed all of it. */
const CONFIRMED: Order['confirmations'] = Array.from({ length: 60 }, (_, index) => ({
  rule: `OR${index}`,
  by: 'a prescriber',
  at: null,
  why: null,
}));

const arbAdvancing: fc.Arbitrary<Regimen> = fc.constant({
  kind: 'continuous',
  rate: { rate: mlPerHour(20), of: 'mixture' },
  perDay: null,
  advance: { start: mlPerHour(20), step: mlPerHour(20), every: (8 * HOUR) as never, goal: mlPerHour(70) },
});

const arbSaneRegimen: fc.Arbitrary<Regimen> = fc.oneof(
  { weight: 6, arbitrary: arbRegimen('sane') },
  { weight: 1, arbitrary: arbAdvancing },
);

const METHODS = { continuous: 'pump', cyclic: 'pump', bolus: 'syringe', 'volume-targeted': 'pump' } as const;

const byPump = (regimen: Regimen): boolean =>
  regimen.kind !== 'bolus' && !(regimen.kind === 'intermittent' && regimen.by === 'gravity');
const AROUND: WaterGiven = { kind: 'around-feeds', before: ml(30), after: ml(30) };

/** Feeds do not run into each other on the day on which an hour is skipped. */
const arbOrder = (base: number): fc.Arbitrary<Order> =>
  fc
    .record({
      regimen: arbSaneRegimen,
      zone: fc.constantFrom(...ZONES).map((name) => zone(name) as Zone),
      feed: fc.constantFrom(...SYSTEMS),
      half: fc.boolean(),
      begun: arbQuarters(-30, 10),
      holds: fc.tuple(few(arbHold(base, 'scan'), 1), few(arbHold(base, 'theatre'), 1)),
      medicines: fc.tuple(few(arbMedicine('phenytoin'), 1), few(arbMedicine('furosemide'), 1)),
      modules: few(arbModule, 1),
      water: fc.array(arbWater, { minLength: 1, maxLength: 2 }),
    })
    .map(({ regimen, zone: inZone, feed, half, begun, holds, medicines, modules, water }) => {
      const plain = orderFor(regimen);
      const startsAt = instant(base + begun);
      return {
        ...plain,
        zone: inZone,
        patient: { ...plain.patient, dosingWeight: { kg: fraction(70), on: '2026-03-01' } },
        prescriber: { name: 'a prescriber', role: null },
        prescribedAt: instant(startsAt - HOUR),
        startsAt,
        feed: {
          id: feed,
          strength: half && !feed.endsWith('-closed') ? fraction(3, 4) : fraction(1),
          additives: [],
          statedKcalPerMl: null,
          preparedAt: null,
          expiresAt: null,
        },
        access: {
          ...plain.access,
          device: 'nasogastric',
          french: fraction(10),
          placedAt: instant(startsAt - 24 * HOUR),
        } as Order['access'],
        method: regimen.kind === 'intermittent' ? regimen.by : METHODS[regimen.kind],
        holds: holds.flat(),
        medicines: medicines.flat(),
        modules,
        water: {
          water: 'tap',
          given: water.map((one) => (one.kind === 'second-bag' && !byPump(regimen) ? AROUND : one)),
        },
        confirmations: CONFIRMED,
      };
    });

/** The default policy with other values where a ward may differ, so far as it has a value for an adult. */
const arbPolicy = (setHours: readonly number[], bagMl: readonly number[]): fc.Arbitrary<Policy> =>
  fc
    .record({
      'pour.per-feed': fc.boolean(),
      'check.residual.routine': fc.boolean(),
      'pour.step': fc.constantFrom(ml(10), ml(50)),
      'set.change.open': fc.constantFrom(...setHours).map((count) => count * HOUR),
      'set.with-each-closed-container': fc.boolean(),
      'bag.capacity': fc.constantFrom(...bagMl).map(ml),
      'hang.margin': fc.constantFrom(0, 15 * MINUTE),
    })
    .map((values: Readonly<Record<string, unknown>>) => ({
      ...DEFAULT_POLICY,
      rows: DEFAULT_POLICY.rows.map((row) =>
        row.key in values && row.value !== null ? { ...row, value: values[row.key] as never } : row,
      ),
    }));

/** Half an hour here and there, apart from each other. */
const arbProtected = (base: number): fc.Arbitrary<readonly Span[]> =>
  few(
    arbQuarters(1, 24).map((from) => ({
      from: instant(base + from),
      until: instant(base + from + 30 * MINUTE),
    })),
    2,
  );

const CHANGED = [
  'pour.per-feed',
  'pour.step',
  'check.residual.routine',
  'set.change.open',
  'set.with-each-closed-container',
  'bag.capacity',
  'hang.margin',
];

function matter(order: Order, { rows }: Policy) {
  const { regimen, zone: inZone, startsAt, holds, medicines, modules, water, feed } = order;
  const values = rows.filter((row) => CHANGED.includes(row.key) && row.value !== null);
  return {
    zone: inZone,
    startsAt: startsAt === null ? null : showInstant(startsAt, inZone),
    feed: `${feed?.id} ${feed?.strength.n}/${feed?.strength.d}`,
    regimen,
    holds: holds.map((one) => [
      one.id,
      showInstant(one.from, inZone),
      one.until === null ? null : showInstant(one.until, inZone),
      one.why,
    ]),
    medicines,
    modules,
    water,
    policy: values.map((row) => [row.key, row.value]),
  };
}

export type Situation = { readonly request: PlanRequest; readonly base: Instant };

export type SituationOptions = {
  /** May make a plan infeasible: asked for only where that is the matter. */
  readonly protectedTimes: boolean;
  /** How long a set lasts. */
  readonly setHours?: readonly number[];
  readonly bagMl?: readonly number[];
};

export const arbSituation = (options: SituationOptions): fc.Arbitrary<Situation> =>
  fc
    .tuple(
      fc.constantFrom(...NEAR),
      fc.integer({ min: 0, max: 23 * 12 }).map((slots) => slots * 5 * MINUTE),
    )
    .map(([day, slots]) => instant(Date.parse(`${day}T00:00Z`) + slots))
    .chain((base) =>
      fc
        .record({
          order: arbOrder(base),
          policy: arbPolicy(options.setHours ?? [24, 12, 5], options.bagMl ?? [1000, 300]),
          protectedTimes: options.protectedTimes ? arbProtected(base) : fc.constant([]),
          hours: fc.constantFrom(12, 24, 30),
        })
        .map(({ order, policy, protectedTimes, hours }) => ({
          // What failed, without the feed list and the policy around it.
          [fc.toStringMethod]: () =>
            JSON.stringify({
              at: showInstant(base, order.zone),
              hours,
              protectedTimes,
              ...matter(order, policy),
            }),
          base,
          request: {
            order,
            feeds: DEFAULT_FEEDS,
            policy,
            standing: blankStanding(base) as Standing,
            since: base,
            until: instant(base + hours * HOUR),
            protectedTimes,
          },
        })),
    );
