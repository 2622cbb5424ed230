/** Does a changed, missing or cut-off ledger show? Each kind of damage is done on purpose. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { firstHead, nextHead } from '../src/chain.ts';
import type { Log, Stored } from '../src/log.ts';
import { memoryLog } from '../src/memory.ts';
import { verify } from '../src/verify.ts';
import { entry } from './contract.ts';

async function ledger(): Promise<{ stored: readonly Stored[]; log: Log }> {
  const log = memoryLog('test');
  await log.append([entry('1', 'a'), entry('2', 'b'), entry('3', 'a'), entry('4', 'a'), entry('5', 'b')]);
  return { stored: log.all(), log };
}

const over = (stored: readonly Stored[]): Pick<Log, 'all'> => ({
  all: ({ after = 0 } = {}) => stored.filter((one) => one.position > after),
});

test('[SR4] a sound ledger verifies against its own heads', async () => {
  const { stored, log } = await ledger();
  const found = verify(over(stored), log.heads());
  assert.deepEqual(found.findings, []);
  assert.equal(found.entries, 5);
  assert.deepEqual(found.heads, log.heads());
});

test('[SR4] a changed text is found where it was changed, once for its chain', async () => {
  const { stored } = await ledger();
  const changed = stored.map((one) => (one.id === '3' ? { ...one, text: '{"id":"3 "}' } : one));
  assert.deepEqual(verify(over(changed)).findings, [{ code: 'changed', course: 'a', position: 3 }]);
});

test('[SR4] a removed entry is found by the gap and by its chain', async () => {
  const { stored } = await ledger();
  const findings = verify(over(stored.filter((one) => one.id !== '3'))).findings;
  assert.deepEqual(findings, [
    { code: 'missing', course: null, position: 3 },
    { code: 'changed', course: 'a', position: 4 },
  ]);
});

test('[SR4] two entries that changed places are found', async () => {
  const { stored } = await ledger();
  const swapped = stored.map((one) =>
    one.id === '3'
      ? { ...one, text: stored[3]!.text }
      : one.id === '4'
        ? { ...one, text: stored[2]!.text }
        : one,
  );
  assert.deepEqual(verify(over(swapped)).findings, [{ code: 'changed', course: 'a', position: 3 }]);
});

test('[SR4] a ledger cut off at the end is found only against a head kept elsewhere', async () => {
  const { stored, log } = await ledger();
  const cut = over(stored.slice(0, 3));
  assert.deepEqual(verify(cut).findings, []);
  assert.deepEqual(
    verify(cut, log.heads()).findings.map((one) => [one.code, one.course]),
    [
      ['cut-off', 'a'],
      ['cut-off', 'b'],
    ],
  );
});

test('[SR4] a ledger rewritten whole, chain and all, is found against a head kept elsewhere', async () => {
  const { log } = await ledger();
  const forged = memoryLog('forged');
  await forged.append([
    entry('1', 'a', 'w1', '{"forged":1}'),
    entry('2', 'b'),
    entry('3', 'a'),
    entry('4', 'a'),
    entry('5', 'b'),
  ]);
  assert.deepEqual(verify(forged).findings, []);
  assert.deepEqual(verify(forged, log.heads()).findings, [
    { code: 'other-history', course: 'a', position: 4 },
  ]);
});

test('[SR4] an old head vouches for its own part of a ledger that has grown since', async () => {
  const { log } = await ledger();
  const old = log.heads();
  await log.append([entry('6', 'a')]);
  assert.deepEqual(verify(log, old).findings, []);
});

test('[SR4] the head is SHA-256 over the head before, the length and the bytes', () => {
  // Worked outside this code with coreutils: the first head is `printf 'feedwright-chain/1\na' | sha256sum`.
  assert.equal(firstHead('a'), '5718eb631fd290efc8ccead8af8013267a21daa4252d48b681a09c6a713c6141');
  assert.equal(
    nextHead(firstHead('a'), 'é'),
    '2795b946d9aace099aef936e89b58305cffcae335c012e191c011aab18be45dd',
  );
});
