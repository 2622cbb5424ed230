/**
 * Which entries no longer count, and by whose word? Nothing is ever deleted: an entry names another as entered in error,
 * corrects it, or settles which of two duplicates stays. What it names may arrive before or after it: what comes out
 * depends only on which entries there are.
 */
import { alike } from './alike.ts';
import { type AnyEntry, isKnown } from './entry.ts';

/** Why an entry does not count, and the entry that says so. */
export type Out = {
  readonly why: 'in-error' | 'corrected' | 'duplicate';
  readonly by: string;
};

/** What rulings name: the entry where it is here, null where it has not come yet. */
export type Named = ReadonlyMap<string, AnyEntry | null>;

/** Whatever its version: one of a newer release is not acted upon, but it is not marked in error either. */
const saysInError = (entry: AnyEntry): boolean => entry.fact.kind.startsWith('entered-in-error/');

/** The entries that one names: what it marks, corrects, keeps and drops. */
export function namedBy(entry: AnyEntry): readonly string[] {
  const corrected = entry.corrects === null ? [] : [entry.corrects];
  if (!isKnown(entry)) return corrected;
  const { fact } = entry;
  if (fact.kind === 'entered-in-error/1') return [...corrected, fact.target];
  return fact.kind === 'duplicate-settled/1' ? [...corrected, fact.keeps, fact.drops] : corrected;
}

/** [RC4] Marked in error, the first ruling in the order of truth being the one that is named. */
function marked(rulings: readonly AnyEntry[], named: Named): Map<string, Out> {
  const out = new Map<string, Out>();
  for (const ruling of rulings) {
    if (!isKnown(ruling) || ruling.fact.kind !== 'entered-in-error/1') continue;
    const target = named.get(ruling.fact.target) ?? null;
    if (target !== null && !saysInError(target) && !out.has(target.id)) {
      out.set(target.id, { why: 'in-error', by: ruling.id });
    }
  }
  return out;
}

/** [RC5] What is corrected is out, unless the correction itself was marked in error: then it was never made. */
function addCorrected(rulings: readonly AnyEntry[], named: Named, out: Map<string, Out>): void {
  const inError = new Set(out.keys());
  for (const { id, corrects } of rulings) {
    const target = corrects === null ? null : (named.get(corrects) ?? null);
    if (target === null || saysInError(target) || inError.has(id) || out.has(target.id)) continue;
    out.set(target.id, { why: 'corrected', by: id });
  }
}

/**
 * [RC7] In the order of truth; never in favour of one that is not here, is in error or was itself dropped, so that two who
 * settle the same pair in opposite ways do not lose both. What is kept may since have been corrected.
 */
function addDropped(rulings: readonly AnyEntry[], named: Named, out: Map<string, Out>): void {
  for (const ruling of rulings) {
    if (!isKnown(ruling) || ruling.fact.kind !== 'duplicate-settled/1' || out.has(ruling.id)) continue;
    const keeps = named.get(ruling.fact.keeps) ?? null;
    const drops = named.get(ruling.fact.drops) ?? null;
    if (keeps === null || drops === null || out.has(drops.id)) continue;
    if (!isKnown(keeps) || !isKnown(drops) || !alike(keeps.fact, drops.fact)) continue;
    const kept = out.get(keeps.id)?.why ?? 'corrected';
    if (kept === 'corrected') out.set(drops.id, { why: 'duplicate', by: ruling.id });
  }
}

/** Every entry that does not count. Rulings come in the order of truth. */
export function ruledOut(rulings: readonly AnyEntry[], named: Named): ReadonlyMap<string, Out> {
  const out = marked(rulings, named);
  addCorrected(rulings, named, out);
  addDropped(rulings, named, out);
  return out;
}
