/**
 * How are boluses given? Each whole or not at all: one that would fall into a hold, or not be done when the order ends,
 * is not planned. One that depends on a meal is planned in full and marked as one that may be given, whichever pace is
 * asked for: what it needs must be ready. [PR6] [PR7]
 */
import { duration, overlap } from '../../base/instant.ts';
import type { Regimen } from '../../order/order.ts';
import { volumeLevels } from '../advancement.ts';
import { type Draft, drafts, type Missed, missedFor, NO_FEED } from '../draft.ts';
import type { Frame } from '../frame.ts';
import { cutTo } from '../spans.ts';
import { type TimedFeed, timedFeeds } from './feed-times.ts';

type Bolus = Extract<Regimen, { kind: 'bolus' }>;

/** By order, or by policy's least; where neither says, it is given at once. */
function lastsFor(frame: Frame, { lasts }: Bolus) {
  const least = frame.local('bolus.least-duration');
  return lasts ?? (least.known ? least.value : duration(1));
}

function skipped(frame: Frame, { piece }: TimedFeed): readonly Missed[] {
  const held = frame.held.filter((one) => overlap(one, piece) !== null);
  if (held.length === 0) return [];
  const untilKnown = held.every((one) => one.untilKnown);
  const holds = [...new Set(held.flatMap((one) => one.holds))];
  const why = untilKnown ? 'hold' : 'hold-end-unknown';
  return [{ from: piece.from, until: piece.until, why, holds, untilKnown, loses: piece }];
}

export function bolusDraft(frame: Frame, regimen: Bolus): Draft {
  const levels = volumeLevels(frame, regimen.volume, regimen.advance, 'regimen.volume');
  if (levels === null)
    return { ...NO_FEED, missed: missedFor('amount-not-known', cutTo(frame.days, frame.ordered)) };
  const times = [
    ...regimen.times.map((at) => ({ at })),
    ...regimen.meals.map(({ at, ifEatenLessThan }) => ({ at, ifEatenLessThan })),
  ];
  const feeds = timedFeeds(frame, times, lastsFor(frame, regimen), levels);
  return drafts(
    feeds
      .filter(({ piece }) => piece.until <= frame.ordered.until)
      .map((feed) => {
        const missed = skipped(frame, feed);
        return { pieces: missed.length === 0 ? [feed.piece] : [], missed, short: feed.cutOff };
      }),
  );
}
