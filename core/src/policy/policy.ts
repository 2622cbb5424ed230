/**
 * What does this facility say? Local policy is a list of rows; each has a key, a value with its unit, for whom and where
 * it holds, where it came from and who set it. A row without a value must be set by the facility: it is never guessed.
 */
import type { Fraction } from '../base/fraction.ts';
import type { Duration, Instant } from '../base/instant.ts';
import type { Rate, Volume } from '../base/volume.ts';
import type { Basis, Provenance } from '../base/working.ts';
import type { TimeOfDay } from '../base/zone.ts';
import type { KeyKind, PolicyKey } from './keys.ts';

export type Setting = 'hospital' | 'residential-care' | 'home';

/** Ages in whole days: from is in the band, below is not. */
export type AgeBand = { readonly fromDays: number; readonly belowDays: number | null };

/** The value of a row, by the kind of its key. */
export type PolicyValue = {
  duration: Duration;
  volume: Volume;
  rate: Rate;
  fraction: Fraction;
  count: number;
  switch: boolean;
  choice: string;
  time: TimeOfDay;
};

export type PolicyRow = {
  readonly key: PolicyKey;
  readonly value: PolicyValue[KeyKind] | null;
  readonly band: AgeBand | null;
  readonly setting: Setting | null;
  readonly source: string;
  readonly provenance: Provenance;
  readonly setBy: string;
  readonly setOn: string;
  /** From when it holds; a later row for the same key, band and setting takes over from its own moment. */
  readonly effectiveFrom: Instant | null;
  readonly alternatives: readonly PolicyAlternative[];
};

/** What another published body says: shown beside the row, never used unless the facility chooses it. */
export type PolicyAlternative = {
  readonly value: string;
  readonly source: string;
  readonly provenance: Provenance;
  readonly note: string;
};

export type Policy = {
  readonly name: string;
  readonly version: string;
  readonly rows: readonly PolicyRow[];
};

/** Whose row is asked for. An age that is not known matches only rows without a band. */
export type PolicyContext = {
  readonly ageDays: number | null;
  readonly setting: Setting;
  readonly at: Instant;
};

export type PolicyAnswer<T> =
  | { readonly known: true; readonly value: T; readonly basis: Basis }
  | { readonly known: false; readonly key: PolicyKey; readonly why: 'no-row' | 'not-set' };

const holds = (row: PolicyRow, context: PolicyContext): boolean =>
  (row.effectiveFrom === null || row.effectiveFrom <= context.at) &&
  (row.setting === null || row.setting === context.setting) &&
  (row.band === null ||
    (context.ageDays !== null &&
      context.ageDays >= row.band.fromDays &&
      (row.band.belowDays === null || context.ageDays < row.band.belowDays)));

const closeness = (row: PolicyRow): number => (row.band === null ? 0 : 2) + (row.setting === null ? 0 : 1);

/** The row that governs: the closest fitting one, and of equally close ones the latest to take effect. */
export function governingRow(policy: Policy, key: PolicyKey, context: PolicyContext): PolicyRow | null {
  let best: PolicyRow | null = null;
  for (const row of policy.rows) {
    if (row.key !== key || !holds(row, context)) continue;
    if (
      best === null ||
      closeness(row) > closeness(best) ||
      (closeness(row) === closeness(best) && (row.effectiveFrom ?? 0) >= (best.effectiveFrom ?? 0))
    ) {
      best = row;
    }
  }
  return best;
}

/** What local policy says under a key, typed by the key's kind, with its basis; or that it says nothing. */
export function ask<K extends PolicyKey>(
  policy: Policy,
  key: K,
  context: PolicyContext,
): PolicyAnswer<PolicyValue[typeof import('./keys.ts').POLICY_KEYS[K]['kind']]> {
  const row = governingRow(policy, key, context);
  if (row === null) return { known: false, key, why: 'no-row' };
  if (row.value === null) return { known: false, key, why: 'not-set' };
  const basis: Basis = {
    kind: 'policy',
    key,
    source: row.source,
    provenance: row.provenance,
    setBy: row.setBy,
    setOn: row.setOn,
  };
  return { known: true, value: row.value as never, basis };
}
