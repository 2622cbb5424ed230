/** How far apart are two words? */

/** The number of single-letter changes that make one word of the other (Levenshtein's distance). */
export function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (const [i, letter] of [...a].entries()) {
    const next = [i + 1];
    for (const [j, other] of [...b].entries()) {
      next.push(Math.min(row[j + 1]! + 1, next[j]! + 1, row[j]! + (letter === other ? 0 : 1)));
    }
    row = next;
  }
  return row[b.length]!;
}
