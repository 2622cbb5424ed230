// @ts-check
/**
 * Is what the README shows what the command prints today?
 * Every fenced block marked `console` is a session: its `$ npx --no-install feedwright …` lines are run, and what
 * follows each must be the output, to the letter.
 */
import { spawnSync } from 'node:child_process';
import { read } from './house.mjs';

const PROMPT = '$ npx --no-install feedwright ';

/** @param {string} text @returns {{ line: number, command: string, shown: string }[]} */
export function sessions(text) {
  const found = [];
  for (const block of text.matchAll(/^```console\n([\s\S]*?)^```$/gm)) {
    const line = text.slice(0, block.index).split('\n').length + 1;
    for (const part of (block[1] ?? '').split(/^(?=\$ )/m)) {
      const [command = '', ...shown] = part.split('\n');
      found.push({ line, command, shown: shown.join('\n').trimEnd() });
    }
  }
  return found;
}

/** Words of a command line; quotes keep spaces together. @param {string} line */
const words = (line) =>
  [...line.matchAll(/'([^']*)'|"([^"]*)"|(\S+)/g)].map((word) => word[1] ?? word[2] ?? word[3] ?? '');

/** @param {string} root @param {string} command */
function output(root, command) {
  const { stdout, stderr } = spawnSync(
    process.execPath,
    ['cli/bin/feedwright.mjs', ...words(command.slice(PROMPT.length))],
    { cwd: root, encoding: 'utf8', env: { ...process.env, NO_COLOR: '1' } },
  );
  return (stdout + stderr).trimEnd();
}

/** @param {string} printed @param {string} shown */
function firstDifference(printed, shown) {
  const [now, then] = [printed.split('\n'), shown.split('\n')];
  const at = now.findIndex((line, index) => line !== then[index]);
  const index = at < 0 ? now.length : at;
  return `shows ${JSON.stringify(then[index] ?? '(nothing)')}, prints ${JSON.stringify(now[index] ?? '(nothing)')}`;
}

/** @param {string} root @returns {import('./house.mjs').Report} */
export function readme(root) {
  const text = read(root, 'README.md');
  const problems = [];
  const found = sessions(text);
  for (const { line, command, shown } of found) {
    if (!command.startsWith(PROMPT))
      problems.push(`README.md:${line}: starts with ${command}, not with ${PROMPT}`);
    else {
      const printed = output(root, command);
      if (printed !== shown) problems.push(`README.md:${line}: ${firstDifference(printed, shown)}`);
    }
  }
  const notes = found.length === 0 ? ['README.md: no example yet, so none was run'] : [];
  return { looked: text.length, problems, notes };
}
