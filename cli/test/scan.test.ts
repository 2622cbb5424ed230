/** Does the command say what a container is, stop the wrong one, and refuse a code that cannot be read? */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import { writeFeeds } from '@feedwright/core/feeds/document';
import { feedwright, file, ORDER } from './run.ts';

const [first] = writeFeeds(DEFAULT_FEEDS).feeds.filter(({ id }) => id === ORDER.feed.id);
/** The published example of a check digit (GS1), given to the feed that the order names. */
const FEEDS = file({
  document: 'feedwright-feeds/1',
  version: 'ward',
  feeds: [
    { ...first, gtins: ['6291041500213'] },
    { ...first, id: 'house', gtins: ['7300011000017'] },
  ],
});
const AT = ['--feeds', FEEDS, '--order', file(ORDER), '--at', '2026-11-25T08:00'];
const GOOD = ']C1010629104150021317261231' + '10AB1';

test('[FE18] the ordered feed in date: what the code says, exit code 0', () => {
  const { code, out, err } = feedwright(['scan', GOOD, ...AT]);
  assert.equal(code, 0, err);
  for (const line of [
    /product number +06291041500213/,
    /feed +standard-1\.0/,
    /as ordered +yes/,
    /lot +AB1/,
    /expiry +2026-12-31/,
    /in date +in date, usable until 2027-01-01T00:00:00\+00:00/,
    /Europe\/London/,
    /The order, local policy and licensed judgement decide\./,
  ])
    assert.match(out, line);
});

test('[FE18] [FE17] another feed, past its date: both stops are said, exit code 1', () => {
  const { code, out } = feedwright(['scan', '(01)07300011000017(17)261124(10)AB1', ...AT]);
  assert.equal(code, 1);
  assert.match(out, /Stop {2}FE18 {2}This is house .*ordered is standard-1\.0/);
  assert.match(out, /Stop {2}FE17 {2}Its expiry was 2026-11-24/);
});

test('[FE14] a code that cannot be read: one message, nothing on the output, exit code 2', () => {
  for (const [text, says] of [
    ['6291041500214', /^scan: the check digit of product number “6291041500214” is not right/],
    ['(01)06291041500213(17)260230', /^scan: \(17\): “260230” is no day of the calendar/],
    [`${GOOD}${GOOD}`, /^scan: the same code was read twice/],
    ['0106291041500213\u001b[2J', /^scan: the character at place 17 \(U\+001B\) cannot stand in a code/],
  ] as const) {
    const { code, out, err } = feedwright(['scan', text, ...AT]);
    assert.deepEqual([code, out], [2, ''], text);
    assert.match(err, says);
  }
});

test('[FE16] a retail number alone, as JSON: product known, date not known, exit code 0', () => {
  const { code, out } = feedwright(['scan', '6291041500213', ...AT, '--json']);
  const answer = JSON.parse(out);
  assert.equal(code, 0);
  assert.equal(answer.scan.form, 'retail');
  assert.deepEqual(
    [answer.feed, answer.isOrdered, answer.inDate, answer.usableUntil, answer.stops],
    ['standard-1.0', true, 'not-known', null, false],
  );
  assert.deepEqual(
    answer.problems.map((one: { level: string; rule: string }) => `${one.level} ${one.rule}`),
    ['ask FE17', 'note FE16'],
  );
});

test('[FE18] without order and list the number is not known, and by whose clock is said', () => {
  const { code, out } = feedwright(['scan', GOOD, '--at', '2026-11-25T08:00Z'], { TZ: 'Pacific/Auckland' });
  assert.equal(code, 0);
  assert.match(out, /as ordered +no order given: not compared/);
  assert.match(out, /Ask {2}FE18 {2}Product number 06291041500213 is not in the feed list/);
  assert.match(out, /at +2026-11-25T21:00:00\+13:00 \(Pacific\/Auckland\)/);
  const named = feedwright(['scan', GOOD, '--at', '2026-11-25T08:00', '--zone', 'Europe/London', '--json']);
  assert.equal(JSON.parse(named.out).zone, 'Europe/London');
});

test('[FE12] [FE13] a feed list with a wrong number is refused by its feed', () => {
  const feeds = file({ document: 'feedwright-feeds/1', version: 'x', feeds: [{ ...first, gtins: ['123'] }] });
  const { code, err } = feedwright(['scan', GOOD, '--feeds', feeds]);
  assert.equal(code, 2);
  assert.match(err, /feeds\.0\.gtins: 3 digits are no product number/);
});
