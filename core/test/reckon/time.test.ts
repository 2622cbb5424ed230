import assert from 'node:assert/strict';
import { test } from 'node:test';
import { parseClock } from '@feedwright/core/reckon/asking/when';
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { runs } from '../runs.ts';
import { refuses, shows, worked } from './worked.ts';

test('[RK14] a bare clock runs over midnight, as often as it takes, and says that it is a bare clock', () => {
  const at = (start: string, hours: string) => {
    const { endsAt, daysLater } = shows('end-time', { start, hours });
    return [endsAt, daysLater];
  };
  assert.deepEqual(at('19:30', '15.384615'), ['10:53', 1]);
  assert.deepEqual(at('23:59', '1 min'), ['00:00', 1]);
  assert.deepEqual(at('08:00', '24'), ['08:00', 1]);
  assert.deepEqual(at('08:00', '7 days'), ['08:00', 7]);
  assert.deepEqual(at('24:00', '1'), ['01:00', 1]);
  assert.ok(worked('end-time', { start: '08:00', hours: 2 }).cautions.includes('no-clock-change'));
});

test('[RK14] an end is elapsed time when the clocks change, whichever way', () => {
  const london = (start: string, hours: string) =>
    shows('end-time', { start, hours, zone: 'Europe/London' }).endsAt;
  assert.equal(london('2026-03-28T22:00', '10'), '2026-03-29T09:00:00+01:00');
  assert.equal(london('2026-10-24T22:00', '10'), '2026-10-25T07:00:00+00:00');
  assert.equal(london('2026-11-24T22:00', '10'), '2026-11-25T08:00:00+00:00');
  const half = shows('end-time', {
    start: '2026-04-04T22:00',
    hours: '8',
    zone: 'Australia/Lord_Howe',
  }).endsAt;
  assert.equal(half, '2026-04-05T05:30:00+10:30');
});

test('[RK14] hours between two local times are those that really pass', () => {
  const night = (day: string, next: string) =>
    shows('hours-between', { start: `${day}T22:00`, until: `${next}T08:00`, zone: 'Europe/London' }).hours;
  assert.deepEqual(
    [night('2026-03-28', '2026-03-29'), night('2026-10-24', '2026-10-25'), night('2026-11-24', '2026-11-25')],
    [9, 11, 10],
  );
  const cyclic = shows('cyclic', {
    volume: 990,
    start: '2026-10-24T20:00',
    until: '2026-10-25T06:00',
    zone: 'Europe/London',
  });
  assert.deepEqual([cyclic.hours, cyclic.rateMlPerHour], [11, 90]);
});

test('[RK14] a time that the clock shows twice, or skips, is said', () => {
  const cautions = (start: string) => worked('end-time', { start, hours: 1, zone: 'Europe/London' }).cautions;
  assert.deepEqual(cautions('2026-10-25T01:30'), ['clock-shows-it-twice']);
  assert.deepEqual(cautions('2026-03-29T01:30'), ['clock-skips-it']);
  assert.deepEqual(cautions('2026-06-01T01:30'), []);
});

test('[RK14] ends agree with Temporal, in zones with and without clock changes', () => {
  const zones = fc.constantFrom(
    'Europe/London',
    'America/New_York',
    'Australia/Lord_Howe',
    'Asia/Kolkata',
    'Etc/UTC',
  );
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 3 * 365 * 24 * 60 }),
      fc.integer({ min: 1, max: 10_000 }),
      zones,
      (minute, lasts, inZone) => {
        const start = Temporal.Instant.from('2025-01-01T00:00Z').add({ minutes: minute });
        const text = start.toZonedDateTimeISO(inZone).toString({ timeZoneName: 'never' });
        const { endsAt } = shows('end-time', { start: text, hours: `${lasts} min`, zone: inZone });
        const expected = start.add({ minutes: lasts }).toZonedDateTimeISO(inZone);
        assert.equal(endsAt, expected.toString({ timeZoneName: 'never', smallestUnit: 'second' }));
      },
    ),
    runs(1000),
  );
});

test('[RK14] what cannot be placed in time is refused', () => {
  assert.deepEqual(refuses('end-time', { start: '2026-10-25T01:30', hours: 1 }), ['reckon/zone-needed']);
  assert.deepEqual(refuses('end-time', { start: '2026-02-30T01:30', hours: 1, zone: 'Europe/London' }), [
    'reckon/not-a-moment',
  ]);
  assert.deepEqual(refuses('end-time', { start: 'soon', hours: 1 }), ['reckon/not-a-moment']);
  assert.deepEqual(refuses('end-time', { start: '08:00', hours: 1, zone: '+02:00' }), ['reckon/not-a-zone']);
  assert.deepEqual(refuses('hours-between', { start: '08:00', until: '2026-02-01T08:00Z' }), [
    'reckon/mixed-moments',
  ]);
  assert.deepEqual(refuses('hours-between', { start: '2026-02-02T08:00Z', until: '2026-02-01T08:00Z' }), [
    'reckon/ends-before-start',
  ]);
});

test('[RK13] clock times as people write them', () => {
  const table: readonly (readonly [string, number | null])[] = [
    ['08:00', 480],
    ['8:00', 480],
    ['0800', 480],
    ['0800h', 480],
    ['2359', 1439],
    ['24:00', 1440],
    ['8 pm', 1200],
    ['8:30 am', 510],
    ['12 am', 0],
    ['12 pm', 720],
    ['noon', 720],
    ['midnight', 1440],
    ['8', null],
    ['24:01', null],
    ['25:00', null],
    ['8:60', null],
    ['13 pm', null],
    ['', null],
    ['constructor', null],
  ];
  for (const [text, minute] of table) assert.equal(parseClock(text), minute, text);
});
