/** Does the standing say what the story says? Golden pages, to be read beside the stories in demo/. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import type { Instant } from '@feedwright/core/base/instant';
import type { Zone } from '@feedwright/core/base/zone';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import { planFor } from '@feedwright/core/plan/plan-for';
import { ENGLISH } from '@feedwright/core/screen/english/english';
import { standingJson } from '@feedwright/core/screen/standing/json';
import { standingSchema } from '@feedwright/core/screen/standing/schema';
import { standingLines } from '@feedwright/core/screen/standing/text';
import { type Ward, wardOf, wardStandings } from '@feedwright/core/standing/ward';
import { when } from '../../../demo/telling/clock.ts';
import { demoWard, SHOWN_SEED } from '../../../demo/ward.ts';

const LONDON = 'Europe/London' as Zone;
const DEMO = demoWard(SHOWN_SEED);
const WARD: Ward = wardOf(DEMO.entries);
const facility = { policy: DEMO.policy, feeds: DEFAULT_FEEDS };

const standingsAt = (at: Instant) => wardStandings(WARD, { at, ...facility, zone: LONDON });

function page(course: string, at: Instant): string {
  const standing = standingsAt(at).get(course)!;
  const { orderInForce: order } = standing;
  const plan = order.kind === 'one' ? planFor({ order: order.order, standing, ...facility }) : null;
  const lines = standingLines(course, standing, LONDON, { words: ENGLISH, plan, workings: false });
  return `${lines.map((one) => one.text).join('\n')}\n`;
}

const golden = (name: string): string =>
  readFileSync(new URL(`../../cases/ward/${name}.golden.txt`, import.meta.url), 'utf8');

test('[DW5] Edith on Monday at seven: the bag of 22:00 has hung an hour past its limit', () => {
  assert.equal(page('bed-01', when('Mon 07:00')), golden('edith-monday-0700'));
});

test('[DW5] Casimir on Sunday at half past three: the tube is out, and what that has cost so far', () => {
  assert.equal(page('bed-04', when('Sun 15:30')), golden('casimir-sunday-1530'));
});

test('[DW5] what the stories tell is said when it is so, and no longer when it is not', () => {
  const says = (course: string, at: string, what: RegExp) => assert.match(page(course, when(at)), what);
  const saysNot = (course: string, at: string, what: RegExp) =>
    assert.doesNotMatch(page(course, when(at)), what);
  says('bed-07', 'Sun 13:25', /line not clamped and not capped at 13:20/);
  saysNot('bed-07', 'Sun 13:40', /not clamped/);
  says('bed-06', 'Sat 16:00', /on hold since 15:00: fast \(until reviewed\)/);
  saysNot('bed-06', 'Sat 20:00', /on hold/);
  says('bed-06', 'Sun 16:10', /The counter showed 152 mL after 200 mL, and nobody cleared it/);
  says('bed-09', 'Sun 22:00', /residual at 21:20: 12 mL, green, 12 mL thrown away/);
  says('bed-09', 'Sun 22:00', /on hold since 21:25: not borne \(green aspirate\)/);
  says('bed-10', 'Sun 19:00', /phosphate 0\.92 → 0\.74 → 0\.58 → 0\.41 mmol\/L/);
  says('bed-10', 'Sun 19:00', /step 1 was declined at 06:20/);
  says('bed-12', 'Mon 10:30', /orders demo-12b, demo-12c are in force at once: no plan, charting goes on/);
  saysNot('bed-12', 'Mon 11:10', /at once/);
  says('bed-02', 'Sun 05:10', /received 1,000 mL of 1,000 mL ordered/);
  says('bed-03', 'Mon 13:00', /The same was charted on two devices: water given/);
  says('bed-08', 'Sun 09:40', /the tube is blocked since 09:30/);
  saysNot('bed-08', 'Sun 10:15', /is blocked/);
  // The clock change, by IANA: the same time by the clock twice, told apart.
  says('bed-11', 'Sun 01:35 GMT', /nothing runs since 01:30 \(UTC\+00:00\): care, 5 min/);
});

test('[CL3] the standing of each course keeps to its schema at every hour, with the numbers of the words', () => {
  for (let at = when('Sat 06:00'); at <= when('Tue 08:00'); at = (at + 6 * 3_600_000 + 7) as Instant) {
    for (const [course, standing] of standingsAt(at)) {
      const json = standingJson(course, standing, { zone: LONDON, words: ENGLISH });
      const read = standingSchema.safeParse(JSON.parse(JSON.stringify(json)));
      assert.ok(read.success, `${course} ${JSON.stringify(read.error?.issues)}`);
      assert.equal(read.data.course, course);
    }
  }
  const edith = standingsAt(when('Mon 07:00')).get('bed-01')!;
  const { container, today } = standingSchema.parse(
    standingJson('bed-01', edith, { zone: LONDON, words: ENGLISH }),
  );
  assert.equal(container?.remainingMl, 45);
  assert.equal(today?.orderedMl?.asWritten, 1725);
  assert.match(golden('edith-monday-0700'), /45 mL left of 720 mL[\s\S]*of 1,725 mL ordered by now/);
});
