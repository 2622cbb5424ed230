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
  /** Comes with Feedwright: any row of the facility's own that holds goes before it, however widely it is meant. */
  readonly isDefault?: true;
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

/** A row without a moment holds since always, so before any moment, also one before 1970. */
const sinceWhen = (row: PolicyRow): number => row.effectiveFrom ?? Number.NEGATIVE_INFINITY;

const closeness = (row: PolicyRow): number =>
  (row.isDefault === true ? 0 : 4) + (row.band === null ? 0 : 2) + (row.setting === null ? 0 : 1);

const indexes = new WeakMap<Policy, ReadonlyMap<PolicyKey, readonly PolicyRow[]>>();

/** Asking is in the planner's inner path: each policy's rows are sorted into their keys once. */
function rowsByKey(policy: Policy): ReadonlyMap<PolicyKey, readonly PolicyRow[]> {
  const known = indexes.get(policy);
  if (known !== undefined) return known;
  const index = Map.groupBy(policy.rows, (row) => row.key);
  indexes.set(policy, index);
  return index;
}

/** Every row under a key, for whomever it holds, in the order of the document. */
export const rowsOf = (policy: Policy, key: PolicyKey): readonly PolicyRow[] =>
  rowsByKey(policy).get(key) ?? [];

/** Of two rows that hold, whether the second takes over: it fits more closely, or as closely and from a later moment. */
const takesOver = (best: PolicyRow, next: PolicyRow): boolean =>
  closeness(next) > closeness(best) ||
  (closeness(next) === closeness(best) && sinceWhen(next) >= sinceWhen(best));

/**
 * The row that governs: the facility's own before a default, then the closest fitting one, and of equally close ones the
 * latest to take effect. [PO2]
 */
export function governingRow(policy: Policy, key: PolicyKey, context: PolicyContext): PolicyRow | null {
  let best: PolicyRow | null = null;
  for (const row of rowsOf(policy, key)) {
    if (holds(row, context) && (best === null || takesOver(best, row))) best = row;
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
