/**
 * Why does this value hold, and what else is said? All that there is to know of one key, as plain data: the row that
 * governs, every other row with its people and times, what other bodies say, and what is behind each source's number.
 */
import type { Instant } from '../base/instant.ts';
import type { Provenance } from '../base/working.ts';
import { type Key, type KeyKind, POLICY_KEYS, type PolicyKey } from './keys.ts';
import {
  governingRow,
  type Policy,
  type PolicyContext,
  type PolicyRow,
  rowsOf,
  type Setting,
} from './policy.ts';
import { writeBand } from './row-text.ts';
import { citationsOf } from './sources.ts';
import { valueText } from './value-text.ts';

export type ExplainedSource = { readonly id: string; readonly citation: string | null };

export type ExplainedAlternative = {
  readonly value: string;
  readonly sources: readonly ExplainedSource[];
  readonly provenance: Provenance;
  readonly note: string;
};

export type ExplainedRow = {
  readonly governs: boolean;
  /** As a document writes it; null must be set by the facility. */
  readonly value: string | null;
  readonly ageFrom: string | null;
  readonly ageBelow: string | null;
  readonly setting: Setting | null;
  readonly effectiveFrom: Instant | null;
  readonly isDefault: boolean;
  readonly sources: readonly ExplainedSource[];
  readonly provenance: Provenance;
  readonly setBy: string;
  readonly setOn: string;
  readonly alternatives: readonly ExplainedAlternative[];
};

export type Explained = {
  readonly key: PolicyKey;
  readonly kind: KeyKind;
  readonly unit: string;
  readonly choices: readonly string[] | null;
  /** Null where no row holds for this patient: then nothing is assumed. */
  readonly governing: ExplainedRow | null;
  /** Every row under the key, the governing one among them, in the order of the document. */
  readonly rows: readonly ExplainedRow[];
};

function explainRow(row: PolicyRow, governing: PolicyRow | null): ExplainedRow {
  const { ageFrom, ageBelow } = writeBand(row.band);
  return {
    governs: row === governing,
    value: row.value === null ? null : valueText(row.key, row.value),
    ageFrom: ageFrom ?? null,
    ageBelow: ageBelow ?? null,
    setting: row.setting,
    effectiveFrom: row.effectiveFrom,
    isDefault: row.isDefault === true,
    sources: citationsOf(row.source),
    provenance: row.provenance,
    setBy: row.setBy,
    setOn: row.setOn,
    alternatives: row.alternatives.map(({ source, ...one }) => ({ ...one, sources: citationsOf(source) })),
  };
}

/** All that a policy says under a key, and which of it governs in a context. [PO20] */
export function explain(policy: Policy, key: PolicyKey, context: PolicyContext): Explained {
  const { kind, unit, choices }: Key = POLICY_KEYS[key];
  const governing = governingRow(policy, key, context);
  return {
    key,
    kind,
    unit,
    choices: choices ?? null,
    governing: governing === null ? null : explainRow(governing, governing),
    rows: rowsOf(policy, key).map((row) => explainRow(row, governing)),
  };
}
