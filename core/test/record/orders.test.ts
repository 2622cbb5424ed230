/** Which order is in force: placed, replaced, forked, held, stopped, and as far as was known at a moment. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type Instant, instant, MINUTE } from '@feedwright/core/base/instant';
import { ml } from '@feedwright/core/base/volume';
import type { Hold, Order } from '@feedwright/core/order/order';
import type { Entry } from '@feedwright/core/record/entry';
import type { Fact } from '@feedwright/core/record/fact';
import { effective, ledgerOf } from '@feedwright/core/record/ledger';
import { orderAt } from '@feedwright/core/record/orders';
import { orderWith } from '../order/example.ts';
import { COURSE, COURSE_BEGINS } from './arbitrary.ts';

const at = (minute: number): Instant => instant(COURSE_BEGINS + minute * MINUTE);
const LATER = at(100_000);

let made = 0;
const entry = (minute: number, fact: Fact, order: string | null = null, id = `e${made}`): Entry => {
  made += 1;
  const who = { id, course: COURSE, by: 'nurse-1', device: 'device-1', number: made };
  const under = { order, policy: null, task: null, corrects: null };
  return { ...who, happenedAt: at(minute), recordedAt: at(minute), ...under, fact };
};

const order = (id: string, replaces: string | null = null, more: Partial<Order> = {}): Order => ({
  ...orderWith(),
  id,
  replaces,
  startsAt: null,
  ...more,
});
const placed = (minute: number, placing: Order): Entry =>
  entry(minute, { kind: 'order-placed/1', placed: placing });
const stopped = (minute: number, id: string): Entry =>
  entry(minute, { kind: 'order-stopped/1', stopped: id, reason: 'eats' });

/** What is in force, in a few words. */
function inForce(entries: readonly Entry[], when: Instant = LATER): string {
  const found = orderAt(ledgerOf(entries), when);
  if (found.kind === 'one') return `${found.order.id}${found.next === null ? '' : ` then ${found.next.id}`}`;
  if (found.kind === 'fork') return `fork ${found.orders.map(({ id }) => id).join(' ')}`;
  return found.kind === 'stopped' ? `stopped ${found.order}: ${found.reason}` : found.kind;
}

test('[RC8] an order is in force from when it was placed until another takes its place', () => {
  const entries = [placed(0, order('A')), placed(60, order('B', 'A')), placed(120, order('C', 'B'))];
  assert.equal(inForce(entries, at(-1)), 'none');
  assert.equal(inForce(entries, at(0)), 'A');
  assert.equal(inForce(entries, at(59)), 'A');
  assert.equal(inForce(entries, at(60)), 'B');
  assert.equal(inForce(entries), 'C');
  assert.equal(inForce(entries.toReversed()), 'C');
  assert.equal(inForce([]), 'none');
});

test('[RC8] an order that begins later leaves the one it replaces in force until then', () => {
  const entries = [placed(0, order('A')), placed(60, order('B', 'A', { startsAt: at(600) }))];
  assert.equal(inForce(entries, at(60)), 'A then B');
  assert.equal(inForce(entries, at(599)), 'A then B');
  assert.equal(inForce(entries, at(600)), 'B');
  assert.equal(inForce([placed(0, order('A', null, { startsAt: at(600) }))], at(1)), 'A');
});

test('[RC8] an order marked in error was never placed', () => {
  const wrong = placed(60, order('B', 'A'));
  const error = entry(90, { kind: 'entered-in-error/1', target: wrong.id, reason: 'wrong person' });
  assert.equal(inForce([placed(0, order('A')), wrong, error]), 'A');
});

test('[RC9] two orders in the place of one are a fork, and so are two that know nothing of each other', () => {
  const [a, b, c] = [placed(0, order('A')), placed(60, order('B', 'A')), placed(90, order('C', 'A'))];
  assert.equal(inForce([a, b, c], at(89)), 'B');
  assert.equal(inForce([a, b, c]), 'fork B C');
  assert.equal(inForce([c, b, a]), 'fork B C');
  assert.equal(inForce([a, placed(60, order('D'))]), 'fork A D');
  assert.equal(inForce([a, b, c, placed(120, order('E', 'C'))]), 'fork B E');
});

test('[RC9] a fork ends when all but one are stopped, replaced or marked in error', () => {
  const [a, b, c] = [placed(0, order('A')), placed(60, order('B', 'A')), placed(90, order('C', 'A'))];
  assert.equal(inForce([a, b, c, stopped(120, 'B')]), 'C');
  const error = entry(120, { kind: 'entered-in-error/1', target: c.id, reason: 'wrong person' });
  assert.equal(inForce([a, b, c, error]), 'B');
});

test('[RC9] the same order placed twice is one; one name for two contents is a fork', () => {
  assert.equal(inForce([placed(0, order('A')), placed(5, order('A'))]), 'A');
  assert.equal(
    inForce([placed(0, order('A')), placed(5, order('A', null, { mostVolumePerDay: ml(900) }))]),
    'fork A A',
  );
});

test('[RC9] orders that replace each other in a ring are a fork', () => {
  assert.equal(inForce([placed(0, order('A', 'B')), placed(5, order('B', 'A'))]), 'fork A B');
  assert.equal(inForce([placed(0, order('A', 'A'))]), 'A');
});

test('[RC8] a stopped order is not taken up again by the one before it', () => {
  const entries = [placed(0, order('A')), placed(60, order('B', 'A')), stopped(120, 'B')];
  assert.equal(inForce(entries), 'stopped B: eats');
  assert.equal(inForce(entries, at(119)), 'B');
  assert.equal(inForce([...entries, placed(180, order('C'))]), 'C');
});

const hold = (id: string, from: number, until: number | null): Hold => ({
  id,
  from: at(from),
  until: until === null ? null : at(until),
  why: 'procedure',
  note: null,
});
const held = (minute: number, one: Hold): Entry => entry(minute, { kind: 'order-held/1', hold: one });
const ended = (minute: number, id: string): Entry => entry(minute, { kind: 'order-hold-ended/1', hold: id });

function holds(entries: readonly Entry[], when: Instant = LATER): string {
  const found = orderAt(ledgerOf(entries), when);
  if (found.kind !== 'one') return found.kind;
  const minute = (one: Instant | null) => (one === null ? '?' : (one - COURSE_BEGINS) / MINUTE);
  return found.order.holds.map(({ id, from, until }) => `${id} ${minute(from)}-${minute(until)}`).join(', ');
}

test('[RC10] the order in force has the holds that were recorded, each until somebody ended it', () => {
  const a = placed(0, order('A', null, { holds: [hold('scan', 100, 160)] }));
  assert.equal(holds([a]), 'scan 100-160');
  assert.equal(holds([a, held(30, hold('theatre', 200, null))], at(29)), 'scan 100-160');
  assert.equal(holds([a, held(30, hold('theatre', 200, null))]), 'scan 100-160, theatre 200-?');
  assert.equal(
    holds([a, held(30, hold('theatre', 200, null)), ended(300, 'theatre')]),
    'scan 100-160, theatre 200-300',
  );
  assert.equal(holds([a, ended(140, 'scan')]), 'scan 100-140', 'the order’s own, ended early');
  assert.equal(holds([a, ended(170, 'scan')]), 'scan 100-160', 'it had ended before');
  assert.equal(holds([a, ended(50, 'scan')]), '', 'called off');
  assert.equal(holds([a, held(120, hold('scan', 100, 180))]), 'scan 100-180', 'the latest word');
});

test('[RC10] a hold outlives the order under which it was recorded, unless the new order says otherwise', () => {
  const a = placed(0, order('A'));
  const fast = held(30, hold('fast', 40, null));
  assert.equal(holds([a, fast, placed(60, order('B', 'A'))]), 'fast 40-?');
  assert.equal(
    holds([a, fast, placed(60, order('B', 'A', { holds: [hold('fast', 40, 90)] }))]),
    'fast 40-90',
  );
});

test('[RC15] what was done under an order that no longer holds still counts', () => {
  const done = entry(90, { kind: 'mouth-care-done/1' }, 'A');
  const entries = [placed(0, order('A')), placed(60, order('B', 'A')), stopped(120, 'A'), done];
  assert.ok(effective(ledgerOf(entries)).includes(done));
});
