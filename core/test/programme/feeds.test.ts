import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { HOUR, hours, type Instant, minutes } from '@feedwright/core/base/instant';
import { ml, mlPerHour } from '@feedwright/core/base/volume';
import type { Regimen } from '@feedwright/core/order/order';
import { needUpTo } from '@feedwright/core/programme/programme';
import {
  at,
  continuous,
  gapTable,
  hold,
  intermittent,
  lostTable,
  medicine,
  orderFor,
  policyWith,
  programmeFor,
  span,
  table,
  time,
  totalMl,
} from './situation.ts';

const DAY = span('2026-11-25T06:00Z', '2026-11-26T06:00Z');

const bolus = (more: Partial<Extract<Regimen, { kind: 'bolus' }>> = {}): Regimen => ({
  kind: 'bolus',
  volume: { volume: ml(250), of: 'mixture' },
  times: ['08:00', '12:00', '16:00', '20:00'].map(time),
  lasts: minutes(20),
  meals: [],
  advance: null,
  ...more,
});

test('[PR6] feeds at wall-clock times: 200 mL over 35 min', () => {
  const order = orderFor(intermittent(200, ['08:00', '12:00', '18:00', '22:00'], minutes(35)));
  const programme = programmeFor(order, DAY);
  assert.deepEqual(table(programme), [
    '11-25 08:00 – 11-25 08:35  200 mL',
    '11-25 12:00 – 11-25 12:35  200 mL',
    '11-25 18:00 – 11-25 18:35  200 mL',
    '11-25 22:00 – 11-25 22:35  200 mL',
  ]);
  assert.equal(totalMl(programme), 800);
  assert.deepEqual(programme.gaps, []);
});

test('[PR6] a feed gives the floor of its cumulative volume, so that parts of it add up', () => {
  const order = orderFor(intermittent(1, ['08:00'], minutes(35)));
  const programme = programmeFor(order, DAY);
  const start = at('2026-11-25T08:00Z');
  for (const ms of [1, 7, 999, 123_457, 35 * 60_000 - 1]) {
    const expected = (BigInt(ml(1)) * BigInt(ms)) / BigInt(35 * 60_000);
    assert.equal(needUpTo(programme, (start + ms) as Instant), Number(expected));
  }
});

test('[PR6] named times are wall clock: on the night of the clock change they stay where the clock has them', () => {
  const order = orderFor(intermittent(200, ['00:30', '01:30', '03:00'], minutes(30)));
  const forward = programmeFor(order, span('2026-03-28T12:00Z', '2026-03-29T11:00Z'));
  // 01:30 does not come: it is taken as 02:30, and 03:00 follows it.
  assert.deepEqual(table(forward), [
    '03-29 00:30 – 03-29 02:00  200 mL',
    '03-29 02:30 – 03-29 03:00  200 mL',
    '03-29 03:00 – 03-29 03:30  200 mL',
  ]);
  const back = programmeFor(order, span('2026-10-24T11:00Z', '2026-10-25T12:00Z'));
  assert.equal(totalMl(back), 600);
  assert.equal((back.pieces[1]?.from ?? 0) - (back.pieces[0]?.from ?? 0), HOUR);
});

test('[PR6] [PR9] a hold takes its part of an intermittent feed, and what it takes is said', () => {
  const holds = [hold('scan', '2026-11-25T08:20Z', '2026-11-25T10:00Z')];
  const order = orderFor(intermittent(300, ['08:00', '12:00'], minutes(30)), { holds });
  const programme = programmeFor(order, DAY);
  assert.equal(totalMl(programme), 500);
  assert.deepEqual(lostTable(programme), ['hold 100']);
  assert.deepEqual(gapTable(programme), ['11-25 08:20 – 11-25 08:30  hold scan']);
});

test('[PR6] a hold takes the whole of a bolus that would fall into it', () => {
  const holds = [hold('scan', '2026-11-25T12:10Z', '2026-11-25T13:00Z')];
  const programme = programmeFor(orderFor(bolus(), { holds }), DAY);
  assert.deepEqual(table(programme), [
    '11-25 08:00 – 11-25 08:20  250 mL',
    '11-25 16:00 – 11-25 16:20  250 mL',
    '11-25 20:00 – 11-25 20:20  250 mL',
  ]);
  assert.deepEqual(gapTable(programme), ['11-25 12:00 – 11-25 12:20  hold scan']);
  assert.deepEqual(lostTable(programme), ['hold 250']);
});

test('[PR2] a medicine’s hold takes the bolus at its time', () => {
  const medicines = [medicine('phenytoin', ['08:00'], 60, 60)];
  const programme = programmeFor(orderFor(bolus(), { medicines }), DAY);
  assert.equal(totalMl(programme), 750);
  assert.deepEqual(gapTable(programme), ['11-25 08:00 – 11-25 08:20  hold medicine:phenytoin']);
});

test('[PR6] a bolus without a duration takes policy’s least; where policy is silent it is given at once', () => {
  const order = orderFor(bolus({ lasts: null }));
  const [byPolicy] = programmeFor(order, DAY).pieces;
  assert.equal((byPolicy?.until ?? 0) - (byPolicy?.from ?? 0), minutes(15));
  const silent = programmeFor(order, DAY, { policy: policyWith({ 'bolus.least-duration': undefined }) });
  assert.equal((silent.pieces[0]?.until ?? 0) - (silent.pieces[0]?.from ?? 0), 1);
  assert.equal(totalMl(silent), 1000);
});

test('[PR7] a bolus that depends on a meal is planned in full and marked with its condition', () => {
  const meals = [{ at: time('18:00'), ifEatenLessThan: fraction(1, 2) }];
  for (const pace of ['lowest', 'highest'] as const) {
    const { pieces } = programmeFor(orderFor(bolus({ times: [time('08:00')], meals })), DAY, { pace });
    const conditions = pieces.map(({ gives }) => (gives.kind === 'volume' ? gives.ifEatenLessThan : null));
    assert.deepEqual(conditions, [undefined, fraction(1, 2)]);
  }
});

test('[PR6] a feed not done when the next begins is cut there, and the rest is said', () => {
  const order = orderFor(intermittent(300, ['08:00', '08:20'], minutes(30)));
  const programme = programmeFor(order, DAY);
  assert.deepEqual(lostTable(programme), ['next-feed 100']);
  assert.equal(totalMl(programme), 500);
});

test('[PR6] a bolus not done when the order ends is not begun', () => {
  const programme = programmeFor(orderFor(bolus(), { endsAt: at('2026-11-25T12:10Z') }), DAY);
  assert.deepEqual(table(programme), ['11-25 08:00 – 11-25 08:20  250 mL']);
});

const STEPS = { start: mlPerHour(20), step: mlPerHour(20), every: hours(8), goal: mlPerHour(70) };
const stepping = orderFor(continuous(70, { advance: STEPS }));

test('[PR8] the lowest pace has the steps that somebody confirmed, the highest takes each at its earliest', () => {
  // 20 mL/h, up 20 every 6 to 8 h (a trauma nutrition guideline, S34; the goal is this project’s own).
  const standing = { advancement: { stepsConfirmed: 1, since: at('2026-11-25T04:00Z') } };
  assert.deepEqual(table(programmeFor(stepping, DAY, { standing })), ['11-25 06:00 – 11-26 06:00  40']);
  assert.deepEqual(table(programmeFor(stepping, DAY, { standing, pace: 'highest' })), [
    '11-25 06:00 – 11-25 12:00  40',
    '11-25 12:00 – 11-25 20:00  60',
    '11-25 20:00 – 11-26 06:00  70',
  ]);
});

test('[PR8] a step that could have been taken is taken now at the highest pace, never in the past', () => {
  const standing = { advancement: { stepsConfirmed: 1, since: at('2026-11-24T04:00Z') } };
  assert.deepEqual(table(programmeFor(stepping, DAY, { standing, pace: 'highest' })), [
    '11-25 06:00 – 11-25 14:00  60',
    '11-25 14:00 – 11-26 06:00  70',
  ]);
});

test('[PR8] nothing passes the goal, nor the order’s own maximum, however many steps are confirmed', () => {
  const standing = { advancement: { stepsConfirmed: 9, since: at('2026-11-25T04:00Z') } };
  assert.deepEqual(table(programmeFor(stepping, DAY, { standing, pace: 'highest' })), [
    '11-25 06:00 – 11-26 06:00  70',
  ]);
  const most = { ...stepping, mostRate: mlPerHour(50) };
  assert.deepEqual(table(programmeFor(most, DAY, { standing })), ['11-25 06:00 – 11-26 06:00  50']);
});

test('[PR8] boluses step up as well', () => {
  // Start 60 to 120 mL, step 60 to 120 mL every 8 to 12 h (an initiation table, S99).
  const advance = { start: ml(60), step: ml(60), every: hours(8), goal: ml(250) };
  const standing = { advancement: { stepsConfirmed: 0, since: at('2026-11-25T06:00Z') } };
  const order = orderFor(bolus({ advance }));
  assert.equal(totalMl(programmeFor(order, DAY, { standing })), 240);
  assert.deepEqual(table(programmeFor(order, DAY, { standing, pace: 'highest' })), [
    '11-25 08:00 – 11-25 08:20  60 mL',
    '11-25 12:00 – 11-25 12:20  60 mL',
    '11-25 16:00 – 11-25 16:20  120 mL',
    '11-25 20:00 – 11-25 20:20  120 mL',
  ]);
});

test('[PR15] feed stops at the first ms that reaches the day’s most, until the next day', () => {
  const order = orderFor(continuous(75), { mostVolumePerDay: ml(1000) });
  const programme = programmeFor(order, span('2026-11-25T06:00Z', '2026-11-26T12:00Z'));
  assert.deepEqual(table(programme), ['11-25 06:00 – 11-25 19:20  75', '11-26 06:00 – 11-26 12:00  75']);
  assert.deepEqual(gapTable(programme), ['11-25 19:20 – 11-26 06:00  maximum-reached']);
  assert.equal(programme.shortfall, 0);
  const odd = programmeFor(orderFor(continuous(70), { mostVolumePerDay: ml(1000) }), DAY);
  assert.equal((odd.pieces[0]?.until ?? 0) - DAY.from, Math.ceil((1000 / 70) * HOUR));
});

test('[PR15] on the day of the standing what was received counts; a hold costs only what the day then lacks', () => {
  const seenAt = at('2026-11-25T18:00Z');
  const rest = { from: seenAt, until: DAY.until };
  const most = { mostVolumePerDay: ml(1000) };
  const standing = { receivedToday: ml(850) };
  const holds = [hold('scan', '2026-11-25T18:00Z', '2026-11-25T20:00Z')];
  const programme = programmeFor(orderFor(continuous(75), { ...most, holds }), rest, { standing });
  assert.deepEqual(table(programme), ['11-25 20:00 – 11-25 22:00  75']);
  assert.equal(programme.shortfall, 0);
  const longer = [hold('scan', '2026-11-25T18:00Z', '2026-11-26T05:00Z')];
  const short = programmeFor(orderFor(continuous(75), { ...most, holds: longer }), rest, { standing });
  assert.deepEqual(table(short), ['11-26 05:00 – 11-26 06:00  75']);
  assert.deepEqual(lostTable(short), ['hold 75']);
});

test('[PR15] a bolus that does not fit into the day’s most is not begun', () => {
  const programme = programmeFor(orderFor(bolus(), { mostVolumePerDay: ml(600) }), DAY);
  assert.deepEqual(table(programme), [
    '11-25 08:00 – 11-25 08:20  250 mL',
    '11-25 12:00 – 11-25 12:20  250 mL',
  ]);
  assert.deepEqual(gapTable(programme), [
    '11-25 16:00 – 11-25 16:20  maximum-reached',
    '11-25 20:00 – 11-25 20:20  maximum-reached',
  ]);
});

test('[PR9] a protocol makes up at a fixed rate too, towards what the rate would have come to', () => {
  const holds = [hold('scan', '2026-11-25T10:00Z', '2026-11-25T14:00Z')];
  const order = orderFor(continuous(50), { holds, catchUpProtocol: 'the unit’s own' });
  assert.deepEqual(table(programmeFor(order, DAY)), [
    '11-25 06:00 – 11-25 10:00  60',
    '11-25 14:00 – 11-26 06:00  60',
  ]);
  assert.equal(totalMl(programmeFor(order, DAY)), 1200);
  const first = programmeFor(order, DAY, { standing: { feedingSince: DAY.from } });
  assert.equal(totalMl(first), 1000);
  assert.deepEqual(lostTable(first), ['first-day 200']);
});

test('[PR9] ahead of what a fixed rate comes to, the rate stays, protocol or not', () => {
  const order = orderFor(continuous(50), { catchUpProtocol: 'the unit’s own' });
  const rest = { from: at('2026-11-25T18:00Z'), until: DAY.until };
  const programme = programmeFor(order, rest, { standing: { receivedToday: ml(900) } });
  assert.deepEqual(table(programme), ['11-25 18:00 – 11-26 06:00  50']);
});

test('[PR1] an order without a regimen, or an empty span, has an empty programme', () => {
  assert.deepEqual(programmeFor(orderFor(null), DAY).pieces, []);
  const empty = programmeFor(orderFor(continuous(50)), { from: DAY.from, until: DAY.from });
  assert.deepEqual({ ...empty }, { span: empty.span, pieces: [], gaps: [], shortfall: 0, lost: [] });
});
