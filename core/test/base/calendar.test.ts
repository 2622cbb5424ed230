import assert from 'node:assert/strict';
import { test } from 'node:test';
import { dayNamed, dayNumber, nextDay, parseDay, previousDay } from '@feedwright/core/base/calendar';
import fc from 'fast-check';
import { runs } from '../runs.ts';

const DAY = 86_400_000;
const FIRST = Date.parse('0000-01-01') / DAY;
const LAST = Date.parse('9999-12-31') / DAY;

test('[BA4] days have the numbers and names that the runtime gives them, from the year 0 to 9999', () => {
  fc.assert(
    fc.property(fc.integer({ min: FIRST, max: LAST }), (number) => {
      const name = new Date(number * DAY).toISOString().slice(0, 10);
      assert.equal(dayNamed(number), name);
      assert.equal(dayNumber(name), number);
    }),
    runs(100_000),
  );
});

test('[BA4] every day of four centuries has the next for its successor', () => {
  for (let day = '1900-01-01', number = dayNumber(day); day < '2300-01-01'; day = nextDay(day), number += 1) {
    assert.equal(day, new Date(number * DAY).toISOString().slice(0, 10));
    assert.equal(previousDay(nextDay(day)), day);
  }
});

test('[BA4] a leap day is there in 2024 and 2000, not in 2026 or 1900', () => {
  assert.equal(nextDay('2024-02-28'), '2024-02-29');
  assert.equal(nextDay('2000-02-28'), '2000-02-29');
  assert.equal(nextDay('2026-02-28'), '2026-03-01');
  assert.equal(nextDay('1900-02-28'), '1900-03-01');
  assert.equal(previousDay('2027-01-01'), '2026-12-31');
});

test('[BA4] what is no day is refused, and a bug where only a day can be', () => {
  const wrong = [
    '2026-02-29',
    '2026-02-30',
    '2026-13-01',
    '2026-00-10',
    '2026-04-31',
    '2026-11-00',
    '2026-1-1',
    '',
  ];
  for (const text of [
    ...wrong,
    '26-11-25',
    '25/11/2026',
    '2026-11-25T00:00',
    ' 2026-11-25',
    '２０２６-11-25',
  ])
    assert.equal(parseDay(text), null, text);
  assert.throws(() => dayNumber('2026-02-30'), /impossible: day 2026-02-30/);
});

test('[BA4] past the year 9999 the calendar goes on', () => {
  assert.equal(nextDay('9999-12-31'), '+010000-01-01');
  assert.equal(previousDay(nextDay('9999-12-31')), '9999-12-31');
  assert.equal(previousDay('0000-01-01'), '-000001-12-31');
});
