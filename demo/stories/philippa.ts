/**
 * At home, Philippa Drewe: boluses by syringe through a gastrostomy, two of them only where less than half of the meal was
 * eaten. Her husband writes on his phone; on Sunday he gets to it only in the evening.
 */
import { PHILIPPA } from '../orders.ts';
import { atHome, DIETITIAN } from '../team.ts';
import {
  feeds,
  headUp,
  isIdentified,
  isOrdered,
  mouthCare,
  note,
  opensCarton,
  stool,
  takesIn,
  tubeChecked,
  usesCarton,
  weighs,
} from '../telling/at-the-bedside.ts';
import { flushAfterFeed, flushBeforeFeed } from '../telling/planned-care.ts';
import type { Deed } from '../telling/scene.ts';
import { at, each, type Story } from '../telling/story.ts';
import { asPlanned, from, writtenAfter } from '../telling/who-and-when.ts';

const DISTRICT_NURSE = { by: 'Bea Ansell, district nurse', device: 'district-nurse' } as const;

/** Water, the feed, water: written down together when it is done. */
const fed = (due: string, about?: 'meal'): readonly Deed[] => [
  headUp(45),
  flushBeforeFeed(30, due),
  asPlanned(
    'give-bolus',
    { due, ...(about === undefined ? {} : { about }) },
    feeds('syringe', 420, { minutes: 25 }),
  ),
  flushAfterFeed(60, due),
];

const eats = (volume: number, kcal: number, told: string): readonly Deed[] => [
  takesIn('oral', volume, kcal),
  note(told),
];

export const philippa: Story = {
  course: 'bed-05',
  ...atHome('Colm Drewe', 'drewe-phone'),
  order: PHILIPPA,
  happened: [
    at('Fri 16:30', from(DIETITIAN, isOrdered(PHILIPPA))),
    at('Sat 07:15', isIdentified(PHILIPPA), tubeChecked('mark', { markCm: 3 })),
    at('Sat 07:30', ...fed('Sat 07:30')),
    at('Sat 13:20', ...eats(150, 180, 'Lunch: a third.')),
    at('Sat 13:30', ...fed('Sat 13:00', 'meal')),
    at('Sat 18:50', ...eats(260, 410, 'Dinner: three quarters, so no bolus.')),
    at('Sat 21:00', ...fed('Sat 21:00'), mouthCare),
    at('Sun 07:30', writtenAfter(825, ...fed('Sun 07:30'))),
    at('Sun 13:10', writtenAfter(490, ...eats(40, 60, 'Lunch: hardly anything.'))),
    at('Sun 13:25', writtenAfter(478, ...fed('Sun 13:00', 'meal'))),
    at('Sun 18:45', writtenAfter(160, ...eats(200, 350, 'Dinner: half.'))),
    at('Sun 21:00', ...fed('Sun 21:00'), mouthCare),
    at('Mon 07:30', opensCarton('drewe-1', 500), usesCarton('drewe-1', 420), ...fed('Mon 07:30')),
    at('Mon 21:30', usesCarton('drewe-1', 0, true)),
    at('Mon 10:10', from(DISTRICT_NURSE, weighs(60.4), tubeChecked('balloon-volume'))),
    at('Mon 13:15', ...eats(300, 520, 'Lunch: nearly all.')),
    at('Mon 18:40', ...eats(90, 110, 'Dinner: a quarter.')),
    at('Mon 18:55', ...fed('Mon 18:30', 'meal')),
    at('Mon 21:00', ...fed('Mon 21:00'), mouthCare),
    each(['Sat 09:40', 'Mon 09:05'], stool('formed')),
    at('Tue 07:30', ...fed('Tue 07:30')),
  ],
};
