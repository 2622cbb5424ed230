/**
 * Bed 1, Edith Farrow: fed without a break by a nasogastric tube, but for the two hours around each phenytoin. One flush
 * is charted with a nought too many and taken back; on Sunday night too much is poured, and the bag hangs past its limit.
 */
import { EDITH } from '../orders.ts';
import { BIRCH_EAST, DIETITIAN } from '../team.ts';
import {
  flush,
  headUp,
  isIdentified,
  isOrdered,
  lab,
  note,
  passes,
  stool,
  tubeChecked,
  water,
  weighs,
} from '../telling/at-the-bedside.ts';
import {
  clearsCounter,
  closesLine,
  pauses,
  pours,
  readsBack,
  readsCounter,
  resumes,
  starts,
  takesDown,
} from '../telling/at-the-pump.ts';
import { dose, round } from '../telling/planned-care.ts';
import { at, each, rounds, type Story } from '../telling/story.ts';
import { called, from, inError } from '../telling/who-and-when.ts';

const PHENYTOIN = 'phenytoin suspension';

const phenytoin = dose({ name: PHENYTOIN, volume: 10, after: 30 });

const stopsForPhenytoin = [pauses('medicine', PHENYTOIN), closesLine()] as const;

export const edith: Story = {
  course: 'bed-01',
  ...BIRCH_EAST,
  order: EDITH,
  happened: [
    at('Fri 16:00', from(DIETITIAN, isOrdered(EDITH))),
    at('Sat 05:40', isIdentified(EDITH), weighs(68)),
    at('Sat 05:50', tubeChecked('ph', { ph: 4.5, markCm: 58 }), headUp(35)),
    at('Sat 06:00', pours('edith-1', 170, { line: 15 }), starts(75), readsBack(75)),
    rounds(
      ['Sat 12:00', 'Sun 08:00', 'Mon 08:00', 'Tue 08:00'],
      4,
      ...round({ flush: 30, degrees: 35, markCm: 58 }),
    ),
    each(['Sat 08:00', 'Sun 08:00', 'Mon 08:00'], readsCounter, clearsCounter('read'), ...stopsForPhenytoin),
    each(['Sat 20:00', 'Sun 20:00', 'Mon 20:00'], ...stopsForPhenytoin),
    each(['Sat 09:00', 'Sat 21:00', 'Sun 09:00', 'Sun 21:00', 'Mon 09:00', 'Mon 21:00'], ...phenytoin),
    each(['Sat 13:30', 'Sun 13:00', 'Mon 14:10'], passes('urine', 650)),
    each(['Sat 23:10', 'Sun 22:40', 'Mon 23:20'], passes('urine', 540)),
    at('Sat 09:20', lab('glucose', 7.1)),
    at('Sat 10:00', takesDown(), pours('edith-2', 610), flush(30), resumes),
    at('Sat 17:55', readsCounter, takesDown({ reason: 'hang limit' }), pours('edith-3', 170)),
    at('Sat 22:00', takesDown(), pours('edith-4', 610), flush(30), resumes),
    at('Sun 04:55', takesDown({ reason: 'hang limit' }), pours('edith-5', 250)),
    at('Sun 09:15', lab('glucose', 6.8)),
    at('Sun 10:00', takesDown(), pours('edith-6', 630, { line: 15 }), flush(30), resumes),
    at('Sun 11:15', stool('formed')),
    at('Sun 14:05', called('the flush of 300', water(300, 'flush'))),
    at('Sun 14:12', inError('the flush of 300', 'one nought too many: it was 30 mL, charted at 12:00')),
    at('Sun 17:55', readsCounter, takesDown({ reason: 'hang limit' }), pours('edith-7', 170)),
    // 720 mL at 75 mL/h is more than eight hours of feed: it hangs on until somebody looks.
    at('Sun 22:00', takesDown(), pours('edith-8', 720), flush(30), resumes),
    at('Mon 07:20', takesDown({ reason: 'found past its hang limit' }), pours('edith-9', 60)),
    at('Mon 07:25', note('Bag of 22:00 was overfilled and hung for 9 h 20 min. Reported.')),
    at('Mon 09:10', lab('glucose', 7.4), weighs(68.2)),
    at('Mon 10:00', takesDown(), pours('edith-10', 630, { line: 15 }), flush(30), resumes),
    at('Mon 17:55', readsCounter, takesDown({ reason: 'hang limit' }), pours('edith-11', 170)),
    at('Mon 22:00', takesDown(), pours('edith-12', 610), flush(30), resumes),
    at('Tue 05:55', takesDown({ reason: 'hang limit' }), pours('edith-13', 170)),
    at('Tue 07:55', readsCounter),
  ],
};
