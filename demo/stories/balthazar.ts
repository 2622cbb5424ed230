/**
 * Bed 12, Balthazar Crowe: a feed for failing kidneys, diluted to three quarters, past the stomach, under a fluid limit,
 * with protein in water beside it. Water was added, so a bag hangs four hours and no longer. On Monday two people change
 * the order at once: for half an hour nobody can say which one is in force.
 */
import { minutes } from '@feedwright/core/base/instant';
import { impossible } from '@feedwright/core/base/result';
import { mlPerHour } from '@feedwright/core/base/volume';
import type { Order } from '@feedwright/core/order/order';
import { BALTHAZAR } from '../orders.ts';
import { BIRCH_WEST, DIETITIAN, PHYSICIAN } from '../team.ts';
import {
  isIdentified,
  isOrdered,
  isStopped,
  lab,
  note,
  passes,
  stool,
  takesIn,
  tubeChecked,
  weighs,
} from '../telling/at-the-bedside.ts';
import { pours, readsBack, readsCounter, setsRate, starts, takesDown } from '../telling/at-the-pump.ts';
import { everySince, when } from '../telling/clock.ts';
import { proteinDose, round } from '../telling/planned-care.ts';
import { at, each, onTime, rounds, type Story } from '../telling/story.ts';
import { from } from '../telling/who-and-when.ts';

/** A bag of four hours' feed, just before the last one has hung for four; the set is new in the morning. */
const bags = everySince(['Sat 09:55', 'Tue 08:00'], minutes(235)).map((due, index) => {
  const newSet = index % 6 === 5;
  const bag = pours(`crowe-${index + 2}`, newSet ? 210 : 190, newSet ? { line: 15 } : {});
  return onTime(due, takesDown({ reason: 'hang limit' }), bag);
});

const at45 = BALTHAZAR.regimen?.kind === 'continuous' ? BALTHAZAR.regimen : impossible('another regimen');

const changed = (
  id: string,
  rate: number,
  prescriber: NonNullable<Order['prescriber']>,
  time: string,
): Order => ({
  ...BALTHAZAR,
  id,
  replaces: BALTHAZAR.id,
  prescriber,
  prescribedAt: when(time),
  startsAt: when(time),
  regimen: { ...at45, rate: { ...at45.rate, rate: mlPerHour(rate) } },
});

const BY_DIETITIAN = changed('demo-12b', 40, { name: 'Noor Halloway', role: 'dietitian' }, 'Mon 10:10');
const BY_PHYSICIAN = changed('demo-12c', 35, { name: 'Dr Ilse Markham', role: 'physician' }, 'Mon 10:25');

const PROTEIN = 'modular protein';

export const balthazar: Story = {
  course: 'bed-12',
  ...BIRCH_WEST,
  order: BALTHAZAR,
  happened: [
    at('Fri 16:50', from(PHYSICIAN, isOrdered(BALTHAZAR))),
    at('Sat 05:20', isIdentified(BALTHAZAR), weighs(77)),
    at('Sat 05:45', tubeChecked('radiograph', { markCm: 82, reader: 'Dr Ilse Markham' })),
    at('Sat 06:00', pours('crowe-1', 210, { line: 15 }), starts(45), readsBack(45)),
    bags,
    rounds(
      ['Sat 08:00', 'Sun 08:00', 'Mon 08:00', 'Tue 08:00'],
      4,
      ...round({ flush: 20, degrees: 35, markCm: 82 }),
    ),
    rounds(['Sat 12:00', 'Tue 08:00'], 12, passes('urine', 180), takesIn('intravenous', 50)),
    each(
      ['Sat 10:00', 'Sat 18:00', 'Sun 10:00', 'Sun 18:00', 'Mon 10:00', 'Mon 18:00'],
      proteinDose(PROTEIN, 24, 6, 60),
    ),
    each(
      ['Sat 07:00', 'Sun 07:00', 'Mon 07:00'],
      lab('urea', 21.4),
      lab('creatinine', 412, 'umol/L'),
      lab('potassium', 5.1),
    ),
    each(['Sat 20:10', 'Sun 20:05', 'Mon 20:15', 'Tue 07:50'], readsCounter),
    at('Sun 16:40', stool('formed')),
    at('Mon 10:10', from(DIETITIAN, isOrdered(BY_DIETITIAN))),
    at('Mon 10:25', from(PHYSICIAN, isOrdered(BY_PHYSICIAN))),
    at('Mon 10:40', note('Two new orders, 40 and 35 mL/h. Left at 45 and asked.')),
    at(
      'Mon 11:00',
      from(PHYSICIAN, isStopped('demo-12c', 'the dietitian had ordered at the same time: hers stands')),
    ),
    at('Mon 11:05', setsRate(40), readsBack(40)),
  ],
};
