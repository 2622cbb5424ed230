/** A standing as the lines that a golden day expects: words and numbers, in a fixed form. */
import type { Fraction } from '@feedwright/core/base/fraction';
import type { Instant } from '@feedwright/core/base/instant';
import { inMl, inMlPerHour, type Volume } from '@feedwright/core/base/volume';
import { showTimeOfDay, timeOfDayAt } from '@feedwright/core/base/zone';
import type { Account } from '@feedwright/core/standing/account';
import type { CourseStanding } from '@feedwright/core/standing/standing-at';
import { HERE } from './day-file.ts';

/** To at most three places; nothing here is decided on it. */
const number = ({ n, d }: Fraction): string => String(Math.round((n * 1000) / d) / 1000);
const mL = (amount: Volume): string => `${number(inMl(amount))} mL`;
const time = (at: Instant): string => showTimeOfDay(timeOfDayAt(at, HERE));

function ofAccount(name: string, account: Account): readonly string[] {
  const { liquids, nutrition, ordered } = account;
  const parts = (list: Account['byContainer']) =>
    list.map((one) => `${one.name ?? 'by hand'} ${mL(one.volume)}`);
  return [
    `${name} received ${mL(account.received)}`,
    `${name} estimated ${mL(account.estimated)}, by rate ${mL(account.byRate)}`,
    `${name} by container ${parts(account.byContainer).join(', ')}`,
    `${name} by order ${parts(account.byOrder).join(', ')}`,
    ...(ordered === null
      ? [`${name} ordered nothing`]
      : [`${name} ordered ${mL(ordered.asWritten)}, less fasts ${mL(ordered.lessFasts)}`]),
    `${name} water ${mL(liquids.intake.water)}`,
    `${name} in ${mL(liquids.totalIn.value)}, out ${mL(liquids.totalOut.value)}, balance ${mL(liquids.balance.value)}`,
    ...Object.entries(liquids.unmeasured).map(([what, count]) => `${name} ${what} not measured ${count}×`),
    `${name} energy ${number(nutrition.energyKcal.value)} kcal, protein ${number(nutrition.proteinG.value)} g`,
    `${name} free water ${mL(nutrition.freeWater.total.value)}`,
    ...account.interruptions.map(
      (one) =>
        `${name} interrupted ${time(one.from)} to ${one.open ? 'now' : time(one.until)} for ${one.reason}, ${one.lasted / 60_000} min` +
        (one.lost === null ? '' : `, ${mL(one.lost)}`),
    ),
  ];
}

function ofTube({ tube }: CourseStanding): string {
  if (tube.out !== null) return 'tube out';
  const state = tube.confirmedBy === null ? 'not confirmed' : `confirmed at ${time(tube.confirmedBy.at)}`;
  return `tube ${state}${tube.movedSinceConfirmed ? ', moved since' : ''}`;
}

export function tell(standing: CourseStanding): readonly string[] {
  const { running, container, today, yesterday, shift, residual, runsDryAt } = standing;
  return [
    running === null
      ? 'nothing runs'
      : `runs at ${number(inMlPerHour(running.rate))} mL/h since ${time(running.since)}`,
    container === null
      ? 'nothing is up'
      : `up ${container.id} since ${time(container.putUpAt)}, ${mL(container.remaining)} left` +
        (runsDryAt === null ? '' : `, dry ${time(runsDryAt)}`),
    ...(standing.set === null ? [] : [`set since ${time(standing.set.putUpAt)}`]),
    ...(today === null ? [] : ofAccount('today', today)),
    ...(yesterday === null ? [] : ofAccount('yesterday', yesterday)),
    ...(shift === null ? [] : ofAccount('shift', shift)),
    ...standing.containers.map(
      (one) =>
        `container ${one.container.id} filled ${mL(one.container.filled)}, primed ${mL(one.container.primed)}, ` +
        `drawn ${mL(one.drawn)}, remaining ${mL(one.remaining)}` +
        (one.left === null ? '' : `, found ${mL(one.left)}`),
    ),
    ofTube(standing),
    `residuals in a row ${residual.run ?? 'not counted'}`,
    `steps confirmed ${standing.advancement.stepsConfirmed}`,
    `intolerance ${standing.intolerance.join(', ') || 'none'}`,
    `asks ${standing.contradictions.map((one) => one.code).join(', ') || 'nothing'}`,
    `order ${standing.orderInForce.kind}`,
  ];
}
