import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { appendFileSync, cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type TestContext, test } from 'node:test';
import { planted } from './planted.ts';

/** Stands in for npm: notes how it was called, and ends as `ENDS` says. */
const NPM = `
  const { appendFileSync, mkdirSync } = require('node:fs');
  mkdirSync('node_modules', { recursive: true });
  appendFileSync('npm-was-called', process.argv.slice(2).join(' ') + '\\n');
  process.exit(Number(process.env.ENDS ?? 0));
`;
const SCRIPT = 'console.log(process.version, ...process.argv.slice(2)); process.exit(7);';

function house(t: TestContext) {
  const root = planted(t, { 'npm.js': NPM, 'tools/script.mjs': SCRIPT });
  cpSync(join(import.meta.dirname, '../setup.mjs'), join(root, 'tools/setup.mjs'));
  const run = (env: Record<string, string> = {}) =>
    spawnSync(process.execPath, [join(root, 'tools/setup.mjs'), 'tools/script.mjs', 'a b'], {
      encoding: 'utf8',
      env: {
        ...process.env,
        npm_execpath: join(root, 'npm.js'),
        npm_node_execpath: process.execPath,
        FEEDWRIGHT_NODE: '',
        ...env,
      },
    });
  const calls = () =>
    existsSync(join(root, 'npm-was-called')) ? readFileSync(join(root, 'npm-was-called'), 'utf8') : '';
  return { root, run, calls };
}

const CALL = 'ci --ignore-scripts --loglevel=error\n';

test('installs what the lock says, once, and hands over', (t) => {
  const { run, calls } = house(t);
  for (const _ of ['first', 'second']) {
    const { status, stdout } = run();
    assert.equal(stdout, `${process.version} a b\n`);
    assert.equal(status, 7);
    assert.equal(calls(), CALL);
  }
});

test('installs again when the lock has changed', (t) => {
  const { root, run, calls } = house(t);
  run();
  appendFileSync(join(root, 'package-lock.json'), '\n');
  run();
  assert.equal(calls(), CALL + CALL);
});

test('an installation that failed is said, and tried again', (t) => {
  const { run, calls } = house(t);
  const { status, stderr, stdout } = run({ ENDS: '1' });
  assert.match(stderr, /Set-up failed: npm ci ended with status 1/);
  assert.deepEqual([status, stdout], [2, '']);
  assert.equal(run().status, 7);
  assert.equal(calls(), CALL + CALL);
});

/** Something that answers like an old Node. */
const old = { skip: process.platform === 'win32' ? 'a shell script stands in for Node' : false };

test('a Node that came along but is too old, or cannot run, is passed over', old, (t) => {
  const { root, run } = house(t);
  const bin = join(root, `node_modules/node-${process.platform}-${process.arch}/bin`);
  mkdirSync(bin, { recursive: true });
  for (const script of ['#!/bin/sh\necho v20.1.0\n', 'no program']) {
    writeFileSync(join(bin, 'node'), script, { mode: 0o755 });
    assert.equal(run().stdout, `${process.version} a b\n`);
  }
});

test('a Node that was asked for and is too old is refused by name', old, (t) => {
  const { root, run } = house(t);
  const asked = join(root, 'old-node');
  writeFileSync(asked, '#!/bin/sh\necho v20.1.0\n', { mode: 0o755 });
  const { status, stderr } = run({ FEEDWRIGHT_NODE: asked });
  assert.match(stderr, /FEEDWRIGHT_NODE is .*old-node, which is no Node 24 or later/);
  assert.equal(status, 2);
});
