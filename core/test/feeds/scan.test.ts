import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { dayNumberOf } from '@feedwright/core/base/calendar';
import { earliestDay, readDate, writeDate, yearOf } from '@feedwright/core/feeds/scan/date';
import { checkDigit, type Gtin } from '@feedwright/core/feeds/scan/gtin';
import { parseScan, type Scan, writeScan } from '@feedwright/core/feeds/scan/scan';
import { ENGLISH } from '@feedwright/core/screen/english/english';
import fc from 'fast-check';
import { runs } from '../runs.ts';

/** GS1's own example of a check digit, in fourteen digits. */
const GTIN = '06291041500213';
const GS = '\u001d';
const YEAR = 2026;

const read = (text: string): Scan => {
  const scan = parseScan(text, YEAR);
  assert.ok(scan.ok, JSON.stringify(scan));
  return scan.value;
};
/** What is refused, as `(element) code`. */
const refused = (text: string): readonly string[] => {
  const scan = parseScan(text, YEAR);
  return scan.ok ? ['read'] : scan.issues.map((one) => `${one.path.join('.')} ${one.code}`.trim());
};
const day = (name: string) => ({ day: name, isMonthOnly: false });

const WHOLE: Scan = {
  form: 'elements',
  gtin: GTIN as Gtin,
  lot: 'AB-1/x',
  serial: '77',
  produced: day('2025-12-31'),
  bestBefore: day('2026-11-30'),
  expires: day('2026-12-31'),
};
const RAW = `01${GTIN}112512311526113017261231` + `10AB-1/x${GS}2177`;

test('[FE14] every element is read, whatever the order, the prefix and the separators that may be spared', () => {
  assert.deepEqual(read(RAW), WHOLE);
  for (const prefix of [']C1', ']d2', ']Q3', ']e0', GS]) assert.deepEqual(read(prefix + RAW), WHOLE);
  for (const end of ['\r', '\n', '\r\n', '\t']) assert.deepEqual(read(RAW + end), WHOLE);
  assert.deepEqual(read(`2177${GS}10AB-1/x${GS}17261231${GS}1526113011251231${GS}01${GTIN}`), WHOLE);
  assert.deepEqual(read(`(01)${GTIN}(17)261231(15)261130(11)251231(21)77(10)AB-1/x`), WHOLE);
});

test('[FE14] elements that are not known are refused by name, also where they are printed in brackets', () => {
  for (const [code, name] of [
    [`01${GTIN}16261231`, /sell by date/],
    [`01${GTIN}70032612311200`, /expiry date and time/],
    [`00123456789012345675`, /shipping unit/],
    [`(01)${GTIN}(240)AB1`, /additional number/],
    [`01${GTIN}95x`, /own element/],
    [`01${GTIN}88x`, /not known here/],
  ] as const) {
    const scan = parseScan(code, YEAR);
    assert.ok(!scan.ok && scan.issues[0]?.code === 'scan/unknown-element', code);
    assert.match(ENGLISH.issues['scan/unknown-element']!(scan.issues[0].data).says, name);
  }
});

test('[FE14] a code cut off within an element is refused', () => {
  const code = `]C101${GTIN}1126010117261231`;
  const kept = Array.from({ length: code.length - 1 }, (_, index) => code.slice(0, index + 1)).filter(
    (part) => refused(part)[0] === 'read',
  );
  // Only between two elements is a shorter code a whole one; what it lacks is then missing, never wrong.
  assert.deepEqual(kept, [`]C101${GTIN}`, `]C101${GTIN}11260101`]);
  assert.deepEqual(refused(`01${GTIN}1726123`), ['(17) scan/truncated']);
  assert.deepEqual(refused(`01${GTIN}10AB1${GS}`), ['scan/truncated']);
  assert.deepEqual(refused(`01${GTIN}10`), ['(10) scan/empty-element']);
  assert.deepEqual(refused(`(01)${GTIN}(17)26123`), ['(17) scan/truncated']);
  assert.deepEqual(refused(`01${GTIN.slice(0, 6)}${GS}17261231`), ['(01) scan/truncated']);
});

test('[FE14] a code scanned twice, an element said twice and two codes run together are refused', () => {
  for (const code of [RAW, `]d2${RAW}`, '6291041500213', `01${GTIN}17261231`])
    assert.deepEqual(refused(code + code), ['scan/twice-over'], code);
  assert.deepEqual(refused(`01${GTIN}17261231\r01${GTIN}17261231\r`), ['scan/run-together']);
  assert.deepEqual(refused(`01${GTIN}1726123101${GTIN}17261130`), [
    '(01) scan/element-twice',
    '(17) scan/element-twice',
  ]);
  assert.deepEqual(refused(`(01)${GTIN}(17)261231(17)261231`), ['(17) scan/element-twice']);
  assert.deepEqual(refused(`]C101${GTIN}10A1]C101${GTIN}10A2`), ['scan/run-together']);
  // Twenty characters may stand in a lot: enough to swallow a second product.
  assert.deepEqual(refused(`01${GTIN}10AB101${GTIN}`), ['(10) scan/run-together']);
  assert.deepEqual(refused(`01${GTIN}10AB101${GTIN}17261231`), ['(10) scan/long-element']);
  assert.deepEqual(refused('62910415002137300011000017'), ['scan/unknown-element']);
});

test('[FE14] lots at and over twenty characters', () => {
  assert.equal(read(`01${GTIN}10${'A'.repeat(20)}`).lot, 'A'.repeat(20));
  assert.deepEqual(refused(`01${GTIN}10${'A'.repeat(21)}`), ['(10) scan/long-element']);
  assert.deepEqual(refused(`01${GTIN}21${'7'.repeat(21)}`), ['(21) scan/long-element']);
  assert.deepEqual(refused('0'.repeat(201)), ['scan/too-long']);
});

test('[FE14] the characters of a lot are the 82 of GS1’s set and no other', () => {
  // The set as the GS1 Barcode Syntax Dictionary writes it out.
  const set82 = `!"%&'()*+,-./0123456789:;<=>?ABCDEFGHIJKLMNOPQRSTUVWXYZ_abcdefghijklmnopqrstuvwxyz`;
  assert.equal(set82.length, 82);
  for (let code = 0; code < 0x180; code++) {
    const character = String.fromCharCode(code);
    if (character === GS) continue;
    const isRead = refused(`01${GTIN}10A${character}B`)[0] === 'read';
    assert.equal(isRead, set82.includes(character), `U+${code.toString(16)}`);
  }
});

test('[FE14] spaces, capitals locked, other keyboards and separators as letters are refused', () => {
  assert.deepEqual(refused(` 01${GTIN}`), ['scan/space']);
  assert.deepEqual(refused(`(01) ${GTIN}`), ['scan/space']);
  assert.deepEqual(refused('6291041 500213'), ['scan/space']);
  assert.deepEqual(refused(`]c101${GTIN}`), ['scan/symbol']);
  assert.deepEqual(refused(`]D201${GTIN}`), ['scan/symbol']);
  assert.deepEqual(refused(']__proto__'), ['scan/symbol']);
  // A German keyboard types + for the prefix's bracket, a French one types letters for the digits (from memory).
  assert.deepEqual(refused(`+C101${GTIN}`), ['scan/not-an-element']);
  assert.deepEqual(refused('à&à-é&_&à'), ['scan/character']);
  assert.deepEqual(refused(`01${GTIN}10AB1<GS>17261231`), ['scan/separator-as-text']);
  assert.deepEqual(refused(`01${GTIN}10AB1^17261231`), ['scan/character']);
  assert.deepEqual(refused(`01${GTIN}17261231AB1`), ['scan/not-an-element']);
  assert.deepEqual(refused(`01${GTIN}10AB1${GS}${GS}17261231`), ['scan/not-an-element']);
});

test('[FE14] brackets stand as beneath a code, or nothing is read', () => {
  for (const code of [
    `(01${GTIN}`,
    `(01)${GTIN}17)261231`,
    `(1)${GTIN}`,
    `(01)${GTIN}(10)A(B`,
    `(01)${GTIN}${GS}(10)A`,
  ])
    assert.deepEqual(refused(code), ['scan/brackets'], code);
  assert.deepEqual(refused(`]C1(01)${GTIN}`), ['scan/brackets']);
  assert.deepEqual(refused(`(01)${GTIN}0`), ['(01) scan/long-element']);
  assert.deepEqual(refused(`(01)${GTIN}(10)`), ['(10) scan/empty-element']);
  assert.deepEqual(refused(`(01)${GTIN}(17)26123A`), ['(17) scan/not-digits']);
});

test('[FE14] no product, a wrong check digit and impossible dates are found together', () => {
  assert.deepEqual(refused('1726123110AB1'), ['(01) scan/no-product']);
  assert.deepEqual(refused('01062910415002141726023010AB1'), [
    '(01) gtin/check-digit',
    '(17) scan/no-such-day',
  ]);
  assert.deepEqual(refused(''), ['scan/nothing']);
});

test('[FE15] days that no calendar has are refused: 30 Feb, month 13, 29 Feb outside leap years', () => {
  for (const digits of [
    '260230',
    '261301',
    '260001',
    '260431',
    '270229',
    '261232',
    '260000',
    '261300',
    '250229',
    '26123',
    '2612311',
  ])
    assert.equal(readDate(digits, YEAR), null, digits);
  assert.deepEqual(readDate('280229', YEAR), day('2028-02-29'));
  assert.deepEqual(readDate('240229', YEAR), day('2024-02-29'));
  // 2000 was a leap year and 2100 is none.
  assert.deepEqual(readDate('000229', YEAR), day('2000-02-29'));
  assert.equal(readDate('000229', 2080), null);
  assert.deepEqual(refused(`01${GTIN}17260230`), ['(17) scan/no-such-day']);
  assert.deepEqual(refused(`01${GTIN}11260230`), ['(11) scan/no-such-day']);
  assert.deepEqual(refused(`01${GTIN}15261301`), ['(15) scan/no-such-day']);
});

test('[FE15] day 00 is the last day of the month, marked as such', () => {
  for (const [digits, last] of [
    ['260100', '2026-01-31'],
    ['260200', '2026-02-28'],
    ['280200', '2028-02-29'],
    ['260400', '2026-04-30'],
    ['261200', '2026-12-31'],
  ] as const)
    assert.deepEqual(readDate(digits, YEAR), { day: last, isMonthOnly: true });
});

test('[FE15] two digits of a year mean the nearest, from 49 years back to 50 ahead', () => {
  // General Specifications, determination of century (from memory): 51 to 99 ahead is the century before, 50 to 99 behind the one after.
  for (const [digits, readIn, year] of [
    [76, 2026, 2076],
    [77, 2026, 1977],
    [26, 2026, 2026],
    [0, 2026, 2000],
    [99, 2026, 1999],
    [30, 2080, 2130],
    [31, 2080, 2031],
    [0, 2049, 2000],
    [0, 2050, 2100],
    [99, 2049, 2099],
    [99, 2048, 1999],
  ] as const)
    assert.equal(yearOf(digits, readIn), year, `${digits} in ${readIn}`);
});

test('[FE15] what is made after its own end is refused', () => {
  assert.deepEqual(refused(`01${GTIN}1127010117261231`), ['(11) scan/made-after-end']);
  assert.deepEqual(refused(`01${GTIN}1126123117261231`), ['read']);
  // Made some day in December: not after the 15th for certain.
  assert.deepEqual(refused(`01${GTIN}1126120017261215`), ['read']);
  assert.deepEqual(refused(`01${GTIN}1126120017261130`), ['(11) scan/made-after-end']);
});

test('[FE16] a retail number alone is the product and nothing else, with or without its prefix', () => {
  for (const code of ['6291041500213', GTIN, ']E06291041500213', `]I1${GTIN}`, '6291041500213\r'])
    assert.deepEqual(read(code), {
      form: 'retail',
      gtin: GTIN,
      lot: null,
      serial: null,
      produced: null,
      bestBefore: null,
      expires: null,
    });
  assert.equal(read(']E496385074').gtin, '00000096385074');
  // The same four digits twice are one number of eight: 3·(1+0+1+0) + (2+0+2) = 10, so its check digit is 0.
  assert.equal(read('12001200').gtin, '00000012001200');
  assert.deepEqual(refused('6291041500214'), ['gtin/check-digit']);
  assert.deepEqual(refused('629104150021'), ['gtin/check-digit']);
  assert.deepEqual(refused('62910415002'), ['gtin/length']);
  assert.deepEqual(refused(']E0629104150021'), ['gtin/length']);
  assert.deepEqual(refused(']E0629104150021A'), ['gtin/not-digits']);
  const separated = parseScan(`]E0629104150021${GS}`, YEAR);
  assert.deepEqual(separated.ok || separated.issues[0]?.data.text, '629104150021␝');
});

const numbers = fc
  .array(fc.integer({ min: 0, max: 9 }), { minLength: 13, maxLength: 13 })
  .filter((digits) => digits.some((digit) => digit !== 0))
  .map((digits) => `${digits.join('')}${checkDigit(digits.join(''))}` as Gtin);
const SET_82 = [...`!"%&'()*+,-./0123456789:;<=>?ABCDEFGHIJKLMNOPQRSTUVWXYZ_abcdefghijklmnopqrstuvwxyz`];
const texts = fc
  .array(fc.constantFrom(...SET_82), { minLength: 1, maxLength: 20 })
  .map((characters) => characters.join(''))
  .filter((text) => !/01\d{14}|<GS>|\(GS\)/i.test(text));
const days = fc
  .record({
    year: fc.integer({ min: 1977, max: 2076 }),
    month: fc.integer({ min: 1, max: 12 }),
    date: fc.nat(31),
  })
  .map(({ year, month, date }) => {
    const two = (value: number) => String(value).padStart(2, '0');
    const isMonthOnly = date === 0;
    let last = isMonthOnly ? 31 : date;
    while (dayNumberOf(year, month, last) === null) last--;
    return { day: `${year}-${two(month)}-${two(last)}`, isMonthOnly };
  });
const scans: fc.Arbitrary<Scan> = fc
  .record(
    {
      form: fc.constant('elements' as const),
      gtin: numbers,
      lot: fc.option(texts),
      serial: fc.option(texts),
      produced: fc.option(days),
      bestBefore: fc.option(days),
      expires: fc.option(days),
    },
    { noNullPrototype: true },
  )
  .filter(({ produced, bestBefore, expires }) =>
    [bestBefore, expires].every(
      (end) => produced === null || end === null || earliestDay(produced) <= end.day,
    ),
  );

test('[FE14] what was written reads back the same', () => {
  fc.assert(
    fc.property(scans, (scan) => {
      assert.deepEqual(parseScan(writeScan(scan), YEAR), { ok: true, value: scan });
    }),
    runs(10_000),
  );
  const retail = read('96385074');
  assert.deepEqual(read(writeScan(retail)), retail);
  assert.equal(writeDate(readDate('260200', YEAR)!), '260200');
});

test('[FE14] no text throws, and what is not read says why', () => {
  const anything = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 60 }),
    fc
      .array(fc.constantFrom('01', GTIN, '17', '261231', '10', GS, '(', ')', ']C1', 'A', '0', ' '), {
        maxLength: 14,
      })
      .map((parts) => parts.join('')),
    scans.chain((scan) => {
      const code = writeScan(scan);
      return fc.nat(code.length).map((at) => code.slice(0, at) + code.slice(at + 1));
    }),
  );
  fc.assert(
    fc.property(anything, (text) => {
      const scan = parseScan(text, YEAR);
      if (scan.ok) assert.equal(Number(scan.value.gtin.at(-1)), checkDigit(scan.value.gtin.slice(0, -1)));
      else {
        assert.ok(scan.issues.length > 0);
        for (const { code, data } of scan.issues) {
          const { says, remedy } = ENGLISH.issues[code]!(data);
          // A refusal is printed on terminals: no control character of the code may reach them.
          assert.match(`${says} ${remedy}`, /^\P{Cc}+$/u);
        }
      }
    }),
    runs(5000),
  );
});

test('[FE14] [FE18] every code of a scan has words and a remedy', () => {
  const folder = new URL('../../src/feeds/scan/', import.meta.url).pathname;
  const codes = readdirSync(folder).flatMap((name) =>
    [...readFileSync(join(folder, name), 'utf8').matchAll(/'((?:scan|gtin)\/[a-z-]+)'/g)].map(
      (found) => found[1]!,
    ),
  );
  assert.ok(new Set(codes).size > 30);
  for (const code of codes) {
    const sentence = (ENGLISH.issues[code] ?? ENGLISH.problems[code])?.({});
    assert.ok(sentence !== undefined && sentence.remedy !== '', code);
  }
});
