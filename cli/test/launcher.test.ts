import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type TestContext, test } from 'node:test';

const CLI = join(import.meta.dirname, '..');
const HOUSE = join(CLI, '..');

/** The launcher in a house of its own, with a `main.ts` that says how it was called. */
function alone(t: TestContext): string {
  const root = mkdtempSync(join(tmpdir(), 'launcher-'));
  t.after(() => rmSync(root, { recursive: true, force: true }));
  for (const path of ['bin/feedwright.mjs', 'package.json']) cpSync(join(CLI, path), join(root, 'cli', path));
  mkdirSync(join(root, 'cli/src'));
  mkdirSync(join(root, 'node_modules/.bin'), { recursive: true });
  writeFileSync(
    join(root, 'cli/src/main.ts'),
    'const asked: string[] = process.argv.slice(2);\nconsole.log(process.version, ...asked);\nprocess.exitCode = 3;\n',
  );
  return root;
}

const run = (node: string, ...args: string[]) => spawnSync(node, args, { encoding: 'utf8' });

test('answers --version from the manifest alone', (t) => {
  const root = alone(t);
  rmSync(join(root, 'cli/src'), { recursive: true });
  const { stdout, status } = run(process.execPath, join(root, 'cli/bin/feedwright.mjs'), '--version');
  assert.match(stdout, /^\d+\.\d+\.\d+\n$/);
  assert.equal(status, 0);
});

test('hands its arguments on and its ending back, also through a link', (t) => {
  const root = alone(t);
  const link = join(root, 'node_modules/.bin/feedwright');
  symlinkSync('../../cli/bin/feedwright.mjs', link);
  const { stdout, stderr, status } = run(process.execPath, link, 'plan', '--json');
  assert.equal(stdout, `${process.version} plan --json\n`);
  assert.equal(stderr, '');
  assert.equal(status, 3);
});

test('remembers what it compiled inside the house', (t) => {
  const root = alone(t);
  run(process.execPath, join(root, 'cli/bin/feedwright.mjs'), 'plan');
  assert.ok(existsSync(join(root, 'node_modules/.cache/feedwright')));
});

test('is linked by its name, and npx finds it without asking anybody', () => {
  const { stdout } = spawnSync('npx', ['--no-install', 'feedwright', '--version'], {
    cwd: HOUSE,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  assert.match(stdout, /^\d+\.\d+\.\d+\n$/);
});

/** A Node that is too old, if this machine has one: npm tells what it runs on. */
const machine = process.env.npm_node_execpath ?? '';
const old = existsSync(machine) && Number(/^v(\d+)/.exec(run(machine, '--version').stdout)?.[1]) < 24;

test('an older Node hands over to the one that came along', {
  skip: old ? false : 'no older Node here',
}, (t) => {
  const root = alone(t);
  const launcher = join(root, 'cli/bin/feedwright.mjs');
  const without = run(machine, launcher, 'plan');
  assert.match(without.stderr, /needs Node 24 or later; this is v\d+/);
  assert.equal(without.status, 2);
  const folder = `node_modules/node-${process.platform}-${process.arch}/bin`;
  mkdirSync(join(root, folder), { recursive: true });
  symlinkSync(process.execPath, join(root, folder, 'node'));
  const { stdout, status } = run(machine, launcher, 'plan', 'a b');
  assert.equal(stdout, `${process.version} plan a b\n`);
  assert.equal(status, 3);
});
