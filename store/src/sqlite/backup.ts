/**
 * How is a log put in a second place, and taken back into use from there?
 * A backup is made while entries go on coming, checked, made durable and only then given its name. A restored log is a
 * new epoch, so that nobody takes the positions of the one for those of the other.
 */
import { closeSync, copyFileSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { backup as copyPages, DatabaseSync } from 'node:sqlite';
import { LogError } from '../log.ts';
import type { SqliteLog } from './log.ts';
import { checkSound, checkSoundAside } from './sound.ts';
import { guarded, named } from './trouble.ts';

/** Between two steps the progress is said. */
const PAGES_AT_A_TIME = 2_000;

export type BackupProgress = (pagesLeft: number, pagesInAll: number) => void;

function makeDurable(path: string): void {
  const handle = openSync(path, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** Runs with a database of its own and always lets go of it. */
function withDatabase<T>(file: string, readOnly: boolean, work: (database: DatabaseSync) => T): T {
  return guarded(file, () => {
    const database = new DatabaseSync(file, { readOnly });
    try {
      return work(database);
    } finally {
      database.close();
    }
  });
}

/**
 * Copies what the log holds at this moment to a draft. A connection of its own reads from one snapshot, so appends go on
 * beside it, neither waiting for the copy nor making it begin again.
 */
async function copySnapshot(file: string, draft: string, progress: BackupProgress): Promise<void> {
  const source = new DatabaseSync(file, { readOnly: true });
  try {
    source.exec('BEGIN');
    source.prepare('SELECT max(position) FROM entry').get();
    await copyPages(source, draft, {
      rate: PAGES_AT_A_TIME,
      progress: ({ remainingPages, totalPages }) => progress(remainingPages, totalPages),
    });
  } finally {
    source.close();
  }
}

/** Copies a log to a new file, also while it is in use. Refuses to write over one. @returns how many entries the copy holds. */
export async function backupLog(
  log: SqliteLog,
  to: string,
  progress: BackupProgress = () => {},
): Promise<number> {
  if (existsSync(to))
    throw new LogError('log/in-use', { file: to, why: 'a file of that name is there already' });
  const draft = `${to}.draft`;
  try {
    await copySnapshot(log.file, draft, progress);
    // A copy that is to be one whole file: its own journal folded in before it is checked.
    withDatabase(draft, false, (database) => database.exec('PRAGMA journal_mode = DELETE'));
    const entries = await checkSoundAside(draft);
    makeDurable(draft);
    renameSync(draft, to);
    makeDurable(dirname(to));
    return entries;
  } catch (problem) {
    rmSync(draft, { force: true });
    throw named(to, problem);
  }
}

/** Makes a log out of a backup, as a new epoch. Refuses to write over a log. @returns how many entries it holds. */
export function restoreLog(from: string, to: string, epoch: string): number {
  if (existsSync(to)) throw new LogError('log/in-use', { file: to, why: 'a log is there already' });
  const entries = checkSound(from);
  const draft = `${to}.draft`;
  guarded(to, () => copyFileSync(from, draft));
  withDatabase(draft, false, (database) => {
    const old = String(database.prepare("SELECT value FROM about WHERE name = 'epoch'").get()?.value);
    database.prepare("UPDATE about SET value = ? WHERE name = 'epoch'").run(epoch);
    database.prepare("INSERT OR REPLACE INTO about VALUES ('restored-from', ?)").run(`${old}/${entries}`);
  });
  makeDurable(draft);
  renameSync(draft, to);
  makeDurable(dirname(to));
  return entries;
}
