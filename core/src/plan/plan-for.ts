/**
 * What should happen from now on? The order judged, its programme worked, everything due gathered; containers and visits
 * chosen together; cartons chosen for what is poured; and what the feeding day comes to.
 *
 *   order ─ judged ─> course ─┬─ programme ─> need ──┐
 *                             └─ tasks ──────────────┴─> optimum ─> containers, cartons, visits, day
 */
import { earlier, type Span } from '../base/instant.ts';
import { NOTHING, share, sum, type Volume } from '../base/volume.ts';
import { ARITHMETIC } from '../base/working.ts';
import type { Piece, Programme } from '../programme/programme.ts';
import { programmeOf } from '../programme/programme-of.ts';
import { choose } from './choose.ts';
import { chooseCartons } from './containers/cartons.ts';
import { withMix } from './containers/mix.ts';
import { type Need, needBetween, needOf } from './containers/need.ts';
import { downByCarton } from './containers/planned.ts';
import { tellWaterBags, type WaterPlan, waterByPump, waterPlan } from './containers/water-bags.ts';
import type { Course } from './course.ts';
import { type Prepared, prepare } from './course-for.ts';
import { type Grid, gridFor, gridUp } from './grid.ts';
import { dayTotals } from './nutrition.ts';
import type { Plan, PlannedContainer, PlanRequest, Task, Visit } from './plan.ts';
import { taskId } from './tasks/due.ts';
import { feedingsOf, givenAs, isPouredPerFeed } from './tasks/feeding.ts';
import { type Due, tasksOf } from './tasks/tasks.ts';
import { waterLeftOut } from './tasks/water.ts';
import { visitsOf } from './visits.ts';

/** Feed still to come until the end of the feeding day: what runs, and the feeds that are given or may still be. */
function stillToCome(course: Course, need: Need, due: readonly Task[]): Volume {
  const { programme, standing, day, feedFrom } = course;
  const rest: Span = { from: feedFrom, until: day.until };
  if (programme.pieces.every((piece) => piece.gives.kind === 'rate')) return needBetween(need, rest);
  const ids = new Set(due.map((one) => one.id));
  const feeds = feedingsOf(course).filter((one) => one.whole.from < day.until);
  return sum(
    feeds.map((feeding) => {
      const id = taskId(givenAs(course, feeding), feeding.whole.from);
      if (ids.has(id)) return feeding.volume.value;
      if (!standing.done.has(id) || feeding.whole.until <= rest.from) return NOTHING;
      return needBetween(need, { from: rest.from, until: feeding.whole.until });
    }),
  );
}

/** [PL33] A feed that began before the plan and is neither under way nor given any more does not run in it either. */
function withoutMissed(course: Course, programme: Programme, made: Made): Programme {
  const { from } = programme.span;
  const due = new Set(made.visits.flatMap(({ tasks }) => tasks.map((one) => one.id)));
  const missed = feedingsOf(course).filter((feeding) => {
    const id = taskId(givenAs(course, feeding), feeding.whole.from);
    return feeding.whole.from < from && !due.has(id) && !course.standing.done.has(id);
  });
  const isMissed = (piece: Piece): boolean =>
    piece.gives.kind === 'volume' && missed.some(({ whole }) => whole.until === piece.until);
  return { ...programme, pieces: programme.pieces.filter((piece) => !isMissed(piece)) };
}

/** [PL21] The cartons of each container that is poured, by the formula that goes into it. */
function withCartons(
  { course, hanging }: Prepared,
  containers: readonly PlannedContainer[],
  need: Need,
): readonly PlannedContainer[] {
  const { local, feed, ordered, standing, span } = course;
  const sizes = feed.packs.filter((pack) => pack.kind === 'carton').map((pack) => pack.volume);
  if (hanging.spiked || sizes.length === 0) return containers;
  const keeps = local.should('carton.keep')?.value ?? false;
  const keepFor = keeps ? local.should('carton.keep-for') : null;
  const poured = containers.filter((one) => !one.alreadyUp);
  const chosen = chooseCartons(
    poured.map((one) => ({
      at: one.putUpAt,
      until: earlier(one.nextAt ?? one.takeDownBy.value, one.takeDownBy.value),
      needs: share(one.fill.value, ordered.strength),
    })),
    {
      sizes,
      keepFor: keepFor?.value ?? null,
      opened: standing.cartons.filter((one) => one.feed === feed.id),
      end: span.until,
    },
  );
  const byContainer = new Map(poured.map((one, index) => [one, chosen[index]]));
  return containers.map((one) => {
    const cartons = byContainer.get(one);
    return cartons === undefined
      ? one
      : {
          ...downByCarton(one, cartons.oldestUntil, keepFor?.basis ?? ARITHMETIC, need),
          cartons: cartons.uses,
        };
  });
}

type Made = Pick<Plan, 'containers' | 'waterBags' | 'visits' | 'day' | 'infeasible'>;

function renewals(plan: WaterPlan | null, visits: readonly Visit[]) {
  return plan === null
    ? []
    : visits.filter(({ tasks }) => tasks.some((one) => one.kind === 'put-up-water-bag')).map(({ at }) => at);
}

function make(request: PlanRequest, prepared: Prepared): Made {
  const { course } = prepared;
  const grid: Grid = gridFor(course.span.from, course.span.until);
  const water = waterPlan(course);
  const others = tasksOf(course, request.policy, grid.span.from);
  const due: Due = { ...others, beforeHanging: [...others.beforeHanging, ...(water?.tasks ?? [])] };
  const all = [...due.beforeHanging, ...due.afterHanging];
  // What can only be done on the last point of the grid or later is the next plan's.
  const tasks = all.filter(
    (one) => one.nominal < course.span.until && gridUp(one.earliest) < course.span.until,
  );
  const need = needOf(course.programme);
  const { planned, containers: chosen, infeasible } = choose({ prepared, request, grid, tasks });
  const containers = withCartons(prepared, chosen, need).map((one) => withMix(one, course.ordered.strength));
  const hanging = course.regimen.kind === 'bolus' ? 'none' : isPouredPerFeed(course) ? 'per-feed' : 'chain';
  const visits = visitsOf({
    grid,
    need,
    feedFrom: course.feedFrom,
    due,
    tasks,
    planned,
    containers,
    hanging,
  });
  const toCome = {
    mixture: stillToCome(course, need, all),
    tasks: all.filter((one) => gridUp(one.earliest) < course.day.until),
    byPump: waterByPump(water, course, course.day.until),
  };
  return {
    containers,
    waterBags: water === null ? [] : tellWaterBags(water, course, renewals(water, visits)),
    visits,
    day: dayTotals(course, toCome, request.policy),
    infeasible,
  };
}

const NOTHING_TO_FOLLOW: Made & Pick<Plan, 'programme'> = {
  programme: null,
  containers: [],
  waterBags: [],
  visits: [],
  day: null,
  infeasible: [],
};

/**
 * The plan of an order from `standing.at` on. Never throws on what an order, a policy or a standing can say: where a
 * problem stops, or asks and nobody has confirmed, the plan has problems and nothing to follow. Deterministic: the same
 * request always gives the same plan, and planning again with the same end after doing the plan so far gives the rest of
 * it; where several sets fall due in one plan, or a prime decides what a bag holds, the rest may come out otherwise.
 */
export function planFor(request: PlanRequest): Plan {
  const { problems, span, prepared } = prepare(request);
  if (prepared === null) return { at: span.from, span, problems: problems(), ...NOTHING_TO_FOLLOW };
  const { order, policy, standing } = request;
  const shown: Span = { from: prepared.course.feedFrom, until: span.until };
  const made = make(request, prepared);
  const left = waterLeftOut(prepared.course);
  return {
    at: span.from,
    span,
    problems: [...problems(), ...(left === null ? [] : [left])],
    programme: withoutMissed(
      prepared.course,
      programmeOf({ order, policy, standing, span: shown, pace: 'lowest' }),
      made,
    ),
    ...made,
  };
}
