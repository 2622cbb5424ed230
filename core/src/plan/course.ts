/** What do all parts of a plan look at? The order with nothing missing any more, and the times that it is planned for. */
import type { Instant, Span } from '../base/instant.ts';
import type { TimeOfDay, Zone } from '../base/zone.ts';
import type { Feed } from '../feeds/feed.ts';
import type { Order, Regimen } from '../order/order.ts';
import type { Held } from '../programme/holds.ts';
import type { Programme } from '../programme/programme.ts';
import type { Standing } from '../standing/standing.ts';
import type { Local } from './local.ts';

export type Course = {
  readonly order: Order;
  readonly ordered: NonNullable<Order['feed']>;
  readonly regimen: Regimen;
  readonly feed: Feed;
  readonly local: Local;
  readonly standing: Standing;
  readonly zone: Zone;
  readonly dayStart: TimeOfDay;
  /** From now to the end of the plan. */
  readonly span: Span;
  /** The feeding day that it is now. */
  readonly day: Span;
  /** From now to the end of plan or day, whichever is later: what is told of the day is told whole. */
  readonly horizon: Span;
  /** When the order began or will begin, now at the earliest if nothing is recorded yet: nothing was due before. */
  readonly begins: Instant;
  /** When the order lets no feed run, far enough around the plan: its holds and those around medicines. */
  readonly held: readonly Held[];
  /** When feed can first run: now, or where nothing is up with the first visit. */
  readonly feedFrom: Instant;
  /**
   * By the lowest credible pace, from as far back as a window reaches to past every limit of a container that the plan
   * could put up. What is before `feedFrom` is past: it only tells whether feed was to run when something was due.
   */
  readonly programme: Programme;
};
