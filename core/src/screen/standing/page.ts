/** What does every part of a printed standing need to know, and how are moments and lists written in it? */
import type { Instant } from '../../base/instant.ts';
import type { Plan, PlannedContainer } from '../../plan/plan.ts';
import type { CourseStanding } from '../../standing/standing-at.ts';
import { moment } from '../plan/page.ts';
import type { Words } from '../words.ts';
import type { Reading } from '../working-text.ts';

export type StandingPage = Reading & { readonly standing: CourseStanding; readonly workings: boolean };

/** With the plan from there, from which it is known when and why the container comes down; null where there is none. */
export type StandingTextOptions = {
  readonly words: Words;
  readonly plan: Plan | null;
  readonly workings: boolean;
};

export const time = (at: Instant, page: StandingPage): string => moment(at, page);

/** The container that hangs, as the plan sees it: with its limit. */
export const planned = (plan: Plan | null): PlannedContainer | null =>
  plan?.containers.find((one) => one.alreadyUp) ?? null;
