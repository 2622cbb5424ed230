import assert from 'node:assert/strict';
import { test } from 'node:test';
import { ageInDays, daysOfYears } from '@feedwright/core/policy/age';
import fc from 'fast-check';
import { runs } from '../runs.ts';

const OF_18 = daysOfYears(18);

test('[PO3] the eighteenth birthday, and not the day before it, is the first day of an adult', () => {
  // Born in each kind of year, and around leap days: [born, the day before, the birthday]. By the calendar.
  const cases = [
    ['2000-01-01', '2017-12-31', '2018-01-01'],
    ['2000-02-28', '2018-02-27', '2018-02-28'],
    ['2001-03-01', '2019-02-28', '2019-03-01'],
    ['2002-12-31', '2020-12-30', '2020-12-31'],
    ['2003-06-15', '2021-06-14', '2021-06-15'],
    // Born on 29 February: of age on 1 March in a year without one.
    ['2004-02-29', '2022-02-28', '2022-03-01'],
  ] as const;
  for (const [born, before, birthday] of cases) {
    assert.equal(ageInDays(born, birthday), OF_18, `${born} on ${birthday}`);
    assert.ok(ageInDays(born, before)! < OF_18, `${born} on ${before}`);
  }
});

test('[PO3] in the first year of life an age is plain days: a neonate until the 28th day', () => {
  assert.equal(ageInDays('2026-10-28', '2026-10-28'), 0);
  assert.equal(ageInDays('2026-10-28', '2026-11-24'), 27);
  assert.equal(ageInDays('2026-10-28', '2026-11-25'), 28);
});

test('[PO3] a day that is none, or one before birth, gives an age that is not known', () => {
  for (const [born, on] of [
    ['2026-02-30', '2026-11-25'],
    ['2026-11-26', '2026-11-25'],
    ['', '2026-11-25'],
    ['25.11.1950', '2026-11-25'],
    ['1950-11-25', 'today'],
  ] as const) {
    assert.equal(ageInDays(born, on), null, `${born} ${on}`);
  }
});

const dayText = (ms: number): string => new Date(ms).toISOString().slice(0, 10);
const someDay = fc.integer({ min: Date.UTC(1900, 0, 1), max: Date.UTC(2100, 0, 1) });

test('[PO3] nobody grows younger, and every birthday opens its year, against the host’s own calendar', () => {
  fc.assert(
    fc.property(someDay, fc.nat(120), fc.nat(365), (birth, years, more) => {
      const born = dayText(birth);
      const date = new Date(`${born}T00:00:00Z`);
      // The host moves 29 February to 1 March where there is none, as we do.
      const birthday = Date.UTC(date.getUTCFullYear() + years, date.getUTCMonth(), date.getUTCDate());
      const age = ageInDays(born, dayText(birthday));
      assert.equal(age, daysOfYears(years));
      const later = ageInDays(born, dayText(birthday + more * 86_400_000));
      assert.ok(later! >= age!);
      if (years > 0) assert.ok(ageInDays(born, dayText(birthday - 86_400_000))! < age!);
    }),
    runs(5000),
  );
});
