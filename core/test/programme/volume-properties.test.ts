import assert from 'node:assert/strict';
import { test } from 'node:test';
import { HOUR, type Instant, type Span, within } from '@feedwright/core/base/instant';
import { ml, mlPerHour, type Rate, rate, type Volume } from '@feedwright/core/base/volume';
import type { Order, Regimen } from '@feedwright/core/order/order';
import { ask } from '@feedwright/core/policy/policy';
import { feedingDays, type ProgrammeRequest } from '@feedwright/core/programme/frame';
import { needUpTo, needWithin, type Programme } from '@feedwright/core/programme/programme';
import { programmeOf } from '@feedwright/core/programme/programme-of';
import fc from 'fast-check';
import { runs } from '../runs.ts';
import { arbRequest, arbShare } from './arbitrary-request.ts';
import { cyclic, orderFor, policyWith, standingAt, volumeTargeted } from './situation.ts';

const targeted: fc.Arbitrary<Regimen> = fc
  .record({
    volume: fc.integer({ min: 200, max: 2_400 }),
    base: fc.integer({ min: 10, max: 120 }),
    most: fc.option(fc.integer({ min: 50, max: 200 }), { nil: undefined }),
  })
  .map(({ volume, base, most }) => volumeTargeted(volume, base, ...(most === undefined ? [] : [most])));

/** More is wanted than the base rate gives, and the span is the two days ahead: much to make up. */
const behind = arbRequest(
  fc
    .record({ volume: fc.integer({ min: 1_200, max: 2_400 }), base: fc.integer({ min: 10, max: 60 }) })
    .map(({ volume, base }) => volumeTargeted(volume, base)),
).map((request) => ({
  ...request,
  span: { from: request.standing.at, until: (request.standing.at + 48 * HOUR) as Instant },
}));

const overnight: fc.Arbitrary<Regimen> = fc
  .record({
    volume: fc.integer({ min: 100, max: 1_800 }),
    from: fc.constantFrom('18:00', '20:00', '22:30', '01:00'),
    until: fc.constantFrom('04:00', '06:00', '08:00', '14:00'),
    rate: fc.option(fc.integer({ min: 20, max: 150 }), { nil: undefined }),
  })
  .map(({ volume, from, until, rate: at }) =>
    cyclic(from, until, at === undefined ? { volume } : { volume, rate: at }),
  );

type Ceilings = { readonly least: number; readonly known: boolean };

/** The least of what policy, order and weight allow, found the plain way. */
function ceilingsOf({ order, policy, standing }: ProgrammeRequest, catchUp: boolean): Ceilings {
  const context = { ageDays: 30_000, setting: order.setting, at: standing.at } as const;
  const tip = order.access?.lumens[0]?.tip ?? null;
  const keys = [
    ...(catchUp ? (['catch-up.ceiling'] as const) : []),
    ...(tip === 'jejunal' ? [] : (['ceiling.rate.gastric'] as const)),
    ...(tip === 'gastric' ? [] : (['ceiling.rate.jejunal'] as const)),
    ...(order.regimen?.kind === 'cyclic' ? (['ceiling.rate.cyclic'] as const) : []),
  ];
  const rates = keys.flatMap((key) => {
    const answer = ask(policy, key, context);
    return answer.known ? [answer.value as number] : [];
  });
  const perKg = ask(policy, 'ceiling.rate.per-kg', context);
  const kg = order.patient.dosingWeight?.kg;
  if (perKg.known && kg !== undefined) rates.push((perKg.value.n * kg.n * 100) / (perKg.value.d * kg.d));
  if (order.mostRate !== null) rates.push(order.mostRate);
  const regimen = order.regimen;
  if (regimen?.kind === 'volume-targeted' && regimen.mostRate !== null) rates.push(regimen.mostRate.rate);
  return { least: Math.min(...rates), known: rates.length > 0 && !(perKg.known && kg === undefined) };
}

const ratesIn = ({ pieces }: Programme): readonly Rate[] =>
  pieces.flatMap(({ gives }) => (gives.kind === 'rate' ? [gives.rate] : []));

const stepOf = ({ policy, standing, order }: ProgrammeRequest): number => {
  const answer = ask(policy, 'pump.rate-step', { ageDays: null, setting: order.setting, at: standing.at });
  return answer.known ? answer.value : 1;
};

test('[PR11] [PR12] a rate over the base rate is never over any ceiling, and never where making up is barred', () => {
  let raised = 0;
  fc.assert(
    fc.property(fc.oneof(behind, arbRequest(targeted)), (request) => {
      const { order, standing } = request;
      if (order.regimen?.kind !== 'volume-targeted') throw new Error('not targeted');
      const base = order.regimen.baseRate.rate;
      const over = ratesIn(programmeOf(request)).filter((one) => one > base);
      if (order.mostRate !== null)
        assert.ok(ratesIn(programmeOf(request)).every((one) => one <= Number(order.mostRate)));
      if (over.length === 0) return;
      raised += 1;
      const { least, known } = ceilingsOf(request, true);
      assert.ok(known, 'raised without a ceiling');
      assert.ok(over.every((one) => one <= least && one % stepOf(request) === 0));
      assert.ok(!order.refeedingCaution && !standing.openIntolerance);
      const named = order.catchUpProtocol !== null;
      assert.ok(named || order.patient.birthDate === '1950-02-28', 'a child or of unknown age');
      assert.ok(named || order.access?.lumens[0]?.tip === 'gastric', 'not gastric');
      const limit = order.fluidLimitPerDay;
      assert.ok(limit === null || order.regimen.volumePerDay.volume <= limit);
    }),
    runs(5_000),
  );
  assert.ok(raised > 20, `only ${raised} programmes made anything up`);
});

test('[PR12] on the first day nothing is made up unless policy says so', () => {
  fc.assert(
    fc.property(arbRequest(targeted), (request) => {
      const { order, standing, policy } = request;
      if (order.regimen?.kind !== 'volume-targeted') throw new Error('not targeted');
      const context = { ageDays: null, setting: order.setting, at: standing.at };
      const start = ask(policy, 'day.start', context);
      const allowed = ask(policy, 'catch-up.first-day', context);
      const since = standing.feedingSince ?? standing.at;
      if (!start.known || (allowed.known && allowed.value)) return;
      const day = feedingDays(
        { from: since, until: (since + 1) as Instant },
        start.value,
        order.zone,
      )[0] as Span;
      const { pieces } = programmeOf({ ...request, span: day });
      const base = order.regimen.baseRate.rate;
      assert.ok(pieces.every(({ gives }) => gives.kind === 'rate' && gives.rate <= base));
    }),
    runs(2_000),
  );
});

test('[PR10] [PR14] what a day is given and what it is short of are its volume, to the last unit', () => {
  fc.assert(
    fc.property(arbRequest(targeted), (request) => {
      const { regimen } = request.order;
      if (regimen?.kind !== 'volume-targeted') throw new Error('not targeted');
      const order: Order = { ...request.order, startsAt: null, endsAt: null, mostVolumePerDay: null };
      const start = ask(request.policy, 'day.start', {
        ageDays: null,
        setting: 'hospital',
        at: request.standing.at,
      });
      if (!start.known) return;
      const later = {
        from: (request.standing.at + 30 * HOUR) as Instant,
        until: (request.standing.at + 31 * HOUR) as Instant,
      };
      for (const span of feedingDays(later, start.value, order.zone)) {
        const programme = programmeOf({ ...request, order, span });
        const gives = needUpTo(programme, span.until);
        const last = programme.pieces.at(-1);
        // The first ms that reaches the volume may give a few units of 1/360,000,000 mL more: less than that ms gives.
        const slack = last?.gives.kind === 'rate' ? last.gives.rate : 0;
        const wanted: number = regimen.volumePerDay.volume;
        if (programme.shortfall > 0) assert.equal(gives + programme.shortfall, wanted);
        else assert.ok(gives >= wanted && gives < wanted + slack, `${gives} for ${wanted}`);
      }
    }),
    runs(3_000),
  );
});

test('[PR10] on the day of the standing, what was received counts', () => {
  fc.assert(
    fc.property(arbRequest(targeted), (request) => {
      const { regimen } = request.order;
      if (regimen?.kind !== 'volume-targeted') throw new Error('not targeted');
      const { standing } = request;
      const order: Order = { ...request.order, startsAt: null, endsAt: null, mostVolumePerDay: null };
      const fed = { ...standing, feedingSince: (standing.at - 100 * HOUR) as Instant };
      const start = ask(request.policy, 'day.start', { ageDays: null, setting: 'hospital', at: standing.at });
      if (!start.known) return;
      const now = { from: standing.at, until: (standing.at + 1) as Instant };
      const day = feedingDays(now, start.value, order.zone)[0] as Span;
      const span = { from: standing.at, until: day.until };
      const programme = programmeOf({ ...request, order, standing: fed, span });
      const total = needUpTo(programme, span.until) + standing.receivedToday;
      const wanted = regimen.volumePerDay.volume;
      const last = programme.pieces.at(-1);
      const slack = last?.gives.kind === 'rate' ? last.gives.rate : 0;
      if (programme.shortfall > 0) assert.equal(total + programme.shortfall, wanted);
      else assert.ok(total >= wanted && (programme.pieces.length === 0 || total < wanted + slack));
    }),
    runs(3_000),
  );
});

test('[PR4] [PR5] a window’s volume is given, or what it is short of is said; a rate worked from it is rounded down', () => {
  fc.assert(
    fc.property(arbRequest(overnight), (request) => {
      const { regimen } = request.order;
      if (regimen?.kind !== 'cyclic' || regimen.volume === null) throw new Error('not for a volume');
      const order: Order = {
        ...request.order,
        startsAt: null,
        endsAt: null,
        mostVolumePerDay: null,
        catchUpProtocol: null,
      };
      // Far from the standing, so that only the plan counts.
      const standing = { ...request.standing, at: (request.standing.at - 1_000 * HOUR) as Instant };
      const from = (request.span.from - (request.span.from % HOUR)) as Instant;
      const window = windowAfter(order, from);
      const programme = programmeOf({ ...request, order, standing, span: window });
      const gives = needUpTo(programme, window.until);
      const last = programme.pieces.at(-1);
      const slack = last?.gives.kind === 'rate' ? last.gives.rate : 0;
      if (programme.shortfall > 0) assert.equal(gives + programme.shortfall, regimen.volume.volume);
      else assert.ok(gives >= regimen.volume.volume && gives < regimen.volume.volume + Math.max(slack, 1));
      const derived = regimen.rate === null;
      if (derived) assert.ok(ratesIn(programme).every((one) => one % stepOf(request) === 0));
      if (derived) assert.ok(new Set(ratesIn(programme)).size <= 1, 'one rate for the window');
      if (derived) assert.ok(gives <= regimen.volume.volume, 'never up');
      const { least, known } = ceilingsOf(request, false);
      const hours = (((regimen.until - regimen.from + 1_440) % 1_440) / 60) * 100;
      const asWritten = regimen.volume.volume / 3_600_000 / (hours / 100);
      if (derived && known) assert.ok(ratesIn(programme).every((one) => one <= Math.max(least, asWritten)));
      if (order.mostRate !== null)
        assert.ok(ratesIn(programme).every((one) => one <= Number(order.mostRate)));
    }),
    runs(3_000),
  );
});

/** The first window after a moment, found by the hours at which the ward's clock shows its ends. */
function windowAfter({ regimen, zone }: Order, moment: Instant): Span {
  if (regimen?.kind !== 'cyclic') throw new Error('not cyclic');
  const starts = feedingDays({ from: moment, until: (moment + 50 * HOUR) as Instant }, regimen.from, zone);
  const from = (starts[1] as Span).from;
  const ends = feedingDays({ from, until: (from + 1) as Instant }, regimen.until, zone);
  return { from, until: (ends[0] as Span).until };
}

const mostInOneMs = ({ pieces }: Programme): number =>
  Math.max(
    ...pieces.map(({ gives }) =>
      gives.kind === 'rate' ? gives.rate : Math.ceil(gives.volume / (gives.whole.until - gives.whole.from)),
    ),
  );

test('[PR15] no day is given more than the order’s most, and feed goes on until it is', () => {
  let stopped = 0;
  fc.assert(
    fc.property(arbRequest(), (request) => {
      const { order, standing, policy } = request;
      const most = order.mostVolumePerDay;
      const start = ask(policy, 'day.start', { ageDays: null, setting: order.setting, at: standing.at });
      if (most === null || !start.known) return;
      const programme = programmeOf(request);
      const free = programmeOf({ ...request, order: { ...order, mostVolumePerDay: null } });
      for (const day of feedingDays(request.span, start.value, order.zone)) {
        const isNow = within(day, standing.at);
        const counted = isNow ? { from: standing.at, until: day.until } : day;
        const shared = {
          from: Math.max(counted.from, request.span.from) as Instant,
          until: Math.min(counted.until, request.span.until) as Instant,
        };
        if (shared.from >= shared.until) continue;
        const gives = needWithin(programme, shared);
        const already = isNow ? standing.receivedToday : 0;
        // Less than one ms of feed more than the most; a bolus that does not fit is not begun.
        assert.ok(gives === 0 || already + gives < most + mostInOneMs(programme), 'over the most');
        if (gives < needWithin(free, shared)) stopped += 1;
      }
    }),
    runs(3_000),
  );
  assert.ok(stopped > 10, `only ${stopped} days were stopped`);
});

/** Does the plan as it says for a while: what the standing is then. */
function afterDoing(request: ProgrammeRequest, until: Instant, dayFrom: Instant): ProgrammeRequest {
  const whole = programmeOf(request);
  const running = whole.pieces.find((piece) => within(piece, until)) ?? null;
  const received =
    until < dayFrom || request.standing.at >= dayFrom
      ? request.standing.receivedToday + needWithin(whole, { from: request.standing.at, until })
      : needWithin(whole, { from: dayFrom, until });
  return {
    ...request,
    standing: {
      ...request.standing,
      at: until,
      receivedToday: received as Volume,
      running: running?.gives.kind === 'rate' ? { rate: running.gives.rate, since: running.from } : null,
    },
    span: { from: until, until: request.span.until },
  };
}

test('[PR19] working the programme again after doing it so far yields the rest of it', () => {
  let raised = 0;
  fc.assert(
    fc.property(
      fc.record({
        volume: fc.integer({ min: 200, max: 2_400 }),
        base: fc.integer({ min: 10, max: 100 }),
        received: fc.integer({ min: 0, max: 1_500 }),
        hoursIn: fc.integer({ min: 0, max: 23 }),
        step: fc.constantFrom(rate(1), rate(10), mlPerHour(1), mlPerHour(5)),
        share: arbShare,
        days: fc.integer({ min: 1, max: 3 }),
      }),
      ({ volume, base, received, hoursIn, step, share, days }) => {
        const day = Date.parse('2026-11-25T06:00Z');
        const at = (day + hoursIn * HOUR) as Instant;
        const span = { from: at, until: (day + days * 24 * HOUR) as Instant };
        const request: ProgrammeRequest = {
          order: orderFor(volumeTargeted(volume, base)),
          policy: policyWith({ 'pump.rate-step': step }),
          standing: standingAt(at, { receivedToday: ml(received) }),
          span,
          pace: 'lowest',
        };
        const whole = programmeOf(request);
        if (ratesIn(whole).some((one) => one > mlPerHour(base))) raised += 1;
        const until = Math.floor(span.from + (span.until - span.from) * share) as Instant;
        if (until >= span.until) return;
        const today = (day + Math.floor((until - day) / (24 * HOUR)) * 24 * HOUR) as Instant;
        const again = programmeOf(afterDoing(request, until, today));
        const rest = (programme: Programme) =>
          programme.pieces
            .filter((piece) => piece.until > until)
            .map((piece) => ({ from: Math.max(piece.from, until), until: piece.until, gives: piece.gives }));
        assert.deepEqual(rest(again), rest(whole));
      },
    ),
    runs(3_000),
  );
  assert.ok(raised > 20, `only ${raised} programmes made anything up`);
});
