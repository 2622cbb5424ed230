/**
 * How many times a property is tried: a tenth in `npm test`, all of them in `npm run soak`. The tenth is the same every
 * time, so that a red run means a change; the soak looks further, elsewhere each time, and prints the seed of what it finds.
 */
export type Runs = { readonly numRuns: number; readonly seed?: number };

const SEED = 20_261_125;

export const runs = (soak: number): Runs =>
  process.env.FEEDWRIGHT_SOAK === '1' ? { numRuns: soak } : { numRuns: Math.ceil(soak / 10), seed: SEED };
