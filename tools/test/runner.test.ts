/** A runner that is green on nothing, or on what it did not understand, is worse than none. */
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { cpSync, globSync } from 'node:fs';
import { join } from 'node:path';
import { type TestContext, test } from 'node:test';
import { planted } from './planted.ts';

const TOOLS = join(import.meta.dirname, '..');

/** Runs the runner in a house of its own, whose only test file holds this. */
function tested(t: TestContext, body: string, ...args: string[]) {
  const head = "import { describe, test } from 'node:test';\nimport assert from 'node:assert/strict';\n";
  const root = planted(t, { 'core/test/volume.test.ts': head + body });
  for (const file of globSync('*.mjs', { cwd: TOOLS })) cpSync(join(TOOLS, file), join(root, 'tools', file));
  const { NODE_TEST_CONTEXT: _, ...env } = process.env;
  const { stdout, status } = spawnSync(process.execPath, [join(root, 'tools/test.mjs'), ...args], {
    encoding: 'utf8',
    env,
  });
  return { status, stdout, last: stdout.trimEnd().split('\n').at(-1) };
}

const CASES: readonly (readonly [what: string, body: string, last: string, says: RegExp])[] = [
  [
    'what passes',
    "test('a', () => {}); describe('b', () => test('c', () => {}));",
    '2 passed, 0 failed',
    /0 skipped/,
  ],
  [
    'what fails',
    "test('a', () => assert.equal(1, 2)); test('b', () => {});",
    '1 passed, 1 failed',
    /✗ a .*volume/,
  ],
  [
    'a group that fails once for each test in it',
    "describe('a', () => { test('b', () => assert.fail()); test('c', () => {}); });",
    '1 passed, 1 failed',
    /✗ b /,
  ],
  ['what throws before any test', "throw new Error('no')", '0 passed, 2 failed', /no test passed/],
  ['a text that is no program', 'test(', '0 passed, 2 failed', /no test passed/],
  ['a file without tests', '', '0 passed, 2 failed', /this file has no tests/],
  [
    'a skip with its reason',
    "test('a', { skip: 'no such host' }); test('b', () => {});",
    '1 passed, 0 failed',
    /- a: no such host\n[\s\S]*1 skipped/,
  ],
  [
    'a skip without one',
    "test.skip('a'); test('b', () => {});",
    '1 passed, 1 failed',
    /skipped without a reason/,
  ],
  [
    'the zone of another place',
    "test('a', () => assert.equal(new Date(2026, 0, 1).getTimezoneOffset(), -825));",
    '1 passed, 0 failed',
    /zone Pacific\/Chatham/,
  ],
];

for (const [what, body, last, says] of CASES) {
  test(`the runner counts ${what}`, (t) => {
    const found = tested(t, body, 'core/test');
    assert.equal(found.last, last, found.stdout);
    assert.match(found.stdout, says);
    assert.equal(found.status, last.endsWith(' 0 failed') ? 0 : 1);
  });
}

test('no test file at all is a failure', (t) => {
  const { status, last } = tested(t, '', 'nowhere');
  assert.deepEqual([status, last], [1, '0 passed, 1 failed']);
});

test('a check that fails is counted with the tests', (t) => {
  const { status, stdout, last } = tested(t, "test('adds', () => {});");
  assert.match(stdout, /✗ rules \(1\)\n {4}core\/RULES\.md: no test is named \[BA1\]/);
  assert.match(last ?? '', /^\d+ passed, [1-9]\d* failed$/);
  assert.equal(status, 1);
});
