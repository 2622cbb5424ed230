/**
 * The optimum's problem told in another way, from which the tests' own judges work it out: what is needed in each step
 * of the grid, and for how many slots a container may hang. Also random stories, and the definition word by word.
 */
import fc from 'fast-check';
import type { Filling, OptimumProblem, TaskWindow } from '../../../src/plan/optimum/problem.ts';

export type Story = {
  readonly slots: number;
  readonly slotLength: number;
  readonly closed: readonly boolean[];
  readonly tasks: readonly TaskWindow[];
  readonly feed: FeedStory;
};

export type FeedStory = {
  /** Needed from each slot to the next, past the end of the plan as long as any container may hang. */
  readonly steps: readonly number[];
  /** For how many slots a container started at each slot may hang. */
  readonly lasts: readonly number[];
  readonly prime: readonly number[];
  readonly filling: Filling;
  readonly up: { readonly remaining: number; readonly lasts: number } | null;
  readonly ends: boolean;
};

const total = (steps: readonly number[], from: number, until: number): number =>
  steps.slice(Math.max(0, from), Math.max(0, until)).reduce((sum, step) => sum + step, 0);

export function problemOf({ slots, slotLength, closed, tasks, feed }: Story): OptimumProblem {
  const { steps, lasts, prime, filling, up, ends } = feed;
  const upTo = (slot: number): number => total(steps, 0, slot);
  return {
    slots,
    slotLength,
    protectedSlots: closed.map(Number),
    tasks,
    feed: {
      need: Array.from({ length: slots + 1 }, (_, slot) => upTo(slot)),
      needAtLimit: lasts.map((last, slot) => upTo(slot + last)),
      prime,
      filling,
      up: up === null ? null : { remaining: up.remaining, needAtLimit: upTo(up.lasts) },
      ends,
    },
  };
}

/** The definition: what goes into a container that runs from one slot to another, or null where it cannot. */
export function fillOf(
  { steps, lasts, prime, filling }: FeedStory,
  from: number,
  until: number,
): number | null {
  for (let slot = from; slot < until; slot++)
    if (steps[slot]! > 0 && slot + 1 > from + lasts[from]!) return null;
  const amount = prime[from]! + total(steps, from, until);
  if (filling.kind === 'packs')
    return filling.sizes.toSorted((a, b) => a - b).find((size) => size >= amount) ?? null;
  let fill = 0;
  while (fill < amount) fill += filling.step;
  return fill <= filling.capacity ? fill : null;
}

export function upLasts({ steps, up }: FeedStory, until: number): boolean {
  for (let slot = 0; slot < until; slot++) if (steps[slot]! > 0 && slot + 1 > (up?.lasts ?? 0)) return false;
  return total(steps, 0, until) <= (up?.remaining ?? 0);
}

/** What is thrown away of the container started at `from` (or up, when null) when it is followed at `until`, or ends. */
export function wasteOf(story: Story, from: number | null, until: number): number {
  const { feed, slots } = story;
  const goesOn = until === slots && !feed.ends;
  if (from === null)
    return goesOn ? 0 : (feed.up?.remaining ?? 0) - (feed.up === null ? 0 : total(feed.steps, 0, until));
  return goesOn ? feed.prime[from]! : fillOf(feed, from, until)! - total(feed.steps, from, until);
}

export const openSlots = ({ slots, closed }: Story): readonly number[] =>
  Array.from({ length: slots }, (_, slot) => slot).filter((slot) => !closed[slot]);

export const inWindow = ({ slotLength }: Story, task: TaskWindow, slot: number): boolean =>
  task.earliest <= slot * slotLength && slot * slotLength <= task.latest;

export const deviationOf = ({ slotLength }: Story, task: TaskWindow, slot: number): number =>
  Math.abs(slot * slotLength - task.nominal);

type Size = { readonly slots: number; readonly tasks: number };

const stepsFor = (length: number): fc.Arbitrary<number[]> => {
  const runs = fc.array(
    fc.record({ rate: fc.constantFrom(0, 0, 1, 2, 3, 5, 9), length: fc.integer({ min: 1, max: 9 }) }),
    { minLength: 1, maxLength: 8 },
  );
  return runs.map((pieces) => {
    const round = pieces.flatMap((piece) => Array<number>(piece.length).fill(piece.rate));
    return Array.from({ length }, (_, slot) => round[slot % round.length]!);
  });
};

const filling = fc.oneof(
  fc.record({
    kind: fc.constant('poured' as const),
    capacity: fc.integer({ min: 12, max: 60 }),
    step: fc.constantFrom(1, 3, 5, 10),
  }),
  fc.record({
    kind: fc.constant('packs' as const),
    sizes: fc.uniqueArray(fc.constantFrom(12, 20, 30, 45), { minLength: 1, maxLength: 3 }),
  }),
);

const perSlot = (slots: number, varied: fc.Arbitrary<number>, same: fc.Arbitrary<number>) =>
  fc.oneof(
    same.map((value) => Array<number>(slots).fill(value)),
    fc.array(varied, { minLength: slots, maxLength: slots }),
  );

function feedFor(slots: number): fc.Arbitrary<FeedStory> {
  const hang = fc.integer({ min: 4, max: 14 });
  return fc.record({ steps: stepsFor(slots + 20), ends: fc.boolean() }).chain(({ steps, ends }) =>
    fc.record({
      steps: fc.constant(steps.map((step, slot) => (ends && slot >= slots ? 0 : step))),
      lasts: perSlot(slots, hang, hang),
      prime: perSlot(slots, fc.constantFrom(0, 0, 2, 7), fc.constantFrom(0, 3)),
      filling,
      up: fc.option(
        fc.record({ remaining: fc.integer({ min: 0, max: 40 }), lasts: fc.integer({ min: 0, max: 14 }) }),
        {
          freq: 3,
        },
      ),
      ends: fc.constant(ends),
    }),
  );
}

const SLOT_LENGTH = 5;

const taskFor = (slots: number): fc.Arbitrary<TaskWindow> =>
  fc
    .record({
      nominal: fc.integer({ min: -SLOT_LENGTH, max: slots * SLOT_LENGTH - 1 }),
      early: fc.integer({ min: 0, max: 30 }),
      late: fc.integer({ min: 0, max: 40 }),
    })
    .map(({ nominal, early, late }) => ({ earliest: nominal - early, nominal, latest: nominal + late }));

/** Anything at all: about half of these cannot be done as asked. */
export const anyStory = ({ slots, tasks }: Size): fc.Arbitrary<Story> =>
  fc.integer({ min: Math.ceil(slots / 2), max: slots }).chain((length) =>
    fc.record({
      slots: fc.constant(length),
      slotLength: fc.constant(SLOT_LENGTH),
      closed: fc.oneof(
        fc.constant(Array<boolean>(length).fill(false)),
        fc.array(
          fc.oneof({ weight: 3, arbitrary: fc.constant(false) }, { weight: 2, arbitrary: fc.boolean() }),
          {
            minLength: length,
            maxLength: length,
          },
        ),
        fc
          .record({ from: fc.nat({ max: length - 1 }), for: fc.integer({ min: 1, max: 9 }) })
          .map((night) =>
            Array.from({ length }, (_, slot) => slot >= night.from && slot < night.from + night.for),
          ),
      ),
      tasks: fc.array(taskFor(length), { maxLength: tasks }),
      feed: feedFor(length),
    }),
  );
