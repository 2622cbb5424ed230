/**
 * What was likely recorded twice? Two devices that say the same within minutes of each other, or that both corrected one
 * entry: all stand, and are marked until somebody settles which one stays.
 */
import { before, type Duration, type Instant } from '../base/instant.ts';
import { alike } from './alike.ts';
import type { AnyEntry, Entry } from './entry.ts';
import { counts, type Ledger, positionAt } from './ledger.ts';

export type LikelyDuplicate = { readonly first: Entry; readonly second: Entry };

/** Rulings are one however often they are made. */
const canBeTwice = ({ fact }: Entry): boolean =>
  fact.kind !== 'entered-in-error/1' && fact.kind !== 'duplicate-settled/1';

export const sayTheSame = (a: Entry, b: Entry, within: Duration): boolean =>
  a.device !== b.device && Math.abs(a.happenedAt - b.happenedAt) <= within && alike(a.fact, b.fact);

/** The counting entries up to `within` after an entry that say the same on another device. */
function laterTwins(ledger: Ledger, place: number, within: Duration): readonly LikelyDuplicate[] {
  const first = ledger.entries[place]!;
  if (!counts(ledger, first) || !canBeTwice(first)) return [];
  const found: LikelyDuplicate[] = [];
  for (let next = place + 1; next < ledger.entries.length; next += 1) {
    const second = ledger.entries[next]!;
    if (second.happenedAt - first.happenedAt > within) break;
    if (counts(ledger, second) && sayTheSame(first, second, within)) found.push({ first, second });
  }
  return found;
}

/**
 * [RC6] Every pair that two devices recorded with the same kind and value no more than `within` apart, both still counting,
 * in the order of truth. `since` leaves out pairs whose second happened before it.
 */
export function likelyDuplicates(
  ledger: Ledger,
  within: Duration,
  since: Instant | null = null,
): readonly LikelyDuplicate[] {
  const from = since === null ? 0 : positionAt(ledger, before(since, within));
  const found: LikelyDuplicate[] = [];
  for (let place = from; place < ledger.entries.length; place += 1) {
    found.push(...laterTwins(ledger, place, within));
  }
  return since === null ? found : found.filter(({ second }) => second.happenedAt >= since);
}

export type RivalCorrections = { readonly corrected: string; readonly by: readonly AnyEntry[] };

/** The id of what an entry, or what it corrects in turn, takes the place of. A ring ends where it closes. */
function firstCorrected({ named }: Ledger, entry: AnyEntry): string {
  const seen = new Set<string>();
  let first = entry.id;
  for (
    let next = entry.corrects;
    next !== null && !seen.has(next);
    next = named.get(next)?.corrects ?? null
  ) {
    seen.add(next);
    first = next;
  }
  return first;
}

/**
 * [RC16] What was corrected more than once, by corrections that know nothing of each other: all stand, so that one thing
 * counts as often as it was corrected until all but one are marked in error.
 */
export function rivalCorrections(ledger: Ledger): readonly RivalCorrections[] {
  const standing = ledger.rulings.filter((entry) => entry.corrects !== null && !ledger.out.has(entry.id));
  const rivals = Map.groupBy(standing, (entry) => firstCorrected(ledger, entry));
  return [...rivals].filter(([, by]) => by.length > 1).map(([corrected, by]) => ({ corrected, by }));
}
