import assert from 'node:assert/strict';
import { test } from 'node:test';
import { after, before, hours, type Instant, minutes, type Span, union } from '@feedwright/core/base/instant';
import { add, given, ml, mlPerHour, type Volume } from '@feedwright/core/base/volume';
import { timesWithin } from '@feedwright/core/base/zone';
import type { Order, Regimen } from '@feedwright/core/order/order';
import { needCurve } from '@feedwright/core/programme/need-curve';
import { type Gap, needUpTo, type Piece, type Programme } from '@feedwright/core/programme/programme';
import { programmeOf } from '@feedwright/core/programme/programme-of';
import fc from 'fast-check';
import { arbOrder } from '../order/arbitrary.ts';
import { runs } from '../runs.ts';
import { arbRequest, arbShare } from './arbitrary-request.ts';
import { continuous, intermittent, policyWith } from './situation.ts';

const same = (a: unknown, b: unknown): boolean => {
  try {
    assert.deepEqual(a, b);
    return true;
  } catch {
    return false;
  }
};

const bare = ({ from: _from, until: _until, ...rest }: Piece | Gap) => rest;

/** Neighbours that say the same are one. */
function joined<T extends Piece | Gap>(things: readonly T[]): readonly T[] {
  const list: T[] = [];
  for (const thing of things) {
    const last = list.at(-1);
    if (last !== undefined && last.until === thing.from && same(bare(last), bare(thing))) {
      list[list.length - 1] = { ...last, until: thing.until };
    } else list.push(thing);
  }
  return list;
}

const both = (a: Programme, b: Programme): Pick<Programme, 'pieces' | 'gaps' | 'shortfall'> => ({
  pieces: joined([...a.pieces, ...b.pieces]),
  gaps: joined([...a.gaps, ...b.gaps]),
  shortfall: add(a.shortfall, b.shortfall),
});

test('[PR17] programmes over adjoining spans are together the programme over both', () => {
  fc.assert(
    fc.property(arbRequest(), arbShare, (request, share) => {
      const { from, until } = request.span;
      const cut = (from + Math.floor((until - from) * share)) as Instant;
      const whole = programmeOf(request);
      const first = programmeOf({ ...request, span: { from, until: cut } });
      const second = programmeOf({ ...request, span: { from: cut, until } });
      const { pieces, gaps, shortfall } = both(whole, {
        ...whole,
        pieces: [],
        gaps: [],
        shortfall: 0 as Volume,
      });
      const together = both(first, second);
      assert.deepEqual(together.pieces, pieces);
      assert.deepEqual(together.gaps, gaps);
      assert.equal(together.shortfall, shortfall);
      assert.equal(add(needUpTo(first, cut), needUpTo(second, until)), needUpTo(whole, until));
    }),
    runs(3_000),
  );
});

test('[PR1] [PR18] pieces and gaps are disjoint, in order, in the span and in the order’s own time', () => {
  fc.assert(
    fc.property(arbRequest(), (request) => {
      const { pieces, gaps } = programmeOf(request);
      const all = [...pieces, ...gaps].toSorted((a, b) => a.from - b.from);
      let last = Math.max(request.span.from, request.order.startsAt ?? Number.NEGATIVE_INFINITY);
      for (const one of all) {
        assert.ok(one.from >= last && one.from < one.until, 'disjoint and in order');
        last = one.until;
      }
      assert.ok(last <= request.span.until || all.length === 0);
      if (pieces.length > 0)
        assert.ok(pieces.every((one) => one.until <= (request.order.endsAt ?? Infinity)));
      assert.deepEqual(
        pieces,
        pieces.toSorted((a, b) => a.from - b.from),
      );
      for (const { gives } of pieces) assert.ok(gives.kind === 'rate' ? gives.rate > 0 : gives.volume >= 0);
    }),
    runs(3_000),
  );
});

/** All holds of an order near a span, found without the programme's own code. */
function heldIn(order: Order, near: Span): readonly Span[] {
  const around = order.medicines.flatMap(({ times, holdBefore, holdAfter }) =>
    timesWithin(times, before(near.from, holdAfter), after(near.until, holdBefore), order.zone).map(
      (when) => ({
        from: before(when, holdBefore),
        until: after(when, holdAfter),
      }),
    ),
  );
  return union([...order.holds.map(({ from, until }) => ({ from, until: until ?? near.until })), ...around]);
}

test('[PR2] [PR3] nothing runs in a hold, nor after one whose end nobody knows', () => {
  fc.assert(
    fc.property(arbRequest(), (request) => {
      const { order, span } = request;
      const { pieces, gaps } = programmeOf(request);
      for (const held of heldIn(order, span)) {
        assert.ok(!pieces.some((one) => one.from < held.until && one.until > held.from), 'runs in a hold');
      }
      const openEnded = order.holds.filter((hold) => hold.until === null).map((hold) => hold.from);
      const last = Math.min(...openEnded, Number.POSITIVE_INFINITY);
      assert.ok(pieces.every((one) => one.until <= last));
      const afterwards = gaps.filter((gap) => gap.until > last);
      assert.ok(afterwards.every((gap) => !gap.untilKnown && gap.holds.length > 0));
      // A bolus is given whole or not at all, so its gap may begin before the hold.
      if (order.regimen?.kind !== 'bolus') assert.ok(afterwards.every((gap) => gap.from >= last));
    }),
    runs(3_000),
  );
});

test('[PR18] every moment at which an all-day feed should run has a piece, or a gap with its reason', () => {
  const allDay = fc.integer({ min: 1, max: 20_000 }).map((hundredths) => ({
    kind: 'continuous' as const,
    rate: { rate: hundredths as never, of: 'mixture' as const },
    perDay: null,
    advance: null,
  }));
  fc.assert(
    fc.property(arbRequest(allDay), (request) => {
      const { order, span, standing } = request;
      const { pieces, gaps } = programmeOf(request);
      const firstFed = order.catchUpProtocol === null ? -Infinity : (standing.feedingSince ?? standing.at);
      const from = Math.max(span.from, order.startsAt ?? -Infinity, firstFed) as Instant;
      const until = Math.min(span.until, order.endsAt ?? Infinity) as Instant;
      const covered = union([...pieces, ...gaps].map((one) => ({ from: one.from, until: one.until })));
      if (from >= until) assert.deepEqual(covered, []);
      else assert.deepEqual(covered, [{ from, until }]);
      assert.ok(
        gaps.every((gap) => gap.why !== '' && (gap.why.startsWith('hold') ? gap.holds.length > 0 : true)),
      );
    }),
    runs(3_000),
  );
});

test('[PR9] at a fixed rate what is given and what is lost are what was ordered, to the last unit', () => {
  const fixed = fc.integer({ min: 1, max: 20_000 }).map((hundredths) => ({
    kind: 'continuous' as const,
    rate: { rate: hundredths as never, of: 'mixture' as const },
    perDay: null,
    advance: null,
  }));
  fc.assert(
    fc.property(arbRequest(fixed), (request) => {
      const order = { ...request.order, catchUpProtocol: null, mostVolumePerDay: null, mostRate: null };
      const programme = programmeOf({ ...request, order });
      const from = Math.max(request.span.from, order.startsAt ?? -Infinity);
      const until = Math.max(from, Math.min(request.span.until, order.endsAt ?? Infinity));
      const rate = order.regimen?.kind === 'continuous' ? order.regimen.rate.rate : 0;
      assert.equal(
        add(needUpTo(programme, request.span.until), programme.shortfall),
        given(rate as never, (until - from) as never),
      );
    }),
    runs(3_000),
  );
});

test('[PR20] never throws on a credible order, however senseless', () => {
  fc.assert(
    fc.property(arbOrder('odd'), arbRequest(), (order, { policy, standing, span, pace }) => {
      const programme = programmeOf({ order, policy, standing, span, pace });
      assert.equal(programme.span, span);
      needUpTo(programme, span.until);
    }),
    runs(5_000),
  );
});

test('[PR20] a policy that says nothing still gives a programme or says why not', () => {
  const silent = { ...policyWith(), rows: [] };
  fc.assert(
    fc.property(arbRequest(), (request) => {
      const { pieces, gaps } = programmeOf({ ...request, policy: silent });
      const needsDay =
        request.order.regimen?.kind === 'volume-targeted' ||
        request.order.catchUpProtocol !== null ||
        request.order.mostVolumePerDay !== null;
      if (needsDay) assert.deepEqual(pieces, []);
      if (needsDay) assert.ok(gaps.every((gap) => gap.why === 'day-start-not-known'));
    }),
    runs(2_000),
  );
});

test('[PR17] the need’s curve is the need, asked quickly, and its inverse the first ms', () => {
  fc.assert(
    fc.property(arbRequest(), arbShare, (request, share) => {
      const programme = programmeOf(request);
      const { from, until } = request.span;
      const when = Math.floor(from + (until - from) * share) as Instant;
      const curve = needCurve(programme);
      assert.equal(curve.upTo(when), needUpTo(programme, when));
      assert.equal(curve.total, needUpTo(programme, until));
      const wanted = Math.floor(curve.total * Math.min(1, Math.max(0, share))) as Volume;
      const reached = curve.reaches(wanted);
      if (wanted > 0) {
        assert.ok(reached !== null && needUpTo(programme, reached) >= wanted);
        assert.ok(needUpTo(programme, before(reached, 1 as never)) < wanted, 'not the first');
      }
      for (const piece of programme.pieces) {
        const reachedBy = curve.reaches(curve.upTo(piece.until));
        assert.ok(reachedBy !== null && reachedBy <= piece.until, 'not before what comes after');
      }
      assert.equal(curve.reaches((curve.total + 1) as Volume), null);
    }),
    runs(3_000),
  );
});

const advancing: fc.Arbitrary<Regimen> = fc
  .record({
    every: fc.integer({ min: 2, max: 12 }),
    goal: fc.integer({ min: 30, max: 120 }),
    kind: fc.constantFrom('continuous' as const, 'intermittent' as const),
  })
  .map(({ every, goal, kind }) => {
    const asRates = { start: mlPerHour(20), step: mlPerHour(20), every: hours(every), goal: mlPerHour(goal) };
    const asVolumes = { start: ml(20), step: ml(20), every: hours(every), goal: ml(goal) };
    return kind === 'continuous'
      ? continuous(goal, { advance: asRates })
      : { ...intermittent(goal, ['06:00', '12:00', '18:00'], minutes(40)), advance: asVolumes as never };
  });

test('[PR8] at the highest pace never less has been needed than at the lowest', () => {
  let more = 0;
  fc.assert(
    fc.property(arbRequest(advancing), arbShare, (request, share) => {
      const from = request.standing.at;
      const span = { from, until: after(from, hours(48)) };
      const order = {
        ...request.order,
        holds: request.order.holds.filter((one) => one.until !== null),
        startsAt: null,
        mostVolumePerDay: null,
      };
      const when = Math.floor(from + hours(48) * share) as Instant;
      const [lowest, highest] = (['lowest', 'highest'] as const).map((pace) =>
        needUpTo(programmeOf({ ...request, order, span, pace }), when),
      ) as [Volume, Volume];
      assert.ok(highest >= lowest);
      if (highest > lowest) more += 1;
    }),
    runs(3_000),
  );
  assert.ok(more > 20, `only ${more} differed`);
});
