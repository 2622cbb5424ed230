/**
 * What should happen from now on? The shape of a plan: what runs, what to pour or spike and when, everything due
 * gathered into visits, and what the feeding day comes to. Every number that is shown is `Worked`.
 */
import type { Fraction } from '../base/fraction.ts';
import type { Instant, Span } from '../base/instant.ts';
import type { Rate, Volume } from '../base/volume.ts';
import type { Worked } from '../base/working.ts';
import type { FeedList } from '../feeds/feed.ts';
import type { Order, Problem } from '../order/order.ts';
import type { Policy } from '../policy/policy.ts';
import type { Programme } from '../programme/programme.ts';
import type { Standing } from '../standing/standing.ts';

/** What a plan is made from. The plan begins at `standing.at`; the confirmations are inside the order. */
export type PlanRequest = {
  readonly order: Order;
  readonly feeds: FeedList;
  readonly policy: Policy;
  readonly standing: Standing;
  /** What was found already where the order came from; said, and stops or asks, as what is found here. */
  readonly found?: readonly Problem[];
  /** From when the course has been planned: nothing that was due before is told. Unless given, from now if nothing is recorded. */
  readonly since?: Instant;
  /** Where the plan ends; unless given, the end of the feeding day in which it begins. */
  readonly until?: Instant;
  /** Times in which no visit may be: rounds, quiet hours, handover. */
  readonly protectedTimes?: readonly Span[];
};

export type TaskKind =
  | 'put-up-container'
  | 'take-down-container'
  | 'change-set'
  | 'start-feed'
  | 'stop-feed'
  | 'change-rate'
  | 'give-feed'
  | 'give-bolus'
  | 'flush'
  | 'give-water'
  | 'put-up-water-bag'
  | 'give-medicine'
  | 'give-module'
  | 'check-position'
  | 'check-tube'
  | 'check-tolerance'
  | 'measure-residual'
  | 'confirm-step'
  | 'mouth-care'
  | 'weigh'
  | 'measure-glucose'
  | 'take-bloods';

/** Something due within a window: earliest ≤ nominal ≤ latest. The id is the same whenever it is planned again. */
export type Task = {
  readonly id: string;
  readonly kind: TaskKind;
  readonly earliest: Instant;
  readonly nominal: Instant;
  readonly latest: Instant;
  /** What is to be given or poured, where the task has an amount. */
  readonly volume: Worked<Volume> | null;
  readonly rate: Worked<Rate> | null;
  /** The medicine's or module's name, the hold's id, the lumen …: what the kind alone does not say. */
  readonly about: string | null;
  /** Of a flush: before, between or after what it is about. */
  readonly beside?: 'before' | 'between' | 'after';
  readonly rule: string;
};

export type Visit = { readonly at: Instant; readonly tasks: readonly Task[] };

/** Why a container comes down when it does: the limit that governs. */
export type DownBecause =
  | 'hang-limit'
  | 'set-limit'
  | 'expiry'
  | 'prepared-limit'
  | 'opened-limit'
  | 'label-limit'
  | 'feed-ends';

export type CartonUse = {
  /** `open:<id>` for one already open, `new:<n>` for one from the store. */
  readonly carton: string;
  readonly take: Volume;
  /** What stays in it; kept until then, or thrown away when null. */
  readonly left: Volume;
  readonly keepUntil: Instant | null;
};

export type PlannedContainer = {
  readonly putUpAt: Instant;
  readonly alreadyUp: boolean;
  readonly feed: string;
  readonly closed: boolean;
  readonly fill: Worked<Volume>;
  readonly newSet: boolean;
  readonly prime: Worked<Volume>;
  readonly volumeToDeliver: Worked<Volume>;
  readonly runsDryAt: Worked<Instant> | null;
  /** If a step up is confirmed, it runs dry as early as this. */
  readonly runsDryEarliest: Worked<Instant> | null;
  readonly takeDownBy: Worked<Instant>;
  readonly because: DownBecause;
  readonly nextAt: Instant | null;
  readonly leftOver: Worked<Volume>;
  /** What a diluted feed is mixed from; absent at full strength and for what is up already. */
  readonly mix?: { readonly formula: Worked<Volume>; readonly water: Worked<Volume> };
  readonly cartons: readonly CartonUse[];
};

export type DayTotals = {
  readonly day: Span;
  readonly formula: Worked<Volume>;
  readonly mixture: Worked<Volume>;
  readonly energyKcal: Worked<Fraction>;
  readonly proteinG: Worked<Fraction>;
  readonly water: {
    readonly formula: Worked<Volume>;
    readonly flushes: Worked<Volume>;
    readonly total: Worked<Volume>;
  };
  /** Against what was ordered and what is needed; null where neither order nor needs say. */
  readonly ordered: Worked<Volume> | null;
  readonly needs: {
    readonly energyKcal: Fraction | null;
    readonly proteinG: Fraction | null;
    readonly water: Volume | null;
  };
};

/** What cannot be planned as asked, with the reason and the best that can be done. */
export type Infeasible = {
  readonly rule: string;
  readonly code:
    | 'empty-window'
    | 'protected-window'
    | 'step-over-capacity'
    | 'grid-over-capacity'
    | 'feed-over-capacity'
    | 'limit-too-short'
    /** A container had to be started in protected time, or feed would have stopped. */
    | 'protected-start';
  readonly about: string;
  readonly at: Instant | null;
  readonly data: Readonly<Record<string, unknown>>;
};

export type Plan = {
  readonly at: Instant;
  readonly span: Span;
  /** What the order's rules say, and what local policy or the feed list does not say that a plan needs. */
  readonly problems: readonly Problem[];
  /** Null where a problem stops, or asks and nobody has confirmed: then there is nothing below to follow. */
  readonly programme: Programme | null;
  readonly containers: readonly PlannedContainer[];
  readonly waterBags: readonly PlannedContainer[];
  readonly visits: readonly Visit[];
  readonly day: DayTotals | null;
  readonly infeasible: readonly Infeasible[];
};
