/** By when a container must be down. Values by class: ASPEN 2009 (S2), NZ handbook (S19), as the default policy has them. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { HOUR, hours, instant, MINUTE } from '@feedwright/core/base/instant';
import type { Zone } from '@feedwright/core/base/zone';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import { type Feed, feedById } from '@feedwright/core/feeds/feed';
import type { Order } from '@feedwright/core/order/order';
import { policyContext } from '@feedwright/core/order/review';
import {
  type FixedLimit,
  isSpiked,
  limitsFor,
  plannedDown,
  takeDown,
} from '@feedwright/core/plan/containers/limits';
import { localFor } from '@feedwright/core/plan/local';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import { orderFor } from '../programme/situation.ts';

const UP = instant(Date.UTC(2026, 10, 25, 8));
const AT = (hour: number, minute = 0) => instant(Date.UTC(2026, 10, 25, hour, minute));

type Ordered = NonNullable<Order['feed']>;

const ordered = (id: string, more: Partial<Ordered> = {}): Ordered => ({
  ...(orderFor(null).feed as Ordered),
  id,
  ...more,
});
const listed = (id: string): Feed => feedById(DEFAULT_FEEDS, id) as Feed;
const local = () => localFor(DEFAULT_POLICY, policyContext({ ...orderFor(null), zone: 'UTC' as Zone }, UP));
const limits = (id: string, more: Partial<Ordered> = {}, feed: Partial<Feed> = {}) =>
  limitsFor({ ...listed(id), ...feed }, ordered(id, more), local());
const down = (id: string, more: Partial<Ordered> = {}, feed: Partial<Feed> = {}) => {
  const { by, because } = takeDown(limits(id, more, feed), UP);
  return [(by.value - UP) / HOUR, because];
};

const SALT = [{ name: 'salt', amount: '2 g' }];
const THREE_QUARTERS = fraction(3, 4);

test('[PL12] how the feed comes, and what was done to it, decides the limit; the shortest governs', () => {
  assert.deepEqual(down('standard-1.0'), [8, 'hang-limit']);
  assert.deepEqual(down('standard-1.0-closed'), [24, 'hang-limit']);
  assert.deepEqual(down('infant-0.67-powder'), [4, 'hang-limit']);
  assert.deepEqual(down('infant-0.67-concentrate'), [4, 'hang-limit']);
  assert.deepEqual(down('human-milk'), [4, 'hang-limit']);
  assert.deepEqual(down('blenderised'), [2, 'hang-limit']);
  assert.deepEqual(down('standard-1.0', { strength: THREE_QUARTERS }), [4, 'hang-limit']);
  assert.deepEqual(down('standard-1.0', { additives: SALT }), [4, 'hang-limit']);
  assert.deepEqual(down('blenderised', { strength: THREE_QUARTERS, additives: SALT }), [2, 'hang-limit']);
  assert.deepEqual(down('standard-1.0', {}, { labelHangLimit: hours(6) }), [6, 'label-limit']);
  assert.deepEqual(down('standard-1.0', {}, { labelHangLimit: hours(48) }), [8, 'hang-limit']);
});

test('[PL12] expiry and the batch govern when they come first, and only if they were not past already', () => {
  assert.deepEqual(down('standard-1.0', { expiresAt: AT(12) }), [4, 'expiry']);
  assert.deepEqual(down('standard-1.0', { preparedAt: instant(AT(10) - 24 * HOUR) }), [2, 'prepared-limit']);
  assert.deepEqual(down('standard-1.0', { expiresAt: AT(7) }), [8, 'hang-limit']);
  assert.deepEqual(down('standard-1.0', { expiresAt: UP }), [8, 'hang-limit']);
});

test('[PL12] of limits that fall together the feed’s own is named, and every one is in the working', () => {
  const set: FixedLimit = { because: 'set-limit', at: AT(16), basis: { kind: 'arithmetic' } };
  const { by, because } = takeDown(limits('standard-1.0', { strength: THREE_QUARTERS }), UP, [set]);
  assert.equal(because, 'hang-limit');
  assert.equal(by.working.equation, 't_down = min(t_up + H_water, t_up + H, t_set)');
  assert.deepEqual(
    by.working.inputs.map((one) => one.symbol),
    ['t_up', 'H_water', 'H', 't_set'],
  );
  assert.deepEqual(by.working.result.is, { kind: 'instant', at: by.value });
  const sooner = takeDown(limits('standard-1.0'), UP, [{ ...set, at: AT(15, 59) }]);
  assert.deepEqual([sooner.by.value, sooner.because], [AT(15, 59), 'set-limit']);
});

test('[PL13] a margin comes off hang limits alone, and never makes a limit lie before putting up', () => {
  const withMargin = (margin: number) => ({
    ...limits('standard-1.0', { expiresAt: AT(15, 50) }),
    margin: { value: margin as never, basis: { kind: 'arithmetic' } as const },
  });
  assert.equal(plannedDown(withMargin(0), UP), AT(15, 50));
  assert.equal(plannedDown(withMargin(15 * MINUTE), UP), AT(15, 45));
  assert.equal(plannedDown(withMargin(9 * HOUR), UP), UP);
  assert.equal(takeDown(withMargin(15 * MINUTE), UP).by.value, AT(15, 50));
});

test('[PL12] a closed container that is diluted or mixed has been opened and poured', () => {
  const closed = listed('standard-1.0-closed');
  assert.equal(isSpiked(closed, ordered(closed.id)), true);
  assert.equal(isSpiked(closed, ordered(closed.id, { strength: THREE_QUARTERS })), false);
  assert.equal(isSpiked(closed, ordered(closed.id, { additives: SALT })), false);
  assert.deepEqual(down('standard-1.0-closed', { additives: SALT }), [4, 'hang-limit']);
});

test('[PL10] a limit that policy does not give is missed, not guessed', () => {
  const silent = localFor({ ...DEFAULT_POLICY, rows: [] }, policyContext(orderFor(null), UP));
  assert.deepEqual(
    limitsFor(listed('standard-1.0'), ordered('standard-1.0', { strength: THREE_QUARTERS }), silent).hang,
    [],
  );
  assert.deepEqual(
    silent.missed().map((one) => [one.level, one.data.key]),
    [
      ['stop', 'hang.open-liquid'],
      ['stop', 'hang.water-added'],
    ],
  );
});
