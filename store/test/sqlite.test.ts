/** Does the log on disk keep its promises when the disk, the file or the process does not? */
import assert from 'node:assert/strict';
import { spawn, spawnSync } from 'node:child_process';
import {
  closeSync,
  existsSync,
  mkdtempSync,
  openSync,
  rmSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { after, test } from 'node:test';
import { LogError } from '../src/log.ts';
import { backupLog, restoreLog } from '../src/sqlite/backup.ts';
import { sqliteLog } from '../src/sqlite/log.ts';
import { integrityProblems } from '../src/sqlite/sound.ts';
import { verify } from '../src/verify.ts';
import { entry, logContract } from './contract.ts';

const folder = mkdtempSync(join(tmpdir(), 'feedwright-log-'));
after(() => rmSync(folder, { recursive: true, force: true }));
let made = 0;
const file = (): string => join(folder, `log-${++made}.db`);
const open = (path: string) => sqliteLog(path, { epoch: `epoch-${made}` });
const codeOf = (work: () => unknown): string => {
  try {
    work();
  } catch (problem) {
    if (problem instanceof LogError) return problem.code;
    throw problem;
  }
  return 'nothing was refused';
};
const codeOfLater = (work: Promise<unknown>): Promise<string> =>
  work.then(
    () => 'nothing was refused',
    (problem) => (problem instanceof LogError ? problem.code : Promise.reject(problem)),
  );

logContract('sqlite', () => open(file()));

test('[SR6] the database waits for the disk at every commit, after a write too', async () => {
  const log = open(file());
  await log.append([entry('1')]);
  const pragma = (name: string) => Object.values(log.database.prepare(`PRAGMA ${name}`).get() ?? {})[0];
  assert.equal(pragma('journal_mode'), 'wal');
  assert.equal(pragma('synchronous'), 2); // 2 is FULL: https://sqlite.org/pragma.html#pragma_synchronous
  log.close();
});

test('[SR6] an entry can be neither changed nor removed, even past this code', async () => {
  const log = open(file());
  await log.append([entry('1')]);
  assert.throws(() => log.database.exec("UPDATE entry SET text = 'x'"), /never changed/);
  assert.throws(() => log.database.exec('DELETE FROM entry'), /never removed/);
  assert.throws(() =>
    log.database.exec("INSERT OR REPLACE INTO entry SELECT position, id, course, ward, 'x', head FROM entry"),
  );
  assert.equal(log.all()[0]!.text, entry('1').text);
  log.close();
});

test('[SR6] what was kept is there after closing and opening again, and goes on from there', async () => {
  const path = file();
  const log = open(path);
  const [first] = await log.append([entry('1')]);
  log.close();
  const again = open(path);
  assert.equal(again.epoch, log.epoch);
  const [second] = await again.append([entry('2')]);
  assert.equal(second!.position, first!.position + 1);
  assert.deepEqual(verify(again).findings, []);
  again.close();
});

test('[SR7] a second writer is refused at once; a reader beside the writer sees what comes', async () => {
  const path = file();
  const log = open(path);
  assert.equal(
    codeOf(() => open(path)),
    'log/in-use',
  );
  const reader = sqliteLog(path, { epoch: 'x', readOnly: true });
  await log.append([entry('1')]);
  assert.equal(reader.head('c1')!.count, 1);
  await log.append([entry('2')]);
  assert.equal(reader.head('c1')!.count, 2);
  assert.equal(await codeOfLater(reader.append([entry('3')])), 'log/read-only');
  reader.close();
  log.close();
  open(path).close();
});

test('[SR7] a full disk refuses what came, keeps what was there, and goes on when there is room again', async () => {
  const log = open(file());
  await log.append([entry('1')]);
  const pages = Number(Object.values(log.database.prepare('PRAGMA page_count').get() ?? {})[0]);
  log.database.exec(`PRAGMA max_page_count = ${pages + 2}`);
  const large = Array.from({ length: 50 }, (_, n) =>
    entry(`big-${n}`, 'c1', 'w1', JSON.stringify('x'.repeat(2000))),
  );
  assert.equal(await codeOfLater(log.append(large)), 'log/disk-full');
  assert.deepEqual(
    log.all().map((one) => one.id),
    ['1'],
  );
  log.database.exec('PRAGMA max_page_count = 1000000');
  assert.equal((await log.append(large)).length, 50);
  assert.deepEqual(verify(log).findings, []);
  log.close();
});

test('[SR7] a corrupt page is a clear error, not a wrong answer', async () => {
  const path = file();
  const log = open(path);
  await log.append(
    Array.from({ length: 400 }, (_, n) => entry(`e${n}`, 'c1', 'w1', JSON.stringify('x'.repeat(300)))),
  );
  log.database.exec('PRAGMA wal_checkpoint(TRUNCATE)');
  log.close();
  const handle = openSync(path, 'r+');
  for (let at = 4096 * 8; at < statSync(path).size; at += 4096)
    writeSync(handle, Buffer.alloc(4096, 0xa5), 0, 4096, at);
  closeSync(handle);
  assert.equal(
    codeOf(() => {
      const broken = open(path);
      try {
        broken.all();
      } finally {
        broken.close();
      }
    }),
    'log/corrupt',
  );
});

test('[SR7] a file that is something else, or newer, is refused and left as it was', () => {
  const other = file();
  writeFileSync(other, 'this is a shopping list and not a database, whatever its name may say');
  assert.equal(
    codeOf(() => open(other)),
    'log/not-a-log',
  );
  const foreign = file();
  const database = new DatabaseSync(foreign);
  database.exec('CREATE TABLE recipe (name TEXT)');
  database.close();
  assert.equal(
    codeOf(() => open(foreign)),
    'log/not-a-log',
  );
  const newer = file();
  open(newer).close();
  const future = new DatabaseSync(newer);
  future.exec('PRAGMA user_version = 99');
  future.close();
  assert.equal(
    codeOf(() => open(newer)),
    'log/newer-version',
  );
});

test('[SR8] a backup made while entries come is whole and sound; restoring it makes a new epoch', async () => {
  const path = file();
  const log = open(path);
  await log.append(
    Array.from({ length: 3000 }, (_, n) =>
      entry(`before-${n}`, 'c1', 'w1', JSON.stringify('z'.repeat(4000))),
    ),
  );
  const copy = file();
  const writing = (async () => {
    for (let n = 0; n < 40; n += 1) await log.append([entry(`during-${n}`)]);
  })();
  const steps: number[] = [];
  const entries = await backupLog(log, copy, (left) => steps.push(left));
  await writing;
  assert.ok(entries >= 3000 && entries <= 3040, `${entries} entries`);
  assert.ok(steps.length > 0);
  assert.equal(await codeOfLater(backupLog(log, copy)), 'log/in-use');
  const target = file();
  assert.equal(restoreLog(copy, target, 'after-the-flood'), entries);
  const restored = open(target);
  assert.equal(restored.epoch, 'after-the-flood');
  assert.deepEqual(integrityProblems(restored.database), []);
  assert.deepEqual(verify(restored).findings, []);
  assert.deepEqual(restored.all(), log.all({ most: entries }));
  assert.equal(
    codeOf(() => restoreLog(copy, target, 'again')),
    'log/in-use',
  );
  restored.close();
  log.close();
});

test('[SR8] a damaged backup is not restored, and no half file is left', async () => {
  const log = open(file());
  await log.append(
    Array.from({ length: 500 }, (_, n) => entry(`e${n}`, 'c1', 'w1', JSON.stringify('y'.repeat(200)))),
  );
  const copy = file();
  await backupLog(log, copy);
  log.close();
  const handle = openSync(copy, 'r+');
  writeSync(handle, Buffer.alloc(4096 * 4, 0x5a), 0, 4096 * 4, 4096 * 6);
  closeSync(handle);
  const target = file();
  assert.equal(
    codeOf(() => restoreLog(copy, target, 'x')),
    'log/corrupt',
  );
  assert.ok(!existsSync(target) && !existsSync(`${target}.draft`));
});

/** A writer in a process of its own that says on its output what has been acknowledged. */
const WRITER = new URL('./writer.ts', import.meta.url).pathname;

async function killWhileWriting(path: string, round: number): Promise<string[]> {
  const child = spawn(process.execPath, [WRITER, path, String(round)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let said = '';
  child.stdout.on('data', (bytes: Buffer) => {
    said += bytes.toString();
    if (said.length > 2000 + ((round * 977) % 3000)) child.kill('SIGKILL');
  });
  await new Promise((resolve) => child.on('close', resolve));
  return said.split('\n').slice(0, -1);
}

test('[SR6] a writer that is killed loses and doubles nothing that it acknowledged', async () => {
  const path = file();
  const acknowledged: string[] = [];
  const kills = process.env.FEEDWRIGHT_SOAK === '1' ? 200 : 20;
  for (let round = 0; round < kills; round += 1) acknowledged.push(...(await killWhileWriting(path, round)));
  const log = open(path);
  const kept = new Map(log.all().map((one) => [`${one.id} ${one.position} ${one.head}`, one]));
  assert.ok(acknowledged.length > kills, `${acknowledged.length} acknowledged`);
  assert.deepEqual(
    acknowledged.filter((one) => !kept.has(one)),
    [],
  );
  assert.equal(new Set(log.all().map((one) => one.id)).size, log.all().length);
  assert.deepEqual(verify(log).findings, []);
  assert.deepEqual(integrityProblems(log.database), []);
  log.close();
});

test('[SR7] a second process on the same file is refused', () => {
  const path = file();
  const log = open(path);
  const child = spawnSync(process.execPath, [WRITER, path, '0'], { encoding: 'utf8' });
  assert.match(child.stderr, /log\/in-use/);
  assert.equal(child.stdout, '');
  log.close();
});
