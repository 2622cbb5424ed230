/**
 * When is the pump's second bag of water renewed, and what goes into it? It gives its water by itself every so often while
 * feed runs; it is a container of its own, with the limit of water. It is renewed when its limit or what it holds is
 * reached, at the last point of the grid before: other tasks are moved to it, not it to them.
 */
import { after, before, duration, type Instant, instant, later, type Span } from '../../base/instant.ts';
import { NOTHING, type Volume, volume } from '../../base/volume.ts';
import { ARITHMETIC, type Basis } from '../../base/working.ts';
import type { WaterGiven } from '../../order/order.ts';
import type { Programme } from '../../programme/programme.ts';
import type { Course } from '../course.ts';
import { gridUp } from '../grid.ts';
import type { Said } from '../local.ts';
import type { PlannedContainer, Task } from '../plan.ts';
import { everySoOften, stopping, task } from '../tasks/due.ts';
import { isRunning, startWindow, stretchesOf } from '../tasks/feeding.ts';
import { waterOf } from '../tasks/water.ts';
import { capacityOf, type Pouring, recordedContent, recordedFill, workedFill } from './fill.ts';
import { type ContainerLimits, plannedDown, takeDown } from './limits.ts';
import { type Need, needBetween, needOf, whenGiven, workedNeed } from './need.ts';
import { contentOf, plannedContainer } from './planned.ts';
import { NO_PRIME } from './sets.ts';

type SecondBag = Extract<WaterGiven, { kind: 'second-bag' }>;

export type WaterPlan = {
  readonly need: Need;
  readonly limits: ContainerLimits;
  readonly pouring: Extract<Pouring, { kind: 'poured' }>;
  readonly tasks: readonly Task[];
};

/** Each flush of the pump as water given at its moment, while feed runs. */
function flushesOf(course: Course, bag: SecondBag, basis: Basis): Programme {
  const { working } = waterOf(bag.volume, basis);
  const span: Span = { from: course.standing.at, until: course.programme.span.until };
  const flushed: Span = { from: after(span.from, duration(1)), until: after(span.until, duration(1)) };
  const pieces = everySoOften(bag.every, course.dayStart, flushed, course)
    .map((at) => ({ from: before(at, duration(1)), until: at }))
    .filter((piece) => isRunning(course.programme, piece.from))
    .map((piece) => ({
      ...piece,
      gives: { kind: 'volume', volume: bag.volume, whole: piece, feed: 'water' } as const,
      working,
    }));
  return { span, pieces, gaps: [], shortfall: NOTHING };
}

const limitsOf = (limit: Said<ReturnType<typeof duration>>): ContainerLimits => ({
  hang: [{ because: 'hang-limit', symbol: 'H', lasts: limit.value, basis: limit.basis }],
  fixed: [],
  margin: { value: duration(0), basis: ARITHMETIC },
});

/** When a bag put up at the earliest with so much in it must be renewed at the latest. */
function renewBy(
  need: Need,
  limits: ContainerLimits,
  putUpAt: Instant,
  from: Instant,
  content: Volume,
): Instant {
  const down = plannedDown(limits, putUpAt);
  // One flush more than is in it: the bag lasts up to the moment at which that would be due.
  const dry = whenGiven(need, from, volume(content + 1));
  return dry === null || dry > down ? down : before(dry, duration(1));
}

function putUpTasks(course: Course, { need, limits, pouring }: Omit<WaterPlan, 'tasks'>): readonly Task[] {
  const { standing, span, programme, feedFrom } = course;
  const bag = standing.waterBag;
  const most = volume(Math.floor(capacityOf(pouring) / pouring.step.value) * pouring.step.value);
  const first = stretchesOf(programme).find((stretch) => stretch.until > feedFrom);
  let due =
    bag !== null
      ? renewBy(need, limits, bag.putUpAt, standing.at, bag.remaining)
      : first === undefined
        ? null
        : gridUp(first.from) >= feedFrom
          ? first.from
          : feedFrom;
  const tasks: Task[] = [];
  const wanted = (from: Instant): boolean => needBetween(need, { from, until: span.until }) > 0;
  while (due !== null && due < span.until && wanted(due)) {
    const isFirst = tasks.length === 0 && bag === null;
    const window = isFirst ? startWindow(course, due) : stopping(later(due, standing.at));
    tasks.push(task({ kind: 'put-up-water-bag', rule: 'PL44' }, window));
    // Wherever in its window it is put up, the next one is not reckoned from later than that.
    const putUpAt = later(window.earliest, standing.at);
    const next = renewBy(need, limits, putUpAt, putUpAt, most);
    due = next > due ? next : null;
  }
  return tasks;
}

/** [PL44] The second bag of this order, or null where it has none. */
export function waterPlan(course: Course): WaterPlan | null {
  const given = course.order.water?.given ?? [];
  const index = given.findIndex((one) => one.kind === 'second-bag');
  const bag = given[index];
  if (bag?.kind !== 'second-bag') return null;
  const limit = course.local.must('hang.water');
  const capacity = course.local.must('bag.capacity');
  const step = course.local.must('pour.step');
  if (limit === null || capacity === null || step === null) return null;
  const basis: Basis = { kind: 'order', path: `water.given.${index}.volumeMl` };
  const plan = {
    need: needOf(flushesOf(course, bag, basis)),
    limits: limitsOf(limit),
    pouring: { kind: 'poured', capacity, step } as const,
  };
  return { ...plan, tasks: putUpTasks(course, plan) };
}

function newBag(
  { need, limits, pouring }: WaterPlan,
  putUpAt: Instant,
  nextAt: Instant | null,
): PlannedContainer {
  const down = takeDown(limits, putUpAt);
  const until = nextAt ?? down.by.value;
  const needed = workedNeed(need, { from: putUpAt, until });
  const step = pouring.step.value;
  const most = Math.floor(capacityOf(pouring) / step) * step;
  const fill = volume(Math.min(Math.ceil(needed.value / step) * step, most));
  const filled = workedFill(pouring, { fill, prime: NO_PRIME, need: needed, asMuchAsLasts: fill === most });
  return plannedContainer(
    {
      putUpAt,
      alreadyUp: false,
      feed: 'water',
      closed: false,
      fill: filled,
      newSet: false,
      prime: NO_PRIME,
      content: contentOf(filled, NO_PRIME),
      givesFrom: putUpAt,
      down,
      nextAt,
    },
    { lowest: need, highest: need },
  );
}

/** The bags told in full, the one already up first. `renewals` are the visits at which a new one is put up. */
export function tellWaterBags(
  plan: WaterPlan,
  { standing }: Course,
  renewals: readonly Instant[],
): readonly PlannedContainer[] {
  const { waterBag: up, at } = standing;
  const fresh = renewals.map((one, index) => newBag(plan, one, renewals[index + 1] ?? null));
  if (up === null) return fresh;
  const told = plannedContainer(
    {
      putUpAt: up.putUpAt,
      alreadyUp: true,
      feed: 'water',
      closed: false,
      fill: recordedFill(up.filled, up.id),
      newSet: false,
      prime: NO_PRIME,
      content: recordedContent(up.remaining, up.id),
      givesFrom: at,
      down: takeDown(plan.limits, up.putUpAt),
      nextAt: renewals[0] ?? null,
    },
    { lowest: plan.need, highest: plan.need },
  );
  return [told, ...fresh];
}

/** What the second bag gives from now to a moment. */
export const waterByPump = (plan: WaterPlan | null, { standing }: Course, until: Instant): Volume =>
  plan === null ? NOTHING : needBetween(plan.need, { from: standing.at, until: instant(until) });
