import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction, roundTo } from '@feedwright/core/base/fraction';
import { duration, hours, instant } from '@feedwright/core/base/instant';
import { given, mlPerHour, rate, volume } from '@feedwright/core/base/volume';
import {
  ARITHMETIC,
  input,
  shownChoice,
  shownDuration,
  shownInstant,
  shownNumber,
  shownRate,
  shownVolume,
  worked,
} from '@feedwright/core/base/working';
import fc from 'fast-check';
import { runs } from '../runs.ts';

test('[BA6] the result of a working is made from the value that is returned', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 60_000 }).map(rate),
      fc.nat(86_400_000).map(duration),
      (at, lasts) => {
        const { value, working } = worked(given(at, lasts), shownVolume, {
          symbol: 'V',
          equation: 'V = r × t',
          inputs: [
            input('r', shownRate(at), { kind: 'order', path: 'regimen.rate' }),
            input('t', shownDuration(lasts), ARITHMETIC),
          ],
          rule: 'BA1',
          basis: ARITHMETIC,
        });
        assert.equal(working.result.symbol, 'V');
        const { is } = working.result;
        assert.ok(is.kind === 'quantity' && is.unit === 'mL');
        assert.equal((BigInt(is.value.n) * 360_000_000n) / BigInt(is.value.d), BigInt(value));
        assert.deepEqual(Object.keys(working).toSorted(), ['basis', 'equation', 'inputs', 'result', 'rule']);
      },
    ),
    runs(2_000),
  );
});

test('[BA6] each kind of value is shown as itself, with its UCUM unit', () => {
  assert.deepEqual(shownVolume(volume(180_000_000)), { kind: 'quantity', value: { n: 1, d: 2 }, unit: 'mL' });
  assert.deepEqual(shownRate(mlPerHour(62.5)), { kind: 'quantity', value: { n: 125, d: 2 }, unit: 'mL/h' });
  assert.deepEqual(shownNumber(3, 'kg'), { kind: 'quantity', value: { n: 3, d: 1 }, unit: 'kg' });
  assert.deepEqual(shownNumber(fraction(3, 4)), { kind: 'quantity', value: { n: 3, d: 4 }, unit: '1' });
  assert.deepEqual(shownInstant(instant(7)), { kind: 'instant', at: 7 });
  assert.deepEqual(shownDuration(hours(4)), { kind: 'duration', lasts: 14_400_000 });
  assert.deepEqual(shownChoice('closed'), { kind: 'choice', code: 'closed' });
});

test('[BA5, BA6] a working that rounds says which way and to what step', () => {
  const rounded = { way: 'down', step: fraction(5) } as const;
  const { value, working } = worked(
    roundTo(fraction(875, 2), rounded.step, rounded.way),
    (one) => shownNumber(one, 'mL'),
    {
      symbol: 'V',
      equation: 'V',
      inputs: [],
      rounded,
      rule: 'BA5',
      basis: ARITHMETIC,
    },
  );
  assert.deepEqual(value, fraction(435));
  assert.deepEqual(working.rounded, rounded);
  assert.deepEqual(working.result.is, { kind: 'quantity', value, unit: 'mL' });
});
