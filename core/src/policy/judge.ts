/**
 * Could anybody follow this policy? What is impossible is refused by name of the row: a value out of all bounds, one
 * question answered twice for the same patient, rows that cannot hold together. What is merely unusual is the facility's.
 */
import { compare, type Fraction, fraction } from '../base/fraction.ts';
import { type Instant, instant } from '../base/instant.ts';
import { type Issue, issue } from '../base/result.ts';
import { boundsOf } from './bounds.ts';
import { CONTRADICTIONS, type Contradiction } from './contradictions.ts';
import { type Key, POLICY_KEYS, type PolicyKey } from './keys.ts';
import {
  type AgeBand,
  governingRow,
  type Policy,
  type PolicyContext,
  type PolicyRow,
  rowsOf,
  type Setting,
} from './policy.ts';
import { writeBand } from './row-text.ts';
import { valueText } from './value-text.ts';

const SETTINGS: readonly Setting[] = ['hospital', 'residential-care', 'home'];
/** The first moment there is: before any row takes effect. */
const BEGINNING: Instant = instant(-8.64e15);

/** Names a row by its place, its key, for whom it is and what it says. */
function about(policy: Policy, row: PolicyRow, rule: string, code: string, data: Issue['data'] = {}): Issue {
  return issue(['rows', policy.rows.indexOf(row), 'value'], code, {
    rule,
    key: row.key,
    value: row.value !== null && isOfKind(row) ? valueText(row.key, row.value) : row.value,
    ...writeBand(row.band),
    ...(row.setting === null ? {} : { setting: row.setting }),
    ...data,
  });
}

const isFraction = (value: unknown): boolean => {
  const { n, d } = Object(value) as Partial<Fraction>;
  return Number.isSafeInteger(n) && Number.isSafeInteger(d) && d !== 0;
};

function isOfKind(row: PolicyRow): boolean {
  const key: Key = POLICY_KEYS[row.key];
  if (key.kind === 'switch') return typeof row.value === 'boolean';
  if (key.kind === 'choice') return key.choices?.some((choice) => choice === row.value) === true;
  return key.kind === 'fraction' ? isFraction(row.value) : Number.isSafeInteger(row.value);
}

const sizeOf = (value: PolicyRow['value']): Fraction =>
  typeof value === 'object' && value !== null ? value : fraction(Number(value));

/** [PO5], and the bounds of [PO10], [PO11] and [PO14]. */
function valueIssues(policy: Policy, row: PolicyRow): readonly Issue[] {
  if (row.value === null) return [];
  const { kind, unit } = POLICY_KEYS[row.key];
  if (!isOfKind(row)) return [about(policy, row, 'PO5', 'policy/kind', { kind, unit })];
  const bounds = boundsOf(row.key);
  if (bounds === null) return [];
  const under = compare(sizeOf(row.value), bounds.least);
  const possible =
    (under > 0 || (under === 0 && bounds.orLeast)) && compare(sizeOf(row.value), bounds.most) <= 0;
  const [least, most] = [bounds.least, bounds.most].map((bound) => valueText(row.key, inKind(row, bound)));
  return possible
    ? []
    : [about(policy, row, bounds.rule, 'policy/out-of-bounds', { least, orLeast: bounds.orLeast, most })];
}

const inKind = (row: PolicyRow, bound: Fraction): NonNullable<PolicyRow['value']> =>
  POLICY_KEYS[row.key].kind === 'fraction' ? bound : bound.n;

const endOf = (band: AgeBand): number => band.belowDays ?? Number.POSITIVE_INFINITY;

const bandsMeet = (a: AgeBand | null, b: AgeBand | null): boolean =>
  a === null || b === null ? a === b : a.fromDays < endOf(b) && b.fromDays < endOf(a);

const sameQuestion = (a: PolicyRow, b: PolicyRow): boolean =>
  a.setting === b.setting &&
  a.effectiveFrom === b.effectiveFrom &&
  a.isDefault === b.isDefault &&
  bandsMeet(a.band, b.band);

/** [PO8] One question, for one patient at one time, has one answer. */
function bandIssues(policy: Policy, row: PolicyRow, earlierRows: readonly PolicyRow[]): readonly Issue[] {
  if (row.band !== null && (row.band.fromDays < 0 || row.band.fromDays >= endOf(row.band))) {
    return [about(policy, row, 'PO8', 'policy/band-empty')];
  }
  const twin = earlierRows.find((other) => sameQuestion(other, row));
  if (twin === undefined) return [];
  const same = twin.band?.fromDays === row.band?.fromDays && twin.band?.belowDays === row.band?.belowDays;
  return [
    about(policy, row, 'PO8', same ? 'policy/set-twice' : 'policy/bands-overlap', {
      other: { setBy: twin.setBy, ...writeBand(twin.band) },
    }),
  ];
}

/** Everybody, everywhere and always, as far as these keys tell them apart: one of each. */
function situations(policy: Policy, keys: readonly PolicyKey[]): readonly PolicyContext[] {
  const rows = keys.flatMap((key) => rowsOf(policy, key));
  const ages = new Set([null, 0, ...rows.flatMap(({ band }) => [band?.fromDays ?? 0, band?.belowDays ?? 0])]);
  const moments = new Set([BEGINNING, ...rows.map((row) => row.effectiveFrom ?? BEGINNING)]);
  return [...moments].flatMap((at) =>
    SETTINGS.flatMap((setting) => [...ages].map((ageDays) => ({ ageDays, setting, at }))),
  );
}

/** [PO12] to [PO19]: each pair of rows that cannot hold together is named once, by the later of them. */
function contradictionIssues(policy: Policy, contradiction: Contradiction): readonly Issue[] {
  const found = new Map<string, Issue>();
  for (const context of situations(policy, contradiction.keys)) {
    const rows = contradiction.keys.map((key) => governingRow(policy, key, context));
    if (!rows.every((row): row is PolicyRow => row !== null && row.value !== null && isOfKind(row))) continue;
    if (contradiction.possible(rows.map((row) => sizeOf(row.value)))) continue;
    const places = rows.map((row) => policy.rows.indexOf(row));
    const named = policy.rows[Math.max(...places)]!;
    const against = rows
      .filter((row) => row !== named)
      .map((row) => ({ key: row.key, value: row.value === null ? null : valueText(row.key, row.value) }));
    found.set(
      places.join(),
      about(policy, named, contradiction.rule, contradiction.code, { keys: contradiction.keys, against }),
    );
  }
  return [...found.values()];
}

/**
 * All that is impossible in a policy, as issues that name the row: its place, key, value and for whom it is, with the
 * rule of RULES.md in `data.rule`. None: the policy can be followed.
 */
export function judgePolicy(policy: Policy): readonly Issue[] {
  const ownIssues = policy.rows.flatMap((row) => {
    const sameKey = rowsOf(policy, row.key);
    return [...valueIssues(policy, row), ...bandIssues(policy, row, sameKey.slice(0, sameKey.indexOf(row)))];
  });
  return [
    ...ownIssues,
    ...CONTRADICTIONS.flatMap((contradiction) => contradictionIssues(policy, contradiction)),
  ];
}
