/**
 * How thick is it, by what is left in a 10 mL syringe after 10 s? The published flow test gives a grade; run backwards
 * through the same equations it gives a viscosity within a factor of about 1.5. Derived, not validated.
 */
import { lasts, type Vessel } from './emptying.ts';
import type { Fluid, Spread } from './fluid.ts';
import { lineOf } from './loss.ts';

const ML = 1e-6;
/** A 10 mL syringe that was measured: 14.4 mm (H5). */
const SYRINGE = (Math.PI / 4) * 0.0144 ** 2;
/** Water takes about 7 s (H11): the nozzle that does that in these equations, for a length of 1 cm. */
const NOZZLE_BORE = 0.0019;
const TEST_SECONDS = 10;
const NOZZLE = { low: 0.007, mid: 0.01, high: 0.013 } as const;

function secondsTo(leftMl: number, fluid: Fluid, length: number): number {
  const volume = 10 * ML;
  const vessel: Vessel = { volume, area: SYRINGE, height: volume / SYRINGE + length };
  const reaches = [{ bore: NOZZLE_BORE, length }];
  const run = { reaches, line: lineOf(fluid, reaches), back: 0, factor: 1 };
  const found = lasts(run, vessel, volume, leftMl * ML);
  return found.ends ? found.seconds : Number.POSITIVE_INFINITY;
}

/** Seconds for the syringe to empty. */
export const emptiesIn = (fluid: Fluid): number => secondsTo(0, fluid, NOZZLE.mid);

const [THINNEST, THICKEST] = [1e-4, 100];
const HALVINGS = 60;

function viscosity(leftMl: number, density: number, length: number): number {
  let [low, high] = [Math.log(THINNEST), Math.log(THICKEST)];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    const seconds = secondsTo(leftMl, { density, consistency: Math.exp(middle), index: 1 }, length);
    if (seconds > TEST_SECONDS) high = middle;
    else low = middle;
  }
  return Math.exp((low + high) / 2);
}

/** Pa·s of a liquid with one viscosity of which so much was left; between 0.5 and 9.5 mL. [GR10] */
export const viscosityByThickness = (leftMl: number, density: number): Spread => ({
  high: viscosity(leftMl, density, NOZZLE.low),
  mid: viscosity(leftMl, density, NOZZLE.mid),
  low: viscosity(leftMl, density, NOZZLE.high),
});
