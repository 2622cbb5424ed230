/**
 * How is the file laid out, and how does a file of an older release become one of this release?
 * STRICT tables; entries can be added but neither changed nor removed, by trigger. A newer file is refused, never touched.
 */
import type { DatabaseSync } from 'node:sqlite';
import { LogError } from '../log.ts';

/** One step per release that changed the layout; a step is never edited once released. */
const STEPS: readonly string[] = [
  `
  CREATE TABLE about (name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT;
  CREATE TABLE entry (
    position INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE,
    course TEXT NOT NULL,
    ward TEXT NOT NULL,
    text TEXT NOT NULL,
    head BLOB NOT NULL CHECK (length(head) = 32)
  ) STRICT;
  CREATE INDEX entry_by_course ON entry (course, position);
  CREATE INDEX entry_by_ward ON entry (ward, position);
  CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
    BEGIN SELECT RAISE (ABORT, 'an entry is never changed'); END;
  CREATE TRIGGER entry_is_never_removed BEFORE DELETE ON entry
    BEGIN SELECT RAISE (ABORT, 'an entry is never removed'); END;
  CREATE TRIGGER entry_is_only_added BEFORE INSERT ON entry
    WHEN NEW.position <> (SELECT coalesce(max(position), 0) + 1 FROM entry)
      OR EXISTS (SELECT 1 FROM entry WHERE id = NEW.id)
    BEGIN SELECT RAISE (ABORT, 'an entry is only added after the last one'); END;
  CREATE TABLE checkpoint (
    course TEXT PRIMARY KEY,
    count INTEGER NOT NULL,
    position INTEGER NOT NULL,
    version TEXT NOT NULL,
    text TEXT NOT NULL
  ) STRICT;
  `,
];

export const LAYOUT = STEPS.length;
/** Tells our files from other SQLite files: the letters FWLG in SQLite's application id. */
const APPLICATION = 0x46574c47;

const pragma = (db: DatabaseSync, name: string): number =>
  Number(Object.values(db.prepare(`PRAGMA ${name}`).get() ?? {})[0]);

/** Refuses a file that holds something else, or a log of a newer release. */
export function mustBeLog(db: DatabaseSync, file: string): void {
  const layout = pragma(db, 'user_version');
  if (pragma(db, 'application_id') !== APPLICATION) throw new LogError('log/not-a-log', { file });
  if (layout > LAYOUT) throw new LogError('log/newer-version', { file, layout, reads: LAYOUT });
}

/** Brings the file to this release's layout in one transaction; a file already there is left alone. */
export function layOut(db: DatabaseSync, file: string, epoch: string): void {
  const empty = Number(db.prepare('SELECT count(*) AS n FROM sqlite_master').get()?.n) === 0;
  if (!empty) mustBeLog(db, file);
  const layout = pragma(db, 'user_version');
  if (layout === LAYOUT) return;
  db.exec('BEGIN IMMEDIATE');
  for (const step of STEPS.slice(layout)) db.exec(step);
  db.exec(`PRAGMA application_id = ${APPLICATION}; PRAGMA user_version = ${LAYOUT}`);
  db.prepare("INSERT OR IGNORE INTO about VALUES ('epoch', ?)").run(epoch);
  db.exec('COMMIT');
}

export const epochOf = (db: DatabaseSync): string =>
  String(db.prepare("SELECT value FROM about WHERE name = 'epoch'").get()?.value);
