/** What the tests of tasks look at: the plan of an order as in a golden case, and what is due in it. */
import type { Plan, Task } from '@feedwright/core/plan/plan';
import { planFor } from '@feedwright/core/plan/plan-for';
import { requestOf } from './case-file.ts';
import { tell } from './case-tell.ts';

export type Own = Parameters<typeof requestOf>[0];
export const CONTINUOUS = { regimen: { kind: 'continuous', rateMlPerHour: 60 } };
export const NOW = 'now 2026-11-25 08:00\npolicy quiet';

export const planOf = (own: Own, now = NOW): Plan => planFor(requestOf(own, now));
export const tasksOf = (plan: Plan): readonly Task[] => plan.visits.flatMap((visit) => visit.tasks);
export const due = (plan: Plan, kind: Task['kind']): readonly string[] =>
  tasksOf(plan)
    .filter((one) => one.kind === kind)
    .map((one) => new Date(one.nominal).toISOString().slice(11, 16));
export const visitAt = (own: Own, now: string, time: string): string | undefined => {
  const request = requestOf(own, now);
  return tell(planFor(request), request.order.zone).find((line) => line.startsWith(`at ${time}: `));
};
