/** `feedwright plan FILE`: what to pour, programme, check and flush from now on, when, and why. */
import { type Instant, instant } from '@feedwright/core/base/instant';
import type { Order } from '@feedwright/core/order/order';
import { policyContext } from '@feedwright/core/order/review';
import { feedingDay } from '@feedwright/core/plan/grid';
import type { Plan } from '@feedwright/core/plan/plan';
import { planFor } from '@feedwright/core/plan/plan-for';
import { ask, type Policy } from '@feedwright/core/policy/policy';
import { ENGLISH } from '@feedwright/core/screen/english/english';
import { planJson } from '@feedwright/core/screen/plan/json';
import { planLines } from '@feedwright/core/screen/plan/text';
import { blankStanding, type Standing } from '@feedwright/core/standing/standing';
import { hoursArgument, momentArgument, zoneArgument } from './arguments.ts';
import { feedsFrom, policyFrom } from './facility.ts';
import { STOPPED } from './fail.ts';
import { type Confirmed, readOrder } from './order-file.ts';
import { printJson, printLines } from './print.ts';

export type PlanOptions = {
  readonly from?: string;
  readonly hours?: string;
  readonly zone?: string;
  readonly policy?: string;
  readonly feeds?: string;
  readonly confirm?: Confirmed;
  readonly json?: boolean;
  readonly working?: boolean;
};

/** Now, or the start of an order that has not begun: in whole minutes, as a clock on the wall shows it. */
export function momentOf(from: string | undefined, order: Order): Instant {
  if (from !== undefined) return momentArgument('--from', from, order.zone);
  const now = Math.floor(Date.now() / 60_000) * 60_000;
  return instant(Math.max(now, order.startsAt ?? now));
}

/**
 * Nothing is recorded, so nothing is up and nothing was received. Yet whoever plans a whole feeding day of an order that
 * began on an earlier day does not plan its first: at a day's very start nothing of it can have been given or lost. In
 * the middle of a day it is not known what was, and then nothing is made up.
 */
function nothingRecorded(order: Order, policy: Policy, at: Instant): Standing {
  const blank = blankStanding(at);
  const start = ask(policy, 'day.start', policyContext(order, at));
  const begins = start.known && feedingDay(at, start.value, order.zone).from === at;
  const { startsAt } = order;
  // Steps count from when feeding is known to have begun: without a record that is now, and none has been taken.
  const steps = order.regimen?.advance ?? null;
  const isLater = begins && steps === null && startsAt !== null && startsAt < at;
  return isLater ? { ...blank, feedingSince: startsAt } : blank;
}

/** A plan of the order as it stands. */
export function plan(file: string, options: PlanOptions): void {
  const policy = policyFrom(options.policy);
  const feeds = feedsFrom(options.feeds);
  const zone = options.zone === undefined ? undefined : zoneArgument('--zone', options.zone);
  const hours = options.hours === undefined ? null : hoursArgument('--hours', options.hours);
  const { order, problems } = readOrder(file, { zone, confirmed: options.confirm ?? {}, feeds });
  const at = momentOf(options.from, order);
  const made: Plan = planFor({
    order,
    feeds,
    policy,
    standing: nothingRecorded(order, policy, at),
    // Nobody was here before: what was due is not told as overdue.
    since: at,
    found: problems,
    ...(hours === null ? {} : { until: instant(at + hours * 3_600_000) }),
  });
  if (options.json === true) printJson(planJson(made, { zone: order.zone, words: ENGLISH }));
  else printLines(planLines(made, order, { words: ENGLISH, feeds, workings: options.working === true }));
  if (made.programme === null) process.exitCode = STOPPED;
}
