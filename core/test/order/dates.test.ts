import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { OrderDocument } from '@feedwright/core/order/document';
import { AT, DOCUMENT, judged, moment, ofRule, orderWith } from './example.ts';

const found = (rule: string, changes: Partial<OrderDocument>, at = AT) =>
  ofRule(rule, judged(orderWith(changes), { at }));
const whats = (rule: string, changes: Partial<OrderDocument>) =>
  found(rule, changes).map((one) => one.data.what);
const codes = (rule: string, changes: Partial<OrderDocument>, at = AT) =>
  found(rule, changes, at).map((one) => one.code);

test('[OR4] an order cannot end before or when it begins', () => {
  const until = (endsAt: string) => whats('OR4', { startsAt: '2026-11-25T18:00:00Z', endsAt });
  assert.deepEqual(until('2026-11-25T18:00:00.001Z'), []);
  assert.deepEqual(until('2026-11-25T18:00:00Z'), ['ends-before-start']);
  assert.deepEqual(until('2026-11-25T17:00:00Z'), ['ends-before-start']);
});

test('[OR4] nobody is born or weighed tomorrow, or weighed before birth', () => {
  const of = (birthDate: string, on: string) =>
    whats('OR4', { patient: { ...DOCUMENT.patient, birthDate, dosingWeight: { kg: 3.2, on } } });
  assert.deepEqual(of('2026-11-25', '2026-11-25'), []);
  assert.deepEqual(of('2026-11-24', '2026-11-26'), ['weighed-later']);
  assert.deepEqual(of('2026-11-26', '2026-11-26'), ['born-later', 'weighed-later']);
  assert.deepEqual(of('2026-11-24', '2026-11-23'), ['weighed-before-birth']);
});

test('[OR4] today is the day on the clock of the order’s zone', () => {
  const at = moment('2026-11-25T23:30:00Z');
  const patient = { ...DOCUMENT.patient, dosingWeight: { kg: 70, on: '2026-11-26' } };
  assert.deepEqual(codes('OR4', { patient }, at), ['order/dates-contradict']);
  assert.deepEqual(codes('OR4', { patient, zone: 'Asia/Kolkata' }, at), [], 'already tomorrow there');
});

test('[OR4] feed does not expire before it is prepared', () => {
  const feed = (expiresAt: string) => ({
    feed: { id: 'powder', strength: 'full', preparedAt: '2026-11-25T06:00:00Z', expiresAt },
  });
  assert.deepEqual(whats('OR4', feed('2026-11-25T06:00:00Z')), ['expires-before-prepared']);
  assert.deepEqual(whats('OR4', feed('2026-11-25T10:00:00Z')), []);
});

test('[OR5] an order that has ended is not planned, from the very moment', () => {
  const ended = (at: string) => codes('OR5', { endsAt: '2026-11-26T08:00:00Z' }, moment(at));
  assert.deepEqual(ended('2026-11-26T07:59:59.999Z'), []);
  assert.deepEqual(ended('2026-11-26T08:00:00Z'), ['order/ended']);
});

test('[OR21] feed must not have expired when it would first be given', () => {
  const expires = (expiresAt: string) =>
    codes('OR21', { feed: { id: 'standard', strength: 'full', expiresAt } });
  assert.deepEqual(expires('2026-11-25T08:00:00Z'), ['order/feed-expired']);
  assert.deepEqual(expires('2026-11-25T08:00:00.001Z'), []);
  const feed = { id: 'standard', strength: 'full', expiresAt: '2026-11-25T12:00:00Z' };
  assert.deepEqual(codes('OR21', { feed, startsAt: '2026-11-25T20:00:00Z' }), ['order/feed-expired']);
});

test('[OR21] feed cannot be prepared after it is first given', () => {
  const prepared = (preparedAt: string) =>
    codes('OR21', { feed: { id: 'powder', strength: 'full', preparedAt } });
  assert.deepEqual(prepared('2026-11-25T08:00:00Z'), []);
  assert.deepEqual(prepared('2026-11-25T08:00:01Z'), ['order/feed-prepared-later']);
});

const hold = (id: string, from: string, until: string | null) => ({
  id,
  from: `2026-11-25T${from}:00Z`,
  until: until === null ? null : `2026-11-25T${until}:00Z`,
  why: 'procedure' as const,
});

test('[OR29] a hold ends after it begins, and each has a name of its own', () => {
  const of = (...holds: readonly ReturnType<typeof hold>[]) => whats('OR29', { holds: [...holds] });
  assert.deepEqual(of(hold('scan', '10:00', '12:00')), []);
  assert.deepEqual(of(hold('scan', '10:00', '10:00')), ['ends-before-start']);
  assert.deepEqual(of(hold('scan', '10:00', '09:00')), ['ends-before-start']);
  assert.deepEqual(of(hold('scan', '10:00', '12:00'), hold('scan', '15:00', '16:00')), ['id-twice']);
});

test('[OR50] a hold without an end is said, and holds that overlap are, but not those that touch', () => {
  const of = (...holds: readonly ReturnType<typeof hold>[]) => codes('OR50', { holds: [...holds] });
  assert.deepEqual(of(hold('scan', '10:00', null)), ['order/hold-without-end']);
  assert.deepEqual(of(hold('scan', '10:00', '12:00'), hold('fast', '12:00', '13:00')), []);
  assert.deepEqual(of(hold('fast', '11:59', '13:00'), hold('scan', '10:00', '12:00')), [
    'order/holds-overlap',
  ]);
  assert.deepEqual(
    of(hold('long', '08:00', '20:00'), hold('a', '09:00', '10:00'), hold('b', '11:00', '12:00')),
    ['order/holds-overlap', 'order/holds-overlap'],
  );
  assert.deepEqual(of(hold('open', '08:00', null), hold('a', '09:00', '10:00')), [
    'order/hold-without-end',
    'order/holds-overlap',
  ]);
});

test('[OR54] an order without a start, and one that was prescribed after it, are said', () => {
  assert.deepEqual(codes('OR54', { startsAt: null }), ['order/no-start']);
  assert.deepEqual(codes('OR54', { prescribedAt: '2026-11-25T08:00:01Z' }), ['order/prescribed-later']);
  assert.deepEqual(codes('OR54', { prescribedAt: '2026-11-25T08:00:00Z' }), []);
});
