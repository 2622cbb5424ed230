/**
 * What the first release wrote means the same for ever: its frozen entries, of every kind of version 1, fold to the frozen
 * standings beside this file. Those are never changed; a standing may come to say more, but nothing else.
 */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { fraction, ONE } from '@feedwright/core/base/fraction';
import { hours, minutes } from '@feedwright/core/base/instant';
import { ml } from '@feedwright/core/base/volume';
import type { FeedList } from '@feedwright/core/feeds/feed';
import type { Policy, PolicyRow } from '@feedwright/core/policy/policy';
import { parseEntryText } from '@feedwright/core/record/document';
import { FOLD_VERSION, readCheckpoint, writeCheckpoint } from '@feedwright/core/standing/checkpoint';
import { type HeldCourse, holdCourse, standingOf } from '@feedwright/core/standing/held-course';
import { at, LONDON } from './bedside.ts';

const file = (name: string): string => readFileSync(new URL(name, import.meta.url), 'utf8');

/** Frozen with the rest: neither the default policy nor the default feeds, which may change. */
const POLICY: Policy = {
  name: 'frozen',
  version: '1',
  rows: Object.entries({
    'day.start': 8 * 60,
    'shift.length': hours(12),
    'account.tolerance.fraction': fraction(1, 10),
    'account.tolerance.volume': ml(50),
    'residual.compare': 'more-than',
    'residual.alert': ml(100),
    'residual.stop': ml(500),
    'check.tolerance.every': hours(12),
    'duplicate.within': minutes(10),
  }).map(
    ([key, value]): PolicyRow => ({
      key: key as PolicyRow['key'],
      value: value as PolicyRow['value'],
      band: null,
      setting: null,
      source: 'frozen',
      provenance: 'facility',
      setBy: 'test',
      setOn: '2026-11-25',
      effectiveFrom: null,
      alternatives: [],
    }),
  ),
};
const FEEDS: FeedList = {
  version: 'frozen',
  feeds: [
    {
      id: 'standard-1.0',
      name: 'standard 1.0 kcal/mL',
      feedClass: 'standard',
      system: 'open-liquid',
      energyKcalPerMl: ONE,
      proteinGPerMl: fraction(4, 100),
      waterFraction: fraction(85, 100),
      osmolalityMosmPerKg: null,
      allergens: [],
      packs: [],
      labelHangLimit: null,
      source: 'frozen',
      provenance: 'facility',
    },
  ],
};

const TIMES = ['12:15', '14:05', '17:00'];

const course = (): HeldCourse =>
  holdCourse(
    file('../record/frozen-v1.ndjson')
      .split('\n')
      .filter((line) => line !== '')
      .map((line) => {
        const read = parseEntryText(line);
        return read.ok ? read.value : assert.fail(line);
      }),
  );

/** As JSON, the workings left out: how a number came about may be said in another way one day. */
const shown = (held: HeldCourse, time: string): unknown =>
  JSON.parse(
    JSON.stringify(
      standingOf(held, { at: at(time), policy: POLICY, feeds: FEEDS, zone: LONDON }),
      (field, value) => (field === 'working' ? undefined : value instanceof Set ? [...value] : value),
    ),
  );

/** Everything that is frozen is still so; what is new beside it is not looked at. */
function assertHolds(now: unknown, frozen: unknown, path: string): void {
  if (typeof frozen !== 'object' || frozen === null) {
    assert.deepEqual(now, frozen, path);
    return;
  }
  assert.ok(typeof now === 'object' && now !== null, path);
  if (Array.isArray(frozen)) assert.equal((now as readonly unknown[]).length, frozen.length, path);
  for (const [field, value] of Object.entries(frozen))
    assertHolds((now as Record<string, unknown>)[field], value, `${path}.${field}`);
}

test('[ST63] the frozen entries of version 1 fold to the frozen standings', () => {
  const held = course();
  const frozen: Readonly<Record<string, unknown>> = JSON.parse(file('frozen-v1.standing.golden.json'));
  assert.deepEqual(Object.keys(frozen), TIMES);
  for (const time of TIMES) assertHolds(shown(held, time), frozen[time], time);
});

test('[ST60] as long as the fold is of version 1, a frozen checkpoint is read and is what the frozen entries come to', () => {
  const text = file('frozen-v1.checkpoint.golden.json').trim();
  const read = readCheckpoint(text);
  const expected = FOLD_VERSION === 1 ? text : 'checkpoint/version';
  assert.equal(read.ok ? writeCheckpoint(read.value) : read.issues[0]?.code, expected);
  if (read.ok) assert.equal(writeCheckpoint(course().course), text);
});

/** For a new file beside these, when there is a second version. */
if (process.env.FEEDWRIGHT_FREEZE === '1') {
  const held = course();
  process.stderr.write(`${writeCheckpoint(held.course)}\n`);
  process.stderr.write(
    JSON.stringify(Object.fromEntries(TIMES.map((time) => [time, shown(held, time)])), null, 1),
  );
}
