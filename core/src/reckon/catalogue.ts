/** Which calculations are there, by subject, and which one is meant by a name? */

import { convert, tubeSize } from './account/convert.ts';
import { feedsInWindow, intakeOutput, irrigation } from './account/intake-output.ts';
import {
  energyToNitrogen,
  macronutrient,
  nitrogen,
  nitrogenBalance,
  nitrogenForEnergy,
} from './account/nitrogen.ts';
import { percentage, percentChange, percentDelivered } from './account/percent.ts';
import { correctedCalcium, freeWaterDeficit, renalSoluteLoad } from './account/solutes.ts';
import { squash } from './asking/asks.ts';
import type { Calculation } from './declare.ts';
import { catchUp, holdAdjusted } from './feeding/catch-up.ts';
import { containersADay, containersHold } from './feeding/containers.ts';
import { delivered } from './feeding/delivery.ts';
import { dripRate, rateFromDrops } from './feeding/drops.ts';
import { rate, volume, volumeForEnergy, volumeForProtein } from './feeding/rate.ts';
import { advanceRate, bolus, cyclic } from './feeding/splits.ts';
import { endTime, hoursBetween, runOut } from './feeding/time.ts';
import { fluidForEnergy, flushes, formulaWater, totalFluid } from './feeding/water.ts';
import { infantFeed, infantPerKg, perDayToPerHour } from './infants/feed.ts';
import { infantAdvance, infantFirstDays, starterFeed } from './infants/schedules.ts';
import { diluteToDensity, dilution, strengthOf } from './mixing/dilution.ts';
import { osmolalityAfter, waterForOsmolality } from './mixing/osmolality.ts';
import { blend, concentrate, concentrateFor, fortify, powder, powderFor } from './mixing/recipes.ts';
import { nearest } from './nearest.ts';
import { childTotal, schofield, whoBasal } from './needs/basal-by-weight.ts';
import { adultFluid, fluidPerArea, fluidPerKg, hollidaySegar } from './needs/fluid.ts';
import { guidelineNeeds } from './needs/guideline.ts';
import { pennState } from './needs/penn-state.ts';
import { energyPerKg, intakePerKg, proteinPerKg } from './needs/per-kilogram.ts';
import { energyFactor, harrisBenedict, mifflin, ownCoefficients } from './needs/resting-energy.ts';
import { adjustedWeight, bmi, bodySurface, idealWeight, weightLoss } from './needs/weights.ts';
import { electrolyteFall, electrolyteUnits } from './risk/electrolytes.ts';
import { refeedingRisk, refeedingStart } from './risk/refeeding.ts';
import { residualPercent } from './risk/residual.ts';

export const SUBJECTS = {
  feeding: [
    rate,
    volume,
    volumeForEnergy,
    volumeForProtein,
    delivered,
    containersADay,
    containersHold,
    bolus,
    cyclic,
    advanceRate,
    holdAdjusted,
    catchUp,
    dripRate,
    rateFromDrops,
  ],
  time: [runOut, endTime, hoursBetween],
  water: [formulaWater, flushes, totalFluid, fluidForEnergy],
  mixing: [
    dilution,
    strengthOf,
    diluteToDensity,
    concentrate,
    concentrateFor,
    powder,
    powderFor,
    fortify,
    blend,
    osmolalityAfter,
    waterForOsmolality,
  ],
  energy: [
    mifflin,
    harrisBenedict,
    pennState,
    schofield,
    whoBasal,
    childTotal,
    ownCoefficients,
    energyFactor,
    energyPerKg,
    proteinPerKg,
    guidelineNeeds,
    intakePerKg,
  ],
  weights: [bmi, idealWeight, adjustedWeight, bodySurface, weightLoss],
  fluid: [hollidaySegar, fluidPerKg, fluidPerArea, adultFluid],
  infants: [infantFeed, infantPerKg, perDayToPerHour, infantAdvance, infantFirstDays, starterFeed],
  risk: [refeedingRisk, refeedingStart, electrolyteFall, electrolyteUnits, residualPercent],
  account: [
    intakeOutput,
    feedsInWindow,
    irrigation,
    percentDelivered,
    percentage,
    percentChange,
    nitrogenBalance,
    nitrogen,
    energyToNitrogen,
    nitrogenForEnergy,
    macronutrient,
    renalSoluteLoad,
    freeWaterDeficit,
    correctedCalcium,
  ],
  units: [convert, tubeSize],
} as const satisfies Readonly<Record<string, readonly Calculation[]>>;

export type Subject = keyof typeof SUBJECTS;

export const CALCULATIONS: readonly Calculation[] = Object.values(SUBJECTS).flat();

const byName = new Map<string, Calculation>();
for (const one of CALCULATIONS) for (const name of one.also) byName.set(squash(name), one);
for (const one of CALCULATIONS) byName.set(squash(one.name), one);

/** The calculation of that name, or one of its other names, however it is hyphenated; null if there is none. */
export const calculationNamed = (name: string): Calculation | null => byName.get(squash(name)) ?? null;

/** The known name nearest to one that is not known. */
export const nearestCalculation = (name: string): string | null =>
  nearest(name, [...CALCULATIONS.map((one) => one.name), ...CALCULATIONS.flatMap((one) => one.also)]);
