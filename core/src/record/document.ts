/**
 * What does one line of a record say? The JSON form of an entry: strict, with the unit of each number in the name of its
 * field. Whether an entry is accepted depends on nothing but itself: on no other entry and on no clock. A kind or version
 * that this release does not know is kept as it came; a known kind that will not do is told with all that is wrong.
 */
import { z } from 'zod';
import { knownFields, toIssues } from '../base/document-issues.ts';
import { parseJson } from '../base/json.ts';
import { bad, type Issue, issue, ok, type Result, under } from '../base/result.ts';
import { type AnyEntry, isKnown } from './entry.ts';
import { entryOf, entryQuickly, envelopeSchema, envelopeShape, writeEnvelope } from './envelope.ts';
import { fromDescription, readQuickly, writeFact } from './kinds/kind.ts';
import { KINDS, kindNamed } from './kinds/table.ts';

/** Far beyond the longest entry, which holds one order. */
export const MOST_ENTRY_TEXT = 1_000_000;

type Written = Readonly<Record<string, unknown>>;
/** An entry as its document has it. */
export type EntryDocument = Written & { readonly fact: Written };

const isObject = (json: unknown): json is Written =>
  typeof json === 'object' && json !== null && !Array.isArray(json);

const KIND_SHAPE = /^[a-z]+(?:-[a-z]+)*\/[1-9]\d{0,3}$/;

/** [RC12] What an entry cannot say of itself: that it names itself, or that its fact is two things at once. */
export function contradictions(entry: AnyEntry): readonly Issue[] {
  const { id, corrects } = entry;
  const namesItself = (...path: readonly string[]) => issue(path, 'entry/names-itself', { id });
  const found = corrects === id ? [namesItself('corrects')] : [];
  if (!isKnown(entry)) return found;
  const { fact } = entry;
  if (fact.kind === 'entered-in-error/1' && fact.target === id) found.push(namesItself('fact', 'target'));
  const own = KINDS[fact.kind].contradicts(fact);
  return own === null ? found : [...found, ...under('fact', bad(own)).issues];
}

/** An entry of a known kind that is plainly right; null where the descriptions have to be asked. */
function parseQuickly(json: Written): AnyEntry | null {
  const { fact: written } = json;
  if (!isObject(written)) return null;
  const kind = kindNamed(written.kind);
  const fact = kind === null ? null : readQuickly(kind, written);
  return fact === null ? null : entryQuickly(json, fact);
}

function parseFact(json: unknown): Result<AnyEntry['fact']> {
  if (!isObject(json)) return bad(issue([], 'entry/no-fact'));
  const { kind } = json;
  if (typeof kind !== 'string' || !KIND_SHAPE.test(kind)) {
    return bad(issue(['kind'], 'entry/kind', { found: typeof kind === 'string' ? kind.slice(0, 80) : null }));
  }
  const known = kindNamed(kind);
  if (known === null) return ok({ kind, raw: json });
  const read = known.schema.safeParse(json, { error: knownFields, reportInput: true });
  return read.success ? ok(fromDescription(known, read.data)) : bad(...read.error.issues.flatMap(toIssues));
}

function parseThoroughly(json: Written): Result<AnyEntry> {
  const envelope = envelopeSchema.safeParse(json, { error: knownFields, reportInput: true });
  const fact = parseFact(json.fact);
  if (envelope.success && fact.ok) return ok(entryOf(envelope.data as never, fact.value));
  return bad(
    ...(envelope.success ? [] : envelope.error.issues.flatMap(toIssues)),
    ...(fact.ok ? [] : under('fact', fact).issues),
  );
}

/**
 * Reads an entry that is already JSON.
 * @returns the entry, also one of a kind that is not known here; or everything that is wrong with it. Never throws on input.
 */
export function parseEntry(json: unknown): Result<AnyEntry> {
  if (!isObject(json)) return bad(issue([], 'entry/not-an-object'));
  const quick = parseQuickly(json);
  const read = quick === null ? parseThoroughly(json) : ok(quick);
  if (!read.ok) return read;
  const wrong = contradictions(read.value);
  return wrong.length === 0 ? read : bad(...wrong);
}

/** Reads the text of an entry: as `parseEntry`, and `json/…` where it is no JSON or says one thing twice. */
export function parseEntryText(text: string): Result<AnyEntry> {
  const json = parseJson(text, MOST_ENTRY_TEXT);
  return json.ok ? parseEntry(json.value) : json;
}

/**
 * Reads the text of an entry that was accepted before, out of one's own log: several times as fast, because a field that
 * stands twice in it was refused then.
 */
export function parseKeptEntry(text: string): Result<AnyEntry> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return parseEntryText(text);
  }
  return parseEntry(json);
}

/** Writes an entry so that `parseEntry` gives back the same entry. Instants are written in UTC. */
export function writeEntry(entry: AnyEntry): EntryDocument {
  const fact = isKnown(entry) ? writeFact(KINDS[entry.fact.kind], entry.fact) : entry.fact.raw;
  return { ...writeEnvelope(entry), fact: fact as Written };
}

export const writeEntryText = (entry: AnyEntry): string => JSON.stringify(writeEntry(entry));

/** The JSON Schema (2020-12) of an entry of any kind known here, made from the descriptions that read it. */
export function entryJsonSchema(): Readonly<Record<string, unknown>> {
  const [first, ...others] = Object.values(KINDS).map(({ schema }) => schema);
  const fact = z.discriminatedUnion('kind', [first!, ...others]).meta({ description: 'What happened' });
  const entry = z
    .strictObject({ ...envelopeShape, fact })
    .meta({ title: 'Feedwright entry', description: 'One line of the record of feeding one person' });
  return z.toJSONSchema(entry, { io: 'input' });
}
