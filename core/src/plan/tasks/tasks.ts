/**
 * What is due? Everything that the order and local policy want between now and the end, each with its window, in the order
 * in which it is done at the bedside: look first, and draw before any water goes in; stop, give what is not feed, hang,
 * then feed.
 */
import { earlier, type Instant, later } from '../../base/instant.ts';
import type { Policy } from '../../policy/policy.ts';
import type { Course } from '../course.ts';
import type { Task } from '../plan.ts';
import { careByClock, checksBeforeFeed, checksByClock } from './checks.ts';
import { task, type Window } from './due.ts';
import {
  type Feeding,
  feedingsOf,
  feedWindow,
  givingTasks,
  heldBy,
  heldFrom,
  runningTasks,
} from './feeding.ts';
import { flushesAroundStops, stopWater } from './holds.ts';
import { medicineTasks, moduleTasks } from './medicines.ts';
import { stepTasks } from './steps.ts';
import { waterAround, waterByClock } from './water.ts';

/** Tasks before and after the moment at which a container is changed, in bedside order. */
export type Due = { readonly beforeHanging: readonly Task[]; readonly afterHanging: readonly Task[] };

const amounts = (one: Task): boolean => one.volume?.value !== 0;

/** Where the order ends nothing more is due by it but to stop and to flush. */
const isOrdered =
  ({ order: { endsAt } }: Course) =>
  ({ kind, beside, nominal }: Task): boolean =>
    endsAt === null ||
    nominal < endsAt ||
    (nominal === endsAt && (kind === 'stop-feed' || (kind === 'flush' && beside === 'after')));

/** Due and not done: what is not past, and what is past but may still be done. */
const isOpen =
  (course: Course, first: Instant) =>
  (one: Task): boolean => {
    const { standing, horizon, begins } = course;
    return (
      !standing.done.has(one.id) &&
      one.nominal < horizon.until &&
      one.nominal >= begins &&
      isOrdered(course)(one) &&
      (one.latest >= first || one.nominal >= standing.at)
    );
  };

/** What goes with one feed, by where it stands at the bedside: nothing goes down the tube before it was looked at. */
type FeedTasks = {
  readonly ends: readonly Task[];
  readonly looks: readonly Task[];
  readonly flushes: readonly Task[];
  readonly given: readonly Task[];
};

/** A feed with what goes around it. One that was missed has no end either. */
function feedTasks(course: Course, feeding: Feeding, first: Instant): FeedTasks {
  const { give, end } = givingTasks(course, feeding);
  if (!isOpen(course, first)(give) && !course.standing.done.has(give.id)) {
    return { ends: [], looks: [], flushes: [], given: [] };
  }
  const water = waterAround(course);
  const window = feedWindow(course, feeding);
  const flush = (beside: 'before' | 'after', at: Window): readonly Task[] =>
    [task({ kind: 'flush', about: 'feed', beside, volume: water[beside], rule: 'PL34' }, at)].filter(amounts);
  const { until } = feeding.whole;
  const stopped = heldBy(heldFrom(course, until));
  const afterEnd = (at: Window): readonly Task[] => {
    const volume = stopWater(course, until) ?? null;
    return stopped === null
      ? flush('after', at)
      : [task({ kind: 'flush', about: stopped, beside: 'after', volume, rule: 'PL37' }, at)].filter(amounts);
  };
  return {
    ends: end === null ? [] : [end],
    looks: checksBeforeFeed(course, feeding),
    flushes: [...(end === null ? [] : afterEnd(end)), ...flush('before', window)],
    given: [give, ...(end === null ? flush('after', window) : [])],
  };
}

/** A window that has begun begins now, or where it was meant; one that ends before anybody can be there ends with the first visit. */
const fromNow =
  ({ standing }: Course, first: Instant) =>
  (one: Task): Task => ({
    ...one,
    earliest: earlier(later(one.earliest, standing.at), one.nominal),
    latest: later(one.latest, first),
  });

/** Two that would have the same id are told apart by their number, before anything done is taken away. */
function toldApart(tasks: readonly Task[]): readonly Task[] {
  const seen = new Map<string, number>();
  return tasks.map((one) => {
    const count = (seen.get(one.id) ?? 0) + 1;
    seen.set(one.id, count);
    return count === 1 ? one : { ...one, id: `${one.id}#${count}` };
  });
}

/** [PL30] Every task, by family and within it by time. `first` is the first moment at which a visit can be. */
export function tasksOf(course: Course, policy: Policy, first: Instant): Due {
  const { stops, starts } = runningTasks(course);
  const { afterStops, beforeStarts } = flushesAroundStops(course);
  const feeds = feedingsOf(course).map((feeding) => feedTasks(course, feeding, first));
  const shown = (tasks: readonly Task[]): readonly Task[] =>
    toldApart(tasks).filter(isOpen(course, first)).map(fromNow(course, first));
  return {
    beforeHanging: shown([
      ...checksByClock(course),
      ...stops,
      ...feeds.flatMap((one) => one.ends),
      ...feeds.flatMap((one) => one.looks),
      ...stepTasks(course, policy),
      ...afterStops,
      ...medicineTasks(course),
      ...moduleTasks(course),
      ...waterByClock(course),
      ...feeds.flatMap((one) => one.flushes),
    ]),
    afterHanging: shown([
      ...beforeStarts,
      ...starts,
      ...feeds.flatMap((one) => one.given),
      ...careByClock(course),
    ]),
  };
}
