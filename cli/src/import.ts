/**
 * `feedwright import FILE`: takes an exported ledger in. The whole file is looked through first: one that was cut short or
 * holds a line that is no entry is refused before anything of it is taken in.
 */
import { createReadStream, existsSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { issue } from '@feedwright/core/base/result';
import type { Head, Submitted } from '@feedwright/store/log';
import { isProblem, type LedgerLine, readLedgerLine } from '@feedwright/store/ndjson';
import type { SqliteLog } from '@feedwright/store/sqlite/log';
import { Refused, refuse } from './fail.ts';
import { progress, withLedger } from './ledger-file.ts';
import { plain, printJson, printLines } from './print.ts';

const BATCH = 1_000;

async function* linesOf(file: string): AsyncGenerator<readonly [number, LedgerLine]> {
  let number = 0;
  for await (const text of createInterface({
    input: createReadStream(file, 'utf8'),
    crlfDelay: Number.POSITIVE_INFINITY,
  })) {
    number += 1;
    if (text.trim() === '') continue;
    const line = readLedgerLine(text);
    if (isProblem(line)) throw new Refused(file, [issue([`line ${number}`], line.code)]);
    yield [number, line];
  }
}

/** Every line read once, nothing kept: how many entries the file says and has. */
async function lookThrough(file: string): Promise<readonly Head[]> {
  let entries = 0;
  let last: Extract<LedgerLine, { line: 'last' }> | null = null;
  let begun = false;
  for await (const [number, line] of linesOf(file)) {
    if (!begun && line.line !== 'first') refuse(file, 'ledger/no-first-line');
    begun = true;
    if (last !== null) throw new Refused(file, [issue([`line ${number}`], 'ledger/after-the-end')]);
    if (line.line === 'entry') entries += 1;
    if (line.line === 'last') last = line;
  }
  if (last === null) return refuse(file, 'ledger/cut-short', { entries });
  if (last.count !== entries) return refuse(file, 'ledger/count-differs', { says: last.count, has: entries });
  return last.heads;
}

async function takeIn(log: SqliteLog, file: string): Promise<{ added: number; known: number }> {
  const said = progress('entries taken in');
  let [added, known] = [0, 0];
  let batch: Submitted[] = [];
  const flush = async (): Promise<void> => {
    const doubled = (await log.append(batch)).filter((one) => one.duplicate).length;
    known += doubled;
    added += batch.length - doubled;
    batch = [];
    said(added + known);
  };
  for await (const [, line] of linesOf(file)) {
    if (line.line === 'entry' && batch.push(line.entry) === BATCH) await flush();
  }
  await flush();
  return { added, known };
}

/** The courses of the file whose chain came out otherwise: they had entries of their own before, in another order. */
const otherHeads = (log: SqliteLog, heads: readonly Head[]): readonly string[] =>
  heads.filter((one) => log.head(one.course)?.head !== one.head).map((one) => one.course);

export async function importLedger(
  file: string,
  options: { readonly data: string; readonly json?: boolean },
): Promise<void> {
  if (!existsSync(file)) refuse(file, 'file/not-found', { file });
  const heads = await lookThrough(file);
  await withLedger(options.data, { readOnly: false }, async (log) => {
    const { added, known } = await takeIn(log, file);
    const other = otherHeads(log, heads);
    if (options.json === true) return printJson({ added, known, otherHeads: other });
    printLines([
      plain(`${added} entries taken in, ${known} were there already.`),
      other.length === 0
        ? plain('Every chain ends in the head that the file names.')
        : plain(`${other.length} courses had other entries too, so their chains go on from those.`, 'note'),
    ]);
  });
}
