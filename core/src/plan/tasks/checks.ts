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
import { type Feeding, feedWindow, isRunning } from './feeding.ts';
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

/** [PL40] Head of bed and tube while feed runs: the tube by its mark, by pH only where policy stops feed for it by the clock. */
function feedChecksByClock(course: Course): readonly Task[] {
  const by = windowBy(course, 'window.check');
  const about =
    answersToPh(course) && course.local.may('check.tube.on-clock')?.value === true ? 'ph' : 'mark';
  const at = (kind: TaskKind, what: string | null) => (nominal: Instant) =>
    task({ kind, about: what, rule: 'PL40' }, around(nominal, by));
  return [
    ...whileRunning(course, 'check.position.every', by).map(at('check-position', null)),
    ...whileRunning(course, 'check.tube.every', by).map(at('check-tube', about)),
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
  ...feedChecksByClock(course),
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
