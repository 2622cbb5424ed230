import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type Instant, instant } from '@feedwright/core/base/instant';
import { parseInstant, showInstant, type Zone, zone } from '@feedwright/core/base/zone';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import { feedById } from '@feedwright/core/feeds/feed';
import { judgeScan, type ScanContext, type ScanJudgement } from '@feedwright/core/feeds/scan/judge';
import { parseScan } from '@feedwright/core/feeds/scan/scan';
import { ENGLISH } from '@feedwright/core/screen/english/english';
import fc from 'fast-check';
import { runs } from '../runs.ts';

const LONDON = zone('Europe/London')!;
const AUCKLAND = zone('Pacific/Auckland')!;
const ORDERED = { feed: { id: 'standard-1.0' } };
/** Published examples of check digits (GS1; GS1 Sweden), given to two feeds. */
const STANDARD = '06291041500213';
const OTHER = '07300011000017';
const FEEDS = {
  version: '1',
  feeds: [
    { ...feedById(DEFAULT_FEEDS, 'standard-1.0')!, gtins: ['6291041500213'] },
    { ...feedById(DEFAULT_FEEDS, 'energy-1.5')!, gtins: ['7300011000017'] },
  ],
};
const moment = (text: string): Instant => parseInstant(text)!;
const NOON = moment('2026-11-25T12:00Z');

function judged(code: string, changed: Partial<ScanContext> = {}): ScanJudgement {
  const scan = parseScan(code, 2026);
  assert.ok(scan.ok, JSON.stringify(scan));
  return judgeScan(scan.value, { order: ORDERED, feeds: FEEDS, at: NOON, zone: LONDON, ...changed });
}
const said = ({ problems }: ScanJudgement): readonly string[] =>
  problems.map(({ rule, level, code }) => `${level} ${rule} ${code}`);

const GOOD = `01${STANDARD}1726123110AB1`;

test('[FE18] the ordered feed, in date and with its lot, has nothing against it', () => {
  const judgement = judged(GOOD);
  assert.equal(judgement.feed?.id, 'standard-1.0');
  assert.equal(judgement.isOrdered, true);
  assert.equal(judgement.inDate, 'in-date');
  assert.deepEqual(judgement.problems, []);
});

test('[FE18] another feed than the ordered one is a stop that names both', () => {
  const judgement = judged(`01${OTHER}1726123110AB1`);
  assert.equal(judgement.isOrdered, false);
  assert.deepEqual(said(judgement), ['stop FE18 scan/wrong-feed']);
  const { says } = ENGLISH.problems['scan/wrong-feed']!(judgement.problems[0]!.data);
  assert.match(says, /energy-1\.5.*ordered is standard-1\.0/);
});

test('[FE18] a number that is not listed is asked about and never counts as ordered', () => {
  const judgement = judged('010890400021003717261231' + '10AB1');
  assert.equal(judgement.feed, null);
  assert.equal(judgement.isOrdered, null);
  assert.deepEqual(said(judgement), ['ask FE18 scan/not-listed']);
});

test('[FE18] without an order nothing is compared; an order that names no feed is asked about', () => {
  assert.deepEqual(
    [judged(GOOD, { order: null }).isOrdered, said(judged(GOOD, { order: null }))],
    [null, []],
  );
  const unnamed = judged(GOOD, { order: { feed: null } });
  assert.deepEqual([unnamed.isOrdered, said(unnamed)], [null, ['ask FE18 scan/nothing-ordered']]);
});

test('[FE18] a number that two feeds carry is a stop, even where one of them is the ordered one', () => {
  const [first, second] = FEEDS.feeds;
  const feeds = { version: '1', feeds: [first!, { ...second!, gtins: [STANDARD] }] };
  const judgement = judged(GOOD, { feeds });
  assert.deepEqual([judgement.feed, judgement.isOrdered], [null, null]);
  assert.deepEqual(said(judgement), ['stop FE18 scan/listed-twice']);
});

const inDateAt = (code: string, at: string, inZone: Zone = LONDON) =>
  judged(code, { at: moment(at), zone: inZone }).inDate;

test('[FE17] usable to the last moment of its day by the ward’s clock, and not a moment more', () => {
  // Common practice: a date on a pack includes its day.
  assert.equal(inDateAt(GOOD, '2026-12-31T23:59:59.999Z'), 'in-date');
  assert.equal(inDateAt(GOOD, '2027-01-01T00:00:00Z'), 'expired');
  // In Auckland it is New Year thirteen hours before London.
  assert.equal(inDateAt(GOOD, '2026-12-31T10:59:59.999Z', AUCKLAND), 'in-date');
  assert.equal(inDateAt(GOOD, '2026-12-31T11:00:00Z', AUCKLAND), 'expired');
  // The day on which London's clocks go back has 25 hours, all of them usable.
  const autumn = `01${STANDARD}1726102510AB1`;
  assert.equal(inDateAt(autumn, '2026-10-25T23:59:59.999Z'), 'in-date');
  assert.equal(inDateAt(autumn, '2026-10-26T00:00:00Z'), 'expired');
});

test('[FE17] expired is a stop, and the moment shown is the one in its working', () => {
  const judgement = judged(`01${STANDARD}1726112410AB1`);
  assert.equal(judgement.inDate, 'expired');
  assert.deepEqual(said(judgement), ['stop FE17 scan/expired']);
  const until = judgement.usableUntil!;
  assert.equal(showInstant(until.value, LONDON), '2026-11-25T00:00:00+00:00');
  assert.deepEqual(until.working.result.is, { kind: 'instant', at: until.value });
  assert.equal(until.working.rule, 'FE17');
});

test('[FE17] [FE18] stops are said before what is asked, and each by itself', () => {
  assert.deepEqual(said(judged('010890400021003717261124')), [
    'stop FE17 scan/expired',
    'ask FE18 scan/not-listed',
    'note FE16 scan/no-lot',
  ]);
  assert.deepEqual(said(judged(`01${OTHER}1726112410A`)), [
    'stop FE18 scan/wrong-feed',
    'stop FE17 scan/expired',
  ]);
});

test('[FE17] of expiry and best before the earlier governs', () => {
  const data = (code: string) => judged(code).problems.map((one) => one.data);
  assert.deepEqual(data(`01${STANDARD}152611241726123110A`), [{ day: '2026-11-24', ai: '15' }]);
  assert.deepEqual(data(`01${STANDARD}152612311726112410A`), [{ day: '2026-11-24', ai: '17' }]);
  assert.deepEqual(data(`01${STANDARD}1526112410A`), [{ day: '2026-11-24', ai: '15' }]);
  assert.equal(judged(`01${STANDARD}1526112510A`).inDate, 'in-date');
});

test('[FE16] [FE17] no date is not known and asked for, with a retail number and without', () => {
  const retail = judged('6291041500213');
  assert.equal(retail.feed?.id, 'standard-1.0');
  assert.equal(retail.inDate, 'not-known');
  assert.equal(retail.usableUntil, null);
  assert.deepEqual(said(retail), ['ask FE17 scan/no-date', 'note FE16 scan/no-lot']);
  assert.deepEqual(said(judged(`01${STANDARD}10AB1`)), ['ask FE17 scan/no-date']);
  // The day of making is no end.
  assert.equal(judged(`01${STANDARD}1126010110AB1`).inDate, 'not-known');
  assert.match(ENGLISH.problems['scan/no-date']!({ form: 'retail' }).says, /neither lot nor date/);
});

test('[FE14] a date at the end of a lot is asked about where the code has none of its own', () => {
  assert.deepEqual(said(judged(`01${STANDARD}10AB117261231`)), [
    'ask FE17 scan/no-date',
    'ask FE14 scan/date-in-lot',
  ]);
  assert.deepEqual(said(judged(`01${STANDARD}1526123110AB117261130`)), ['ask FE14 scan/date-in-lot']);
  assert.deepEqual(said(judged(`01${STANDARD}1726123110AB117261130`)), []);
  assert.deepEqual(said(judged(`01${STANDARD}10AB117261331`)), ['ask FE17 scan/no-date']);
});

test('[FE15] a month alone is said, and made on a day to come is asked about', () => {
  assert.deepEqual(said(judged(`01${STANDARD}1726110010AB1`)), ['note FE15 scan/month-only']);
  assert.equal(inDateAt(`01${STANDARD}1726110010AB1`, '2026-11-30T23:59Z'), 'in-date');
  assert.equal(inDateAt(`01${STANDARD}1726110010AB1`, '2026-12-01T00:00Z'), 'expired');
  assert.deepEqual(said(judged(`01${STANDARD}112611261726123110AB1`)), ['ask FE15 scan/made-later']);
  assert.deepEqual(said(judged(`01${STANDARD}112611251726123110AB1`)), []);
  // Made some day this month, of which 24 have passed: not for certain to come.
  assert.deepEqual(said(judged(`01${STANDARD}112611001726123110AB1`)), ['note FE15 scan/month-only']);
});

test('[FE17] in date is answered only where a date was read that has not passed', () => {
  const pair = fc.integer({ min: 0, max: 99 }).map((value) => String(value).padStart(2, '0'));
  const date = fc.tuple(pair, pair, pair).map((parts) => parts.join(''));
  const element = fc.tuple(fc.constantFrom('11', '15', '17'), date).map(([ai, digits]) => ai + digits);
  const codes = fc.array(element, { maxLength: 3 }).map((parts) => `01${STANDARD}${parts.join('')}`);
  fc.assert(
    fc.property(codes, fc.integer({ min: 0, max: 365 * 100 }), (code, days) => {
      const scan = parseScan(code, 2026);
      if (!scan.ok) return;
      const at = instant(NOON + (days - 18_250) * 86_400_000);
      const { inDate, problems } = judgeScan(scan.value, { order: null, feeds: FEEDS, at, zone: LONDON });
      const ends = [scan.value.expires, scan.value.bestBefore].flatMap((one) =>
        one === null ? [] : [one.day],
      );
      const today = showInstant(at, LONDON).slice(0, 10);
      const expected =
        ends.length === 0 ? 'not-known' : ends.every((day) => day >= today) ? 'in-date' : 'expired';
      assert.equal(inDate, expected);
      assert.equal(
        problems.some(({ level }) => level === 'stop'),
        expected === 'expired',
      );
    }),
    runs(10_000),
  );
});
