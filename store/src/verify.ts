/**
 * Is the ledger still what was acknowledged? Every chain is walked from its beginning and compared with the heads that
 * stand in the log, and with heads that were kept elsewhere: a changed, missing or cut-off entry is found and named.
 */
import { firstHead, nextHead } from './chain.ts';
import type { Head, Log, Stored } from './log.ts';

export type Finding = {
  readonly code: 'changed' | 'missing' | 'cut-off' | 'other-history';
  readonly course: string | null;
  /** The position at which it shows. */
  readonly position: number;
};

export type Verified = {
  readonly entries: number;
  readonly courses: number;
  readonly findings: readonly Finding[];
  readonly heads: readonly Head[];
};

type Walk = { count: number; head: string; position: number; broken: boolean };

/** What vouches for a history: a head with the number of entries it commits to. */
export type KeptHead = Pick<Head, 'course' | 'count' | 'head'>;

const PAGE = 5_000;

function* pages(log: Pick<Log, 'all'>): Generator<readonly Stored[]> {
  for (let after = 0; ; ) {
    const page = log.all({ after, most: PAGE });
    if (page.length === 0) return;
    yield page;
    after = page.at(-1)!.position;
  }
}

/** What a kept head says once its chain has come to its number of entries. */
const judge = (kept: KeptHead, walk: Walk | undefined): Finding | null =>
  walk !== undefined && walk.count >= kept.count
    ? null
    : { code: 'cut-off', course: kept.course, position: walk?.position ?? 0 };

/** @param progress called with the number of entries looked at so far. */
export function verify(
  log: Pick<Log, 'all'>,
  kept: readonly KeptHead[] = [],
  progress: (entries: number) => void = () => {},
): Verified {
  const walks = new Map<string, Walk>();
  const findings: Finding[] = [];
  const due = Map.groupBy(kept, (head) => head.course);
  let expected = 1;
  for (const page of pages(log)) {
    for (const entry of page) {
      if (entry.position !== expected) findings.push({ code: 'missing', course: null, position: expected });
      expected = entry.position + 1;
      const walk = step(walks, entry, findings);
      for (const head of due.get(entry.course) ?? []) {
        if (head.count === walk.count && head.head !== walk.head) {
          findings.push({ code: 'other-history', course: entry.course, position: entry.position });
        }
      }
    }
    progress(expected - 1);
  }
  const short = kept.map((head) => judge(head, walks.get(head.course))).filter((one) => one !== null);
  return {
    entries: [...walks.values()].reduce((sum, walk) => sum + walk.count, 0),
    courses: walks.size,
    findings: [...findings, ...short],
    heads: [...walks].map(([course, { count, head, position }]) => ({ course, count, head, position })),
  };
}

/** Goes one entry further along its chain. A chain that is broken is said once, then followed from what stands there. */
function step(walks: Map<string, Walk>, entry: Stored, findings: Finding[]): Walk {
  const { course, position } = entry;
  const walk = walks.get(course) ?? { count: 0, head: firstHead(course), position: 0, broken: false };
  const head = nextHead(walk.head, entry.text);
  if (head !== entry.head && !walk.broken) {
    walk.broken = true;
    findings.push({ code: 'changed', course, position });
  }
  walk.count += 1;
  walk.head = head;
  walk.position = position;
  walks.set(course, walk);
  return walk;
}
