/** What comes of a set-up and what is believed of it: flow by height, level by time, time, the height for a time. Each with its band. */
import { type Belief, type Ends, ends, endsOf, type Setup } from './band.ts';
import { curve, flowWith, lastsInPours, type Point, type Run, type Stretch } from './emptying.ts';
import { ROOM_CELSIUS, type Spread, water } from './fluid.ts';
import { lineOf } from './loss.ts';

/** Of the surface over the stomach in cm; the flow in mL/min. */
export type AtHeight = { readonly cm: number; readonly flow: Spread };

export type BandedCurve = {
  readonly low: readonly Point[];
  readonly mid: readonly Point[];
  readonly high: readonly Point[];
};

export const PER_MINUTE = 6e7;
const STEPS = 12;
const HEIGHTS: readonly number[] = Array.from({ length: 21 }, (_, place) => place * 5);
const MOST_HEIGHT = 2;
const HALVINGS = 24;

const raised = (setup: Setup, by: number): Setup => ({
  ...setup,
  vessel: { ...setup.vessel, height: setup.vessel.height + by },
});

/** m over the stomach of the surface, with `first` m³ in the vessel. */
export const surfaceOf = ({ vessel }: Setup, first: number): number =>
  vessel.height - (vessel.volume - first) / vessel.area;

/** The vessel held so that the surface is at that height. */
const heldAt = (setup: Setup, first: number, metres: number): Setup =>
  raised(setup, metres - surfaceOf(setup, first));

export const overEnds = (of: (end: keyof Ends) => number): Spread => ({
  low: of('low'),
  mid: of('mid'),
  high: of('high'),
});

/** The level against time with its band, of one filling with `first` m³ in the vessel. */
export function bandedCurve(setup: Setup, belief: Belief, first: number, steps = STEPS): BandedCurve {
  const { low, mid, high } = ends(setup, belief, first / 2);
  const of = (run: Run) => curve(run, setup.vessel, first, steps);
  return { low: of(low), mid: of(mid), high: of(high) };
}

/** The flow against the height of the surface. */
export const flowByHeight = (setup: Setup, belief: Belief, first: number): readonly AtHeight[] =>
  HEIGHTS.map((cm) => {
    const there = heldAt(setup, first, cm / 100);
    const all = ends(there, belief, first);
    return { cm, flow: overEnds((end) => flowWith(all[end], there.vessel, first) * PER_MINUTE) };
  });

/** s for all stretches at each end of the flow's band: the low flow takes longest. */
export function secondsOf(
  setup: Setup,
  belief: Belief,
  stretches: readonly Stretch[],
): Spread & { error: number } {
  const all = ends(setup, belief, (stretches[0]?.from ?? setup.vessel.volume) / 2);
  const [fast, mid, slow] = [all.high, all.mid, all.low].map((run) =>
    lastsInPours(run, setup.vessel, stretches),
  );
  const seconds = (one: typeof mid): number => (one?.ends ? one.seconds : Number.POSITIVE_INFINITY);
  return { low: seconds(fast), mid: seconds(mid), high: seconds(slow), error: mid?.ends ? mid.error : 0 };
}

/** cm at which the whole feed takes so long, at each end of the band; infinite beyond two metres. */
export function heightFor(
  setup: Setup,
  belief: Belief,
  stretches: readonly Stretch[],
  seconds: number,
): Spread {
  const first = stretches[0]?.from ?? setup.vessel.volume;
  const takes = (height: number) => secondsOf(heldAt(setup, first, height), belief, stretches);
  const at = (end: 'low' | 'mid' | 'high'): number => {
    let [below, above] = [0, MOST_HEIGHT];
    if (takes(above)[end] > seconds) return Number.POSITIVE_INFINITY;
    for (let halving = 0; halving < HALVINGS; halving++) {
      const height = (below + above) / 2;
      if (takes(height)[end] > seconds) below = height;
      else above = height;
    }
    return above * 100;
  };
  return overEnds(at);
}

/** Water is thinner than any feed, so that its stream is another kind of stream. */
export function waterFlow({ vessel }: Setup, all: Ends, volume: number): Spread {
  const fluid = water(ROOM_CELSIUS);
  return overEnds((end) => {
    const run = all[end];
    return flowWith({ ...run, line: lineOf(fluid, run.reaches) }, vessel, volume) * PER_MINUTE;
  });
}

/** How much more in % it runs with the vessel `by` metres higher: what counts here is the stomach, not the bore. */
export function changeBy(setup: Setup, belief: Belief, volume: number, by: number): Spread {
  const ratio = (run: Run): number =>
    flowWith(run, raised(setup, by).vessel, volume) / flowWith(run, setup.vessel, volume);
  const all = endsOf(setup, belief, (run) => Math.log(ratio(run)));
  return overEnds((end) => (ratio(all[end]) - 1) * 100);
}
