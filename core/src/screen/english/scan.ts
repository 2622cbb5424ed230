/** What is wrong with a container's code, and with the container by it, in English. */
import { plainly } from '../said.ts';
import type { Data, Sentence, Words } from '../words.ts';

const say = (says: string, remedy: string): Sentence => ({ says, remedy });
const quoted = (value: unknown): string => `“${plainly(value)}”`;

const AGAIN = 'Scan it again.';
const BY_HAND = 'Scan it again, or read the print and write product, lot and date by hand.';
const KEYBOARD =
  'Scan it again; if it stays so, the scanner types for another keyboard, or Caps Lock is on: read the print.';

/** Elements that containers may carry and that are not read here, by how they begin; titles as GS1 has them. */
const ELEMENT_NAMES: readonly (readonly [string, string])[] = [
  ['00', 'number of a shipping unit'],
  ['02', 'product within a case'],
  ['12', 'due date'],
  ['13', 'packaging date'],
  ['16', 'sell by date'],
  ['20', 'product variant'],
  ['22', "consumer's product variant"],
  ['240', "maker's additional number"],
  ['30', 'variable count'],
  ['310', 'net weight'],
  ['37', 'count within a case'],
  ['41', 'number of a place'],
  ['7003', 'expiry date and time'],
  ['71', 'national reimbursement number'],
  ['9', "the company's own element"],
];

function unknownElement({ ai }: Data): Sentence {
  const digits = plainly(ai);
  const name = ELEMENT_NAMES.find(([begins]) => digits.startsWith(begins))?.[1];
  return say(
    name === undefined
      ? `the code has an element that begins with ${quoted(digits)}, which is not known here`
      : `the code has an element that is not read here: ${quoted(digits)}, ${name}`,
    'Read the print, and write product, lot and date by hand.',
  );
}

export const ENGLISH_SCAN_ISSUES: Words['issues'] = {
  'gtin/not-digits': ({ text }) =>
    say(`${quoted(text)} is no product number: it is not all digits`, 'Write its digits without spaces.'),
  'gtin/length': ({ digits }) =>
    say(
      `${plainly(digits)} digits are no product number, which has 8, 12, 13 or 14`,
      'Scan it again, or write all its digits.',
    ),
  'gtin/nought': () => say('a product number of noughts names nothing', 'Read the number on the container.'),
  'gtin/check-digit': ({ text }) =>
    say(
      `the check digit of product number ${quoted(text)} is not right: a digit is wrong, or two are swapped`,
      'Scan it again, or compare every digit with the print.',
    ),
  'feeds/gtin-twice': ({ feed, gtin }) =>
    say(
      `${plainly(feed)}: product number ${plainly(gtin)} is listed before`,
      'Let each number stand once, at the one feed that it names.',
    ),
  'scan/nothing': () => say('the code is empty', AGAIN),
  'scan/too-long': ({ size, most }) =>
    say(`${plainly(size)} characters; a container's code has at most ${plainly(most)}`, AGAIN),
  'scan/twice-over': () => say('the same code was read twice in one go', 'Scan it once.'),
  'scan/run-together': () => say('two codes run into each other', 'Scan one code at a time.'),
  'scan/separator-as-text': () =>
    say(
      'a separator was sent as letters',
      'Set the scanner to send the control character; now, read the print.',
    ),
  'scan/space': ({ at }) => say(`a space stands at place ${plainly(at)}`, 'Write it without spaces.'),
  'scan/character': ({ at, codePoint }) =>
    say(`the character at place ${plainly(at)} (${plainly(codePoint)}) cannot stand in a code`, KEYBOARD),
  'scan/symbol': ({ known }) =>
    say(`the scanner names a kind of symbol that is not read here; known are ${plainly(known)}`, KEYBOARD),
  'scan/not-an-element': ({ text, at }) =>
    say(`no element begins at place ${plainly(at)}, with ${quoted(text)}`, KEYBOARD),
  'scan/unknown-element': unknownElement,
  'scan/brackets': () =>
    say(
      'brackets do not stand as they do beneath a code: (01)…(17)…(10)…',
      'Scan the code itself, or write product, lot and date by hand.',
    ),
  'scan/truncated': ({ text }) => say(`the code ends or breaks off within ${quoted(text)}`, BY_HAND),
  'scan/empty-element': () => say('nothing is written in it', BY_HAND),
  'scan/long-element': ({ text, length }) =>
    say(`${quoted(text)} is longer than ${plainly(length)} characters: a separator may be lost`, BY_HAND),
  'scan/not-digits': ({ text }) => say(`${quoted(text)} is not all digits`, BY_HAND),
  'scan/element-twice': () => say('the code says it twice', 'Scan one code at a time.'),
  'scan/no-product': () => say('the code names no product', 'Scan the code with the product number too.'),
  'scan/no-such-day': ({ text }) =>
    say(`${quoted(text)} is no day of the calendar, as year, month, day`, BY_HAND),
  'scan/made-after-end': ({ made, ends }) =>
    say(`made ${plainly(made)}, after its own end ${plainly(ends)}`, BY_HAND),
};

const KINDS: Readonly<Record<string, string>> = { '15': 'best before', '17': 'expiry' };
const kindOf = (ai: unknown): string => KINDS[plainly(ai)] ?? 'date';

export const ENGLISH_SCAN_PROBLEMS: Words['problems'] = {
  'scan/wrong-feed': ({ feed, name, ordered }) =>
    say(
      `This is ${plainly(feed)} (${plainly(name)}); ordered is ${plainly(ordered)}.`,
      'Do not put it up: fetch what is ordered.',
    ),
  'scan/listed-twice': ({ gtin, feeds }) =>
    say(
      `Product number ${plainly(gtin)} stands at more than one feed: ${plainly(feeds)}.`,
      'Do not go by the code: have the feed list put right.',
    ),
  'scan/not-listed': ({ gtin }) =>
    say(
      `Product number ${plainly(gtin)} is not in the feed list: the code does not say which feed it is.`,
      'Compare the label with the order by eye.',
    ),
  'scan/nothing-ordered': ({ feed }) =>
    say(`This is ${plainly(feed)}; the order names no feed.`, 'Ask the prescriber which feed is meant.'),
  'scan/expired': ({ day, ai }) =>
    say(`Its ${kindOf(ai)} was ${plainly(day)}.`, 'Do not use it; take it out of stock.'),
  'scan/no-date': ({ form }) =>
    say(
      form === 'retail'
        ? 'A retail code has neither lot nor date: whether it is in date is not known.'
        : 'The code has no expiry and no best before: whether it is in date is not known.',
      'Read the date on the container, and write it down.',
    ),
  'scan/date-in-lot': ({ text, ai, day }) =>
    say(
      `Lot or serial ${quoted(text)} ends like an element of its own: ${kindOf(ai)} ${plainly(day)}. A separator may be lost.`,
      'Read lot and date on the container.',
    ),
  'scan/made-later': ({ day }) =>
    say(
      `By its code it is made on ${plainly(day)}, which is still to come.`,
      'Read the date on the container.',
    ),
  'scan/month-only': ({ day }) =>
    say(`The code gives a month without a day: read as its last day, ${plainly(day)}.`, 'Compare the print.'),
  'scan/no-lot': () => say('The code has no lot.', 'Write it from the container where a lot is asked for.'),
};
