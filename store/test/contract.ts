/** What every log must do, whatever it is made of. One suite, run by the in-memory log and by each real one. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { runs } from '../../core/test/runs.ts';
import { firstHead, nextHead } from '../src/chain.ts';
import { type Log, LogError, type Stored, type Submitted } from '../src/log.ts';
import { memoryLog } from '../src/memory.ts';
import { isProblem, ledgerLines, readLedgerLine } from '../src/ndjson.ts';
import { verify } from '../src/verify.ts';

export type MakeLog = () => Log;

export const entry = (id: string, course = 'c1', ward = 'w1', text = `{"id":"${id}"}`): Submitted => ({
  id,
  course,
  ward,
  text,
});

const refusal = async (work: Promise<unknown>): Promise<string> => {
  const problem = await work.then(
    () => null,
    (thrown: unknown) => thrown,
  );
  assert.ok(problem instanceof LogError, `refused with a LogError, not ${String(problem)}`);
  return problem.code;
};

const arbText = fc
  .string({ unit: 'grapheme', minLength: 1, maxLength: 40 })
  .filter((text) => text.isWellFormed());
const arbBatch = fc.array(
  fc.record({
    id: fc.integer({ min: 0, max: 30 }).map((n) => `e${n}`),
    course: fc.constantFrom('a', 'b', 'ç'),
    ward: fc.constantFrom('north', 'south'),
  }),
  { maxLength: 8 },
);

/** The same id always brings the same text and course, as an honest device would send it again. */
const honest = (
  batch: readonly { id: string; course: string; ward: string }[],
  texts: readonly string[],
): Submitted[] =>
  batch.map((one) => {
    const number = Number(one.id.slice(1));
    return { ...one, course: ['a', 'b', 'ç'][number % 3]!, text: texts[number % texts.length]! };
  });

function acceptance(name: string, make: MakeLog): void {
  test(`[SR1] ${name}: a batch sent again is acknowledged again and kept once`, async () => {
    const log = make();
    const first = await log.append([entry('1'), entry('2')]);
    const again = await log.append([entry('2'), entry('1'), entry('3')]);
    assert.deepEqual(
      first.map((one) => one.duplicate),
      [false, false],
    );
    assert.deepEqual(
      again.map((one) => one.duplicate),
      [true, true, false],
    );
    assert.deepEqual(
      again.map((one) => one.position),
      [2, 1, 3],
    );
    assert.equal(again[0]!.head, first[1]!.head);
    assert.deepEqual(
      log.all().map((one) => one.id),
      ['1', '2', '3'],
    );
    log.close();
  });

  test(`[SR1] ${name}: an entry twice in one batch is kept once`, async () => {
    const log = make();
    const acknowledged = await log.append([entry('1'), entry('1')]);
    assert.deepEqual(
      acknowledged.map((one) => [one.position, one.duplicate]),
      [
        [1, false],
        [1, true],
      ],
    );
    assert.equal(log.all().length, 1);
    log.close();
  });

  test(`[SR2] ${name}: an id with another text refuses its whole batch and nothing else`, async () => {
    const log = make();
    await log.append([entry('1')]);
    const conflict = log.append([entry('2'), entry('1', 'c1', 'w1', '{"changed":true}')]);
    const bystander = log.append([entry('3')]);
    assert.equal(await refusal(conflict), 'log/id-conflict');
    assert.equal((await bystander)[0]!.duplicate, false);
    assert.deepEqual(
      log.all().map((one) => one.id),
      ['1', '3'],
    );
    assert.deepEqual(verify(log).findings, []);
    log.close();
  });

  test(`[SR2] ${name}: what could not be kept to the byte is refused by its field`, async () => {
    const log = make();
    for (const broken of [
      entry('', 'c1'),
      entry('x'.repeat(201)),
      entry('1', ''),
      entry('1', 'c1', ''),
      entry('1', 'c1', 'w1', ''),
      entry('1', 'c1', 'w1', '"\ud800"'),
    ]) {
      assert.equal(await refusal(log.append([entry('good'), broken])), 'log/malformed');
    }
    assert.deepEqual(log.all(), []);
    log.close();
    assert.equal(await refusal(log.append([entry('1')])), 'log/closed');
  });
}

function reading(name: string, make: MakeLog): void {
  test(`[SR3] ${name}: a course or a ward is read from any position on, in pages`, async () => {
    const log = make();
    await log.append([
      entry('1', 'a', 'n'),
      entry('2', 'b', 'n'),
      entry('3', 'a', 's'),
      entry('4', 'a', 'n'),
    ]);
    const ids = (entries: readonly Stored[]): string => entries.map((one) => one.id).join('');
    assert.equal(ids(log.course('a')), '134');
    assert.equal(ids(log.course('a', { after: 1 })), '34');
    assert.equal(ids(log.course('a', { after: 1, most: 1 })), '3');
    assert.equal(ids(log.ward('n')), '124');
    assert.equal(ids(log.ward('n', { after: 2 })), '4');
    assert.equal(ids(log.all({ after: 2, most: 1 })), '3');
    assert.equal(ids(log.course('nobody')), '');
    assert.equal(log.head('nobody'), null);
    assert.deepEqual(
      log
        .heads()
        .map((one) => [one.course, one.count, one.position])
        .toSorted(),
      [
        ['a', 3, 4],
        ['b', 1, 2],
      ],
    );
    log.close();
  });

  test(`[SR3] ${name}: a follower hears every entry once, in order, once it is durable`, async () => {
    const log = make();
    const heard: string[] = [];
    const stop = log.follow((entries) => heard.push(...entries.map((one) => `${one.position}:${one.id}`)));
    await Promise.all([
      log.append([entry('1'), entry('2')]),
      log.append([entry('3')]),
      log.append([entry('2')]),
    ]);
    assert.deepEqual(heard, ['1:1', '2:2', '3:3']);
    stop();
    await log.append([entry('4')]);
    assert.equal(heard.length, 3);
    log.close();
  });

  test(`[SR3] ${name}: a checkpoint comes back as it was saved, the latest one`, () => {
    const log = make();
    const checkpoint = { course: 'a', count: 2, position: 7, version: '0.1.0', text: '{"ü":1}' };
    assert.equal(log.checkpoint('a'), null);
    log.saveCheckpoint(checkpoint);
    log.saveCheckpoint({ ...checkpoint, count: 3 });
    assert.deepEqual({ ...log.checkpoint('a') }, { ...checkpoint, count: 3 });
    log.close();
  });
}

function chains(name: string, make: MakeLog): void {
  test(`[SR4] ${name}: every acknowledgement carries the head of its course's chain`, async () => {
    const log = make();
    const [one, two, other] = await log.append([entry('1', 'a'), entry('2', 'a'), entry('3', 'b')]);
    const h1 = nextHead(firstHead('a'), entry('1').text);
    assert.equal(one!.head, h1);
    assert.equal(two!.head, nextHead(h1, entry('2').text));
    assert.equal(other!.head, nextHead(firstHead('b'), entry('3').text));
    assert.equal(log.head('a')!.head, two!.head);
    log.close();
  });

  test(`[SR5] ${name}: export and import lose nothing, and the heads come out the same`, async () => {
    const log = make();
    await log.append([
      entry('1', 'a', 'n', '{"text":"line\\nbreak é 😀 \u2028"}'),
      entry('2', 'b', 's', '{ "spaced" : 1.50 }'),
    ]);
    const lines = [...ledgerLines(log)];
    const copy = memoryLog('copy');
    for (const text of lines) {
      assert.ok(!text.includes('\n'));
      const line = readLedgerLine(text);
      assert.ok(!isProblem(line));
      if (line.line === 'entry') await copy.append([line.entry]);
      if (line.line === 'last') assert.deepEqual(copy.heads(), line.heads);
    }
    assert.deepEqual(copy.all(), log.all());
    log.close();
  });
}

/** Runs the whole suite against a log. */
export function logContract(name: string, make: MakeLog): void {
  acceptance(name, make);
  reading(name, make);
  chains(name, make);

  test(`[SR1] ${name}: any batches, concurrent and repeated, leave what the plain log in memory has`, async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(arbBatch, { maxLength: 6 }),
        fc.array(arbText, { minLength: 1, maxLength: 5 }),
        async (batches, texts) => {
          const log = make();
          const plain = memoryLog('plain');
          const sent = batches.map((batch) => honest(batch, texts));
          const answers = await Promise.all(sent.map((batch) => log.append(batch)));
          const expected = [];
          for (const batch of sent) expected.push(await plain.append(batch));
          assert.deepEqual(answers, expected);
          assert.deepEqual(
            log.all().map((one) => ({ ...one })),
            plain.all(),
          );
          assert.deepEqual(verify(log, plain.heads()).findings, []);
          log.close();
        },
      ),
      runs(200),
    );
  });
}
