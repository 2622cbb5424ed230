import assert from 'node:assert/strict';
import { test } from 'node:test';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import { parseFeeds, writeFeeds } from '@feedwright/core/feeds/document';
import { judgeFeeds } from '@feedwright/core/feeds/judge';
import { checkDigit, readGtin } from '@feedwright/core/feeds/scan/gtin';
import { ENGLISH } from '@feedwright/core/screen/english/english';
import fc from 'fast-check';
import { runs } from '../runs.ts';

const wrongWith = (text: string): readonly string[] => {
  const read = readGtin(text);
  return read.ok ? [] : read.issues.map((one) => one.code);
};

/** Product numbers of each length with their check digit, whose rule the published examples below hold to. */
const numbers = fc
  .constantFrom(8, 12, 13, 14)
  .chain((length) =>
    fc.array(fc.integer({ min: 0, max: 9 }), { minLength: length - 1, maxLength: length - 1 }),
  )
  .filter((digits) => digits.some((digit) => digit !== 0))
  .map((digits) => `${digits.join('')}${checkDigit(digits.join(''))}`);

test('[FE12] the check digits of published worked examples', () => {
  // GS1, How to calculate a check digit: 629104150021 → 57, to 60 is 3.
  assert.equal(checkDigit('629104150021'), 3);
  // GS1 Sweden: 730001100001 → 15 + 8 = 23, to 30 is 7.
  assert.equal(checkDigit('730001100001'), 7);
  // GS1 India: 890400021003 → 54 + 9 = 63, to 70 is 7.
  assert.equal(checkDigit('890400021003'), 7);
  for (const text of ['6291041500213', '7300011000017', '8904000210037'])
    assert.deepEqual(wrongWith(text), []);
  // A sum of whole tens has the check digit 0 (GS1 Sweden's remark), worked by hand: 7 × 1 + 1 × 3 = 10.
  assert.equal(checkDigit('71'), 0);
});

test('[FE12] all four lengths are read, and padding does not make another number of it', () => {
  // Worked by hand: 9638507 → 3·(9+3+5+7) + (6+8+0) = 86, to 90 is 4; 03600029145 → 3·(0+6+0+2+1+5) + (3+0+0+9+4) = 58, to 60 is 2.
  const read = ['96385074', '036000291452', '0036000291452', '00036000291452'].map((text) => readGtin(text));
  assert.deepEqual(
    read.map((one) => one.ok && one.value),
    ['00000096385074', '00036000291452', '00036000291452', '00036000291452'],
  );
});

test('[FE12] what is no number is refused with its reason', () => {
  assert.deepEqual(wrongWith('6291041500214'), ['gtin/check-digit']);
  assert.deepEqual(wrongWith('629104150021'), ['gtin/check-digit']);
  assert.deepEqual(wrongWith('62910415002'), ['gtin/length']);
  assert.deepEqual(wrongWith('629104150021300'), ['gtin/length']);
  assert.deepEqual(wrongWith(''), ['gtin/not-digits']);
  assert.deepEqual(wrongWith('6291041 500213'), ['gtin/not-digits']);
  assert.deepEqual(wrongWith('٦291041500213'), ['gtin/not-digits']);
  assert.deepEqual(wrongWith('0000000000000'), ['gtin/nought']);
});

test('[FE12] any one wrong digit is caught', () => {
  fc.assert(
    fc.property(numbers, fc.nat(), fc.integer({ min: 1, max: 9 }), (number, place, by) => {
      const at = place % number.length;
      const wrong = `${number.slice(0, at)}${(Number(number[at]) + by) % 10}${number.slice(at + 1)}`;
      assert.notDeepEqual(wrongWith(wrong), []);
    }),
    runs(5000),
  );
});

test('[FE12] two neighbours swapped are caught unless they are five apart, and then they are not', () => {
  fc.assert(
    fc.property(numbers, fc.nat(), (number, place) => {
      const at = place % (number.length - 1);
      const [a = '', b = ''] = [number[at], number[at + 1]];
      const swapped = `${number.slice(0, at)}${b}${a}${number.slice(at + 2)}`;
      const isUnseen = a === b || Math.abs(Number(a) - Number(b)) === 5;
      assert.deepEqual(wrongWith(swapped), isUnseen ? [] : ['gtin/check-digit']);
    }),
    runs(5000),
  );
});

const [FIRST, SECOND] = DEFAULT_FEEDS.feeds;
const listOf = (first: readonly string[], second: readonly string[] = []) => ({
  version: '1',
  feeds: [
    { ...FIRST!, gtins: first },
    { ...SECOND!, gtins: second },
  ],
});
const refused = (list: ReturnType<typeof listOf>): readonly string[] =>
  judgeFeeds(list).map((one) => `${one.data.rule} ${one.code} ${one.path.join('.')}`);

test('[FE13] a feed may list numbers, and the default feeds list none', () => {
  assert.deepEqual(refused(listOf(['6291041500213', '96385074'], ['7300011000017'])), []);
  assert.ok(DEFAULT_FEEDS.feeds.every((feed) => feed.gtins === undefined));
});

test('[FE12] [FE13] a wrong number in the feed list is refused by its feed, as is one that names two feeds', () => {
  assert.deepEqual(refused(listOf(['6291041500214'])), ['FE12 gtin/check-digit feeds.0.gtins']);
  const twice = ['FE13 feeds/gtin-twice feeds.1.gtins'];
  assert.deepEqual(refused(listOf(['6291041500213'], ['6291041500213'])), twice);
  assert.deepEqual(refused(listOf(['6291041500213'], ['06291041500213'])), twice);
  assert.deepEqual(refused(listOf(['6291041500213', '06291041500213'])), [
    'FE13 feeds/gtin-twice feeds.0.gtins',
  ]);
  for (const { code, data } of judgeFeeds(listOf(['1', '6291041500213'], ['6291041500213']))) {
    assert.notEqual(ENGLISH.issues[code]?.(data).remedy ?? '', '', code);
  }
});

test('[FE13] a feed list document with numbers reads and writes back the same', () => {
  const list = listOf(['6291041500213'], []);
  assert.deepEqual(parseFeeds(JSON.parse(JSON.stringify(writeFeeds(list)))), { ok: true, value: list });
  const [first] = writeFeeds(DEFAULT_FEEDS).feeds;
  assert.ok(!('gtins' in first!));
  const read = parseFeeds({ ...writeFeeds(DEFAULT_FEEDS), feeds: [{ ...first, gtins: null }] });
  assert.ok(read.ok && !('gtins' in read.value.feeds[0]!));
});
