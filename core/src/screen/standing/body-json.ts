/** What do tube, position, tolerance and what was measured look like to a program? */

import type { TubeCheck } from '../../standing/readings/tube.ts';
import type { CourseStanding } from '../../standing/standing-at.ts';
import { type Json, mlOf } from '../plan/json.ts';
import { type Moment, maybe, maybeMl, numberOf } from './json-values.ts';

const checkJson = (check: TubeCheck, at: Moment): Json => ({
  at: at(check.at),
  by: check.by,
  method: check.method,
  lumen: check.lumen,
  confirmed: check.confirmed,
  ph: maybe(check.ph, numberOf),
  markCm: maybe(check.markCm, numberOf),
  reader: check.reader,
});

export const tubeJson = ({ tube }: CourseStanding, at: Moment): Json => ({
  device: tube.access?.device ?? null,
  placedAt: maybe(tube.placedAt, at),
  markPlacedCm: maybe(tube.markPlacedCm, numberOf),
  markCm: maybe(tube.markCm, numberOf),
  movedAt: maybe(tube.movedAt, at),
  movedSinceConfirmed: tube.movedSinceConfirmed,
  out: maybe(tube.out, (one) => ({ at: at(one.at), how: one.how })),
  blocked: tube.blocked.map((one) => ({ at: at(one.at), lumen: one.lumen })),
  lastCheck: maybe(tube.lastCheck, (one) => checkJson(one, at)),
  confirmedBy: maybe(tube.confirmedBy, (one) => checkJson(one, at)),
});

export const toleranceJson = (standing: CourseStanding, at: Moment): Json => {
  const { residuals, residual, vomits, stools, tolerance, intolerance } = standing;
  const { distension, pain, bowelSounds } = tolerance;
  return {
    open: [...intolerance],
    residuals: residuals.map(({ found, volume, look, returned, discarded, ...one }) => ({
      at: at(one.at),
      found,
      volumeMl: maybeMl(volume),
      look,
      returnedMl: mlOf(returned),
      discardedMl: mlOf(discarded),
    })),
    residualRun: { run: residual.run, stops: residual.stops },
    vomits: vomits.map((one) => ({ at: at(one.at), volumeMl: maybeMl(one.volume) })),
    stools: stools.map((one) => ({ at: at(one.at), form: one.form, volumeMl: maybeMl(one.volume) })),
    distension: maybe(distension, (one) => ({
      at: at(one.at),
      degree: one.degree,
      girthCm: maybe(one.girthCm, numberOf),
    })),
    pain: maybe(pain, (one) => ({ at: at(one.at), degree: one.degree, onFeeding: one.onFeeding })),
    bowelSounds: maybe(bowelSounds, (one) => ({ at: at(one.at), heard: one.heard })),
  };
};

export const personJson = ({ person, weights, labs }: CourseStanding, at: Moment): Json => ({
  name: person.identified?.name ?? null,
  birthDate: person.identified?.birthDate ?? null,
  allergies: maybe(person.allergies, (list) => [...list]),
  heightCm: maybe(person.heightCm, numberOf),
  weights: weights.map((one) => ({ at: at(one.at), kg: numberOf(one.kg) })),
  laboratory: labs.map((one) => ({
    at: at(one.at),
    analyte: one.analyte,
    value: numberOf(one.value),
    unit: one.unit,
  })),
  otherEnergy: person.otherEnergy.map((one) => ({
    name: one.name,
    kcalPerDay: numberOf(one.kcalPerDay),
    since: at(one.since),
  })),
});
