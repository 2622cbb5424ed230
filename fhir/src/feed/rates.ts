/**
 * What do administrations by rate alone make up? One rate that runs on, or a climb of several; all day, or in the hours
 * that the schedule or a person names.
 */
import { DAY } from '@feedwright/core/base/instant';
import type { Rate } from '@feedwright/core/base/volume';
import type { Regimen } from '@feedwright/core/order/order';
import { answered, ask } from '../read/reading.ts';
import type { Administration } from './administration.ts';
import { MIXTURE, mixed, recurAlike, showMlPerHour, stepsOf, type Work } from './feeding.ts';
import { advancementOf, inOrder, noteAdvancement, type Step } from './steps.ts';

type PerDay = Extract<Regimen, { kind: 'continuous' }>['perDay'];

/** The hours of the day in which a rate runs: as the schedule says, else as a person answered; null is all day. */
function hoursOf({ place }: Work, { times, lasts }: Administration['schedule']): PerDay {
  const [from] = times ?? [];
  if (from !== undefined && lasts !== null && lasts < DAY) return { from, lasts };
  const answer = answered(place, 'feedingHours');
  return answer === 'all-day' ? null : answer;
}

const continuousAt = (rate: Rate, perDay: PerDay): Regimen => ({
  kind: 'continuous',
  rate: { rate, of: MIXTURE },
  perDay,
  advance: null,
});

function climbing(work: Work, rates: readonly Step<Rate>[], perDay: PerDay): Regimen | null {
  const ordered = inOrder(work.place, rates, work.zone, showMlPerHour);
  if (ordered === null) return null;
  const advance = advancementOf(ordered);
  if (advance === null) {
    const one = ask(work.place, 'FH13', 'fhir/steps-uneven', 'rateMlPerHour', {
      rates: ordered.map(({ amount }) => showMlPerHour(amount)),
    });
    return one === null ? null : continuousAt(one, perDay);
  }
  noteAdvancement(work.place, advance);
  return { kind: 'continuous', rate: { rate: advance.goal, of: MIXTURE }, perDay, advance };
}

/** Administrations that all have a rate and no volume, and do not come several times a day. */
export function byRate(work: Work, administrations: readonly Administration[]): Regimen | null {
  const [first] = administrations;
  const rates = stepsOf(administrations, ({ rate }) => rate);
  const [one] = rates;
  if (first === undefined || one === undefined) return null;
  const { schedule } = first;
  if (schedule.repeats && schedule.times === null) return null;
  if (!recurAlike(administrations)) return mixed(work);
  const perDay = hoursOf(work, schedule);
  return rates.length > 1 ? climbing(work, rates, perDay) : continuousAt(one.amount, perDay);
}
