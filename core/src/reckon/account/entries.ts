/**
 * What went in and out, and when?
 * `08:30 120 mL` is an amount at a time; an amount without a time counts in every window. A window takes in its
 * beginning and not its end, so that an entry on the hour belongs to one shift only; it may run over midnight.
 */
import { bad, issue, ok, type Result } from '../../base/result.ts';
import { shownChoice } from '../../base/working.ts';
import { listed } from '../asking/asks.ts';
import { type Raw, type Reading, readAmount, wanting } from '../asking/quantity-input.ts';
import { parseClock, showClock } from '../asking/when.ts';
import type { Ask, Known } from '../declare.ts';
import { decimalText, less, of, plus, times } from '../exact.ts';

export type Entry = { readonly minute: number | null; readonly amount: Known };

const ML = wanting('mL');
const DAY_MINUTES = 1440;
/** `1555 mL` is an amount: a time has an amount behind it. */
const TIMED =
  /^(?:at\s+)?(\d{1,2}[:.]\d\d|\d{4}(?=\s*h?[\s=@])|\d{1,2}\s*(?:am|pm)|noon|midnight)\s*h?\s*[=@:,]?\s*(\d.*)$/i;

function readEntry(
  raw: Raw,
  symbol: string,
  reading: Reading,
  note: (by: 'ounce' | 'pound') => void,
): Result<Entry> {
  const [, time = '', rest = ''] = typeof raw === 'string' ? (TIMED.exec(raw) ?? []) : [];
  const minute = time === '' ? null : parseClock(time);
  if (time !== '' && minute === null) return bad(issue([], 'reckon/not-a-moment', { text: time }));
  const amount = readAmount(time === '' ? raw : rest, ML, reading);
  if (!amount.ok) return amount;
  if (less(of(20_000), amount.value.value))
    return bad(
      issue([], 'reckon/outside-band', {
        value: decimalText(amount.value.value),
        least: '0',
        most: '20000',
        unit: 'mL',
        because: 'slip',
        accepted: ['mL', 'L', 'oz'],
      }),
    );
  if (amount.value.by !== undefined) note(amount.value.by);
  return ok({
    minute,
    amount: { ...amount.value.value, symbol, unit: 'mL', basis: { kind: 'asked', name: symbol } },
  });
}

const MOST_ENTRIES = 200;

/** `08:00 120 mL; 12:00 180 mL; 200`, `6 x 30 mL`, or the key given again. */
export const entries = (symbol: string, ...also: readonly string[]): Ask<readonly Entry[] | null> => ({
  kind: 'entries',
  symbol,
  unit: 'mL',
  also,
  band: null,
  choices: [],
  required: false,
  assumed: null,
  others: [],
  takes: (unit) => unit.dimension === 'V1',
  read: (raw, reading, note) => {
    const parts = listed(raw);
    if (parts.length > MOST_ENTRIES) return bad(issue([], 'reckon/too-many', { most: MOST_ENTRIES }));
    const found: Entry[] = [];
    for (const part of parts) {
      const entry = readEntry(part, symbol, reading, note);
      if (!entry.ok) return entry;
      found.push(entry.value);
    }
    return ok(found);
  },
  show: (list) =>
    shownChoice(
      (list ?? [])
        .map(
          ({ minute, amount }) =>
            `${minute === null ? '' : `${showClock(minute)} `}${decimalText(amount)} mL`,
        )
        .join('; '),
    ),
});

/** `04:00; 08:00; 24:00`: times of day, each without an amount. */
export const timesOfDay = (symbol: string, ...also: readonly string[]): Ask<readonly number[]> => ({
  kind: 'entries',
  symbol,
  unit: '',
  also,
  band: null,
  choices: [],
  required: true,
  assumed: null,
  others: [],
  takes: () => false,
  read: (raw) => {
    const parts = listed(raw)
      .flatMap((one) => String(one).split(/[\s,]+/))
      .filter((one) => one !== '');
    const minutes = parts.map((one) => parseClock(one));
    const wrong = minutes.indexOf(null);
    if (parts.length > MOST_ENTRIES) return bad(issue([], 'reckon/too-many', { most: MOST_ENTRIES }));
    if (wrong >= 0 || parts.length === 0)
      return bad(issue([], 'reckon/not-a-moment', { text: parts[wrong] ?? '' }));
    return ok(minutes.map((one) => one ?? 0));
  },
  show: (list) => shownChoice(list.map(showClock).join('; ')),
});

/** Minutes after midnight; `until` at or before `from` is on the next day. */
export type Window = { readonly from: number; readonly until: number };

export function inWindow(minute: number, { from, until }: Window): boolean {
  const start = from % DAY_MINUTES;
  const end = until % DAY_MINUTES;
  const at = minute % DAY_MINUTES;
  return start < end ? at >= start && at < end : at >= start || at < end;
}

/** Those that count in the window, and how many are left out. */
export function within(
  list: readonly Entry[],
  window: Window | null,
): { readonly counted: readonly Known[]; readonly left: number } {
  const counted = list.filter(({ minute }) => minute === null || window === null || inWindow(minute, window));
  return { counted: counted.map((one) => one.amount), left: list.length - counted.length };
}

const HALF = of('1/2');
export const totalOf = (list: readonly Known[]) => plus(...list);
export const halfOf = (list: readonly Known[]) => times(HALF, totalOf(list));
