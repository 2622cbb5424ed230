/**
 * How does a list that only grows stay a value, without being copied each time? Those who go on from the same trail share
 * its items, and each knows how many of them are its own.
 *
 *      items  a b c d e        a checkpoint of length 3 sees a b c, whatever came after it
 */
export type Trail<T> = { readonly items: readonly T[]; readonly length: number };

/** Each trail needs items of its own, so there is no constant for it. */
export const emptyTrail = <T>(): Trail<T> => ({ items: [], length: 0 });

/** The trail with one item more. Costs a copy only where somebody else has gone on from the same trail before. */
export function grown<T>({ items, length }: Trail<T>, item: T): Trail<T> {
  // The one place that writes to shared items: past the length that anybody holds, so nobody can see it.
  const own = (items.length === length ? items : items.slice(0, length)) as T[];
  own.push(item);
  return { items: own, length: length + 1 };
}

/** What is in it. */
export const told = <T>({ items, length }: Trail<T>): readonly T[] =>
  items.length === length ? items : items.slice(0, length);

export const lastOf = <T>({ items, length }: Trail<T>): T | null =>
  length === 0 ? null : (items[length - 1] ?? null);

/** The latest items for which `goesOn` holds, in order: looks back no further than it must. */
export function since<T>(trail: Trail<T>, goesOn: (item: T) => boolean): readonly T[] {
  let from = trail.length;
  while (from > 0 && goesOn(trail.items[from - 1]!)) from -= 1;
  return trail.items.slice(from, trail.length);
}
