/**
 * Hazel ward, cot 9, Wren Aldous, ten weeks old: 80 mL of her mother's milk every three hours. One feed is charted as
 * 800 mL and corrected; on Sunday night what is drawn is green, and feed stops until she has been seen.
 */
import { after, hours, minutes } from '@feedwright/core/base/instant';
import { WREN } from '../orders.ts';
import { HAZEL, PHYSICIAN } from '../team.ts';
import {
  distension,
  feeds,
  headUp,
  holdEnds,
  isHeld,
  isIdentified,
  isOrdered,
  milkPrepared,
  mouthCare,
  note,
  residualOf,
  stool,
  tubeChecked,
  weighs,
} from '../telling/at-the-bedside.ts';
import { pours, takesDown } from '../telling/at-the-pump.ts';
import { when } from '../telling/clock.ts';
import { checkedByPh, flushAfterFeed } from '../telling/planned-care.ts';
import type { Deed } from '../telling/scene.ts';
import { at, each, type Line, onTime, type Story } from '../telling/story.ts';
import { asPlanned, called, correcting, from, writtenAfter } from '../telling/who-and-when.ts';

const milk = (volume: number): Deed => asPlanned('give-feed', {}, feeds('pump', volume, { minutes: 45 }));

/** Milk warmed and drawn up, the tube checked, the feed by syringe pump, two mL of water after it. */
function feed(time: string, bag: string, given: Deed = writtenAfter(46, milk(80))): readonly Line[] {
  const due = when(time);
  const later = (count: number, ...deeds: readonly Deed[]): Line =>
    onTime(after(due, minutes(count)), ...deeds);
  const keepsUntil = after(due, hours(20));
  return [
    later(-5, milkPrepared(bag, 82, keepsUntil), headUp(30), checkedByPh(4.5, 21, time)),
    later(0, pours(bag, 82, { line: 2, spilt: 0, comesDownBy: keepsUntil }), given),
    later(45, flushAfterFeed(2)),
    later(47, takesDown({ reason: 'feed ended' })),
  ];
}

const feedsAt = (times: readonly string[], from: number): readonly Line[] =>
  times.flatMap((time, index) => feed(time, `wren-${from + index}`));

export const wren: Story = {
  course: 'bed-09',
  ...HAZEL,
  order: WREN,
  happened: [
    at('Fri 16:40', from(PHYSICIAN, isOrdered(WREN))),
    at('Fri 20:30', from(PHYSICIAN, tubeChecked('radiograph', { markCm: 21, reader: 'Dr Ilse Markham' }))),
    at('Sat 06:00', isIdentified(WREN), weighs(4.3)),
    feedsAt(['Sat 06:30', 'Sat 09:30', 'Sat 12:30'], 1),
    feed('Sat 15:30', 'wren-4', writtenAfter(46, called('eight hundred', milk(800)))),
    at('Sat 15:31', writtenAfter(52, correcting('eight hundred', milk(80)))),
    feedsAt(['Sat 18:30', 'Sat 21:30', 'Sun 00:30', 'Sun 03:30', 'Sun 06:30'], 5),
    each(['Sat 11:00', 'Sat 19:20', 'Sun 10:40', 'Mon 11:15'], stool('loose', 15)),
    each(['Sat 10:50', 'Sat 17:10', 'Sun 11:20', 'Sun 17:30', 'Mon 12:00'], mouthCare),
    at('Sun 09:20', residualOf(8, 'feed', { returned: 8 }), weighs(4.32)),
    feedsAt(['Sun 09:30', 'Sun 12:30', 'Sun 15:30', 'Sun 18:30'], 10),
    at('Sun 21:20', residualOf(12, 'green', { discarded: 12 }), distension('mild', 41)),
    at(
      'Sun 21:25',
      from(
        PHYSICIAN,
        isHeld({
          id: 'green',
          from: when('Sun 21:25'),
          until: null,
          why: 'intolerance',
          note: 'green aspirate',
        }),
        note('Nothing by the tube. Surgeons asked.'),
      ),
    ),
    at(
      'Mon 05:40',
      from(PHYSICIAN, note('Seen; picture normal. Feed from 06:30.'), holdEnds('green')),
      distension('none', 40),
    ),
    at('Mon 06:10', residualOf(2, 'clear', { returned: 2 }), weighs(4.33)),
    feedsAt(
      [
        'Mon 06:30',
        'Mon 09:30',
        'Mon 12:30',
        'Mon 15:30',
        'Mon 18:30',
        'Mon 21:30',
        'Tue 00:30',
        'Tue 03:30',
        'Tue 06:30',
      ],
      14,
    ),
  ],
};
