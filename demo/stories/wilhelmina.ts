/**
 * Bed 7, Wilhelmina Stead: 18 hours a day into the jejunum, with water from the pump's second bag, while the gastric port
 * drains. On Sunday the feed is ended and the line is left open, neither clamped nor capped.
 */
import { WILHELMINA } from '../orders.ts';
import { BIRCH_WEST, DIETITIAN } from '../team.ts';
import {
  flush,
  isIdentified,
  isOrdered,
  lab,
  losesFeed,
  note,
  passes,
  stool,
  tubeChecked,
  weighs,
} from '../telling/at-the-bedside.ts';
import {
  clearsCounter,
  closesLine,
  hangsWater,
  readsBack,
  readsCounter,
  readsWaterCounter,
  spikes,
  starts,
  stops,
  takesDown,
  takesWaterDown,
} from '../telling/at-the-pump.ts';
import { dose, round } from '../telling/planned-care.ts';
import { at, each, rounds, type Story } from '../telling/story.ts';
import { from } from '../telling/who-and-when.ts';

const LANSOPRAZOLE = 'lansoprazole orodispersible';

const begins = (container: string, bag: string) => [
  spikes(container, 1000, { line: 15 }),
  hangsWater(bag, 500),
  clearsCounter('read'),
  starts(50, 900),
  readsBack(50, 900),
];

export const wilhelmina: Story = {
  course: 'bed-07',
  ...BIRCH_WEST,
  order: WILHELMINA,
  happened: [
    at('Fri 16:25', from(DIETITIAN, isOrdered(WILHELMINA))),
    at(
      'Sat 05:45',
      isIdentified(WILHELMINA),
      weighs(58),
      tubeChecked('radiograph', { lumen: 'jejunal port', reader: 'Dr Ilse Markham' }),
    ),
    at(
      'Sat 06:00',
      spikes('stead-1', 500, { line: 15 }),
      hangsWater('stead-water-1', 500),
      starts(50, 300),
      readsBack(50, 300),
    ),
    each(
      ['Sat 08:00', 'Sun 08:00', 'Mon 08:00', 'Tue 08:00'],
      ...dose({ name: LANSOPRAZOLE, volume: 10, before: 15, after: 15 }),
    ),
    rounds(['Sat 12:00', 'Sun 08:00', 'Mon 08:00', 'Tue 08:00'], 4, ...round({ degrees: 30, markCm: 6 })),
    rounds(['Sat 14:00', 'Tue 08:00'], 8, passes('gastric-drainage', 120), passes('urine', 430)),
    at(
      'Sat 12:00',
      readsCounter,
      readsWaterCounter(150),
      stops(),
      takesDown({ reason: 'feed ended' }),
      closesLine(),
      flush(30),
    ),
    at('Sat 17:55', takesWaterDown('stead-water-1', 350)),
    at('Sat 18:00', ...begins('stead-2', 'stead-water-2')),
    // Eighteen hours after 18:00 by the old clock it is 11:00 by the new one. Nobody closes the line.
    at('Sun 11:00', readsCounter, readsWaterCounter(600), stops(), flush(30)),
    at(
      'Sun 13:20',
      closesLine(false, false),
      losesFeed('before-patient', 40),
      note('Line found hanging open, a pool on the floor.'),
    ),
    at('Sun 13:35', takesDown({ reason: 'line found open: bag and line thrown away' }), closesLine()),
    at('Sun 17:55', takesWaterDown('stead-water-2', 40)),
    at('Sun 18:00', ...begins('stead-3', 'stead-water-3')),
    each(['Sun 09:15', 'Mon 09:10'], lab('glucose', 6.2)),
    at('Mon 10:30', stool('loose', 150)),
    at(
      'Mon 12:00',
      readsCounter,
      readsWaterCounter(1050),
      stops(),
      takesDown({ reason: 'feed ended' }),
      closesLine(),
      flush(30),
    ),
    at('Mon 17:55', takesWaterDown('stead-water-3', 50)),
    at('Mon 18:00', ...begins('stead-4', 'stead-water-4')),
    at('Tue 07:50', readsCounter, readsWaterCounter(1400)),
  ],
};
