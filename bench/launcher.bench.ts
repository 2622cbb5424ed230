/** How long until `feedwright --version` has answered, against the same Node that starts and does nothing? */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { medians, type Report } from './measure.ts';

const LAUNCHER = join(import.meta.dirname, '../cli/bin/feedwright.mjs');
const STARTS = 30;

const start = (...args: string[]) => {
  const { status } = spawnSync(process.execPath, args, { stdio: 'ignore' });
  if (status !== 0) throw new Error(`node ${args.join(' ')} ended with ${status}`);
};

export default async function launcher(report: Report): Promise<void> {
  const [bare = Number.NaN, version = Number.NaN] = await medians(
    STARTS,
    () => start('-e', ''),
    () => start(LAUNCHER, '--version'),
  );
  report({
    what: 'feedwright --version against a bare start',
    measured: version / bare,
    limit: 4,
    unit: '×',
  });
}
