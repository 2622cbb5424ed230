/**
 * How fast does a record become a standing? Folding parsed entries against the least that anybody could do with each of
 * them; one entry more on a long course, at its end and late; and what an entry takes up in memory.
 */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { after, duration, type Instant, minutes } from '@feedwright/core/base/instant';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import { parseKeptEntry, writeEntryText } from '@feedwright/core/record/document';
import type { Entry } from '@feedwright/core/record/entry';
import { foldCourse } from '@feedwright/core/standing/evolve';
import { holdCourse, holdEntry, standingOf } from '@feedwright/core/standing/held-course';
import { largeLedger } from '../demo/large-ledger.ts';
import { medians, type Report } from './measure.ts';

const COURSES = 10;
const ENTRIES = 10_000;
const ROUNDS = 30;
const APPENDED = 200;

/** As a device has them: read from text, so that no two share what only making them would. */
function parsed(entries: readonly Entry[]): readonly Entry[] {
  return entries.map((one) => {
    const read = parseKeptEntry(writeEntryText(one));
    if (!read.ok || 'raw' in read.value.fact) throw new Error('an entry that was written does not read');
    return read.value as Entry;
  });
}

/** Looks at every entry, knows its kind, and adds up one number: nothing that is worth knowing, but not for nothing. */
function naive(entries: readonly Entry[]): number {
  const kinds = new Map<string, number>();
  let total = 0;
  for (const { fact, happenedAt } of entries) {
    kinds.set(fact.kind, (kinds.get(fact.kind) ?? 0) + 1);
    if (fact.kind === 'water-given/1') total += fact.volume;
    if (happenedAt < 0) throw new Error('before 1970');
  }
  return total + kinds.size;
}

const water = (entry: Entry, happenedAt: Instant, number: number): Entry => ({
  ...entry,
  id: `appended-${number}`,
  number,
  happenedAt,
  recordedAt: happenedAt,
  fact: { kind: 'mouth-care-done/1' },
});

async function foldSpeed(report: Report): Promise<void> {
  const courses = [...largeLedger({ courses: COURSES, entriesPerCourse: ENTRIES, seed: 4 })].map((one) =>
    parsed(one.entries),
  );
  const [folding = Number.NaN, looking = Number.NaN] = await medians(
    ROUNDS,
    () => {
      for (const entries of courses) foldCourse(entries);
    },
    () => {
      for (const entries of courses) naive(entries);
    },
  );
  const measured = (folding * 1_000) / (COURSES * ENTRIES);
  report({ what: 'an entry folded, parsed and sorted', measured, limit: 1, unit: 'µs' });
  report({
    what: 'folding against looking at each entry once',
    measured: folding / looking,
    limit: 12,
    unit: '×',
  });
}

async function appendSpeed(report: Report): Promise<void> {
  const [course] = [...largeLedger({ courses: 1, entriesPerCourse: ENTRIES, seed: 5 })];
  const entries = parsed(course?.entries ?? []);
  const last = entries.at(-1)!;
  const held = holdCourse(entries);
  const atEnd = Array.from({ length: APPENDED }, (_, place) =>
    water(last, after(last.happenedAt, minutes(place + 1)), ENTRIES + place + 1),
  );
  const late = Array.from({ length: APPENDED }, (_, place) =>
    water(last, after(last.happenedAt, duration(-3_600_000 - place)), ENTRIES + place + 1),
  );
  const view = {
    at: last.happenedAt,
    policy: DEFAULT_POLICY,
    feeds: DEFAULT_FEEDS,
    zone: 'Europe/London' as never,
  };
  const [appending = Number.NaN, belated = Number.NaN, standing = Number.NaN] = await medians(
    ROUNDS,
    () => atEnd.reduce(holdEntry, held),
    () => late.reduce(holdEntry, held),
    () => standingOf(held, view),
  );
  const each = (ms: number) => (ms * 1_000) / APPENDED;
  const long = 'a course of 10,000';
  report({ what: `an entry appended to ${long}`, measured: each(appending), limit: 50, unit: 'µs' });
  report({ what: `an entry an hour late on ${long}`, measured: each(belated), limit: 500, unit: 'µs' });
  report({ what: `everything that is true of ${long}`, measured: standing, limit: 50, unit: 'ms' });
}

/** In a process of its own, so that nothing else lies on the heap. */
function heapPerEntry(report: Report): void {
  const script = join(import.meta.dirname, 'fold', 'heap.ts');
  const child = spawnSync(process.execPath, ['--expose-gc', script], { encoding: 'utf8' });
  report({
    what: 'heap of a parsed entry',
    measured: Number.parseFloat(child.stdout),
    limit: 450,
    unit: 'B',
  });
}

export default async function bench(report: Report): Promise<void> {
  await foldSpeed(report);
  await appendSpeed(report);
  heapPerEntry(report);
}
