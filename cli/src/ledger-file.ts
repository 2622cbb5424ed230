/** Where is the ledger? In one file of the data folder. What goes wrong with it is said like any other bad input. */
import { randomUUID } from 'node:crypto';
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { issue } from '@feedwright/core/base/result';
import { LogError } from '@feedwright/store/log';
import { type SqliteLog, sqliteLog } from '@feedwright/store/sqlite/log';
import { Refused, refuse } from './fail.ts';

export const ledgerFile = (folder: string): string => join(folder, 'ledger.db');

/** A disk's or a file's failure, said by file and remedy. */
export async function saying<T>(from: string, work: () => T | Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (problem) {
    if (problem instanceof LogError) throw new Refused(from, [issue([], problem.code, problem.data)]);
    throw problem;
  }
}

type Opening = { readonly readOnly: boolean };

/** Opens the ledger of a data folder, does the work, and closes it. Reading needs one that is there; writing makes one. */
export async function withLedger<T>(
  folder: string,
  { readOnly }: Opening,
  work: (log: SqliteLog) => T | Promise<T>,
): Promise<T> {
  const file = ledgerFile(folder);
  if (readOnly && !existsSync(file)) return refuse(folder, 'ledger/none-here', { file });
  return saying(file, async () => {
    mkdirSync(folder, { recursive: true });
    const log = sqliteLog(file, { epoch: randomUUID(), readOnly });
    try {
      return await work(log);
    } finally {
      log.close();
    }
  });
}

/** A count that goes up while something long runs; only for somebody who watches. */
export function progress(what: string): (done: number) => void {
  if (process.stderr.isTTY !== true) return () => {};
  return (done) => void process.stderr.write(`\r${what}: ${done.toLocaleString('en')}   `);
}
