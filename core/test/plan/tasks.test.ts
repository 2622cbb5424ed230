/** What is due, and when. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { hours, type Instant, instant, MINUTE } from '@feedwright/core/base/instant';
import { ml, mlPerHour } from '@feedwright/core/base/volume';
import { instantOf, parseTimeOfDay, showInstant, type Zone } from '@feedwright/core/base/zone';
import type { Plan, Task } from '@feedwright/core/plan/plan';
import { planFor } from '@feedwright/core/plan/plan-for';
import { everySoOften, taskId } from '@feedwright/core/plan/tasks/due';
import { requestOf } from './case-file.ts';
import { tell } from './case-tell.ts';

type Own = Parameters<typeof requestOf>[0];
const CONTINUOUS = { regimen: { kind: 'continuous', rateMlPerHour: 60 } };
const NOW = 'now 2026-11-25 08:00\npolicy quiet';

const planOf = (own: Own, now = NOW): Plan => planFor(requestOf(own, now));
const tasksOf = (plan: Plan): readonly Task[] => plan.visits.flatMap((visit) => visit.tasks);
const due = (plan: Plan, kind: Task['kind']): readonly string[] =>
  tasksOf(plan)
    .filter((one) => one.kind === kind)
    .map((one) => new Date(one.nominal).toISOString().slice(11, 16));
const visitAt = (own: Own, now: string, time: string): string | undefined => {
  const request = requestOf(own, now);
  return tell(planFor(request), request.order.zone).find((line) => line.startsWith(`at ${time}: `));
};

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
