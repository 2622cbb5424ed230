/** How do administrations become a regimen? What the files beside this one work on, and what they make. */
import type { Instant } from '@feedwright/core/base/instant';
import { inMl, inMlPerHour, type Rate, type Volume } from '@feedwright/core/base/volume';
import type { Zone } from '@feedwright/core/base/zone';
import type { Order, Regimen } from '@feedwright/core/order/order';
import { ofFraction } from '@feedwright/core/reckon/exact';
import { shown } from '../read/quantity.ts';
import { type Place, stop } from '../read/reading.ts';
import type { Administration } from './administration.ts';
import type { Step } from './steps.ts';

export type Work = { readonly place: Place; readonly zone: Zone; readonly method: Order['method'] };

export type Feeding = {
  readonly regimen: Regimen | null;
  readonly from: Instant | null;
  readonly until: Instant | null;
  /** The rates as the schedule has them, by the letter and in the order of time. */
  readonly rates: readonly Step<Rate>[];
  /** What volumes come to in a day, also while their times are not fixed; null for rates. */
  readonly volumePerDay: Volume | null;
};

/** An amount in FHIR is one of the formula as it is given. */
export const MIXTURE = 'mixture';
export const MINUTES_A_DAY = 1440;

export const showMl = (amount: Volume): string => `${shown(ofFraction(inMl(amount)))} mL`;
export const showMlPerHour = (at: Rate): string => `${shown(ofFraction(inMlPerHour(at)))} mL/h`;

/** [FH12] Administrations that are no one regimen: several orders, or a mistake. */
export function mixed({ place }: Work): null {
  stop(place, 'FH12', 'fhir/administrations-mixed');
  return null;
}

export const stepsOf = <Q>(
  administrations: readonly Administration[],
  amount: (one: Administration) => Q | null,
): readonly Step<Q>[] =>
  administrations.flatMap((one) => {
    const value = amount(one);
    const { from, until } = one.schedule;
    return value === null ? [] : [{ from, until, amount: value }];
  });

/** Whether all recur alike, so that they differ in their bounds and amounts alone. */
export const recurAlike = ([first, ...rest]: readonly Administration[]): boolean =>
  rest.every(
    ({ schedule }) =>
      schedule.repeats === first?.schedule.repeats &&
      schedule.lasts === first.schedule.lasts &&
      String(schedule.times) === String(first.schedule.times),
  );
