/** `feedwright policy [KEY]`: every row of local policy with its value, source and who set it; or one row explained. */

import { instant } from '@feedwright/core/base/instant';
import { daysOfYears } from '@feedwright/core/policy/age';
import { type Explained, type ExplainedRow, explain } from '@feedwright/core/policy/explain';
import { POLICY_KEYS, type PolicyKey, policyKey } from '@feedwright/core/policy/keys';
import type { Policy, PolicyContext } from '@feedwright/core/policy/policy';
import { ENGLISH } from '@feedwright/core/screen/english/english';
import type { Line } from '@feedwright/core/screen/line';
import { policyFrom } from './facility.ts';
import { refuse } from './fail.ts';
import { columns, plain, printJson, printLines } from './print.ts';

type PolicyOptions = { readonly policy?: string; readonly json?: boolean };

/** What is shown first: what holds today for an adult in hospital. Every other row is listed when a key is explained. */
const context = (): PolicyContext => ({
  ageDays: daysOfYears(18),
  setting: 'hospital',
  at: instant(Date.now()),
});

const NOT_SET = 'not set: the facility must say';

const listRow = (one: Explained): readonly string[] => [
  one.key,
  one.governing === null ? 'no row' : (one.governing.value ?? NOT_SET),
  one.governing === null ? '' : one.governing.sources.map((source) => source.id).join(' '),
  one.governing === null ? '' : (ENGLISH.provenance[one.governing.provenance] ?? ''),
];

const people = (row: ExplainedRow): string =>
  [
    row.ageFrom === null ? null : `from ${row.ageFrom}`,
    row.ageBelow === null ? null : `below ${row.ageBelow}`,
    row.setting,
  ]
    .filter((part) => part !== null)
    .join(', ') || 'everybody';

function rowLines(row: ExplainedRow): readonly Line[] {
  const cited = (sources: ExplainedRow['sources']): string =>
    sources.map(({ id, citation }) => (citation === null ? id : `${id} ${citation}`)).join('; ');
  return [
    plain(
      `  ${row.governs ? '→' : ' '} ${row.value ?? NOT_SET}  (${people(row)})`,
      row.governs ? 'heading' : 'body',
    ),
    plain(`      ${ENGLISH.provenance[row.provenance]}: ${cited(row.sources)}`, 'quiet'),
    plain(`      set by ${row.setBy} on ${row.setOn}`, 'quiet'),
    ...row.alternatives.map((other) =>
      plain(
        `      otherwise ${other.value}: ${other.note} (${cited(other.sources)}, ${ENGLISH.provenance[other.provenance]})`,
        'quiet',
      ),
    ),
  ];
}

const explained = (one: Explained): readonly Line[] => [
  plain(
    `${one.key}  [${one.unit}]${one.choices === null ? '' : `  one of ${one.choices.join(', ')}`}`,
    'title',
  ),
  plain('→ marks what holds today for an adult in hospital.', 'quiet'),
  ...one.rows.flatMap(rowLines),
];

function keyNamed(name: string): PolicyKey {
  const known = Object.keys(POLICY_KEYS);
  const family = known.filter((key) => key.startsWith(name.split('.')[0] ?? ''));
  return (
    policyKey(name) ??
    refuse('policy', 'argument/name', { text: name, known: family.length > 0 ? family : known })
  );
}

const every = (policy: Policy): readonly Explained[] =>
  (Object.keys(POLICY_KEYS) as PolicyKey[]).map((key) => explain(policy, key, context()));

export function policy(name: string | undefined, options: PolicyOptions): void {
  const holds = policyFrom(options.policy);
  if (name !== undefined) {
    const one = explain(holds, keyNamed(name), context());
    if (options.json === true) printJson(one);
    else printLines(explained(one));
    return;
  }
  const rows = every(holds);
  if (options.json === true) printJson({ name: holds.name, version: holds.version, rows });
  else {
    printLines([
      plain(`${holds.name}, version ${holds.version}: what holds today for an adult in hospital`, 'title'),
      ...columns(rows.map(listRow)).map((text) => plain(text)),
      plain(
        'feedwright policy KEY explains one row: who set it, from what, and what other bodies say.',
        'quiet',
      ),
    ]);
  }
}
