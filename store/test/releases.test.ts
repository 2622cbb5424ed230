/** Can this release open what every release before it left behind? One small ledger of each is kept, as it was written. */
import assert from 'node:assert/strict';
import { copyFileSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { sqliteLog } from '../src/sqlite/log.ts';
import { verify } from '../src/verify.ts';
import { entry } from './contract.ts';

const KEPT = new URL('./releases/', import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), 'feedwright-releases-'));
after(() => rmSync(folder, { recursive: true, force: true }));

/** The heads that the ledger of each release ended in, written down when it was made. */
const HEADS: Readonly<Record<string, string>> = {
  '0.1.0.db': '341fae4bc229b6470c2acf61f27354cb8ac789dd53ecc80e65c849f6d06d70af',
};

test('[SR6] the ledger that each release left is opened whole, and goes on from there', async () => {
  const releases = readdirSync(KEPT).filter((name) => name.endsWith('.db'));
  assert.deepEqual(releases, Object.keys(HEADS));
  for (const name of releases) {
    const path = join(folder, name);
    copyFileSync(join(KEPT, name), path);
    const log = sqliteLog(path, { epoch: 'unused' });
    assert.equal(log.epoch, `release ${name.replace('.db', '')}`);
    assert.equal(log.head('course-1')?.head, HEADS[name]);
    assert.deepEqual(verify(log).findings, []);
    assert.equal(log.all().length, 12);
    const [more] = await log.append([entry('after', 'course-1')]);
    assert.equal(more?.position, 13);
    log.close();
  }
});
