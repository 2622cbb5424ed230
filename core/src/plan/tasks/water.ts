/**
 * When is water given, and how much? By the clock and around feeds, each as the order says and, where it does not say, as
 * local policy does. Water that the pump draws from a second bag is nobody's task: only its bag is.
 */
import {
  before,
  type Duration,
  duration,
  earlier,
  type Instant,
  later,
  type Span,
  within,
} from '../../base/instant.ts';
import { inMl, sum, type Volume } from '../../base/volume.ts';
import { type Basis, input, shownVolume, type Worked, worked } from '../../base/working.ts';
import { timesWithin } from '../../base/zone.ts';
import type { Problem, WaterGiven } from '../../order/order.ts';
import type { Course } from '../course.ts';
import type { Said } from '../local.ts';
import type { Task } from '../plan.ts';
import { around, everySoOften, task, type Window } from './due.ts';
import { beginsDaily, heldUntil, isRunning, stretchesOf } from './feeding.ts';

export const waterOf = (value: Volume, basis: Basis): Worked<Volume> =>
  worked(value, shownVolume, {
    symbol: 'V_water',
    equation: 'V_water = V',
    inputs: [input('V', shownVolume(value), basis)],
    rule: 'PL34',
    basis,
  });

/** A volume that policy gives, shown with its row; null where it says none, and then the flush stands without a number. */
export const waterBy = (said: Said<Volume> | null): Worked<Volume> | null =>
  said === null ? null : waterOf(said.value, said.basis);

const given = (course: Course): readonly WaterGiven[] => course.order.water?.given ?? [];

/** Holds during which nothing goes down the tube but medicine: somebody fasts, is away, or must not be fed. */
const closedTo = ({ order }: Course): readonly Span[] =>
  order.holds
    .filter((hold) => hold.why !== 'medicine')
    .map(({ from, until }) => ({ from, until: until ?? (Number.MAX_SAFE_INTEGER as Instant) }));

/**
 * [PL35] A window with a hold cut out of it: what would fall inside is done when the hold is over if the window reaches so
 * far, otherwise not at all.
 */
export function outsideHolds(window: Window, course: Course): Window | null {
  const holds = closedTo(course);
  const { earliest, nominal, latest } = window;
  const hold = holds.find((span) => nominal > span.from && nominal < span.until);
  if (hold === undefined) {
    return {
      earliest: holds.reduce((at, span) => (span.until <= nominal ? later(at, span.until) : at), earliest),
      nominal,
      latest: holds.reduce((at, span) => (span.from >= nominal ? earlier(at, span.from) : at), latest),
    };
  }
  return hold.until <= latest ? { earliest: hold.until, nominal: hold.until, latest } : null;
}

const dueNear = (course: Course, by: Duration): Span => ({
  from: before(course.horizon.from, by),
  until: course.horizon.until,
});

const flushWindow = (course: Course): Duration => course.local.should('window.flush')?.value ?? duration(0);

const orderBasis = (index: number, field: string): Basis => ({
  kind: 'order',
  path: `water.given.${index}.${field}`,
});

/** Water that the order wants at a moment, with the window that holds leave for it. */
type Ordered = { readonly nominal: Instant; readonly task: Task | null; readonly volume: Volume };

function orderedByClock(course: Course): readonly Ordered[] {
  const window = flushWindow(course);
  const near = dueNear(course, window);
  return given(course).flatMap((one, index) => {
    if (one.kind !== 'interval' && one.kind !== 'times') return [];
    const volume = waterOf(one.volume, orderBasis(index, 'volumeMl'));
    const kind = one.kind === 'interval' ? 'flush' : 'give-water';
    const due =
      one.kind === 'interval'
        ? everySoOften(one.every, one.from ?? course.dayStart, near, course)
        : timesWithin(one.times, later(near.from, course.begins), near.until, course.zone);
    return due.map((nominal): Ordered => {
      const outside = outsideHolds(around(nominal, window), course);
      const what = { kind, volume, dueAt: nominal, rule: 'PL34' } as const;
      return { nominal, task: outside === null ? null : task(what, outside), volume: one.volume };
    });
  });
}

/** [PL35] Ordered water that a hold leaves no room for is said: how often, and how much. */
export function waterLeftOut(course: Course): Problem | null {
  const { endsAt } = course.order;
  const lost = orderedByClock(course).filter(
    ({ task, nominal }) =>
      task === null && within(course.span, nominal) && (endsAt === null || nominal < endsAt),
  );
  if (lost.length === 0) return null;
  const volume = inMl(sum(lost.map((one) => one.volume)));
  return {
    rule: 'PL35',
    level: 'note',
    code: 'plan/water-in-hold',
    path: ['holds'],
    data: { times: lost.length, volume, unit: 'mL' },
  };
}

/** [PL36] By policy a tube is flushed every so often while feed runs through it; where feed stops and starts it is anyway. */
function policyByClock(course: Course): readonly Task[] {
  const { local, programme } = course;
  const byOrder = given(course).some((one) => one.kind !== 'around-feeds');
  if (byOrder || !programme.pieces.some((piece) => piece.gives.kind === 'rate')) return [];
  const every = local.should('flush.continuous.every');
  const volume = waterBy(local.should('flush.continuous.volume'));
  if (every === null) return [];
  const window = flushWindow(course);
  const starts = stretchesOf(programme).filter(
    ({ from }) => beginsDaily(course) || heldUntil(course, from) !== null,
  );
  const flushed = new Set(starts.map(({ from }) => from));
  return everySoOften(every.value, course.dayStart, dueNear(course, window), course)
    .filter((at) => isRunning(programme, at) && !flushed.has(at))
    .map((at) => task({ kind: 'flush', volume, rule: 'PL36' }, around(at, window)));
}

export const waterByClock = (course: Course): readonly Task[] => [
  ...orderedByClock(course).flatMap((one) => one.task ?? []),
  ...policyByClock(course),
];

export type WaterAround = {
  readonly before: Worked<Volume> | null;
  readonly after: Worked<Volume> | null;
};

/** [PL34] Water before and after a feed, by the order or else by policy; null for an amount that policy does not say. */
export function waterAround(course: Course): WaterAround {
  const index = given(course).findIndex((one) => one.kind === 'around-feeds');
  const ordered = given(course)[index];
  if (ordered?.kind === 'around-feeds') {
    return {
      before: waterOf(ordered.before, orderBasis(index, 'beforeMl')),
      after: waterOf(ordered.after, orderBasis(index, 'afterMl')),
    };
  }
  return {
    before: waterBy(course.local.should('flush.feed.before')),
    after: waterBy(course.local.should('flush.feed.after')),
  };
}
