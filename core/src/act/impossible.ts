/**
 * What cannot have happened? Only that is refused at the bedside. What is unwise, late or against the plan is recorded:
 * a record that refuses what was done is worth nothing.
 */
import { after, type Duration, type Instant } from '../base/instant.ts';
import type { Issue } from '../base/result.ts';
import { contradictions, parseEntry, writeEntry } from '../record/document.ts';
import type { Entry } from '../record/entry.ts';
import type { Fact, FactKind } from '../record/fact.ts';
import type { Situation } from './situation.ts';
import { type Refusal, refusal } from './wish.ts';

const DOWN_THE_TUBE: ReadonlySet<FactKind> = new Set([
  'pump-started/1',
  'pump-resumed/1',
  'feed-given/1',
  'water-given/1',
  'module-given/1',
  'medicine-given/1',
] satisfies FactKind[]);

/** Known from before the course: who the person is, the tube they came with, what was measured and ordered. */
const OLDER_THAN_COURSE: ReadonlySet<FactKind> = new Set([
  'order-placed/1',
  'person-identified/1',
  'weight-measured/1',
  'height-measured/1',
  'allergies-recorded/1',
  'other-energy-recorded/1',
  'tube-placed/1',
  'tube-checked/1',
  'laboratory-result/1',
  'note-written/1',
] satisfies FactKind[]);

/** [AC1] [AC2] Outside the time in which it can have happened. */
export function atNoTime(
  { happenedAt, recordedAt, fact }: Entry,
  { begins, tolerance }: { readonly begins: Instant; readonly tolerance: Duration },
): Refusal | null {
  if (happenedAt > after(recordedAt, tolerance)) {
    return refusal('AC1', 'act/in-the-future', { happenedAt, recordedAt, tolerance });
  }
  return happenedAt < begins && !OLDER_THAN_COURSE.has(fact.kind)
    ? refusal('AC2', 'act/before-the-course', { happenedAt, begins })
    : null;
}

/** Impossible as things stood. */
export function impossibleIn({ tubeOut, paused, up, spiked }: Situation, fact: Fact): Refusal | null {
  if (tubeOut && DOWN_THE_TUBE.has(fact.kind)) return refusal('AC3', 'act/tube-out', { kind: fact.kind });
  switch (fact.kind) {
    case 'pump-resumed/1':
      return paused ? null : refusal('AC4', 'act/not-paused');
    case 'container-taken-down/1':
      return up.has(fact.container)
        ? null
        : refusal('AC5', 'act/not-up', { container: fact.container, up: [...up] });
    case 'container-put-up/1':
      return fact.closed && spiked.has(fact.container)
        ? refusal('AC6', 'act/spiked-before', { container: fact.container })
        : null;
    default:
      return null;
  }
}

const ruleOf = ({ code }: Issue): string =>
  code === 'residual/more-than-drawn' ? 'AC7' : code.startsWith('residual/') ? 'AC8' : 'AC15';

/** [AC7] [AC8] [AC15] What no ledger would take: contradictory in itself, or with a value that no document can hold. */
export function unacceptable(entry: Entry): Refusal | null {
  const [contradiction] = contradictions(entry);
  if (contradiction !== undefined) {
    return refusal(ruleOf(contradiction), contradiction.code, contradiction.data);
  }
  const read = parseEntry(writeEntry(entry));
  return read.ok ? null : refusal('AC15', 'act/malformed', { issues: read.issues });
}
