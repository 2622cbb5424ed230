/** A plan that is done to the letter and written down is the standing that the next plan is made from. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { type Instant, instant } from '@feedwright/core/base/instant';
import { NOTHING, STOPPED } from '@feedwright/core/base/volume';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import type { OrderDocument } from '@feedwright/core/order/document';
import type { Plan, PlanRequest, Task, Visit } from '@feedwright/core/plan/plan';
import { planFor } from '@feedwright/core/plan/plan-for';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import type { Entry } from '@feedwright/core/record/entry';
import type { Fact } from '@feedwright/core/record/fact';
import { holdCourse } from '@feedwright/core/standing/held-course';
import { blankStanding, type Standing } from '@feedwright/core/standing/standing';
import { plannerStanding } from '@feedwright/core/standing/standing-at';
import { advanceStanding } from '../plan/advance-standing.ts';
import { bag, LONDON, said } from './bedside.ts';
import { orderWith } from './day-order.ts';

const BEGINS = instant(Date.UTC(2026, 10, 25, 8));
const HOUR = 3_600_000;

/** What somebody writes down who does a task just as it was planned; a check leaves only its task. */
function done(task: Task, visit: Visit, plan: Plan): Fact {
  const volume = task.volume?.value ?? NOTHING;
  const rate = task.rate?.value ?? STOPPED;
  switch (task.kind) {
    case 'put-up-container': {
      const hung = plan.containers.find((one) => one.putUpAt === visit.at && !one.alreadyUp);
      return bag.up(`bag ${visit.at}`, 0, {
        feed: hung?.feed ?? '',
        filled: hung?.fill.value ?? NOTHING,
        newSet: hung?.newSet ?? false,
      });
    }
    case 'take-down-container':
      return bag.down(`bag ${plan.containers.findLast((one) => one.putUpAt < visit.at)?.putUpAt}`);
    // The default policy's prime.
    case 'change-set':
      return bag.set(15, 5);
    case 'start-feed':
      return { kind: 'pump-started/1', rate, volumeToBeDelivered: null };
    case 'change-rate':
      return { kind: 'rate-changed/1', rate };
    case 'stop-feed':
      return { kind: 'pump-stopped/1', reason: 'feed-ended' };
    case 'flush':
    case 'give-water':
      return { kind: 'water-given/1', water: 'tap', volume, why: 'flush' };
    case 'give-bolus':
      return {
        kind: 'feed-given/1',
        by: 'syringe',
        feed: 'standard-1.0',
        strength: fraction(1),
        volume,
        lasted: null,
        heightCm: null,
        timedBarrel: null,
      };
    default:
      return { kind: 'note-written/1', text: task.kind };
  }
}

const writtenDown = (plan: Plan, until: Instant): readonly Entry[] =>
  plan.visits
    .filter((visit) => visit.at < until)
    .flatMap((visit) =>
      visit.tasks.map((task) => said(visit.at, done(task, visit, plan), { task: task.id })),
    );

type Compared = Partial<Record<keyof Standing, unknown>>;

/** What both can know: the ids of containers are made by whoever hangs them, and what a syringe gives hangs nowhere. */
const compared = ({ container, ...standing }: Standing, hangs: boolean): Compared => ({
  at: standing.at,
  running: standing.running?.rate ?? null,
  container: container === null || !hangs ? null : { ...container, id: '' },
  set: standing.set,
  feedingSince: standing.feedingSince,
  receivedToday: standing.receivedToday,
  waterToday: standing.waterToday,
  done: [...standing.done].toSorted(),
});

function follows(changes: Partial<OrderDocument>, hours: readonly number[]): void {
  const order = orderWith(changes);
  const request: PlanRequest = {
    order,
    feeds: DEFAULT_FEEDS,
    policy: DEFAULT_POLICY,
    standing: blankStanding(BEGINS),
    until: instant(BEGINS + 48 * HOUR),
  };
  const plan = planFor(request);
  assert.notEqual(plan.programme, null, JSON.stringify(plan.problems));
  const placed = said(instant(BEGINS - HOUR), { kind: 'order-placed/1', placed: order });
  for (const hour of hours) {
    const at = instant(BEGINS + hour * HOUR);
    const held = holdCourse([placed, ...writtenDown(plan, at)]);
    const view = { at, policy: DEFAULT_POLICY, feeds: DEFAULT_FEEDS, zone: LONDON };
    const standing = plannerStanding(held.course, view);
    const hangs = order.method === 'pump';
    const expected = advanceStanding(request, plan, at);
    assert.deepEqual(compared(standing, hangs), compared(expected, hangs), `after ${hour} h`);
    // And a plan can be made from it that asks for nothing that was done.
    const next = planFor({ ...request, standing });
    const again = next.visits.flatMap((visit) => visit.tasks.map((task) => task.id));
    assert.deepEqual(
      again.filter((id) => standing.done.has(id)),
      [],
    );
  }
}

test('[ST65] a continuous feed, planned, done and written down, is the standing that the next plan needs', () => {
  follows({ regimen: { kind: 'continuous', rateMlPerHour: 60 } }, [1, 7.5, 9, 15, 23, 25, 31]);
});

test('[ST65] so is a cyclic feed over two nights', () => {
  follows(
    { regimen: { kind: 'cyclic', from: '20:00', until: '06:00', rateMlPerHour: 90 } },
    [1, 13, 20, 23, 25, 37, 47],
  );
});

test('[ST65] so are boluses by syringe', () => {
  follows(
    {
      method: 'syringe',
      regimen: { kind: 'bolus', volumeMl: 250, times: ['08:00', '12:00', '16:00', '20:00'], minutes: 20 },
      water: { water: 'tap', given: [{ kind: 'around-feeds', beforeMl: 30, afterMl: 30 }] },
    },
    [2, 7, 13, 23, 26],
  );
});
