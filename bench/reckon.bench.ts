/** How long does each calculation take, from what was typed to its result with its whole working? */
import { CALCULATIONS } from '@feedwright/core/reckon/catalogue';
import type { Calculation } from '@feedwright/core/reckon/declare';
import { reckon } from '@feedwright/core/reckon/reckon';
import { medians, type Report } from './measure.ts';

const MOST_MICROSECONDS = 50;
const BATCH = 40;
const ROUNDS = 50;
const WARM_ROUNDS = 15;
const SHOWN = 5;

/** A batch of the calculation's own example. */
const batchOf = (calculation: Calculation) => (): void => {
  for (let i = 0; i < BATCH; i++) {
    if (!reckon(calculation, calculation.example).ok)
      throw new Error(`${calculation.name} refuses its example`);
  }
};

export default async function bench(report: Report): Promise<void> {
  const batches = CALCULATIONS.map(batchOf);
  for (let round = 0; round < WARM_ROUNDS; round++) for (const batch of batches) batch();
  const times = await medians(ROUNDS, ...batches);
  const slowest = CALCULATIONS.map(({ name }, index) => {
    const batch = times[index] ?? Number.NaN;
    return { name, measured: (batch * 1000) / BATCH };
  }).toSorted((a, b) => b.measured - a.measured);
  const limit = MOST_MICROSECONDS;
  for (const { name, measured } of slowest.slice(0, SHOWN))
    report({ what: `${name}, from text to working`, measured, limit, unit: 'µs' });
  const middle = slowest[slowest.length >> 1]?.measured ?? Number.NaN;
  report({ what: `the middle one of all ${slowest.length}`, measured: middle, limit, unit: 'µs' });
}
