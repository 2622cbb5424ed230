/**
 * How are entries kept on one disk, so that a pulled plug loses none that was acknowledged?
 * SQLite as the platform brings it, in WAL mode with synchronous FULL, written by one process only.
 */
import { DatabaseSync } from 'node:sqlite';
import { checkBatch } from '../batch.ts';
import { type Log, LogError, type Stored } from '../log.ts';
import { groupCommit } from './group-commit.ts';
import { lockFor } from './lock.ts';
import { epochOf, layOut, mustBeLog } from './schema.ts';
import { shelfOf } from './shelf.ts';
import { guarded, named } from './trouble.ts';

export type SqliteLog = Log & {
  /** The database itself, for backup and integrity checks. */
  readonly database: DatabaseSync;
  readonly file: string;
};

export type OpenOptions = {
  /** Names the history of a file that is made new. */
  readonly epoch: string;
  /** Opens for reading beside a running writer; appending is then refused. */
  readonly readOnly?: boolean;
};

/**
 * After the journal mode, on every opening: WAL alone would not wait for the disk at each commit. The journal is folded
 * into the file every 8 MB, so that a busy hour is not spent folding.
 */
const DURABLE = `PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA busy_timeout = 2000;
  PRAGMA wal_autocheckpoint = 2000`;

function openDatabase(file: string, { epoch, readOnly = false }: OpenOptions): DatabaseSync {
  const database = new DatabaseSync(file, { readOnly });
  try {
    if (readOnly) mustBeLog(database, file);
    else {
      database.exec(DURABLE);
      layOut(database, file, epoch);
    }
    return database;
  } catch (problem) {
    database.close();
    throw problem;
  }
}

/** Opens the log in a file, making it where there is none. Throws `LogError`: in use, read-only, corrupt, newer version. */
export function sqliteLog(file: string, options: OpenOptions): SqliteLog {
  const unlock = options.readOnly === true ? () => {} : guarded(file, () => lockFor(file));
  try {
    return assemble(openDatabase(file, options), file, options, unlock);
  } catch (problem) {
    unlock();
    throw named(file, problem);
  }
}

function assemble(database: DatabaseSync, file: string, options: OpenOptions, unlock: () => void): SqliteLog {
  const shelf = shelfOf(database, options.readOnly !== true);
  const listeners = new Set<(entries: readonly Stored[]) => void>();
  const commits = groupCommit({
    database,
    shelf,
    durable: (entries) => {
      for (const listener of listeners) listener(entries);
    },
    named: (problem) => named(file, problem),
  });
  let open = true;

  return {
    database,
    file,
    epoch: epochOf(database),
    append: async (batch) => {
      if (!open) throw new LogError('log/closed');
      if (options.readOnly === true) throw new LogError('log/read-only', { file });
      checkBatch(batch);
      return commits.append(batch);
    },
    course: (course, from) => guarded(file, () => shelf.ofCourse(course, from)),
    ward: (ward, from) => guarded(file, () => shelf.ofWard(ward, from)),
    all: (from) => guarded(file, () => shelf.ofAll(from)),
    heads: () => guarded(file, () => shelf.courses().map(shelf.head)),
    head: (course) => {
      const head = guarded(file, () => shelf.head(course));
      return head.count === 0 ? null : head;
    },
    follow: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    saveCheckpoint: (checkpoint) => guarded(file, () => shelf.putCheckpoint(checkpoint)),
    checkpoint: (course) => guarded(file, () => shelf.checkpoint(course)),
    close: () => {
      if (!open) return;
      commits.flush();
      open = false;
      listeners.clear();
      database.close();
      unlock();
    },
  };
}
