/** How do stretches of time cut each other? On lists of spans that are disjoint and in order. */
import { type Duration, duration, instant, overlap, type Span } from '../base/instant.ts';

/** As far as a moment can be written down: for an order without a beginning or an end. */
export const ALWAYS: Span = { from: instant(-8.64e15), until: instant(8.64e15) };

export const lasting = (spans: readonly Span[]): Duration =>
  duration(spans.reduce((total, span) => total + (span.until - span.from), 0));

/** The same things, each cut to what of it lies in the span; what does not is left out. */
export function cutTo<T extends Span>(things: readonly T[], span: Span): readonly T[] {
  const kept: T[] = [];
  for (const thing of things) {
    if (thing.from >= span.from && thing.until <= span.until) {
      if (thing.from < thing.until) kept.push(thing);
      continue;
    }
    const shared = overlap(thing, span);
    if (shared !== null) kept.push({ ...thing, ...shared });
  }
  return kept;
}

/** Every thing cut to every span that it meets. */
export const meeting = <T extends Span>(things: readonly T[], spans: readonly Span[]): readonly T[] =>
  spans.flatMap((span) => cutTo(things, span));

/** The things with the holes cut out of them. */
export const without = <T extends Span>(things: readonly T[], holes: readonly Span[]): readonly T[] =>
  things.flatMap((thing) => {
    const left: T[] = [];
    let { from } = thing;
    for (const hole of holes) {
      if (hole.until <= from) continue;
      if (hole.from >= thing.until) break;
      if (hole.from > from) left.push({ ...thing, from, until: hole.from });
      from = hole.until;
    }
    if (from < thing.until) left.push(from === thing.from ? thing : { ...thing, from });
    return left;
  });
