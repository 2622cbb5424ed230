/** What two devices recorded twice is marked, and stands until somebody settles it. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { duration, instant, MINUTE, minutes } from '@feedwright/core/base/instant';
import { ml } from '@feedwright/core/base/volume';
import { likelyDuplicates, rivalCorrections } from '@feedwright/core/record/duplicates';
import type { AnyEntry, Entry } from '@feedwright/core/record/entry';
import { counts, effective, ledgerOf } from '@feedwright/core/record/ledger';
import fc from 'fast-check';
import { runs } from '../runs.ts';
import { arbCourse, COURSE, COURSE_BEGINS } from './arbitrary.ts';

const WITHIN = minutes(5);

const entry = (id: string, minute: number, device: string, fact: Entry['fact']): Entry => {
  const at = instant(COURSE_BEGINS + minute * MINUTE);
  const who = { id, course: COURSE, by: 'nurse-1', device, number: 1 };
  const under = { order: null, policy: null, task: null, corrects: null };
  return { ...who, happenedAt: at, recordedAt: at, ...under, fact };
};
const water = (amount: number): Entry['fact'] => ({
  kind: 'water-given/1',
  water: 'tap',
  volume: ml(amount),
  why: 'flush',
});
const marked = (entries: readonly AnyEntry[], within = WITHIN): string =>
  likelyDuplicates(ledgerOf(entries), within)
    .map(({ first, second }) => `${first.id}=${second.id}`)
    .join(' ');

test('[RC6] the same kind and value on two devices within the minutes is marked, and both count', () => {
  const both = [entry('a', 0, 'x', water(30)), entry('b', 5, 'y', water(30))];
  assert.equal(marked(both), 'a=b');
  assert.equal(effective(ledgerOf(both)).length, 2);
  assert.equal(marked(both, duration(5 * MINUTE - 1)), '', 'a ms too far apart');
  assert.equal(marked([entry('a', 0, 'x', water(30)), entry('b', 1, 'x', water(30))]), '', 'one device');
  assert.equal(marked([entry('a', 0, 'x', water(30)), entry('b', 1, 'y', water(31))]), '', 'another value');
  const care: Entry['fact'] = { kind: 'mouth-care-done/1' };
  assert.equal(marked([entry('a', 0, 'x', water(30)), entry('b', 1, 'y', care)]), '', 'another kind');
  assert.equal(
    marked([entry('a', 0, 'x', care), entry('b', 1, 'y', care), entry('c', 2, 'z', care)]),
    'a=b a=c b=c',
  );
});

test('[RC6] what was settled or marked in error is no longer marked; rulings never are', () => {
  const both = [entry('a', 0, 'x', water(30)), entry('b', 1, 'y', water(30))];
  const ruling = (fact: Entry['fact']) => [...both, entry('s', 2, 'x', fact), entry('t', 3, 'y', fact)];
  assert.equal(marked(ruling({ kind: 'duplicate-settled/1', keeps: 'a', drops: 'b' })), '');
  assert.equal(marked(ruling({ kind: 'entered-in-error/1', target: 'b', reason: 'twice' })), '');
});

test('[RC16] corrections of one entry that know nothing of each other are marked, also further down', () => {
  const correcting = (id: string, minute: number, corrects: string): Entry => ({
    ...entry(id, minute, id, water(60 + minute)),
    corrects,
  });
  const a = entry('a', 0, 'x', water(30));
  const rivals = (...entries: readonly Entry[]): string =>
    rivalCorrections(ledgerOf([a, ...entries]))
      .map(({ corrected, by }) => `${corrected}: ${by.map(({ id }) => id).join(' ')}`)
      .join(', ');
  const [b, c, d] = [correcting('b', 1, 'a'), correcting('c', 2, 'a'), correcting('d', 3, 'b')];
  assert.equal(rivals(b), '');
  assert.equal(rivals(b, d), '', 'one after the other');
  assert.equal(rivals(b, c), 'a: b c');
  assert.equal(rivals(b, c, d), 'a: c d');
  const error = entry('e', 4, 'x', { kind: 'entered-in-error/1', target: 'c', reason: 'wrong bed' });
  assert.equal(rivals(b, c, error), '');
  assert.equal(rivals({ ...b, corrects: 'c' }, { ...c, corrects: 'b' }), '', 'a ring');
});

test('[RC6] every pair of a course is found, and no other', () => {
  fc.assert(
    fc.property(arbCourse({ most: 40 }), fc.integer({ min: 0, max: 40 }), (made, within) => {
      const ledger = ledgerOf(made);
      const found = likelyDuplicates(ledger, minutes(within));
      const standing = effective(ledger).filter(
        ({ fact }) => fact.kind !== 'entered-in-error/1' && fact.kind !== 'duplicate-settled/1',
      );
      const expected = standing.flatMap((first, index) =>
        standing
          .slice(index + 1)
          .filter(
            (second) =>
              first.device !== second.device &&
              second.happenedAt - first.happenedAt <= minutes(within) &&
              JSON.stringify(first.fact) === JSON.stringify(second.fact),
          )
          .map((second) => `${first.id}=${second.id}`),
      );
      assert.deepEqual(
        found.map(({ first, second }) => `${first.id}=${second.id}`),
        expected,
      );
      assert.ok(found.every(({ first, second }) => counts(ledger, first) && counts(ledger, second)));
      const since = instant(COURSE_BEGINS + 600 * MINUTE);
      assert.deepEqual(
        likelyDuplicates(ledger, minutes(within), since),
        found.filter(({ second }) => second.happenedAt >= since),
      );
    }),
    runs(500),
  );
});
