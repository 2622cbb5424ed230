/** When is a feed at a named time, how much is it then, and until when has it room before the next? */

import type { Fraction } from '../../base/fraction.ts';
import {
  after,
  type Duration,
  duration,
  earlier,
  type Instant,
  type Span,
  within,
} from '../../base/instant.ts';
import type { Volume } from '../../base/volume.ts';
import type { Worked } from '../../base/working.ts';
import { type TimeOfDay, timesWithin } from '../../base/zone.ts';
import type { Level } from '../advancement.ts';
import type { Short } from '../draft.ts';
import type { Frame } from '../frame.ts';
import { type Piece, pieceGives } from '../programme.ts';

export type FeedTime = { readonly at: TimeOfDay; readonly ifEatenLessThan?: Fraction };

/** The feed as a piece of its own, cut short where the next one begins before it is done; that rest is `cutOff`. */
export type TimedFeed = { readonly piece: Piece; readonly cutOff: readonly Short[] };

function pieceAt(
  frame: Frame,
  from: Instant,
  { ifEatenLessThan }: FeedTime,
  lasts: Duration,
  volume: Worked<Volume>,
): Piece {
  const whole: Span = { from, until: after(from, lasts) };
  const may = ifEatenLessThan === undefined ? {} : { ifEatenLessThan };
  const feed = frame.order.feed?.id ?? '';
  return {
    ...whole,
    gives: { kind: 'volume', volume: volume.value, whole, feed, ...may },
    working: volume.working,
  };
}

function beforeNext(piece: Piece, next: Piece | undefined): TimedFeed {
  if (next === undefined || next.from >= piece.until) return { piece, cutOff: [] };
  const until = earlier(piece.until, next.from);
  const rest = { ...piece, from: until };
  const volume = pieceGives(rest, rest.until);
  const cutOff =
    volume > 0
      ? [{ from: piece.from, until, volume, why: 'next-feed' as const, working: piece.working }]
      : [];
  return { piece: { ...piece, until }, cutOff };
}

/** The feeds of all the days that are near, in order. Times that fall on each other when the clocks change follow at once. */
export function timedFeeds(
  frame: Frame,
  times: readonly FeedTime[],
  lasts: Duration,
  levels: readonly Level<Volume>[],
): readonly TimedFeed[] {
  const { near, order, ordered } = frame;
  const pieces = times
    .flatMap((time) => timesWithin([time.at], near.from, near.until, order.zone).map((at) => ({ at, time })))
    .filter(({ at }) => within(ordered, at))
    .toSorted((a, b) => a.at - b.at)
    .flatMap(({ at, time }) => {
      const level = levels.find((one) => within(one, at));
      return level === undefined ? [] : [pieceAt(frame, at, time, duration(Math.max(lasts, 1)), level.is)];
    });
  return pieces.map((piece, i) => beforeNext(piece, pieces[i + 1]));
}
