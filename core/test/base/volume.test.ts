import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { duration, HOUR, hours, minutes } from '@feedwright/core/base/instant';
import {
  add,
  given,
  givenSoFar,
  inMl,
  inMlPerHour,
  ml,
  mlPerHour,
  NOTHING,
  rate,
  rateDownTo,
  rateFor,
  rateOfDecimal,
  STOPPED,
  share,
  subtract,
  sum,
  timeToGive,
  volume,
  volumeDownTo,
  volumeOfDecimal,
  volumeUpTo,
} from '@feedwright/core/base/volume';
import fc from 'fast-check';
import { runs } from '../runs.ts';

/** Up to 2 L, in units that have nothing round about them. */
const someVolume = fc.integer({ min: 0, max: 2000 * 360_000_000 }).map(volume);
/** Up to 600 mL/h in steps of 0.01. */
const someRate = fc.integer({ min: 1, max: 60_000 }).map(rate);
const someTime = fc.integer({ min: 1, max: 48 * 3_600_000 }).map(duration);

test('[BA1] 0.01 mL/h in 1 ms is one unit, and 62.5 mL/h in 24 h is 1,500 mL', () => {
  assert.equal(given(rate(1), duration(1)), 1);
  assert.equal(given(mlPerHour(62.5), hours(24)), ml(1500));
  assert.equal(given(mlPerHour(1), HOUR), ml(1));
  assert.equal(given(STOPPED, hours(24)), NOTHING);
});

test('[BA1] the guard stands at 2^53: 25,020 L', () => {
  const most = volume(Number.MAX_SAFE_INTEGER);
  assert.equal(inMl(most).n / inMl(most).d / 1000 > 25_019, true);
  assert.throws(() => add(most, volume(1)), /impossible: volume/);
  assert.throws(() => subtract(volume(-Number.MAX_SAFE_INTEGER), volume(1)), /impossible: volume/);
  assert.throws(() => given(mlPerHour(10_000), hours(24 * 365)), /impossible: volume/);
  assert.throws(() => volume(0.5), /impossible: volume/);
  assert.throws(() => volume(Number.NaN), /impossible: volume/);
  assert.throws(() => rate(0.5), /impossible: rate/);
});

test('[BA1] a rate over a time is exact, and over its pieces it is the same', () => {
  fc.assert(
    fc.property(someRate, fc.array(someTime, { minLength: 1, maxLength: 20 }), (at, pieces) => {
      const whole = duration(pieces.reduce((total, piece) => total + piece, 0));
      assert.equal(BigInt(given(at, whole)), BigInt(at) * BigInt(whole));
      assert.equal(sum(pieces.map((piece) => given(at, piece))), given(at, whole));
    }),
    runs(2_000),
  );
});

test('[BA1] a volume over a time telescopes: its pieces add up to it, whatever the cuts', () => {
  fc.assert(
    fc.property(
      someVolume,
      someTime,
      fc.array(fc.nat(48 * 3_600_000), { maxLength: 20 }),
      (total, whole, at) => {
        const cuts = [0, ...at.filter((cut) => cut < whole).toSorted((a, b) => a - b), whole].map(duration);
        const soFar = cuts.map((cut) => givenSoFar(total, cut, whole));
        const pieces = soFar.slice(1).map((amount, index) => subtract(amount, soFar[index] ?? NOTHING));
        assert.ok(pieces.every((piece) => piece >= 0));
        assert.equal(sum(pieces), total);
        for (const [index, cut] of cuts.entries())
          assert.equal(BigInt(soFar[index] ?? 0), (BigInt(total) * BigInt(cut)) / BigInt(whole));
      },
    ),
    runs(2_000),
  );
});

test('[BA1] nothing has gone in before the start, and all of it after the end', () => {
  assert.equal(givenSoFar(ml(250), duration(-1), minutes(35)), NOTHING);
  assert.equal(givenSoFar(ml(250), duration(0), minutes(35)), NOTHING);
  assert.equal(givenSoFar(ml(250), minutes(36), minutes(35)), ml(250));
  assert.equal(givenSoFar(ml(250), duration(0), duration(0)), ml(250));
});

test('[BA1] runs dry at the first ms that reaches the volume', () => {
  fc.assert(
    fc.property(someVolume, someRate, (wanted, at) => {
      const lasts = timeToGive(wanted, at);
      assert.ok(lasts !== null && Number.isSafeInteger(lasts));
      assert.ok(given(at, lasts) >= wanted);
      assert.ok(lasts === 0 ? wanted === 0 : given(at, duration(lasts - 1)) < wanted);
    }),
    runs(20_000),
  );
  assert.equal(timeToGive(ml(240), mlPerHour(60)), hours(4));
  assert.equal(timeToGive(ml(240), STOPPED), null);
  assert.equal(timeToGive(NOTHING, STOPPED), 0);
});

test('[BA5] the rate for a volume in a time never gives more, and 0.01 mL/h more would', () => {
  fc.assert(
    fc.property(someVolume, someTime, (wanted, during) => {
      const at = rateFor(wanted, during);
      assert.ok(BigInt(at) * BigInt(during) <= BigInt(wanted));
      assert.ok((BigInt(at) + 1n) * BigInt(during) > BigInt(wanted));
    }),
    runs(20_000),
  );
  assert.deepEqual(inMlPerHour(rateFor(ml(1000), hours(12))), fraction(8333, 100));
});

test('[BA5] pours and rates go down or up to their step', () => {
  assert.equal(volumeDownTo(ml(437.5), ml(5)), ml(435));
  assert.equal(volumeUpTo(ml(437.5), ml(5)), ml(440));
  assert.equal(volumeUpTo(ml(435), ml(5)), ml(435));
  assert.equal(rateDownTo(rateFor(ml(1000), hours(12)), mlPerHour(1)), mlPerHour(83));
  fc.assert(
    fc.property(someVolume, fc.integer({ min: 1, max: 3_600_000_000 }).map(volume), (amount, step) => {
      const [down, up] = [volumeDownTo(amount, step), volumeUpTo(amount, step)];
      assert.ok(down % step === 0 && up % step === 0);
      assert.ok(down <= amount && amount - down < step && up >= amount && up - amount < step);
    }),
    runs(5_000),
  );
});

test('[BA5] a share of a volume is rounded down to one unit', () => {
  assert.equal(share(ml(1000), fraction(3, 4)), ml(750));
  assert.equal(share(ml(1), fraction(1, 7)), Math.floor(360_000_000 / 7));
  assert.equal(share(volume(-1), fraction(1, 2)), -1);
});

const decimal = (coefficient: number, scale: number) => ({ coefficient, scale });
const accepted = (found: ReturnType<typeof volumeOfDecimal | typeof rateOfDecimal>) =>
  found.ok ? found.value : null;

test('[BA1] a typed volume or rate is a whole number of units, or too precise', () => {
  assert.equal(accepted(volumeOfDecimal(decimal(2375, 1))), ml(237.5));
  assert.equal(accepted(volumeOfDecimal(decimal(1, 7))), 36);
  assert.equal(accepted(rateOfDecimal(decimal(625, 1))), mlPerHour(62.5));
  assert.equal(accepted(rateOfDecimal(decimal(625, 3))), null);
  assert.equal(accepted(volumeOfDecimal(decimal(1, 9))), null);
});

test('[BA1] what is shown in mL is the volume itself', () => {
  fc.assert(
    fc.property(someVolume, (amount) => {
      const { n, d } = inMl(amount);
      assert.equal((BigInt(n) * 360_000_000n) / BigInt(d), BigInt(amount));
      assert.equal((BigInt(n) * 360_000_000n) % BigInt(d), 0n);
    }),
    runs(2_000),
  );
});
