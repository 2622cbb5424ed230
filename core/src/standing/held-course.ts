/**
 * How does a device keep a course true while entries come late, twice, out of order and in error? The ledger with the course
 * it comes to, and checkpoints on the way: what changes nothing before it is evolved, all else is folded again from the last
 * checkpoint before its time. Either way the course is the one that folding from the beginning gives. [ST60]
 *
 *      ledger   e e e e e e e e e e e e e        a late entry here ↓ only drops what lies after it
 *      course   ├────────●────────●────┤         ● checkpoint
 */
import { after, duration, type Instant } from '../base/instant.ts';
import { ask } from '../policy/policy.ts';
import { likelyDuplicates } from '../record/duplicates.ts';
import type { AnyEntry } from '../record/entry.ts';
import { append, EMPTY_LEDGER, type Ledger, ledgerOf, positionAt } from '../record/ledger.ts';
import type { View } from './account.ts';
import { beginCourse, type Course } from './course.ts';
import { evolve, foldCourse } from './evolve.ts';
import type { Contradiction } from './readings/contradictions.ts';
import { contextAt } from './spans.ts';
import { type CourseStanding, standingAt } from './standing-at.ts';

/** What the first so many entries of the ledger come to. */
export type Checkpoint = { readonly position: number; readonly course: Course };

export type HeldCourse = {
  readonly ledger: Ledger;
  /** The earliest first; never empty. */
  readonly checkpoints: readonly Checkpoint[];
  readonly course: Course;
};

/** Entries from one checkpoint to the next: folding so many again takes well under a ms. */
const EVERY = 256;

/** Made anew each time: courses that went on from one beginning would keep each other's past alive. */
const start = (): Checkpoint => ({ position: 0, course: beginCourse() });

/** Whether an entry is folded: not ruled out. Those of unknown kinds are, to be counted. */
const isFolded = ({ out }: Ledger, entry: AnyEntry): boolean => !out.has(entry.id);

/** The last checkpoint to the next, and so on to the end. */
function foldOn(ledger: Ledger, from: readonly Checkpoint[], until = ledger.entries.length): HeldCourse {
  const checkpoints = [...from];
  let { position, course } = checkpoints.at(-1) ?? start();
  while (position < until) {
    const next = Math.min(until, position - (position % EVERY) + EVERY);
    const between = ledger.entries.slice(position, next);
    course = foldCourse(
      between.filter((one) => isFolded(ledger, one)),
      course,
    );
    position = next;
    if (position < until) checkpoints.push({ position, course });
  }
  return { ledger, checkpoints, course };
}

const upTo = ({ checkpoints }: HeldCourse, position: number): readonly Checkpoint[] =>
  checkpoints.filter((one) => one.position <= position);

export function emptyCourse(): HeldCourse {
  const first = start();
  return { ledger: EMPTY_LEDGER, checkpoints: [first], course: first.course };
}

/**
 * The course of entries in whatever order and with whatever repetitions.
 * @param from a checkpoint of the same entries, where one was kept: only what comes after it is folded.
 */
export const holdCourse = (entries: Iterable<AnyEntry>, from: Checkpoint | null = null): HeldCourse =>
  foldOn(ledgerOf(entries), from === null ? [start()] : [start(), from]);

/** With one entry more; the same held course where it had been there. */
export function holdEntry(held: HeldCourse, entry: AnyEntry): HeldCourse {
  const { ledger, from } = append(held.ledger, entry);
  if (from === null) return held;
  const position = held.ledger.entries.length;
  if (from < position || ledger.entries.length !== position + 1) return foldOn(ledger, upTo(held, from));
  const course = isFolded(ledger, entry) ? evolve(held.course, entry) : held.course;
  const isDue = position % EVERY === 0 && position > 0;
  const checkpoints = isDue ? [...held.checkpoints, { position, course: held.course }] : held.checkpoints;
  return { ledger, checkpoints, course };
}

/** What the course came to at an instant: later entries, also those of a clock that is fast, are not in it yet. */
export function courseAt(held: HeldCourse, at: Instant): Course {
  const position = positionAt(held.ledger, after(at, duration(1)));
  if (position === held.ledger.entries.length) return held.course;
  return foldOn(held.ledger, upTo(held, position), position).course;
}

/** Recorded on two devices within policy's minutes: both stand, and are asked about until somebody settles it. */
function duplicatesAt(
  { ledger }: HeldCourse,
  course: Course,
  { at, policy, zone }: View,
): readonly Contradiction[] {
  const within = ask(policy, 'duplicate.within', contextAt(course, at, zone));
  if (!within.known) return [];
  return likelyDuplicates(ledger, within.value)
    .filter(({ second }) => second.happenedAt <= at)
    .map(({ first, second }) => ({
      code: 'likely-duplicate',
      at: second.happenedAt,
      entries: [first.id, second.id],
      data: { kind: second.fact.kind },
    }));
}

/** Everything that is true of a course at an instant, likely duplicates included. */
export function standingOf(held: HeldCourse, view: View): CourseStanding {
  const course = courseAt(held, view.at);
  const standing = standingAt(course, view);
  const twice = duplicatesAt(held, course, view);
  if (twice.length === 0) return standing;
  const contradictions = [...standing.contradictions, ...twice].toSorted((a, b) => a.at - b.at);
  return { ...standing, contradictions };
}
