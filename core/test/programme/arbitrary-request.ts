/**
 * Requests for a programme to try properties on: credible orders around the days on which clocks change, with holds and
 * medicines that meet them, a policy that may be silent, and a standing in the middle of it.
 */
import { fraction } from '@feedwright/core/base/fraction';
import { HOUR, instant, MINUTE, type Span } from '@feedwright/core/base/instant';
import { ml, mlPerHour, rate, volume } from '@feedwright/core/base/volume';
import { type Zone, zone } from '@feedwright/core/base/zone';
import type { Hold, MedicineByTube, Order, Regimen } from '@feedwright/core/order/order';
import type { ProgrammeRequest } from '@feedwright/core/programme/frame';
import type { Standing } from '@feedwright/core/standing/standing';
import fc from 'fast-check';
import { arbRegimen } from '../order/arbitrary.ts';
import { accessWith, orderFor, PATIENT, policyWith, standingAt } from './situation.ts';

/** Midnights (UTC) near clock changes of the three zones, and an ordinary one. */
const NEAR = [
  '2026-03-28',
  '2026-10-24',
  '2026-03-07',
  '2026-10-31',
  '2026-04-04',
  '2026-10-03',
  '2026-06-15',
];
const ZONES = ['Europe/London', 'America/New_York', 'Australia/Lord_Howe'];

const arbQuarter = fc
  .integer({ min: -4 * 24 * 4, max: 5 * 24 * 4 })
  .map((quarters) => quarters * 15 * MINUTE);
const arbOffset = fc.oneof(arbQuarter, fc.integer({ min: -96 * HOUR, max: 120 * HOUR }));
const arbTime = fc.integer({ min: 0, max: 95 }).map((quarters) => quarters * 15);

function arbHold(base: number, id: string): fc.Arbitrary<Hold> {
  return fc
    .record({
      from: arbOffset,
      lasts: fc.option(
        fc.integer({ min: 1, max: 48 }).map((quarters) => quarters * 15 * MINUTE),
        { nil: null, freq: 6 },
      ),
    })
    .map(({ from, lasts }) => ({
      id,
      from: instant(base + from),
      until: lasts === null ? null : instant(base + from + lasts),
      why: 'procedure' as const,
      note: null,
    }));
}

const arbMedicine: fc.Arbitrary<MedicineByTube> = fc
  .record({
    times: fc.array(arbTime, { minLength: 1, maxLength: 3 }),
    before: fc.constantFrom(0, 30, 60, 120),
    after: fc.constantFrom(0, 30, 60, 120),
  })
  .map(({ times, before, after }) => ({
    name: 'phenytoin',
    times,
    volume: ml(10),
    holdBefore: (before * MINUTE) as never,
    holdAfter: (after * MINUTE) as never,
    waterBefore: null,
    waterAfter: null,
    lowersGlucose: false,
  }));

const arbBase = fc.constantFrom(...NEAR).map((day) => Date.parse(`${day}T00:00Z`));
const seldom = <T>(of: fc.Arbitrary<T>): fc.Arbitrary<T | null> =>
  fc.oneof({ weight: 3, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: of });
const mostly = <T>(usual: T, ...others: readonly T[]): fc.Arbitrary<T> =>
  fc.oneof(
    { weight: 3, arbitrary: fc.constant(usual) },
    { weight: 1, arbitrary: fc.constantFrom(...others) },
  );
const maybe = <T>(of: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(of, { nil: null });
const arbRate = fc.integer({ min: 100, max: 15_000 }).map(rate);

function arbOrder(base: number, regimen: fc.Arbitrary<Regimen>): fc.Arbitrary<Order> {
  return fc
    .record({
      regimen,
      zone: fc.constantFrom(...ZONES).map((name) => zone(name) as Zone),
      startsAt: seldom(arbOffset),
      lasts: maybe(fc.integer({ min: 1, max: 200 }).map((count) => count * HOUR)),
      holds: fc.tuple(arbHold(base, 'a'), arbHold(base, 'b'), arbHold(base, 'c')),
      howMany: fc.integer({ min: 0, max: 3 }),
      medicines: fc.array(arbMedicine, { maxLength: 2 }),
      mostRate: seldom(arbRate),
      mostVolumePerDay: seldom(fc.integer({ min: 100, max: 2_500 }).map(ml)),
      fluidLimitPerDay: seldom(fc.integer({ min: 500, max: 4_000 }).map(ml)),
      catchUpProtocol: seldom(fc.constant('the unit’s own')),
      refeedingCaution: mostly(false, true),
      tip: mostly<'gastric' | 'jejunal' | null>('gastric', 'jejunal', null),
      birthDate: mostly<string | null>('1950-02-28', '2016-06-01', null),
      kg: maybe(fc.integer({ min: 30, max: 120 }).map((kg) => fraction(kg))),
      strength: fc.constantFrom(fraction(1), fraction(3, 4), fraction(1, 3)),
    })
    .map(({ startsAt, lasts, holds, howMany, tip, birthDate, kg, strength, ...rest }) => {
      const from = startsAt === null ? null : instant(base + startsAt);
      const order = orderFor(null, rest);
      return {
        ...order,
        startsAt: from,
        endsAt: lasts === null || startsAt === null ? null : instant(base + startsAt + lasts),
        holds: holds.slice(0, howMany),
        access: accessWith(tip),
        patient: { ...PATIENT, birthDate, dosingWeight: kg === null ? null : { kg, on: null } },
        feed: order.feed === null ? null : { ...order.feed, strength },
      };
    });
}

const arbPolicy = fc
  .record({
    start: arbTime,
    step: fc.constantFrom(rate(1), rate(10), mlPerHour(1), mlPerHour(5)),
    catchUp: fc.option(arbRate, { nil: undefined }),
    gastric: fc.option(arbRate, { nil: undefined }),
    perKg: fc.option(fc.constantFrom(fraction(2), fraction(7, 3)), { nil: undefined }),
    firstDay: fc.boolean(),
  })
  .map(({ start, step, catchUp, gastric, perKg, firstDay }) =>
    policyWith({
      'day.start': start,
      'pump.rate-step': step,
      'catch-up.ceiling': catchUp,
      'ceiling.rate.gastric': gastric,
      'ceiling.rate.per-kg': perKg,
      'catch-up.first-day': firstDay,
    }),
  );

function arbStanding(base: number): fc.Arbitrary<Standing> {
  return fc
    .record({
      at: arbOffset,
      since: maybe(fc.integer({ min: 0, max: 120 * HOUR })),
      received: fc.oneof(
        fc.integer({ min: 0, max: 1_800 }).map(ml),
        fc.integer({ min: 0, max: ml(1_800) }).map(volume),
      ),
      running: maybe(fc.record({ rate: arbRate, ago: fc.integer({ min: 0, max: 24 * HOUR }) })),
      steps: fc.integer({ min: 0, max: 5 }),
      openIntolerance: mostly(false, true),
    })
    .map(({ at, since, received, running, steps, openIntolerance }) =>
      standingAt(instant(base + at), {
        feedingSince: since === null ? null : instant(base + at - since),
        receivedToday: received,
        running: running === null ? null : { rate: running.rate, since: instant(base + at - running.ago) },
        advancement: { stepsConfirmed: steps, since: null },
        openIntolerance,
      }),
    );
}

function arbSpan(base: number): fc.Arbitrary<Span> {
  return fc
    .record({ from: arbOffset, lasts: fc.integer({ min: 1, max: 72 * HOUR }) })
    .map(({ from, lasts }) => ({ from: instant(base + from), until: instant(base + from + lasts) }));
}

const arbAnyRegimen = fc.oneof(arbRegimen('sane'), arbRegimen('odd'));

export const arbRequest = (regimen: fc.Arbitrary<Regimen> = arbAnyRegimen): fc.Arbitrary<ProgrammeRequest> =>
  arbBase.chain((base) =>
    fc.record({
      order: fc.tuple(arbOrder(base, regimen), regimen).map(([order, one]) => ({ ...order, regimen: one })),
      policy: arbPolicy,
      standing: arbStanding(base),
      span: arbSpan(base),
      pace: fc.constantFrom('lowest' as const, 'highest' as const),
    }),
  );

/** A share of something, evenly: `fc.double` would nearly always be next to nothing. */
export const arbShare = fc.integer({ min: 0, max: 1_000 }).map((thousandths) => thousandths / 1_000);
