/** The golden days of core/cases/days: what a day's entries come to, worked by hand on a page that a nurse can read. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import { emptyCourse, holdCourse, holdEntry, standingOf } from '@feedwright/core/standing/held-course';
import { type Day, HERE, readDays } from './day-file.ts';
import { tell } from './day-tell.ts';

const DAYS = readDays();
const VIEW = { policy: DEFAULT_POLICY, feeds: DEFAULT_FEEDS, zone: HERE };

function check({ entries, expected }: Day): void {
  const held = holdCourse(entries);
  const asWritten = entries.reduce(holdEntry, emptyCourse());
  for (const { at, lines } of expected) {
    const told = tell(standingOf(held, { ...VIEW, at }));
    for (const line of lines) assert.ok(told.includes(line), `expected: ${line}\nin:\n${told.join('\n')}`);
    assert.deepEqual(tell(standingOf(asWritten, { ...VIEW, at })), told);
  }
}

for (const one of DAYS) test(`[ST64] ${one.title}`, () => check(one));

test('[ST64] there are at least fifteen days, and each expects something', () => {
  assert.ok(DAYS.length >= 15, `${DAYS.length}`);
  assert.ok(
    DAYS.every((one) => one.expected.length > 0 && one.expected.every(({ lines }) => lines.length > 0)),
  );
  assert.equal(new Set(DAYS.map((one) => one.title)).size, DAYS.length);
});
