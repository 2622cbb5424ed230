/**
 * What is at the bedside while a story is told? The pump, what hangs, what the counter would show; and what has been
 * written down so far. Whatever happens makes a scene into the next one.
 *
 *   scene ─ "starts the pump" ─► scene ─ time ─► scene ─ "reads the counter" ─► scene
 */
import { type Fraction, timesOver } from '@feedwright/core/base/fraction';
import { between, type Duration, type Instant } from '@feedwright/core/base/instant';
import { impossible } from '@feedwright/core/base/result';
import {
  add,
  given,
  NOTHING,
  type Rate,
  STOPPED,
  subtract,
  type Volume,
  volume,
} from '@feedwright/core/base/volume';
import type { Order } from '@feedwright/core/order/order';
import type { Fact } from '@feedwright/core/record/fact';

/** Something written down. Names stand where the ids of entries will be. */
export type Told = {
  readonly fact: Fact;
  readonly at: Instant;
  readonly order: string | null;
  /** How long after it happened it was written down, where that was not at once. */
  readonly late: Duration | null;
  /** Somebody else than who is on duty, another device than the usual one. */
  readonly by: string | null;
  readonly device: string | null;
  readonly name: string | null;
  readonly corrects: string | null;
  readonly task: string | null;
};

export type Scene = {
  readonly at: Instant;
  /** When what is done now was due: a round comes a little later than its time. */
  readonly due: Instant;
  readonly order: Order | null;
  /** What really flows of what the pump counts: no pump is exact. */
  readonly trueFlow: Fraction;
  readonly rate: Rate;
  readonly runs: boolean;
  readonly counter: Volume;
  readonly up: string | null;
  readonly hung: ReadonlyMap<string, Volume>;
  readonly told: readonly Told[];
};

/** What somebody does, and what is then written down. */
export type Deed = (scene: Scene) => Scene;

export const emptyScene = (at: Instant, trueFlow: Fraction): Scene => ({
  at,
  due: at,
  order: null,
  trueFlow,
  rate: STOPPED,
  runs: false,
  counter: NOTHING,
  up: null,
  hung: new Map(),
  told: [],
});

/** Time goes on: a pump that runs counts, and what hangs gets less. On an empty container it counts no further. */
export function goOn(scene: Scene, at: Instant): Scene {
  if (!scene.runs) return { ...scene, at };
  const { n, d } = scene.trueFlow;
  const counts = given(scene.rate, between(scene.at, at));
  const flows = volume(timesOver(counts, n, d));
  if (scene.up === null) return { ...scene, at, counter: add(scene.counter, counts) };
  const left = scene.hung.get(scene.up) ?? NOTHING;
  const isDry = flows > left;
  return {
    ...scene,
    at,
    counter: add(scene.counter, isDry ? volume(timesOver(left, d, n)) : counts),
    hung: new Map(scene.hung).set(scene.up, isDry ? NOTHING : subtract(left, flows)),
  };
}

/** What is ordered by then. Throws where a story gives feed before anybody ordered it. */
export const feedOf = ({ order }: Scene) => order?.feed ?? impossible('nothing is ordered yet');

export const tell =
  (fact: Fact): Deed =>
  (scene) => ({
    ...scene,
    told: [
      ...scene.told,
      {
        fact,
        at: scene.at,
        order: scene.order?.id ?? null,
        late: null,
        by: null,
        device: null,
        name: null,
        corrects: null,
        task: null,
      },
    ],
  });

export const together =
  (...deeds: readonly Deed[]): Deed =>
  (scene) =>
    deeds.reduce((sofar, deed) => deed(sofar), scene);

type Marks = Partial<Pick<Told, 'late' | 'by' | 'device' | 'name' | 'corrects' | 'task'>>;

/** What the deeds tell, marked. */
export const marked =
  (marks: Marks, ...deeds: readonly Deed[]): Deed =>
  (scene) => {
    const done = together(...deeds)({ ...scene, told: [] });
    return { ...done, told: [...scene.told, ...done.told.map((one) => ({ ...one, ...marks }))] };
  };
