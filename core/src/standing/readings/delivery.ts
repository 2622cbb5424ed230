/**
 * How much feed went in, from where, under which order? A pump at a rate gives rate × time until a counter is read; between
 * two readings the counter's difference is what was delivered, laid over that time in proportion to rate × time.
 *
 *   rate  ──┐75 ┌──pause──┐ ┌─60──        pieces since the last reading are estimates;
 *           └───┘         └─┘             a reading settles them, and they never change again
 */

import type { Fraction } from '../../base/fraction.ts';
import { after, between, type Instant, later } from '../../base/instant.ts';
import { add, given, NOTHING, type Rate, timeToGive, type Volume, volume } from '../../base/volume.ts';
import type { Stretch } from '../stretch.ts';
import { emptyTrail, grown, type Trail, told } from '../trail.ts';

/** What is in the container: feed so strong. */
export type Mixture = { readonly feed: string; readonly strength: Fraction };

export type Delivered = Stretch & {
  /** Counted by the pump, estimated from rate × time, or given by hand as written down. */
  readonly by: 'counter' | 'estimate' | 'hand';
  /** What rate × time says of it; of a feed given by hand its volume. */
  readonly byRate: Volume;
  readonly container: string | null;
  /** Null where neither container nor order says what it was. */
  readonly mixture: Mixture | null;
  readonly order: string | null;
};

/** One reading of the counter against what rate × time says of the same time. */
export type Counted = {
  readonly from: Instant;
  readonly until: Instant;
  readonly counted: Volume;
  readonly byRate: Volume;
  readonly entry: string;
};

export type Running = { readonly rate: Rate; readonly since: Instant; readonly order: string | null };

export type DeliveryState = {
  readonly settled: Trail<Delivered>;
  /** Since the last reading. */
  readonly pending: Trail<Delivered>;
  readonly counted: Trail<Counted>;
  /** What the counter showed last, and when. */
  readonly counter: Volume;
  readonly countedAt: Instant | null;
  readonly running: Running | null;
  /** What it ran at last, for a pump that is resumed. */
  readonly lastRate: Rate | null;
  /** Up to when what ran has been made into pieces. */
  readonly cutAt: Instant | null;
  /** Drawn from the container now up: counted or by hand, and estimated since the last reading. */
  readonly drawn: Volume;
  readonly drawnPending: Volume;
  readonly feedingSince: Instant | null;
};

export const beginDelivery = (): DeliveryState => ({
  settled: emptyTrail(),
  pending: emptyTrail(),
  counted: emptyTrail(),
  counter: NOTHING,
  countedAt: null,
  running: null,
  lastRate: null,
  cutAt: null,
  drawn: NOTHING,
  drawnPending: NOTHING,
  feedingSince: null,
});

/** What a pump draws from: the container up and what was in it for the patient, and the mixture that the order says. */
export type Source = {
  readonly container: string | null;
  /** Less what went into the line; null where no container is recorded. */
  readonly held: Volume | null;
  readonly mixture: Mixture | null;
};

/** Past this no pump ran on unrecorded: a year at 100 mL/h. Keeps every sum inside the range of exact numbers. */
const MOST_ESTIMATED = volume(360_000_000 * 876_000);

/** [ST4] Never more than what the container still held: a pump on an empty container gives nothing. */
export function roomIn({ drawn, drawnPending }: DeliveryState, { held }: Source): Volume {
  if (held === null) return MOST_ESTIMATED;
  return volume(Math.max(0, held - drawn - drawnPending));
}

/** [ST2] What ran since the last cut becomes a piece of its own, ending where the container ran dry. */
export function cut(state: DeliveryState, at: Instant, source: Source): DeliveryState {
  const { running, cutAt } = state;
  if (running === null || cutAt === null || at <= cutAt)
    return state.cutAt === at ? state : { ...state, cutAt: at };
  const room = roomIn(state, source);
  const lasts = between(cutAt, at);
  const byRate = running.rate * lasts >= room ? room : given(running.rate, lasts);
  const dry = after(cutAt, timeToGive(byRate, running.rate) ?? lasts);
  const piece: Delivered = {
    from: cutAt,
    until: dry < at ? dry : at,
    volume: byRate,
    by: 'estimate',
    byRate,
    container: source.container,
    mixture: source.mixture,
    order: running.order,
  };
  return {
    ...state,
    cutAt: at,
    pending: byRate > 0 ? grown(state.pending, piece) : state.pending,
    drawnPending: add(state.drawnPending, byRate),
  };
}

export function startPump(
  state: DeliveryState,
  at: Instant,
  { rate, order, source }: { readonly rate: Rate; readonly order: string | null; readonly source: Source },
): DeliveryState {
  const before = cut(state, at, source);
  return {
    ...before,
    running: rate > 0 ? { rate, since: at, order } : null,
    lastRate: rate,
    feedingSince: before.feedingSince ?? (rate > 0 ? at : null),
  };
}

/** Paused or stopped: a pause gives nothing. */
export function haltPump(state: DeliveryState, at: Instant, source: Source): DeliveryState {
  const before = cut(state, at, source);
  return before.running === null ? before : { ...before, running: null };
}

/** The container was changed: what the next one gives is drawn from it alone. */
export const changeSource = (state: DeliveryState, at: Instant, old: Source): DeliveryState => ({
  ...cut(state, at, old),
  drawn: NOTHING,
  drawnPending: NOTHING,
});

export type HandFeed = {
  readonly at: Instant;
  readonly until: Instant;
  readonly volume: Volume;
  readonly mixture: Mixture;
  readonly container: string | null;
  readonly order: string | null;
  /** By a pump whose counter counts it too: an estimate until that is read. */
  readonly counts: boolean;
};

/** [ST6] A feed given by syringe, gravity or as one pumped feed: its volume over its minutes, from when it began. */
export function giveFeed(state: DeliveryState, feed: HandFeed, source: Source): DeliveryState {
  const now = cut(state, feed.at, source);
  const { at, until, volume: amount, mixture, container, order } = feed;
  const by = feed.counts ? 'estimate' : 'hand';
  const piece: Delivered = { from: at, until, volume: amount, by, byRate: amount, container, mixture, order };
  const fromUp = container !== null && container === source.container ? amount : NOTHING;
  const next = { ...now, feedingSince: now.feedingSince ?? at };
  return feed.counts
    ? { ...next, pending: grown(next.pending, piece), drawnPending: add(next.drawnPending, fromUp) }
    : { ...next, settled: grown(next.settled, piece), drawn: add(next.drawn, fromUp) };
}

/** Everything that went in up to a moment, what is running included. In the order in which it was settled. */
export function deliveredUpTo(state: DeliveryState, at: Instant, source: Source): readonly Delivered[] {
  const now = cut(state, later(at, state.cutAt ?? at), source);
  return [...told(now.settled), ...told(now.pending)];
}
