/** How are entries found in the file again? The statements that read, and the heads that are remembered between appends. */
import type { DatabaseSync, StatementSync } from 'node:sqlite';
import { firstHead } from '../chain.ts';
import type { Checkpoint, Head, ReadFrom, Stored } from '../log.ts';

type Row = Omit<Stored, 'head'> & { readonly head: Uint8Array };

const hex = (bytes: Uint8Array): string => Buffer.from(bytes).toString('hex');
const toStored = (row: Row): Stored => ({ ...row, head: hex(row.head) });

const COLUMNS = 'id, course, ward, text, position, head';
const PAGE = 'position > ? ORDER BY position LIMIT ?';
const LAST = `SELECT position, head, (SELECT count(*) FROM entry WHERE course = ?1) AS count
  FROM entry WHERE course = ?1 ORDER BY position DESC LIMIT 1`;

/** What is in the file: read, and added to within somebody else's transaction. */
export type Shelf = {
  /** Those of the ids that are in the file. */
  readonly find: (ids: readonly string[]) => ReadonlyMap<string, Stored>;
  readonly head: (course: string) => Head;
  readonly courses: () => readonly string[];
  readonly ofCourse: (course: string, from?: ReadFrom) => readonly Stored[];
  readonly ofWard: (ward: string, from?: ReadFrom) => readonly Stored[];
  readonly ofAll: (from?: ReadFrom) => readonly Stored[];
  readonly nextPosition: () => number;
  readonly put: (stored: Stored) => void;
  /** After a transaction that was rolled back: what was remembered is read again. */
  readonly forget: () => void;
  readonly checkpoint: (course: string) => Checkpoint | null;
  readonly putCheckpoint: (checkpoint: Checkpoint) => void;
};

function readers(db: DatabaseSync): Pick<Shelf, 'find' | 'courses' | 'ofCourse' | 'ofWard' | 'ofAll'> {
  const byIds = db.prepare(`SELECT ${COLUMNS} FROM entry WHERE id IN (SELECT value FROM json_each(?))`);
  const courses = db.prepare('SELECT DISTINCT course FROM entry ORDER BY course');
  const ofCourse = db.prepare(`SELECT ${COLUMNS} FROM entry WHERE course = ? AND ${PAGE}`);
  const ofWard = db.prepare(`SELECT ${COLUMNS} FROM entry WHERE ward = ? AND ${PAGE}`);
  const ofAll = db.prepare(`SELECT ${COLUMNS} FROM entry WHERE ${PAGE}`);
  const page = (
    statement: StatementSync,
    names: readonly string[],
    { after = 0, most = -1 }: ReadFrom = {},
  ) => (statement.all(...names, after, most) as Row[]).map(toStored);
  return {
    find: (ids) => new Map((byIds.all(JSON.stringify(ids)) as Row[]).map((row) => [row.id, toStored(row)])),
    courses: () => (courses.all() as { course: string }[]).map((row) => row.course),
    ofCourse: (course, from) => page(ofCourse, [course], from),
    ofWard: (ward, from) => page(ofWard, [ward], from),
    ofAll: (from) => page(ofAll, [], from),
  };
}

function checkpoints(db: DatabaseSync): Pick<Shelf, 'checkpoint' | 'putCheckpoint'> {
  const get = db.prepare('SELECT course, count, position, version, text FROM checkpoint WHERE course = ?');
  const put = db.prepare('INSERT OR REPLACE INTO checkpoint VALUES (?, ?, ?, ?, ?)');
  return {
    checkpoint: (course) => (get.get(course) as Checkpoint | undefined) ?? null,
    putCheckpoint: ({ course, count, position, version, text }) =>
      void put.run(course, count, position, version, text),
  };
}

/** @param remember whether heads may be remembered: only where nobody else writes to the file. */
export function shelfOf(db: DatabaseSync, remember: boolean): Shelf {
  const heads = new Map<string, Head>();
  const last = db.prepare(LAST);
  const insert = db.prepare(
    'INSERT INTO entry (position, id, course, ward, text, head) VALUES (?, ?, ?, ?, ?, ?)',
  );
  const top = db.prepare('SELECT coalesce(max(position), 0) + 1 AS next FROM entry');

  const head = (course: string): Head => {
    const known = heads.get(course);
    if (known !== undefined) return known;
    const row = last.get(course) as { position: number; head: Uint8Array; count: number } | undefined;
    if (row === undefined) return { course, count: 0, position: 0, head: firstHead(course) };
    const found = { course, count: row.count, position: row.position, head: hex(row.head) };
    if (remember) heads.set(course, found);
    return found;
  };

  return {
    ...readers(db),
    ...checkpoints(db),
    head,
    nextPosition: () => Number(top.get()?.next),
    put: ({ position, id, course, ward, text, head: link }) => {
      const { count } = head(course);
      insert.run(position, id, course, ward, text, Buffer.from(link, 'hex'));
      heads.set(course, { course, count: count + 1, position, head: link });
    },
    forget: () => heads.clear(),
  };
}
