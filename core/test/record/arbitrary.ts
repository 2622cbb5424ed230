/**
 * Entries and whole courses to try properties on.
 * `arbEntry`: any fact in any envelope. `arbCourse`: a course as it could have gone, on several devices whose clocks
 * differ, charted late, with errors, corrections, things recorded twice and kinds that nobody here knows.
 */
import { type Fraction, fraction } from '@feedwright/core/base/fraction';
import { hours, type Instant, instant, MINUTE } from '@feedwright/core/base/instant';
import { ml, mlPerHour, NOTHING } from '@feedwright/core/base/volume';
import type { AccessDevice, Order } from '@feedwright/core/order/order';
import type { AnyEntry, Entry, Envelope } from '@feedwright/core/record/entry';
import type { Fact } from '@feedwright/core/record/fact';
import fc from 'fast-check';
import { orderWith } from '../order/example.ts';
import { arbFact, arbLine, arbMoment } from './arbitrary-fact.ts';

const maybe = <T>(of: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(of, { nil: null });

const arbUnknownFact = fc
  .record({
    kind: fc.constantFrom('rate-changed/2', 'mood-noted/1', 'entered-in-error/9'),
    other: fc.jsonValue(),
  })
  .map(({ kind, other }) => ({ kind, raw: { kind, other: other ?? null } }));

/** Any known fact, or one of a newer release, in any envelope. */
export const arbEntry: fc.Arbitrary<AnyEntry> = fc.record(
  {
    id: fc.uuid(),
    course: arbLine,
    happenedAt: arbMoment,
    recordedAt: arbMoment,
    by: arbLine,
    device: arbLine,
    number: fc.nat(),
    order: maybe(arbLine),
    policy: maybe(arbLine),
    task: maybe(arbLine),
    corrects: maybe(fc.uuid()),
    fact: fc.oneof({ weight: 9, arbitrary: arbFact }, arbUnknownFact),
  },
  { noNullPrototype: true },
) as fc.Arbitrary<AnyEntry>;

/** The moment at which every course begins: an hour that no clock change is near. */
export const COURSE_BEGINS: Instant = instant(Date.UTC(2026, 10, 25, 8));
export const COURSE = 'course-1';
const FEED = 'standard';
const FULL: Fraction = fraction(1);
const NASOGASTRIC: AccessDevice = {
  device: 'nasogastric',
  french: fraction(10),
  lumens: [{ name: 'single', tip: 'gastric', uses: ['feed', 'medicine'] }],
  feedBy: 'single',
  medicineBy: 'single',
  placedAt: null,
};

/** One turn of the course: how long after the last one, what of what is possible, on which device, charted how late. */
type Turn = {
  readonly minutes: number;
  readonly pick: number;
  readonly amount: number;
  readonly device: number;
  readonly late: number;
};

type Scene = {
  readonly entries: AnyEntry[];
  readonly clocks: readonly number[];
  container: string | null;
  pump: 'off' | 'running' | 'paused';
  counter: number;
  tube: boolean;
  made: number;
};

const known = (entry: AnyEntry | undefined): entry is Entry => entry !== undefined && !('raw' in entry.fact);

type Move = (scene: Scene, turn: Turn) => Fact | null;

const putUp: Move = (scene, { amount }) => {
  if (scene.container !== null) return null;
  scene.made += 1;
  scene.container = `bag-${scene.made}`;
  return {
    kind: 'container-put-up/1',
    container: scene.container,
    holds: 'feed',
    feed: FEED,
    strength: FULL,
    closed: false,
    filled: ml(100 + 50 * (amount % 8)),
    newSet: amount % 2 === 0,
    comesDownBy: null,
    lot: null,
    expires: null,
  };
};

const takeDown: Move = (scene, { amount }) => {
  if (scene.container === null || scene.pump === 'running') return null;
  const container = scene.container;
  scene.container = null;
  scene.pump = 'off';
  return {
    kind: 'container-taken-down/1',
    container,
    left: amount % 3 === 0 ? null : ml(amount % 60),
    reason: null,
  };
};

const start: Move = (scene, { amount }) => {
  if (scene.container === null || scene.pump !== 'off' || !scene.tube) return null;
  scene.pump = 'running';
  return {
    kind: 'pump-started/1',
    rate: mlPerHour(20 + (amount % 80)),
    volumeToBeDelivered: amount % 2 === 0 ? ml(200) : null,
  };
};

const whileRunning =
  (then: Scene['pump'], fact: (turn: Turn) => Fact): Move =>
  (scene, turn) => {
    if (scene.pump !== 'running') return null;
    scene.pump = then;
    return fact(turn);
  };

const counted: Move = (scene, { amount, minutes }) => {
  if (scene.pump === 'off') return null;
  if (amount % 9 === 0) {
    const read = amount % 2 === 0 ? null : ml(scene.counter);
    scene.counter = 0;
    return { kind: 'counter-cleared/1', counts: 'feed', read };
  }
  scene.counter += minutes % 90;
  return { kind: 'counter-read/1', counts: 'feed', volume: ml(scene.counter) };
};

const byTube =
  (fact: (turn: Turn) => Fact): Move =>
  (scene, turn) =>
    scene.tube ? fact(turn) : null;

const always =
  (fact: (turn: Turn) => Fact): Move =>
  (_scene, turn) =>
    fact(turn);

const residual = ({ amount }: Turn): Fact => ({
  kind: 'residual-checked/1',
  found: amount % 4 === 0 ? 'could-not-aspirate' : amount % 4 === 1 ? 'zero' : 'measured',
  volume: amount % 4 < 2 ? null : ml(amount + 1),
  look: null,
  returned: amount % 4 < 2 ? NOTHING : ml(Math.floor(amount / 2)),
  discarded: NOTHING,
});

const MOVES: readonly Move[] = [
  putUp,
  putUp,
  takeDown,
  start,
  start,
  whileRunning('running', ({ amount }) => ({ kind: 'rate-changed/1', rate: mlPerHour(10 + (amount % 100)) })),
  whileRunning('paused', ({ amount }) => ({
    kind: 'pump-paused/1',
    reason: amount % 2 === 0 ? 'care' : 'fast',
    note: null,
  })),
  whileRunning('off', () => ({ kind: 'pump-stopped/1', reason: 'feed-ended' })),
  (scene) => {
    if (scene.pump !== 'paused') return null;
    scene.pump = 'running';
    return { kind: 'pump-resumed/1' };
  },
  counted,
  counted,
  byTube(({ amount }) => ({
    kind: 'water-given/1',
    water: 'tap',
    volume: ml(10 + 10 * (amount % 6)),
    why: amount % 3 === 0 ? 'free-water' : 'flush',
  })),
  byTube(({ amount }) => ({
    kind: 'medicine-given/1',
    name: 'a medicine',
    volume: ml(amount % 20),
    lumen: null,
  })),
  byTube(({ amount }) => ({
    kind: 'feed-given/1',
    by: 'syringe',
    feed: FEED,
    strength: FULL,
    volume: ml(50 + 10 * (amount % 20)),
    lasted: hours(1),
    heightCm: null,
    timedBarrel: null,
  })),
  byTube(residual),
  always(({ amount }) => ({ kind: 'position-set/1', headOfBedDegrees: amount % 60, posture: null })),
  always(({ amount }) => ({
    kind: 'tube-checked/1',
    method: 'mark',
    lumen: null,
    confirmed: amount % 9 !== 0,
    ph: null,
    markCm: fraction(55),
    reader: null,
  })),
  always(({ amount }) => ({ kind: 'set-changed/1', line: ml(15), spilt: ml(amount % 5) })),
  always(({ amount }) => ({ kind: 'vomited/1', volume: amount % 2 === 0 ? null : ml(amount) })),
  always(({ amount }) => ({ kind: 'feed-lost/1', where: 'out-of-tube', volume: ml(1 + amount) })),
  always(({ amount }) => ({ kind: 'output-measured/1', what: 'urine', volume: ml(100 + amount) })),
  always(({ amount }) => ({
    kind: 'laboratory-result/1',
    analyte: 'phosphate',
    value: fraction(1 + (amount % 15), 10),
    unit: 'mmol/L',
  })),
  always(({ amount }) => ({ kind: 'weight-measured/1', kg: fraction(600 + amount, 10) })),
  always(() => ({ kind: 'mouth-care-done/1' })),
  (scene) => {
    scene.tube = false;
    scene.pump = scene.pump === 'running' ? 'paused' : scene.pump;
    return { kind: 'tube-out/1', how: null };
  },
  (scene) => {
    if (scene.tube) return null;
    scene.tube = true;
    return { kind: 'tube-placed/1', access: NASOGASTRIC, markCm: fraction(55) };
  },
];

/** What one entry says of an earlier one: that it was an error, is corrected, was made twice, or stays of two. */
function aboutAnother(scene: Scene, turn: Turn): { fact: AnyEntry['fact']; corrects?: string } | null {
  const other = scene.entries[turn.amount % Math.max(1, scene.entries.length)];
  const newest = scene.entries.at(-1);
  switch (turn.pick % 5) {
    case 0:
      return other === undefined || other.fact.kind.startsWith('order-')
        ? null
        : { fact: { kind: 'entered-in-error/1', target: other.id, reason: 'wrong bed' } };
    case 1:
      return known(other) && other.fact.kind === 'water-given/1'
        ? { fact: { ...other.fact, volume: ml(1 + turn.amount) }, corrects: other.id }
        : null;
    case 2:
      return known(newest) && newest.fact.kind !== 'order-placed/1' ? { fact: newest.fact } : null;
    case 3:
      return known(newest) && known(scene.entries.at(-2))
        ? { fact: { kind: 'duplicate-settled/1', keeps: scene.entries.at(-2)!.id, drops: newest.id } }
        : null;
    default:
      return { fact: { kind: 'mood-noted/1', raw: { kind: 'mood-noted/1', mood: turn.amount } } };
  }
}

function factOf(scene: Scene, turn: Turn): { fact: AnyEntry['fact']; corrects?: string } | null {
  if (turn.pick % 6 === 5) return aboutAnother(scene, { ...turn, pick: Math.floor(turn.pick / 6) });
  for (let tries = 0; tries < MOVES.length; tries += 1) {
    const fact = MOVES[(turn.pick + tries) % MOVES.length]!(scene, turn);
    if (fact !== null) return { fact };
  }
  return null;
}

/** Each device numbers its entries and never lets its recorded time run backwards. */
function enveloped(scene: Scene, turn: Turn, at: Instant, order: string): Omit<Envelope, 'corrects'> {
  const device = `device-${turn.device % scene.clocks.length}`;
  const own = scene.entries.filter((entry) => entry.device === device);
  const skew = scene.clocks[turn.device % scene.clocks.length]! * MINUTE;
  const last = own.at(-1)?.recordedAt ?? Number.NEGATIVE_INFINITY;
  return {
    id: `${device}:${own.length}`,
    course: COURSE,
    happenedAt: instant(at + skew),
    recordedAt: instant(Math.max(last, at + skew + turn.late * MINUTE)),
    by: `nurse-${turn.amount % 3}`,
    device,
    number: own.length,
    order,
    policy: 'ward-1',
    task: null,
  };
}

function played(order: Order, clocks: readonly number[], turns: readonly Turn[]): readonly AnyEntry[] {
  const scene: Scene = {
    entries: [],
    clocks,
    container: null,
    pump: 'off',
    counter: 0,
    tube: true,
    made: 0,
  };
  const first: Turn = { minutes: 0, pick: 0, amount: 0, device: 0, late: 0 };
  const add = (turn: Turn, at: Instant, told: { fact: AnyEntry['fact']; corrects?: string }): void => {
    const envelope = enveloped(scene, turn, at, order.id);
    scene.entries.push({ ...envelope, corrects: told.corrects ?? null, fact: told.fact } as AnyEntry);
  };
  add(first, COURSE_BEGINS, { fact: { kind: 'order-placed/1', placed: order } });
  let at = COURSE_BEGINS;
  for (const turn of turns) {
    at = instant(at + turn.minutes * MINUTE);
    const told = factOf(scene, turn);
    if (told !== null) add(turn, at, told);
  }
  return scene.entries;
}

export type CourseOptions = {
  /** The most turns; a turn is usually one entry. */
  readonly most?: number;
  readonly least?: number;
  readonly devices?: number;
  /** Placed at the beginning; it should begin at or before `COURSE_BEGINS`. */
  readonly order?: Order;
};

/** The entries of one course, in the order in which they were made; ids differ, and all devices together made them. */
export function arbCourse(options: CourseOptions = {}): fc.Arbitrary<readonly AnyEntry[]> {
  const { most = 60, least = 0, devices = 3, order = orderWith() } = options;
  const turn = fc.record({
    minutes: fc.oneof(
      { weight: 4, arbitrary: fc.integer({ min: 0, max: 90 }) },
      fc.integer({ min: 0, max: 600 }),
    ),
    pick: fc.nat({ max: 9_999 }),
    amount: fc.nat({ max: 199 }),
    device: fc.nat({ max: 99 }),
    late: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 240 })),
  });
  const clocks = fc.array(fc.constantFrom(0, 0, 0, -7, 12), { minLength: devices, maxLength: devices });
  return fc
    .tuple(clocks, fc.array(turn, { minLength: least, maxLength: most, size: 'max' }))
    .map(([skews, turns]) => played(order, skews, turns));
}
