/**
 * How fast is a record read? Each entry of a large ledger from its kept text, against the platform's own reading of the same
 * JSON, which checks nothing; and an entry put into a ledger of 10,000.
 */
import { parseKeptEntry, writeEntryText } from '@feedwright/core/record/document';
import type { AnyEntry } from '@feedwright/core/record/entry';
import { append, ledgerOf } from '@feedwright/core/record/ledger';
import { largeLedger } from '../demo/large-ledger.ts';
import { medians, type Report } from './measure.ts';

const ENTRIES = 10_000;
const ROUNDS = 30;
const APPENDED = 100;

function read(texts: readonly string[]): readonly AnyEntry[] {
  return texts.map((text) => {
    const entry = parseKeptEntry(text);
    if (!entry.ok) throw new Error(JSON.stringify(entry.issues));
    return entry.value;
  });
}

export default async function bench(report: Report): Promise<void> {
  const [course] = [...largeLedger({ courses: 1, entriesPerCourse: ENTRIES + APPENDED, seed: 6 })];
  const texts = (course?.entries ?? []).map(writeEntryText);
  const entries = read(texts);
  const ledger = ledgerOf(entries.slice(0, ENTRIES));
  const [reading = Number.NaN, parsing = Number.NaN, appending = Number.NaN] = await medians(
    ROUNDS,
    () => read(texts),
    () => texts.map((text) => JSON.parse(text)),
    () => entries.slice(ENTRIES).reduce((grown, entry) => append(grown, entry).ledger, ledger),
  );
  const against = 'reading an entry against JSON.parse alone';
  report({ what: against, measured: reading / parsing, limit: 6, unit: '×' });
  report({ what: 'an entry read', measured: (reading * 1_000) / texts.length, limit: 10, unit: 'µs' });
  const placed = (appending * 1_000) / APPENDED;
  report({ what: 'an entry put into a ledger of 10,000', measured: placed, limit: 40, unit: 'µs' });
}
