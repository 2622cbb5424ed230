/**
 * What is true of a course at this instant? Each reading looked at, once: what the planner takes, and beside it everything
 * that is shown, advised upon or handed over.
 */
import { after, before, DAY, duration, earlier, type Instant, type Span, within } from '../base/instant.ts';
import { NOTHING, timeToGive, type Volume, volume } from '../base/volume.ts';
import type { OrderInForce } from '../record/orders.ts';
import { type Account, accountOver, type View } from './account.ts';
import { type Answer, type Course, sourceOf } from './course.ts';
import { type ContainerAccount, containerAccounts, contradictionsAt } from './disagreements.ts';
import { type IntoleranceSign, openIntolerance, type ResidualRun, residualRun } from './intolerance.ts';
import { type Container, forPatient, type PreparedContainer } from './readings/containers.ts';
import type { Contradiction } from './readings/contradictions.ts';
import { cut, roomIn } from './readings/delivery.ts';
import { type Interruption, interruptionsWithin } from './readings/interruptions.ts';
import { advancementOf, orderInForce, orderOf } from './readings/orders.ts';
import type { LabValue, PersonState, Weight } from './readings/person.ts';
import type { Residual, Stool, ToleranceState, Vomit } from './readings/tolerance.ts';
import { movedSinceConfirmed, type PositionState, type TubeState } from './readings/tube.ts';
import { receivedBy, waterBy } from './received.ts';
import { contextAt, dayBefore, feedingDayAt, shiftsOf } from './spans.ts';
import type { ContainerUp, Standing } from './standing.ts';
import { sumWithin } from './stretch.ts';
import { lastOf, since, told } from './trail.ts';

/** What the planner takes, and all else that is known. */
export type CourseStanding = Standing & {
  readonly orderInForce: OrderInForce;
  /** The present feeding day, the one before it, and the present shift; null where policy does not say when they begin. */
  readonly today: Account | null;
  readonly yesterday: Account | null;
  readonly shift: Account | null;
  /** When the container up runs dry at the rate that runs; null where nothing runs, or nothing is known to be up. */
  readonly runsDryAt: Instant | null;
  /** By counter, by rate × time and by what was left, of each container, the latest last. */
  readonly containers: readonly ContainerAccount[];
  readonly prepared: readonly PreparedContainer[];
  /** Feed that stands still though it had run. */
  readonly interruption: Interruption | null;
  readonly lineClosed: Course['lineClosed'];
  readonly readBack: Course['readBack'];
  readonly tube: TubeState & { readonly movedSinceConfirmed: boolean };
  readonly position: PositionState;
  readonly tolerance: Omit<ToleranceState, 'residuals' | 'vomits' | 'stools'>;
  readonly residuals: readonly Residual[];
  readonly vomits: readonly Vomit[];
  readonly stools: readonly Stool[];
  readonly residual: ResidualRun;
  readonly intolerance: readonly IntoleranceSign[];
  readonly person: Omit<PersonState, 'weights' | 'labs'>;
  readonly weights: readonly Weight[];
  readonly labs: readonly LabValue[];
  readonly stepDeclined: Course['orders']['declined'];
  readonly mouthCareAt: Instant | null;
  readonly answers: readonly Answer[];
  readonly contradictions: readonly Contradiction[];
  readonly entries: number;
  readonly unknown: Readonly<Record<string, number>>;
};

/** A task's id holds its time, and no window is as wide as this: what was done earlier cannot come up again. */
const DONE_FOR = duration(7 * DAY);

const doneLately = (course: Course, at: Instant): ReadonlySet<string> =>
  new Set(since(course.done, (one) => one.at > before(at, DONE_FOR)).map((one) => one.task));

const up = (container: Container, remaining: Volume): ContainerUp => ({
  id: container.id,
  feed: container.feed,
  putUpAt: container.putUpAt,
  comesDownBy: container.comesDownBy,
  filled: container.filled,
  remaining,
});

/** [ST10] The container up with what is still in it by counter and estimate, and when that runs dry. */
function containerAt(course: Course, at: Instant): Pick<CourseStanding, 'container' | 'runsDryAt'> {
  const { feedUp } = course.containers;
  if (feedUp === null) return { container: null, runsDryAt: null };
  const source = sourceOf(course);
  const now = cut(course.delivery, at, source);
  const remaining = roomIn(now, source);
  const lasts = now.running === null ? null : timeToGive(remaining, now.running.rate);
  // Empty already: since the last that it gave.
  const gaveLast = lastOf(now.pending)?.until ?? at;
  const from = remaining > 0 ? at : earlier(gaveLast, at);
  return { container: up(feedUp, remaining), runsDryAt: lasts === null ? null : after(from, lasts) };
}

function waterBagAt({ containers: { waterUp }, liquids }: Course): ContainerUp | null {
  if (waterUp === null) return null;
  const given = liquids.waterCounter.ofBag;
  return up(waterUp, volume(Math.max(0, forPatient(waterUp) - given)));
}

/** What the planner takes. */
export function plannerStanding(course: Course, view: View): Standing {
  const { at, policy, zone } = view;
  const day = feedingDayAt(course, at, view);
  const { delivery, containers, orders } = course;
  const order = orderOf(orders, at);
  return {
    at,
    running:
      delivery.running === null ? null : { rate: delivery.running.rate, since: delivery.running.since },
    container: containerAt(course, at).container,
    waterBag: waterBagAt(course),
    set: containers.set,
    cartons: containers.cartons,
    feedingSince: delivery.feedingSince,
    receivedToday: day === null ? NOTHING : sumWithin(receivedBy(course, at).list, day),
    waterToday: day === null ? NOTHING : sumWithin(waterBy(course, at), day),
    advancement: advancementOf(orders, order?.id ?? null, at),
    openIntolerance: openIntolerance(course, policy, contextAt(course, at, zone)).length > 0,
    done: doneLately(course, at),
  };
}

/** The one that is not over, from its beginning. */
const openInterruption = ({ interruptions }: Course, at: Instant): Interruption | null => {
  const { open } = interruptions;
  return open === null
    ? null
    : (interruptionsWithin(interruptions, { from: open.from, until: at }).at(-1) ?? null);
};

/**
 * Everything that is true of a course at an instant.
 * @param course what the entries come to that happened by then; later ones must not be in it.
 */
export function standingAt(course: Course, view: View): CourseStanding {
  const { at, policy, zone } = view;
  const { residuals, vomits, stools, ...tolerance } = course.tolerance;
  const { weights, labs, ...person } = course.person;
  const context = contextAt(course, at, zone);
  const day = feedingDayAt(course, at, view);
  const over = (span: Span | null): Account | null =>
    span === null ? null : accountOver(course, span, view);
  const shifts = day === null ? [] : shiftsOf(course, day, view);
  return {
    ...plannerStanding(course, view),
    orderInForce: orderInForce(course.orders, at),
    today: over(day),
    yesterday: over(day === null ? null : dayBefore(course, day, view)),
    shift: over(shifts.find((one) => within(one, at)) ?? null),
    runsDryAt: containerAt(course, at).runsDryAt,
    containers: containerAccounts(course, at),
    prepared: course.containers.prepared,
    interruption: openInterruption(course, at),
    lineClosed: course.lineClosed,
    readBack: course.readBack,
    tube: { ...course.tube, movedSinceConfirmed: movedSinceConfirmed(course.tube) },
    position: course.position,
    tolerance,
    residuals: told(residuals),
    vomits: told(vomits),
    stools: told(stools),
    residual: residualRun(course, policy, context),
    intolerance: openIntolerance(course, policy, context),
    person,
    weights: told(weights),
    labs: told(labs),
    stepDeclined: course.orders.declined,
    mouthCareAt: course.mouthCareAt,
    answers: told(course.answers),
    contradictions: contradictionsAt(course, policy, context),
    entries: course.entries,
    unknown: course.unknown,
  };
}
