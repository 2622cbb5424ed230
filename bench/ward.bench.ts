/**
 * How soon is a ward there after a restart? A thousand courses of a thousand entries in a log on the disk: opened by reading
 * and folding every entry, with progress; and from the checkpoints, by which only what came after them is read.
 */
import { deepStrictEqual } from 'node:assert/strict';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseKeptEntry, writeEntryText } from '@feedwright/core/record/document';
import type { AnyEntry } from '@feedwright/core/record/entry';
import { FOLD_VERSION, readCheckpoint, writeCheckpoint } from '@feedwright/core/standing/checkpoint';
import type { Course } from '@feedwright/core/standing/course';
import { foldCourse } from '@feedwright/core/standing/evolve';
import { holdCourse } from '@feedwright/core/standing/held-course';
import type { Stored } from '@feedwright/store/log';
import { type SqliteLog, sqliteLog } from '@feedwright/store/sqlite/log';
import { largeLedger } from '../demo/large-ledger.ts';
import type { Report } from './measure.ts';

const COURSES = 1_000;
const ENTRIES = 1_000;
/** Written since the checkpoint was made. */
const SINCE = 20;

function entryOf({ text, id }: Stored): AnyEntry {
  const read = parseKeptEntry(text);
  if (!read.ok) throw new Error(`${id} does not read: ${JSON.stringify(read.issues)}`);
  return read.value;
}

/** The log of a ward, with a checkpoint of each course from before its last entries. Gives the courses' names. */
async function fill(log: SqliteLog): Promise<readonly string[]> {
  const names: string[] = [];
  for (const { course, entries } of largeLedger({ courses: COURSES, entriesPerCourse: ENTRIES, seed: 7 })) {
    names.push(course);
    const kept = await log.append(
      entries.map((one) => ({ id: one.id, course, ward: 'ward', text: writeEntryText(one) })),
    );
    const count = ENTRIES - SINCE;
    log.saveCheckpoint({
      course,
      count,
      position: kept[count - 1]?.position ?? 0,
      version: String(FOLD_VERSION),
      text: writeCheckpoint(foldCourse(entries.slice(0, count))),
    });
  }
  return names;
}

const fromEntries = (log: SqliteLog, course: string): Course =>
  holdCourse(log.course(course).map(entryOf)).course;

/** What came since is newer than the checkpoint here; where it is not, a course has to be held by all of its entries. */
function fromCheckpoint(log: SqliteLog, course: string): Course {
  const kept = log.checkpoint(course);
  const read = readCheckpoint(kept?.text ?? '');
  if (kept === null || !read.ok) throw new Error(`no checkpoint of ${course}`);
  return foldCourse(log.course(course, { after: kept.position }).map(entryOf), read.value);
}

type Opened = { readonly courses: readonly Course[]; readonly lasted: number };

/** For somebody who watches. */
const progress = (done: number, of: number): void => {
  if (process.stderr.isTTY) process.stderr.write(`\r  ${done} of ${of} courses`);
};

function openWard(log: SqliteLog, names: readonly string[], open: typeof fromEntries): Opened {
  const start = performance.now();
  const courses = names.map((name, index) => {
    const course = open(log, name);
    progress(index + 1, names.length);
    return course;
  });
  return { courses, lasted: performance.now() - start };
}

export default async function ward(report: Report): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'feedwright-bench-'));
  const file = join(folder, 'log.db');
  try {
    const filling = sqliteLog(file, { epoch: 'bench' });
    const names = await fill(filling);
    filling.close();
    const log = sqliteLog(file, { epoch: 'bench' });
    const kept = openWard(log, names, fromCheckpoint);
    const whole = openWard(log, names, fromEntries);
    log.close();
    for (const index of [0, 499, 999]) deepStrictEqual(kept.courses[index], whole.courses[index]);
    const what = `a ward of ${COURSES} courses × ${ENTRIES} entries opened`;
    report({ what: `${what} from checkpoints`, measured: kept.lasted, limit: 3_000, unit: 'ms' });
    report({
      what: `${what} without them, with progress`,
      measured: whole.lasted,
      limit: 12_000,
      unit: 'ms',
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
