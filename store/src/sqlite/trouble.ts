/** What has gone wrong with the disk or the file? SQLite's result codes as the log's few named errors. */
import { LogError, type LogErrorCode } from '../log.ts';

/** Primary result codes: https://sqlite.org/rescode.html */
const CODES: Readonly<Record<number, LogErrorCode>> = {
  5: 'log/in-use',
  6: 'log/in-use',
  8: 'log/read-only',
  10: 'log/disk-full',
  11: 'log/corrupt',
  13: 'log/disk-full',
  14: 'log/read-only',
  26: 'log/not-a-log',
};

/** Runs it; what SQLite says of disk and file comes out as a `LogError`, a bug as it is. */
export function guarded<T>(file: string, work: () => T): T {
  try {
    return work();
  } catch (problem) {
    throw named(file, problem);
  }
}

export function named(file: string, problem: unknown): unknown {
  if (problem instanceof LogError) return problem;
  const { errcode, errstr } = problem as { errcode?: number; errstr?: string };
  const code = errcode === undefined ? undefined : CODES[errcode & 0xff];
  return code === undefined ? problem : new LogError(code, { file, why: errstr ?? '' });
}
