/**
 * What holds at this facility? Its own rows laid over the default: a row of its own goes before any default row that
 * would hold as well, however closely that fits, and the default still answers where the facility says nothing.
 */
import { bad, type Issue, issue, ok, type Result } from '../base/result.ts';
import { DEFAULT_POLICY } from './defaults.ts';
import { parsePolicy, writePolicy } from './document.ts';
import { judgePolicy } from './judge.ts';
import type { Policy, PolicyRow } from './policy.ts';

/** The facility's rows over the base's. Named by the facility; the version names both. [PO2] */
export const layOver = (base: Policy, own: Policy): Policy => ({
  name: own.name,
  version: `${base.version}+${own.version}`,
  rows: [...base.rows, ...own.rows],
});

const written = (row: PolicyRow): string =>
  JSON.stringify(writePolicy({ name: '', version: '', rows: [row] }));

/** A default row that was copied along says nothing of its own; one that was changed must be taken over by name. [PO9] */
function changedDefaults(base: Policy, own: Policy): readonly Issue[] {
  const known = new Set(base.rows.map(written));
  return own.rows.flatMap((row, index) =>
    row.isDefault === true && !known.has(written(row))
      ? [issue(['rows', index, 'isDefault'], 'policy/default-changed', { rule: 'PO9', key: row.key })]
      : [],
  );
}

/**
 * Reads a facility's policy document and lays it over the base.
 * @returns the policy that holds, or all that is wrong with it: unreadable rows first, else impossible ones, named by
 * their place in the facility's document.
 */
export function readLocalPolicy(json: unknown, base: Policy = DEFAULT_POLICY): Result<Policy> {
  const own = parsePolicy(json);
  if (!own.ok) return own;
  const changed = changedDefaults(base, own.value);
  if (changed.length > 0) return bad(...changed);
  const places = own.value.rows.flatMap((row, index) => (row.isDefault === true ? [] : [index]));
  const rows = places.map((index) => own.value.rows[index]!);
  const merged = layOver(base, { ...own.value, rows });
  const issues = judgePolicy(merged).map((one) => atOwnPlace(one, places, base.rows.length));
  return issues.length > 0 ? bad(...issues) : ok(merged);
}

function atOwnPlace(one: Issue, places: readonly number[], offset: number): Issue {
  const [, index, ...rest] = one.path;
  const place = places[Number(index) - offset];
  return place === undefined ? one : { ...one, path: ['rows', place, ...rest] };
}
