/** What is said of containers: sets, primes, what to programme, what is left; and what the cartons in them do to it. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { ml } from '@feedwright/core/base/volume';
import type { Working } from '@feedwright/core/base/working';
import type { Plan } from '@feedwright/core/plan/plan';
import { planFor } from '@feedwright/core/plan/plan-for';
import { requestOf } from './case-file.ts';
import { tell } from './case-tell.ts';

const CONTINUOUS = { regimen: { kind: 'continuous', rateMlPerHour: 60 } };
const planOf = (own: Parameters<typeof requestOf>[0], now: string): Plan => planFor(requestOf(own, now));
const toldOf = (own: Parameters<typeof requestOf>[0], now: string, word = 'container'): readonly string[] => {
  const request = requestOf(own, now);
  return tell(planFor(request), request.order.zone).filter((line) => line.startsWith(`${word} `));
};
/** What is said of the cartons is the matter elsewhere. */
const withoutCartons = (line: string): string => line.replace(/, [\d.]+ mL of (?:new|open):.*$/, '');

test('[PL14] a set is new with the first container where none is known, and by its limit then', () => {
  const now = 'now 2026-11-25 08:00\nuntil 2026-11-27 08:00\npolicy quiet';
  const sets = planOf(CONTINUOUS, now).containers.map((one) => one.newSet);
  assert.deepEqual(sets, [true, false, false, true, false, false]);
});

test('[PL14] a set that is overdue goes at once, with what hangs on it', () => {
  const now =
    'now 2026-11-25 12:00\nuntil 2026-11-25 20:00\npolicy quiet\nrunning 60 mL/h\n' +
    'up put up 2026-11-25 10:00, filled 480 mL, 360 mL left\nset put up 2026-11-24 10:00';
  assert.deepEqual(toldOf(CONTINUOUS, now).map(withoutCartons), [
    'container 10:00 up 480 mL, deliver 0 mL, dry not, down by 10:00 (set-limit), left 360 mL',
    'container 12:00 pour 500 mL, new set, prime 20 mL, deliver 480 mL, dry 20:00, down by 20:00 (hang-limit)',
  ]);
});

test('[PL14] a set of unknown age goes with the container that hangs on it', () => {
  const now =
    'now 2026-11-25 12:00\nuntil 2026-11-26 00:00\npolicy quiet\nrunning 60 mL/h\n' +
    'up put up 2026-11-25 08:00, filled 500 mL, 240 mL left';
  const [up, next] = planOf(CONTINUOUS, now).containers;
  assert.equal(up?.newSet, false);
  assert.deepEqual([next?.newSet, next?.prime.value], [true, ml(20)]);
});

test('[PL15] the prime is line and spill, shown with both, and nothing where the set is not new', () => {
  const [first, second] = planOf(CONTINUOUS, 'now 2026-11-25 08:00\npolicy quiet').containers;
  assert.equal(first?.prime.value, ml(20));
  assert.deepEqual(
    first?.prime.working.inputs.map((one) => [one.symbol, one.basis.kind]),
    [
      ['V_line', 'policy'],
      ['V_spill', 'policy'],
    ],
  );
  assert.equal(second?.prime.value, ml(0));
});

test('[PL15] a new set is reckoned with where it decides how far a bag reaches', () => {
  // 125 mL/h for 8 h are 1000 mL, all that the bag holds: with 20 mL of prime it is 20 mL short of 8 h.
  const order = { regimen: { kind: 'continuous', rateMlPerHour: 125 } };
  const plan = planOf(order, 'now 2026-11-25 08:00\npolicy quiet');
  assert.equal(plan.containers.length, 4);
  for (const one of plan.containers) assert.ok(one.fill.value <= ml(1000));
  const whole = planOf(order, 'now 2026-11-25 08:00\npolicy quiet\nset put up 2026-11-25 08:00');
  assert.deepEqual(
    whole.containers.map((one) => one.fill.value / ml(1)),
    [1000, 1000, 1000],
  );
});

test('[PL16] [PL17] [PL18] [PL19] each number is made of the value that it shows, and of the numbers before it', () => {
  const shows = (working: Working): readonly string[] => [
    working.result.symbol,
    ...working.inputs.flatMap((one) => (one.basis.kind === 'working' ? shows(one.basis.working) : [])),
  ];
  const [first] = planOf(
    { regimen: { kind: 'continuous', rateMlPerHour: 63 } },
    'now 2026-11-25 08:00\npolicy quiet',
  ).containers;
  assert.ok(first);
  for (const one of [first.fill, first.prime, first.volumeToDeliver, first.leftOver]) {
    const is = one.working.result.is;
    assert.ok(is.kind === 'quantity' && is.unit === 'mL');
    assert.equal((is.value.n / is.value.d) * ml(1), one.value);
  }
  assert.equal(first.fill.working.equation, 'V_fill = ⌈(V_need + P) / p⌉ × p');
  assert.deepEqual(first.fill.working.rounded, { way: 'up', step: { n: 10, d: 1 } });
  assert.deepEqual(shows(first.volumeToDeliver.working), [
    'V_deliver',
    'V_in',
    'V_fill',
    'V_need',
    'r',
    'P',
    'P',
    'V_need',
    'r',
  ]);
});

test('[PL12] a bag into which an older carton went comes down by that carton’s limit', () => {
  const own = CONTINUOUS;
  const now =
    'now 2026-11-25 08:00\nuntil 2026-11-25 20:00\npolicy quiet\npolicy hang.open-liquid 10 h\n' +
    'carton A opened 2026-11-24 16:30, 100 mL left';
  // Two bags for 12 h. The first may hang until 18:00; A only until 16:30, which is later than the next bag at 12:00.
  assert.deepEqual(toldOf(own, now), [
    'container 08:00 pour 260 mL, new set, prime 20 mL, deliver 240 mL, dry 12:00, down by 16:30 (opened-limit), 100 mL of open:A, 160 mL of new:1 leaving 340 mL until 08:00 on 26 Nov',
    'container 12:00 pour 600 mL, deliver 600 mL, dry 22:00, down by 22:00 (hang-limit), 340 mL of new:1, 260 mL of new:2 leaving 240 mL until 12:00 on 26 Nov',
  ]);
});

test('[PL12] what is opened for a bag limits it where it may be kept for less than it may hang', () => {
  const now = 'now 2026-11-25 08:00\nuntil 2026-11-25 14:00\npolicy quiet\npolicy carton.keep-for 6 h';
  const [only] = planOf(CONTINUOUS, now).containers;
  assert.deepEqual(
    [only?.because, only?.takeDownBy.working.equation],
    ['opened-limit', 't_down = min(t_up + H_opened, t_up + H, t_set)'],
  );
});

test('[PL20] a set lasts through the feeds that are over before it is due', () => {
  const feeds = {
    regimen: {
      kind: 'intermittent',
      volumeMl: 250,
      times: ['08:00', '14:00', '20:00'],
      minutes: 60,
      by: 'pump',
    },
  };
  const now = 'now 2026-11-25 08:00\npolicy quiet\nset put up 2026-11-24 15:00';
  const made = planOf(feeds, now).containers.map((one) => [one.newSet, one.prime.value / ml(1)]);
  // Due at 15:00: the feed of 14:00 is over just then; that of 20:00 has a new one.
  assert.deepEqual(made, [
    [false, 0],
    [false, 0],
    [true, 20],
  ]);
});

test('[PL6] [PL20] a feed that no container holds is given as far as it is held, and the rest is said', () => {
  const feeds = {
    feed: { id: 'standard-1.0' },
    regimen: { kind: 'intermittent', volumeMl: 300, times: ['08:00'], minutes: 60, by: 'pump' },
  };
  const now = 'now 2026-11-25 08:00\npolicy quiet\npolicy bag.capacity 250 mL';
  const plan = planOf(feeds, now);
  assert.deepEqual(
    plan.infeasible.map((one) => [one.code, one.data.missing]),
    [['feed-over-capacity', ml(70)]],
  );
  assert.equal(plan.containers[0]?.fill.value, ml(250));
});

test('[PL45] a closed feed whose list names no container is not planned', () => {
  const request = requestOf({ ...CONTINUOUS, feed: { id: 'standard-1.0-closed' } }, 'now 2026-11-25 08:00');
  const feeds = {
    ...request.feeds,
    feeds: request.feeds.feeds.map((one) => (one.id === 'standard-1.0-closed' ? { ...one, packs: [] } : one)),
  };
  const plan = planFor({ ...request, feeds });
  assert.equal(plan.programme, null);
  assert.deepEqual(
    plan.problems.filter((one) => one.level === 'stop').map((one) => one.code),
    ['plan/no-pack'],
  );
});

test('[PL44] a second bag that is emptied by its flushes is renewed before it is dry', () => {
  const own = {
    ...CONTINUOUS,
    water: { water: 'tap', given: [{ kind: 'second-bag', volumeMl: 100, everyHours: 1 }] },
  };
  const now = 'now 2026-11-25 08:00\npolicy quiet\npolicy bag.capacity 500 mL';
  const bags = planOf(own, now).waterBags;
  // Five flushes to a bag: the sixth falls six hours after it was put up.
  assert.deepEqual(
    bags.map((one) => [new Date(one.putUpAt).toISOString().slice(11, 16), one.fill.value / ml(1)]),
    [
      ['08:00', 500],
      ['13:55', 500],
      ['18:55', 500],
      ['23:55', 500],
      ['04:55', 500],
    ],
  );
});

test('[PL20] a pour that is up comes down when its feed is over, not with its hang limit', () => {
  const feeds = {
    startsAt: '2026-11-24T08:00:00+00:00',
    prescribedAt: '2026-11-24T07:00:00+00:00',
    regimen: { kind: 'intermittent', volumeMl: 300, times: ['08:00', '12:00'], minutes: 60, by: 'pump' },
  };
  const now =
    'now 2026-11-25 08:20\nuntil 2026-11-25 14:00\npolicy quiet\nfeeding-since 2026-11-24 08:00\n' +
    'set put up 2026-11-25 08:00\nup put up 2026-11-25 08:00, filled 320 mL, 200 mL left\ndone give-feed::2026-11-25T08:00Z';
  assert.deepEqual(toldOf(feeds, now).map(withoutCartons), [
    'container 08:00 up 320 mL, deliver 200 mL, dry 09:00, down by 09:00 (feed-ends)',
    'container 12:00 pour 300 mL, deliver 300 mL, dry 13:00, down by 13:00 (feed-ends)',
  ]);
});

test('[PL12] [PL32] an order that ends ends its feed, its container and its plan', () => {
  const own = { ...CONTINUOUS, endsAt: '2026-11-25T18:30:00+00:00' };
  const request = requestOf(own, 'now 2026-11-25 08:00\npolicy quiet');
  const told = tell(planFor(request), request.order.zone);
  // 10½ h: 16:00 at the latest; what is left for 2½ h is 150 mL.
  assert.deepEqual(told.filter((line) => line.startsWith('container ')).map(withoutCartons), [
    'container 08:00 pour 260 mL, new set, prime 20 mL, deliver 240 mL, dry 12:00, down by 16:00 (hang-limit)',
    'container 12:00 pour 390 mL, deliver 390 mL, dry 18:30, down by 18:30 (feed-ends)',
  ]);
  assert.ok(
    told.includes('at 18:30: stop-feed; flush after feed 30 mL; take-down-container'),
    told.join('\n'),
  );
});
