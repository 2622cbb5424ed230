import assert from 'node:assert/strict';
import { test } from 'node:test';
import { hours, type Instant, instant } from '@feedwright/core/base/instant';
import { daysOfYears } from '@feedwright/core/policy/age';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import { changesWithin, policyInForce } from '@feedwright/core/policy/history';
import { layOver } from '@feedwright/core/policy/local';
import {
  type AgeBand,
  ask,
  governingRow,
  type Policy,
  type PolicyContext,
  type PolicyRow,
} from '@feedwright/core/policy/policy';
import fc from 'fast-check';
import { runs } from '../runs.ts';
import { contexts, crowds } from './arbitrary.ts';

const NOW = instant(Date.UTC(2026, 10, 25, 8));
const ADULT: AgeBand = { fromDays: daysOfYears(18), belowDays: null };
const GROWN: PolicyContext = { ageDays: daysOfYears(70), setting: 'hospital', at: NOW };

const row = (limit: number, more: Partial<PolicyRow> = {}): PolicyRow => ({
  key: 'hang.closed',
  value: hours(limit),
  band: null,
  setting: null,
  source: 'facility',
  provenance: 'facility',
  setBy: 'nutrition board',
  setOn: '2026-11-01',
  effectiveFrom: null,
  alternatives: [],
  ...more,
});

const policyOf = (...rows: readonly PolicyRow[]): Policy => ({ name: 'here', version: '1', rows });

const hoursOf = (policy: Policy, context: Partial<PolicyContext> = {}): number | string => {
  const answer = ask(policy, 'hang.closed', { ...GROWN, ...context });
  return answer.known ? answer.value / hours(1) : answer.why;
};

test('[PO2] the closest row governs: an age band before a setting, both before either', () => {
  const everywhere = row(20);
  const athome = row(12, { setting: 'home' });
  const grown = row(24, { band: ADULT });
  const grownAtHome = row(16, { band: ADULT, setting: 'home' });
  assert.equal(hoursOf(policyOf(everywhere)), 20);
  assert.equal(hoursOf(policyOf(athome, everywhere)), 20);
  assert.equal(hoursOf(policyOf(athome, everywhere), { setting: 'home' }), 12);
  assert.equal(hoursOf(policyOf(grown, athome, everywhere), { setting: 'home' }), 24);
  assert.equal(hoursOf(policyOf(grown, grownAtHome, athome, everywhere), { setting: 'home' }), 16);
  assert.equal(
    hoursOf(policyOf(grown, grownAtHome, athome, everywhere), { setting: 'residential-care' }),
    24,
  );
});

test('[PO2] a facility’s row for everybody goes before a default for adults that would fit more closely', () => {
  assert.equal(hoursOf(DEFAULT_POLICY), 24);
  assert.equal(hoursOf(layOver(DEFAULT_POLICY, policyOf(row(20)))), 20);
  assert.equal(hoursOf(layOver(DEFAULT_POLICY, policyOf(row(20, { setting: 'home' })))), 24);
  assert.equal(
    hoursOf(layOver(DEFAULT_POLICY, policyOf(row(20, { setting: 'home' }))), { setting: 'home' }),
    20,
  );
});

test('[PO2] a facility that takes a value back leaves it open: the default does not step in', () => {
  assert.equal(hoursOf(layOver(DEFAULT_POLICY, policyOf(row(20, { value: null })))), 'not-set');
});

test('[PO3] a row for adults holds from the first day of the band, and for nobody whose age is not known', () => {
  const adultsOnly = policyOf(row(24, { band: ADULT }));
  assert.equal(hoursOf(adultsOnly, { ageDays: daysOfYears(18) }), 24);
  assert.equal(hoursOf(adultsOnly, { ageDays: daysOfYears(18) - 1 }), 'no-row');
  assert.equal(hoursOf(adultsOnly, { ageDays: null }), 'no-row');
  const under = policyOf(row(4, { band: { fromDays: 28, belowDays: daysOfYears(18) } }));
  assert.equal(hoursOf(under, { ageDays: 27 }), 'no-row');
  assert.equal(hoursOf(under, { ageDays: 28 }), 4);
  assert.equal(hoursOf(under, { ageDays: daysOfYears(18) - 1 }), 4);
  assert.equal(hoursOf(under, { ageDays: daysOfYears(18) }), 'no-row');
});

test('[PO4] yesterday is judged by yesterday’s policy, to the millisecond', () => {
  const since = NOW;
  const policy = policyOf(row(24), row(12, { effectiveFrom: since }));
  assert.equal(hoursOf(policy, { at: (since - 1) as Instant }), 24);
  assert.equal(hoursOf(policy, { at: since }), 12);
  // The order in which rows stand does not matter.
  assert.equal(hoursOf(policyOf(row(12, { effectiveFrom: since }), row(24))), 12);
});

test('[PO4] a row for a wider group that came later does not replace a closer one', () => {
  const policy = policyOf(row(24, { band: ADULT }), row(6, { effectiveFrom: NOW }));
  assert.equal(hoursOf(policy), 24);
});

test('[PO4] a facility’s row from a moment on leaves the default in force before it', () => {
  const policy = layOver(DEFAULT_POLICY, policyOf(row(20, { effectiveFrom: NOW })));
  assert.equal(hoursOf(policy, { at: (NOW - 1) as Instant }), 24);
  assert.equal(hoursOf(policy, { at: NOW }), 20);
});

test('[PO4] what was in force at a moment answers as the whole policy does then', () => {
  fc.assert(
    fc.property(crowds, contexts, (policy, context) => {
      const then = policyInForce(policy, context.at);
      assert.deepEqual(
        governingRow(then, 'hang.closed', context)?.value,
        governingRow(policy, 'hang.closed', context)?.value,
      );
      assert.ok(then.rows.every((one) => one.effectiveFrom === null || one.effectiveFrom <= context.at));
    }),
    runs(5000),
  );
  const both = policyOf(row(24), row(12, { effectiveFrom: NOW }));
  assert.deepEqual(policyInForce(both, NOW).rows, [both.rows[1]]);
});

test('[PO4] the moments of change within a span: its beginning counts, its end does not', () => {
  const at = (ms: number) => row(12, { effectiveFrom: instant(ms) });
  const policy = policyOf(row(24), at(20), at(10), at(20), at(30));
  assert.deepEqual(changesWithin(policy, { from: instant(10), until: instant(30) }), [10, 20]);
});

/** The rule in so many words, without index or shortcut: all that hold, ranked. */
function byTheRule(policy: Policy, context: PolicyContext): PolicyRow | undefined {
  const { ageDays, setting, at } = context;
  return policy.rows
    .filter((one) => one.key === 'hang.closed')
    .filter((one) => one.effectiveFrom === null || one.effectiveFrom <= at)
    .filter((one) => one.setting === null || one.setting === setting)
    .filter(
      ({ band }) =>
        band === null ||
        (ageDays !== null && band.fromDays <= ageDays && ageDays < (band.belowDays ?? Infinity)),
    )
    .toSorted(
      (a, b) =>
        Number(a.isDefault ?? false) - Number(b.isDefault ?? false) ||
        Number(b.band !== null) - Number(a.band !== null) ||
        Number(b.setting !== null) - Number(a.setting !== null) ||
        Number(b.effectiveFrom ?? -Infinity) - Number(a.effectiveFrom ?? -Infinity) ||
        policy.rows.indexOf(b) - policy.rows.indexOf(a),
    )[0];
}

test('[PO2] the row that governs is the one that the rule ranks first, asked once or again', () => {
  fc.assert(
    fc.property(crowds, fc.array(contexts, { minLength: 1, maxLength: 4 }), (policy, several) => {
      for (const context of several) {
        assert.equal(governingRow(policy, 'hang.closed', context) ?? undefined, byTheRule(policy, context));
      }
    }),
    runs(10_000),
  );
});

test('[PO1] an answer carries its basis; none says whether the row is missing or waits', () => {
  const answer = ask(policyOf(row(20)), 'hang.closed', GROWN);
  assert.deepEqual(answer, {
    known: true,
    value: hours(20),
    basis: {
      kind: 'policy',
      key: 'hang.closed',
      source: 'facility',
      provenance: 'facility',
      setBy: 'nutrition board',
      setOn: '2026-11-01',
    },
  });
  assert.deepEqual(ask(policyOf(), 'hang.closed', GROWN), {
    known: false,
    key: 'hang.closed',
    why: 'no-row',
  });
  assert.deepEqual(ask(policyOf(row(1, { value: null })), 'hang.closed', GROWN), {
    known: false,
    key: 'hang.closed',
    why: 'not-set',
  });
});
