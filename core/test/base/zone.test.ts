/**
 * Zones against what the runtime itself knows: `Intl.DateTimeFormat`, which carries the IANA time zone database, and
 * Temporal's reading of RFC 5545 where a time does not exist or comes twice.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { dayNamed, dayNumber } from '@feedwright/core/base/calendar';
import { DAY, HOUR, type Instant, instant, MINUTE } from '@feedwright/core/base/instant';
import {
  type DayName,
  dayAt,
  instantOf,
  lastTime,
  nextDay,
  nextTime,
  offsetAt,
  parseInstant,
  parseTimeOfDay,
  showInstant,
  showTimeOfDay,
  timeOfDayAt,
  timesWithin,
  type Zone,
  zone,
} from '@feedwright/core/base/zone';
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { runs } from '../runs.ts';

const QUARTER = 15 * MINUTE;

const known = (name: string): Zone => zone(name) ?? assert.fail(`${name} is not known here`);
const at = (text: string): Instant => parseInstant(text) ?? assert.fail(text);

const formats = new Map<Zone, Intl.DateTimeFormat>();
function formatIn(inZone: Zone): Intl.DateTimeFormat {
  const made =
    formats.get(inZone) ??
    new Intl.DateTimeFormat('en-CA-u-hc-h23', {
      timeZone: inZone,
      dateStyle: 'short',
      timeStyle: 'medium',
    });
  formats.set(inZone, made);
  return made;
}

/** What the wall clock shows, as the runtime has it: `2026-03-29` and minutes after midnight. */
function wallClock(moment: number, inZone: Zone): { readonly day: DayName; readonly time: number } {
  const parts = Object.fromEntries(
    formatIn(inZone)
      .formatToParts(moment)
      .map(({ type, value }) => [type, value]),
  );
  return {
    day: `${parts.year}-${parts.month}-${parts.day}`,
    time: Number(parts.hour) * 60 + Number(parts.minute),
  };
}

/** Where the clocks change, and how long the days of the change last. From the zones' own law, as IANA records it. */
const CHANGES: readonly (readonly [name: string, day: DayName, hours: number])[] = [
  ['Europe/London', '2026-03-29', 23],
  ['Europe/London', '2026-10-25', 25],
  ['America/New_York', '2026-03-08', 23],
  ['America/New_York', '2026-11-01', 25],
  ['Australia/Lord_Howe', '2026-10-04', 23.5],
  ['Australia/Lord_Howe', '2026-04-05', 24.5],
  ['America/Santiago', '2026-09-06', 23],
  ['America/Santiago', '2026-04-04', 25],
  ['Asia/Kolkata', '2026-03-29', 24],
  ['Asia/Kathmandu', '2026-10-25', 24],
];

for (const [name, day, length] of CHANGES) {
  const inZone = known(name);
  const start = dayNumber(day) * DAY - 2 * DAY;
  const quarters = Array.from({ length: (4 * DAY) / QUARTER }, (_, index) =>
    instant(start + index * QUARTER),
  );

  test(`[BA4] ${name}, ${day}: every quarter hour shows what the runtime shows`, () => {
    for (const moment of quarters) {
      const wall = wallClock(moment, inZone);
      assert.equal(dayAt(moment, inZone), wall.day);
      assert.equal(timeOfDayAt(moment, inZone), wall.time);
      assert.equal(offsetAt(moment, inZone), dayNumber(wall.day) * DAY + wall.time * MINUTE - moment);
    }
  });

  test(`[BA4] ${name}, ${day}: every quarter hour of the clock is found where the runtime first shows it`, () => {
    const first = new Map<string, Instant>();
    for (const moment of quarters) {
      const wall = wallClock(moment, inZone);
      const key = `${wall.day} ${wall.time}`;
      if (!first.has(key)) first.set(key, moment);
    }
    let missing = 0;
    for (let time = 0; time < 24 * 60; time += 15) {
      const shown = first.get(`${day} ${time}`);
      const found = instantOf(day, time, inZone);
      if (shown !== undefined) assert.equal(found, shown, `${day} ${showTimeOfDay(time)}`);
      else {
        missing += 1;
        const gap = (24 - length) * 60;
        assert.deepEqual(
          wallClock(found, inZone),
          { day, time: time + gap },
          'read as if the clock had not changed',
        );
      }
    }
    assert.equal(missing, Math.max(0, (24 - length) * 4));
  });

  test(`[BA4] ${name}, ${day} lasts ${length} hours`, () => {
    assert.equal((instantOf(nextDay(day), 0, inZone) - instantOf(day, 0, inZone)) / HOUR, length);
    const noons = [instantOf(day, 720, inZone), nextTime(720, instantOf(day, 720, inZone), inZone)];
    assert.equal(lastTime(720, instant((noons[1] ?? 0) - 1), inZone), noons[0]);
  });
}

test('[BA4] 02:30 does not exist where the clocks go from 02:00 to 03:00: it is what then shows 03:30', () => {
  const newYork = known('America/New_York');
  assert.equal(showInstant(instantOf('2026-03-08', 150, newYork), newYork), '2026-03-08T03:30:00-04:00');
  assert.equal(showInstant(instantOf('2026-11-01', 90, newYork), newYork), '2026-11-01T01:30:00-04:00');
});

const ZONES = [
  'Europe/London',
  'Europe/Lisbon',
  'Africa/Casablanca',
  'Africa/Cairo',
  'America/New_York',
  'America/St_Johns',
  'America/Asuncion',
  'America/Santiago',
  'America/Sao_Paulo',
  'America/Havana',
  'Asia/Kolkata',
  'Asia/Kathmandu',
  'Asia/Tehran',
  'Asia/Beirut',
  'Australia/Lord_Howe',
  'Australia/Adelaide',
  'Pacific/Apia',
  'Pacific/Chatham',
  'Antarctica/Troll',
  'UTC',
].map(known);
const someZone = fc.constantFrom(...ZONES);
const someMoment = fc.integer({ min: Date.parse('1973-01-01'), max: Date.parse('2080-01-01') }).map(instant);
const someTime = fc.integer({ min: 0, max: 1439 });

/** Moments close to a change of the clocks, where there is one. */
const nearChange = fc
  .tuple(someZone, someMoment, fc.integer({ min: -2 * DAY, max: 2 * DAY }))
  .map(([inZone, from, by]) => {
    const next = Temporal.Instant.fromEpochMilliseconds(from)
      .toZonedDateTimeISO(inZone)
      .getTimeZoneTransition('next');
    return { inZone, moment: instant((next?.epochMilliseconds ?? from) + by) };
  });
const anywhere = fc.oneof(nearChange, fc.record({ inZone: someZone, moment: someMoment }));

test('[BA4] any moment in any zone shows what the runtime shows', () => {
  fc.assert(
    fc.property(anywhere, ({ inZone, moment }) => {
      assert.deepEqual(
        { day: dayAt(moment, inZone), time: timeOfDayAt(moment, inZone) },
        wallClock(moment, inZone),
      );
    }),
    runs(5_000),
  );
});

test('[BA4] any time of any day is the instant that Temporal reads as RFC 5545 does', () => {
  fc.assert(
    fc.property(anywhere, someTime, ({ inZone, moment }, time) => {
      const day = dayAt(moment, inZone);
      const expected = Temporal.PlainDateTime.from(`${day}T${showTimeOfDay(time)}`).toZonedDateTime(inZone, {
        disambiguation: 'compatible',
      });
      assert.equal(instantOf(day, time, inZone), expected.epochMilliseconds);
    }),
    runs(5_000),
  );
});

/** All instants of a few times on the days about a moment, one by one. */
const around = (times: readonly number[], moment: Instant, inZone: Zone): readonly Instant[] => {
  const today = dayNumber(dayAt(moment, inZone));
  const days = [-4, -3, -2, -1, 0, 1, 2, 3, 4].map((by) => dayNamed(today + by));
  return days.flatMap((day) => times.map((time) => instantOf(day, time, inZone))).toSorted((a, b) => a - b);
};

test('[BA4] the last and the next time are the nearest on either side', () => {
  fc.assert(
    fc.property(anywhere, someTime, ({ inZone, moment }, time) => {
      const all = around([time], moment, inZone);
      assert.equal(
        lastTime(time, moment, inZone),
        all.findLast((one) => one <= moment),
      );
      assert.equal(
        nextTime(time, moment, inZone),
        all.find((one) => one > moment),
      );
    }),
    runs(5_000),
  );
});

test('[BA4] the times within a span are all of them, in order', () => {
  const times = fc.uniqueArray(someTime, { maxLength: 6 });
  fc.assert(
    fc.property(anywhere, times, fc.nat(2 * DAY), ({ inZone, moment }, some, length) => {
      const until = instant(moment + length);
      const expected = around(some, moment, inZone).filter((one) => one >= moment && one < until);
      assert.deepEqual(timesWithin(some, moment, until, inZone), expected);
    }),
    runs(2_000),
  );
});

test('[BA4] the feeding day that starts at 06:00 has 23 hours when the clocks go forward in it', () => {
  const london = known('Europe/London');
  const evening = at('2026-03-28T20:00:00Z');
  const start = lastTime(360, evening, london);
  assert.equal(showInstant(start, london), '2026-03-28T06:00:00+00:00');
  assert.equal((nextTime(360, evening, london) - start) / HOUR, 23);
});

test('[BA4] a midnight that the clock shows twice, the first time past it, is not lost', () => {
  // Newfoundland, 2006-10-29: at 00:01 the clock went back to 23:01 of the day before.
  const newfoundland = known('America/St_Johns');
  const again = at('2006-10-29T02:45:00Z');
  assert.equal(dayAt(again, newfoundland), '2006-10-28');
  assert.equal(showInstant(lastTime(0, again, newfoundland), newfoundland), '2006-10-29T00:00:00-02:30');
});

test('[BA4] a zone is an IANA name that this host knows, as it is properly written', () => {
  assert.equal(zone('Europe/London'), 'Europe/London');
  assert.equal(zone('europe/london'), 'Europe/London');
  assert.equal(zone('utc'), 'UTC');
  for (const name of [
    '',
    ' ',
    'Europe/Nowhere',
    '+02:00',
    '-0500',
    'UTC+2',
    'Europe/London ',
    '../etc',
    'London',
    'Z',
  ])
    assert.equal(zone(name), null, name);
});

test('[BA4] an instant has a date, a time and an offset, and exists', () => {
  assert.equal(at('2026-11-25T18:00:00+01:00'), Date.parse('2026-11-25T17:00:00Z'));
  assert.equal(at('2026-11-25T18:00Z'), Date.parse('2026-11-25T18:00:00Z'));
  assert.equal(at('2026-11-25T18:00:00.25-03:30'), Date.parse('2026-11-25T21:30:00.250Z'));
  const wrong = [
    '2026-11-25',
    '2026-11-25T18:00:00',
    '2026-11-25 18:00:00Z',
    '2026-11-25T18Z',
    '2026-02-30T18:00:00Z',
    '2026-13-01T18:00:00Z',
    '2026-11-25T24:00:00Z',
    '2026-11-25T18:60:00Z',
    '2026-11-25T18:00:60Z',
    '2026-11-25T18:00:00.1234Z',
    '2026-11-25T18:00:00+25:00',
    '2026-11-25T18:00:00+0100',
    '2026-11-25t18:00:00z',
    '25.11.2026 18:00',
    '18:00',
    '',
  ];
  for (const text of wrong) assert.equal(parseInstant(text), null, text);
});

const two = (most: number) =>
  fc.integer({ min: 0, max: most }).map((count) => String(count).padStart(2, '0'));

/** Texts in the shape of an instant, most of them right, some past a month's, a day's or an hour's end. */
const shaped = fc
  .tuple(
    fc.integer({ min: 0, max: 9_999 }).map((year) => String(year).padStart(4, '0')),
    fc.tuple(two(13), two(32), two(24), two(61)),
    fc.constantFrom('', ':00', ':59', ':60', ':07.5', ':07.25', ':59.999'),
    fc.oneof(
      fc.constant('Z'),
      fc.tuple(fc.constantFrom('+', '-'), two(25), two(61)).map(([sign, h, m]) => `${sign}${h}:${m}`),
    ),
  )
  .map(
    ([year, [month, day, hour, minute], rest, zoned]) =>
      `${year}-${month}-${day}T${hour}:${minute}${rest}${zoned}`,
  );

const byTemporal = (text: string): number | null => {
  try {
    return text.includes(':60') && !text.includes('T60')
      ? null
      : Temporal.Instant.from(text).epochMilliseconds;
  } catch {
    return null;
  }
};

test('[BA4] an instant is read as Temporal reads it, less leap seconds', () => {
  fc.assert(
    fc.property(shaped, (text) => assert.equal(parseInstant(text), byTemporal(text), text)),
    runs(20_000),
  );
});

test('[BA4] an instant is written as Temporal writes it, and read back', () => {
  fc.assert(
    fc.property(anywhere, ({ inZone, moment }) => {
      const text = showInstant(moment, inZone);
      const zoned = Temporal.Instant.fromEpochMilliseconds(moment).toZonedDateTimeISO(inZone);
      const smallestUnit = moment % 1000 === 0 ? 'second' : 'millisecond';
      assert.equal(text, zoned.toString({ timeZoneName: 'never', smallestUnit }));
      assert.equal(at(text), moment);
    }),
    runs(5_000),
  );
});

test('[BA4] a time of day is HH:MM on a 24-hour clock', () => {
  for (let time = 0; time < 1440; time++) assert.equal(parseTimeOfDay(showTimeOfDay(time)), time);
  for (const text of ['24:00', '6:00', '06:60', '06.00', '0600', '6 am', '06:00:00', '', '-1:00'])
    assert.equal(parseTimeOfDay(text), null, text);
});
