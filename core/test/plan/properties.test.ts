/** What holds for every plan, whatever the order, the policy and the moment. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { earlier, type Instant, instant, MINUTE } from '@feedwright/core/base/instant';
import { NOTHING, subtract, sum } from '@feedwright/core/base/volume';
import type { Plan, PlannedContainer, PlanRequest } from '@feedwright/core/plan/plan';
import { planFor } from '@feedwright/core/plan/plan-for';
import { needWithin, type Programme } from '@feedwright/core/programme/programme';
import fc from 'fast-check';
import { runs } from '../runs.ts';
import { advanceStanding } from './advance-standing.ts';
import { arbSituation } from './arbitrary-plan.ts';

const anySituation = arbSituation({ protectedTimes: true });
const openSituation = arbSituation({ protectedTimes: false });
/**
 * No more than one set in use falls due in a plan, and a bag that holds its prime too: where a set could be changed sooner
 * only to make room for feed, planning again may find that the rest can be better than it was.
 */
const oneSetDue = arbSituation({ protectedTimes: false, setHours: [24], bagMl: [1000] });

const programmeIn = (plan: Plan): Programme => {
  assert.notEqual(plan.programme, null, JSON.stringify(plan.problems));
  return plan.programme as Programme;
};

/** A chain of containers, as against a pour for each feed. */
const isChain = ({ order, policy }: PlanRequest): boolean =>
  order.regimen?.kind !== 'bolus' &&
  !(
    order.regimen?.kind === 'intermittent' &&
    policy.rows.some((row) => row.key === 'pour.per-feed' && row.value === true)
  );

/** What a container gives: from when it is up to when the next one is, or to the end of the plan. */
function given(programme: Programme, one: PlannedContainer, plan: Plan) {
  const from = one.alreadyUp ? plan.at : one.putUpAt;
  const until = earlier(earlier(one.nextAt ?? plan.span.until, one.takeDownBy.value), plan.span.until);
  return until <= from ? NOTHING : needWithin(programme, { from, until });
}

test('[PL3] [PL16] every unit that the programme gives comes out of a container that holds it', () => {
  fc.assert(
    fc.property(
      openSituation.filter(({ request }) => isChain(request)),
      ({ request }) => {
        const plan = planFor(request);
        const programme = programmeIn(plan);
        const lost = plan.infeasible.map((one) => Number(one.data.lost ?? 0)).reduce((a, b) => a + b, 0);
        const parts = plan.containers.map((one) => given(programme, one, plan));
        assert.equal(sum(parts) + lost, needWithin(programme, programme.span));
        plan.containers.forEach((one, index) => {
          const content = subtract(one.fill.value, one.prime.value);
          assert.ok((parts[index] as number) <= content, 'a container gives more than is in it');
          assert.ok(one.volumeToDeliver.value <= content);
        });
      },
    ),
    runs(1000),
  );
});

test('[PL12] [PL13] no container hangs past any of its limits, and the next one is up by then while feed runs', () => {
  fc.assert(
    fc.property(anySituation, ({ request }) => {
      const plan = planFor(request);
      const programme = programmeIn(plan);
      for (const one of plan.containers) {
        assert.ok(one.runsDryAt === null || one.runsDryAt.value <= one.takeDownBy.value);
        if (plan.infeasible.length > 0 || !isChain(request)) continue;
        const until = earlier(one.nextAt ?? plan.span.until, plan.span.until);
        if (one.takeDownBy.value < until) {
          assert.equal(needWithin(programme, { from: one.takeDownBy.value, until }), NOTHING);
        }
      }
    }),
    runs(1000),
  );
});

test('[PL2] every task is done once, inside its window, at a visit that is not protected', () => {
  fc.assert(
    fc.property(anySituation, ({ request }) => {
      const plan = planFor(request);
      const moved = new Set(plan.infeasible.map((one) => one.data.task));
      const ids = plan.visits.flatMap((visit) => visit.tasks.map((one) => one.id));
      assert.equal(new Set(ids).size, ids.length, `twice: ${ids.filter((id, i) => ids.indexOf(id) !== i)}`);
      for (const { at, tasks } of plan.visits) {
        assert.equal(at % (5 * MINUTE), 0);
        assert.ok(at >= plan.at && at < plan.span.until && tasks.length > 0);
        const closed = request.protectedTimes?.some((span) => at >= span.from && at < span.until) ?? false;
        for (const one of tasks) {
          if (moved.has(one.id)) continue;
          const hung =
            one.kind === 'put-up-container' ||
            one.kind === 'change-set' ||
            one.kind === 'take-down-container';
          assert.ok(hung || (one.earliest <= at && at <= one.latest), `${one.id} at ${at}`);
          assert.ok(!closed || plan.infeasible.length > 0);
        }
      }
    }),
    runs(1000),
  );
});

/** What of a plan lies at or after a moment, in a form that can be compared. */
const restOf = (plan: Plan, from: Instant) => ({
  visits: plan.visits
    .filter((visit) => visit.at >= from)
    .map((visit) => ({ at: visit.at, tasks: visit.tasks.map((one) => one.id) })),
  containers: plan.containers
    .filter((one) => !one.alreadyUp && one.putUpAt >= from)
    .map((one) => [
      one.putUpAt,
      one.fill.value,
      one.newSet,
      one.volumeToDeliver.value,
      one.takeDownBy.value,
      one.because,
    ]),
});

test('[PL7] planning again with the same end after doing the plan so far gives the rest of it', () => {
  fc.assert(
    fc.property(oneSetDue, fc.integer({ min: 1, max: 30 * 12 }), ({ request, base }, slots) => {
      const plan = planFor(request);
      const at = instant(base + slots * 5 * MINUTE);
      fc.pre(plan.infeasible.length === 0 && at < plan.span.until && plan.programme !== null);
      const standing = advanceStanding(request, plan, at);
      // A volume a day is shared out, and its first day counted, from when feeding begins: until it has, that is always now.
      const begun = plan.programme.pieces[0]?.from === plan.at;
      fc.pre(request.order.regimen?.kind !== 'volume-targeted' || begun);
      const again = planFor({ ...request, standing, until: plan.span.until });
      assert.deepEqual(restOf(again, at), restOf(plan, at));
    }),
    runs(1000),
  );
});

test('[PL47] no rate is over the ceiling that was not confirmed, and no stretch without feed is unexplained', () => {
  fc.assert(
    fc.property(openSituation, ({ request }) => {
      const programme = programmeIn(planFor(request));
      const { regimen } = request.order;
      fc.pre(regimen?.kind === 'continuous' && regimen.perDay === null);
      const stretches = [...programme.pieces, ...programme.gaps].toSorted((a, b) => a.from - b.from);
      let at =
        programme.span.from < (request.order.startsAt ?? 0)
          ? (request.order.startsAt as Instant)
          : programme.span.from;
      for (const one of stretches) {
        assert.equal(one.from, at, 'a stretch that neither runs nor is explained');
        at = one.until;
      }
      assert.ok(at === programme.span.until || stretches.length === 0);
      assert.ok(programme.pieces.every((one) => one.gives.kind === 'rate' && one.gives.rate <= 150 * 100));
    }),
    runs(500),
  );
});

test('[PL11] the same request always gives the same plan', () => {
  fc.assert(
    fc.property(anySituation, ({ request }) => {
      assert.deepEqual(planFor(request), planFor({ ...request, policy: structuredClone(request.policy) }));
    }),
    runs(200),
  );
});
