/**
 * What do the entries of a course come to? One reading for each thing that is asked of it. A course is a value, plain data
 * that may be gone on from more than once, so each course is its own checkpoint.
 *
 *      beginCourse ─ entry ─► course ─ entry ─► course ─► … ─ at an instant ─► standing
 */
import type { Instant } from '../base/instant.ts';
import type { PumpFact } from '../record/fact.ts';
import { beginContainers, type ContainersState, forPatient } from './readings/containers.ts';
import type { Contradiction } from './readings/contradictions.ts';
import { beginDelivery, type DeliveryState, type Source } from './readings/delivery.ts';
import { beginInterruptions, type InterruptionsState } from './readings/interruptions.ts';
import { beginLiquids, type LiquidsState } from './readings/liquids.ts';
import { beginOrders, type OrdersState } from './readings/orders.ts';
import { beginPerson, type PersonState } from './readings/person.ts';
import { beginTolerance, type ToleranceState } from './readings/tolerance.ts';
import { beginTube, type PositionState, type TubeState } from './readings/tube.ts';
import { emptyTrail, type Trail } from './trail.ts';

type ReadBack = Extract<PumpFact, { readonly kind: 'programme-read-back/1' }>;
type LineClosed = Extract<PumpFact, { readonly kind: 'line-closed/1' }>;
export type Since<T> = { readonly at: Instant; readonly entry: string; readonly fact: T };
export type Answer = {
  readonly at: Instant;
  readonly advice: string;
  readonly answer: string;
  readonly note: string | null;
};

export type Course = {
  /** When the latest entry happened. */
  readonly upTo: Instant | null;
  readonly entries: number;
  /** Entries of kinds and versions that this release does not know, with how many of each: kept and said. */
  readonly unknown: Readonly<Record<string, number>>;
  readonly done: Trail<{ readonly at: Instant; readonly task: string }>;
  readonly orders: OrdersState;
  readonly containers: ContainersState;
  readonly delivery: DeliveryState;
  readonly interruptions: InterruptionsState;
  readonly liquids: LiquidsState;
  readonly tube: TubeState;
  readonly position: PositionState;
  readonly tolerance: ToleranceState;
  readonly person: PersonState;
  readonly readBack: Since<ReadBack> | null;
  readonly lineClosed: Since<LineClosed> | null;
  readonly mouthCareAt: Instant | null;
  readonly answers: Trail<Answer>;
  readonly contradictions: Trail<Contradiction>;
};

export const beginCourse = (): Course => ({
  upTo: null,
  entries: 0,
  unknown: {},
  done: emptyTrail(),
  orders: beginOrders(),
  containers: beginContainers(),
  delivery: beginDelivery(),
  interruptions: beginInterruptions(),
  liquids: beginLiquids(),
  tube: beginTube(),
  position: null,
  tolerance: beginTolerance(),
  person: beginPerson(),
  readBack: null,
  lineClosed: null,
  mouthCareAt: null,
  answers: emptyTrail(),
  contradictions: emptyTrail(),
});

/** What the pump draws from now. */
export function sourceOf({ containers: { feedUp }, orders: { placed } }: Course): Source {
  if (feedUp !== null) {
    const { id, feed, strength } = feedUp;
    return { container: id, held: forPatient(feedUp), mixture: { feed, strength } };
  }
  const ordered = placed?.feed ?? null;
  const mixture = ordered === null ? null : { feed: ordered.id, strength: ordered.strength };
  return { container: null, held: null, mixture };
}
