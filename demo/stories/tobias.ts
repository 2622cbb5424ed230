/**
 * Intensive care, bed 6, Tobias Wren: so much a day, whatever stops it. A scan takes longer than it was to, a fast before
 * extubation has no end until somebody ends it, the pump loses its power and its count, and a residual stops feed in the
 * second night: he is behind on every day.
 */
import { TOBIAS } from '../orders.ts';
import { INTENSIVE_CARE, PHYSICIAN } from '../team.ts';
import {
  flush,
  headUp,
  holdEnds,
  isIdentified,
  isOrdered,
  lab,
  note,
  otherEnergy,
  passes,
  residualNotDrawn,
  residualOf,
  residualZero,
  takesIn,
  tubeChecked,
  weighs,
} from '../telling/at-the-bedside.ts';
import {
  clearsCounter,
  closesLine,
  losesCount,
  pauses,
  readsBack,
  readsCounter,
  resumes,
  setsRate,
  spikes,
  starts,
  takesDown,
} from '../telling/at-the-pump.ts';
import { round } from '../telling/planned-care.ts';
import { at, each, rounds, type Story } from '../telling/story.ts';
import { asPlanned, from } from '../telling/who-and-when.ts';

const next = (container: string) => [takesDown(), spikes(container, 1000, { line: 15 })];

export const tobias: Story = {
  course: 'bed-06',
  ...INTENSIVE_CARE,
  order: TOBIAS,
  happened: [
    at('Fri 16:15', from(PHYSICIAN, isOrdered(TOBIAS))),
    at('Sat 05:30', isIdentified(TOBIAS), weighs(80), otherEnergy('lipid in sedation', 220)),
    at('Sat 05:50', tubeChecked('radiograph', { markCm: 60, reader: 'Dr Ilse Markham' }), headUp(35)),
    at('Sat 06:00', spikes('tobias-1', 1000, { line: 15 }), starts(75), readsBack(75)),
    each(['Sat 08:00', 'Sun 08:00', 'Mon 08:00', 'Tue 08:00'], readsCounter, clearsCounter('read')),
    rounds(
      ['Sat 12:00', 'Sun 08:00', 'Mon 08:00', 'Tue 08:00'],
      4,
      ...round({ flush: 30, degrees: 35, markCm: 60 }),
      passes('urine', 260),
    ),
    rounds(['Sat 14:00', 'Tue 08:00'], 6, lab('glucose', 8.6)),
    rounds(['Sat 16:00', 'Tue 08:00'], 8, takesIn('intravenous', 165)),
    at(
      'Sat 10:00',
      asPlanned('stop-feed', { about: 'ct' }, pauses('procedure', 'CT of the chest')),
      asPlanned('flush', { about: 'ct', beside: 'after' }, flush(30)),
      closesLine(),
      headUp(0, 'flat for the scan'),
    ),
    at('Sat 12:05', residualZero),
    at('Sat 13:40', headUp(35), flush(30), resumes, note('Back from CT an hour and ten minutes late.')),
    at('Sat 15:00', pauses('fast', 'before extubation'), flush(30), closesLine()),
    at('Sat 18:10', residualOf(60, 'feed', { returned: 60 })),
    at('Sat 19:30', from(PHYSICIAN, holdEnds('extubation'))),
    at('Sat 19:40', flush(30), resumes),
    at('Sun 00:20', residualNotDrawn),
    at('Sun 02:10', ...next('tobias-2')),
    at('Sun 06:15', residualOf(150, 'feed', { returned: 150 })),
    at('Sun 10:40', readsCounter),
    // Mains off, battery flat: what the pump had counted is gone, and nobody cleared it.
    at('Sun 11:00', pauses('equipment', 'battery flat'), losesCount, closesLine()),
    at('Sun 12:20', residualOf(90, 'feed', { returned: 90 })),
    at('Sun 14:15', flush(30), resumes),
    at('Sun 15:00', setsRate(89), readsBack(89)),
    at('Sun 16:05', readsCounter),
    at('Sun 17:40', ...next('tobias-3')),
    at('Sun 22:05', residualOf(320, 'feed', { returned: 250, discarded: 70 })),
    at(
      'Mon 02:00',
      residualOf(520, 'feed', { returned: 250, discarded: 270 }),
      pauses('intolerance', 'residual 520 mL'),
      flush(30),
      closesLine(),
    ),
    at('Mon 02:10', from(PHYSICIAN, note('Hold for four hours, then 75 mL/h. Prokinetic charted.'))),
    at(
      'Mon 06:00',
      residualOf(180, 'feed', { returned: 180 }),
      flush(30),
      resumes,
      setsRate(75),
      readsBack(75),
    ),
    at('Mon 08:40', ...next('tobias-4')),
    at('Mon 09:05', otherEnergy('lipid in sedation', 0), weighs(80.5)),
    at('Mon 12:00', pauses('care', 'physiotherapy, flat'), headUp(0)),
    at('Mon 12:40', headUp(35), resumes),
    at('Mon 12:50', setsRate(78)),
    at('Mon 21:10', ...next('tobias-5')),
  ],
};
