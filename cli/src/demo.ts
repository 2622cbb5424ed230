/** `feedwright demo`: the plans of the demo ward, whose people and numbers are all invented. */
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { plan } from './plan.ts';
import { plain, printLines } from './print.ts';

const WARD = new URL('../../demo/', import.meta.url);

export function demo(options: { readonly json?: boolean }): void {
  const files = readdirSync(WARD)
    .filter((name) => name.endsWith('.json'))
    .toSorted();
  if (options.json !== true) {
    printLines([
      plain('The demo ward. Everybody in it is invented; nothing here is advice for a real person.', 'title'),
    ]);
  }
  for (const name of files) {
    if (options.json !== true) printLines([plain(''), plain('─'.repeat(72), 'quiet')]);
    plan(fileURLToPath(new URL(name, WARD)), { confirm: {}, ...options });
  }
  // That one invented order stops is part of the show, not a failure of the command.
  process.exitCode = 0;
}
