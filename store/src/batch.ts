/** Which entries of a batch are new, and what is to be acknowledged for each? The same for every log. */
import { nextHead } from './chain.ts';
import { type Acknowledged, type Head, LogError, type Stored, type Submitted } from './log.ts';

const MOST_NAME = 200;

const wellNamed = (name: unknown): boolean =>
  typeof name === 'string' && name.length > 0 && name.length <= MOST_NAME && name.isWellFormed();

/** Refuses what could not be kept to the byte or found again. */
export function checkBatch(batch: readonly Submitted[]): void {
  for (const [index, { id, course, ward, text }] of batch.entries()) {
    const field = !wellNamed(id) ? 'id' : !wellNamed(course) ? 'course' : wellNamed(ward) ? null : 'ward';
    if (field !== null) throw new LogError('log/malformed', { index, field });
    if (typeof text !== 'string' || text === '' || !text.isWellFormed()) {
      throw new LogError('log/malformed', { index, id, field: 'text' });
    }
  }
}

/** What a log has to tell for a batch to be joined to it. */
export type Holding = {
  readonly find: (id: string) => Stored | null;
  readonly head: (course: string) => Head;
  readonly nextPosition: number;
};

export type Joined = { readonly added: readonly Stored[]; readonly acknowledged: readonly Acknowledged[] };

/** The batch joined to what is held: new entries with their places, and an acknowledgement for every one of the batch. */
export function join(batch: readonly Submitted[], holding: Holding): Joined {
  const added: Stored[] = [];
  const here = new Map<string, Stored>();
  const heads = new Map<string, string>();
  const acknowledged = batch.map((one) => {
    const known = here.get(one.id) ?? holding.find(one.id);
    if (known !== null) {
      if (known.text !== one.text || known.course !== one.course) {
        throw new LogError('log/id-conflict', { id: one.id, position: known.position });
      }
      return { id: one.id, position: known.position, head: known.head, duplicate: true };
    }
    const head = nextHead(heads.get(one.course) ?? holding.head(one.course).head, one.text);
    const stored = { ...one, position: holding.nextPosition + added.length, head };
    heads.set(one.course, head);
    here.set(one.id, stored);
    added.push(stored);
    return { id: one.id, position: stored.position, head, duplicate: false };
  });
  return { added, acknowledged };
}
