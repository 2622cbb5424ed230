/** What is looked at, cared for and asked, and when? */
import assert from 'node:assert/strict';
import { test } from 'node:test';

import { CONTINUOUS, due, type Own, planOf, tasksOf } from './tasks-given.ts';

test('[PL40] checks that belong to running feed are not due while it does not run; care is', () => {
  const own = {
    ...CONTINUOUS,
    holds: [
      { id: 'scan', from: '2026-11-25T11:00:00+00:00', until: '2026-11-25T17:00:00+00:00', why: 'procedure' },
    ],
  };
  const plan = planOf(own, 'now 2026-11-25 08:00');
  assert.deepEqual(due(plan, 'check-position'), ['08:00', '17:00', '20:00', '00:00', '04:00']);
  assert.deepEqual(due(plan, 'mouth-care').length, 6);
});

test('[PL40] at a visit nothing goes down the tube before it was looked at', () => {
  // Water drawn back with gastric contents is what a pH strip would read. The first feed is met as the second begins.
  const regimen = { kind: 'intermittent', volumeMl: 200, times: ['12:00', '13:00'], minutes: 30, by: 'pump' };
  const water = { water: 'tap', given: [{ kind: 'interval', volumeMl: 30, everyHours: 4 }] };
  const visits = planOf({ regimen, water }, 'now 2026-11-25 08:00').visits.map(({ tasks }) =>
    tasks.map((one) => one.kind),
  );
  const together = visits.filter((kinds) => kinds.includes('check-tube') && kinds.includes('flush'));
  assert.equal(together.length, 2);
  for (const kinds of together)
    assert.ok(kinds.lastIndexOf('check-tube') < kinds.indexOf('flush'), kinds.join());
  const between = visits.find((kinds) => kinds.includes('stop-feed') && kinds.includes('give-feed')) ?? [];
  assert.deepEqual(
    between.filter((kind) => kind !== 'mouth-care'),
    ['stop-feed', 'check-position', 'check-tube', 'flush', 'flush', 'put-up-container', 'give-feed'],
  );
});

test('[PL40] head of bed and tube are looked at wherever feed starts: by pH after hours off, by its mark after a hold', () => {
  const at = (own: Own, now: string, time: string) => {
    const visit = planOf(own, now).visits.find(
      (one) => new Date(one.at).toISOString().slice(11, 16) === time,
    );
    return visit?.tasks.filter((one) => one.kind.startsWith('check-t')).map((one) => one.about);
  };
  const loud = 'now 2026-11-25 08:00';
  const night = { regimen: { kind: 'cyclic', from: '21:00', until: '07:00', rateMlPerHour: 100 } };
  assert.deepEqual(at(night, loud, '21:00'), ['ph']);
  assert.deepEqual(at(night, loud, '00:00'), ['mark']);
  const hold = { id: 'scan', from: '2026-11-25T10:00:00Z', until: '2026-11-25T13:30:00Z', why: 'procedure' };
  assert.deepEqual(at({ ...CONTINUOUS, holds: [hold] }, loud, '13:30'), ['mark']);
  const later = { ...CONTINUOUS, startsAt: '2026-11-25T15:30:00+00:00' };
  assert.deepEqual(at(later, loud, '15:30'), ['mark']);
  assert.deepEqual(due(planOf(later, loud), 'check-tube'), ['15:30', '20:00', '00:00', '04:00']);
  assert.deepEqual(due(planOf(later), 'check-tube'), [], 'none where policy has none');
});

test('[PL41] a residual is drawn only where policy has the routine, and never where no lumen may be drawn from', () => {
  const routine = 'now 2026-11-25 08:00\npolicy quiet\npolicy check.residual.routine yes';
  assert.deepEqual(due(planOf(CONTINUOUS), 'measure-residual'), []);
  assert.deepEqual(due(planOf(CONTINUOUS, routine), 'measure-residual'), [
    '08:00',
    '14:00',
    '20:00',
    '02:00',
  ]);
  const jejunal = {
    ...CONTINUOUS,
    access: {
      device: 'jejunostomy',
      lumens: [{ name: 'port', tip: 'jejunal', uses: ['feed', 'medicine'] }],
      feedBy: 'port',
      medicineBy: 'port',
    },
  };
  assert.deepEqual(due(planOf(jejunal, routine), 'measure-residual'), []);
});

test('[PL42] what is due daily is, and weight every third day', () => {
  const plan = planOf(CONTINUOUS, 'now 2026-11-25 08:00\nuntil 2026-11-29 08:00');
  assert.equal(due(plan, 'weigh').length, 2);
  assert.equal(due(plan, 'take-bloods').length, 4);
  assert.equal(due(plan, 'measure-glucose').length, 4);
  assert.equal(due(plan, 'check-tolerance').length, 8);
});

test('[PL43] a step that was declined is not asked about again; one that nobody was asked about stays open', () => {
  const own = {
    startsAt: '2026-11-24T08:00:00+00:00',
    prescribedAt: '2026-11-24T07:00:00+00:00',
    regimen: {
      kind: 'continuous',
      rateMlPerHour: 20,
      advance: { startMlPerHour: 20, stepMlPerHour: 20, everyHours: 24, goalMlPerHour: 40 },
    },
  };
  const now =
    'now 2026-11-25 14:00\nuntil 2026-11-25 20:00\npolicy quiet\nrunning 20 mL/h\nfeeding-since 2026-11-24 08:00';
  const asked = (more = '') =>
    tasksOf(planOf(own, now + more))
      .filter((one) => one.kind === 'confirm-step')
      .map((one) => one.id);
  assert.deepEqual(asked(), ['confirm-step::2026-11-25T08:00Z']);
  assert.deepEqual(asked('\ndone confirm-step::2026-11-25T08:00Z'), []);
});

test('[PL43] steps that nobody was asked about are asked one at a time, each its interval after the one before', () => {
  // Since 08:00 on the 24th at 20 mL/h, a step every 8 h: at 08:00 on the 25th two could have been, and nobody was asked.
  const own = {
    startsAt: '2026-11-24T08:00:00+00:00',
    prescribedAt: '2026-11-24T07:00:00+00:00',
    regimen: {
      kind: 'continuous',
      rateMlPerHour: 20,
      advance: { startMlPerHour: 20, stepMlPerHour: 20, everyHours: 8, goalMlPerHour: 80 },
    },
  };
  const up = '\nup put up 2026-11-25 06:00, filled 200 mL, 160 mL left\nset put up 2026-11-25 06:00';
  const now = `now 2026-11-25 08:00\npolicy quiet\nrunning 20 mL/h\nfeeding-since 2026-11-24 08:00${up}`;
  const asked = (more = '') =>
    planOf(own, now + more).visits.flatMap(({ at, tasks }) =>
      tasks
        .filter((one) => one.kind === 'confirm-step')
        .map((one) => [new Date(at).toISOString().slice(11, 16), (one.rate?.value ?? 0) / 100]),
    );
  assert.deepEqual(asked(), [
    ['08:00', 40],
    ['16:00', 60],
    ['00:00', 80],
  ]);
  // Answered with no at 16:00 on the 24th: at 00:00 the same step was to be asked, not the one after it.
  assert.deepEqual(asked('\ndone confirm-step::2026-11-24T16:00Z').at(0), ['08:00', 40]);
});

test('[PL43] a bolus goes up with a bolus, so that is when it is asked, and before it is given', () => {
  const own = {
    method: 'syringe',
    regimen: {
      kind: 'bolus',
      volumeMl: 120,
      times: ['09:00', '13:00', '18:00'],
      minutes: 20,
      advance: { startMl: 120, stepMl: 60, everyHours: 8, goalMl: 240 },
    },
  };
  const visits = planOf(own).visits.filter(({ tasks }) => tasks.some((one) => one.kind === 'confirm-step'));
  assert.equal(visits.length, 1, 'none at night, when no bolus is due');
  const kinds = visits[0]?.tasks.map((one) => one.kind) ?? [];
  assert.ok(kinds.indexOf('confirm-step') < kinds.indexOf('give-bolus'), kinds.join());
});
