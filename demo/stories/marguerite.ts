/**
 * At home, Marguerite Soames: by night through a jejunostomy, 750 mL from nine in the evening to seven in the morning. The
 * first night has eleven hours, so the same volume runs more slowly. She does it herself.
 */
import { MARGUERITE } from '../orders.ts';
import { atHome, DIETITIAN } from '../team.ts';
import { headUp, isIdentified, isOrdered, stool, tubeChecked } from '../telling/at-the-bedside.ts';
import {
  clearsCounter,
  closesLine,
  pauses,
  pours,
  readsBack,
  readsCounter,
  resumes,
  starts,
  stops,
  takesDown,
} from '../telling/at-the-pump.ts';
import { flushIn, flushOut, waterDose } from '../telling/planned-care.ts';
import { at, each, type Story } from '../telling/story.ts';
import { from, writtenAfter } from '../telling/who-and-when.ts';

const begins = (bag: string, held: number, rate: number) => [
  tubeChecked('mark', { markCm: 8 }),
  flushIn(50),
  pours(bag, held, { line: 15 }),
  clearsCounter('read'),
  starts(rate, 750),
  readsBack(rate, 750),
];
const ends = [readsCounter, stops(), takesDown({ reason: 'feed ended' }), closesLine(), flushOut(50)];

export const marguerite: Story = {
  course: 'bed-11',
  ...atHome('Marguerite Soames', 'soames-phone'),
  order: MARGUERITE,
  happened: [
    at('Fri 11:30', from(DIETITIAN, isOrdered(MARGUERITE))),
    at('Sat 20:40', isIdentified(MARGUERITE), headUp(30)),
    at('Sat 21:00', ...begins('soames-1', 570, 68)),
    // Awake when the clocks have gone back: half past one, for the second time.
    at('Sun 01:30 GMT', pauses('care', 'up for a drink'), closesLine()),
    at('Sun 01:45 GMT', resumes),
    at('Sun 04:00', takesDown({ reason: 'hang limit' }), pours('soames-2', 220)),
    at('Sun 07:00', ...ends),
    each(['Sun 11:00', 'Mon 11:00'], waterDose(100)),
    at('Sun 16:00', writtenAfter(310, waterDose(100))),
    at('Sun 21:00', ...begins('soames-3', 630, 75)),
    at('Mon 04:55', takesDown({ reason: 'hang limit' }), pours('soames-4', 180)),
    at('Mon 07:00', ...ends),
    at('Mon 09:00', stool('loose', 100)),
    at('Mon 16:00', waterDose(100)),
    at('Mon 21:00', ...begins('soames-5', 630, 75)),
    at('Tue 04:50', takesDown({ reason: 'hang limit' }), pours('soames-6', 180)),
    at('Tue 07:00', ...ends),
  ],
};
