import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { instant } from '@feedwright/core/base/instant';
import { mlPerHour } from '@feedwright/core/base/volume';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import { judgeOrder, mayBePlanned } from '@feedwright/core/order/judge';
import { ORDER_PROBLEMS } from '@feedwright/core/order/problem';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import fc from 'fast-check';
import { runs } from '../runs.ts';
import { arbOrder } from './arbitrary.ts';
import { judged, ofRule, orderWith, policyOf } from './example.ts';

const anyMoment = fc.integer({ min: Date.UTC(2000, 0, 1), max: Date.UTC(2040, 0, 1) }).map(instant);

test('[OR3] whatever an order holds, it is judged and nothing throws; what is said can be written down', () => {
  for (const wildness of ['odd', 'wild'] as const) {
    fc.assert(
      fc.property(arbOrder(wildness), anyMoment, (order, at) => {
        const problems = judgeOrder(order, DEFAULT_FEEDS, DEFAULT_POLICY, at);
        assert.doesNotThrow(() => JSON.stringify(problems));
        for (const { code, rule, level } of problems) {
          assert.deepEqual([...(ORDER_PROBLEMS as Record<string, readonly string[]>)[code]!], [rule, level]);
        }
      }),
      runs(3_000),
    );
  }
});

test('[OR2] a sane order has nothing that stops it and nothing to ask', () => {
  fc.assert(
    fc.property(arbOrder('sane'), (order) => {
      const problems = judgeOrder(order, DEFAULT_FEEDS, DEFAULT_POLICY, order.startsAt!);
      assert.deepEqual(
        problems.filter((one) => one.level !== 'note'),
        [],
      );
      assert.ok(mayBePlanned(problems));
    }),
    runs(1_000),
  );
});

const policy = policyOf({ 'ceiling.rate.gastric': mlPerHour(60) });
const confirmedBy = (confirmations: { rule: string; by: string }[]) =>
  judged(orderWith({ confirmations }), { policy });

test('[OR53] what is asked is settled by a confirmation of its rule with a name, and by nothing else', () => {
  const settled = (confirmations: { rule: string; by: string }[]) => {
    const problems = confirmedBy(confirmations);
    return [
      ofRule('OR31', problems)[0]?.confirmedBy,
      mayBePlanned(problems),
      ofRule('OR53', problems).length,
    ];
  };
  assert.deepEqual(settled([]), [undefined, false, 0]);
  assert.deepEqual(settled([{ rule: 'OR31', by: 'Dr Example' }]), ['Dr Example', true, 0]);
  assert.deepEqual(settled([{ rule: 'OR32', by: 'Dr Example' }]), [undefined, false, 1]);
  assert.deepEqual(settled([{ rule: 'OR31', by: ' ' }]), [undefined, false, 0]);
  assert.deepEqual(
    settled([
      { rule: 'OR31', by: 'Dr First' },
      { rule: 'OR31', by: 'Dr Second' },
    ]),
    ['Dr Second', true, 0],
  );
});

test('[OR53] no confirmation settles what stops', () => {
  const stops = Object.values(ORDER_PROBLEMS).filter(([, level]) => level === 'stop');
  const confirmations = [...new Set(stops.map(([rule]) => rule))].map((rule) => ({ rule, by: 'Dr Example' }));
  const problems = judged(orderWith({ prescriber: null, confirmations }));
  assert.equal(ofRule('OR2', problems)[0]?.confirmedBy, undefined);
  assert.equal(mayBePlanned(problems), false);
  assert.equal(ofRule('OR53', problems).length, confirmations.length);
});

test('[OR53] a confirmation of another family’s rule is not ours to call idle', () => {
  assert.deepEqual(ofRule('OR53', confirmedBy([{ rule: 'FH7', by: 'Dr Example' }])), []);
});

test('[OR40] a key that several rules miss is named once', () => {
  const medicines = [{ name: 'a', times: ['08:00'], volumeMl: 5 }];
  const keys = ofRule('OR40', judged(orderWith({ medicines, needs: { energyKcalPerDay: 1_800 } }))).map(
    (one) => one.data.key,
  );
  assert.ok(keys.length > 3);
  assert.deepEqual(keys, [...new Set(keys)]);
});

test('[OR2] stops come first, then what is asked, then notes', () => {
  const problems = confirmedBy([]);
  const levels = judged(orderWith({ prescriber: null }), { policy }).map((one) => one.level);
  assert.deepEqual([...new Set(levels)], ['stop', 'ask', 'note']);
  assert.deepEqual([...new Set(problems.map((one) => one.level))], ['ask', 'note']);
});

test('[OR2] every rule has the level that RULES.md gives it', () => {
  const table = readFileSync(new URL('../../RULES.md', import.meta.url), 'utf8');
  for (const [code, [rule, level]] of Object.entries(ORDER_PROBLEMS)) {
    const row = table.split('\n').find((line) => new RegExp(`^\\| ${rule} +\\|`).test(line));
    assert.match(row ?? '', new RegExp(`\\| ${level}:`, 'i'), `${code} ${rule}`);
  }
});
