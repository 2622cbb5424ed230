/**
 * How do many small appends become durable without waiting for the disk once each?
 * Everything that arrives in one turn of the event loop shares one transaction: one commit, one wait for the disk, then
 * all of it is acknowledged. A batch that conflicts is refused alone; a disk that fails refuses the whole group.
 */
import type { DatabaseSync } from 'node:sqlite';
import { join } from '../batch.ts';
import { type Acknowledged, LogError, type Stored, type Submitted } from '../log.ts';
import type { Shelf } from './shelf.ts';

type Waiting = {
  readonly batch: readonly Submitted[];
  readonly resolve: (acknowledged: readonly Acknowledged[]) => void;
  readonly reject: (problem: unknown) => void;
};

export type GroupCommit = {
  readonly append: (batch: readonly Submitted[]) => Promise<readonly Acknowledged[]>;
  /** Commits what waits, now. */
  readonly flush: () => void;
};

export type GroupCommitParts = {
  readonly database: DatabaseSync;
  readonly shelf: Shelf;
  /** Called with what has become durable, in order. */
  readonly durable: (entries: readonly Stored[]) => void;
  /** Gives a database failure its name. */
  readonly named: (problem: unknown) => unknown;
};

type Outcome = { readonly fresh: readonly Stored[]; readonly answers: readonly (() => void)[] };

/** Joins each waiting batch to the shelf, inside the transaction that the caller holds. */
function joinAll(group: readonly Waiting[], shelf: Shelf): Outcome {
  const fresh: Stored[] = [];
  const answers: (() => void)[] = [];
  const known = new Map(shelf.find(group.flatMap(({ batch }) => batch.map((one) => one.id))));
  let nextPosition = shelf.nextPosition();
  for (const { batch, resolve, reject } of group) {
    try {
      const find = (id: string): Stored | null => known.get(id) ?? null;
      const { added, acknowledged } = join(batch, { find, head: shelf.head, nextPosition });
      for (const stored of added) {
        shelf.put(stored);
        known.set(stored.id, stored);
        fresh.push(stored);
      }
      nextPosition += added.length;
      answers.push(() => resolve(acknowledged));
    } catch (problem) {
      // Joining comes before putting, so a refused batch has left nothing behind.
      if (!(problem instanceof LogError)) throw problem;
      answers.push(() => reject(problem));
    }
  }
  return { fresh, answers };
}

export function groupCommit({ database, shelf, durable, named }: GroupCommitParts): GroupCommit {
  let waiting: Waiting[] = [];

  const transact = (group: readonly Waiting[]): Outcome => {
    try {
      database.exec('BEGIN IMMEDIATE');
      const outcome = joinAll(group, shelf);
      database.exec('COMMIT');
      return outcome;
    } catch (problem) {
      shelf.forget();
      if (database.isTransaction) database.exec('ROLLBACK');
      return {
        fresh: [],
        answers: group.map(
          ({ reject }) =>
            () =>
              reject(named(problem)),
        ),
      };
    }
  };

  const flush = (): void => {
    const group = waiting;
    waiting = [];
    if (group.length === 0) return;
    const { fresh, answers } = transact(group);
    for (const answer of answers) answer();
    if (fresh.length > 0) durable(fresh);
  };

  return {
    flush,
    append: (batch) =>
      new Promise((resolve, reject) => {
        waiting.push({ batch, resolve, reject });
        if (waiting.length === 1) setImmediate(flush);
      }),
  };
}
