/** Whether there is a plan, and what it says where there is none. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type Instant, instant, MINUTE } from '@feedwright/core/base/instant';
import { ml, volume } from '@feedwright/core/base/volume';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import type { Plan } from '@feedwright/core/plan/plan';
import { planFor } from '@feedwright/core/plan/plan-for';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import { POLICY_KEYS } from '@feedwright/core/policy/keys';
import type { Policy } from '@feedwright/core/policy/policy';
import { blankStanding, type Standing } from '@feedwright/core/standing/standing';
import fc from 'fast-check';
import { arbOrder } from '../order/arbitrary.ts';
import { runs } from '../runs.ts';
import { arbSituation } from './arbitrary-plan.ts';
import { requestOf } from './case-file.ts';

const CONTINUOUS = { regimen: { kind: 'continuous', rateMlPerHour: 60 } };
const NOW = 'now 2026-11-25 08:00';
const stops = (plan: Plan): readonly unknown[] =>
  plan.problems.filter((one) => one.level === 'stop').map((one) => one.data.key ?? one.code);

test('[PL10] what a plan cannot do without is named, each key once, and there is nothing to follow', () => {
  const request = requestOf(
    CONTINUOUS,
    `${NOW}\npolicy hang.open-liquid not set\npolicy set.prime.line not set\npolicy pour.step not set`,
  );
  const plan = planFor(request);
  assert.deepEqual(stops(plan), ['hang.open-liquid', 'set.prime.line', 'pour.step']);
  assert.deepEqual([plan.programme, plan.day, plan.containers, plan.visits], [null, null, [], []]);
});

test('[PL10] what only leaves out a task is noted, and the plan is made', () => {
  const plan = planFor(requestOf(CONTINUOUS, `${NOW}\npolicy care.mouth.every not set`));
  assert.notEqual(plan.programme, null);
  assert.ok(
    plan.problems.some(
      (one) => one.rule === 'PL10' && one.level === 'note' && one.data.key === 'care.mouth.every',
    ),
  );
  assert.ok(plan.visits.every((visit) => visit.tasks.every((one) => one.kind !== 'mouth-care')));
});

test('[PL46] one that stops, or asks and nobody has confirmed, has no plan; found elsewhere counts as found here', () => {
  const request = requestOf(CONTINUOUS, NOW);
  const found = (level: 'stop' | 'ask' | 'note', confirmedBy?: string) =>
    planFor({
      ...request,
      found: [
        {
          rule: 'FH1',
          level,
          code: 'fhir/somehow',
          path: [],
          data: {},
          ...(confirmedBy === undefined ? {} : { confirmedBy }),
        },
      ],
    });
  assert.equal(found('stop').programme, null);
  assert.equal(found('ask').programme, null);
  assert.notEqual(found('ask', 'Dr B').programme, null);
  assert.notEqual(found('note').programme, null);
  assert.ok(found('stop').problems.some((one) => one.code === 'fhir/somehow'));
});

test('[PL46] a plan ends with the feeding day in which it begins, unless asked otherwise', () => {
  const end = (now: string) => new Date(planFor(requestOf(CONTINUOUS, now)).span.until).toISOString();
  assert.equal(end('now 2026-11-25 07:30'), '2026-11-25T08:00:00.000Z');
  assert.equal(end('now 2026-11-25 08:00'), '2026-11-26T08:00:00.000Z');
  assert.equal(end('now 2026-11-25 08:00\nuntil 2026-11-25 14:00'), '2026-11-25T14:00:00.000Z');
  assert.equal(end('now 2026-11-25 08:00\nuntil 2026-11-25 07:00'), '2026-11-25T08:00:00.000Z');
});

test('[PL11] visits are on five-minute points of the clock, the first not before now', () => {
  const plan = planFor(
    requestOf(
      { ...CONTINUOUS, startsAt: '2026-11-25T08:00:00+00:00', prescribedAt: '2026-11-25T07:00:00+00:00' },
      'now 2026-11-25 08:02',
    ),
  );
  assert.equal(plan.visits[0]?.at, Date.UTC(2026, 10, 25, 8, 5));
  assert.ok(plan.visits.every((visit) => visit.at % (5 * MINUTE) === 0));
  // With nothing up nothing runs before somebody comes.
  assert.equal(plan.programme?.pieces[0]?.from, Date.UTC(2026, 10, 25, 8, 5));
});

test('[PL46] an order that has ended, or has not begun within the plan, is planned as nothing', () => {
  const later = planFor(
    requestOf({ ...CONTINUOUS, startsAt: '2026-11-27T08:00:00+00:00' }, `${NOW}\npolicy quiet`),
  );
  assert.deepEqual([later.programme?.pieces, later.containers, later.visits], [[], [], []]);
});

const DAY = 86_400_000;
const arbInstant = (near: number) => fc.integer({ min: near - 2 * DAY, max: near + 2 * DAY }).map(instant);

/** Whatever a fold could say, whether or not it fits the order. */
const arbStanding = (at: Instant): fc.Arbitrary<Standing> => {
  const up = fc.option(
    fc.record({
      id: fc.constant('up'),
      feed: fc.constantFrom('standard-1.0', 'water', 'other'),
      putUpAt: arbInstant(at),
      comesDownBy: fc.option(arbInstant(at), { nil: null }),
      filled: fc.integer({ min: 0, max: 1500 }).map(ml),
      remaining: fc.integer({ min: 0, max: 1500 }).map(ml),
    }),
    { nil: null },
  );
  return fc
    .record({
      container: up,
      waterBag: up,
      running: fc.option(fc.record({ rate: fc.integer({ min: 0, max: 30_000 }), since: arbInstant(at) }), {
        nil: null,
      }),
      set: fc.option(fc.record({ putUpAt: arbInstant(at) }), { nil: null }),
      feedingSince: fc.option(arbInstant(at), { nil: null }),
      receivedToday: fc.integer({ min: 0, max: 3000 }).map(ml),
      openIntolerance: fc.boolean(),
      stepsConfirmed: fc.integer({ min: 0, max: 9 }),
    })
    .map(({ stepsConfirmed, ...rest }) => ({
      ...blankStanding(at),
      ...(rest as Partial<Standing>),
      advancement: { stepsConfirmed, since: null },
    }));
};

const FEEDS = DEFAULT_FEEDS.feeds.map((one) => one.id);
const CONFIRMED = Array.from({ length: 60 }, (_, index) => ({
  rule: `OR${index}`,
  by: 'Dr B',
  at: null,
  why: null,
}));

for (const wildness of ['sane', 'odd', 'wild'] as const) {
  test(`[PL48] nothing makes the planner throw: ${wildness} orders, and standings that need not fit them`, () => {
    const anything = arbOrder(wildness, FEEDS).chain((order) => {
      const near = order.startsAt ?? instant(Date.UTC(2026, 10, 25));
      return arbInstant(near).chain((at) =>
        fc.record({
          order: fc.constant({ ...order, confirmations: CONFIRMED }),
          standing: arbStanding(at),
          hours: fc.option(fc.integer({ min: -5, max: 72 }), { nil: undefined }),
          silent: fc.constantFrom('', 'hang.', 'set.', 'day.', 'window.', 'flush.', 'check.'),
          protectedTimes: fc.array(fc.record({ from: arbInstant(at), until: arbInstant(at) }), {
            maxLength: 2,
          }),
        }),
      );
    });
    fc.assert(
      fc.property(anything, ({ order, standing, hours, silent, protectedTimes }) => {
        const rows = DEFAULT_POLICY.rows.filter((row) => silent === '' || !row.key.startsWith(silent));
        const plan = planFor({
          order,
          feeds: DEFAULT_FEEDS,
          policy: { ...DEFAULT_POLICY, rows },
          standing,
          protectedTimes,
          ...(hours === undefined ? {} : { until: instant(standing.at + hours * 3_600_000) }),
        });
        assert.equal(plan.at, standing.at);
        assert.ok(plan.programme !== null || plan.visits.length === 0);
      }),
      runs(1000),
    );
  });
}

/** Every value another one of its kind, however senseless together: a bag smaller than its prime, a limit of a minute. */
const arbOddPolicy: fc.Arbitrary<Policy> = fc
  .infiniteStream(fc.tuple(fc.boolean(), fc.nat(), fc.integer({ min: 1, max: 20_000 })))
  .map((odds) => ({
    ...DEFAULT_POLICY,
    rows: DEFAULT_POLICY.rows.map((row) => {
      const [keep, large, small] = odds.next().value as [boolean, number, number];
      if (keep || row.value === null) return row;
      const odd = {
        duration: (large % 4321) * MINUTE,
        volume: volume(small * 36_000_000),
        rate: small,
        switch: small % 2 === 0,
        time: large % 1440,
      } as const;
      const { kind } = POLICY_KEYS[row.key];
      return kind in odd ? { ...row, value: odd[kind as keyof typeof odd] as never } : row;
    }),
  }));

test('[PL48] nothing makes the planner throw: odd policies and standings under orders that are planned', () => {
  const anything = arbSituation({ protectedTimes: true }).chain(({ request, base }) =>
    fc.record({
      request: fc.constant(request),
      standing: arbStanding(base),
      policy: arbOddPolicy,
    }),
  );
  let planned = 0;
  fc.assert(
    fc.property(anything, ({ request, standing, policy }) => {
      const plan = planFor({ ...request, standing, policy });
      if (plan.programme !== null) planned += 1;
      for (const one of plan.containers) {
        assert.ok(one.fill.value >= 0 && one.volumeToDeliver.value >= 0 && one.leftOver.value >= 0);
      }
    }),
    runs(1000),
  );
  assert.ok(planned > 0);
});
