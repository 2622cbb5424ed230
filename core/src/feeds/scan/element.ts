/**
 * Which elements stand in the text of a code? Each begins with its application identifier (AI); some have one length,
 * the others end at a separator or at the end. Only the elements that a feed's container needs are known here: where
 * one unknown element begins, nothing after it could be trusted (AIs, lengths and characters: GS1, I8 and I9).
 */
import { bad, issue, ok, type Result } from '../../base/result.ts';

/** What scanners send for FNC1 between elements: the control character “group separator”. */
export const SEPARATOR = '\u001d';

/** Digits have one length; a text has a longest. */
type Kind = { readonly length: number; readonly isFixed: boolean };
const digits = (length: number): Kind => ({ length, isFixed: true });
const text = (length: number): Kind => ({ length, isFixed: false });

export type Ai = '01' | '10' | '11' | '15' | '17' | '21';

const KINDS: Readonly<Record<Ai, Kind>> = {
  '01': digits(14),
  '10': text(20),
  '11': digits(6),
  '15': digits(6),
  '17': digits(6),
  '21': text(20),
};

export type Element = { readonly ai: Ai; readonly text: string };

const isKnown = (ai: string): ai is Ai => Object.hasOwn(KINDS, ai);
export const elementPath = (ai: string): readonly string[] => [`(${ai})`];
/** A control character would steer a terminal: its picture is shown instead. */
export const shown = (part: string): string => part.replaceAll(SEPARATOR, '␝');

/** What is wrong with an element by itself; its meaning is not looked at. */
function judge({ ai, text: value }: Element): Result<Element> {
  const { length, isFixed } = KINDS[ai];
  const no = (code: string) => bad(issue(elementPath(ai), code, { text: shown(value), length }));
  if (value === '') return no('scan/empty-element');
  if (value.length > length) return no('scan/long-element');
  if (isFixed && (value.length < length || value.includes(SEPARATOR))) return no('scan/truncated');
  return isFixed && !/^\d+$/.test(value) ? no('scan/not-digits') : ok({ ai, text: value });
}

type Cut = { readonly element: Element; readonly next: number };

/** The element that begins at a place of an unbracketed text. */
function cutAt(code: string, at: number): Result<Cut> {
  const ai = code.slice(at, at + 2);
  if (ai.length < 2) return bad(issue([], 'scan/truncated', { text: shown(ai) }));
  if (!/^\d\d$/.test(ai)) {
    return bad(issue([], 'scan/not-an-element', { text: shown(code.slice(at, at + 8)), at: at + 1 }));
  }
  if (!isKnown(ai)) return bad(issue([], 'scan/unknown-element', { ai: shown(code.slice(at, at + 4)) }));
  const end = code.indexOf(SEPARATOR, at + 2);
  const untilSeparator = end < 0 ? code.length : end;
  const next = KINDS[ai].isFixed ? at + 2 + KINDS[ai].length : untilSeparator;
  const element = judge({ ai, text: code.slice(at + 2, next) });
  return element.ok ? ok({ element: element.value, next }) : element;
}

/** A separator may also stand after an element of one length; at the very end it says that something is cut off. */
function unbracketed(code: string): Result<readonly Element[]> {
  const elements: Element[] = [];
  for (let at = 0; at < code.length; ) {
    const cut = cutAt(code, at);
    if (!cut.ok) return cut;
    elements.push(cut.value.element);
    at = cut.value.next;
    if (code[at] !== SEPARATOR) continue;
    at += 1;
    if (at === code.length) return bad(issue([], 'scan/truncated', { text: '␝' }));
  }
  return ok(elements);
}

/** `(17)261231(10)AB1`: as printed beneath a code for people. A bracket within a value could be either, and is refused. */
function bracketed(code: string): Result<readonly Element[]> {
  if (code.includes(SEPARATOR) || !/^(\(\d{2,4}\)[^()]*)+$/.test(code))
    return bad(issue([], 'scan/brackets'));
  const read = [...code.matchAll(/\((\d{2,4})\)([^()]*)/g)].map(([, ai = '', value = '']) =>
    isKnown(ai) ? judge({ ai, text: value }) : bad(issue([], 'scan/unknown-element', { ai })),
  );
  const issues = read.flatMap((one) => (one.ok ? [] : one.issues));
  return issues.length > 0 ? bad(...issues) : ok(read.flatMap((one) => (one.ok ? [one.value] : [])));
}

/** The elements of a code in their order, each once. [FE14] */
export function elementsOf(code: string): Result<readonly Element[]> {
  const read = code.startsWith('(') ? bracketed(code) : unbracketed(code);
  if (!read.ok) return read;
  const ais = read.value.map(({ ai }) => ai);
  const again = ais.filter((ai, index) => ais.indexOf(ai) !== index);
  return again.length === 0
    ? read
    : bad(...[...new Set(again)].map((ai) => issue(elementPath(ai), 'scan/element-twice', { ai })));
}
