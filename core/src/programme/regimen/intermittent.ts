/** How does an intermittent feed run? A volume over so many minutes from each named time, by pump or by gravity. [PR6] */
import type { Regimen } from '../../order/order.ts';
import { volumeLevels } from '../advancement.ts';
import { type Draft, drafts, missedFor, missedInHolds, NO_FEED } from '../draft.ts';
import type { Frame } from '../frame.ts';
import { cutTo, without } from '../spans.ts';
import { timedFeeds } from './feed-times.ts';

export function intermittentDraft(frame: Frame, regimen: Extract<Regimen, { kind: 'intermittent' }>): Draft {
  const { volume, times, lasts, advance } = regimen;
  const levels = volumeLevels(frame, volume, advance, 'regimen.volume');
  if (levels === null)
    return { ...NO_FEED, missed: missedFor('amount-not-known', cutTo(frame.days, frame.ordered)) };
  const feeds = timedFeeds(
    frame,
    times.map((at) => ({ at })),
    lasts,
    levels,
  );
  return drafts(
    feeds.map(({ piece, cutOff }) => {
      const ordered = cutTo([piece], frame.ordered);
      return {
        pieces: without(ordered, frame.held),
        missed: missedInHolds(ordered, frame.held).map((gap) => ({ ...gap, loses: piece })),
        short: cutOff,
      };
    }),
  );
}
