/** Nothing is lost and nothing made up in counting: to the last unit, over random courses. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type Instant, instant, type Span } from '@feedwright/core/base/instant';
import { sum, type Volume, volume } from '@feedwright/core/base/volume';
import type { Entry } from '@feedwright/core/record/entry';
import { effective } from '@feedwright/core/record/ledger';
import { containerAccounts } from '@feedwright/core/standing/disagreements';
import { courseAt, holdCourse } from '@feedwright/core/standing/held-course';
import { mixturesWithin } from '@feedwright/core/standing/nutrition';
import { deliveredBy, grouped, keptBy, receivedBy, waterBy } from '@feedwright/core/standing/received';
import { sumWithin, takenOff, volumeWithin } from '@feedwright/core/standing/stretch';
import fc from 'fast-check';
import { arbCourse, COURSE_BEGINS } from '../record/arbitrary.ts';
import { runs } from '../runs.ts';

const COURSES = arbCourse({ most: 80 });
const FOREVER: Span = { from: instant(0), until: instant(8e12) };

/** Spans that follow each other from before the course to after it, cut at random ms. */
const arbSpans = fc
  .array(fc.integer({ min: -3_600_000, max: 80 * 3_600_000 }), { minLength: 1, maxLength: 12 })
  .map((cuts): readonly Span[] => {
    const bounds = [
      FOREVER.from,
      ...cuts.map((cut) => instant(COURSE_BEGINS + cut)).toSorted((a, b) => a - b),
      FOREVER.until,
    ];
    return bounds.slice(1).map((until, place) => ({ from: bounds[place] as Instant, until }));
  });

const total = (list: readonly { readonly volume: Volume }[]): Volume => sum(list.map((one) => one.volume));

test('[ST1] adjoining spans, containers, orders and mixtures each add up to all that was received', () => {
  fc.assert(
    fc.property(COURSES, arbSpans, fc.nat({ max: 80 * 3_600_000 }), (entries, spans, seen) => {
      const at = instant(COURSE_BEGINS + seen);
      const course = courseAt(holdCourse(entries), at);
      const received = receivedBy(course, at).list;
      const all = total(received);
      assert.equal(sum(spans.map((span) => sumWithin(received, span))), all);
      assert.equal(total(grouped(received, FOREVER, (one) => one.container)), all);
      assert.equal(total(grouped(received, FOREVER, (one) => one.order)), all);
      assert.equal(total(mixturesWithin(received, FOREVER)), all);
      for (const span of spans)
        assert.equal(total(grouped(received, span, (one) => one.container)), sumWithin(received, span));
    }),
    runs(1_000),
  );
});

/**
 * The same by another way, totals alone and no stretches: what has run is counted up, a reading puts its difference in the
 * place of what was counted up since the last.
 */
function totalByHand(entries: readonly Entry[], at: Instant): Volume {
  let [settled, pending, counter, rate, last, before] = [0, 0, 0, 0, 0, 0];
  let room = Number.POSITIVE_INFINITY;
  const run = (until: number): void => {
    const ran = Math.min(rate * (until - before), Math.max(0, room));
    [pending, room, before] = [pending + ran, room - ran, until];
  };
  for (const { happenedAt, fact } of entries) {
    run(happenedAt);
    if (fact.kind === 'pump-started/1') [rate, last] = [fact.rate, fact.rate];
    if (fact.kind === 'rate-changed/1') [rate, last] = [rate > 0 ? fact.rate : 0, fact.rate];
    if (fact.kind === 'pump-resumed/1') rate = last;
    if (fact.kind === 'pump-paused/1' || fact.kind === 'pump-stopped/1') rate = 0;
    if (fact.kind === 'feed-given/1') settled += fact.volume;
    if (fact.kind === 'container-put-up/1' && fact.holds === 'feed') room = fact.filled;
    if (fact.kind === 'container-taken-down/1') room = Number.POSITIVE_INFINITY;
    if (fact.kind !== 'counter-read/1' && fact.kind !== 'counter-cleared/1') continue;
    const shows = fact.kind === 'counter-read/1' ? fact.volume : fact.read;
    const counted = shows === null || shows < counter ? pending : shows - counter;
    room += pending - counted;
    [settled, pending] = [settled + counted, 0];
    counter = fact.kind === 'counter-read/1' ? fact.volume : 0;
  }
  run(at);
  return volume(settled + pending);
}

test('[ST2] [ST3] [ST4] what was delivered is what counting up by hand comes to', () => {
  // Without sets, and on one container, so that counting up stays simple enough to be right by itself.
  const LEFT_OUT = new Set(['set-changed/1', 'container-taken-down/1', 'feed-given/1']);
  fc.assert(
    fc.property(COURSES, fc.nat({ max: 80 * 3_600_000 }), (entries, seen) => {
      const at = instant(COURSE_BEGINS + seen);
      const first = entries.find((one) => one.fact.kind === 'container-put-up/1');
      const kept = entries.filter(
        (one) => !LEFT_OUT.has(one.fact.kind) && (one.fact.kind !== 'container-put-up/1' || one === first),
      );
      const held = holdCourse(kept);
      const before = effective(held.ledger).filter((one) => one.happenedAt <= at);
      assert.equal(total(deliveredBy(courseAt(held, at), at)), totalByHand(before, at));
    }),
    runs(1_000),
  );
});

test('[ST10] what was filled is in the line, was drawn, or is still there', () => {
  fc.assert(
    fc.property(COURSES, fc.nat({ max: 80 * 3_600_000 }), (entries, seen) => {
      const at = instant(COURSE_BEGINS + seen);
      const course = courseAt(holdCourse(entries), at);
      const delivered = deliveredBy(course, at);
      const accounts = containerAccounts(course, at);
      for (const { container, drawn, remaining } of accounts) {
        const own = total(delivered.filter((one) => one.container === container.id));
        assert.equal(container.filled, container.primed + own + remaining);
        assert.equal(drawn, own);
      }
      const known = new Set<string | null>(accounts.map((one) => one.container.id));
      const others = delivered.filter((one) => !known.has(one.container));
      assert.ok(others.every((one) => one.container === null));
      assert.equal(total(delivered), total(others) + accounts.reduce((drawn, one) => drawn + one.drawn, 0));
    }),
    runs(1_000),
  );
});

test('[ST7] [ST8] what is lost is taken off once, and no more than went in', () => {
  fc.assert(
    fc.property(COURSES, fc.nat({ max: 80 * 3_600_000 }), (entries, seen) => {
      const at = instant(COURSE_BEGINS + seen);
      const course = courseAt(holdCourse(entries), at);
      const gastric = effective(holdCourse(entries).ledger)
        .filter((one) => one.happenedAt <= at)
        .reduce(
          (lost, { fact }) =>
            fact.kind === 'feed-lost/1' && fact.where === 'out-of-tube' ? lost + fact.volume : lost,
          0,
        );
      const inBefore = total(receivedBy(course, at).list) + total(waterBy(course, at));
      const { feed, water } = keptBy(course, at, false);
      const stayed = total(feed) + total(water);
      assert.ok(stayed >= inBefore - gastric && stayed <= inBefore && stayed >= 0);
    }),
    runs(500),
  );
});

const arbStretches = fc.array(
  fc
    .record({ from: fc.nat(1_000), lasts: fc.nat(300), volume: fc.nat(1e12) })
    .map(({ from, lasts, volume: amount }) => ({
      from: instant(from),
      until: instant(from + lasts),
      volume: volume(amount),
    })),
  { maxLength: 12 },
);

test('[ST7] a loss leaves what had gone in, less itself, and touches nothing later', () => {
  fc.assert(
    fc.property(arbStretches, fc.nat(1_400), fc.nat(3e12), (stretches, when, lost) => {
      const at = instant(when);
      const { kept, over } = takenOff(stretches, { at, volume: volume(lost) });
      assert.equal(total(kept), total(stretches) - lost + over);
      // What happens at once at that moment has happened.
      const byThen: Span = { from: FOREVER.from, until: at };
      const atOnce = total(stretches.filter((one) => one.from === at && one.until === at));
      const gone = sumWithin(stretches, byThen) + atOnce;
      assert.equal(over, Math.max(0, lost - gone));
      const later = stretches.filter((one) => one.until > at);
      assert.equal(total(kept.filter((one) => one.until > at)), total(later) - sumWithin(later, byThen));
      assert.ok(kept.every((one) => one.volume > 0 && one.until >= one.from));
    }),
    runs(2_000),
  );
});

test('[ST1] one stretch, cut anywhere, gives the floor of the cumulative amount', () => {
  fc.assert(
    fc.property(fc.nat(1e14), fc.integer({ min: 1, max: 1e9 }), fc.nat(1e9), (amount, lasts, cut) => {
      const stretch = { from: instant(0), until: instant(lasts), volume: volume(amount) };
      const first = volumeWithin(stretch, { from: instant(0), until: instant(cut) });
      const expected = cut >= lasts ? BigInt(amount) : (BigInt(amount) * BigInt(cut)) / BigInt(lasts);
      assert.equal(BigInt(first), expected);
      assert.equal(first + volumeWithin(stretch, { from: instant(cut), until: instant(2e9) }), amount);
    }),
    runs(2_000),
  );
});
