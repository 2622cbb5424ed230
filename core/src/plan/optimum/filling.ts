/**
 * How much goes into a container, and how much of it is never delivered?
 *
 *   fill   ├── prime ──┼───────── need from start to end ─────────┼─ left over ─┤
 *          lost in the line           delivered                     thrown away     [PL5]
 */
import type { FeedDemand, Filling } from './problem.ts';

/** The most a container can be filled with: whole pour steps, or the largest pack. */
export const mostOf = (filling: Filling): number =>
  filling.kind === 'packs'
    ? filling.sizes.reduce((most, size) => Math.max(most, size), 0)
    : Math.floor(filling.capacity / filling.step) * filling.step;

/**
 * The least fill that holds `amount`: the next whole pour step, or the smallest pack that is large enough.
 * A quotient of whole numbers below 2^53 is only rounded to a whole number when it is one, so that the ceiling is exact.
 */
export function leastFill(filling: Filling, amount: number): number {
  if (filling.kind === 'poured') return Math.ceil(amount / filling.step) * filling.step;
  let least = Number.POSITIVE_INFINITY;
  for (const size of filling.sizes) if (size >= amount && size < least) least = size;
  return least;
}

/**
 * The fill of the last container. Where the order goes on it is the most that can be given before the container must be
 * down, poured down to the step; never less than what is needed up to the end of the plan.
 */
export function lastFill(feed: FeedDemand, start: number, end: number): number {
  const spent = feed.prime[start]! - feed.need[start]!;
  const least = leastFill(feed.filling, spent + feed.need[end]!);
  if (feed.ends) return least;
  const most = Math.min(mostOf(feed.filling), spent + feed.needAtLimit[start]!);
  if (feed.filling.kind === 'packs') return Math.max(least, leastFill(feed.filling, most));
  return Math.max(least, Math.floor(most / feed.filling.step) * feed.filling.step);
}

/** Primed away and left over when a container runs from one slot to another and is followed by the next one. */
export function wasteOfRun(feed: FeedDemand, start: number, end: number): number {
  const needed = feed.need[end]! - feed.need[start]!;
  return leastFill(feed.filling, feed.prime[start]! + needed) - needed;
}

/** The same for the last container: what is left in it is waste only if the order ends. */
export const wasteOfLast = (feed: FeedDemand, start: number, end: number): number =>
  feed.ends ? wasteOfRun(feed, start, end) : feed.prime[start]!;
