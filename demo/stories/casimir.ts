/**
 * Bed 4, Casimir Holt: five feeds a day by pump through a new orogastric tube, with a medicine that lowers glucose. Before
 * each feed the tube is checked by pH and a residual is looked for, which is found to be nothing, not to be drawn, not
 * done, and a number. On Sunday afternoon he pulls the tube out in the middle of a feed.
 */
import { CASIMIR } from '../orders.ts';
import { BIRCH_EAST, PHYSICIAN } from '../team.ts';
import {
  headUp,
  isIdentified,
  isOrdered,
  lab,
  losesFeed,
  mouthCare,
  note,
  passes,
  residualNotDone,
  residualNotDrawn,
  residualOf,
  residualZero,
  stool,
  tubeChecked,
  tubeOut,
  tubePlaced,
  weighs,
} from '../telling/at-the-bedside.ts';
import {
  clearsCounter,
  closesLine,
  pours,
  readsCounter,
  starts,
  stops,
  takesDown,
} from '../telling/at-the-pump.ts';
import { checkedByPh, dose, flushAfterFeed, flushBeforeFeed } from '../telling/planned-care.ts';
import type { Deed } from '../telling/scene.ts';
import { at, each, type Line, type Story } from '../telling/story.ts';
import { asPlanned, from } from '../telling/who-and-when.ts';

const GLICLAZIDE = 'gliclazide, crushed, in water';

const ready = (ph: number): readonly Deed[] => [headUp(35), checkedByPh(ph, 55)];

const begins = (bag: string, newSet: boolean): readonly Deed[] => [
  flushBeforeFeed(30),
  pours(bag, newSet ? 380 : 360, newSet ? { line: 15 } : {}),
  clearsCounter('read'),
  asPlanned('give-feed', {}, starts(350, 350)),
];

const ends: readonly Deed[] = [
  readsCounter,
  stops(),
  takesDown({ reason: 'feed ended' }),
  closesLine(),
  flushAfterFeed(30),
];

type Feed = { readonly bag: string; readonly ph: number; readonly residual: Deed; readonly newSet?: boolean };

/** A feed of an hour that is due at half past. */
function feed(day: string, hour: number, { bag, ph, residual, newSet = false }: Feed): readonly Line[] {
  const [here, next] = [hour, hour + 1].map((one) => String(one).padStart(2, '0'));
  return [
    ...at(`${day} ${here}:20`, residual),
    ...at(`${day} ${here}:30`, ...ready(ph), ...begins(bag, newSet)),
    ...at(`${day} ${next}:30`, ...ends),
  ];
}

export const casimir: Story = {
  course: 'bed-04',
  ...BIRCH_EAST,
  order: CASIMIR,
  happened: [
    at('Fri 16:05', from(PHYSICIAN, isOrdered(CASIMIR))),
    at('Fri 17:20', tubeChecked('radiograph', { markCm: 55, reader: 'Dr Ilse Markham' })),
    at('Sat 06:05', isIdentified(CASIMIR), weighs(81), lab('glucose', 9.2)),
    feed('Sat', 6, { bag: 'casimir-1', ph: 4, residual: residualZero, newSet: true }),
    each(
      ['Sat 10:15', 'Sun 10:15', 'Mon 10:15'],
      ...dose({ name: GLICLAZIDE, volume: 10, before: 15, after: 15 }),
    ),
    feed('Sat', 10, { bag: 'casimir-2', ph: 4.5, residual: residualNotDrawn }),
    // Over the limit is "not confirmed by pH": the feed waits, and the second reading is looked at by a second person.
    at('Sat 14:20', residualNotDone, tubeChecked('ph', { ph: 6, markCm: 55, confirmed: false })),
    at(
      'Sat 14:50',
      headUp(35),
      tubeChecked('ph', { ph: 5, markCm: 55, reader: 'Marek Lowe, nurse' }),
      flushBeforeFeed(30, 'Sat 14:30'),
      pours('casimir-3', 360),
      clearsCounter('read'),
      asPlanned('give-feed', { due: 'Sat 14:30' }, starts(350, 350)),
    ),
    at('Sat 15:50', ...ends),
    feed('Sat', 18, { bag: 'casimir-4', ph: 4, residual: residualOf(40, 'feed', { returned: 40 }) }),
    feed('Sat', 22, {
      bag: 'casimir-5',
      ph: 4.5,
      residual: residualOf(280, 'feed', { returned: 250, discarded: 30 }),
    }),
    each(['Sat 12:30', 'Sun 12:40', 'Mon 12:20'], passes('urine', 520), mouthCare),
    each(['Sat 20:20', 'Sun 20:40', 'Mon 20:10'], passes('urine', 610), mouthCare, lab('glucose', 8.1)),
    feed('Sun', 6, {
      bag: 'casimir-6',
      ph: 4,
      residual: residualOf(120, 'feed', { returned: 120 }),
      newSet: true,
    }),
    feed('Sun', 10, { bag: 'casimir-7', ph: 4, residual: residualZero }),
    at('Sun 14:20', residualZero),
    at('Sun 14:30', ...ready(4.5), ...begins('casimir-8', false)),
    at(
      'Sun 14:50',
      tubeOut('pulled out by him, the bed wet'),
      readsCounter,
      stops('tube'),
      losesFeed('before-patient', 15),
      takesDown({ reason: 'tube out' }),
      closesLine(),
    ),
    // Feed stopped with gliclazide aboard.
    at('Sun 15:05', lab('glucose', 6.1), note('Dr Markham told: tube out, gliclazide given at 10:15.')),
    at(
      'Sun 16:00',
      lab('glucose', 4.2),
      from(PHYSICIAN, note('Glucose by the vein until the tube is confirmed.')),
    ),
    at('Sun 16:20', tubePlaced(55)),
    at('Sun 16:25', tubeChecked('ph', { ph: 6.5, markCm: 55, confirmed: false })),
    at('Sun 17:35', from(PHYSICIAN, tubeChecked('radiograph', { markCm: 55, reader: 'Dr Ilse Markham' }))),
    at('Sun 17:50', lab('glucose', 7.7)),
    feed('Sun', 18, { bag: 'casimir-9', ph: 4.5, residual: residualNotDrawn, newSet: true }),
    feed('Sun', 22, { bag: 'casimir-10', ph: 4, residual: residualOf(60, 'feed', { returned: 60 }) }),
    feed('Mon', 6, { bag: 'casimir-11', ph: 4, residual: residualZero, newSet: true }),
    feed('Mon', 10, { bag: 'casimir-12', ph: 4.5, residual: residualZero }),
    at('Mon 13:10', stool('formed')),
    feed('Mon', 14, { bag: 'casimir-13', ph: 4, residual: residualOf(20, 'clear', { returned: 20 }) }),
    feed('Mon', 18, { bag: 'casimir-14', ph: 4, residual: residualNotDone }),
    feed('Mon', 22, { bag: 'casimir-15', ph: 4, residual: residualZero }),
    feed('Tue', 6, { bag: 'casimir-16', ph: 4, residual: residualZero, newSet: true }),
  ],
};
