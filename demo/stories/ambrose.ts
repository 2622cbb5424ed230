/**
 * Room 2 of a residential home, Ambrose Teale: fed by night through a gastrostomy, to a volume. The night on which the
 * clocks go back is an hour longer, and the volume is reached an hour before the window ends. On Sunday night the counter
 * is cleared before anybody has read it.
 */
import { AMBROSE } from '../orders.ts';
import { DIETITIAN, LARCH_HOUSE } from '../team.ts';
import {
  isIdentified,
  isOrdered,
  lab,
  mouthCare,
  note,
  stool,
  takesIn,
  weighs,
} from '../telling/at-the-bedside.ts';
import {
  clearsCounter,
  closesLine,
  pauses,
  readsBack,
  readsCounter,
  resumes,
  spikes,
  starts,
  stops,
  takesDown,
} from '../telling/at-the-pump.ts';
import { flushIn, flushOut, round, waterDose } from '../telling/planned-care.ts';
import { at, each, rounds, type Story } from '../telling/story.ts';
import { from, writtenAfter } from '../telling/who-and-when.ts';

const starting = (container: string) => [
  spikes(container, 1500, { line: 15 }),
  flushIn(50),
  clearsCounter('read'),
  starts(100, 1000),
  readsBack(100, 1000),
];
const ending = [readsCounter, stops(), takesDown({ reason: 'feed ended' }), closesLine(), flushOut(50)];
const drink = [takesIn('oral', 60, 20)];
const waterByTube = waterDose(200);

export const ambrose: Story = {
  course: 'bed-02',
  ...LARCH_HOUSE,
  order: AMBROSE,
  happened: [
    at('Fri 16:20', from(DIETITIAN, isOrdered(AMBROSE))),
    at('Sat 08:20', isIdentified(AMBROSE), weighs(72.5)),
    at('Sat 09:00', waterByTube, mouthCare),
    // A busy morning: the noon water was given, and charted in the evening.
    at('Sat 12:00', writtenAfter(405, waterByTube)),
    each(['Sat 15:00', 'Sat 18:00', 'Sun 09:00', 'Sun 12:00', 'Sun 15:00', 'Sun 18:00'], waterByTube),
    each(['Mon 09:00', 'Mon 12:00', 'Mon 15:00', 'Mon 18:00'], waterByTube),
    each(['Sat 10:30', 'Sun 16:10', 'Mon 10:15'], ...drink),
    each(['Sat 11:00', 'Sun 10:20', 'Mon 11:30'], mouthCare, lab('glucose', 6.4)),
    each(['Sat 19:50', 'Sun 19:50', 'Mon 19:50'], ...round({ degrees: 40, markCm: 4 })),
    at('Sat 20:00', ...starting('ambrose-sat')),
    rounds(['Sun 00:00', 'Sun 05:00'], 4, ...round({ degrees: 35, markCm: 4 })),
    // Ten hours after 20:00 by the old clock it is 05:00 by the new one.
    at('Sun 05:00', ...ending),
    at('Sun 20:00', ...starting('ambrose-sun')),
    at(
      'Sun 23:40',
      clearsCounter('unread'),
      note('Cleared the counter while silencing an alarm, and had not read it.'),
    ),
    rounds(['Mon 00:00', 'Mon 06:00'], 4, ...round({ degrees: 35, markCm: 4 })),
    at('Mon 06:00', ...ending),
    at('Mon 07:10', stool('formed')),
    at('Mon 20:00', ...starting('ambrose-mon')),
    at('Tue 01:10', pauses('care', 'changed and turned'), closesLine()),
    at('Tue 01:50', resumes),
    rounds(['Tue 00:00', 'Tue 06:00'], 4, ...round({ degrees: 35, markCm: 4 })),
    at('Tue 06:00', ...ending),
  ],
};
