/** How long does a level's curve with its band take, and how long the time to empty against an integrator for anything? */
import { runAt, type Setup, unread } from '@feedwright/core/reckon/gravity/band';
import { driving, lasts, type Run } from '@feedwright/core/reckon/gravity/emptying';
import { bandedCurve } from '@feedwright/core/reckon/gravity/estimate';
import { flowUnder } from '@feedwright/core/reckon/gravity/flow';
import { rk45 } from './gravity/rk45.ts';
import { medians, type Report } from './measure.ts';

const ROUNDS = 200;
const BATCH = 20;

/** 12 Fr, 110 cm, small-bore connector, a feed of 1.5 kcal/mL, a 60 mL barrel with its tip 35 cm over the stomach. */
const SETUP: Setup = {
  tubes: [
    { what: 'connector', bore: { low: 2.75e-3, mid: 2.9e-3, high: 3.05e-3 }, length: 0.02 },
    { what: 'tube', bore: { low: 2.6e-3, mid: 2.9e-3, high: 3.2e-3 }, length: 1.1 },
  ],
  density: 1065,
  consistency: { low: 0.015, mid: 0.025, high: 0.04 },
  index: 1,
  stomach: { low: 400, mid: 1000, high: 1600 },
  vessel: { volume: 60e-6, area: 5.6e-4, height: 0.45 },
};
const { vessel } = SETUP;

/** The volume that is left after so long, by the general integrator: it solves for the flow at every look. */
const leftAfter = (run: Run, seconds: number, tolerance: number): number =>
  rk45(
    (_, volume) => -flowUnder(run.line, driving(run, vessel, volume)) * run.factor,
    [0, seconds],
    vessel.volume,
    tolerance,
  );

/** The loosest tolerance at which the general integrator is as near the end as the project's own sum. */
function asAccurate(run: Run, seconds: number, share: number): number {
  for (let tolerance = 1e-2; tolerance > 1e-13; tolerance /= 2)
    if (Math.abs(leftAfter(run, seconds, tolerance) - vessel.volume / 10) <= share * vessel.volume)
      return tolerance;
  throw new Error('the general integrator does not get so near');
}

export default async function bench(report: Report): Promise<void> {
  const belief = unread(SETUP);
  const run = runAt(SETUP, belief.mean);
  const to = vessel.volume / 10;
  const own = lasts(run, vessel, vessel.volume, to);
  if (!own.ends) throw new Error('it does not run');
  // What the sum is really out by, as a share of the volume: against the general integrator at its sharpest.
  const share = Math.max(1e-10, Math.abs(leftAfter(run, own.seconds, 1e-13) / to - 1) / 10);
  const tolerance = asAccurate(run, own.seconds, share);
  const [curves = Number.NaN, sums = Number.NaN, general = Number.NaN] = await medians(
    ROUNDS,
    () => bandedCurve(SETUP, belief, vessel.volume),
    () => {
      for (let i = 0; i < BATCH; i++) lasts(run, vessel, vessel.volume, to);
    },
    () => {
      for (let i = 0; i < BATCH; i++) leftAfter(run, own.seconds, tolerance);
    },
  );
  report({ what: 'the level against time, with its band', measured: curves, limit: 2, unit: 'ms' });
  report({
    what: 'time to empty against a general integrator',
    measured: sums / general,
    limit: 1 / 20,
    unit: '×',
  });
}
