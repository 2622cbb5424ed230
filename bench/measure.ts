/**
 * How long did it take, and against what? What every bench is written with.
 */

/** One comparison: `measured` may be at most `limit`. Both are ratios or ms, as `unit` says. */
export type Measured = {
  readonly what: string;
  readonly measured: number;
  readonly limit: number;
  readonly unit: '×' | 'ms' | 'µs';
};
export type Report = (one: Measured) => void;
export type Bench = (report: Report) => void | Promise<void>;

/** The middle of the times (in ms) that `count` runs took, after a tenth as many that are thrown away. */
export async function median(count: number, run: () => unknown): Promise<number> {
  for (let i = 0; i < count / 10; i++) await run();
  const times: number[] = [];
  for (let i = 0; i < count; i++) {
    const start = performance.now();
    await run();
    times.push(performance.now() - start);
  }
  return times.toSorted((a, b) => a - b)[count >> 1] ?? Number.NaN;
}
