/** What a wish becomes: entries that every ledger takes, or a refusal of what cannot have happened, and of nothing else. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { act } from '@feedwright/core/act/act';
import type { Acting, Wish } from '@feedwright/core/act/wish';
import { fraction } from '@feedwright/core/base/fraction';
import { instant, MINUTE, minutes } from '@feedwright/core/base/instant';
import { ml, mlPerHour, NOTHING, volume } from '@feedwright/core/base/volume';
import { parseEntry, writeEntry } from '@feedwright/core/record/document';
import type { Fact } from '@feedwright/core/record/fact';
import { effective, ledgerOf, withEntry } from '@feedwright/core/record/ledger';
import fc from 'fast-check';
import { policyOf } from '../order/example.ts';
import { arbCourse } from '../record/arbitrary.ts';
import { arbFact } from '../record/arbitrary-fact.ts';
import { runs } from '../runs.ts';
import { acting, at, entriesOf, outcome, placed, sent, tell, tried } from './bedside.ts';

const water = (amount = 30): Fact => ({
  kind: 'water-given/1',
  water: 'tap',
  volume: ml(amount),
  why: 'flush',
});
const paused: Fact = { kind: 'pump-paused/1', reason: 'care', note: null };
const resumed: Fact = { kind: 'pump-resumed/1' };
const started: Fact = { kind: 'pump-started/1', rate: mlPerHour(75), volumeToBeDelivered: null };
const out: Fact = { kind: 'tube-out/1', how: null };
const replaced: Fact = {
  kind: 'tube-placed/1',
  access: { device: 'nasogastric', french: null, lumens: [], feedBy: null, medicineBy: null, placedAt: null },
  markCm: null,
};
const putUp = (container: string, closed = false): Fact => ({
  kind: 'container-put-up/1',
  container,
  holds: 'feed',
  feed: 'standard',
  strength: fraction(1),
  closed,
  filled: ml(300),
  newSet: false,
  comesDownBy: null,
  lot: null,
  expires: null,
});
const takenDown = (container: string): Fact => ({
  kind: 'container-taken-down/1',
  container,
  left: ml(20),
  reason: null,
});

test('[AC15] a wish becomes an entry with who, when, on what, and under which order and policy', () => {
  const wish: Wish = { wish: 'give', happenedAt: at(30), fact: water() as never, task: 'flush::x' };
  const acted = act(acting(31, [placed()]), wish);
  assert.deepEqual(entriesOf(acted), [
    {
      id: 'made-1',
      course: 'course-1',
      happenedAt: at(30),
      recordedAt: at(31),
      by: 'nurse-1',
      device: 'tablet-1',
      number: 40,
      order: 'example',
      policy: '1',
      task: 'flush::x',
      corrects: null,
      fact: water(),
    },
  ]);
  assert.deepEqual(acted.ok && acted.device, { id: 'tablet-1', nextNumber: 41, lastRecordedAt: at(31) });
  assert.deepEqual(acted.ok && acted.asked, []);
});

test('[AC1] nothing happened in the future, beyond what clocks may differ', () => {
  assert.equal(tried(30, [placed()], tell(32, water())), 'water-given/1');
  const late: Wish = { wish: 'give', happenedAt: instant(at(32) + 1), fact: water() as never };
  assert.equal(tried(30, [placed()], late), 'AC1 act/in-the-future');
});

test('[AC2] nothing was given before the course began; who the person is was known before', () => {
  assert.equal(tried(30, [placed()], tell(0, water())), 'water-given/1');
  assert.equal(tried(30, [placed()], tell(-1, water())), 'AC2 act/before-the-course');
  assert.equal(tried(30, [placed()], tell(-1, putUp('a'))), 'AC2 act/before-the-course');
  assert.equal(
    tried(30, [], tell(-9_000, { kind: 'weight-measured/1', kg: fraction(70) })),
    'weight-measured/1',
  );
  assert.equal(tried(30, [], tell(-9_000, replaced)), 'tube-placed/1');
});

test('[AC3] nothing goes down a tube that is recorded out, until one is placed again', () => {
  const gone = [placed(), sent(10, started), sent(20, out)];
  const given: readonly Fact[] = [
    water(),
    started,
    { kind: 'medicine-given/1', name: 'a', volume: ml(5), lumen: null },
    { kind: 'module-given/1', name: 'b', energyKcal: fraction(24), proteinG: fraction(6) },
    {
      kind: 'feed-given/1',
      by: 'syringe',
      feed: 'standard',
      strength: fraction(1),
      volume: ml(100),
      lasted: null,
      heightCm: null,
      timedBarrel: null,
    },
  ];
  for (const fact of given) assert.equal(tried(30, gone, tell(25, fact)), 'AC3 act/tube-out', fact.kind);
  assert.equal(tried(30, [...gone, sent(20, paused)], tell(25, resumed)), 'AC3 act/tube-out');
  assert.equal(tried(30, gone, tell(25, { kind: 'mouth-care-done/1' })), 'mouth-care-done/1');
  assert.equal(tried(30, gone, tell(25, takenDown('x'))), 'AC5 act/not-up', 'no fluid in it: another rule');
  assert.equal(tried(30, [...gone, sent(24, replaced)], tell(25, water())), 'water-given/1');
  const error = sent(26, { kind: 'entered-in-error/1', target: gone[2]!.id, reason: 'wrong bed' });
  assert.equal(tried(30, [...gone, error], tell(25, water())), 'water-given/1');
});

test('[AC4] only what is paused is resumed', () => {
  assert.equal(tried(30, [placed()], tell(25, resumed)), 'AC4 act/not-paused');
  assert.equal(tried(30, [placed(), sent(10, started)], tell(25, resumed)), 'AC4 act/not-paused');
  const pausing = [placed(), sent(10, started), sent(20, paused)];
  assert.equal(tried(30, pausing, tell(25, resumed)), 'pump-resumed/1');
  assert.equal(tried(30, [...pausing, sent(22, resumed)], tell(25, resumed)), 'AC4 act/not-paused');
  const stop: Fact = { kind: 'pump-stopped/1', reason: 'feed-ended' };
  assert.equal(tried(30, [...pausing, sent(22, stop)], tell(25, resumed)), 'AC4 act/not-paused');
});

test('[AC5] only a container that is up is taken down', () => {
  const up = [placed(), sent(10, putUp('a'))];
  assert.equal(tried(30, up, tell(25, takenDown('a'))), 'container-taken-down/1');
  assert.equal(tried(30, up, tell(25, takenDown('b'))), 'AC5 act/not-up');
  assert.equal(tried(30, up, tell(9, takenDown('a'))), 'AC5 act/not-up', 'before it was put up');
  assert.equal(tried(30, [...up, sent(20, takenDown('a'))], tell(25, takenDown('a'))), 'AC5 act/not-up');
});

test('[AC6] a closed container is spiked once, whichever of the two is recorded first', () => {
  const spiked = [placed(), sent(20, putUp('a', true))];
  assert.equal(tried(30, spiked, tell(25, putUp('a', true))), 'AC6 act/spiked-before');
  assert.equal(tried(30, spiked, tell(10, putUp('a', true))), 'AC6 act/spiked-before');
  assert.equal(tried(30, spiked, tell(25, putUp('b', true))), 'container-put-up/1');
  assert.equal(tried(30, [placed(), sent(20, putUp('a'))], tell(25, putUp('a'))), 'container-put-up/1');
});

const residual = (fields: Partial<Extract<Fact, { kind: 'residual-checked/1' }>>): Fact => ({
  kind: 'residual-checked/1',
  found: 'measured',
  volume: ml(120),
  look: null,
  returned: NOTHING,
  discarded: NOTHING,
  ...fields,
});

test('[AC7] no more is given back than was drawn', () => {
  const ledger = [placed()];
  assert.equal(tried(30, ledger, tell(25, residual({ returned: ml(120) }))), 'residual-checked/1');
  const one = volume(1);
  assert.equal(
    tried(30, ledger, tell(25, residual({ returned: ml(120), discarded: one }))),
    'AC7 residual/more-than-drawn',
  );
  assert.equal(
    tried(30, ledger, tell(25, residual({ found: 'zero', volume: null, returned: one }))),
    'AC7 residual/more-than-drawn',
  );
});

test('[AC8] nothing could be drawn, or nobody looked: then there is no volume; what was measured has one', () => {
  const ledger = [placed()];
  const cannot = 'could-not-aspirate';
  assert.equal(tried(30, ledger, tell(25, residual({ found: cannot, volume: null }))), 'residual-checked/1');
  assert.equal(
    tried(30, ledger, tell(25, residual({ found: cannot }))),
    'AC8 residual/volume-without-aspirate',
  );
  assert.equal(
    tried(30, ledger, tell(25, residual({ found: cannot, volume: NOTHING }))),
    'AC8 residual/seen-without-aspirate',
  );
  assert.equal(
    tried(30, ledger, tell(25, residual({ found: 'not-done' }))),
    'AC8 residual/volume-without-aspirate',
  );
  assert.equal(tried(30, ledger, tell(25, residual({ volume: null }))), 'AC8 residual/no-volume');
});

const mark = (target: string): Wish => ({
  wish: 'mark-in-error',
  happenedAt: at(30),
  target,
  reason: 'wrong bed',
});

test('[AC9] an entry is marked in error once, and never one that marks in error', () => {
  const [a, b] = [sent(10, water()), sent(11, water(60))];
  const error = sent(15, { kind: 'entered-in-error/1', target: a.id, reason: 'wrong bed' });
  const ledger = [placed(), a, b, error];
  assert.deepEqual(entriesOf(act(acting(30, ledger), mark(b.id)))[0]?.fact, {
    kind: 'entered-in-error/1',
    target: b.id,
    reason: 'wrong bed',
  });
  assert.equal(tried(30, ledger, mark(a.id)), 'AC9 act/out-already');
  assert.equal(tried(30, ledger, mark(error.id)), 'AC9 act/marks-in-error-itself');
  assert.equal(tried(30, ledger, mark('nobody')), 'AC9 act/no-such-entry');
  assert.equal(
    tried(30, [...ledger, sent(20, water(90), { corrects: b.id })], mark(b.id)),
    'AC9 act/out-already',
  );
});

test('[AC10] only what is likely one thing is settled', () => {
  const here = { device: 'tablet-1' };
  const [a, b] = [sent(10, water()), sent(12, water(), here)];
  const [other, far] = [sent(12, water(60), here), sent(16, water(), here)];
  const ledger = [placed(), a, b, other, far];
  const settling = (keeps: string, drops: string): Wish => ({
    wish: 'settle-duplicate',
    happenedAt: at(30),
    keeps,
    drops,
  });
  assert.equal(tried(30, ledger, settling(a.id, b.id)), 'duplicate-settled/1');
  assert.equal(tried(30, ledger, settling(b.id, a.id)), 'duplicate-settled/1');
  for (const [keeps, drops] of [
    [a.id, other.id],
    [a.id, far.id],
    [b.id, far.id],
    [a.id, a.id],
    [a.id, 'nobody'],
  ]) {
    assert.equal(tried(30, ledger, settling(keeps!, drops!)), 'AC10 act/no-duplicates');
  }
  const done = sent(20, { kind: 'duplicate-settled/1', keeps: a.id, drops: b.id });
  assert.equal(tried(30, [...ledger, done], settling(a.id, b.id)), 'AC10 act/no-duplicates');
  const silent = acting(30, ledger, { policy: policyOf({}) });
  assert.equal(outcome(act(silent, settling(a.id, b.id))), 'AC10 act/policy-silent');
});

test('[AC11] what a device records is never before what it recorded, though its clock was set back', () => {
  const set = (lastRecordedAt: number | null, clock: number): Acting =>
    acting(clock, [placed()], {
      device: {
        id: 'tablet-1',
        nextNumber: 3,
        lastRecordedAt: lastRecordedAt === null ? null : at(lastRecordedAt),
      },
    });
  const recorded = (one: Acting) => entriesOf(act(one, tell(10, water())))[0]?.recordedAt;
  assert.equal(recorded(set(null, 30)), at(30));
  assert.equal(recorded(set(20, 30)), at(30));
  assert.equal(recorded(set(90, 30)), at(90), 'set back by an hour');
  const acted = act(set(90, 30), tell(10, water()));
  assert.deepEqual(acted.ok && acted.device, { id: 'tablet-1', nextNumber: 4, lastRecordedAt: at(90) });
  // Whoever set the clock right again may tell of what happened since.
  assert.equal(outcome(act(set(90, 30), tell(80, water()))), 'water-given/1');
});

const correcting = (target: string, fact: Fact, task?: string): Wish =>
  ({
    wish: 'correct',
    happenedAt: at(20),
    target,
    fact,
    ...(task === undefined ? {} : { task }),
  }) as Wish;

test('[AC14] what counts is corrected, and the correction does the same task', () => {
  const a = sent(10, water(), { task: 'flush::x' });
  const [entry] = entriesOf(act(acting(30, [placed(), a]), correcting(a.id, water(60))));
  assert.equal(entry?.corrects, a.id);
  assert.equal(entry?.task, 'flush::x');
  const [renamed] = entriesOf(act(acting(30, [placed(), a]), correcting(a.id, water(60), 'flush::y')));
  assert.equal(renamed?.task, 'flush::y');
});

test('[AC14] what does not count any more, or rules, is not corrected', () => {
  const a = sent(10, water());
  const error = sent(15, { kind: 'entered-in-error/1', target: a.id, reason: 'wrong bed' });
  assert.equal(tried(30, [placed(), a, error], correcting(a.id, water(60))), 'AC14 act/out-already');
  assert.equal(
    tried(30, [placed(), a, error], correcting(error.id, water(60))),
    'AC14 act/marks-in-error-itself',
  );
  assert.equal(tried(30, [placed()], correcting('nobody', water(60))), 'AC14 act/no-such-entry');
});

test('[AC14] a correction is judged as if what it corrects had never been', () => {
  const wrong = sent(20, resumed);
  const pausing = [placed(), sent(10, started), sent(15, paused), wrong];
  assert.equal(tried(30, pausing, tell(25, resumed)), 'AC4 act/not-paused');
  assert.equal(tried(30, pausing, correcting(wrong.id, resumed)), 'pump-resumed/1');
});

test('[AC16] what happened is judged as things stood then, whatever was recorded of later', () => {
  const later = [placed(), sent(10, started), sent(15, paused), sent(40, resumed), sent(50, out)];
  assert.equal(tried(60, later, tell(30, resumed)), 'pump-resumed/1');
  assert.equal(tried(60, later, tell(45, water())), 'water-given/1', 'before the tube came out');
  assert.equal(tried(60, later, tell(50, water())), 'AC3 act/tube-out');
  assert.equal(tried(60, later, tell(12, { kind: 'rate-changed/1', rate: mlPerHour(20) })), 'rate-changed/1');
});

test('[AC16] what is unwise or against the order is recorded', () => {
  const unconfirmed = [
    placed(),
    sent(1, {
      kind: 'tube-checked/1',
      method: 'ph',
      lumen: null,
      confirmed: false,
      ph: fraction(6),
      markCm: null,
      reader: null,
    }),
  ];
  assert.equal(tried(30, unconfirmed, tell(25, water())), 'water-given/1');
  assert.equal(tried(30, [], tell(25, { kind: 'rate-changed/1', rate: mlPerHour(300) })), 'rate-changed/1');
  assert.equal(tried(30, unconfirmed, tell(25, putUp('a'))), 'container-put-up/1');
});

test('[AC15] a value that no document can hold is refused with what is wrong', () => {
  const acted = act(acting(30, [placed()]), tell(25, water(0)));
  assert.equal(outcome(acted), 'AC15 act/malformed');
  assert.deepEqual(
    acted.ok ? [] : (acted.refusal.data.issues as { path: string[] }[]).map((one) => one.path),
    [['fact', 'volumeMl']],
  );
  const notConfirmed: Fact = {
    kind: 'tube-checked/1',
    method: 'ph',
    lumen: null,
    confirmed: true,
    ph: null,
    markCm: null,
    reader: null,
  };
  assert.equal(tried(30, [placed()], tell(25, notConfirmed)), 'AC15 fact/confirmed-without-ph');
});

const arbPlainFact = arbFact.filter(({ kind }) => !/^(entered-in-error|duplicate-settled)/.test(kind));

/** Wishes of every kind, about what is in the ledger and what is not. */
const arbWish = (ids: readonly string[]): fc.Arbitrary<Wish> => {
  const id = fc.constantFrom(...ids, 'nobody');
  const when = fc.integer({ min: -60, max: 3_000 }).map(at);
  return fc.oneof(
    { weight: 3, arbitrary: fc.record({ wish: fc.constant('care'), happenedAt: when, fact: arbPlainFact }) },
    fc.record({ wish: fc.constant('correct'), happenedAt: when, target: id, fact: arbPlainFact }),
    fc.record({ wish: fc.constant('mark-in-error'), happenedAt: when, target: id, reason: fc.constant('x') }),
    fc.record({ wish: fc.constant('settle-duplicate'), happenedAt: when, keeps: id, drops: id }),
  ) as fc.Arbitrary<Wish>;
};

test('[AC15] whatever comes through the door is taken by every ledger, counts, and is in the order of its device', () => {
  const arb = arbCourse({ most: 25 }).chain((made) =>
    fc.tuple(fc.constant(made), fc.array(arbWish(made.map(({ id }) => id)), { minLength: 1, maxLength: 6 })),
  );
  let [done, refused] = [0, 0];
  fc.assert(
    fc.property(arb, ([made, wishes]) => {
      let state = acting(2_000, made);
      for (const wish of wishes) {
        const acted = act(state, wish);
        if (!acted.ok) {
          refused += 1;
          continue;
        }
        for (const entry of acted.entries) {
          done += 1;
          assert.deepEqual(parseEntry(writeEntry(entry)), { ok: true, value: entry });
          const { lastRecordedAt, nextNumber } = state.device;
          assert.ok(entry.recordedAt >= (lastRecordedAt ?? 0) && entry.number >= nextNumber);
          const ledger = withEntry(state.ledger, entry);
          assert.ok(effective(ledger).includes(entry));
          state = { ...state, ledger };
        }
        // A clock that jumps to and fro.
        state = {
          ...state,
          device: acted.device,
          clock: instant(state.clock + (done % 3 === 0 ? -7 : 5) * MINUTE),
        };
      }
    }),
    runs(500),
  );
  assert.ok(done > 20 && refused > 10, `${done} done, ${refused} refused`);
});

test('[AC15] a refused wish leaves everything as it was', () => {
  const state = acting(30, [placed()], { tolerance: minutes(0) });
  const before = structuredClone(state.ledger);
  assert.equal(outcome(act(state, tell(25, resumed))), 'AC4 act/not-paused');
  assert.deepEqual(state.ledger, before);
  assert.deepEqual(ledgerOf(state.ledger.entries), state.ledger);
});
