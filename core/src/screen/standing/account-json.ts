/** What does the account of a span look like to a program? */

import { fraction } from '../../base/fraction.ts';
import type { Volume } from '../../base/volume.ts';
import type { Worked } from '../../base/working.ts';
import type { Account, IntakeOutput } from '../../standing/account.ts';
import type { Nutrition } from '../../standing/nutrition.ts';
import type { ByName } from '../../standing/received.ts';
import { jsonNumber } from '../number.ts';
import { type Json, mlOf, type PlanReading, workingJson } from '../plan/json.ts';
import { maybe, maybeMl, moments } from './json-values.ts';

const byName = (list: readonly ByName[]): Json =>
  list.map(({ name, volume }) => ({ name, ml: mlOf(volume) }));

const volumes = (of: Readonly<Record<string, Volume>>): Json =>
  Object.fromEntries(Object.entries(of).map(([what, volume]) => [what, mlOf(volume)]));

const workings = (of: Readonly<Record<string, Worked<unknown>>>, { zone }: PlanReading): Json =>
  Object.fromEntries(Object.entries(of).map(([what, one]) => [what, workingJson(one.working, zone)]));

const liquidsJson = (liquids: IntakeOutput, reading: PlanReading): Json => {
  const { feed, intake, output, unmeasured, totalIn, totalOut, balance } = liquids;
  return {
    intakeMl: volumes({ feed, ...intake }),
    outputMl: volumes(output as Readonly<Record<string, Volume>>),
    unmeasured: unmeasured as Json,
    totalInMl: mlOf(totalIn.value),
    totalOutMl: mlOf(totalOut.value),
    balanceMl: mlOf(balance.value),
    working: workings({ totalInMl: totalIn, totalOutMl: totalOut, balanceMl: balance }, reading),
  };
};

const nutritionJson = (nutrition: Nutrition, reading: PlanReading): Json => {
  const { energyKcal, proteinG, freeWater, unknownFeeds } = nutrition;
  const { feed, given, total } = freeWater;
  return {
    energyKcal: jsonNumber(energyKcal.value, 2),
    proteinG: jsonNumber(proteinG.value, 2),
    waterMl: { formula: mlOf(feed.value), given: mlOf(given.value), total: mlOf(total.value) },
    unknownFeeds: [...unknownFeeds],
    working: workings({ energyKcal, proteinG, 'waterMl.total': total }, reading),
  };
};

export function accountJson(account: Account, reading: PlanReading): Json {
  const at = moments(reading.zone);
  const { span, received, estimated, byRate, byContainer, byOrder, ordered, interruptions } = account;
  return {
    from: at(span.from),
    until: at(span.until),
    receivedMl: mlOf(received),
    estimatedMl: mlOf(estimated),
    byRateMl: mlOf(byRate),
    byContainer: byName(byContainer),
    byOrder: byName(byOrder),
    orderedMl: maybe(ordered, ({ asWritten, lessFasts }) => ({
      asWritten: mlOf(asWritten),
      lessFasts: mlOf(lessFasts),
    })),
    interruptions: interruptions.map(({ from, until, reason, lasted, lost, open }) => ({
      from: at(from),
      until: at(until),
      reason,
      minutes: jsonNumber(fraction(lasted, 60_000), 2),
      lostMl: maybeMl(lost),
      open,
    })),
    liquids: liquidsJson(account.liquids, reading),
    nutrition: nutritionJson(account.nutrition, reading),
  };
}
