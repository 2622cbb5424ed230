/** What is due, and when? */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { hours, type Instant, instant } from '@feedwright/core/base/instant';
import { ml } from '@feedwright/core/base/volume';
import { instantOf, parseTimeOfDay, showInstant, type Zone } from '@feedwright/core/base/zone';
import { everySoOften, taskId } from '@feedwright/core/plan/tasks/due';

import { CONTINUOUS, due, NOW, planOf, tasksOf, visitAt } from './tasks-given.ts';

test('[PL30] an id is made of what is due and of its minute in UTC, wherever it is planned', () => {
  const at = instant(Date.UTC(2026, 10, 25, 8, 0, 59));
  assert.equal(taskId({ kind: 'flush' }, at), 'flush::2026-11-25T08:00Z');
  assert.equal(
    taskId({ kind: 'flush', beside: 'before', about: 'feed' }, at),
    'flush:before:feed:2026-11-25T08:00Z',
  );
  const ids = tasksOf(
    planOf({ ...CONTINUOUS, zone: 'Asia/Kolkata' }, 'now 2026-11-25 08:00\npolicy quiet'),
  ).map((one) => one.id);
  assert.ok(ids.includes('flush::2026-11-25T02:30Z'), ids.join());
});

test('[PL30] what was done is not due again, and what is past its window is not due any more', () => {
  const own = {
    ...CONTINUOUS,
    startsAt: '2026-11-24T08:00:00+00:00',
    prescribedAt: '2026-11-24T07:00:00+00:00',
  };
  const at = (time: string, more = '') =>
    due(
      planOf(
        own,
        `now 2026-11-25 ${time}\nuntil 2026-11-25 15:00\npolicy quiet\nfeeding-since 2026-11-24 08:00${more}`,
      ),
      'flush',
    );
  assert.deepEqual(at('12:20'), ['12:00']);
  assert.deepEqual(at('12:30'), ['12:00']);
  assert.deepEqual(at('12:35'), []);
  assert.deepEqual(at('12:20', '\ndone flush::2026-11-25T12:00Z'), []);
});

test('[PL30] of somebody of whom nothing is recorded nothing was due before now', () => {
  const own = {
    method: 'syringe',
    startsAt: '2026-11-24T08:00:00+00:00',
    prescribedAt: '2026-11-24T07:00:00+00:00',
    regimen: { kind: 'bolus', volumeMl: 240, times: ['08:00', '14:00'] },
  };
  const given = (more: string) => due(planOf(own, `now 2026-11-25 08:20\npolicy quiet${more}`), 'give-bolus');
  assert.deepEqual(given(''), ['14:00']);
  assert.deepEqual(given('\nfeeding-since 2026-11-24 08:00'), ['08:00', '14:00']);
});

test('[PL38] where feed was stopped before anybody recorded it, the dose has its flush', () => {
  const own = {
    ...CONTINUOUS,
    startsAt: '2026-11-24T08:00:00+00:00',
    prescribedAt: '2026-11-24T07:00:00+00:00',
    medicines: [
      { name: 'phenytoin', times: ['09:00'], volumeMl: 10, holdBeforeMinutes: 60, holdAfterMinutes: 60 },
    ],
  };
  const dose = (more: string) => visitAt(own, `${NOW}\nfeeding-since 2026-11-24 08:00${more}`, '09:00') ?? '';
  assert.match(dose(''), /flush before phenytoin 15 mL; give-medicine/);
  const up = '\nrunning 60 mL/h\nup put up 2026-11-25 06:00, filled 500 mL, 360 mL left';
  assert.match(dose(up), /^at 09:00: give-medicine/);
});

test('[PL30] a window that has begun begins now, or where it was meant, and stays in order', () => {
  const own = {
    ...CONTINUOUS,
    startsAt: '2026-11-24T08:00:00+00:00',
    prescribedAt: '2026-11-24T07:00:00+00:00',
  };
  const [flush] = tasksOf(
    planOf(own, 'now 2026-11-25 12:20\nuntil 2026-11-25 15:00\npolicy quiet\nfeeding-since 2026-11-24 08:00'),
  ).filter((one) => one.kind === 'flush');
  assert.deepEqual(
    [flush?.earliest, flush?.nominal, flush?.latest].map((at) =>
      new Date(at as Instant).toISOString().slice(11, 16),
    ),
    ['12:00', '12:00', '12:30'],
  );
});

test('[PL30] where the order ends nothing more is due by it than to stop, to flush and to take down', () => {
  const own = {
    ...CONTINUOUS,
    endsAt: '2026-11-25T19:10:00+00:00',
    medicines: [{ name: 'm', times: ['21:00'], volumeMl: 10 }],
  };
  const last = planOf(own, 'now 2026-11-25 08:00').visits.at(-1);
  assert.equal(showInstant(last?.at as Instant, 'Europe/London' as Zone), '2026-11-25T19:10:00+00:00');
  assert.deepEqual(
    last?.tasks.map((one) => one.kind),
    ['stop-feed', 'flush', 'take-down-container'],
  );
  // By hand: flushes at 08:00, 12:00 and 16:00, and the one where feed stops.
  assert.equal(planOf(own).day?.water.flushes.value, ml(120));
});

test('[PL30] two things that are due alike are told apart', () => {
  const water = {
    water: 'tap',
    given: [1, 2].map((n) => ({ kind: 'interval', volumeMl: 20 * n, everyHours: 6 })),
  };
  const ids = tasksOf(planOf({ ...CONTINUOUS, water })).map((one) => one.id);
  assert.equal(new Set(ids).size, ids.length);
  assert.ok(ids.includes('flush::2026-11-25T14:00Z#2'));
});

const LONDON = 'Europe/London' as Zone;
const moment = (day: string, time: string) => instantOf(day, parseTimeOfDay(time) as number, LONDON);
const every = (count: number, from: string, until: string, begins = from) =>
  everySoOften(
    hours(count),
    8 * 60,
    { from: moment(from, '08:00'), until: moment(until, '08:00') },
    {
      begins: moment(begins, '08:00'),
      order: { startsAt: moment(begins, '08:00') } as never,
      zone: LONDON,
    },
  ).map((at) => showInstant(at, LONDON).slice(5, 16));

test('[PL31] intervals are elapsed time from the beginning of each feeding day, on short and long days too', () => {
  assert.deepEqual(every(4, '2026-11-25', '2026-11-26'), [
    '11-25T08:00',
    '11-25T12:00',
    '11-25T16:00',
    '11-25T20:00',
    '11-26T00:00',
    '11-26T04:00',
  ]);
  assert.deepEqual(every(6, '2026-03-28', '2026-03-29'), [
    '03-28T08:00',
    '03-28T14:00',
    '03-28T20:00',
    '03-29T03:00',
  ]);
  assert.deepEqual(every(6, '2026-10-24', '2026-10-25'), [
    '10-24T08:00',
    '10-24T14:00',
    '10-24T20:00',
    '10-25T01:00',
    '10-25T07:00',
  ]);
});

test('[PL31] a day or more counts in days from the day of the order, and never twice on the long one', () => {
  assert.deepEqual(every(24, '2026-10-23', '2026-10-27'), [
    '10-23T08:00',
    '10-24T08:00',
    '10-25T08:00',
    '10-26T08:00',
  ]);
  assert.deepEqual(every(72, '2026-11-25', '2026-12-03'), ['11-25T08:00', '11-28T08:00', '12-01T08:00']);
  assert.deepEqual(every(72, '2026-11-29', '2026-12-03', '2026-11-25'), ['12-01T08:00']);
  assert.deepEqual(every(36, '2026-11-25', '2026-11-27'), ['11-25T08:00', '11-26T08:00']);
});

test('[PL32] a pump that runs when it should not, or at another rate, is put right at the first visit', () => {
  const held = {
    ...CONTINUOUS,
    startsAt: '2026-11-24T08:00:00+00:00',
    prescribedAt: '2026-11-24T07:00:00+00:00',
    holds: [
      { id: 'scan', from: '2026-11-25T09:00:00+00:00', until: '2026-11-25T12:00:00+00:00', why: 'procedure' },
    ],
  };
  const up = '\nup put up 2026-11-25 08:00, filled 500 mL, 400 mL left\nset put up 2026-11-25 08:00';
  assert.match(
    visitAt(held, `now 2026-11-25 10:00\npolicy quiet\nrunning 60 mL/h${up}`, '10:00') ?? '',
    /stop-feed/,
  );
  const own = { ...held, holds: [] };
  assert.match(
    visitAt(own, `now 2026-11-25 10:00\npolicy quiet\nrunning 50 mL/h${up}`, '10:00') ?? '',
    /change-rate 360 mL at 60 mL\/h/,
  );
  assert.match(
    visitAt(own, `now 2026-11-25 10:00\npolicy quiet${up}`, '10:00') ?? '',
    /start-feed at 60 mL\/h/,
  );
  assert.equal(visitAt(own, `now 2026-11-25 10:00\npolicy quiet\nrunning 60 mL/h${up}`, '10:00'), undefined);
});

test('[PL34] water at named times is given at them, with the order’s volume', () => {
  const water = { water: 'tap', given: [{ kind: 'times', volumeMl: 150, times: ['10:00', '22:00'] }] };
  const plan = planOf({ ...CONTINUOUS, water });
  assert.deepEqual(due(plan, 'give-water'), ['10:00', '22:00']);
  assert.deepEqual(due(plan, 'flush'), []);
});

test('[PL34] where the order says nothing of water around feeds, policy does', () => {
  const own = {
    method: 'syringe',
    regimen: { kind: 'bolus', volumeMl: 200, times: ['12:00'] },
    water: { water: 'tap', given: [{ kind: 'times', volumeMl: 100, times: ['16:00'] }] },
  };
  assert.match(
    visitAt(own, NOW, '12:00') ?? '',
    /flush before feed 30 mL; give-bolus 200 mL; flush after feed 30 mL$/,
  );
});

test('[PL36] a running feed is flushed by policy where the order has no water by the clock, but not where it starts', () => {
  const own = {
    regimen: { kind: 'cyclic', from: '20:00', until: '08:00', rateMlPerHour: 75 },
    water: { water: 'tap', given: [{ kind: 'around-feeds', beforeMl: 50, afterMl: 50 }] },
  };
  const flushes = tasksOf(planOf(own)).filter((one) => one.kind === 'flush' && one.beside === undefined);
  assert.deepEqual(
    flushes.map((one) => new Date(one.nominal).getUTCHours()),
    [0, 4],
  );
});

test('[PL35] water that falls into a fast is given when it is over if its window reaches so far, else left out and said', () => {
  const fast = (until: string) => ({
    ...CONTINUOUS,
    holds: [
      { id: 'fast', from: '2026-11-25T11:00:00+00:00', until: `2026-11-25T${until}:00+00:00`, why: 'fast' },
    ],
  });
  assert.match(visitAt(fast('12:30'), NOW, '12:30') ?? '', /^at 12:30: flush 30 mL;/);
  const plan = planOf(fast('12:35'));
  assert.deepEqual(
    due(plan, 'flush').filter((at) => at === '12:00'),
    [],
  );
  const said = plan.problems.find((one) => one.code === 'plan/water-in-hold');
  assert.deepEqual(said?.data, { times: 1, volume: { n: 30, d: 1 }, unit: 'mL' });
});

test('[PL35] medicine is given in a hold for the medicine itself, and water too', () => {
  const own = {
    ...CONTINUOUS,
    medicines: [
      { name: 'phenytoin', times: ['12:00'], volumeMl: 10, holdBeforeMinutes: 60, holdAfterMinutes: 60 },
    ],
  };
  assert.match(
    visitAt(own, NOW, '12:00') ?? '',
    /give-medicine phenytoin 10 mL; flush after phenytoin 15 mL; flush 30 mL/,
  );
});

test('[PL37] a hold of the order’s own is flushed by policy, one for a medicine with the medicine’s water', () => {
  const medicine = {
    name: 'phenytoin',
    times: ['14:00'],
    volumeMl: 10,
    holdBeforeMinutes: 60,
    holdAfterMinutes: 0,
  };
  const own = { ...CONTINUOUS, medicines: [medicine] };
  assert.match(
    visitAt(own, NOW, '13:00') ?? '',
    /stop-feed medicine:phenytoin; flush after medicine:phenytoin 15 mL/,
  );
  assert.match(
    visitAt(own, NOW, '14:00') ?? '',
    /^at 14:00: give-medicine phenytoin 10 mL; flush after phenytoin 15 mL; flush before medicine:phenytoin 30 mL; start-feed/,
  );
});

test('[PL38] a dose without a hold keeps its flush before it, and none is drawn from a volume of nothing', () => {
  const own = {
    ...CONTINUOUS,
    medicines: [{ name: 'iron', times: ['10:00'], volumeMl: 5, waterBeforeMl: 0, waterAfterMl: 25 }],
  };
  assert.equal(visitAt(own, NOW, '10:00'), 'at 10:00: give-medicine iron 5 mL; flush after iron 25 mL');
});

test('[PL39] a module is not given while somebody fasts', () => {
  const own = {
    ...CONTINUOUS,
    modules: [{ name: 'protein', times: ['12:00', '18:00'], waterMl: 60, energyKcal: 20, proteinG: 5 }],
    holds: [
      { id: 'fast', from: '2026-11-25T11:00:00+00:00', until: '2026-11-25T14:00:00+00:00', why: 'fast' },
    ],
  };
  assert.deepEqual(due(planOf(own), 'give-module'), ['18:00']);
});
