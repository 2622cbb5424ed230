/**
 * What does a policy document say? Our own JSON form of local policy, `feedwright-policy/1`: a list of rows, strict.
 * A facility writes down only the rows in which it differs; `local.ts` lays them over the default. Reading finds all
 * that is wrong at once; writing is the exact inverse. [PO7]
 */
import { z } from 'zod';
import { parseDay } from '../base/calendar.ts';
import { knownFields, toIssues, wrongKind } from '../base/document-issues.ts';
import type { Instant } from '../base/instant.ts';
import { type Bad, bad, type Issue, issue, ok, type Result, under } from '../base/result.ts';
import { parseInstant, showInstant, type Zone } from '../base/zone.ts';
import { POLICY_KEYS, type PolicyKey } from './keys.ts';
import type { Policy, PolicyRow } from './policy.ts';
import { readBand, writeBand } from './row-text.ts';
import { parseValue, valueText } from './value-text.ts';

export const POLICY_DOCUMENT = 'feedwright-policy/1';

/** One line of text: no control characters, which could end a printed line or steer a terminal. */
const text = (about: string, most = 200) =>
  z
    .string()
    .min(1)
    .max(most)
    .regex(/^\P{Cc}*$/u)
    .meta({ description: about });

const source = text('Where it comes from: a number in docs/sources.md (S19), or what the facility goes by');
const provenance = z
  .enum(['read', 'secondary', 'from-memory', 'common-practice', 'facility', 'derived'])
  .meta({ description: 'How sure we are that the source says so; facility: the facility’s own' });

const alternativeSchema = z
  .strictObject({
    value: text('What it says'),
    source,
    provenance,
    note: z
      .string()
      .max(500)
      .regex(/^\P{Cc}*$/u),
  })
  .meta({ description: 'What another body says: shown, never used' });

const rowSchema = z
  .strictObject({
    key: z
      .enum(Object.keys(POLICY_KEYS) as [PolicyKey, ...PolicyKey[]])
      .meta({ description: 'What is asked' }),
    value: z.union([z.string(), z.number(), z.boolean(), z.null()]).meta({
      description: 'With its unit: "8 h", "30 mL", "08:00", "yes"; null must be set by the facility',
    }),
    ageFrom: text('From this age: "18 years", "28 days"').nullish(),
    ageBelow: text('Below this age').nullish(),
    setting: z.enum(['hospital', 'residential-care', 'home']).nullish().meta({ description: 'Only there' }),
    source,
    provenance,
    setBy: text('Who set it'),
    setOn: text('The day on which it was set: 2026-11-25'),
    effectiveFrom: text('From when it holds: 2026-12-01T08:00:00+00:00; without it, always').nullish(),
    isDefault: z.literal(true).nullish().meta({ description: 'Comes with Feedwright' }),
    alternatives: z.array(alternativeSchema).max(50).nullish(),
  })
  .meta({ description: 'One value, for whom and where it holds, and who says so' });

const policySchema = z
  .strictObject({
    document: z.literal(POLICY_DOCUMENT).meta({ description: 'What this document is, and its version' }),
    name: text('Whose policy it is'),
    version: text('The facility’s own version of it'),
    rows: z.array(rowSchema).max(5000),
  })
  .meta({
    title: 'Feedwright local policy',
    description: 'The values that a facility sets, each with its source',
  });

export type PolicyDocument = z.input<typeof policySchema>;
type WrittenRow = z.infer<typeof rowSchema>;

const at = (field: string, result: Bad, key: PolicyKey): readonly Issue[] =>
  result.issues.map((one) => ({ ...one, path: [field, ...one.path], data: { key, ...one.data } }));

function readMoment(written: string | null | undefined): Result<Instant | null> {
  const moment = written === null || written === undefined ? null : parseInstant(written);
  return moment === null && typeof written === 'string'
    ? bad(issue([], 'time/not-an-instant', { text: written }))
    : ok(moment);
}

const readDay = (written: string): Result<string> =>
  parseDay(written) === null ? bad(issue([], 'time/not-a-day', { text: written })) : ok(written);

function readRow(row: WrittenRow): Result<PolicyRow> {
  const value = parseValue(row.key, row.value);
  const band = readBand({ ageFrom: row.ageFrom ?? undefined, ageBelow: row.ageBelow ?? undefined });
  const effectiveFrom = readMoment(row.effectiveFrom);
  const setOn = readDay(row.setOn);
  if (value.ok && band.ok && effectiveFrom.ok && setOn.ok) {
    const { key, setting, source, provenance, setBy, alternatives } = row;
    return ok({
      key,
      value: value.value,
      band: band.value,
      setting: setting ?? null,
      source,
      provenance,
      setBy,
      setOn: setOn.value,
      effectiveFrom: effectiveFrom.value,
      ...(row.isDefault === true ? { isDefault: true } : {}),
      alternatives: alternatives ?? [],
    });
  }
  return bad(
    ...(value.ok ? [] : at('value', value, row.key)),
    ...(band.ok ? [] : band.issues.map((one) => ({ ...one, data: { key: row.key, ...one.data } }))),
    ...(effectiveFrom.ok ? [] : at('effectiveFrom', effectiveFrom, row.key)),
    ...(setOn.ok ? [] : at('setOn', setOn, row.key)),
  );
}

/**
 * Reads a policy document that is already JSON.
 * @returns the policy exactly as written (nothing laid over anything, nothing judged), or everything that is wrong with
 * the document, each with its path and, inside a row, its key. Never throws on input.
 */
export function parsePolicy(json: unknown): Result<Policy> {
  const wrong = wrongKind(json, POLICY_DOCUMENT);
  if (wrong !== null) return bad(wrong);
  const read = policySchema.safeParse(json, { error: knownFields, reportInput: true });
  if (!read.success) return bad(...read.error.issues.flatMap(toIssues));
  const rows = read.data.rows.map(readRow);
  const issues = rows.flatMap((row, index) => (row.ok ? [] : under('rows', under(index, row)).issues));
  return issues.length > 0
    ? bad(...issues)
    : ok({
        name: read.data.name,
        version: read.data.version,
        rows: rows.flatMap((row) => (row.ok ? [row.value] : [])),
      });
}

function writeRow(row: PolicyRow): WrittenRow {
  return {
    key: row.key,
    value: row.value === null ? null : valueText(row.key, row.value),
    ...writeBand(row.band),
    ...(row.setting === null ? {} : { setting: row.setting }),
    source: row.source,
    provenance: row.provenance,
    setBy: row.setBy,
    setOn: row.setOn,
    ...(row.effectiveFrom === null ? {} : { effectiveFrom: showInstant(row.effectiveFrom, 'UTC' as Zone) }),
    ...(row.isDefault === true ? { isDefault: true } : {}),
    ...(row.alternatives.length === 0 ? {} : { alternatives: row.alternatives.map((one) => ({ ...one })) }),
  };
}

/** The document of a policy: reading it gives the same policy back. */
export const writePolicy = (policy: Policy): PolicyDocument => ({
  document: POLICY_DOCUMENT,
  name: policy.name,
  version: policy.version,
  rows: policy.rows.map(writeRow),
});

/** The JSON Schema (2020-12) of a policy document. */
export const policyJsonSchema = (): object => z.toJSONSchema(policySchema, { io: 'input' });
