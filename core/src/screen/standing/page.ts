/** What does every part of a printed standing need to know, and how are moments and lists written in it? */
import type { Instant, Span } from '../../base/instant.ts';
import { type DayName, dayAt } from '../../base/zone.ts';
import type { Plan, PlannedContainer } from '../../plan/plan.ts';
import type { CourseStanding } from '../../standing/standing-at.ts';
import { moment } from '../plan/page.ts';
import { showMoment } from '../time.ts';
import type { Words } from '../words.ts';
import type { Reading } from '../working-text.ts';

export type StandingPage = Reading & { readonly standing: CourseStanding; readonly workings: boolean };

/** With the plan from there, from which it is known when and why the container comes down; null where there is none. */
export type StandingTextOptions = {
  readonly words: Words;
  readonly plan: Plan | null;
  readonly workings: boolean;
};

const NO_DAY = '' as DayName;

export const time = (at: Instant, page: StandingPage): string => moment(at, page);

/** With its day, also today: a page outlives the day on which it was printed. */
export const dayAndTime = (at: Instant, { zone, words }: Reading): string =>
  showMoment(at, NO_DAY, zone, words);

/** `08:00–10:00 on 24 Oct`: the day once where it is one day. */
export function spanText({ from, until }: Span, page: StandingPage): string {
  const day = dayAt(from, page.zone);
  const begins = day === dayAt(until, page.zone) ? { ...page, today: day } : page;
  return page.words.plan.within(time(from, begins), time(until, page));
}

/** The container that hangs, as the plan sees it: with its limit. */
export const planned = (plan: Plan | null): PlannedContainer | null =>
  plan?.containers.find((one) => one.alreadyUp) ?? null;
