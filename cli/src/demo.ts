/** `feedwright demo`: the plans of the demo ward, whose people and numbers are all invented. */
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { plan } from './plan.ts';
import { plain, printLines } from './print.ts';

const WARD = new URL('../../demo/', import.meta.url);
/** The first morning of the ward's three days, so that it is the same ward whenever somebody looks. */
const FIRST_MORNING = '2026-10-24T08:00:00+01:00';

export function demo(options: { readonly json?: boolean }): void {
  const files = readdirSync(WARD)
    .filter((name) => name.startsWith('bed-'))
    .toSorted();
  if (options.json !== true) {
    printLines([
      plain('The demo ward. Everybody in it is invented; nothing here is advice for a real person.', 'title'),
    ]);
  }
  for (const name of files) {
    if (options.json !== true) printLines([plain(''), plain('─'.repeat(72), 'quiet')]);
    const policy = fileURLToPath(new URL('policy.json', WARD));
    plan(fileURLToPath(new URL(name, WARD)), { confirm: {}, from: FIRST_MORNING, policy, ...options });
  }
}
