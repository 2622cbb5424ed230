/**
 * What in the record cannot be as it stands? Found when an entry meets what was true before it; asked about, never put
 * right by guessing, and nothing goes below zero for it. [ST13]
 */
import type { Instant } from '../../base/instant.ts';
import type { Entry } from '../../record/entry.ts';
import type { Fact } from '../../record/fact.ts';
import type { Course } from '../course.ts';
import { isUp } from './containers.ts';
import { isFallen } from './counter.ts';
import { isWaterFallen } from './liquids.ts';

export type ContradictionCode =
  | 'counter-fell'
  | 'counter-against-rate'
  | 'more-than-was-filled'
  | 'left-against-delivered'
  | 'container-not-up'
  | 'other-feed-than-ordered'
  | 'order-changed-while-running'
  | 'resumed-unknown-rate'
  | 'fed-while-running'
  | 'carton-overdrawn'
  | 'lost-more-than-received'
  | 'read-back-differs'
  | 'likely-duplicate'
  | 'orders-fork';

export type Contradiction = {
  readonly code: ContradictionCode;
  readonly at: Instant;
  /** The entries that it is about; the one at which it showed first. */
  readonly entries: readonly string[];
  readonly data: Readonly<Record<string, unknown>>;
};

type Found = readonly [ContradictionCode, Contradiction['data']] | null;

function counterFell(course: Course, counts: 'feed' | 'water', shows: number | null): Found {
  const fell =
    counts === 'feed'
      ? isFallen(course.delivery, shows as never)
      : isWaterFallen(course.liquids, shows as never);
  const before = counts === 'feed' ? course.delivery.counter : course.liquids.waterCounter.shows;
  return fell ? ['counter-fell', { counts, before, shows }] : null;
}

function cartonOverdrawn(course: Course, carton: string, taken: number): Found {
  const remaining = course.containers.cartons.find((one) => one.id === carton)?.remaining ?? 0;
  return taken > remaining ? ['carton-overdrawn', { carton, remaining, taken }] : null;
}

function found(course: Course, fact: Fact): Found {
  const { containers, delivery } = course;
  switch (fact.kind) {
    case 'counter-read/1':
      return counterFell(course, fact.counts, fact.volume);
    case 'counter-cleared/1':
      return counterFell(course, fact.counts, fact.read);
    case 'container-taken-down/1':
      return isUp(containers, fact.container) ? null : ['container-not-up', { container: fact.container }];
    case 'carton-used/1':
      return cartonOverdrawn(course, fact.carton, fact.taken);
    case 'pump-resumed/1':
      return delivery.lastRate === null ? ['resumed-unknown-rate', {}] : null;
    case 'feed-given/1':
      return delivery.running === null ? null : ['fed-while-running', { rate: delivery.running.rate }];
    case 'order-placed/1':
      return delivery.running === null
        ? null
        : ['order-changed-while-running', { order: fact.placed.id, rate: delivery.running.rate }];
    default:
      return null;
  }
}

/** What this entry contradicts, seen from what was true before it. */
export function contradicted(course: Course, entry: Entry): Contradiction | null {
  const what = found(course, entry.fact);
  return what === null ? null : { code: what[0], at: entry.happenedAt, entries: [entry.id], data: what[1] };
}
