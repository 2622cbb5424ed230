/** A log in memory: for tests, for rehearsal, and as the plain statement of what every other log must do. */
import { checkBatch, join } from './batch.ts';
import { firstHead } from './chain.ts';
import { type Checkpoint, type Head, type Log, LogError, type ReadFrom, type Stored } from './log.ts';

const slice = (entries: readonly Stored[], { after = 0, most = Number.POSITIVE_INFINITY }: ReadFrom = {}) =>
  entries.filter((entry) => entry.position > after).slice(0, most);

/** An empty log that is forgotten with the process. */
export function memoryLog(epoch: string): Log {
  const entries: Stored[] = [];
  const byId = new Map<string, Stored>();
  const heads = new Map<string, Head>();
  const checkpoints = new Map<string, Checkpoint>();
  const listeners = new Set<(entries: readonly Stored[]) => void>();
  let open = true;

  const headOf = (course: string): Head =>
    heads.get(course) ?? { course, count: 0, position: 0, head: firstHead(course) };

  const keep = (stored: Stored): void => {
    entries.push(stored);
    byId.set(stored.id, stored);
    const { course, position, head } = stored;
    heads.set(course, { course, count: headOf(course).count + 1, position, head });
  };

  return {
    epoch,
    append: async (batch) => {
      if (!open) throw new LogError('log/closed');
      checkBatch(batch);
      const { added, acknowledged } = join(batch, {
        find: (id) => byId.get(id) ?? null,
        head: headOf,
        nextPosition: entries.length + 1,
      });
      for (const stored of added) keep(stored);
      if (added.length > 0) for (const listener of listeners) listener(added);
      return acknowledged;
    },
    course: (course, from) =>
      slice(
        entries.filter((entry) => entry.course === course),
        from,
      ),
    ward: (ward, from) =>
      slice(
        entries.filter((entry) => entry.ward === ward),
        from,
      ),
    all: (from) => slice(entries, from),
    heads: () => [...heads.values()],
    head: (course) => heads.get(course) ?? null,
    follow: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    saveCheckpoint: (checkpoint) => void checkpoints.set(checkpoint.course, checkpoint),
    checkpoint: (course) => checkpoints.get(course) ?? null,
    close: () => {
      open = false;
      listeners.clear();
    },
  };
}
