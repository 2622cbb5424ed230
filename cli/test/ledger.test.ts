/** Does a ledger leave, come back and vouch for itself by the command? */
import assert from 'node:assert/strict';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { after, test } from 'node:test';
import { sqliteLog } from '@feedwright/store/sqlite/log';
import { feedwright } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'feedwright-ledger-'));
after(() => rmSync(folder, { recursive: true, force: true }));
const at = (name: string): string => join(folder, name);

async function ledger(name: string, entries: number): Promise<string> {
  const data = at(name);
  mkdirSync(data, { recursive: true });
  const log = sqliteLog(join(data, 'ledger.db'), { epoch: name });
  await log.append(
    Array.from({ length: entries }, (_, n) => ({
      id: `e${n}`,
      course: `c${n % 3}`,
      ward: 'w',
      text: JSON.stringify({ n, é: '😀\n' }),
    })),
  );
  log.close();
  return data;
}

test('[SR5] export and import by the command give the same lines and the same heads', async () => {
  const data = await ledger('first', 40);
  const { out } = feedwright(['export', '--data', data]);
  writeFileSync(at('out.ndjson'), out);
  const taken = feedwright(['import', at('out.ndjson'), '--data', at('second')]);
  assert.equal(taken.code, 0, taken.err);
  assert.match(taken.out, /40 entries taken in, 0 were there already/);
  const again = feedwright(['export', '--data', at('second')]).out;
  assert.deepEqual(again.split('\n').slice(1), out.split('\n').slice(1));
  assert.match(
    feedwright(['import', at('out.ndjson'), '--data', at('second')]).out,
    /0 entries taken in, 40 were there/,
  );
});

test('[SR5] a file that was cut short is refused before anything of it is taken in', async () => {
  const data = await ledger('third', 5);
  const lines = feedwright(['export', '--data', data]).out.trimEnd().split('\n');
  writeFileSync(at('cut.ndjson'), lines.slice(0, -1).join('\n'));
  const cut = feedwright(['import', at('cut.ndjson'), '--data', at('fourth')]);
  assert.equal(cut.code, 2);
  assert.match(cut.err, /cut short/);
  writeFileSync(at('short.ndjson'), [...lines.slice(0, 3), ...lines.slice(4)].join('\n'));
  assert.match(
    feedwright(['import', at('short.ndjson'), '--data', at('fourth')]).err,
    /says 5 entries and has 4/,
  );
  writeFileSync(at('headless.ndjson'), ['', ...lines.slice(1)].join('\n'));
  assert.match(
    feedwright(['import', at('headless.ndjson'), '--data', at('fourth')]).err,
    /does not begin as an exported ledger/,
  );
  writeFileSync(at('bent.ndjson'), [lines[0], '{"id":1}', ...lines.slice(1)].join('\n'));
  assert.match(feedwright(['import', at('bent.ndjson'), '--data', at('fourth')]).err, /line 2/);
  assert.equal(existsSync(at('fourth')), false);
});

test('[SR4] verify finds what was changed behind its back, and an end cut off against a kept head', async () => {
  const data = await ledger('fifth', 12);
  const heads = feedwright(['export', '--data', data]).out.trimEnd().split('\n').at(-1)!;
  writeFileSync(at('heads.json'), heads);
  const sound = feedwright(['verify', '--data', data, '--head', at('heads.json')]);
  assert.equal(sound.code, 0, sound.out);
  assert.match(
    sound.out,
    /12 entries of 3 courses looked at, 3 kept heads compared: all as it was acknowledged/,
  );
  const database = new DatabaseSync(join(data, 'ledger.db'));
  database.exec('DROP TRIGGER entry_is_never_removed; DELETE FROM entry WHERE position = 12');
  database.close();
  assert.equal(feedwright(['verify', '--data', data]).code, 0);
  const cut = feedwright(['verify', '--data', data, '--head', at('heads.json')]);
  assert.equal(cut.code, 1);
  assert.match(cut.out, /missing at the end/);
});

test('[SR8] backup and restore by the command; neither writes over what is there', async () => {
  const data = await ledger('sixth', 7);
  assert.match(feedwright(['backup', at('copy.db'), '--data', data]).out, /7 entries copied/);
  const twice = feedwright(['backup', at('copy.db'), '--data', data]);
  assert.equal(twice.code, 2);
  assert.match(twice.err, /there already/);
  assert.match(feedwright(['restore', at('copy.db'), '--data', at('seventh')]).out, /7 entries restored/);
  assert.equal(feedwright(['restore', at('copy.db'), '--data', data]).code, 2);
  const again = feedwright(['restore', at('copy.db'), '--data', at('eighth'), '--json']);
  assert.equal(JSON.parse(again.out).entries, 7);
  const lines = (where: string) => feedwright(['export', '--data', where]).out.split('\n').slice(1);
  assert.deepEqual(lines(at('seventh')), lines(data));
});

test('[SR7] a folder without a ledger is said, and none is made by looking', () => {
  const { code, err } = feedwright(['verify', '--data', at('nothing')]);
  assert.equal(code, 2);
  assert.match(err, /no ledger/);
  assert.equal(existsSync(at('nothing')), false);
});
