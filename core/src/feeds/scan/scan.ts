/**
 * What does the code on a container say? Its product, and where the code has more than a retail number, its lot and
 * dates. Read strictly: a code that could be read in two ways, or only in part, is refused and says why, for whoever
 * stands there can read the print instead. What no reader can see: a lot that lost its own last characters.
 */
import { bad, type Issue, issue, ok, type Result } from '../../base/result.ts';
import { earliestDay, readDate, type ScannedDate, writeDate } from './date.ts';
import { type Ai, type Element, elementPath, elementsOf, SEPARATOR, shown } from './element.ts';
import { type Gtin, readGtin } from './gtin.ts';

export type Scan = {
  /** A retail number names the product and nothing else. */
  readonly form: 'elements' | 'retail';
  readonly gtin: Gtin;
  readonly lot: string | null;
  readonly serial: string | null;
  readonly produced: ScannedDate | null;
  readonly bestBefore: ScannedDate | null;
  readonly expires: ScannedDate | null;
};

const LONGEST = 200;

/** What a scanner may say first of the symbol it saw: GS1-128, Data Matrix, QR Code, DataBar (I8, from memory). */
const ELEMENT_SYMBOLS: readonly string[] = [']C1', ']d2', ']Q3', ']e0'];
/** EAN-13 and UPC-A, EAN-8, ITF-14: by how many digits follow (I8, from memory). */
const RETAIL_SYMBOLS: Readonly<Record<string, number>> = { ']E0': 13, ']E4': 8, ']I1': 14 };

/** GS1's character set 82 (I9): all that may stand in an element. */
const MAY_STAND = /^[!"%&'()*+,\-./0-9:;<=>?A-Z_a-z]$/;

const codePoint = (character: string): string =>
  `U+${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`;

/** Spaces, other alphabets, a second code's beginning: what cannot stand in a code at all. */
function foreign(body: string): Issue | null {
  if (/\][A-Za-z]\d|[\r\n\t]/.test(body)) return issue([], 'scan/run-together');
  if (/<GS>|\(GS\)/i.test(body)) return issue([], 'scan/separator-as-text');
  const at = [...body].findIndex((character) => character !== SEPARATOR && !MAY_STAND.test(character));
  if (at < 0) return null;
  const character = [...body][at] ?? '';
  return /\s/u.test(character)
    ? issue([], 'scan/space', { at: at + 1 })
    : issue([], 'scan/character', { at: at + 1, codePoint: codePoint(character) });
}

/** Only beyond the length of a retail number: one of eight digits may well be the same four twice. */
const isTwiceOver = (text: string): boolean =>
  text.length > 14 && text.slice(0, text.length / 2) === text.slice(text.length / 2);

/** A product number within a lot: a second code followed, and no separator told them apart. */
const holdsProduct = (text: string): boolean =>
  [...text.matchAll(/(?=01(\d{14}))/g)].some(([, digits = '']) => readGtin(digits).ok);

type Said = { readonly [ai in Ai]?: string };

function contents(said: Said, readIn: number): Result<Scan> {
  const issues: Issue[] = [];
  const date = (ai: '11' | '15' | '17'): ScannedDate | null => {
    const text = said[ai];
    if (text === undefined) return null;
    const read = readDate(text, readIn);
    if (read === null) issues.push(issue(elementPath(ai), 'scan/no-such-day', { text }));
    return read;
  };
  const free = (ai: '10' | '21'): string | null => {
    const text = said[ai] ?? null;
    if (text !== null && holdsProduct(text)) issues.push(issue(elementPath(ai), 'scan/run-together'));
    return text;
  };
  const gtin = said['01'] === undefined ? bad(issue([], 'scan/no-product')) : readGtin(said['01']);
  if (!gtin.ok) issues.push(...gtin.issues.map((one) => ({ ...one, path: elementPath('01') })));
  const read = {
    lot: free('10'),
    serial: free('21'),
    produced: date('11'),
    bestBefore: date('15'),
    expires: date('17'),
  };
  if (!gtin.ok || issues.length > 0) return bad(...issues);
  return inOrder({ form: 'elements', gtin: gtin.value, ...read });
}

/** Nothing is made after the day it ends. */
function inOrder(scan: Scan): Result<Scan> {
  const made = scan.produced === null ? undefined : earliestDay(scan.produced);
  const ends = [scan.bestBefore, scan.expires].flatMap((date) => (date === null ? [] : [date.day]));
  const before = made === undefined ? undefined : ends.find((day) => day < made);
  return before === undefined
    ? ok(scan)
    : bad(issue(elementPath('11'), 'scan/made-after-end', { made, ends: before }));
}

function retail(digits: string): Result<Scan> {
  const gtin = readGtin(shown(digits));
  if (!gtin.ok) return gtin;
  const nothing = { lot: null, serial: null, produced: null, bestBefore: null, expires: null };
  return ok({ form: 'retail', gtin: gtin.value, ...nothing });
}

const saidBy = (elements: readonly Element[]): Said =>
  Object.fromEntries(elements.map(({ ai, text }) => [ai, text]));

function elements(body: string, readIn: number): Result<Scan> {
  const read = elementsOf(body);
  return read.ok ? contents(saidBy(read.value), readIn) : read;
}

function symbol(prefix: string, body: string, readIn: number): Result<Scan> {
  if (ELEMENT_SYMBOLS.includes(prefix)) {
    // A bracket is what people are shown: no symbol holds one at its beginning.
    return body.startsWith('(') ? bad(issue([], 'scan/brackets')) : elements(body, readIn);
  }
  const length = RETAIL_SYMBOLS[prefix];
  if (length === undefined)
    return bad(issue([], 'scan/symbol', { known: [...ELEMENT_SYMBOLS, ...Object.keys(RETAIL_SYMBOLS)] }));
  return body.length === length ? retail(body) : bad(issue([], 'gtin/length', { digits: body.length }));
}

/** Without its prefix a scanner may send the first FNC1 as a separator (from memory). */
const withoutFirst = (code: string): string => (code.startsWith(SEPARATOR) ? code.slice(1) : code);

/**
 * Reads the text of a scanned or typed code. [FE14] [FE16]
 * @param text as a scanner sends it, with or without the symbol's prefix, with one line end at most; or bracketed
 * @param readIn the calendar year of reading, by which two digits of a year are understood
 * @returns what the code says, or all that is known to be wrong with it. Never throws on input.
 */
export function parseScan(text: string, readIn: number): Result<Scan> {
  const code = text.replace(/(\r\n|\r|\n|\t)$/, '');
  if (code === '') return bad(issue([], 'scan/nothing'));
  if (code.length > LONGEST) return bad(issue([], 'scan/too-long', { size: code.length, most: LONGEST }));
  if (isTwiceOver(code)) return bad(issue([], 'scan/twice-over'));
  const prefix = code.startsWith(']') ? code.slice(0, 3) : '';
  const body = prefix === '' ? withoutFirst(code) : code.slice(3);
  const wrong = foreign(body);
  if (wrong !== null) return bad(wrong);
  if (prefix !== '') return symbol(prefix, body, readIn);
  return /^\d{1,14}$/.test(body) ? retail(body) : elements(body, readIn);
}

/** The text that reads as this scan, in a year for which its dates lie within the window. */
export function writeScan(scan: Scan): string {
  if (scan.form === 'retail') return scan.gtin;
  const dates = [
    ['11', scan.produced],
    ['15', scan.bestBefore],
    ['17', scan.expires],
  ] as const;
  const fixed = dates.map(([ai, date]) => (date === null ? '' : `${ai}${writeDate(date)}`)).join('');
  const free = [
    ...(scan.lot === null ? [] : [`10${scan.lot}`]),
    ...(scan.serial === null ? [] : [`21${scan.serial}`]),
  ];
  return `01${scan.gtin}${fixed}${free.join(SEPARATOR)}`;
}
