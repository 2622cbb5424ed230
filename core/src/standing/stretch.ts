/**
 * How much of it went in within a span? A volume over a time gives the floor of the cumulative amount, so that adjoining
 * spans add up to the whole, to the last unit. What has no length counts where it happened. [ST1]
 */

import { timesOverUp } from '../base/fraction.ts';
import { after, between, duration, type Instant, type Span } from '../base/instant.ts';
import { givenSoFar, NOTHING, subtract, sum, type Volume, volume } from '../base/volume.ts';

export type Stretch = Span & { readonly volume: Volume };

/** What of it had gone in before `at`. */
export function goneIn({ from, until, volume: whole }: Stretch, at: Instant): Volume {
  if (at >= until) return from === until && at === from ? NOTHING : whole;
  return givenSoFar(whole, between(from, at), between(from, until));
}

export function volumeWithin(stretch: Stretch, span: Span): Volume {
  if (stretch.from >= span.until || stretch.until < span.from) return NOTHING;
  if (stretch.from >= span.from && stretch.until <= span.until && stretch.from < stretch.until)
    return stretch.volume;
  return subtract(goneIn(stretch, span.until), goneIn(stretch, span.from));
}

export const sumWithin = (stretches: readonly Stretch[], span: Span): Volume =>
  sum(stretches.map((one) => volumeWithin(one, span)));

/** The same volumes up to a moment, what is given at once at that moment included. */
export function cutAt<T extends Stretch>(stretches: readonly T[], at: Instant): readonly T[] {
  return stretches.flatMap((one) => {
    if (one.until <= at) return [one];
    return one.from < at ? [{ ...one, until: at, volume: goneIn(one, at) }] : [];
  });
}

/** Keeps the first part of a stretch, until it had given `kept`. */
function firstPart<T extends Stretch>(one: T, kept: Volume): T {
  const lasts = one.volume === 0 ? 0 : timesOverUp(between(one.from, one.until), kept, one.volume);
  return { ...one, until: after(one.from, duration(lasts)), volume: kept };
}

export type TakenOff<T> = {
  readonly kept: readonly T[];
  /** What could not be taken off, because less had gone in. */
  readonly over: Volume;
};

/** Splits what was going in at that moment: the part that was in by then, and the rest. */
const splitAt = <T extends Stretch>(one: T, at: Instant): readonly T[] =>
  one.from < at && one.until > at
    ? [
        { ...one, until: at, volume: goneIn(one, at) },
        { ...one, from: at, volume: subtract(one.volume, goneIn(one, at)) },
      ]
    : [one];

/**
 * [ST7] Takes a volume off the latest of what had gone in by a moment, the last of it first.
 */
export function takenOff<T extends Stretch>(
  stretches: readonly T[],
  { at, volume: lost }: { readonly at: Instant; readonly volume: Volume },
): TakenOff<T> {
  const split = stretches.flatMap((one) => splitAt(one, at));
  const latest = split
    .map((one, place) => ({ one, place }))
    .filter(({ one }) => one.until <= at)
    .toSorted((a, b) => b.one.until - a.one.until || b.place - a.place);
  let over: Volume = lost;
  for (const { one, place } of latest) {
    if (over <= 0) break;
    const taken = volume(Math.min(over, one.volume));
    split[place] = firstPart(one, subtract(one.volume, taken));
    over = subtract(over, taken);
  }
  return { kept: split.filter((one) => one.volume > 0), over };
}
