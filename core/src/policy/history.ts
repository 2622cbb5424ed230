/**
 * What held then? A policy keeps its past rows, so that yesterday is judged by yesterday's policy. Here: what was in
 * force at a moment, and when anything changed. [PO4]
 */
import type { Instant, Span } from '../base/instant.ts';
import { within } from '../base/instant.ts';
import type { Policy, PolicyRow } from './policy.ts';

const samePeople = (a: PolicyRow, b: PolicyRow): boolean =>
  a.key === b.key &&
  a.setting === b.setting &&
  a.isDefault === b.isDefault &&
  a.band?.fromDays === b.band?.fromDays &&
  a.band?.belowDays === b.band?.belowDays;

const startOf = (row: PolicyRow): number => row.effectiveFrom ?? Number.NEGATIVE_INFINITY;

/** The rows in force at a moment, without those to come and those that a later row for the same people replaced. */
export function policyInForce(policy: Policy, at: Instant): Policy {
  const begun = policy.rows.filter((row) => startOf(row) <= at);
  const replaced = (row: PolicyRow): boolean =>
    begun.some((other) => samePeople(other, row) && startOf(other) > startOf(row));
  return { ...policy, rows: begun.filter((row) => !replaced(row)) };
}

/** The moments within a span at which any row takes effect, in order. */
export function changesWithin(policy: Policy, span: Span): readonly Instant[] {
  const moments = new Set(
    policy.rows.flatMap((row) => (row.effectiveFrom === null ? [] : [row.effectiveFrom])),
  );
  return [...moments].filter((at) => within(span, at)).toSorted((a, b) => a - b);
}
