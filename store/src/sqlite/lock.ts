/**
 * Who may write to this file? One process. A second one is refused at once with a clear error instead of waiting or
 * mixing its entries in. The lock is a transaction on a file beside the log: the system lets go of it when the process
 * ends, however it ends, so nothing stale is ever left behind. Readers need no lock.
 */
import { DatabaseSync } from 'node:sqlite';
import { LogError } from '../log.ts';

export function lockFor(file: string): () => void {
  const lock = new DatabaseSync(`${file}.writer`);
  try {
    lock.exec('PRAGMA busy_timeout = 0; PRAGMA journal_mode = MEMORY; BEGIN EXCLUSIVE');
  } catch {
    lock.close();
    throw new LogError('log/in-use', { file });
  }
  return () => lock.close();
}
