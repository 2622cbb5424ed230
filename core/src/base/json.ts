/**
 * What does this JSON text hold, and if it is no JSON, where does it go wrong?
 * Our own reader, because the platform's keeps silent where it hurts: of a field that is written twice it drops the
 * first, so that one of two rates would vanish, and it does not always say at which line it stopped.
 */
import { bad, issue, ok, type Result } from './result.ts';

/** Deeper than any document of ours; a text nested deeper is refused before it can exhaust the stack. */
const DEEPEST = 64;

const SPACE = /[ \t\n\r]*/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const STRING = /"(?:[^"\\\p{Cc}]|[\u007f-\u009f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/uy;
const NAMES = [
  ['true', true],
  ['false', false],
  ['null', null],
] as const;

type Reader = { readonly text: string; at: number; readonly asNumber: (source: string) => unknown };
type Stop = { readonly at: number; readonly code: string; readonly data?: Readonly<Record<string, unknown>> };

const stop = (at: number, code: string, data: Stop['data'] = {}): never => {
  const signal: Stop = { at, code, data };
  throw signal;
};

const isStop = (thrown: unknown): thrown is Stop =>
  typeof thrown === 'object' && thrown !== null && 'at' in thrown && 'code' in thrown;

function take(reader: Reader, shape: RegExp): string | null {
  shape.lastIndex = reader.at;
  const found = shape.exec(reader.text);
  if (found === null) return null;
  reader.at += found[0].length;
  return found[0];
}

const skip = (reader: Reader): string => {
  take(reader, SPACE);
  return reader.text[reader.at] ?? '';
};

const unexpected = (reader: Reader): never =>
  reader.at >= reader.text.length
    ? stop(reader.at, 'json/ends-early')
    : stop(reader.at, 'json/unexpected', {
        found: String.fromCodePoint(reader.text.codePointAt(reader.at)!),
      });

function readString(reader: Reader): string {
  const found = take(reader, STRING);
  return found === null
    ? stop(reader.at, reader.text[reader.at] === '"' ? 'json/bad-string' : 'json/field-name-expected')
    : JSON.parse(found);
}

/** Reads `item, item … close`, standing on the opening mark. */
function readItems(reader: Reader, close: string, item: () => void): void {
  reader.at += 1;
  if (skip(reader) === close) {
    reader.at += 1;
    return;
  }
  for (;;) {
    item();
    const mark = skip(reader);
    if (mark !== ',' && mark !== close) unexpected(reader);
    reader.at += 1;
    if (mark === close) return;
    skip(reader);
  }
}

function readObject(reader: Reader, depth: number): unknown {
  const fields = new Map<string, unknown>();
  readItems(reader, '}', () => {
    const at = reader.at;
    const name = readString(reader);
    if (fields.has(name)) stop(at, 'json/field-twice', { field: name });
    if (skip(reader) !== ':') unexpected(reader);
    reader.at += 1;
    fields.set(name, readValue(reader, depth + 1));
  });
  // fromEntries makes own fields of every name, `__proto__` too.
  return Object.fromEntries(fields);
}

function readArray(reader: Reader, depth: number): unknown {
  const items: unknown[] = [];
  readItems(reader, ']', () => {
    items.push(readValue(reader, depth + 1));
  });
  return items;
}

function readValue(reader: Reader, depth: number): unknown {
  const first = skip(reader);
  if (depth > DEEPEST) stop(reader.at, 'json/too-deep', { most: DEEPEST });
  if (first === '{') return readObject(reader, depth);
  if (first === '[') return readArray(reader, depth);
  if (first === '"') return readString(reader);
  for (const [name, value] of NAMES) {
    if (reader.text.startsWith(name, reader.at)) {
      reader.at += name.length;
      return value;
    }
  }
  const number = take(reader, NUMBER);
  return number === null ? unexpected(reader) : reader.asNumber(number);
}

const placeOf = (text: string, at: number): { line: number; column: number } => {
  const lines = text.slice(0, at).split(/\r\n|\n|\r/);
  return { line: lines.length, column: [...lines.at(-1)!].length + 1 };
};

/**
 * Reads a JSON text (RFC 8259). A byte order mark before it is ignored.
 * @param most the longest text that is looked at, in UTF-16 units; a longer one is refused unread.
 * @param asNumber what becomes of a number as it is written, for who must know `1.50` from `1.5`.
 * @returns what it holds, or one issue: `json/too-large`, or `json/…` with the line and column where it goes wrong.
 */
export function parseJson(
  text: string,
  most: number,
  asNumber: (source: string) => unknown = Number,
): Result<unknown> {
  if (text.length > most) return bad(issue([], 'json/too-large', { size: text.length, most }));
  const reader = { text: text.startsWith('\ufeff') ? text.slice(1) : text, at: 0, asNumber };
  try {
    const value = readValue(reader, 0);
    if (skip(reader) !== '') stop(reader.at, 'json/more-after-end');
    return ok(value);
  } catch (thrown) {
    if (!isStop(thrown)) throw thrown;
    return bad(issue([], thrown.code, { ...placeOf(reader.text, thrown.at), ...thrown.data }));
  }
}
