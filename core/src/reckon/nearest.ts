/** Which known name is nearest to the one that was typed? */
import { distance } from '../base/spelling.ts';

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
