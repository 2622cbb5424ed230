/** How many feeds or flushes are there in a day: as many as said, or as its whole intervals? */
import type { Bad } from '../../base/result.ts';
import { count, optional, quantity } from '../asking/asks.ts';
import type { Known, Sheet } from '../declare.ts';
import { of, over } from '../exact.ts';

const DAY = of(24);

export const feedsAsks = {
  feeds: optional(count('n', '48', 'feedsPerDay', 'n', 'boluses', 'times', 'feedings', 'numberOfFeeds')),
  everyHours: optional(quantity('i', 'h', ['0.5', '24', 'definition'], 'every', 'interval')),
};

/** `n = 24 / i`, or what was given; null when neither was; refused where the day is not whole intervals. */
export function feedsADay(
  { feeds, everyHours: i }: { readonly feeds: Known | null; readonly everyHours: Known | null },
  sheet: Pick<Sheet<string>, 'refuse'>,
): Known | null | Bad {
  if (feeds !== null) return feeds;
  if (i === null) return null;
  const n = over(DAY, i);
  if (n.n % n.d !== 0n) return sheet.refuse('everyHours', 'reckon/does-not-divide-day');
  return { ...n, symbol: 'n', unit: '1', basis: { kind: 'arithmetic' } };
}
