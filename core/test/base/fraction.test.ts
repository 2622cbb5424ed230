import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  compare,
  type Fraction,
  fraction,
  fractionOf,
  minus,
  over,
  plus,
  roundTo,
  times,
  timesOver,
  timesOverUp,
} from '@feedwright/core/base/fraction';
import fc from 'fast-check';
import { runs } from '../runs.ts';

const some = fc
  .tuple(fc.integer({ min: -9999, max: 9999 }), fc.integer({ min: 1, max: 999 }))
  .map(([n, d]) => fraction(n, d));
const safe = fc.maxSafeInteger();
const positive = fc.integer({ min: 1, max: Number.MAX_SAFE_INTEGER });

test('[BA3] potassium from 4.0 to 3.6 is a fall of exactly 10 %, where floats say less', () => {
  const [before, now] = [fraction(40, 10), fraction(36, 10)];
  const fall = over(minus(before, now), before);
  assert.equal(compare(fall, fraction(10, 100)), 0);
  assert.ok((4.0 - 3.6) / 4.0 < 0.1);
});

test('[BA3] fractions of equal value are the same fraction', () => {
  assert.deepEqual(fraction(6, 8), { n: 3, d: 4 });
  assert.deepEqual(fractionOf(3n, -4n), { n: -3, d: 4 });
  assert.deepEqual(fraction(0, 7), { n: 0, d: 1 });
});

test('[BA3] what cannot be a fraction stops the program', () => {
  assert.throws(() => fraction(1, 0), /denominator zero/);
  assert.throws(() => over(fraction(1), fraction(0)), /denominator zero/);
  assert.throws(() => times(fraction(2 ** 52), fraction(3)), /beyond 2\^53/);
});

test('[BA3] fractions close to each other are told apart where floats are not', () => {
  const [a, b] = [fraction(2 ** 52, 2 ** 52 - 1), fraction(2 ** 52 - 1, 2 ** 52 - 2)];
  assert.equal(a.n / a.d, b.n / b.d);
  assert.equal(compare(a, b), -1);
  assert.equal(compare(b, a), 1);
});

test('[BA3] sums, products and order obey arithmetic', () => {
  const same = (a: Fraction, b: Fraction) => assert.deepEqual(a, b);
  fc.assert(
    fc.property(some, some, some, (a, b, c) => {
      same(plus(a, b), plus(b, a));
      same(minus(plus(a, b), b), a);
      same(times(a, plus(b, c)), plus(times(a, b), times(a, c)));
      if (b.n !== 0) same(times(over(a, b), b), a);
      assert.equal(compare(a, b), Math.sign(minus(a, b).n));
      assert.equal(compare(plus(a, c), plus(b, c)), compare(a, b));
    }),
    runs(5_000),
  );
});

test('[BA5] 437.5 is 437, 438 or 438 as asked, and 62.47 is 62.4 or 62.5', () => {
  const whole = fraction(1);
  assert.deepEqual(roundTo(fraction(875, 2), whole, 'down'), fraction(437));
  assert.deepEqual(roundTo(fraction(875, 2), whole, 'up'), fraction(438));
  assert.deepEqual(roundTo(fraction(875, 2), whole, 'half-up'), fraction(438));
  assert.deepEqual(roundTo(fraction(6247, 100), fraction(1, 10), 'down'), fraction(624, 10));
  assert.deepEqual(roundTo(fraction(6247, 100), fraction(1, 10), 'half-up'), fraction(625, 10));
  assert.deepEqual(roundTo(fraction(-1, 2), whole, 'down'), fraction(-1));
  assert.deepEqual(roundTo(fraction(-1, 2), whole, 'half-up'), fraction(0));
});

test('[BA5] a rounded number is a whole count of steps, less than one step away, on the side that was asked', () => {
  const step = fc
    .tuple(fc.integer({ min: 1, max: 50 }), fc.constantFrom(1, 10, 100))
    .map(([n, d]) => fraction(n, d));
  fc.assert(
    fc.property(some, step, (a, by) => {
      const [down, up, near] = [roundTo(a, by, 'down'), roundTo(a, by, 'up'), roundTo(a, by, 'half-up')];
      for (const one of [down, up, near]) assert.equal(over(one, by).d, 1);
      assert.ok(compare(down, a) <= 0 && compare(a, plus(down, by)) < 0);
      assert.ok(compare(a, up) <= 0 && compare(minus(up, by), a) < 0);
      const [below, above] = [minus(a, near), minus(near, a)];
      const half = over(by, fraction(2));
      assert.ok(compare(below, half) < 0 && compare(above, half) <= 0);
    }),
    runs(5_000),
  );
});

test('[BA5] a product over a number is rounded once, down or up, at any size', () => {
  fc.assert(
    fc.property(safe, safe, positive, (a, b, c) => {
      const product = BigInt(a) * BigInt(b);
      const [down, up] = [timesOver(a, b, c), timesOverUp(a, b, c)];
      if (!Number.isSafeInteger(down) || !Number.isSafeInteger(up)) return;
      assert.ok(BigInt(down) * BigInt(c) <= product && product < (BigInt(down) + 1n) * BigInt(c));
      assert.ok(BigInt(up) * BigInt(c) >= product && product > (BigInt(up) - 1n) * BigInt(c));
    }),
    runs(20_000),
  );
});
