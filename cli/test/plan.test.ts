/** Does the command say what to pour, and refuse what it cannot read? Tried through the launcher, as a person would. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { planSchema } from '@feedwright/core/screen/plan/schema';
import { AT, feedwright, file, ORDER } from './run.ts';

const refused = (args: readonly string[], ...says: readonly RegExp[]): void => {
  const { code, out, err } = feedwright(args);
  assert.equal(code, 2, err);
  assert.equal(out, '');
  for (const part of says) assert.match(err, part);
};

test('[CL4] a day of 62.5 mL/h: three pours of 500 mL, the first with the prime, each down in eight hours', () => {
  // By hand: 62.5 mL/h × 8 h = 500 mL (hang limit 8 h for poured liquid feed); prime 15 + 5 mL with the new set.
  const path = file(ORDER);
  const { code, out } = feedwright(['plan', path, ...AT]);
  assert.equal(code, 0);
  assert.match(out, /NEXT {2}08:00 {2}Pour 520 mL, new set, run at 62\.5 mL\/h, down by 16:00\./);
  assert.match(out, /Enteral use only – not for intravenous use/);
  const { out: json } = feedwright(['plan', path, ...AT, '--json']);
  const plan = planSchema.parse(JSON.parse(json));
  assert.deepEqual(
    plan.containers.map((one) => [one.putUpAt.slice(11, 16), one.fillMl, one.volumeToDeliverMl]),
    [
      ['08:00', 520, 500],
      ['16:00', 500, 500],
      ['00:00', 500, 500],
    ],
  );
  assert.equal(plan.day?.energyKcal, 1500);
});

test('[CL4] every number of a container has its working, and the working ends in that number', () => {
  const { out } = feedwright(['plan', file(ORDER), ...AT, '--json']);
  const plan = JSON.parse(out);
  for (const container of plan.containers) {
    for (const key of ['fillMl', 'primeMl', 'volumeToDeliverMl', 'leftOverMl']) {
      assert.equal(container.working[key].result.value, container[key], key);
      assert.match(container.working[key].rule, /^[A-Z]{2}\d+$/);
    }
    for (const key of ['takeDownBy', 'runsDryAt'])
      assert.equal(container.working[key].result.at, container[key], key);
  }
  assert.match(
    feedwright(['plan', file(ORDER), ...AT, '--working']).out,
    /local policy hang\.open-liquid, set by/,
  );
});

test('[CL2] what is missing stops the plan with exit code 1 and is named, one problem each', () => {
  const { water: _, ...dry } = ORDER;
  const path = file({ ...dry, patient: { ...ORDER.patient, identifiers: [], birthDate: undefined } });
  const { code, out } = feedwright(['plan', path, ...AT]);
  assert.equal(code, 1);
  assert.match(out, /No plan until this is settled\./);
  assert.match(out, /Stop {2}OR2 {2}Fewer than two identifiers\./);
  assert.match(out, /Stop {2}OR2 {2}No water is ordered\./);
  assert.doesNotMatch(out, /Pour/);
  const check = feedwright(['check', path, ...AT, '--json']);
  assert.equal(check.code, 1);
  assert.equal(JSON.parse(check.out).stops, true);
});

test('[CL2] what is asked says its key, and a named person settles it', () => {
  const fast = file({ ...ORDER, regimen: { kind: 'continuous', rateMlPerHour: 160 } });
  const asked = feedwright(['plan', fast, ...AT]);
  assert.equal(asked.code, 1);
  assert.match(
    asked.out,
    /Ask {2}OR31 {2}The rate 160 mL\/h is over 150 mL\/h .*\[confirm with --confirm OR31=…\]/,
  );
  const settled = feedwright(['plan', fast, ...AT, '--confirm', 'OR31=Dr Imogen Vale']);
  assert.equal(settled.code, 0);
  assert.match(settled.out, /confirmed by Dr Imogen Vale/);
});

test('[CL1] a file that is missing, no JSON, of another kind or too large is refused by name', () => {
  refused(['plan', '/nowhere/order.json'], /\/nowhere\/order\.json/, /no file/);
  refused(['plan', '/tmp'], /“\/tmp” is a folder/);
  refused(['plan', file('{"document": "feedwright-order/1",\n  "id": }')], /line 2, column 9/);
  refused(['plan', file('')], /JSON/);
  refused(
    ['plan', file({ ...ORDER, document: 'feedwright-order/2' })],
    /feedwright-order\/2/,
    /feedwright-order\/1/,
  );
  refused(['plan', file({ shopping: ['milk'] })], /document/);
  refused(['plan', file(`"${'x'.repeat(50_000_000)}"`)], /50000002 bytes/, /at most/);
});

test('[CL1] a field that is unknown, negative, ambiguous or absurd is refused with its value and the remedy', () => {
  const rate = (rateMlPerHour: unknown) => file({ ...ORDER, regimen: { kind: 'continuous', rateMlPerHour } });
  refused(['plan', rate(-5), ...AT], /regimen\.rateMlPerHour/, /−5 mL/);
  refused(['plan', rate('1,500'), ...AT], /regimen\.rateMlPerHour/, /1\.5000?/, /1500/);
  refused(['plan', rate('.5'), ...AT], /regimen\.rateMlPerHour/, /0\.5/);
  refused(['plan', rate(50_000), ...AT], /regimen\.rateMlPerHour/, /50,000 mL/);
  refused(
    ['plan', file({ ...ORDER, regimen: { kind: 'continuous', rate: 60 } }), ...AT],
    /regimen\.rate/,
    /rateMlPerHour/,
  );
  refused(['plan', file({ ...ORDER, zone: 'Europe/Atlantis' }), ...AT], /zone/, /Europe\/Atlantis/);
});

test('[CL1] a flag that cannot be read is refused by its name', () => {
  const path = file(ORDER);
  refused(['plan', path, '--from', 'tomorrow'], /--from/, /tomorrow/, /2026-11-25T08:00/);
  refused(['plan', path, ...AT, '--hours', '0'], /--hours/);
  refused(['plan', path, ...AT, '--zone', 'Mars/Base'], /--zone/, /Mars\/Base/);
  refused(['plan', path, ...AT, '--zone', 'America/New_York'], /Europe\/London/, /America\/New_York/);
  refused(['plan', path, ...AT, '--confirm', 'OR31'], /--confirm/, /KEY=VALUE/);
  refused(['plan', path, '--speed'], /--speed/);
  refused(['plam', path], /plam/, /plan/);
  refused(['policy', 'hang.clsoed'], /hang\.clsoed/, /hang\.closed/);
  refused(['schema', 'recipe'], /recipe/, /order/);
});

test('[CL5] a moment is read by the order’s clock; the hour that comes twice or never is asked about', () => {
  const path = file(ORDER);
  const summer = file({
    ...ORDER,
    startsAt: '2026-06-01T08:00:00+01:00',
    prescribedAt: '2026-06-01T07:00:00+01:00',
  });
  const { out } = feedwright(['plan', summer, '--from', '2026-06-01T08:00', '--json']);
  assert.equal(JSON.parse(out).at, '2026-06-01T08:00:00+01:00');
  // Europe/London, IANA time zone data: 01:00–02:00 comes twice on 25 October 2026 and never on 29 March 2026.
  refused(['plan', path, '--from', '2026-10-25T01:30'], /--from/, /Europe\/London shows .* twice/);
  refused(['plan', path, '--from', '2026-03-29T01:30'], /--from/, /Europe\/London skips/);
  refused(['plan', path, '--from', '2026-02-30T08:00'], /--from/);
});

test('[CL3] a schema for each document; colour only where it is wanted', () => {
  for (const name of ['order', 'policy', 'feeds', 'plan', 'standing', 'entry']) {
    const { code, out } = feedwright(['schema', name]);
    assert.equal(code, 0);
    assert.match(JSON.parse(out).$schema, /2020-12/);
  }
  assert.equal(feedwright(['plan', file(ORDER), ...AT]).out.includes('\u001b'), false);
});

test('[CL3] policy and feeds show each row with its source, and a facility’s own file on top', () => {
  const row = feedwright(['policy', 'hang.open-liquid']).out;
  assert.match(row, /→ 8 h/);
  assert.match(row, /otherwise 12 h/);
  const listed = JSON.parse(feedwright(['feeds', 'standard-1.0', '--json']).out);
  assert.deepEqual(
    listed.feeds.map((one: { id: string }) => one.id),
    ['standard-1.0'],
  );
  const own = file({
    document: 'feedwright-policy/1',
    name: 'Birch ward',
    version: '1',
    rows: [
      {
        key: 'hang.open-liquid',
        value: '6 h',
        source: 'facility',
        provenance: 'facility',
        setBy: 'Sister Oake',
        setOn: '2026-11-01',
      },
    ],
  });
  assert.match(feedwright(['policy', 'hang.open-liquid', '--policy', own]).out, /→ 6 h/);
  const { out } = feedwright(['plan', file(ORDER), ...AT, '--policy', own, '--json']);
  assert.equal(JSON.parse(out).containers[1].putUpAt, '2026-11-25T14:00:00+00:00');
});

test('[CL3] the demo ward is planned, and says that it is invented', () => {
  const { code, out } = feedwright(['demo']);
  assert.equal(code, 0);
  assert.match(out, /Everybody in it is invented/);
  assert.equal(out.match(/^Feeding plan for /gm)?.length, 12);
  assert.equal(out.match(/^NEXT /gm)?.length, 12);
});

test('[CL7] an order from an earlier day is not on its first day: a planned hold is made up', () => {
  // By hand: 1440 mL a day at 60 mL/h; a scan takes 4 h, so 20 h are left: 1440 / 20 = 72 mL/h.
  const target = {
    ...ORDER,
    startsAt: '2026-11-24T08:00:00+00:00',
    prescribedAt: '2026-11-24T07:00:00+00:00',
    regimen: { kind: 'volume-targeted', volumeMlPerDay: 1440, baseRateMlPerHour: 60, mostRateMlPerHour: 100 },
    holds: [{ id: 'scan', from: '2026-11-25T10:00:00Z', until: '2026-11-25T14:00:00Z', why: 'procedure' }],
  };
  const ratesOf = (order: unknown): readonly number[] => {
    const { programme } = planSchema.parse(
      JSON.parse(feedwright(['plan', file(order), ...AT, '--json']).out),
    );
    return programme.map((one) => one.rateMlPerHour);
  };
  assert.deepEqual(ratesOf(target), [72, 72]);
  // The same on the first day: nothing is made up, and 240 mL are said to be lost.
  assert.deepEqual(ratesOf({ ...target, startsAt: '2026-11-25T08:00:00+00:00' }), [60, 60]);
});
