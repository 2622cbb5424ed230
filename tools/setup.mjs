// @ts-check
/**
 * What does a fresh clone need before anything can run?
 * The packages of the lock, and a Node of 24 or later. This file runs on any Node from 18 on, with nothing installed:
 * it brings both, then hands over to the script it was given. `node tools/setup.mjs SCRIPT [ARGUMENT …]`
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const OLDEST_NODE = 24;
const root = fileURLToPath(new URL('..', import.meta.url));
const stamp = join(root, 'node_modules', '.set-up');

/** @param {string} says @returns {never} */
function giveUp(says) {
  console.error(`\n${says}\n`);
  process.exit(2);
}

/** Changes whenever what is installed would. A folder carried to another kind of machine counts as absent. */
function wanted() {
  const lock = readFileSync(join(root, 'package-lock.json'));
  return `${createHash('sha256').update(lock).digest('hex')} ${process.platform} ${process.arch}`;
}

/**
 * The npm that called us, run by the Node that it runs on: the Node of this process may lie in the very folder that
 * `npm ci` is about to remove.
 * @returns {[command: string, ...first: string[]]}
 */
function npm() {
  const { npm_execpath: script, npm_node_execpath: node } = process.env;
  if (script?.endsWith('.js') && node && existsSync(node)) return [node, script];
  return [process.platform === 'win32' ? 'npm.cmd' : 'npm'];
}

function install() {
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted()) return;
  console.error('Setting up: installing the locked packages. This happens once.');
  const [command, ...first] = npm();
  const { status, error } = spawnSync(command, [...first, 'ci', '--ignore-scripts', '--loglevel=error'], {
    cwd: root,
    stdio: ['ignore', 2, 2],
    shell: command.endsWith('.cmd'),
  });
  if (status !== 0) giveUp(`Set-up failed: npm ci ended with ${error?.message ?? `status ${status}`}.`);
  writeFileSync(stamp, wanted());
}

/** @param {string} node @returns {number} its major version; 0 when it cannot be run at all */
function major(node) {
  const { stdout } = spawnSync(node, ['--version'], { encoding: 'utf8' });
  return Number(/^v(\d+)\./.exec(stdout ?? '')?.[1] ?? 0);
}

/** The Node of the locked platform package, else the machine's own. FEEDWRIGHT_NODE chooses another by its path. */
function findNode() {
  const asked = process.env.FEEDWRIGHT_NODE;
  const windows = process.platform === 'win32';
  const locked = join(
    root,
    'node_modules',
    `node-${windows ? 'win' : process.platform}-${process.arch}`,
    'bin',
    windows ? 'node.exe' : 'node',
  );
  const candidates = asked ? [asked] : [locked, process.execPath, process.env.npm_node_execpath ?? ''];
  const found = candidates.find((node) => existsSync(node) && major(node) >= OLDEST_NODE);
  return (
    found ??
    giveUp(
      asked
        ? `FEEDWRIGHT_NODE is ${asked}, which is no Node ${OLDEST_NODE} or later. Unset it or give another path.`
        : `Feedwright needs Node ${OLDEST_NODE} or later. None comes along for ${process.platform} ${process.arch}, and this machine has ${process.version}.\nInstall Node ${OLDEST_NODE} LTS from nodejs.org or your system's packages, then run the same command again.`,
    )
  );
}

const [script, ...rest] = process.argv.slice(2);
install();
const node = findNode();
if (script !== undefined) {
  const path = `${dirname(node)}${delimiter}${process.env.PATH ?? ''}`;
  const { status, signal } = spawnSync(node, [join(root, script), ...rest], {
    stdio: 'inherit',
    env: { ...process.env, PATH: path },
  });
  process.exit(status ?? (signal === null ? 1 : 130));
}
