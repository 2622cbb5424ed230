/**
 * Is it still fast enough? Each `bench/NAME.bench.ts` measures something against a limit that it measures in the same
 * run, on the same machine, so that a slow machine moves both. `npm run bench [-- NAME …]`; ends with 1 on a miss.
 */
import { globSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Bench, Measured } from './measure.ts';

const shown = (value: number, unit: string) => `${value.toPrecision(3)} ${unit}`;

/** NaN is a miss: something was not measured. */
const kept = ({ measured, limit }: Measured): boolean => measured <= limit;

const line = (one: Measured): string =>
  [
    kept(one) ? '✓' : '✗',
    one.what.padEnd(64),
    shown(one.measured, one.unit).padStart(10),
    `limit ${shown(one.limit, one.unit)}`,
  ].join(' ');

async function benchAll(chosen: readonly string[]): Promise<number> {
  const files = globSync('*.bench.ts', { cwd: import.meta.dirname })
    .toSorted()
    .filter((file) => chosen.length === 0 || chosen.includes(basename(file, '.bench.ts')));
  const found: Measured[] = [];
  for (const file of files) {
    console.log(basename(file, '.bench.ts'));
    const bench: { readonly default: Bench } = await import(join(import.meta.dirname, file));
    await bench.default((one) => {
      found.push(one);
      console.log(`  ${line(one)}`);
    });
  }
  const missed = found.filter((one) => !kept(one)).length;
  console.log(`${found.length - missed} limits kept, ${missed} missed`);
  return found.length > 0 && missed === 0 ? 0 : 1;
}

process.exitCode = await benchAll(process.argv.slice(2));
