import assert from 'node:assert/strict';
import { test } from 'node:test';
import { hours } from '@feedwright/core/base/instant';
import {
  continuous,
  gapTable,
  hold,
  LONDON,
  LORD_HOWE,
  lostTable,
  medicine,
  NEW_YORK,
  orderFor,
  programmeFor,
  span,
  table,
  time,
  totalMl,
} from './situation.ts';

const DAY = span('2026-11-25T06:00Z', '2026-11-26T06:00Z');

test('[PR1] a rate runs all day as the order has it: 50 mL/h is 1200 mL in 24 h (Brierley-Hobson 2019, S40)', () => {
  const programme = programmeFor(orderFor(continuous(50)), DAY);
  assert.deepEqual(table(programme), ['11-25 06:00 – 11-26 06:00  50']);
  assert.equal(totalMl(programme), 1200);
  assert.deepEqual(programme.gaps, []);
  assert.equal(programme.shortfall, 0);
});

test('[PR1] an ordered rate that the pump cannot be set to is not changed here', () => {
  assert.deepEqual(table(programmeFor(orderFor(continuous(62.5)), DAY)), ['11-25 06:00 – 11-26 06:00  62.5']);
});

test('[PR1] nothing runs before the order begins or after it ends, and that is no gap', () => {
  const { from: startsAt, until: endsAt } = span('2026-11-25T10:00Z', '2026-11-25T22:00Z');
  const programme = programmeFor(orderFor(continuous(50), { startsAt, endsAt }), DAY);
  assert.deepEqual(table(programme), ['11-25 10:00 – 11-25 22:00  50']);
  assert.deepEqual(programme.gaps, []);
  assert.equal(programme.shortfall, 0);
});

test('[PR1] hours a day are elapsed hours from a wall-clock time', () => {
  const regimen = continuous(60, { perDay: { from: time('20:00'), lasts: hours(20) } });
  // Clocks go back at 02:00 on 2026-10-25: twenty hours from 20:00 end at 15:00 on the clock, not at 16:00.
  const programme = programmeFor(orderFor(regimen), span('2026-10-24T19:00Z', '2026-10-26T20:00Z'));
  assert.deepEqual(table(programme), ['10-24 20:00 – 10-25 15:00  60', '10-25 20:00 – 10-26 16:00  60']);
  assert.equal(totalMl(programme), 2400);
});

test('[PR2] [PR9] a hold at a fixed rate is lost, said in mL and not made up', () => {
  // Three holds of 2 h at 75 mL/h lose 450 mL of 1800 (worked from the rate; a quarter of the day).
  const holds = [
    hold('a', '2026-11-25T08:00Z', '2026-11-25T10:00Z'),
    hold('b', '2026-11-25T12:00Z', '2026-11-25T14:00Z'),
    hold('c', '2026-11-25T20:00Z', '2026-11-25T22:00Z'),
  ];
  const programme = programmeFor(orderFor(continuous(75), { holds }), DAY);
  assert.equal(totalMl(programme), 1350);
  assert.deepEqual(lostTable(programme), ['hold 150', 'hold 150', 'hold 150']);
  assert.deepEqual(gapTable(programme), [
    '11-25 08:00 – 11-25 10:00  hold a',
    '11-25 12:00 – 11-25 14:00  hold b',
    '11-25 20:00 – 11-25 22:00  hold c',
  ]);
});

test('[PR2] hours held twice are held once', () => {
  const holds = [
    hold('scan', '2026-11-25T10:00Z', '2026-11-25T13:00Z'),
    hold('fast', '2026-11-25T12:00Z', '2026-11-25T14:00Z'),
  ];
  const programme = programmeFor(orderFor(continuous(50), { holds }), DAY);
  assert.deepEqual(gapTable(programme), ['11-25 10:00 – 11-25 14:00  hold scan fast']);
  assert.equal(totalMl(programme), 50 * 20);
  assert.deepEqual(lostTable(programme), ['hold 200']);
});

test('[PR2] a medicine is a hold around every time at which it is given', () => {
  // Phenytoin, 2 h before and 2 h after (a published interaction reference), twice a day.
  const medicines = [medicine('phenytoin', ['10:00', '22:00'], 120, 120)];
  const programme = programmeFor(orderFor(continuous(75), { medicines }), DAY);
  assert.deepEqual(table(programme), [
    '11-25 06:00 – 11-25 08:00  75',
    '11-25 12:00 – 11-25 20:00  75',
    '11-26 00:00 – 11-26 06:00  75',
  ]);
  assert.equal(totalMl(programme), 75 * 16);
});

test('[PR3] after a hold without a known end nothing is planned', () => {
  const holds = [
    hold('scan', '2026-11-25T14:00Z', null),
    hold('fast', '2026-11-25T16:00Z', '2026-11-25T18:00Z'),
  ];
  const programme = programmeFor(orderFor(continuous(50), { holds }), DAY);
  assert.deepEqual(table(programme), ['11-25 06:00 – 11-25 14:00  50']);
  assert.deepEqual(gapTable(programme), ['11-25 14:00 – 11-26 06:00  hold-end-unknown scan fast …']);
  assert.deepEqual(lostTable(programme), ['hold-end-unknown 800']);
});

test('[PR14] a rate gives 23, 24, 24½, 25 hours of itself on the days on which clocks change', () => {
  const days = [
    [LONDON, '2026-03-28T06:00Z', '2026-03-29T05:00Z', 23],
    [LONDON, '2026-10-24T05:00Z', '2026-10-25T06:00Z', 25],
    [NEW_YORK, '2026-03-07T11:00Z', '2026-03-08T10:00Z', 23],
    [NEW_YORK, '2026-10-31T10:00Z', '2026-11-01T11:00Z', 25],
    [LORD_HOWE, '2026-04-03T19:00Z', '2026-04-04T19:30Z', 24.5],
    [LORD_HOWE, '2026-10-02T19:30Z', '2026-10-03T19:00Z', 23.5],
    [LONDON, '2026-06-01T05:00Z', '2026-06-02T05:00Z', 24],
  ] as const;
  for (const [zone, from, until, lasts] of days) {
    const programme = programmeFor(orderFor(continuous(50), { zone }), span(from, until));
    assert.equal(totalMl(programme), 50 * lasts, `${zone} ${from}`);
  }
});
