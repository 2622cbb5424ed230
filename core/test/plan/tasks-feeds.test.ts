/** When is a feed given at a named time, and when is it met and taken down? */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { MINUTE } from '@feedwright/core/base/instant';
import { ml, mlPerHour } from '@feedwright/core/base/volume';
import type { Task } from '@feedwright/core/plan/plan';

import { CONTINUOUS, due, NOW, type Own, planOf, tasksOf, visitAt } from './tasks-given.ts';

test('[PL33] a feed that was missed has no end to be met', () => {
  const own = {
    startsAt: '2026-11-24T08:00:00+00:00',
    prescribedAt: '2026-11-24T07:00:00+00:00',
    regimen: { kind: 'intermittent', volumeMl: 250, times: ['07:00', '12:00'], minutes: 60, by: 'pump' },
  };
  const ends = (more: string) =>
    due(
      planOf(own, `now 2026-11-25 08:00\npolicy quiet\nfeeding-since 2026-11-24 08:00${more}`),
      'stop-feed',
    );
  assert.deepEqual(ends(''), ['13:00']);
  assert.deepEqual(ends('\ndone give-feed::2026-11-25T07:00Z'), ['08:00', '13:00']);
});

test('[PL33] a feed that was missed does not run either, and one under way goes on', () => {
  const own = {
    startsAt: '2026-11-24T08:00:00+00:00',
    prescribedAt: '2026-11-24T07:00:00+00:00',
    regimen: { kind: 'intermittent', volumeMl: 300, times: ['08:00', '14:00'], minutes: 60, by: 'pump' },
  };
  const runs = (more = '') =>
    planOf(own, `now 2026-11-25 08:40\npolicy quiet${more}`).programme?.pieces.map((piece) =>
      new Date(piece.from).toISOString().slice(11, 16),
    );
  assert.deepEqual(runs(), ['14:00']);
  const begun = '\nfeeding-since 2026-11-24 08:00\nreceived 200 mL\ndone give-feed::2026-11-25T08:00Z';
  assert.deepEqual(runs(begun), ['08:40', '14:00']);
});

test('[PL33] a feed that runs on by itself begins no later and ends no sooner than it should', () => {
  const own = {
    regimen: { kind: 'intermittent', volumeMl: 250, times: ['12:00'], minutes: 45, by: 'pump' },
    water: { water: 'tap', given: [{ kind: 'around-feeds', beforeMl: 30, afterMl: 30 }] },
  };
  const tasks = tasksOf(planOf(own));
  const window = (kind: Task['kind']) => {
    const one = tasks.find((task) => task.kind === kind) as Task;
    return [one.earliest - one.nominal, one.latest - one.nominal].map((ms) => ms / MINUTE);
  };
  assert.deepEqual(
    [window('give-feed'), window('stop-feed')],
    [
      [-30, 0],
      [0, 30],
    ],
  );
  const bolus = { ...own, method: 'syringe', regimen: { kind: 'bolus', volumeMl: 250, times: ['12:00'] } };
  const [give] = tasksOf(planOf(bolus)).filter((one) => one.kind === 'give-bolus');
  assert.deepEqual(
    [(give as Task).earliest, (give as Task).latest].map((at) => (at - (give as Task).nominal) / MINUTE),
    [-30, 30],
  );
});

test('[PL33] a feed that ends after the last point of the grid is met by the next plan', () => {
  // 07:30 to 07:56; the plan ends at 08:00, and its last visit could be at 07:55, before the feed is in.
  const own = { regimen: { kind: 'intermittent', volumeMl: 70, times: ['07:30'], minutes: 26, by: 'pump' } };
  const plan = planOf(own);
  assert.deepEqual(plan.infeasible, []);
  assert.deepEqual(due(plan, 'give-feed'), ['07:30']);
  assert.deepEqual(due(plan, 'stop-feed'), []);
  // Nor does its flush count as water of a day in which nobody can give it: six by the clock and the one before.
  assert.equal(plan.day?.water.flushes.value, ml(7 * 30));
});

test('[PL33] what a hold leaves of a feed is given in the time that is left, at the rate of the whole', () => {
  // By hand: 300 mL in 60 min from 14:00 is 300 mL/h; held from 14:30, 150 mL go in and feed stops at 14:30.
  const own = {
    regimen: { kind: 'intermittent', volumeMl: 300, times: ['14:00'], minutes: 60, by: 'pump' },
    holds: [{ id: 'scan', from: '2026-11-25T14:30:00Z', until: '2026-11-25T16:00:00Z', why: 'procedure' }],
  };
  assert.match(visitAt(own, NOW, '14:30') ?? '', /stop-feed/);
  const [give] = tasksOf(planOf(own)).filter((one) => one.kind === 'give-feed');
  assert.deepEqual([give?.volume?.value, give?.rate?.value], [ml(150), mlPerHour(300)]);
  // Held until 14:20: 200 mL from then on, not a minute sooner.
  const late = {
    ...own,
    holds: [{ ...own.holds[0], from: '2026-11-25T12:00:00Z', until: '2026-11-25T14:20:00Z' }],
  };
  const [rest] = tasksOf(planOf(late)).filter((one) => one.kind === 'give-feed');
  assert.equal(rest?.volume?.value, ml(200));
  assert.deepEqual(due(planOf(late), 'give-feed'), ['14:20']);
  assert.equal(planOf(late).containers[0]?.putUpAt, Date.UTC(2026, 10, 25, 14, 20));
});

test('[PL33] a feed is not given early into a hold, nor a bolus late', () => {
  const hold = (from: string, until: string) => ({
    holds: [
      { id: 'scan', from: `2026-11-25T${from}:00Z`, until: `2026-11-25T${until}:00Z`, why: 'procedure' },
    ],
  });
  const window = (own: Own, kind: Task['kind']) => {
    const one = tasksOf(planOf(own)).find((task) => task.kind === kind) as Task;
    return [one.earliest - one.nominal, one.latest - one.nominal].map((ms) => ms / MINUTE);
  };
  const regimen = { kind: 'intermittent', volumeMl: 250, times: ['12:00'], minutes: 45, by: 'pump' };
  assert.deepEqual(window({ regimen, ...hold('10:00', '11:50') }, 'give-feed'), [-10, 0]);
  const bolus = {
    method: 'syringe',
    regimen: { kind: 'bolus', volumeMl: 250, times: ['12:00'], minutes: 20 },
  };
  assert.deepEqual(window({ ...bolus, ...hold('12:35', '14:00') }, 'give-bolus'), [-30, 15]);
});

test('[PL12] a container with nothing left to give is taken down at a visit inside the window of that task', () => {
  // Feed stops for good at 10:00 and the container may hang until 16:00.
  const hold = { id: 'scan', from: '2026-11-25T10:00:00Z', why: 'procedure' };
  const plan = planOf({ ...CONTINUOUS, holds: [hold] });
  const visit = plan.visits.find(({ tasks }) => tasks.some((one) => one.kind === 'take-down-container'));
  const down = visit?.tasks.find((one) => one.kind === 'take-down-container') as Task;
  assert.deepEqual(
    [down.earliest, down.nominal, down.latest].map((at) => new Date(at).toISOString().slice(11, 16)),
    ['10:00', '16:00', '16:00'],
  );
  assert.ok((visit?.at ?? 0) >= down.earliest && (visit?.at ?? 0) <= down.latest);
});
