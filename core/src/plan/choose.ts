/**
 * Who comes when and what is hung when? The tasks and the feed of a course put to the optimum, and its answer brought back
 * into times: a chain of containers, or a pour for each feed, or visits alone.
 */
import { after, instant, within } from '../base/instant.ts';
import { NOTHING, subtract, volume } from '../base/volume.ts';
import { solveChain } from './containers/chain.ts';
import { type Ground, needsOn, type Up } from './containers/demand.ts';
import { fillingOf } from './containers/fill.ts';
import { type FixedLimit, plannedDown } from './containers/limits.ts';
import { type Need, needBetween, needOf } from './containers/need.ts';
import { type PouredFeed, pourPerFeed } from './containers/per-feed.ts';
import type { Paces } from './containers/planned.ts';
import { setDue } from './containers/sets.ts';
import { tellChain, tellUp } from './containers/tell-chain.ts';
import type { Course } from './course.ts';
import { type Hanging, lifeOf, type Prepared } from './course-for.ts';
import { type Grid, protectedSlots, SLOT } from './grid.ts';
import { optimum } from './optimum/optimum.ts';
import type { Obstacle, Optimum, PlannedVisit, TaskWindow } from './optimum/problem.ts';
import type { Infeasible, PlannedContainer, PlanRequest, Task } from './plan.ts';
import { taskId } from './tasks/due.ts';
import { feedingsOf, givenAs, isPouredPerFeed } from './tasks/feeding.ts';

export type Chosen = {
  readonly planned: readonly PlannedVisit[];
  readonly containers: readonly PlannedContainer[];
  readonly infeasible: readonly Infeasible[];
};

/** As the optimum counts: from slot 0; what was due before then is due then. */
function windowOf(grid: Grid, { earliest, nominal, latest }: Task): TaskWindow {
  const from = grid.span.from;
  const least = Math.min(Math.max(nominal, earliest), latest);
  return { earliest: earliest - from, nominal: least - from, latest: latest - from };
}

const obstacleOf =
  (grid: Grid, tasks: readonly Task[], feed: string) =>
  (obstacle: Obstacle): Infeasible => {
    const { code } = obstacle;
    const rule = 'PL6';
    if ('task' in obstacle) {
      const about = tasks[obstacle.task]?.kind ?? '';
      const at = obstacle.slot === null ? null : grid.at(obstacle.slot);
      return { rule, code, about, at, data: { task: tasks[obstacle.task]?.id, done: at !== null } };
    }
    const at = grid.at(obstacle.slot);
    return 'lost' in obstacle
      ? { rule, code, about: feed, at, data: { until: grid.at(obstacle.until), lost: obstacle.lost } }
      : { rule, code, about: feed, at, data: {} };
  };

/** What the container now up is good for: nothing, if what is in it is not what is ordered now. */
function upNow({ standing, ordered }: Course, hanging: Hanging, grid: Grid, need: Need): Up | null {
  const up = standing.container;
  if (up === null || up.feed !== ordered.id) return null;
  const { limits, sets } = hanging;
  const spent = needBetween(need, { from: standing.at, until: grid.span.from });
  const due = sets.kind === 'timed' && sets.putUpAt !== null ? [setDue(sets.putUpAt, sets.limit).at] : [];
  const own = up.comesDownBy === null ? [] : [up.comesDownBy];
  return {
    remaining: volume(Math.max(0, subtract(up.remaining, spent))),
    downBy: instant(Math.min(plannedDown(limits, up.putUpAt), ...own, ...due)),
  };
}

/** A container that is put up with a new set hangs no longer than the set may: its limit is one more of the container's. */
function limitsOf({ limits, sets }: Hanging): Hanging['limits'] {
  if (sets.kind === 'none') return limits;
  const { value: lasts, basis } = sets.limit;
  return { ...limits, hang: [...limits.hang, { because: 'set-limit', symbol: 'H_set', lasts, basis }] };
}

/** What is said of any container of this course. */
const tellingOf = (hanging: Hanging, feed: string) => ({
  limits: hanging.sets.kind === 'with-each' ? limitsOf(hanging) : hanging.limits,
  feed,
  closed: hanging.spiked,
});

/** A pour that is up comes down when the feed that it was poured for is over. */
function pourUp(
  { course, hanging }: Prepared,
  next: PlannedContainer | undefined,
): readonly PlannedContainer[] {
  const { standing, ordered, feed, programme } = course;
  const up = standing.container;
  if (up === null || up.feed !== ordered.id) return [];
  const now = programme.pieces.find((piece) => within(piece, standing.at));
  const end: FixedLimit = {
    because: 'feed-ends',
    at: now?.until ?? standing.at,
    basis: { kind: 'order', path: 'regimen' },
  };
  const lowest = needOf(programme);
  const telling = { ...tellingOf(hanging, feed.id), paces: { lowest, highest: lowest } };
  return [tellUp(telling, up, standing.at, next?.putUpAt ?? null, [end])];
}

export type Choosing = {
  readonly prepared: Prepared;
  readonly request: PlanRequest;
  readonly grid: Grid;
  readonly tasks: readonly Task[];
};

function chooseChain({ prepared, request, grid, tasks }: Choosing): Chosen {
  const { course, hanging, highest } = prepared;
  const { standing, feed } = course;
  const lowest = needOf(course.programme);
  const paces: Paces = { lowest, highest: highest === course.programme ? lowest : needOf(highest) };
  const own = { ...hanging, limits: limitsOf(hanging) };
  const up = upNow(course, own, grid, lowest);
  const { until } = grid.span;
  const ground: Ground = {
    grid,
    need: lowest,
    needs: needsOn(grid, lowest),
    limits: own.limits,
    sets: hanging.sets,
    filling: fillingOf(hanging.pouring),
    up,
    ends: needBetween(lowest, { from: until, until: after(until, lifeOf(own.limits)) }) === NOTHING,
  };
  const solved = solveChain(ground, {
    tasks: tasks.map((one) => windowOf(grid, one)),
    protectedSlots: protectedSlots(grid, request.protectedTimes ?? []),
  });
  const telling = { ...tellingOf(hanging, feed.id), ground, paces, pouring: hanging.pouring };
  return {
    planned: solved.optimum.visits,
    containers: tellChain(telling, solved, up === null ? null : standing.container, standing.at),
    infeasible: solved.optimum.obstacles.map(obstacleOf(grid, tasks, feed.id)),
  };
}

/** The visits alone. */
function visitsAlone({ request, grid, tasks }: Choosing): Optimum {
  return optimum({
    slots: grid.slots,
    slotLength: SLOT,
    protectedSlots: protectedSlots(grid, request.protectedTimes ?? []),
    tasks: tasks.map((one) => windowOf(grid, one)),
    feed: null,
  });
}

function choosePours(choosing: Choosing): Chosen {
  const { prepared, grid, tasks } = choosing;
  const { course, hanging } = prepared;
  const { visits, obstacles } = visitsAlone(choosing);
  const visitOf = new Map(
    visits.flatMap((visit) => visit.tasks.map((index) => [tasks[index]?.id, grid.at(visit.slot)] as const)),
  );
  const feeds = feedingsOf(course).flatMap((feeding): readonly PouredFeed[] => {
    const at = visitOf.get(taskId(givenAs(course, feeding), feeding.whole.from));
    return at === undefined ? [] : [{ feeding, at }];
  });
  const poured = pourPerFeed({ ...hanging, feed: course.feed.id, closed: hanging.spiked }, feeds);
  return {
    planned: visits,
    containers: [...pourUp(prepared, poured.containers[0]), ...poured.containers],
    infeasible: [...obstacles.map(obstacleOf(grid, tasks, course.feed.id)), ...poured.infeasible],
  };
}

/** [PL1] Visits and containers together. */
export const choose = (choosing: Choosing): Chosen =>
  isPouredPerFeed(choosing.prepared.course) ? choosePours(choosing) : chooseChain(choosing);
