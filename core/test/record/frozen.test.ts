/**
 * What the first release wrote must be read for ever, and mean the same: the file beside this one has an entry of every
 * kind of version 1, and one of a kind that nobody knows. It is never changed; new kinds get a file of their own.
 */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { minutes } from '@feedwright/core/base/instant';
import { ml, mlPerHour } from '@feedwright/core/base/volume';
import { parseInstant } from '@feedwright/core/base/zone';
import { parseEntryText, parseKeptEntry, writeEntryText } from '@feedwright/core/record/document';
import type { AnyEntry } from '@feedwright/core/record/entry';
import { FACT_KINDS } from '@feedwright/core/record/kinds/table';
import { ledgerOf } from '@feedwright/core/record/ledger';

const LINES = readFileSync(new URL('./frozen-v1.ndjson', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '');

const read = (text: string): AnyEntry => {
  const result = parseEntryText(text);
  return result.ok ? result.value : assert.fail(`${text}\n${JSON.stringify(result.issues)}`);
};

const factOf = (kind: string): AnyEntry['fact'] =>
  LINES.map(read).find((entry) => entry.fact.kind === kind)?.fact ?? assert.fail(`no ${kind}`);

test('[RC13] every kind of the first release is read, and written back to the same text', () => {
  for (const line of LINES) {
    assert.equal(writeEntryText(read(line)), line);
    assert.deepEqual(parseKeptEntry(line), { ok: true, value: read(line) });
  }
});

test('[RC13] the file has every kind of version 1 and one that is not known', () => {
  const kinds = LINES.map((line) => read(line).fact.kind);
  const first = FACT_KINDS.filter((kind) => kind.endsWith('/1'));
  assert.deepEqual(kinds.toSorted(), [...first, 'mood-noted/1'].toSorted());
  assert.deepEqual([...ledgerOf(LINES.map(read)).unknown], [['mood-noted/1', 1]]);
});

test('[RC13] what it says has not changed its meaning', () => {
  assert.deepEqual(factOf('pump-started/1'), {
    kind: 'pump-started/1',
    rate: mlPerHour(62.5),
    volumeToBeDelivered: ml(240),
  });
  assert.deepEqual(factOf('feed-given/1'), {
    kind: 'feed-given/1',
    by: 'gravity',
    feed: 'soya-1.0',
    strength: fraction(1, 2),
    volume: ml(240),
    lasted: minutes(25),
    heightCm: fraction(45),
    timedBarrel: { volume: ml(60), took: minutes(6.5) },
  });
  assert.deepEqual(factOf('feed-lost/1'), {
    kind: 'feed-lost/1',
    where: 'before-patient',
    volume: ml(100) / 3,
  });
  assert.deepEqual(factOf('container-put-up/1'), {
    kind: 'container-put-up/1',
    container: 'bag-1',
    holds: 'feed',
    feed: 'soya-1.0',
    strength: fraction(1),
    closed: false,
    filled: ml(260),
    newSet: true,
    comesDownBy: parseInstant('2026-11-26T08:00:00Z'),
    lot: 'L 77',
    expires: '2027-05-01',
  });
  assert.deepEqual(factOf('residual-checked/1'), {
    kind: 'residual-checked/1',
    found: 'measured',
    volume: ml(120),
    look: 'feed',
    returned: ml(100),
    discarded: ml(20),
  });
  assert.deepEqual(factOf('laboratory-result/1'), {
    kind: 'laboratory-result/1',
    analyte: 'phosphate',
    value: fraction(71, 100),
    unit: 'mmol/L',
  });
});
