/**
 * Bed 8, Gideon Marsh: fed past the stomach through a thin nasojejunal tube, stepping up every eight hours. One step is
 * declined, the tube blocks and is cleared. What is charted on the third tablet carries a time that is nine minutes fast,
 * so that by the record the pump was started before the container was put up.
 */
import { GIDEON } from '../orders.ts';
import { BIRCH_WEST, FAST_TABLET, PHYSICIAN } from '../team.ts';
import {
  distension,
  flush,
  isIdentified,
  isOrdered,
  lab,
  note,
  passes,
  stepConfirmed,
  stepDeclined,
  stool,
  tubeBlocked,
  tubeChecked,
  tubeCleared,
  tubeMoved,
  weighs,
} from '../telling/at-the-bedside.ts';
import {
  closesLine,
  pauses,
  pours,
  readsBack,
  readsCounter,
  resumes,
  setsRate,
  starts,
  takesDown,
} from '../telling/at-the-pump.ts';
import { round } from '../telling/planned-care.ts';
import { at, rounds, type Story } from '../telling/story.ts';
import { from, on } from '../telling/who-and-when.ts';

export const gideon: Story = {
  course: 'bed-08',
  ...BIRCH_WEST,
  order: GIDEON,
  happened: [
    at('Fri 16:35', from(PHYSICIAN, isOrdered(GIDEON))),
    at('Fri 17:40', tubeChecked('radiograph', { markCm: 95, reader: 'Dr Ilse Markham' })),
    at('Sat 05:55', isIdentified(GIDEON), weighs(76)),
    at('Sat 06:00', on(FAST_TABLET, pours('marsh-1', 190, { line: 15 }))),
    at('Sat 06:02', starts(20), readsBack(20)),
    rounds(
      ['Sat 08:00', 'Sun 08:00', 'Mon 08:00', 'Mon 16:45'],
      4,
      ...round({ flush: 30, degrees: 35, markCm: 95 }),
    ),
    rounds(['Mon 20:00', 'Tue 08:00'], 4, ...round({ flush: 30, degrees: 35, markCm: 98 })),
    rounds(['Sat 08:00', 'Sun 08:00', 'Mon 08:00', 'Tue 08:00'], 8, on(FAST_TABLET, passes('urine', 390))),
    at('Sat 13:50', takesDown({ reason: 'hang limit' }), pours('marsh-2', 340)),
    at('Sat 14:05', stepConfirmed(1), setsRate(40), readsBack(40)),
    at('Sat 21:45', readsCounter, takesDown({ reason: 'hang limit' }), pours('marsh-3', 340)),
    at(
      'Sat 22:05',
      distension('mild', 92),
      stepDeclined(2, 'belly a little distended: look again in the morning'),
    ),
    at('Sun 04:40', takesDown({ reason: 'hang limit' }), pours('marsh-4', 500, { line: 15 })),
    at('Sun 06:10', distension('none', 90), stepConfirmed(2), setsRate(60), readsBack(60)),
    at('Sun 09:30', tubeBlocked, pauses('tube', 'blocked'), closesLine()),
    at('Sun 10:10', tubeCleared('warm water, gentle push and pull'), flush(50), resumes),
    at('Sun 12:35', takesDown({ reason: 'hang limit' }), pours('marsh-5', 500)),
    at('Sun 15:20', stool('loose', 90)),
    at('Sun 18:20', lab('glucose', 7.9)),
    at('Sun 20:20', readsCounter, takesDown({ reason: 'hang limit' }), pours('marsh-6', 640)),
    at('Sun 20:45', stepConfirmed(3), setsRate(80), readsBack(80)),
    at('Mon 04:10', takesDown({ reason: 'hang limit' }), pours('marsh-7', 680, { line: 15 })),
    at('Mon 08:20', weighs(75.8), lab('glucose', 8.4)),
    at('Mon 12:05', takesDown({ reason: 'hang limit' }), pours('marsh-8', 660)),
    at('Mon 16:30', on(FAST_TABLET, note('Walked to the window and back.'))),
    // A tube that has moved is not known to be where it was: feed waits for the picture.
    at('Mon 16:50', tubeMoved(98), pauses('tube', 'tube found 3 cm further out'), closesLine()),
    at(
      'Mon 18:05',
      from(PHYSICIAN, tubeChecked('radiograph', { markCm: 98, reader: 'Dr Ilse Markham' })),
      flush(30),
      resumes,
    ),
    at('Mon 20:00', readsCounter, takesDown({ reason: 'hang limit' }), pours('marsh-9', 660)),
    at('Tue 03:55', takesDown({ reason: 'hang limit' }), pours('marsh-10', 660, { line: 15 })),
    at('Tue 07:45', readsCounter),
  ],
};
