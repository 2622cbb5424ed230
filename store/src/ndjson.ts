/**
 * How does a ledger leave one place and enter another? As lines of JSON: a first line that says what it is, one line an
 * entry with its text to the byte, and a last line with the count and the heads, so that a file cut short is noticed.
 */
import type { Head, Log, Submitted } from './log.ts';

export const LEDGER = 'feedwright-ledger/1';

export type LedgerLine =
  | { readonly line: 'first'; readonly epoch: string }
  | { readonly line: 'entry'; readonly entry: Submitted }
  | { readonly line: 'last'; readonly count: number; readonly heads: readonly Head[] };

export type LineProblem = { readonly code: 'ledger/not-json' | 'ledger/not-a-line' | 'ledger/newer-version' };

const PAGE = 5_000;

/** The lines of a whole log, without line ends. */
export function* ledgerLines(log: Log): Generator<string> {
  yield JSON.stringify({ document: LEDGER, epoch: log.epoch });
  let count = 0;
  for (let after = 0; ; ) {
    const page = log.all({ after, most: PAGE });
    if (page.length === 0) break;
    for (const { position, id, course, ward, text, head } of page) {
      yield JSON.stringify({ position, id, course, ward, head, text });
    }
    count += page.length;
    after = page.at(-1)!.position;
  }
  yield JSON.stringify({ end: LEDGER, count, heads: log.heads() });
}

const isText = (value: unknown): value is string => typeof value === 'string';

function parsed(text: string): Record<string, unknown> | LineProblem {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? (value as Record<string, unknown>)
      : { code: 'ledger/not-a-line' };
  } catch {
    return { code: 'ledger/not-json' };
  }
}

/** What one line says, or what is wrong with it. */
export function readLedgerLine(text: string): LedgerLine | LineProblem {
  const value = parsed(text);
  if (isProblem(value)) return value;
  const {
    document,
    end,
    epoch,
    count,
    heads,
    id,
    course,
    ward,
    text: entry,
  } = value as Record<string, unknown>;
  if (document === LEDGER && isText(epoch)) return { line: 'first', epoch };
  if (end === LEDGER && typeof count === 'number' && Array.isArray(heads))
    return { line: 'last', count, heads };
  if (isText(document) || isText(end)) return { code: 'ledger/newer-version' };
  if (isText(id) && isText(course) && isText(ward) && isText(entry)) {
    return { line: 'entry', entry: { id, course, ward, text: entry } };
  }
  return { code: 'ledger/not-a-line' };
}

export const isProblem = (value: object): value is LineProblem =>
  'code' in value && typeof value.code === 'string' && value.code.startsWith('ledger/');
