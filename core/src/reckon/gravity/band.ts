/**
 * How sure is it? Bore, viscosity, stomach pressure and the model itself are each known within a band; the flow's band
 * is where they lie likeliest when it is at its 5th and its 95th hundredth (first-order reliability). Each end is a whole
 * set-up of its own, so that its level, its stop and its time come out of the same physics.
 */
import { bad, issue, ok, type Result } from '../../base/result.ts';
import { flowWith, lasts, type Run, type Vessel } from './emptying.ts';
import type { Spread } from './fluid.ts';
import { lineOf } from './loss.ts';

export type Tube = {
  readonly what: 'giving-set' | 'connector' | 'extension' | 'tube';
  /** m */
  readonly bore: Spread;
  readonly length: number;
};

export type Setup = {
  readonly tubes: readonly Tube[];
  readonly density: number;
  /** Pa·sⁿ */
  readonly consistency: Spread;
  readonly index: number;
  /** Pa */
  readonly stomach: Spread;
  readonly vessel: Vessel;
};

/** Standard deviations from the middle of 90 % of a normal distribution. */
export const NINETY = 1.6448536269514722;
/** What the equations themselves are out by, as a standard deviation: a judgement, after the measured sets. */
const MODEL = 0.08;
/** Reading a level that rocks with the breath, and a watch: a judgement. */
const TIMING = 0.05;

/**
 * What is believed of a set-up: how many standard deviations each unknown lies from its middle, and how surely.
 * In order: each tube's bore, the consistency, the stomach's pressure, the model.
 */
export type Belief = {
  readonly mean: readonly number[];
  readonly covariance: readonly (readonly number[])[];
};

export function unread({ tubes }: Setup): Belief {
  const size = tubes.length + 3;
  return {
    mean: Array.from({ length: size }, () => 0),
    covariance: Array.from({ length: size }, (_, row) =>
      Array.from({ length: size }, (__, column) => (row === column ? 1 : 0)),
    ),
  };
}

/** A quantity that cannot be negative lies in its band by proportion. */
const byShare = ({ low, mid, high }: Spread, z: number): number =>
  mid * (z < 0 ? low / mid : high / mid) ** (Math.abs(z) / NINETY);
const byStep = ({ low, mid, high }: Spread, z: number): number =>
  mid + ((z < 0 ? mid - low : high - mid) * z) / NINETY;

/** The set-up with every unknown at its place. */
export function runAt(setup: Setup, z: readonly number[]): Run {
  const { tubes, density, index } = setup;
  const of = tubes.length;
  const consistency = byShare(setup.consistency, z[of] ?? 0);
  const reaches = tubes.map(({ bore, length }, place) => ({ bore: byShare(bore, z[place] ?? 0), length }));
  return {
    reaches,
    line: lineOf({ density, consistency, index }, reaches),
    back: byStep(setup.stomach, z[of + 1] ?? 0),
    factor: Math.exp(MODEL * (z[of + 2] ?? 0)),
  };
}

export const middle = (setup: Setup, belief: Belief): Run => runAt(setup, belief.mean);

const STEP = 0.05;

const moved = (z: readonly number[], place: number, by: number): readonly number[] =>
  z.map((value, at) => (at === place ? value + by : value));

/** How a logarithm changes with each unknown; where it has none on one side, only the stomach's pressure counts. */
function gradient(
  setup: Setup,
  of: (z: readonly number[]) => number,
  z: readonly number[],
): readonly number[] {
  const slopes = z.map((_, place) => (of(moved(z, place, STEP)) - of(moved(z, place, -STEP))) / (2 * STEP));
  return slopes.every(Number.isFinite) ? slopes : z.map((_, at) => (at === setup.tubes.length + 1 ? -1 : 0));
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, at) => sum + value * (b[at] ?? 0), 0);

export type Ends = { readonly low: Run; readonly mid: Run; readonly high: Run };

/** The set-ups at the two ends and in the middle of the 90 % band of something positive, here in logarithms. [GR5] */
export function endsOf(setup: Setup, belief: Belief, logarithm: (run: Run) => number): Ends {
  const slopes = gradient(setup, (z) => logarithm(runAt(setup, z)), belief.mean);
  const along = belief.covariance.map((row) => dot(row, slopes));
  const deviation = Math.sqrt(dot(slopes, along));
  const at = (side: number) =>
    runAt(
      setup,
      belief.mean.map((value, place) => value + (side * NINETY * (along[place] ?? 0)) / deviation),
    );
  return { low: at(-1), mid: middle(setup, belief), high: at(1) };
}

/** Of the flow while `volume` is in the vessel. */
export const ends = (setup: Setup, belief: Belief, volume: number): Ends =>
  endsOf(setup, belief, (run) => Math.log(flowWith(run, setup.vessel, volume)));

/** One pour that was timed: from one volume in the vessel to another. */
export type Timed = { readonly from: number; readonly to: number; readonly seconds: number };
export type Learned = {
  readonly belief: Belief /** Standard deviations from what was expected. */;
  readonly surprise: number;
};

const ROUNDS = 8;

/**
 * What one timed pour tells of tube and feed (iterated Kalman update in logarithms). Of the stomach it tells nothing for
 * the next time: its pressure is taken as unknown again afterwards. [GR5]
 * @returns an issue where, by what is believed, the pour would not have ended at all.
 */
export function timeOneBarrel(setup: Setup, timed: Timed): Result<Learned> {
  const prior = unread(setup);
  const time = (z: readonly number[]): number => {
    const found = lasts(runAt(setup, z), setup.vessel, timed.from, timed.to);
    return found.ends ? Math.log(found.seconds) : Number.NaN;
  };
  const seen = Math.log(timed.seconds);
  let mean = prior.mean;
  let slopes: readonly number[] = [];
  const expected = time(mean);
  let surprise = Number.NaN;
  for (let round = 0; round < ROUNDS; round++) {
    const at = time(mean);
    slopes = mean.map(
      (_, place) => (time(moved(mean, place, STEP)) - time(moved(mean, place, -STEP))) / (2 * STEP),
    );
    if (!Number.isFinite(at) || !slopes.every(Number.isFinite))
      return bad(issue(['timed'], 'gravity/timed-would-stall'));
    const variance = dot(slopes, slopes) + TIMING ** 2;
    if (round === 0) surprise = (seen - expected) / Math.sqrt(variance);
    const gain = (seen - at + dot(slopes, mean)) / variance;
    mean = slopes.map((slope) => slope * gain);
  }
  return ok({ belief: afterwards(setup, mean, slopes), surprise });
}

function afterwards(setup: Setup, mean: readonly number[], slopes: readonly number[]): Belief {
  const variance = dot(slopes, slopes) + TIMING ** 2;
  const stomach = setup.tubes.length + 1;
  const covariance = slopes.map((a, row) =>
    slopes.map((b, column) => {
      const own = row === column ? 1 : 0;
      return row === stomach || column === stomach ? own : own - (a * b) / variance;
    }),
  );
  return { mean: mean.map((value, at) => (at === stomach ? 0 : value)), covariance };
}
