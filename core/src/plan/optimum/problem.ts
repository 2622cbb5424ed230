/**
 * What is asked of the optimum, and what does it answer? Containers, tasks and visits on whole numbers alone: the caller
 * says what a slot, a unit and a task mean.
 *
 *   slots    0   1   2   3   4   5   6   7   8   9  end       a visit may be at any slot that is not protected
 *   visits   ●           ●               ●                    each task at one visit inside its window
 *   runs     └── first ──┴─── second ────┴── last ──┘         each container starts at a visit; no gap between them
 *
 * Least, in this order: containers started; visits; total deviation from nominal; waste; then the earliest visits.
 */
/** Slots are grid points counted from 0. Times and volumes are whole numbers in whatever unit the caller counts. */
export type OptimumProblem = {
  /** Slots 0 to slots − 1 may have a visit; `slots` itself is the end of the plan. */
  readonly slots: number;
  /** The length of a slot, in the unit of the tasks' times. */
  readonly slotLength: number;
  /** Not 0 where no visit may be; one for each slot. */
  readonly protectedSlots: ArrayLike<number>;
  /** Times are counted from slot 0 and may lie before it or between slots. earliest ≤ nominal ≤ latest. */
  readonly tasks: readonly TaskWindow[];
  /** Null where no feed is planned: then only tasks and visits are. */
  readonly feed: FeedDemand | null;
};

export type TaskWindow = { readonly earliest: number; readonly nominal: number; readonly latest: number };

export type FeedDemand = {
  /** Feed needed from slot 0 up to each slot: slots + 1 volumes that never fall, the first of them 0. */
  readonly need: ArrayLike<number>;
  /**
   * For a container started at each slot, the feed needed from slot 0 up to the moment at which it must be down (hang,
   * set, product). Feed needed past the end of the plan counts if the order goes on. So an idle stretch after the last
   * need forces nobody to change a container, and a limit between two slots is exact.
   */
  readonly needAtLimit: ArrayLike<number>;
  /** What filling the line and spilling takes from a container started at each slot. */
  readonly prime: ArrayLike<number>;
  readonly filling: Filling;
  /** What can still be delivered from the container now up, and the need at its limit; null when nothing is up. */
  readonly up: { readonly remaining: number; readonly needAtLimit: number } | null;
  /** Whether the order ends with the plan. If not, the last container is filled as if it went on, and nothing of it is waste. */
  readonly ends: boolean;
};

/** A container that is poured in steps, or a closed one that comes in packs. */
export type Filling =
  | { readonly kind: 'poured'; readonly capacity: number; readonly step: number }
  | { readonly kind: 'packs'; readonly sizes: readonly number[] };

export type Run = {
  readonly start: number;
  /** Where the next one starts, or the end of the plan. */
  readonly end: number;
  readonly fill: number;
  readonly prime: number;
  /** Left in it at its end and thrown away; 0 for the last one if the order goes on. */
  readonly leftOver: number;
};

/** The tasks are indices into the problem's, in the order of their nominal times. */
export type PlannedVisit = { readonly slot: number; readonly tasks: readonly number[] };

/**
 * What cannot be done as asked, and what was done instead so that the rest could be planned:
 * `empty-window`, `protected-window`: the task has no slot, or only protected ones, in its window; it was moved to the
 *   nearest unprotected `slot`, or left out (null) where there is none;
 * `protected-start`: feed cannot go on without a container being started in protected time; `slot` was allowed for it;
 * `step-over-capacity` (one step, or the prime, is more than a container holds), `grid-over-capacity` (what is needed
 *   from `slot` to the next is), `limit-too-short` (a container started at `slot` must be down before the next): the
 *   feed needed from `slot` to `until` was left out, `lost`.
 */
export type Obstacle =
  | {
      readonly code: 'empty-window' | 'protected-window';
      readonly task: number;
      readonly slot: number | null;
    }
  | { readonly code: 'protected-start'; readonly slot: number }
  | {
      readonly code: 'step-over-capacity' | 'grid-over-capacity' | 'limit-too-short';
      readonly slot: number;
      readonly until: number;
      readonly lost: number;
    };

export type OptimumCost = {
  readonly containers: number;
  readonly visits: number;
  /** Σ |visit − nominal| over the tasks, in the unit of their times. */
  readonly deviation: number;
  /** Left over (also in the container now up, when it is replaced) and primed away. */
  readonly waste: number;
};

export type Optimum = {
  readonly containers: readonly Run[];
  readonly visits: readonly PlannedVisit[];
  readonly cost: OptimumCost;
  /** Empty when everything could be planned as asked; otherwise the rest is the best plan without these. */
  readonly obstacles: readonly Obstacle[];
};
