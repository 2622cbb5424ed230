/**
 * Is a number or a moment written so that it is read in one way? The rules of notation are those of published
 * medication-safety practice: mL never cc, a leading zero, no trailing zero, thousands apart.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { fraction } from '../../src/base/fraction.ts';
import { duration, instant } from '../../src/base/instant.ts';
import { mlPerHour, rate, volume } from '../../src/base/volume.ts';
import { parseInstant, type Zone } from '../../src/base/zone.ts';
import { ENGLISH } from '../../src/screen/english/english.ts';
import { showFraction, showRate, showVolume } from '../../src/screen/number.ts';
import { showDuration, showMoment } from '../../src/screen/time.ts';
import { runs } from '../runs.ts';

const LONDON = 'Europe/London' as Zone;
const at = (text: string) => parseInstant(text)!;

test('[SC1] a leading zero, no trailing zero, thousands apart, the unit by us', () => {
  const cases: readonly (readonly [string, string])[] = [
    [showFraction(fraction(1, 2), 2), '0.5'],
    [showFraction(fraction(625, 10), 2), '62.5'],
    [showFraction(fraction(60), 2), '60'],
    [showFraction(fraction(1_500), 0), '1,500'],
    [showFraction(fraction(1_234_567, 10), 1), '123,456.7'],
    [showFraction(fraction(-5), 1), '−5'],
    [showFraction(fraction(1, 3), 2), '0.33'],
    [showRate(mlPerHour(75)), '75 mL/h'],
    [showRate(rate(6_250)), '62.5 mL/h'],
    [showVolume(volume(180_000_000)), '0.5 mL'],
    [showVolume(volume(1_500 * 360_000_000)), '1,500 mL'],
  ];
  for (const [shown, expected] of cases) assert.equal(shown, expected);
});

test('[BA5] half is rounded up unless it is a limit; a rate is never shown higher than it is', () => {
  assert.equal(showFraction(fraction(4_375, 10), 0), '438');
  assert.equal(showFraction(fraction(4_375, 10), 0, 'down'), '437');
  assert.equal(showRate(rate(6_259)), '62.59 mL/h');
  assert.equal(showVolume(volume(519.9 * 360_000_000), 'down'), '519 mL');
});

test('[SC1] what is shown reads back as the number, to the places shown', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -10_000_000, max: 10_000_000 }),
      fc.integer({ min: 0, max: 4 }),
      (n, places) => {
        const shown = showFraction(fraction(n, 1_000), places, 'down');
        const read = Number(shown.replaceAll(',', '').replace('−', '-'));
        assert.ok(read <= n / 1_000 && n / 1_000 - read < 10 ** -places + 1e-9, shown);
        assert.doesNotMatch(shown, /\.\d*0$|^\.|^−\.|\.$/);
      },
    ),
    runs(2_000),
  );
});

test('[SC2] the day is named where it is not today', () => {
  assert.equal(showMoment(at('2026-11-25T18:00:00Z'), '2026-11-25', LONDON, ENGLISH), '18:00');
  assert.equal(showMoment(at('2026-11-26T06:00:00Z'), '2026-11-25', LONDON, ENGLISH), '06:00 on 26 Nov');
});

test('[SC2] the hour that comes twice says which it is, and only that hour', () => {
  // Europe/London, IANA time zone data: the clock goes back from 02:00 to 01:00 on 25 October 2026.
  const show = (text: string) => showMoment(at(text), '2026-10-25', LONDON, ENGLISH);
  assert.equal(show('2026-10-25T00:30:00Z'), '01:30 (UTC+01:00)');
  assert.equal(show('2026-10-25T01:30:00Z'), '01:30 (UTC+00:00)');
  assert.equal(show('2026-10-24T23:59:00Z'), '00:59');
  assert.equal(show('2026-10-25T02:00:00Z'), '02:00');
  assert.equal(show('2026-10-25T08:00:00Z'), '08:00');
});

test('[SC2] two different moments of a day are never shown alike', () => {
  const first = at('2026-10-25T00:00:00Z');
  const shown = Array.from({ length: 25 * 12 }, (_, step) =>
    showMoment(instant(first - 3_600_000 + step * 300_000), '2026-10-25', LONDON, ENGLISH),
  );
  assert.equal(new Set(shown).size, shown.length);
});

test('[SC1] a time that lasts', () => {
  assert.equal(showDuration(duration(24_000_000)), '6 h 40 min');
  assert.equal(showDuration(duration(28_800_000)), '8 h');
  assert.equal(showDuration(duration(900_000)), '15 min');
});
