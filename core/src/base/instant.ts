/**
 * When, and how long? Whole milliseconds, so that adding and comparing are exact.
 * Use `Instant` for a point on the world's time line (the moment something happened or is due) and `Duration` for
 * elapsed time (a hang limit, an interval). A named time of day belongs to a zone: see `zone.ts`.
 */
declare const instantBrand: unique symbol;
declare const durationBrand: unique symbol;

/** Whole ms since 1970-01-01T00:00Z. */
export type Instant = number & { readonly [instantBrand]: 'ms since the epoch' };
/** Whole ms of elapsed time; never negative unless a signed difference is what is meant. */
export type Duration = number & { readonly [durationBrand]: 'ms' };

export const instant = (ms: number): Instant => ms as Instant;
export const duration = (ms: number): Duration => ms as Duration;

export const SECOND = 1_000 as Duration;
export const MINUTE = 60_000 as Duration;
export const HOUR = 3_600_000 as Duration;
export const DAY = 86_400_000 as Duration;

export const minutes = (count: number): Duration => (count * MINUTE) as Duration;
export const hours = (count: number): Duration => (count * HOUR) as Duration;

export const after = (from: Instant, by: Duration): Instant => (from + by) as Instant;
export const before = (from: Instant, by: Duration): Instant => (from - by) as Instant;
export const between = (from: Instant, until: Instant): Duration => (until - from) as Duration;
export const earlier = (a: Instant, b: Instant): Instant => (a <= b ? a : b);
export const later = (a: Instant, b: Instant): Instant => (a >= b ? a : b);

/** Half-open: `from` is in it, `until` is not. Empty when they are equal. */
export type Span = { readonly from: Instant; readonly until: Instant };

export const within = (span: Span, at: Instant): boolean => at >= span.from && at < span.until;

/** What two spans share, or null. */
export function overlap(a: Span, b: Span): Span | null {
  const from = later(a.from, b.from);
  const until = earlier(a.until, b.until);
  return from < until ? { from, until } : null;
}

/** The same stretch of time as disjoint spans in order: overlaps are counted once. */
export function union(spans: readonly Span[]): readonly Span[] {
  const sorted = spans.filter((span) => span.from < span.until).toSorted((a, b) => a.from - b.from);
  const joined: Span[] = [];
  for (const span of sorted) {
    const last = joined.at(-1);
    if (last !== undefined && span.from <= last.until) {
      joined[joined.length - 1] = { from: last.from, until: later(last.until, span.until) };
    } else joined.push(span);
  }
  return joined;
}
