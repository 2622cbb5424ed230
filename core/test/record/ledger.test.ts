/** The ledger of a course: whoever holds the same entries has the same ledger, and nothing in it is ever lost. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { instant, MINUTE } from '@feedwright/core/base/instant';
import { ml } from '@feedwright/core/base/volume';
import { type AnyEntry, compareEntries, type Envelope, isKnown } from '@feedwright/core/record/entry';
import type { Fact } from '@feedwright/core/record/fact';
import {
  append,
  counts,
  EMPTY_LEDGER,
  effective,
  entryOf,
  type Ledger,
  ledgerOf,
  positionAt,
  withEntry,
} from '@feedwright/core/record/ledger';
import fc from 'fast-check';
import { runs } from '../runs.ts';
import { arbCourse, COURSE, COURSE_BEGINS } from './arbitrary.ts';

const water = (amount: number): Fact => ({
  kind: 'water-given/1',
  water: 'tap',
  volume: ml(amount),
  why: 'flush',
});
const inError = (target: string): Fact => ({ kind: 'entered-in-error/1', target, reason: 'wrong bed' });
const settled = (keeps: string, drops: string): Fact => ({ kind: 'duplicate-settled/1', keeps, drops });

/** An entry some minutes into the course, recorded when it happened. */
function entry(id: string, minute: number, fact: AnyEntry['fact'], more: Partial<Envelope> = {}): AnyEntry {
  const at = instant(COURSE_BEGINS + minute * MINUTE);
  const envelope: Envelope = {
    id,
    course: COURSE,
    happenedAt: at,
    recordedAt: at,
    by: 'nurse-1',
    device: 'device-1',
    number: 1,
    order: null,
    policy: null,
    task: null,
    corrects: null,
  };
  return { ...envelope, ...more, fact } as AnyEntry;
}

const ids = (entries: readonly AnyEntry[]): string => entries.map((one) => one.id).join(' ');
const counting = (entries: readonly AnyEntry[]): string => ids(effective(ledgerOf(entries)));

/** Every order in which few entries can come, each also one by one. */
function inEveryOrder(entries: readonly AnyEntry[], check: (ledger: Ledger) => void): void {
  const orders = (rest: readonly AnyEntry[]): readonly (readonly AnyEntry[])[] =>
    rest.length === 0
      ? [[]]
      : rest.flatMap((one) => orders(rest.filter((other) => other !== one)).map((tail) => [one, ...tail]));
  for (const order of orders(entries)) {
    check(ledgerOf(order));
    check(order.reduce(withEntry, EMPTY_LEDGER));
  }
}

const shuffled = (entries: readonly AnyEntry[]): fc.Arbitrary<readonly AnyEntry[]> =>
  fc
    .tuple(fc.shuffledSubarray([...entries], { minLength: entries.length }), fc.subarray([...entries]))
    .map(([all, again]) => [...all, ...again]);

test('[RC2] the order of truth: happened, then recorded, then device, then its number, then id', () => {
  const a = entry('a', 10, water(30));
  assert.ok(compareEntries(a, entry('b', 11, water(30))) < 0);
  assert.ok(compareEntries(a, entry('b', 10, water(30), { recordedAt: instant(a.recordedAt + 1) })) < 0);
  assert.ok(compareEntries(a, entry('b', 10, water(30), { device: 'device-2', number: 0 })) < 0);
  assert.ok(compareEntries(a, entry('0', 10, water(30), { number: 2 })) < 0);
  assert.ok(compareEntries(a, entry('b', 10, water(30))) < 0);
  assert.equal(compareEntries(a, entry('a', 10, water(60))), 0);
});

test('[RC2] whatever the order in which entries come and however often, the ledger is the same', () => {
  const courses = arbCourse({ most: 40 }).chain((made) => fc.tuple(fc.constant(made), shuffled(made)));
  fc.assert(
    fc.property(courses, ([made, come]) => {
      const whole = ledgerOf(made);
      assert.deepEqual(ledgerOf(come), whole);
      assert.deepEqual(come.reduce(withEntry, EMPTY_LEDGER), whole);
      assert.equal(whole.entries.length, made.length);
    }),
    runs(500),
  );
});

test('[RC2] the same entry sent again changes nothing', () => {
  const a = entry('a', 10, water(30));
  const ledger = ledgerOf([a, entry('b', 20, water(60))]);
  assert.deepEqual(append(ledger, structuredClone(a)), { ledger, from: null });
});

test('[RC2] where a fault gave one id to two facts, all devices keep the same one', () => {
  const twins = [entry('a', 10, water(30)), entry('a', 10, water(60)), entry('b', 5, water(15))];
  const kept = new Set<string>();
  inEveryOrder(twins, (ledger) => kept.add(JSON.stringify(ledger.entries)));
  assert.equal(kept.size, 1);
  assert.equal(ledgerOf(twins).entries.length, 2);
});

test('[RC14] before the place that an entry changes, what counts stays as it was', () => {
  const courses = arbCourse({ most: 40 }).chain((made) => fc.tuple(fc.constant(made), shuffled(made)));
  let changedEarlier = 0;
  fc.assert(
    fc.property(courses, ([, come]) => {
      let ledger = EMPTY_LEDGER;
      for (const next of come) {
        const { ledger: after, from } = append(ledger, next);
        const untouched = from === null ? ledger.entries : after.entries.slice(0, from);
        assert.deepEqual(untouched, ledger.entries.slice(0, untouched.length));
        for (const one of untouched) assert.equal(counts(after, one), counts(ledger, one));
        if (from !== null && after.entries[from]?.id !== next.id) changedEarlier += 1;
        ledger = after;
      }
    }),
    runs(300),
  );
  assert.ok(changedEarlier > 0, 'no entry reached back');
});

test('[RC3] what is not known here stays in the ledger, is counted by its kind, and never counts as a fact', () => {
  const known = entry('a', 1, water(30));
  const newer = { kind: 'water-given/2', raw: { kind: 'water-given/2', litres: 3 } };
  const mood = { kind: 'mood-noted/1', raw: { kind: 'mood-noted/1' } };
  inEveryOrder([known, entry('b', 2, newer), entry('c', 3, newer), entry('d', 4, mood)], (ledger) => {
    assert.equal(ids(ledger.entries), 'a b c d');
    assert.equal(ids(effective(ledger)), 'a');
    assert.deepEqual(Object.fromEntries(ledger.unknown), { 'water-given/2': 2, 'mood-noted/1': 1 });
  });
});

test('[RC4] an entry marked in error does not count and is still there, whichever of the two came first', () => {
  inEveryOrder([entry('a', 1, water(30)), entry('e', 5, inError('a'))], (ledger) => {
    assert.equal(ids(ledger.entries), 'a e');
    assert.equal(ids(effective(ledger)), 'e');
    assert.deepEqual(ledger.out.get('a'), { why: 'in-error', by: 'e' });
  });
});

test('[RC4] what marks in error is never itself in error, nor corrected, of whatever version', () => {
  const newer = { kind: 'entered-in-error/2', raw: { kind: 'entered-in-error/2', target: 'a' } };
  inEveryOrder(
    [
      entry('a', 1, water(30)),
      entry('e', 5, inError('a')),
      entry('f', 6, inError('e')),
      entry('g', 7, water(15), { corrects: 'e' }),
    ],
    (ledger) => assert.equal(ids(effective(ledger)), 'e f g'),
  );
  const ledger = ledgerOf([entry('e', 5, newer), entry('f', 6, inError('e'))]);
  assert.equal(ledger.out.size, 0);
});

/** Everything by which an entry counts but what names it. */
const withoutMark = (entries: readonly AnyEntry[]): readonly AnyEntry[] =>
  entries.filter((one) => one.id !== 'mark');

test('[RC4] marking in error equals never having made it, but for the history and what names it', () => {
  const arb = arbCourse({ most: 40, least: 3 }).chain((made) =>
    fc.tuple(fc.constant(made), fc.nat({ max: made.length - 1 })),
  );
  let markedRulings = 0;
  fc.assert(
    fc.property(arb, ([made, index]) => {
      const target = made[index]!;
      fc.pre(!target.fact.kind.startsWith('entered-in-error/'));
      if (target.corrects !== null || target.fact.kind === 'duplicate-settled/1') markedRulings += 1;
      const marked = ledgerOf([...made, entry('mark', 9_999, inError(target.id))]);
      const never = ledgerOf(made.filter((one) => one !== target));
      assert.deepEqual(withoutMark(effective(marked)), effective(never));
    }),
    runs(1_000),
  );
  assert.ok(markedRulings > 0);
});

test('[RC5] a correction takes the place of what it corrects, before or after it has come', () => {
  inEveryOrder(
    [entry('a', 1, water(30)), entry('b', 1, water(60), { corrects: 'a', number: 2 })],
    (ledger) => {
      assert.equal(ids(effective(ledger)), 'b');
      assert.deepEqual(ledger.out.get('a'), { why: 'corrected', by: 'b' });
    },
  );
});

test('[RC5] a correction that is itself corrected stays one; one made in error was never made', () => {
  const first = entry('a', 1, water(30));
  const second = entry('b', 2, water(60), { corrects: 'a' });
  assert.equal(counting([first, second, entry('c', 3, water(90), { corrects: 'b' })]), 'c');
  assert.equal(counting([first, second, entry('e', 3, inError('b'))]), 'a e');
});

test('[RC5] a correction of a newer version takes away what it corrects all the same', () => {
  const newer = { kind: 'water-given/2', raw: { kind: 'water-given/2' } };
  assert.equal(counting([entry('a', 1, water(30)), entry('b', 2, newer, { corrects: 'a' })]), '');
});

test('[RC7] of two that say the same the settled one is dropped, before or after they have come', () => {
  const pair = [entry('a', 1, water(30)), entry('b', 2, water(30), { device: 'device-2' })];
  inEveryOrder([...pair, entry('s', 9, settled('a', 'b'))], (ledger) => {
    assert.equal(ids(effective(ledger)), 'a s');
    assert.deepEqual(ledger.out.get('b'), { why: 'duplicate', by: 's' });
  });
  assert.equal(counting([...pair, entry('s', 9, settled('a', 'b')), entry('e', 10, inError('s'))]), 'a b e');
});

test('[RC7] nothing is dropped in favour of what is not here, was an error, or says something else', () => {
  const [a, b] = [entry('a', 1, water(30)), entry('b', 2, water(30), { device: 'device-2' })];
  const s = entry('s', 9, settled('a', 'b'));
  assert.equal(counting([b, s]), 'b s');
  assert.equal(counting([a, b, s, entry('e', 10, inError('a'))]), 'b s e');
  assert.equal(counting([a, entry('b', 2, water(60), { device: 'device-2' }), s]), 'a b s');
  assert.equal(
    counting([a, b, s, entry('c', 11, water(45), { corrects: 'a' })]),
    's c',
    'a stands corrected',
  );
});

test('[RC7] however a pair or a ring is settled, one of those that say the same stays', () => {
  const same = ['a', 'b', 'c'].map((id, index) => entry(id, index, water(30), { device: `device-${index}` }));
  const rulings = fc.array(
    fc
      .tuple(fc.constantFrom('a', 'b', 'c'), fc.constantFrom('a', 'b', 'c'), fc.nat({ max: 60 }))
      .filter(([keeps, drops]) => keeps !== drops),
    { minLength: 1, maxLength: 5 },
  );
  fc.assert(
    fc.property(rulings, (made) => {
      const entries = made.map(([keeps, drops, minute], index) =>
        entry(`s${index}`, minute, settled(keeps, drops), { number: index }),
      );
      const left = effective(ledgerOf([...same, ...entries])).filter((one) => one.id.length === 1);
      assert.ok(left.length >= 1 && left.length < 3, ids(left));
    }),
    runs(1_000),
  );
});

test('[RC2] a ledger is searched by instant and by id', () => {
  const ledger = ledgerOf([entry('a', 1, water(30)), entry('b', 5, water(30)), entry('c', 5, water(60))]);
  const at = (minute: number) => positionAt(ledger, instant(COURSE_BEGINS + minute * MINUTE));
  assert.deepEqual([at(0), at(1), at(2), at(5), at(6)], [0, 0, 1, 1, 3]);
  assert.equal(entryOf(ledger, 'b')?.happenedAt, COURSE_BEGINS + 5 * MINUTE);
  assert.equal(entryOf(ledger, 'z'), null);
  assert.ok(ledger.entries.every(isKnown));
});
