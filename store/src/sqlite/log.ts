/**
 * How are entries kept on one disk, so that a pulled plug loses none that was acknowledged?
 * SQLite as the platform brings it, in WAL mode with synchronous FULL, written by one process only.
 */
import type { DatabaseSync } from 'node:sqlite';
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
 * After the journal mode, on every opening: WAL alone would not wait for the disk at each commit. The WAL is folded into
 * the file every 32 MB, so that a busy hour is not spent folding.
 */
const DURABLE = `PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA busy_timeout = 2000;
  PRAGMA wal_autocheckpoint = 8000`;
