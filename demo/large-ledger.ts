/**
 * What does a large ward's record look like? As many courses as are asked for, each fed without a break at a rate of its own,
 * with everything that is written down in eight hours at a bedside, over and over. For tests and for measuring: nobody's
 * story. A course is made when it is reached, so that a million entries need not be held at once.
 */
import { fraction } from '@feedwright/core/base/fraction';
import { after, duration, HOUR, type Instant, minutes, SECOND } from '@feedwright/core/base/instant';
import {
  given,
  ml,
  mlPerHour,
  NOTHING,
  type Rate,
  type Volume,
  volumeDownTo,
} from '@feedwright/core/base/volume';
import type { Order } from '@feedwright/core/order/order';
import type { Entry } from '@feedwright/core/record/entry';
import type { Fact } from '@feedwright/core/record/fact';
import { EDITH } from './orders.ts';
import { when } from './telling/clock.ts';
import { type Draw, drawFrom } from './telling/draw.ts';

export type LargeLedger = {
  readonly courses: number;
  readonly entriesPerCourse: number;
  /** A whole number. The same seed always gives the same ledger. */
  readonly seed: number;
};

export type CourseEntries = { readonly course: string; readonly entries: readonly Entry[] };

/** Eight hours of one course. */
type Turn = { readonly index: number; readonly rate: Rate; readonly draw: Draw };

const TURN = duration(8 * HOUR);
/** It stands still once in each, for care. */
const [STOPS_AT, RUNS_AT] = [200, 215];
const FILLED = ml(800);
const WRITTEN_AFTER = duration(40 * SECOND);

const water = { kind: 'water-given/1', water: 'tap', volume: ml(30), why: 'flush' } as const;
const headUp = { kind: 'position-set/1', headOfBedDegrees: 35, posture: null } as const;
const mouthCare = { kind: 'mouth-care-done/1' } as const;
const paused = { kind: 'pump-paused/1', reason: 'care', note: null } as const;
const resumed = { kind: 'pump-resumed/1' } as const;
const atMark = {
  kind: 'tube-checked/1',
  method: 'mark',
  lumen: null,
  confirmed: true,
  ph: null,
  markCm: fraction(58),
  reader: null,
} as const;

/** What the counter shows so many minutes into a turn. */
function shown(minute: number, { rate }: Turn): Volume {
  const stoodStill = Math.max(0, Math.min(minute, RUNS_AT) - STOPS_AT);
  return volumeDownTo(given(rate, minutes(minute - stoodStill)), ml(1));
}

const read = (minute: number, turn: Turn): Fact => ({
  kind: 'counter-read/1',
  counts: 'feed',
  volume: shown(minute, turn),
});

const hung = ({ index }: Turn): Fact => ({
  kind: 'container-put-up/1',
  container: `bag-${index}`,
  holds: 'feed',
  feed: 'standard-1.0',
  strength: fraction(1),
  closed: false,
  filled: FILLED,
  newSet: false,
  comesDownBy: null,
  lot: null,
  expires: null,
});

const takenDown = (turn: Turn): Fact => ({
  kind: 'container-taken-down/1',
  container: `bag-${turn.index}`,
  left: volumeDownTo((FILLED - shown(480, turn)) as Volume, ml(5)),
  reason: null,
});

function residual({ draw }: Turn): Fact {
  const drawn = ml(10 * draw(20));
  const found = drawn === NOTHING ? 'zero' : 'measured';
  const look = drawn === NOTHING ? null : 'feed';
  return { kind: 'residual-checked/1', found, volume: drawn, look, returned: drawn, discarded: NOTHING };
}

const urine = ({ draw }: Turn): Fact => ({
  kind: 'output-measured/1',
  what: 'urine',
  volume: ml(200 + 10 * draw(30)),
});

const glucose = ({ draw }: Turn): Fact => ({
  kind: 'laboratory-result/1',
  analyte: 'glucose',
  value: fraction(50 + draw(60), 10),
  unit: 'mmol/L',
});

/** Minutes into the turn, and what is then written down. */
const WRITTEN: readonly (readonly [number, (turn: Turn) => Fact])[] = [
  [0, hung],
  [
    0,
    ({ index, rate }) =>
      index === 0 ? { kind: 'pump-started/1', rate, volumeToBeDelivered: null } : resumed,
  ],
  [4, () => water],
  [5, () => headUp],
  [6, () => atMark],
  [8, () => mouthCare],
  [120, urine],
  [STOPS_AT, () => paused],
  [RUNS_AT, () => resumed],
  [240, (turn) => read(240, turn)],
  [242, () => water],
  [243, () => headUp],
  [244, () => atMark],
  [246, residual],
  [248, () => mouthCare],
  [300, glucose],
  [360, urine],
  [420, () => water],
  [480, (turn) => ({ kind: 'counter-cleared/1', counts: 'feed', read: shown(480, turn) })],
  [480, () => paused],
  [480, takenDown],
];

const firstFacts = (order: Order): readonly Fact[] => [
  { kind: 'order-placed/1', placed: order },
  { kind: 'weight-measured/1', kg: fraction(68) },
];

function entriesOf(course: string, count: number, draw: Draw): readonly Entry[] {
  const begins = when('Sat 06:00');
  const rate = mlPerHour(40 + draw(50));
  const order: Order = { ...EDITH, id: `order-${course}` };
  const entries: Entry[] = [];
  const write = (fact: Fact, happenedAt: Instant): void => {
    const number = entries.length + 1;
    entries.push({
      id: `${course}-${number}`,
      course,
      happenedAt,
      recordedAt: after(happenedAt, WRITTEN_AFTER),
      by: 'nurse',
      device: `tablet-${course}`,
      number,
      order: order.id,
      policy: '1',
      task: null,
      corrects: null,
      fact,
    });
  };
  for (const fact of firstFacts(order)) write(fact, begins);
  for (let index = 0; entries.length < count; index += 1) {
    const turn: Turn = { index, rate, draw };
    const start = after(begins, duration(index * TURN));
    for (const [minute, fact] of WRITTEN) write(fact(turn), after(start, minutes(minute)));
  }
  return entries.slice(0, count);
}

/** Each course with its entries in the order of truth, made one after the other. */
export function* largeLedger({ courses, entriesPerCourse, seed }: LargeLedger): Generator<CourseEntries> {
  for (let index = 0; index < courses; index += 1) {
    const course = `course-${index + 1}`;
    const draw = drawFrom(seed * 1_000_003 + index);
    yield { course, entries: entriesOf(course, entriesPerCourse, draw) };
  }
}
