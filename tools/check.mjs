// @ts-check
/**
 * Is the house in order? Every check is run, whatever the others found; one problem anywhere and it ends with 1.
 * `npm run check` looks at this house, `npm run check -- ROOT` at another.
 */
import { boundaries } from './boundaries.mjs';
import { lint, typing } from './compilers.mjs';
import { ROOT } from './house.mjs';
import { licences } from './licences.mjs';
import { lockfile } from './lockfile.mjs';
import { readme } from './readme.mjs';
import { rules } from './rules.mjs';

/** @type {Record<string, (root: string) => import('./house.mjs').Report>} */
const CHECKS = { types: typing, lint, boundaries, rules, lockfile, licences, readme };

/** @param {(root: string) => import('./house.mjs').Report} check @param {string} root */
function verdict(check, root) {
  try {
    const { looked, problems, notes = [] } = check(root);
    return { looked, notes, problems: looked === 0 ? [...problems, 'looked at nothing'] : problems };
  } catch (error) {
    return { looked: 0, notes: [], problems: [`could not be run: ${String(error)}`] };
  }
}

/** Runs one check and says what it found. @param {string} name @param {string} root */
function passes(name, root) {
  const { looked, problems, notes } = verdict(/** @type {any} */ (CHECKS)[name], root);
  console.log(`${problems.length === 0 ? '✓' : '✗'} ${name} (${looked})`);
  for (const problem of problems) console.log(`    ${problem.replaceAll('\n', '\n    ')}`);
  for (const note of notes) console.log(`    note: ${note}`);
  return problems.length === 0;
}

/** How many checks passed and how many failed. */
export function checkHouse(root = ROOT) {
  const verdicts = Object.keys(CHECKS).map((name) => passes(name, root));
  const passed = verdicts.filter(Boolean).length;
  return { passed, failed: verdicts.length - passed };
}

if (import.meta.main) {
  const { passed, failed } = checkHouse(process.argv[2]);
  console.log(`${passed} checks passed, ${failed} failed`);
  process.exitCode = failed === 0 ? 0 : 1;
}
