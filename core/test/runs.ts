/** How many times a property is tried: a tenth in `npm test`, all of them in `npm run soak`. */
export const runs = (soak: number): { numRuns: number } => ({
  numRuns: process.env.FEEDWRIGHT_SOAK === '1' ? soak : Math.ceil(soak / 10),
});
