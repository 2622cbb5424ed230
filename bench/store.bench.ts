/**
 * Do many nurses wait for one disk? Durable appends in batches from many writers against single-row commits of the bare
 * database on the same disk; and appends while a backup runs against appends alone.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import type { Submitted } from '@feedwright/store/log';
import { backupLog } from '@feedwright/store/sqlite/backup';
import { type SqliteLog, sqliteLog } from '@feedwright/store/sqlite/log';
import type { Report } from './measure.ts';

const WRITERS = 64;
const BATCH = 20;
const LASTS = 2_000;

/** About the size of an entry with its envelope. */
const text = (id: string): string =>
  JSON.stringify({ id, fact: { kind: 'rate-changed/1', rateMlPerHour: 62.5 }, more: 'x'.repeat(240) });

let made = 0;
const batch = (size: number): readonly Submitted[] =>
  Array.from({ length: size }, () => {
    const id = `entry-${++made}`;
    return { id, course: `course-${made % 50}`, ward: 'ward', text: text(id) };
  });

/** Rows a second of the bare database: one row, one commit, one wait for the disk. */
function bareRate(folder: string): number {
  const db = new DatabaseSync(join(folder, 'bare.db'));
  db.exec(
    'PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; CREATE TABLE row (id TEXT PRIMARY KEY, text TEXT) STRICT',
  );
  const insert = db.prepare('INSERT INTO row VALUES (?, ?)');
  const start = performance.now();
  let rows = 0;
  while (performance.now() - start < LASTS) insert.run(`${++rows}`, text(`${rows}`));
  db.close();
  return rows / LASTS;
}

/** Entries a second from writers that each wait for their acknowledgement before they send again. */
async function appendRate(log: SqliteLog, until: () => boolean): Promise<{ rate: number; longest: number }> {
  const start = performance.now();
  let entries = 0;
  let longest = 0;
  const writer = async (): Promise<void> => {
    while (!until()) {
      const sent = performance.now();
      const acknowledged = await log.append(batch(BATCH));
      entries += acknowledged.length;
      longest = Math.max(longest, performance.now() - sent);
    }
  };
  await Promise.all(Array.from({ length: WRITERS }, writer));
  return { rate: entries / (performance.now() - start), longest };
}

const forAWhile = (): (() => boolean) => {
  const end = performance.now() + LASTS;
  return () => performance.now() > end;
};

async function whileBackingUp(log: SqliteLog, to: string): Promise<{ rate: number; longest: number }> {
  let done = false;
  const copying = backupLog(log, to).finally(() => {
    done = true;
  });
  const measured = await appendRate(log, () => done);
  await copying;
  return measured;
}

export default async function store(report: Report): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'feedwright-bench-'));
  try {
    const bare = bareRate(folder);
    const log = sqliteLog(join(folder, 'log.db'), { epoch: 'bench' });
    const alone = await appendRate(log, forAWhile());
    report({
      what: 'single-row commits against batches of 20 from 64 writers (1/8)',
      measured: bare / alone.rate,
      limit: 1 / 8,
      unit: '×',
    });
    const steady = await appendRate(log, forAWhile());
    const during = await whileBackingUp(log, join(folder, 'copy.db'));
    report({
      what: 'appends alone against appends during a backup (1/0.4)',
      measured: steady.rate / during.rate,
      limit: 1 / 0.4,
      unit: '×',
    });
    report({
      what: 'the longest wait for an acknowledgement during a backup',
      measured: during.longest,
      limit: 300,
      unit: 'ms',
    });
    log.close();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
