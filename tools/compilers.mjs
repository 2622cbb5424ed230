// @ts-check
/**
 * What do the type checker and the linter say? Theirs is the verdict; ours only to see that they looked at something.
 */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { ROOT } from './house.mjs';

/** @param {string} root @param {string} program @param {string[]} args */
const run = (root, program, args) =>
  spawnSync(process.execPath, [join(ROOT, 'node_modules', program), ...args], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });

/** @param {string} text @returns {string[]} */
const lines = (text) => text.split('\n').filter((line) => line.trim() !== '');

/**
 * The core is checked a second time under its own settings, where no host exists.
 * @param {string} root @returns {import('./house.mjs').Report}
 */
export function typing(root) {
  let looked = 0;
  const problems = [];
  for (const project of ['tsconfig.json', 'core/tsconfig.json']) {
    const { stdout, stderr, status } = run(root, 'typescript/bin/tsc', [
      '-p',
      project,
      '--listFiles',
      '--pretty',
      'false',
    ]);
    const [files, said] = split(lines(stdout), (line) => /^(\/|[A-Za-z]:[\\/])/.test(line));
    const own = files.filter((file) => !file.includes('node_modules'));
    looked += own.length;
    problems.push(...said, ...lines(stderr));
    if (status !== 0 && said.length === 0) problems.push(`${project}: the type checker ended with ${status}`);
  }
  return { looked, problems };
}

/** @template T @param {T[]} all @param {(one: T) => boolean} is @returns {[T[], T[]]} */
const split = (all, is) => [all.filter(is), all.filter((one) => !is(one))];

/** @param {string} root @returns {import('./house.mjs').Report} */
export function lint(root) {
  const { stdout, stderr, status } = run(root, '@biomejs/biome/bin/biome', [
    'check',
    '--error-on-warnings',
    '--colors=off',
    '.',
  ]);
  const looked = Number(/Checked (\d+) files?/.exec(stdout + stderr)?.[1] ?? 0);
  return { looked, problems: status === 0 ? [] : [lines(stdout + stderr).join('\n')] };
}
