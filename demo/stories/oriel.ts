/**
 * Bed 3, Oriel Banfield: four feeds a day by gravity through a gastrostomy button. One feed is charted by two nurses on
 * two tablets, which the night nurse settles; a flush charted twice on Monday nobody has settled yet. A bag falls. She
 * vomits on Sunday night, and feed is held until she has been seen.
 */
import { ORIEL } from '../orders.ts';
import { BIRCH_EAST, BIRCH_WEST, DIETITIAN, PHYSICIAN } from '../team.ts';
import {
  bowelSounds,
  distension,
  feeds,
  flush,
  headUp,
  holdEnds,
  isHeld,
  isIdentified,
  isOrdered,
  lab,
  losesFeed,
  mouthCare,
  note,
  pain,
  passes,
  stool,
  tubeChecked,
  vomits,
  weighs,
} from '../telling/at-the-bedside.ts';
import { closesLine, pours, takesDown } from '../telling/at-the-pump.ts';
import { when } from '../telling/clock.ts';
import { flushAfterFeed, flushBeforeFeed } from '../telling/planned-care.ts';
import { at, each, type Line, type Story } from '../telling/story.ts';
import { asPlanned, called, from, settles, writtenAfter } from '../telling/who-and-when.ts';

const gravity = feeds('gravity', 300, { minutes: 45, heightCm: 50, barrel: { volume: 50, minutes: 7 } });

/** A feed from its bag, 45 min of it; it is charted when it has run in. */
const feed = (day: string, hour: number, bag: string, newSet = false): readonly Line[] => {
  const time = (minute: string): string => `${day} ${String(hour).padStart(2, '0')}:${minute}`;
  return [
    ...at(
      time('00'),
      headUp(40),
      flushBeforeFeed(30),
      pours(bag, newSet ? 320 : 300, newSet ? { line: 15 } : {}),
      writtenAfter(46, called(`the feed of ${bag}`, asPlanned('give-feed', {}, gravity))),
    ),
    ...at(
      time('47'),
      takesDown(),
      closesLine(),
      called(`the flush of ${bag}`, flushAfterFeed(30, time('45'))),
    ),
  ];
};

const MAREK = { by: BIRCH_WEST.day, device: BIRCH_WEST.device } as const;

export const oriel: Story = {
  course: 'bed-03',
  ...BIRCH_EAST,
  order: ORIEL,
  happened: [
    at('Fri 16:10', from(DIETITIAN, isOrdered(ORIEL))),
    at('Sat 06:20', isIdentified(ORIEL), weighs(55)),
    at('Sat 06:30', tubeChecked('balloon-volume'), mouthCare),
    feed('Sat', 7, 'oriel-1', true),
    each(['Sat 09:30', 'Sun 09:10', 'Mon 09:20'], lab('glucose', 5.9), mouthCare),
    feed('Sat', 12, 'oriel-2'),
    feed('Sat', 17, 'oriel-3'),
    at('Sat 17:04', from(MAREK, writtenAfter(49, called('the same feed', gravity)))),
    at('Sat 20:25', settles('the feed of oriel-3', 'the same feed')),
    feed('Sat', 22, 'oriel-4'),
    each(['Sat 14:00', 'Sun 13:40', 'Mon 15:00'], passes('urine', 480)),
    feed('Sun', 7, 'oriel-5', true),
    feed('Sun', 12, 'oriel-6'),
    at(
      'Sun 12:40',
      losesFeed('before-patient', 60),
      note('The bag came off its hook: about 60 mL on the floor.'),
    ),
    feed('Sun', 17, 'oriel-7'),
    feed('Sun', 22, 'oriel-8'),
    at('Sun 23:20', vomits(80), distension('mild'), pain('mild')),
    at(
      'Sun 23:35',
      from(
        PHYSICIAN,
        isHeld({
          id: 'vomited',
          from: when('Sun 23:35'),
          until: null,
          why: 'intolerance',
          note: 'until seen',
        }),
      ),
    ),
    at(
      'Mon 09:40',
      from(PHYSICIAN, holdEnds('vomited')),
      distension('none'),
      pain('none'),
      bowelSounds(true),
    ),
    feed('Mon', 12, 'oriel-9', true),
    at('Mon 12:52', from(MAREK, called('the same flush', flush(30)))),
    at('Mon 14:20', stool('loose', 120)),
    feed('Mon', 17, 'oriel-10'),
    feed('Mon', 22, 'oriel-11'),
    at('Tue 06:40', mouthCare),
  ],
};
