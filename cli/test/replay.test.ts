/** Is what was recorded told again as it was, and is a file that will not do refused by its line? */
import assert from 'node:assert/strict';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { planSchema } from '@feedwright/core/screen/plan/schema';
import { standingSchema } from '@feedwright/core/screen/standing/schema';
import { feedwright } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'feedwright-replay-'));
after(() => rmSync(folder, { recursive: true, force: true }));

function kept(name: string, text: string): string {
  const file = join(folder, name);
  writeFileSync(file, text);
  return file;
}

const EXPORTED = feedwright(['demo', '--ledger']).out;
const FILE = kept('ward.ndjson', EXPORTED);
const LINES = EXPORTED.trimEnd().split('\n');
const POLICY = new URL('../../demo/policy.json', import.meta.url).pathname;
const AT = ['--at', '2026-10-25T11:30:00+00:00'] as const;

/** The entries of the export by themselves, one a line. */
const ENTRIES = LINES.slice(1, -1).map((line) => JSON.parse(line).text as string);

test('[CL8] everybody’s standing at a moment, each with the plan from there', () => {
  const { code, out, err } = feedwright(['replay', FILE, ...AT, '--policy', POLICY]);
  assert.equal(code, 0, err);
  assert.equal(out.match(/^Standing of /gm)?.length, 12);
  assert.equal(out.match(/^at 11:30 on 25 Oct, from \d+ entries$/gm)?.length, 12);
  assert.equal(out.match(/^Feeding plan for /gm)?.length, 12);
  assert.match(out, /container edith-6: 497 mL left of 630 mL, put up at 10:00, dry at 18:08/);
  assert.match(out, /10:00 {2}already up, volume to be delivered 487 mL, down by 18:00 \(hang limit\)/);
});

test('[CL8] the same from an export and from plain lines in whatever order; the export can be taken in', () => {
  const from = (file: string) => feedwright(['replay', file, ...AT, '--course', 'bed-06']).out;
  const said = from(FILE);
  assert.match(said, /nothing runs since 11:00: equipment, 30 min, 38 mL at the rate before/);
  assert.equal(from(kept('turned.ndjson', ENTRIES.toReversed().join('\n'))), said);
  const taken = feedwright(['import', FILE, '--data', join(folder, 'data')]).out;
  assert.match(taken, new RegExp(`^${ENTRIES.length} entries taken in, 0 were there already`));
  assert.match(taken, /Every chain ends in the head that the file names/);
});

test('[CL3] [CL4] in JSON by its schemas, with the numbers of the words', () => {
  const args = ['replay', FILE, ...AT, '--policy', POLICY];
  const { document, at, courses } = JSON.parse(feedwright([...args, '--json']).out);
  assert.equal(document, 'feedwright-replay/1');
  assert.equal(at, '2026-10-25T11:30:00+00:00');
  assert.equal(courses.length, 12);
  for (const { standing, plan } of courses) {
    assert.ok(standingSchema.safeParse(standing).success, standing.course);
    if (plan !== null) assert.ok(planSchema.safeParse(plan).success, standing.course);
  }
  const [edith] = courses;
  assert.equal(edith.standing.container.remainingMl, 497.5);
  assert.equal(edith.plan.containers[0].takeDownBy, '2026-10-25T18:00:00+00:00');
  assert.match(
    feedwright([...args, '--course', 'bed-01', '--working']).out,
    /V_balance = V_in − V_out; {2}V_balance = 212\.5 mL {2}\[ST20\]/,
  );
});

test('[CL8] without a moment it is the last one in the file; before the first there is nothing', () => {
  const says = (...args: readonly string[]) => feedwright(['replay', FILE, ...args]).out;
  assert.match(says('--course', 'bed-11'), /^at 07:00 on 27 Oct, from 54 entries$/m);
  assert.match(says('--at', '2026-10-01T08:00'), /Nothing is on record by 2026-10-01T08:00:00\+01:00\./);
});

test('[CL5] a moment is read by the clock of the orders, and asked about where that shows it twice', () => {
  const args = ['replay', FILE, '--course', 'bed-11', '--at'];
  assert.match(feedwright([...args, '2026-10-25T00:30']).out, /^at 00:30 on 25 Oct/m);
  const twice = feedwright([...args, '2026-10-25T01:30']);
  assert.equal(twice.code, 2);
  assert.match(twice.err, /--at: the clock of Europe\/London shows “2026-10-25T01:30” twice/);
});

test('[CL9] every line that will not do is named with line, field and remedy, and nothing else is said', () => {
  const bent = [...ENTRIES.slice(0, 3)];
  const pump = ENTRIES.find((text) => text.includes('pump-started/1'))!;
  bent.push(
    pump.replace(/"rateMlPerHour":[\d.]+/, '"rateMlPerHour":"1,500"'),
    '{"id":',
    pump.replace('/1"', '"'),
  );
  const { code, out, err } = feedwright(['replay', kept('bent.ndjson', bent.join('\n')), ...AT]);
  assert.equal(code, 2);
  assert.equal(out, '');
  assert.match(err, /bent\.ndjson: line 4\.fact\.rateMlPerHour: “1,500” can be read in more than one way/);
  assert.match(err, /bent\.ndjson: line 5: not whole JSON/);
  assert.match(err, /bent\.ndjson: line 6\.fact\.kind: “pump-started” is not a kind of fact\. Write it like/);
});

test('[CL9] an entry of a newer kind is kept and said', () => {
  const newer = JSON.stringify({
    ...JSON.parse(ENTRIES.find((text) => text.includes('"bed-01"') && text.includes('mouth-care'))!),
    id: 'newer-1',
    fact: { kind: 'mouth-care-done/2', with: 'a soft brush' },
  });
  const file = kept('newer.ndjson', [...ENTRIES, newer].join('\n'));
  const { code, out } = feedwright(['replay', file, '--course', 'bed-01', ...AT]);
  assert.equal(code, 0);
  assert.match(out, /1 entry of kind mouth-care-done\/2, which this release does not know: kept/);
});

test('[CL9] a ledger that was cut short, an empty file and a course that is not there are refused', () => {
  const refused = (file: string, ...args: readonly string[]) => {
    const { code, out, err } = feedwright(['replay', file, ...args]);
    assert.equal(code, 2);
    assert.equal(out, '');
    return err;
  };
  assert.match(
    refused(kept('cut.ndjson', LINES.slice(0, 40).join('\n'))),
    /after 39 entries: the file was cut/,
  );
  const fewer = [...LINES.slice(0, 5), ...LINES.slice(6)].join('\n');
  assert.match(refused(kept('fewer.ndjson', fewer)), /says 1,\d+ entries and has 1,\d+/);
  assert.match(refused(kept('none.ndjson', '\n\n')), /there is no entry in the file/);
  assert.match(refused(join(folder, 'nowhere')), /there is no file/);
  assert.match(refused(FILE, '--course', 'bed-13'), /“bed-13” is not known\. One of: bed-0/);
});
