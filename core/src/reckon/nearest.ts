/** Which known name is nearest to the one that was typed? */

function distance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = (previous[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(Math.min(change, (previous[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1));
    }
    previous = row;
  }
  return previous[b.length] ?? 0;
}

const LONGEST = 60;
const within = (typed: string, name: string): boolean => typed.length >= 3 && name.includes(typed);

/** The nearest of the names, or null when none is near: a third of the letters, or a part of the name. */
export function nearest(typed: string, names: readonly string[]): string | null {
  const text = typed.toLowerCase().slice(0, LONGEST);
  let [best, fewest]: [string | null, number] = [null, Math.max(2, Math.ceil(text.length / 3)) + 1];
  for (const name of names) {
    const apart = distance(text, name.toLowerCase());
    if (apart < fewest) [best, fewest] = [name, apart];
  }
  return best ?? names.find((name) => within(text, name.toLowerCase())) ?? null;
}
