/**
 * How long did it take, and against what? What every bench is written with.
 */

/** One comparison: `measured` may be at most `limit`. Both are in `unit`. */
export type Measured = {
  readonly what: string;
  readonly measured: number;
  readonly limit: number;
  readonly unit: '×' | 'ms' | 'µs' | 'B';
};
export type Report = (one: Measured) => void;
export type Bench = (report: Report) => void | Promise<void>;

/**
 * The median time in ms of each of several things, done turn and turn about so that whatever else the machine is busy
 * with falls on all of them. A tenth of the rounds are run first and thrown away.
 */
export async function medians(
  rounds: number,
  ...things: readonly (() => unknown)[]
): Promise<readonly number[]> {
  const times = things.map((): number[] => []);
  for (let round = -rounds / 10; round < rounds; round++)
    for (const [index, run] of things.entries()) {
      const start = performance.now();
      await run();
      if (round >= 0) times[index]?.push(performance.now() - start);
    }
  return times.map((own) => own.toSorted((a, b) => a - b)[own.length >> 1] ?? Number.NaN);
}
