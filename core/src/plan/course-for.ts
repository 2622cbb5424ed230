/**
 * Can this be planned at all? The order judged, the feed found, local policy asked for what every plan needs: out of it
 * comes a course with what its containers are like, or only the problems that stand in the way.
 */
import {
  after,
  before,
  DAY,
  type Duration,
  duration,
  type Instant,
  later,
  MINUTE,
  type Span,
} from '../base/instant.ts';
import { type Feed, feedById } from '../feeds/feed.ts';
import { judgeOrder, mayBePlanned } from '../order/judge.ts';
import type { Order, Problem } from '../order/order.ts';
import { policyContext } from '../order/review.ts';
import { feedingDays, type Pace } from '../programme/frame.ts';
import { heldDuring } from '../programme/holds.ts';
import type { Programme } from '../programme/programme.ts';
import { programmeOf } from '../programme/programme-of.ts';
import type { Standing } from '../standing/standing.ts';
import type { Pouring } from './containers/fill.ts';
import { type ContainerLimits, isSpiked, limitsFor } from './containers/limits.ts';
import { type SetRule, setRule } from './containers/sets.ts';
import type { Course } from './course.ts';
import { feedingDay, gridUp } from './grid.ts';
import { type Local, localFor } from './local.ts';
import type { PlanRequest } from './plan.ts';

/** What the containers of a course are like. */
export type Hanging = {
  readonly spiked: boolean;
  readonly limits: ContainerLimits;
  readonly sets: SetRule;
  readonly pouring: Pouring;
};

export type Prepared = {
  readonly course: Course;
  readonly hanging: Hanging;
  /** The same course with every step up taken as soon as it may be; the course's own where nothing advances. */
  readonly highest: Programme;
};

export type Preparation = {
  /** What was found so far: making the plan may find more that local policy does not say. */
  readonly problems: () => readonly Problem[];
  readonly span: Span;
  readonly prepared: Prepared | null;
};

/** [PL45] A closed container comes in a size; a feed list that names none leaves nothing to spike. */
const noPack = (feed: Feed): Problem => ({
  rule: 'PL45',
  level: 'stop',
  code: 'plan/no-pack',
  path: ['feeds', feed.id, 'packs'],
  data: { feed: feed.id },
});

function pouringFor(order: Order, feed: Feed, spiked: boolean, local: Local): Pouring | Problem | null {
  if (spiked) {
    const sizes = feed.packs.filter((pack) => pack.kind === 'container').map((pack) => pack.volume);
    const basis = { kind: 'feed-list', feed: feed.id, field: 'packs' } as const;
    return sizes.length === 0 ? noPack(feed) : { kind: 'packs', sizes, basis };
  }
  const step = local.must('pour.step');
  // A syringe is filled again and again: a bolus knows no capacity.
  const capacity = order.regimen?.kind === 'bolus' ? null : local.must('bag.capacity');
  if (step === null || (capacity === null && order.regimen?.kind !== 'bolus')) return null;
  return { kind: 'poured', capacity, step };
}

const isProblem = (one: Pouring | Problem | null): one is Problem => one !== null && 'level' in one;

type Ready = {
  readonly problems: readonly Problem[];
  readonly hanging: Hanging | null;
};

/** What a second bag of water cannot be planned without. */
const WATER_BAG_KEYS = ['hang.water', 'bag.capacity', 'pour.step'] as const;

function hangingFor({ order, standing }: PlanRequest, feed: Feed, local: Local): Ready {
  const ordered = order.feed;
  if (ordered === null) return { problems: [], hanging: null };
  const spiked = isSpiked(feed, ordered);
  const limits = limitsFor(feed, ordered, local);
  const sets = setRule(order, spiked, standing.set?.putUpAt ?? null, local);
  const pouring = pouringFor(order, feed, spiked, local);
  if (isProblem(pouring)) return { problems: [pouring], hanging: null };
  const bagged = order.water?.given.some((one) => one.kind === 'second-bag') ?? false;
  const lacksWater = bagged && WATER_BAG_KEYS.map((key) => local.must(key)).includes(null);
  const complete = !lacksWater && sets !== null && pouring !== null && limits.hang.length > 0;
  return { problems: [], hanging: complete ? { spiked, limits, sets, pouring } : null };
}

/** The longest that a container can hang: the shortest of its hang limits. */
export const lifeOf = ({ hang }: ContainerLimits): Duration =>
  duration(hang.reduce((least, one) => Math.min(least, one.lasts), DAY * 7));

const WINDOWS = ['window.feed', 'window.flush', 'window.check'] as const;

/**
 * What was due a little while ago may still be done: feed is looked at as far back as a window reaches, to where it was
 * stopped for a medicine that is not given yet, and to where it started with a check that stands for one still due.
 */
const lookBack = (order: Order, local: Local): Duration =>
  duration(
    Math.max(
      ...WINDOWS.map((key) => local.may(key)?.value ?? 0),
      2 * (local.may('window.check')?.value ?? 0) + MINUTE,
      ...order.medicines.map((one) => one.holdBefore + MINUTE),
    ),
  );

function courseOf(
  request: PlanRequest,
  feed: Feed,
  local: Local,
  span: Span,
  hanging: Hanging,
): Prepared | null {
  const { order, standing, policy } = request;
  const dayStart = local.must('day.start');
  if (order.feed === null || order.regimen === null || dayStart === null) return null;
  const day = feedingDay(standing.at, dayStart.value, order.zone);
  const horizon: Span = { from: span.from, until: later(span.until, day.until) };
  const regimen = order.regimen;
  // With nothing up nothing can run before somebody comes.
  const feedFrom = standing.container === null ? gridUp(span.from) : span.from;
  const fed: Span = {
    from: before(feedFrom, lookBack(order, local)),
    until: after(horizon.until, lifeOf(hanging.limits)),
  };
  const programme = (pace: Pace): Programme => programmeOf({ order, policy, standing, span: fed, pace });
  const lowest = programme('lowest');
  const course: Course = {
    order,
    ordered: order.feed,
    regimen,
    feed,
    local,
    standing,
    zone: order.zone,
    dayStart: dayStart.value,
    span,
    day,
    horizon,
    feedFrom,
    held: heldDuring(order, feedingDays(fed, dayStart.value, order.zone)),
    begins: beginOf(request),
    programme: lowest,
  };
  return { course, hanging, highest: regimen.advance === null ? lowest : programme('highest') };
}

/** Somebody of whom nothing is recorded: what was due before now was due to nobody. */
const isBlank = ({ feedingSince, container, set, running, done }: Standing): boolean =>
  feedingSince === null && container === null && set === null && running === null && done.size === 0;

/** From when things are due in this plan: not before the order, nor before anybody planned it. */
function beginOf({ order, standing, since }: PlanRequest): Instant {
  const begins = order.startsAt ?? standing.feedingSince ?? standing.at;
  const planned = since ?? (isBlank(standing) ? standing.at : begins);
  return later(begins, planned);
}

/** [PL46] The end of a plan, unless asked otherwise: the end of the feeding day in which it begins. */
function spanOf({ standing, until, order }: PlanRequest, local: Local): Span {
  const start = local.must('day.start');
  const end =
    start === null ? after(standing.at, DAY) : feedingDay(standing.at, start.value, order.zone).until;
  return { from: standing.at, until: later(until ?? end, standing.at) };
}

/** Everything that a plan needs to be known, or what is missing of it. */
export function prepare(request: PlanRequest): Preparation {
  const { order, feeds, policy, standing } = request;
  const local = localFor(policy, policyContext(order, standing.at));
  const judged = [...(request.found ?? []), ...judgeOrder(order, feeds, policy, standing.at)];
  const span = spanOf(request, local);
  const feed = order.feed === null ? null : feedById(feeds, order.feed.id);
  const ready = feed === null ? { problems: [], hanging: null } : hangingFor(request, feed, local);
  const silent = new Set(judged.filter((one) => one.level === 'note').map((one) => one.data.key));
  const problems = (): readonly Problem[] => [
    ...judged,
    ...ready.problems,
    ...local.missed().filter((one) => one.level === 'stop' || !silent.has(one.data.key)),
  ];
  const mayBe = feed !== null && ready.hanging !== null && mayBePlanned(problems());
  const prepared = mayBe ? courseOf(request, feed, local, span, ready.hanging) : null;
  return { problems, span, prepared };
}
