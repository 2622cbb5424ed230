/** What each reading promises, beyond what the golden days show. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { type Duration, instant, minutes } from '@feedwright/core/base/instant';
import { ml, NOTHING } from '@feedwright/core/base/volume';
import type { Policy } from '@feedwright/core/policy/policy';
import type { Fact } from '@feedwright/core/record/fact';
import { dayBefore, feedingDayAt, shiftsOf } from '@feedwright/core/standing/spans';
import { orderWith } from '../order/example.ts';
import { policyWith } from '../programme/situation.ts';
import {
  at,
  bag,
  courseOf,
  give,
  inMl,
  LONDON,
  POLICY,
  pump,
  ROWS,
  residual,
  said,
  seenAt,
} from './bedside.ts';

const clock = (when: number): string => new Date(when).toISOString().slice(11, 16);

test('[ST10] a bag that is hung again keeps the clock that it had', () => {
  const entries = [
    said('08:00', bag.up('a', 500)),
    said('09:00', bag.down('a', 400)),
    said('10:00', bag.up('a', 400)),
  ];
  assert.equal(seenAt('11:00', entries).container?.putUpAt, at('08:00'));
  assert.equal(inMl(seenAt('11:00', entries).container?.remaining as never), 400);
});

test('[ST10] the prime is taken off the bag that the line was filled from, whichever is written down first', () => {
  const runs = [said('08:30', pump.start(100))];
  const after_ = [said('08:00', bag.up('a', 500, { newSet: true })), said('08:00', bag.set(15, 5)), ...runs];
  const before = [said('07:55', bag.set(15, 5)), said('08:00', bag.up('a', 500, { newSet: true })), ...runs];
  const replaced = [
    said('06:00', bag.up('old', 300)),
    said('08:00', bag.set(15, 5)),
    said('08:00', bag.down('old', 300)),
    said('08:00', bag.up('a', 500, { newSet: true })),
    ...runs,
  ];
  for (const entries of [after_, before, replaced]) {
    const { container, containers } = seenAt('09:30', entries);
    assert.equal(inMl(container?.remaining as never), 380);
    assert.equal(containers.find((one) => one.container.id === 'old')?.container.primed ?? 0, 0);
  }
});

test('[ST10] what is prepared waits until it is put up, and takes its expiry along', () => {
  const prepared: Fact = {
    kind: 'container-prepared/1',
    container: 'a',
    feed: 'standard',
    strength: { n: 1, d: 1 },
    volume: ml(500),
    expiresAt: at('16:00'),
  };
  const waiting = [said('07:00', prepared)];
  assert.deepEqual(
    seenAt('07:30', waiting).prepared.map((one) => one.id),
    ['a'],
  );
  const hung = seenAt('08:30', [...waiting, said('08:00', bag.up('a', 500, { comesDownBy: at('20:00') }))]);
  assert.deepEqual(hung.prepared, []);
  assert.equal(hung.container?.comesDownBy, at('16:00'));
});

const carton = (taken: number, discarded = false): Fact => ({
  kind: 'carton-used/1',
  carton: 'c',
  taken: ml(taken),
  discarded,
});

test('[ST13] an opened carton holds what was not poured; more than it held is asked about', () => {
  const opened: Fact = { kind: 'carton-opened/1', carton: 'c', feed: 'standard', volume: ml(500) };
  const entries = [said('08:00', opened), said('08:00', carton(300))];
  assert.deepEqual(
    seenAt('09:00', entries).cartons.map((one) => [one.id, inMl(one.remaining), one.openedAt]),
    [['c', 200, at('08:00')]],
  );
  assert.deepEqual(seenAt('10:00', [...entries, said('09:30', carton(0, true))]).cartons, []);
  const over = seenAt('10:00', [...entries, said('09:30', carton(250))]);
  assert.deepEqual([over.cartons, over.contradictions.map((one) => one.code)], [[], ['carton-overdrawn']]);
});

test('[ST6] a feed that a pump counts too is counted once', () => {
  const entries = [
    said('08:00', pump.clear(0)),
    said('08:00', bag.up('a', 500)),
    said('08:00', give.feed(250, 30, 'pump')),
    said('09:00', pump.read(240)),
  ];
  const before = seenAt('08:45', entries.slice(0, 3));
  assert.deepEqual([inMl(before.receivedToday), before.container?.remaining], [250, ml(250)]);
  const read = seenAt('09:00', entries);
  assert.deepEqual([inMl(read.receivedToday), read.container?.remaining], [240, ml(260)]);
});

test('[ST3] a reading where nothing is known to have run is spread evenly since the last', () => {
  const entries = [said('08:00', pump.clear(0)), said('10:00', pump.read(100))];
  assert.equal(inMl(seenAt('10:00', entries).receivedToday), 100);
  const day = seenAt('10:00', entries).today;
  assert.deepEqual(day?.byRate, NOTHING);
});

test('[ST10] a bag put up where another hangs takes its place; what was left in that one nobody said', () => {
  const standing = seenAt('09:00', [said('08:00', bag.up('a', 500)), said('08:30', bag.up('b', 400))]);
  assert.equal(standing.container?.id, 'b');
  const [first] = standing.containers;
  assert.deepEqual([first?.container.id, first?.takenDownAt, first?.left], ['a', at('08:30'), null]);
  assert.deepEqual(standing.contradictions, []);
});

test('[ST13] a bag taken down that does not hang is asked about', () => {
  const { contradictions } = seenAt('09:00', [said('08:30', bag.down('x'))]);
  assert.deepEqual(
    contradictions.map((one) => one.code),
    ['container-not-up'],
  );
});

test('[ST7] more lost than went in takes all there was, and is asked about', () => {
  const entries = [said('08:00', give.feed(50)), said('09:00', give.lost(80, 'before-patient'))];
  const { receivedToday, contradictions } = seenAt('10:00', entries);
  assert.equal(receivedToday, 0);
  assert.deepEqual(
    contradictions.map((one) => [one.code, one.data.over]),
    [['lost-more-than-received', ml(30)]],
  );
});

test('[ST11] records agree within the greater of a share and a volume, both exactly; policy that is silent asks nothing', () => {
  const asks = (rate: number, shows: number, policy = POLICY) =>
    seenAt('18:00', [said('08:00', pump.start(rate)), said('18:00', pump.read(shows))], {
      policy,
    }).contradictions.map((one) => one.code);
  // 10 h at 40 mL/h are 400 mL, and 50 mL is the greater; at 100 mL/h 10 % of 1000 mL is.
  assert.deepEqual(asks(40, 350), []);
  assert.deepEqual(asks(40, 349), ['counter-against-rate']);
  assert.deepEqual(asks(40, 451), ['counter-against-rate']);
  assert.deepEqual(asks(100, 900), []);
  assert.deepEqual(asks(100, 1101), ['counter-against-rate']);
  assert.deepEqual(asks(100, 1, policyWith()), []);
});

test('[ST11] more out of a bag than went into it is asked about, and shown as below nothing', () => {
  const entries = [
    said('08:00', bag.up('a', 500)),
    said('08:00', pump.start(100)),
    said('14:00', pump.read(600)),
  ];
  const { containers, contradictions, container } = seenAt('14:00', entries);
  assert.deepEqual([inMl(containers[0]?.remaining as never), container?.remaining], [-100, 0]);
  assert.deepEqual(
    contradictions.map((one) => one.code),
    ['counter-against-rate', 'more-than-was-filled'],
  );
});

test('[ST8] residual thrown away is off nutrition only where policy says so', () => {
  const entries = [said('08:00', give.feed(200)), said('09:00', residual('measured', 100, 60))];
  const energy = (policy: Policy) => seenAt('10:00', entries, { policy }).today?.nutrition.energyKcal.value.n;
  assert.equal(energy(POLICY), 200);
  assert.equal(energy(policyWith({ ...ROWS, 'account.discarded-residual-off-nutrition': true })), 140);
});

test('[ST12] a pause for another reason goes on without a gap and counts no minute twice; the end of a feed is no pause', () => {
  const entries = [
    said('08:00', bag.up('a', 1000)),
    said('08:00', pump.start(60)),
    said('09:00', pump.pause('care')),
    said('09:10', pump.pause('procedure')),
    said('10:00', pump.resume()),
    said('12:00', pump.stop()),
  ];
  const { today, interruption } = seenAt('14:00', entries);
  assert.deepEqual(
    today?.interruptions.map((one) => [
      one.reason,
      clock(one.from),
      one.lasted / 60_000,
      inMl(one.lost as never),
    ]),
    [
      ['care', '09:00', 10, 10],
      ['procedure', '09:10', 50, 50],
    ],
  );
  assert.equal(interruption, null);
  assert.equal(seenAt('09:30', entries.slice(0, 4)).interruption?.lasted, minutes(20));
});

test('[ST12] a rate set on a pump that stands still does not start it', () => {
  const entries = [
    said('08:00', pump.start(60)),
    said('09:00', pump.pause('care')),
    said('09:30', pump.rate(90)),
    said('10:00', pump.resume()),
  ];
  assert.equal(seenAt('09:45', entries.slice(0, 3)).running, null);
  assert.deepEqual(seenAt('11:00', entries).running, { rate: 9_000, since: at('10:00') });
  assert.equal(inMl(seenAt('11:00', entries).receivedToday), 150);
});

/** From noon on the 26th days begin at 08:00 instead of 06:00. */
const CHANGED: Policy = {
  ...POLICY,
  rows: [...POLICY.rows, { ...POLICY.rows[0]!, value: 8 * 60, effectiveFrom: at('2026-11-26T12:00:00Z') }],
};

test('[ST14] feeding days follow each other without a gap, also where local policy changes when they begin', () => {
  const place = { policy: CHANGED, zone: LONDON };
  const course = courseOf();
  const days = [];
  for (let day = feedingDayAt(course, at('2026-11-28T10:00:00Z'), place); days.length < 4 && day !== null; ) {
    days.push([
      new Date(day.from).toISOString().slice(5, 16),
      new Date(day.until).toISOString().slice(5, 16),
    ]);
    day = dayBefore(course, day, place);
  }
  assert.deepEqual(days, [
    ['11-28T08:00', '11-29T08:00'],
    ['11-27T08:00', '11-28T08:00'],
    ['11-26T08:00', '11-27T08:00'],
    ['11-26T06:00', '11-26T08:00'],
  ]);
  assert.equal(
    feedingDayAt(course, at('08:00'), { policy: policyWith({ 'day.start': undefined }), zone: LONDON }),
    null,
  );
});

test('[ST14] shifts are counted from the beginning of the day; the last is as long as the day leaves', () => {
  const place = { policy: policyWith({ 'shift.length': (8 * 3_600_000) as Duration }), zone: LONDON };
  const clocksGoBack = feedingDayAt(courseOf(), at('2026-10-25T00:00:00Z'), place);
  const shifts = clocksGoBack === null ? [] : shiftsOf(courseOf(), clocksGoBack, place);
  assert.deepEqual(
    shifts.map((one) => (one.until - one.from) / 3_600_000),
    [8, 8, 8, 1],
  );
  assert.equal(shifts.at(-1)?.until, clocksGoBack?.until);
});

test('[ST15] what was ordered is worked by the order in force, and nothing is ordered once it is stopped', () => {
  const entries = [
    said('07:00', { kind: 'order-placed/1', placed: orderWith() }),
    said('12:00', { kind: 'order-stopped/1', stopped: 'example', reason: 'eats again' }),
  ];
  const { today } = seenAt('14:00', entries);
  assert.deepEqual(today?.ordered, { asWritten: ml(300), lessFasts: ml(300) });
  assert.equal(seenAt('14:00', []).today?.ordered, null);
});

test('[ST15] a day’s volume is ordered once, however often a hold is written into the day', () => {
  // What an order wants of its day does not change with what is written down in between.
  const regimen = { kind: 'volume-targeted', volumeMlPerDay: 1800, baseRateMlPerHour: 75 } as const;
  const hold = { id: 'scan', from: at('10:00'), until: null, why: 'procedure', note: null } as const;
  const entries = [
    said('06:00', {
      kind: 'order-placed/1',
      placed: orderWith({ regimen, startsAt: '2026-11-24T06:00:00Z' }),
    }),
    said('10:00', { kind: 'order-held/1', hold }),
    said('12:00', { kind: 'order-hold-ended/1', hold: 'scan' }),
  ];
  const plain = entries.slice(0, 1);
  for (const hour of ['09:00', '11:00', '14:00', '18:00']) {
    const [held, free] = [seenAt(hour, entries), seenAt(hour, plain)].map((one) => one.today?.ordered);
    assert.ok(held != null && held.asWritten > 0, hour);
    assert.deepEqual(held, free, hour);
  }
});

test('[ST30] steps count under the order that they were confirmed for', () => {
  const confirmed = (step: number): Fact => ({ kind: 'step-confirmed/1', step });
  const entries = [
    said('07:00', { kind: 'order-placed/1', placed: orderWith() }),
    said('09:00', confirmed(1)),
    said('10:00', confirmed(2)),
    said('11:00', confirmed(1), { device: 'other' }),
  ];
  assert.deepEqual(seenAt('12:00', entries).advancement, { stepsConfirmed: 2, since: at('10:00') });
  const next = said('12:00', {
    kind: 'order-placed/1',
    placed: orderWith({ id: 'next', replaces: 'example' }),
  });
  assert.deepEqual(seenAt('13:00', [...entries, next]).advancement, { stepsConfirmed: 0, since: null });
});

const checked = (ph: number, confirmed: boolean): Fact => ({
  kind: 'tube-checked/1',
  method: 'ph',
  lumen: null,
  confirmed,
  ph: fraction(ph),
  markCm: null,
  reader: null,
});
const placed: Fact = { kind: 'tube-placed/1', access: orderWith().access!, markCm: fraction(55) };

test('[ST40] the latest check governs, and a new tube is not confirmed by the old one', () => {
  const entries = [said('08:00', placed), said('08:10', checked(4, true)), said('12:00', checked(7, false))];
  assert.equal(seenAt('08:05', entries.slice(0, 1)).tube.confirmedBy, null);
  assert.equal(seenAt('09:00', entries.slice(0, 2)).tube.confirmedBy?.at, at('08:10'));
  const later = seenAt('13:00', entries).tube;
  assert.deepEqual([later.confirmedBy, later.lastCheck?.confirmed], [null, false]);
  const again = [...entries.slice(0, 2), said('12:30', placed)];
  assert.deepEqual(seenAt('13:00', again).tube.confirmedBy, null);
});

test('[ST40] a lumen is blocked until that lumen is cleared', () => {
  const entries = [
    said('08:00', { kind: 'tube-blocked/1', lumen: 'gastric' }),
    said('08:05', { kind: 'tube-blocked/1', lumen: 'jejunal' }),
    said('09:00', { kind: 'tube-cleared/1', lumen: 'gastric', how: 'warm water' }),
  ];
  assert.deepEqual(seenAt('10:00', entries).tube.blocked, [{ lumen: 'jejunal', at: at('08:05') }]);
});

const noted = (degree: 'none' | 'marked'): Fact => ({ kind: 'distension-noted/1', degree, girthCm: null });

test('[ST51] a sign of intolerance is open until a better one follows', () => {
  const signs = (when: string, ...entries: Parameters<typeof seenAt>[1][number][]) =>
    seenAt(when, entries).intolerance;
  assert.deepEqual(signs('10:00', said('08:00', noted('marked'))), ['distension']);
  assert.deepEqual(signs('10:00', said('08:00', noted('marked')), said('09:00', noted('none'))), []);
  const stopped = [said('08:00', pump.start(50)), said('09:00', pump.pause('intolerance'))];
  assert.deepEqual(signs('10:00', ...stopped), ['stopped-for-it']);
  assert.deepEqual(signs('11:00', ...stopped, said('10:30', pump.resume())), []);
  const vomited = said('08:00', { kind: 'vomited/1', volume: null });
  // Policy has tolerance looked at every four hours.
  assert.deepEqual(signs('11:59', vomited), ['vomiting']);
  assert.deepEqual(signs('12:00', vomited), []);
});

test('[ST52] residual is counted in a row by the time it was done, over what policy says and not at it', () => {
  const run = (...volumes: (number | 'zero' | 'could-not-aspirate' | 'not-done')[]) =>
    seenAt(
      '20:00',
      volumes.map((one, hour) =>
        said(
          instant(at('08:00') + hour * 3_600_000),
          typeof one === 'number' ? residual('measured', one) : residual(one),
        ),
      ),
    ).residual;
  assert.equal(run(250).run, 0);
  assert.equal(run(250.5).run, 1);
  assert.equal(run(300, 'not-done', 300).run, 2);
  assert.equal(run(300, 'could-not-aspirate', 300).run, 2);
  assert.equal(run(300, 'zero', 300).run, 1);
  assert.deepEqual([run(501).stops, run(500).stops, run('not-done').stops], [true, false, false]);
  assert.equal(
    seenAt('20:00', [said('08:00', residual('measured', 900))], { policy: policyWith() }).residual.run,
    null,
  );
});

test('[ST20] water of a second bag is what its counter says, and the bag holds the rest', () => {
  const entries = [
    said('08:00', bag.up('w', 1000, { holds: 'water', feed: 'water' })),
    said('12:00', pump.read(100, 'water')),
    said('16:00', pump.read(250, 'water')),
  ];
  const standing = seenAt('16:00', entries);
  assert.deepEqual([inMl(standing.waterToday), inMl(standing.waterBag?.remaining as never)], [250, 750]);
  assert.equal(standing.container, null);
});
