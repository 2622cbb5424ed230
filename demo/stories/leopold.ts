/**
 * Bed 10, Leopold Ashby: hardly fed for two weeks, started slowly for the risk of refeeding. Phosphate, potassium and
 * magnesium fall; the first step up is declined and comes a day and a half later.
 */
import { LEOPOLD } from '../orders.ts';
import { BIRCH_WEST, LABORATORY, PHYSICIAN } from '../team.ts';
import {
  flush,
  isIdentified,
  isOrdered,
  lab,
  medicine,
  note,
  passes,
  stepConfirmed,
  stepDeclined,
  stool,
  takesIn,
  tubeChecked,
  weighs,
} from '../telling/at-the-bedside.ts';
import { pours, readsBack, readsCounter, setsRate, starts, takesDown } from '../telling/at-the-pump.ts';
import { round } from '../telling/planned-care.ts';
import type { Deed } from '../telling/scene.ts';
import { at, each, rounds, type Story } from '../telling/story.ts';
import { from } from '../telling/who-and-when.ts';

const bloods = (phosphate: number, potassium: number, magnesium: number): Deed =>
  from(LABORATORY, lab('phosphate', phosphate), lab('potassium', potassium), lab('magnesium', magnesium));

const next = (bag: string, held: number, newSet = false): readonly Deed[] => [
  takesDown({ reason: 'hang limit' }),
  pours(bag, held, newSet ? { line: 15 } : {}),
];

export const leopold: Story = {
  course: 'bed-10',
  ...BIRCH_WEST,
  order: LEOPOLD,
  happened: [
    at('Fri 16:45', from(PHYSICIAN, isOrdered(LEOPOLD))),
    at('Fri 18:50', from(PHYSICIAN, tubeChecked('radiograph', { markCm: 59, reader: 'Dr Ilse Markham' }))),
    at('Fri 20:00', bloods(0.92, 3.9, 0.78)),
    at('Sat 05:35', isIdentified(LEOPOLD), weighs(45)),
    at('Sat 05:40', medicine('thiamine', 10), flush(30), note('Thiamine before the first feed.')),
    at('Sat 06:00', pours('ashby-1', 150, { line: 15 }), starts(15), readsBack(15)),
    rounds(
      ['Sat 08:00', 'Sun 08:00', 'Mon 08:00', 'Tue 08:00'],
      4,
      ...round({ flush: 30, degrees: 35, markCm: 59 }),
    ),
    rounds(['Sat 16:00', 'Tue 08:00'], 8, takesIn('intravenous', 330), passes('urine', 420)),
    at('Sat 13:50', ...next('ashby-2', 130)),
    at('Sat 18:00', bloods(0.74, 3.6, 0.72)),
    at('Sat 21:40', ...next('ashby-3', 130)),
    at('Sun 04:30', ...next('ashby-4', 130, true)),
    at('Sun 06:00', bloods(0.58, 3.3, 0.66), from(LABORATORY, lab('glucose', 6.9))),
    at(
      'Sun 06:20',
      from(
        PHYSICIAN,
        stepDeclined(1, 'phosphate falls: replace it first'),
        note('Phosphate and potassium by the vein.'),
      ),
    ),
    at('Sun 12:15', readsCounter, ...next('ashby-5', 130)),
    at('Sun 18:00', bloods(0.41, 3, 0.61)),
    at('Sun 18:15', from(PHYSICIAN, note('Phosphate 0.41: second replacement. Stay at 15 mL/h.'))),
    at('Sun 20:00', ...next('ashby-6', 130)),
    at('Mon 03:45', ...next('ashby-7', 150, true)),
    at('Mon 06:00', bloods(0.55, 3.4, 0.7)),
    at('Mon 08:30', weighs(45.6), stool('formed')),
    at('Mon 11:30', readsCounter, ...next('ashby-8', 210)),
    at('Mon 12:05', from(PHYSICIAN, stepConfirmed(1))),
    at('Mon 12:10', setsRate(25), readsBack(25)),
    at('Mon 18:00', bloods(0.66, 3.7, 0.74)),
    at('Mon 19:20', ...next('ashby-9', 210)),
    at('Tue 03:10', ...next('ashby-10', 230, true)),
    at('Tue 06:00', bloods(0.71, 3.8, 0.76)),
    each(['Sat 23:00', 'Sun 23:30', 'Mon 22:50'], readsCounter),
  ],
};
