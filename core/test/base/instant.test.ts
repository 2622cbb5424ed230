import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  after,
  before,
  between,
  duration,
  earlier,
  hours,
  instant,
  later,
  minutes,
  overlap,
  type Span,
  union,
  within,
} from '@feedwright/core/base/instant';
import fc from 'fast-check';
import { runs } from '../runs.ts';

const span = (from: number, until: number): Span => ({ from: instant(from), until: instant(until) });
const someSpan = fc.tuple(fc.nat(40), fc.nat(12)).map(([from, length]) => span(from, from + length));

/** The ms of a stretch of time, one by one: what spans must agree with. */
const moments = (spans: readonly Span[]): number[] => {
  const all = new Set<number>();
  for (const { from, until } of spans) for (let at: number = from; at < until; at++) all.add(at);
  return [...all].toSorted((a, b) => a - b);
};

test('[BA4] a span holds its first moment and not its last', () => {
  const night = span(100, 200);
  assert.deepEqual(
    [99, 100, 199, 200].map((at) => within(night, instant(at))),
    [false, true, true, false],
  );
  assert.equal(within(span(100, 100), instant(100)), false);
});

test('[BA4] what two spans share is just what both hold', () => {
  fc.assert(
    fc.property(someSpan, someSpan, (a, b) => {
      const shared = overlap(a, b);
      const both = moments([a]).filter((at) => within(b, instant(at)));
      assert.deepEqual(shared === null ? [] : moments([shared]), both);
      assert.equal(shared === null, both.length === 0);
      assert.deepEqual(overlap(b, a), shared);
    }),
    runs(5_000),
  );
});

test('[BA4] the union counts overlaps once: disjoint, in order, nothing empty, nothing lost', () => {
  fc.assert(
    fc.property(fc.array(someSpan, { maxLength: 8 }), (spans) => {
      const joined = union(spans);
      assert.deepEqual(moments(joined), moments(spans));
      assert.ok(joined.every(({ from, until }) => from < until));
      for (const [index, { from }] of joined.entries())
        assert.ok(index === 0 || from > (joined[index - 1]?.until ?? 0), 'spans that touch are one');
    }),
    runs(5_000),
  );
  assert.deepEqual(union([span(10, 20), span(20, 30), span(5, 6)]), [span(5, 6), span(10, 30)]);
});

test('[BA4] intervals are elapsed time', () => {
  const start = instant(1_000);
  assert.equal(after(start, hours(4)), 1_000 + 4 * 3_600_000);
  assert.equal(before(after(start, minutes(90)), minutes(90)), start);
  assert.equal(between(start, after(start, duration(7))), 7);
  assert.equal(earlier(instant(1), instant(2)), 1);
  assert.equal(later(instant(1), instant(2)), 2);
});
