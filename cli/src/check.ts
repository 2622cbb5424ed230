/** `feedwright check FILE`: what is missing in an order, what contradicts itself, what has to be asked. */

import { judgeOrder } from '@feedwright/core/order/judge';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import { ENGLISH } from '@feedwright/core/screen/english/english';
import { problemJson } from '@feedwright/core/screen/plan/json';
import { problemLines } from '@feedwright/core/screen/problem-lines';
import { zoneArgument } from './arguments.ts';
import { feedsFrom, policyFrom } from './facility.ts';
import { STOPPED } from './fail.ts';
import { readOrder } from './order-file.ts';
import { momentOf, type PlanOptions } from './plan.ts';
import { plain, printJson, printLines } from './print.ts';

export function check(file: string, options: PlanOptions): void {
  const policy = options.policy === undefined ? DEFAULT_POLICY : policyFrom(options.policy);
  const feeds = feedsFrom(options.feeds);
  const zone = options.zone === undefined ? undefined : zoneArgument('--zone', options.zone);
  const { order, problems: found } = readOrder(file, { zone, confirmed: options.confirm ?? {}, feeds });
  const problems = [...found, ...judgeOrder(order, feeds, policy, momentOf(options.from, order))];
  const stops = problems.some((one) => one.level === 'stop');
  if (options.json === true) {
    printJson({ problems: problems.map((one) => problemJson(one, ENGLISH)), stops });
  } else if (problems.length === 0) printLines([plain('Complete, and nothing in it contradicts itself.')]);
  else printLines(problemLines(problems, ENGLISH));
  if (stops) process.exitCode = STOPPED;
}
