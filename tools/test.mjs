// @ts-check
/**
 * Does it all hold? Every check, then every test; the last line counts both.
 * `npm test` tries each property a tenth as often as `npm run soak` does (`--soak`). Words after it choose test files by
 * a part of their path and leave the checks out: `npm test -- base/zone`.
 */
import { relative } from 'node:path';
import { run } from 'node:test';
import { checkHouse } from './check.mjs';
import { allSources, ROOT } from './house.mjs';

/** A zone that no ward is in, with summer time and a quarter-hour offset: nothing may lean on the machine's own. */
const ODD_ZONE = 'Pacific/Chatham';
const MINUTE = 60_000;
const SKIPPED_WITHOUT_REASON = 'skipped without a reason';

/** @typedef {{ passed: number, failed: number, skipped: number }} Counts */

/** @param {string[]} chosen */
const testFiles = (chosen) =>
  allSources(ROOT)
    .filter((file) => /\.test\.\w+$/.test(file))
    .filter((file) => chosen.length === 0 || chosen.some((part) => file.includes(part)));

/** @param {any} error the runner wraps what was thrown */
const reason = (error) => error?.cause?.stack ?? error?.cause ?? error?.stack ?? String(error);

/**
 * What a finished test amounts to; null for a group, which is no test itself and fails only for those within it.
 * @param {import('node:test').EventData.TestPass | import('node:test').EventData.TestFail} data @param {boolean} passed
 * @returns {{ as: keyof Counts, why?: string } | null}
 */
function verdict(data, passed) {
  if (data.details.type === 'suite' && passed) return null;
  const { error } = /** @type {any} */ (data.details);
  if (error?.failureType === 'subtestsFailed') return null;
  if (!passed) return { as: 'failed', why: reason(error) };
  if (data.name === data.file) return { as: 'failed', why: 'this file has no tests' };
  const excuse = data.skip ?? data.todo;
  if (excuse === undefined || excuse === false) return { as: 'passed' };
  return typeof excuse === 'string' ? { as: 'skipped' } : { as: 'failed', why: SKIPPED_WITHOUT_REASON };
}

/** @param {string[]} files @returns {Promise<Counts>} */
async function testAll(files) {
  const counts = { passed: 0, failed: 0, skipped: 0 };
  const stream = run({
    files: files.map((file) => `${ROOT}${file}`),
    concurrency: 2,
    timeout: process.env.FEEDWRIGHT_SOAK === '1' ? 60 * MINUTE : 5 * MINUTE,
    env: { ...process.env, TZ: ODD_ZONE },
  });
  for await (const { type, data } of stream) {
    if (type === 'test:stderr') process.stderr.write(data.message);
    if (type === 'test:stdout') process.stdout.write(data.message);
    if (type === 'test:summary' && data.file !== undefined) {
      const { file, duration_ms: ms, counts: own } = data;
      console.log(`  ${relative(ROOT, file)}: ${own.passed} in ${(ms / 1000).toFixed(1)} s`);
    }
    if (type !== 'test:pass' && type !== 'test:fail') continue;
    const said = verdict(data, type === 'test:pass');
    if (said === null) continue;
    counts[said.as] += 1;
    if (said.as === 'skipped') console.log(`- ${data.name}: ${data.skip ?? data.todo}`);
    if (said.as === 'failed') console.log(`✗ ${data.name} (${relative(ROOT, data.file ?? '')})\n${said.why}`);
  }
  return counts;
}

const args = process.argv.slice(2);
const chosen = args.filter((arg) => arg !== '--soak');
if (args.includes('--soak')) process.env.FEEDWRIGHT_SOAK = '1';

const started = Date.now();
const checks = chosen.length === 0 ? checkHouse() : { passed: 0, failed: 0 };
const files = testFiles(chosen);
console.log(`${files.length} test files on Node ${process.version}, zone ${ODD_ZONE}`);
const tests = files.length === 0 ? { passed: 0, failed: 0, skipped: 0 } : await testAll(files);
if (tests.passed === 0) console.log('✗ no test passed');

const passed = checks.passed + tests.passed;
const failed = checks.failed + tests.failed + (tests.passed === 0 ? 1 : 0);
console.log(`${tests.skipped} skipped, ${Math.round((Date.now() - started) / 1000)} s`);
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
