/**
 * What is in the record of one course, and what of it counts? The entries in the order of truth, each once, with those
 * that were ruled out. Pure data: whoever holds the same entries, however they came, has the same ledger.
 *
 *      entries ──► order of truth, once each ──► less what was ruled out ──► the facts that count
 */
import type { Instant } from '../base/instant.ts';
import { type AnyEntry, compareEntries, type Entry, isKnown } from './entry.ts';
import { type Named, namedBy, type Out, ruledOut } from './rulings.ts';

export type Ledger = {
  /** Every entry, in the order of truth: also what was ruled out and what is of a kind not known here. */
  readonly entries: readonly AnyEntry[];
  /** Those that name others: in error, correcting, settling. In the order of truth. */
  readonly rulings: readonly AnyEntry[];
  readonly named: Named;
  /** By the id of the entry that does not count. */
  readonly out: ReadonlyMap<string, Out>;
  /** What was told of orders: placed, held, stopped. In the order of truth, also what was ruled out. */
  readonly orders: readonly Entry[];
  /** Kinds and versions that this release does not know, with how many of each: to be said. */
  readonly unknown: ReadonlyMap<string, number>;
};

export const EMPTY_LEDGER: Ledger = {
  entries: [],
  rulings: [],
  named: new Map(),
  out: new Map(),
  orders: [],
  unknown: new Map(),
};

/** The first position whose entry does not come before the one given. */
function placeOf(entries: readonly AnyEntry[], entry: AnyEntry): number {
  let [low, high] = [0, entries.length];
  const last = entries[high - 1];
  if (last === undefined || compareEntries(last, entry) < 0) return high;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (compareEntries(entries[middle]!, entry) < 0) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The position of the first entry that happened at that instant or after it: from where a late entry is folded again. */
export function positionAt(ledger: Ledger, at: Instant): number {
  let [low, high] = [0, ledger.entries.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (ledger.entries[middle]!.happenedAt < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

const inserted = <E extends AnyEntry>(
  entries: readonly E[],
  entry: E,
  place = placeOf(entries, entry),
): readonly E[] => entries.toSpliced(place, 0, entry);

const isOrder = (entry: AnyEntry): entry is Entry => isKnown(entry) && entry.fact.kind.startsWith('order-');

/**
 * [RC2] Of two that cannot be told apart by the order of truth the one that stays: the same entry twice is one; and where a
 * fault gave two facts one id, which of them stays does not depend on which came first.
 */
const staysFirst = (a: AnyEntry, b: AnyEntry): boolean => JSON.stringify(a) <= JSON.stringify(b);

/** The entries named by rulings, found in one pass. */
function resolve(rulings: readonly AnyEntry[], entries: readonly AnyEntry[]): Named {
  const named = new Map<string, AnyEntry | null>();
  for (const ruling of rulings) for (const id of namedBy(ruling)) named.set(id, null);
  if (named.size > 0) for (const entry of entries) if (named.has(entry.id)) named.set(entry.id, entry);
  return named;
}

function counted(unknown: ReadonlyMap<string, number>, kind: string): ReadonlyMap<string, number> {
  return new Map(unknown).set(kind, (unknown.get(kind) ?? 0) + 1);
}

function sortedOnce(entries: Iterable<AnyEntry>): readonly AnyEntry[] {
  const kept: AnyEntry[] = [];
  for (const entry of [...entries].sort(compareEntries)) {
    const last = kept.at(-1);
    if (last === undefined || compareEntries(last, entry) !== 0) kept.push(entry);
    else if (!staysFirst(last, entry)) kept[kept.length - 1] = entry;
  }
  return kept;
}

/** The ledger of entries in whatever order, with whatever repetitions. All are of one course. */
export function ledgerOf(entries: Iterable<AnyEntry>): Ledger {
  const kept = sortedOnce(entries);
  const rulings = kept.filter((entry) => namedBy(entry).length > 0);
  const named = resolve(rulings, kept);
  let unknown: ReadonlyMap<string, number> = new Map();
  for (const entry of kept) if (!isKnown(entry)) unknown = counted(unknown, entry.fact.kind);
  const out = ruledOut(rulings, named);
  return { entries: kept, rulings, named, out, orders: kept.filter(isOrder), unknown };
}

/** The ledger with one entry more, and the position from which on what counts is no longer the same. */
export type Appended = {
  readonly ledger: Ledger;
  /** In the new ledger's entries; null where nothing changed, because the entry had been there. */
  readonly from: number | null;
};

/** The earliest entry that counts in one of two ledgers and not in the other, other than the new one. */
function firstChanged(before: Ledger, after: Ledger, place: number): number {
  let first = place;
  for (const id of new Set([...before.out.keys(), ...after.out.keys()])) {
    const entry = after.named.get(id) ?? before.named.get(id) ?? null;
    if (entry === null || before.out.has(id) === after.out.has(id)) continue;
    first = Math.min(first, placeOf(after.entries, entry));
  }
  return first;
}

function replacing(ledger: Ledger, place: number, entry: AnyEntry): Appended {
  const changed = ledgerOf(ledger.entries.with(place, entry));
  return { ledger: changed, from: firstChanged(ledger, changed, place) };
}

/** Adds an entry: a search and a copy of one list, unless it rules, is ruled upon, or tells of an order. */
export function append(ledger: Ledger, entry: AnyEntry): Appended {
  const place = placeOf(ledger.entries, entry);
  const there = ledger.entries[place];
  if (there !== undefined && compareEntries(there, entry) === 0) {
    return staysFirst(there, entry) ? { ledger, from: null } : replacing(ledger, place, entry);
  }
  const entries = inserted(ledger.entries, entry, place);
  const added: Ledger = {
    ...ledger,
    entries,
    orders: isOrder(entry) ? inserted(ledger.orders, entry) : ledger.orders,
    unknown: isKnown(entry) ? ledger.unknown : counted(ledger.unknown, entry.fact.kind),
  };
  const names = namedBy(entry);
  if (names.length === 0 && !ledger.named.has(entry.id)) return { ledger: added, from: place };
  const rulings = names.length > 0 ? inserted(ledger.rulings, entry) : ledger.rulings;
  const named = new Map(ledger.named);
  for (const id of names) if (!named.has(id)) named.set(id, entryOf(added, id));
  if (named.has(entry.id)) named.set(entry.id, entryOf(added, entry.id));
  const ruled = { ...added, rulings, named, out: ruledOut(rulings, named) };
  return { ledger: ruled, from: firstChanged(ledger, ruled, place) };
}

/** The ledger with one entry more; the same ledger where it had been there. */
export const withEntry = (ledger: Ledger, entry: AnyEntry): Ledger => append(ledger, entry).ledger;

/** Whether an entry of the ledger counts: known here, and not ruled out. */
export const counts = (ledger: Ledger, entry: AnyEntry): entry is Entry =>
  isKnown(entry) && !ledger.out.has(entry.id);

/** The entries that count, in the order of truth, from a position on. */
export function effective(ledger: Ledger, from = 0): readonly Entry[] {
  const counting: Entry[] = [];
  for (let place = from; place < ledger.entries.length; place += 1) {
    const entry = ledger.entries[place]!;
    if (counts(ledger, entry)) counting.push(entry);
  }
  return counting;
}

/** The entry of that id, or null; the latest are looked at first. */
export const entryOf = (ledger: Ledger, id: string): AnyEntry | null =>
  ledger.entries.findLast((entry) => entry.id === id) ?? null;
