/** Is this file a whole, undamaged log? Looked through page by page, in a thread of its own where others must not wait. */
import { DatabaseSync } from 'node:sqlite';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { LogError } from '../log.ts';
import { mustBeLog } from './schema.ts';
import { guarded } from './trouble.ts';

/** What SQLite says of the whole file: empty when it is sound. */
export const integrityProblems = (database: DatabaseSync): readonly string[] =>
  (database.prepare('PRAGMA integrity_check').all() as { integrity_check: string }[])
    .map((row) => row.integrity_check)
    .filter((said) => said !== 'ok');

/** @returns how many entries the log in the file holds. Throws `LogError` where it is no log or is damaged. */
export const checkSound = (file: string): number =>
  guarded(file, () => {
    const database = new DatabaseSync(file, { readOnly: true });
    try {
      mustBeLog(database, file);
      const problems = integrityProblems(database);
      if (problems.length > 0) throw new LogError('log/corrupt', { file, why: problems[0] });
      return Number(database.prepare('SELECT count(*) AS n FROM entry').get()?.n);
    } finally {
      database.close();
    }
  });

type Answer =
  | { readonly entries: number }
  | { readonly code: LogError['code']; readonly data: LogError['data'] };

/** The same, without keeping the caller's thread from its work. */
export const checkSoundAside = (file: string): Promise<number> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(new URL(import.meta.url), { workerData: { checkSound: file } });
    worker.once('message', (answer: Answer) =>
      'entries' in answer ? resolve(answer.entries) : reject(new LogError(answer.code, answer.data)),
    );
    worker.once('error', reject);
  });

function answerFor(file: string): Answer {
  try {
    return { entries: checkSound(file) };
  } catch (problem) {
    if (!(problem instanceof LogError)) throw problem;
    return { code: problem.code, data: problem.data };
  }
}

if (!isMainThread && typeof workerData?.checkSound === 'string') {
  parentPort?.postMessage(answerFor(workerData.checkSound));
}
