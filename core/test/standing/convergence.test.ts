/** Whoever holds the same entries knows the same, however they came. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type Instant, instant, DAY as LASTS } from '@feedwright/core/base/instant';
import type { AnyEntry } from '@feedwright/core/record/entry';
import { readCheckpoint, writeCheckpoint } from '@feedwright/core/standing/checkpoint';
import { beginCourse } from '@feedwright/core/standing/course';
import { evolve, foldCourse } from '@feedwright/core/standing/evolve';
import {
  emptyCourse,
  type HeldCourse,
  holdCourse,
  holdEntry,
  standingOf,
} from '@feedwright/core/standing/held-course';
import fc from 'fast-check';
import { arbCourse, arbEntry, COURSE_BEGINS } from '../record/arbitrary.ts';
import { runs } from '../runs.ts';
import { FEEDS, LONDON, POLICY, said } from './bedside.ts';

const VIEW = { policy: POLICY, feeds: FEEDS, zone: LONDON };

const shown = (held: HeldCourse, at: Instant): string =>
  JSON.stringify(standingOf(held, { ...VIEW, at }), (_, value) =>
    value instanceof Set ? [...value] : value,
  );

const written = (held: HeldCourse): string => writeCheckpoint(held.course);

const heldOneByOne = (entries: readonly AnyEntry[]): HeldCourse => entries.reduce(holdEntry, emptyCourse());

/** An order in which a device may have come to hold them: shuffled, and some of them more than once. */
const arbArrival = (entries: readonly AnyEntry[]): fc.Arbitrary<readonly AnyEntry[]> =>
  fc
    .tuple(
      fc.shuffledSubarray([...entries], { minLength: entries.length }),
      fc.subarray([...entries], { maxLength: Math.min(5, entries.length) }),
    )
    .map(([all, again]) => [...all, ...again]);

const SMALL = arbCourse({ most: 14, devices: 5 });
const LARGE = arbCourse({ most: 60, devices: 3 });

const AFTER = instant(COURSE_BEGINS + 2 * LASTS);

test('[ST61] five devices that get the entries in different orders, with repetitions, come to the same standing', () => {
  fc.assert(
    fc.property(
      SMALL.chain((entries) =>
        fc.tuple(fc.constant(entries), ...[1, 2, 3, 4, 5].map(() => arbArrival(entries))),
      ),
      ([entries, ...arrivals]) => {
        const expected = holdCourse(entries);
        const helds = arrivals.map(heldOneByOne);
        for (const held of helds) assert.ok(written(held) === written(expected), 'the course');
        // One is as good as any: the standing is made from the course and the ledger's likely duplicates.
        assert.ok(shown(helds[0]!, AFTER) === shown(expected, AFTER), 'the standing');
      },
    ),
    runs(10_000),
  );
});

test('[ST60] folding in pieces, from any checkpoint, also one written down, equals folding whole', () => {
  fc.assert(
    fc.property(LARGE, fc.nat(), (entries, where) => {
      const { ledger, course } = holdCourse(entries);
      const folded = ledger.entries.filter((one) => !ledger.out.has(one.id));
      const place = where % (folded.length + 1);
      const half = foldCourse(folded.slice(0, place));
      const before = writeCheckpoint(half);
      const read = readCheckpoint(before);
      assert.ok(read.ok);
      assert.equal(writeCheckpoint(foldCourse(folded.slice(place), half)), writeCheckpoint(course));
      assert.equal(writeCheckpoint(foldCourse(folded.slice(place), read.value)), writeCheckpoint(course));
      // What was gone on from is as it was, and can be gone on from again.
      assert.equal(writeCheckpoint(half), before);
      assert.equal(writeCheckpoint(foldCourse(folded.slice(place), half)), writeCheckpoint(course));
    }),
    runs(500),
  );
});

test('[ST60] a long course with checkpoints takes a late entry as if it had come in time', () => {
  const all = Array.from({ length: 1_000 }, (_, index) =>
    said(instant(COURSE_BEGINS + index * 60_000), {
      kind: 'water-given/1',
      water: 'tap',
      volume: (1_000 + index) as never,
      why: 'flush',
    }),
  );
  for (const late of [0, 3, 255, 256, 257, 600, 999]) {
    const held = holdEntry(heldOneByOne(all.filter((_, index) => index !== late)), all[late]!);
    assert.equal(written(held), written(holdCourse(all)), `entry ${late}`);
    assert.ok(held.checkpoints.every((one, place) => place === 0 || one.position % 256 === 0));
  }
  assert.ok(heldOneByOne(all).checkpoints.length >= 4);
});

test('[ST61] an entry marked in error is as if it had never been made, but for the ledger', () => {
  fc.assert(
    fc.property(LARGE, fc.nat(), (entries, where) => {
      const target = entries[where % entries.length]!;
      // Whatever names it, or is named by it, belongs to its history.
      const named = new Set(entries.flatMap((one) => [one.corrects, ...Object.values(one.fact)]));
      fc.pre(!named.has(target.id) && target.corrects === null);
      fc.pre(!['entered-in-error/1', 'duplicate-settled/1'].includes(target.fact.kind));
      const marks = said(instant(AFTER - 1), {
        kind: 'entered-in-error/1',
        target: target.id,
        reason: 'wrong',
      });
      const with_ = holdCourse([...entries, marks]);
      const never = holdCourse(entries.filter((one) => one !== target));
      assert.equal(
        writeCheckpoint({ ...with_.course, entries: 0, upTo: null }),
        writeCheckpoint({ ...never.course, entries: 0, upTo: null }),
      );
      assert.ok(with_.ledger.entries.includes(target));
    }),
    runs(500),
  );
});

test('[ST62] an entry of a newer kind is counted and changes nothing else', () => {
  const [up, newer] = [
    said('08:00', { kind: 'mouth-care-done/1' }),
    { ...said('08:05', { kind: 'mouth-care-done/1' }), fact: { kind: 'mouth-care-done/2', raw: {} } },
  ];
  const course = foldCourse([up, newer, newer]);
  assert.deepEqual(course.unknown, { 'mouth-care-done/2': 2 });
  assert.equal(
    writeCheckpoint({ ...course, unknown: {}, entries: 1, upTo: up.happenedAt }),
    writeCheckpoint(evolve(beginCourse(), up)),
  );
});

test('[ST60] a checkpoint of another version of the fold, or a damaged one, is not gone on from', () => {
  const text = writeCheckpoint(beginCourse());
  assert.ok(readCheckpoint(text).ok);
  const codes = [
    text.replace('"version":1', '"version":2'),
    text.slice(1),
    '{}',
    'null',
    text.replace('"tube"', '"tub"'),
  ]
    .map(readCheckpoint)
    .map((one) => (one.ok ? 'read' : one.issues[0]?.code));
  assert.deepEqual(codes, ['checkpoint/version', ...Array(4).fill('checkpoint/unreadable')]);
});

test('[ST13] no facts, in whatever order, make the fold or a standing throw, and nothing is below zero', () => {
  const days =
    (spread: number) =>
    (one: AnyEntry): AnyEntry => ({
      ...one,
      happenedAt: instant(COURSE_BEGINS + (one.happenedAt % spread)),
    });
  fc.assert(
    fc.property(
      fc.array(arbEntry, { maxLength: 30 }),
      fc.constantFrom(3_600_000, LASTS, 30 * LASTS),
      (entries, spread) => {
        const held = holdCourse(entries.map(days(spread)).map((one, index) => ({ ...one, id: `e${index}` })));
        const standing = standingOf(held, { ...VIEW, at: instant(COURSE_BEGINS + spread) });
        assert.ok(standing.receivedToday >= 0 && standing.waterToday >= 0);
        assert.ok((standing.container?.remaining ?? 0) >= 0);
        assert.ok((standing.today?.liquids.totalIn.value as number) >= 0);
      },
    ),
    runs(1_000),
  );
});
