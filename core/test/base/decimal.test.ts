import assert from 'node:assert/strict';
import { test } from 'node:test';
import { decimalOfJson, parseDecimal, wholeUnits } from '@feedwright/core/base/decimal';
import fc from 'fast-check';
import { runs } from '../runs.ts';

/** What a person typed, and the coefficient and scale that it must come to. */
const NUMBERS: readonly (readonly [text: string, coefficient: number, scale: number])[] = [
  ['1,5', 15, 1],
  ['1.5', 15, 1],
  ['0', 0, 0],
  ['0.0', 0, 1],
  ['0,5', 5, 1],
  ['0.125', 125, 3],
  ['0,125', 125, 3],
  ['7', 7, 0],
  ['60', 60, 0],
  ['1500', 1500, 0],
  ['62.50', 6250, 2],
  ['1,50', 150, 2],
  ['1.0650', 10650, 4],
  ['1000.125', 1000125, 3],
  ['1000,125', 1000125, 3],
  ['  83.3 ', 833, 1],
  ['\t83.3\n', 833, 1],
  ['999999999999999', 999999999999999, 0],
];

/** What could be read in two ways or is no number, and why it is asked about. */
const QUESTIONS: readonly (readonly [text: string, code: string])[] = [
  ['', 'empty'],
  ['   ', 'empty'],
  ['.5', 'no-digit-before-mark'],
  [',5', 'no-digit-before-mark'],
  ['5.', 'no-digit-after-mark'],
  ['5,', 'no-digit-after-mark'],
  ['1e3', 'exponent'],
  ['1E3', 'exponent'],
  ['1.5e-3', 'exponent'],
  ['1e+3', 'exponent'],
  ['１２', 'foreign-digits'],
  ['١٢', 'foreign-digits'],
  ['½', 'foreign-digits'],
  ['1½', 'foreign-digits'],
  ['1٫5', 'foreign-digits'],
  ['1·5', 'foreign-digits'],
  ['1 000', 'grouped'],
  ['1\u00a0000', 'grouped'],
  ['1\u202f000', 'grouped'],
  ["1'000", 'grouped'],
  ['1’000', 'grouped'],
  ['1_000', 'grouped'],
  ['1,500', 'grouped'],
  ['1.500', 'grouped'],
  ['12.345', 'grouped'],
  ['1,234,567', 'grouped'],
  ['1.234,5', 'grouped'],
  ['1,234.5', 'grouped'],
  ['12,34,567', 'grouped'],
  ['1.5.0', 'grouped'],
  ['1..5', 'grouped'],
  ['1 .5', 'grouped'],
  ['+5', 'sign'],
  ['−5', 'sign'],
  ['–5', 'sign'],
  ['-5', 'negative'],
  ['-0', 'negative'],
  ['00', 'leading-zero'],
  ['01.5', 'leading-zero'],
  ['007', 'leading-zero'],
  ['1000000000000000', 'too-long'],
  ['0.1234567890123456', 'too-long'],
  ['abc', 'not-a-number'],
  ['NaN', 'not-a-number'],
  ['Infinity', 'not-a-number'],
  ['0x10', 'not-a-number'],
  ['0b1', 'not-a-number'],
  ['5n', 'not-a-number'],
  ['60 mL', 'not-a-number'],
  ['60mL', 'not-a-number'],
  ['5%', 'not-a-number'],
  ['1/2', 'not-a-number'],
  ['50-60', 'not-a-number'],
  ['--5', 'not-a-number'],
  ['l5', 'not-a-number'],
  ['1O', 'not-a-number'],
];

for (const [text, coefficient, scale] of NUMBERS) {
  test(`[BA2] ${JSON.stringify(text)} is ${coefficient} / 10^${scale}`, () => {
    assert.deepEqual(parseDecimal(text), { ok: true, value: { coefficient, scale } });
  });
}

for (const [text, code] of QUESTIONS) {
  test(`[BA2] ${JSON.stringify(text)} is asked about: ${code}`, () => {
    const found = parseDecimal(text);
    assert.equal(found.ok, false);
    assert.equal(found.issues.length, 1);
    assert.equal(found.issues[0]?.code, `number/${code}`);
    assert.equal(found.issues[0]?.data.text, text.trim());
  });
}

test('[BA2] a group or a fraction of three digits is shown in both readings', () => {
  const found = parseDecimal('1,500');
  assert.deepEqual(found.ok ? null : found.issues[0]?.data.readings, ['1.5000', '1500']);
});

test('[BA2] where a point is known to be the mark, only the comma is asked about', () => {
  assert.deepEqual(parseDecimal('1.065', { pointIsDecimal: true }), {
    ok: true,
    value: { coefficient: 1065, scale: 3 },
  });
  assert.equal(parseDecimal('1,065', { pointIsDecimal: true }).ok, false);
});

test('[BA2] a minus sign is read where a number may be negative', () => {
  assert.deepEqual(parseDecimal('-2.5', { negative: true }), {
    ok: true,
    value: { coefficient: -25, scale: 1 },
  });
  assert.deepEqual(parseDecimal('-0', { negative: true }), { ok: true, value: { coefficient: 0, scale: 0 } });
});

const digits = (min: number, max: number) =>
  fc.array(fc.integer({ min: 0, max: 9 }), { minLength: min, maxLength: max }).map((all) => all.join(''));
const whole = fc.nat(9_999_999).map(String);

test('[BA2] point and comma are the same mark, and the number is the one that the language reads', () => {
  fc.assert(
    fc.property(whole, digits(1, 7), (before, behind) => {
      const [point, comma] = [parseDecimal(`${before}.${behind}`), parseDecimal(`${before},${behind}`)];
      if (behind.length === 3 && before !== '0' && before.length <= 3) return !point.ok && !comma.ok;
      assert.deepEqual(point, comma);
      assert.ok(point.ok);
      const { coefficient, scale } = point.value;
      return Number(`${coefficient}e-${scale}`) === Number(`${before}.${behind}`) && scale === behind.length;
    }),
    runs(20_000),
  );
});

const keys = fc.string({ unit: fc.constantFrom(..."0123456789.,-+eE \u00a0'_１½x"), maxLength: 9 });

const anything = fc.array(fc.nat(0xffff)).map((codes) => String.fromCharCode(...codes));

test('[BA2] no text throws, and what is read has digits with at most one mark between them', () => {
  fc.assert(
    fc.property(fc.oneof(anything, keys), (text) => {
      const found = parseDecimal(text);
      return found.ok
        ? /^\d+([.,]\d+)?$/.test(text.trim())
        : found.issues[0]?.code.startsWith('number/') === true;
    }),
    runs(20_000),
  );
});

test('[BA2] the readings of a question are two different numbers that are no question themselves', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 999 }),
      fc.constantFrom('.', ','),
      digits(3, 3),
      (before, mark, behind) => {
        const found = parseDecimal(`${before}${mark}${behind}`);
        assert.equal(found.ok, false);
        const readings = found.issues[0]?.data.readings;
        assert.ok(Array.isArray(readings) && readings.length === 2);
        const values = readings
          .map((one) => parseDecimal(one))
          .map((one) => one.ok && Number(`${one.value.coefficient}e-${one.value.scale}`));
        assert.deepEqual(values, [Number(`${before}.${behind}`), Number(`${before}${behind}`)]);
      },
    ),
    runs(2_000),
  );
});

test('[BA2] a JSON number is read as JSON writes it, or refused', () => {
  const read = (value: number) => decimalOfJson(value);
  assert.deepEqual(read(1.065), { ok: true, value: { coefficient: 1065, scale: 3 } });
  assert.deepEqual(read(-0), { ok: true, value: { coefficient: 0, scale: 0 } });
  assert.deepEqual(read(-2.5), { ok: true, value: { coefficient: -25, scale: 1 } });
  for (const value of [Number.NaN, Infinity, 1e21, 1e-7, 0.1 + 0.2, 2 ** 53])
    assert.equal(read(value).ok, false, `${value}`);
});

test('[BA2] a number is a whole count of a unit, or it is said that it is not', () => {
  assert.equal(wholeUnits({ coefficient: 625, scale: 1 }, 100), 6250);
  assert.equal(wholeUnits({ coefficient: 6250, scale: 2 }, 100), 6250);
  assert.equal(wholeUnits({ coefficient: 62505, scale: 3 }, 100), null);
  assert.equal(wholeUnits({ coefficient: 999999999999999, scale: 0 }, 360_000_000), null);
  assert.equal(wholeUnits({ coefficient: -625, scale: 1 }, 100), -6250);
});
