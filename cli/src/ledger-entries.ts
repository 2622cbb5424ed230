/**
 * Which entries are in this file? An exported ledger, or plain lines of which each is one entry. Every line is read; the
 * ones that are no entries are all named by their line, and then nothing of the file is used. What a newer release wrote
 * is kept and counted.
 */
import { createReadStream, existsSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { type Issue, issue } from '@feedwright/core/base/result';
import { parseEntryText } from '@feedwright/core/record/document';
import type { AnyEntry } from '@feedwright/core/record/entry';
import { isProblem, type LedgerLine, type LineProblem, readLedgerLine } from '@feedwright/store/ndjson';
import { Refused, refuse } from './fail.ts';
import { progress } from './ledger-file.ts';

const SAID_EVERY = 10_000;

type Sofar = {
  readonly entries: AnyEntry[];
  readonly issues: Issue[];
  /** Whether the first line says that this is an exported ledger, which has a last line. */
  exported: boolean;
  last: Extract<LedgerLine, { readonly line: 'last' }> | null;
};

function takeEntry(text: string, number: number, { entries, issues }: Sofar): void {
  const read = parseEntryText(text);
  if (read.ok) entries.push(read.value);
  else issues.push(...read.issues.map((one) => ({ ...one, path: [`line ${number}`, ...one.path] })));
}

/** A line that is none of an exported ledger's is an entry by itself, or is told as one. */
function takeLine(text: string, number: number, sofar: Sofar): void {
  const line: LedgerLine | LineProblem = readLedgerLine(text);
  if (isProblem(line)) {
    if (sofar.exported || line.code === 'ledger/newer-version')
      sofar.issues.push(issue([`line ${number}`], line.code));
    else takeEntry(text, number, sofar);
    return;
  }
  if (sofar.last !== null) sofar.issues.push(issue([`line ${number}`], 'ledger/after-the-end'));
  if (line.line === 'first') sofar.exported = true;
  if (line.line === 'last') sofar.last = line;
  if (line.line === 'entry') takeEntry(line.entry.text, number, sofar);
}

/** An exported ledger names how many entries it has, so that one that was cut short is noticed. */
function checkWhole({ exported, last, entries }: Sofar, file: string): void {
  if (!exported) return;
  if (last === null) refuse(file, 'ledger/cut-short', { entries: entries.length });
  else if (last.count !== entries.length)
    refuse(file, 'ledger/count-differs', { says: last.count, has: entries.length });
}

/** The entries in the order of the file, or a refusal that names every line that will not do. */
export async function entriesIn(file: string): Promise<readonly AnyEntry[]> {
  if (file !== '-' && !existsSync(file)) refuse(file, 'file/not-found', { file });
  const said = progress('entries read');
  const sofar: Sofar = { entries: [], issues: [], exported: false, last: null };
  const input = file === '-' ? process.stdin : createReadStream(file, 'utf8');
  let number = 0;
  for await (const text of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })) {
    number += 1;
    if (text.trim() !== '') takeLine(number === 1 ? text.replace(/^\uFEFF/, '') : text, number, sofar);
    if (number % SAID_EVERY === 0) said(number);
  }
  if (sofar.issues.length > 0) throw new Refused(file, sofar.issues);
  checkWhole(sofar, file);
  if (sofar.entries.length === 0) refuse(file, 'ledger/empty');
  return sofar.entries;
}
