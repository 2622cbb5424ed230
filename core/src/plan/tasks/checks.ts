/**
 * What is looked at, and how often? Each check by its row of local policy, at moments of the clock. A running feed is not
 * stopped for a pH check unless policy says so, and nothing is ever drawn back through a post-pyloric lumen.
 */
import { after, before, type Duration, duration, type Instant, type Span } from '../../base/instant.ts';
import type { Lumen } from '../../order/order.ts';
import { isPostPyloric, lumenNamed } from '../../order/review.ts';
import type { PolicyKey } from '../../policy/keys.ts';
import type { Course } from '../course.ts';
import type { Task, TaskKind } from '../plan.ts';
import { around, everySoOften, task, type Window } from './due.ts';
import {
  beginsDaily,
  type Feeding,
  feedWindow,
  heldUntil,
  isRunning,
  runningTasks,
  stretchesOf,
} from './feeding.ts';
import { waterBy } from './water.ts';

type EveryKey = Extract<PolicyKey, `${string}.every`>;
type WindowKey = Extract<PolicyKey, `window.${string}`>;

const windowBy = ({ local }: Course, key: WindowKey): Duration => local.should(key)?.value ?? duration(0);

/** When something is due that policy wants every so often; never where policy is silent, which is noted. */
function dueEvery(course: Course, key: EveryKey, by: Duration): readonly Instant[] {
  const every = course.local.should(key);
  const near: Span = { from: before(course.horizon.from, by), until: course.horizon.until };
  return every === null ? [] : everySoOften(every.value, course.dayStart, near, course);
}

const runs = ({ programme }: Course): boolean =>
  programme.pieces.some((piece) => piece.gives.kind === 'rate');

const whileRunning = (course: Course, key: EveryKey, by: Duration): readonly Instant[] =>
  runs(course) ? dueEvery(course, key, by).filter((at) => isRunning(course.programme, at)) : [];

const feedLumen = ({ order }: Course): Lumen | null => lumenNamed(order, order.access?.feedBy ?? null);

/** A tube through nose or mouth whose tip is gastric: the only one whose place a pH can speak for. */
const answersToPh = (course: Course): boolean => {
  const device = course.order.access?.device;
  return (device === 'nasogastric' || device === 'orogastric') && feedLumen(course)?.tip === 'gastric';
};

/**
 * [PL41] The lumen from which a residual may be drawn: the one that feeds if its tip is gastric, else another gastric one
 * of the device (the gastric port of a gastro-jejunal tube). Never a post-pyloric one, unless policy allows it by name.
 */
function residualLumen(course: Course): Lumen | null {
  const feeding = feedLumen(course);
  if (feeding?.tip === 'gastric') return feeding;
  const gastric = course.order.access?.lumens.find((lumen) => lumen.tip === 'gastric') ?? null;
  const allowed = isPostPyloric(feeding) && course.local.may('residual.jejunal-allowed')?.value === true;
  return gastric ?? (allowed ? feeding : null);
}

/** Drawn, then flushed: one visit, because both have the same window. */
function residualAt(course: Course, lumen: Lumen, window: Window): readonly Task[] {
  const volume = waterBy(course.local.should('flush.residual.after'));
  return [
    task({ kind: 'measure-residual', about: lumen.name, rule: 'PL41' }, window),
    task({ kind: 'flush', about: 'residual', beside: 'after', volume, rule: 'PL41' }, window),
  ];
}

const isRoutine = ({ local }: Course): boolean => local.may('check.residual.routine')?.value === true;

function residualsByClock(course: Course): readonly Task[] {
  const lumen = isRoutine(course) ? residualLumen(course) : null;
  if (lumen === null) return [];
  const by = windowBy(course, 'window.check');
  return whileRunning(course, 'check.residual.every', by).flatMap((at) =>
    residualAt(course, lumen, around(at, by)),
  );
}

/**
 * [PL40] Head of bed and tube before feed starts at a rate, and while it runs: the tube by its mark, by pH only where policy
 * stops feed for it by the clock, or where feed has been off by its own schedule. What was looked at when feed started
 * need not be again within the window of that check.
 */
function feedChecks(course: Course): readonly Task[] {
  const by = windowBy(course, 'window.check');
  const canPh = answersToPh(course);
  const onClock = canPh && course.local.may('check.tube.on-clock')?.value === true ? 'ph' : 'mark';
  const starts = runningTasks(course).starts.filter((one) => one.kind === 'start-feed');
  // By the programme, not by what is still to be started: what is due must not depend on when somebody asks.
  const begun = stretchesOf(course.programme)
    .map(({ from }) => from)
    .filter((from) => from > course.programme.span.from);
  const looked = (at: Instant): boolean =>
    begun.some((from) => at >= from && at <= after(from, by)) || starts.some(({ nominal }) => nominal === at);
  const first = ({ nominal }: Task): string =>
    canPh && beginsDaily(course) && begun.includes(nominal) && heldUntil(course, nominal) === null
      ? 'ph'
      : onClock;
  const checks = (
    kind: TaskKind,
    key: EveryKey,
    about: (start: Task | null) => string | null,
  ): readonly Task[] => [
    ...(course.local.may(key) === null ? [] : starts).map((start) =>
      task({ kind, about: about(start), rule: 'PL40' }, start),
    ),
    ...whileRunning(course, key, by)
      .filter((at) => !looked(at))
      .map((at) => task({ kind, about: about(null), rule: 'PL40' }, around(at, by))),
  ];
  return [
    ...checks('check-position', 'check.position.every', () => null),
    ...checks('check-tube', 'check.tube.every', (start) => (start === null ? onClock : first(start))),
  ];
}

/** [PL40] Before a feed at a named time: head of bed, tube, and a residual where policy wants one. */
export function checksBeforeFeed(course: Course, feeding: Feeding): readonly Task[] {
  const window = feedWindow(course, feeding);
  const wanted = isRoutine(course) || course.local.may('check.residual.before-feed')?.value === true;
  const lumen = wanted ? residualLumen(course) : null;
  return [
    task({ kind: 'check-position', rule: 'PL40' }, window),
    task({ kind: 'check-tube', about: answersToPh(course) ? 'ph' : 'mark', rule: 'PL40' }, window),
    ...(lumen === null ? [] : residualAt(course, lumen, window)),
  ];
}

export const checksByClock = (course: Course): readonly Task[] => [
  ...feedChecks(course),
  ...residualsByClock(course),
];

const CARE: readonly (readonly [TaskKind, EveryKey, WindowKey])[] = [
  ['check-tolerance', 'check.tolerance.every', 'window.check'],
  ['mouth-care', 'care.mouth.every', 'window.check'],
  ['measure-glucose', 'check.glucose.every', 'window.daily'],
  ['take-bloods', 'check.bloods.every', 'window.daily'],
  ['weigh', 'check.weight.every', 'window.daily'],
];

/** [PL42] Under refeeding caution electrolytes more often, for as long after feeding began as policy has it. */
function electrolytes(course: Course): readonly Task[] {
  if (!course.order.refeedingCaution) return [];
  const lasts = course.local.should('refeeding.electrolytes.for');
  const by = windowBy(course, 'window.check');
  const since = course.standing.feedingSince ?? course.begins;
  if (lasts === null) return [];
  return dueEvery(course, 'refeeding.electrolytes.every', by)
    .filter((at) => at < after(since, lasts.value))
    .map((at) => task({ kind: 'take-bloods', about: 'electrolytes', rule: 'PL42' }, around(at, by)));
}

/** [PL42] What is due whether feed runs or not. */
export const careByClock = (course: Course): readonly Task[] => [
  ...CARE.flatMap(([kind, every, window]) => {
    const by = windowBy(course, window);
    return dueEvery(course, every, by).map((at) => task({ kind, rule: 'PL42' }, around(at, by)));
  }),
  ...electrolytes(course),
];
