/** What would be true if the plan had been done so far, to the letter? For planning again from there. */
import { between, type Instant, instant, within } from '@feedwright/core/base/instant';
import { add, NOTHING, type Rate, rateFor, subtract, sum, type Volume } from '@feedwright/core/base/volume';
import { lastTime } from '@feedwright/core/base/zone';
import type { Plan, PlannedContainer, PlanRequest, Task } from '@feedwright/core/plan/plan';
import { everySoOften } from '@feedwright/core/plan/tasks/due';
import { isRunning } from '@feedwright/core/plan/tasks/feeding';
import { needWithin, type Piece } from '@feedwright/core/programme/programme';
import type { ContainerUp, OpenCarton, Standing } from '@feedwright/core/standing/standing';

/** As the policy that these plans are made by has it. */
const DAY_START = 8 * 60;
const WATER = new Set<Task['kind']>(['flush', 'give-water', 'give-module']);

const givenBy = ({ programme }: Plan, from: Instant, until: Instant): Volume =>
  programme === null || until <= from ? NOTHING : needWithin(programme, { from, until });

/** The last container put up before `at`, with what is left in it; null where none is, or it has been taken down. */
function upAt(
  plan: Plan,
  containers: readonly PlannedContainer[],
  before: ContainerUp | null,
  at: Instant,
  spent: (from: Instant) => Volume,
): ContainerUp | null {
  const last = containers.findLast((one) => one.alreadyUp || one.putUpAt < at);
  if (last === undefined) return null;
  const stopped = plan.visits.some(
    (visit) =>
      visit.at < at &&
      visit.at >= last.putUpAt &&
      visit.tasks.some((one) => one.kind === 'take-down-container'),
  );
  if (stopped) return null;
  if (last.alreadyUp && before !== null) {
    return { ...before, remaining: subtract(before.remaining, spent(plan.at)) };
  }
  const content = subtract(last.fill.value, last.prime.value);
  return {
    id: `container ${last.putUpAt}`,
    feed: last.feed,
    putUpAt: last.putUpAt,
    comesDownBy: null,
    filled: last.fill.value,
    remaining: subtract(content, spent(last.putUpAt)),
  };
}

/** What the pump has drawn from the second bag: a flush so often by the clock, while feed runs. */
function drawn({ order }: PlanRequest, plan: Plan, from: Instant, until: Instant): Volume {
  const bag = order.water?.given.find((one) => one.kind === 'second-bag');
  if (bag?.kind !== 'second-bag') return NOTHING;
  const flushed = { from: instant(from + 1), until: instant(until + 1) };
  const course = { order, zone: order.zone, begins: order.startsAt ?? plan.at };
  const ran = (at: Instant): boolean => plan.programme !== null && isRunning(plan.programme, instant(at - 1));
  return sum(
    everySoOften(bag.every, DAY_START, flushed, course)
      .filter(ran)
      .map(() => bag.volume),
  );
}

function waterBagAt(request: PlanRequest, plan: Plan, at: Instant): ContainerUp | null {
  const last = plan.waterBags.findLast((one) => one.alreadyUp || one.putUpAt < at);
  if (last === undefined) return null;
  const before = request.standing.waterBag;
  if (last.alreadyUp && before !== null) {
    return { ...before, remaining: subtract(before.remaining, drawn(request, plan, plan.at, at)) };
  }
  return {
    id: `bag ${last.putUpAt}`,
    feed: 'water',
    putUpAt: last.putUpAt,
    comesDownBy: null,
    filled: last.fill.value,
    remaining: subtract(last.fill.value, drawn(request, plan, last.putUpAt, at)),
  };
}

function cartonsAt(plan: Plan, opened: readonly OpenCarton[], at: Instant): readonly OpenCarton[] {
  const cartons = new Map(opened.map((one) => [`open:${one.id}`, one]));
  for (const container of plan.containers) {
    if (container.alreadyUp || container.putUpAt >= at) continue;
    for (const use of container.cartons) {
      const openedAt = cartons.get(use.carton)?.openedAt ?? container.putUpAt;
      cartons.set(use.carton, { id: use.carton, feed: container.feed, openedAt, remaining: use.left });
    }
  }
  return [...cartons.values()].filter((one) => one.remaining > 0);
}

/** A feed that a pump gives over its minutes runs too, at a rate of its own. */
const isByPump = (piece: Piece, { order }: PlanRequest): boolean =>
  piece.gives.kind === 'rate' || (order.regimen?.kind === 'intermittent' && order.regimen.by === 'pump');

const rateOf = ({ gives }: Piece): Rate =>
  gives.kind === 'rate' ? gives.rate : rateFor(gives.volume, between(gives.whole.from, gives.whole.until));

/** The standing at `at` after every visit before then was made as planned. */
export function advanceStanding(request: PlanRequest, plan: Plan, at: Instant): Standing {
  const { standing } = request;
  const visits = plan.visits.filter((visit) => visit.at < at);
  const tasks = visits.flatMap((visit) => visit.tasks);
  const dayStart = lastTime(DAY_START, at, request.order.zone);
  const isNewDay = dayStart > plan.at;
  const since = isNewDay ? dayStart : plan.at;
  const watered = visits
    .filter((visit) => visit.at >= since)
    .flatMap((visit) => visit.tasks)
    .filter((one) => WATER.has(one.kind));
  const pieces = plan.programme?.pieces ?? [];
  const last = instant(at - 1);
  const running = pieces.find((piece) => within(piece, last) && isByPump(piece, request));
  const notStarted = plan.visits.some(
    (visit) => visit.at >= at && visit.tasks.some((one) => one.kind === 'start-feed' && one.nominal < at),
  );
  const sets = plan.containers.filter((one) => one.newSet && !one.alreadyUp && one.putUpAt < at);
  const spent = (from: Instant): Volume => givenBy(plan, from, at);
  return {
    ...standing,
    at,
    running: running === undefined || notStarted ? null : { rate: rateOf(running), since: running.from },
    container: upAt(plan, plan.containers, standing.container, at, spent),
    waterBag: waterBagAt(request, plan, at),
    set: sets.length === 0 ? standing.set : { putUpAt: (sets.at(-1) as PlannedContainer).putUpAt },
    cartons: cartonsAt(plan, standing.cartons, at),
    feedingSince: standing.feedingSince ?? ((pieces[0]?.from ?? at) < at ? (pieces[0]?.from ?? null) : null),
    receivedToday: add(isNewDay ? NOTHING : standing.receivedToday, givenBy(plan, since, at)),
    waterToday: add(
      isNewDay ? NOTHING : standing.waterToday,
      sum(watered.map((one) => one.volume?.value ?? NOTHING)),
    ),
    done: new Set([...standing.done, ...tasks.map((one) => one.id)]),
  };
}
