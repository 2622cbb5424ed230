/**
 * Which containers follow one another on a pump or by gravity, and when? The optimum says where each starts; here the
 * question is put to it, with the set changed where it is due or earlier if that is better, and its answer told in full.
 */
import { type Instant, later } from '../../base/instant.ts';
import { type Volume, volume } from '../../base/volume.ts';
import type { Worked } from '../../base/working.ts';
import type { ContainerUp } from '../../standing/standing.ts';
import { SLOT } from '../grid.ts';
import { optimum } from '../optimum/optimum.ts';
import type { Optimum, OptimumCost, Run, TaskWindow } from '../optimum/problem.ts';
import type { PlannedContainer } from '../plan.ts';
import { demandOf, type Ground, isNewSet, type SetLife, setDueFrom, setLives } from './demand.ts';
import { capacityOf, type Pouring, recordedContent, recordedFill, workedFill } from './fill.ts';
import { type FixedLimit, plannedDown, type TakeDown, takeDown } from './limits.ts';
import { workedNeed } from './need.ts';
import { contentOf, feedEndsIn, type Paces, plannedContainer } from './planned.ts';
import { NO_PRIME } from './sets.ts';

/** What is put to the optimum beside feed. */
export type Visiting = {
  readonly tasks: readonly TaskWindow[];
  readonly protectedSlots: Uint8Array;
};

export type Solved = {
  readonly optimum: Optimum;
  readonly lives: readonly SetLife[];
  readonly ends: boolean;
};

const COSTS = [
  'containers',
  'visits',
  'deviation',
  'waste',
] as const satisfies readonly (keyof OptimumCost)[];

function isLess(a: OptimumCost, b: OptimumCost): boolean {
  const differs = COSTS.find((key) => a[key] !== b[key]);
  return differs !== undefined && a[differs] < b[differs];
}

function solveWith(ground: Ground, visiting: Visiting, lives: readonly SetLife[], ends: boolean): Solved {
  const feed = demandOf(ground, lives, ends);
  return {
    optimum: optimum({ slots: ground.grid.slots, slotLength: SLOT, ...visiting, feed }),
    lives,
    ends,
  };
}

/** Where a container would start anyway before the set is due: there it might as well be changed. */
function earlierChanges(ground: Ground, visiting: Visiting, asDue: Solved): readonly number[] {
  const due = asDue.lives.find((life) => life.slot >= 0)?.slot ?? 0;
  if (due === 0 || asDue.lives[0]?.slot !== -1) return [];
  const free = solveWith({ ...ground, sets: { kind: 'none' } }, visiting, [], asDue.ends);
  const starts = [...asDue.optimum.containers, ...free.optimum.containers].map((run) => run.start);
  return [...new Set(starts)].filter((slot) => slot < due).toSorted((a, b) => b - a);
}

/** [PL14] The best plan with the set changed where it is due, or before that with a container that starts there. */
export function solveChain(ground: Ground, visiting: Visiting): Solved {
  const { curve, programme } = ground.need;
  const ends = curve.upTo(ground.grid.span.until) === curve.upTo(programme.span.until);
  const asDue = solveWith(ground, visiting, setLives(ground), ends);
  return earlierChanges(ground, visiting, asDue)
    .map((slot) => solveWith(ground, visiting, setLives(ground, slot), ends))
    .reduce((best, one) => (isLess(one.optimum.cost, best.optimum.cost) ? one : best), asDue);
}

export type Telling = {
  readonly ground: Ground;
  readonly paces: Paces;
  readonly pouring: Pouring;
  readonly feed: string;
  readonly closed: boolean;
};

/** The limits that are this container's alone: its set's, and the end of feed where it comes before all others. */
function downFor(
  { ground, paces }: Telling,
  putUpAt: Instant,
  givesFrom: Instant,
  more: readonly FixedLimit[],
): TakeDown {
  const down = takeDown(ground.limits, putUpAt, more);
  const until = later(down.by.value, givesFrom);
  const at = feedEndsIn(paces.lowest, { from: givesFrom, until });
  if (at === null) return down;
  const end: FixedLimit = { because: 'feed-ends', at, basis: { kind: 'order', path: 'regimen' } };
  return takeDown(ground.limits, putUpAt, [...more, end]);
}

const given = (due: FixedLimit | null): readonly FixedLimit[] => (due === null ? [] : [due]);

function toldRun(
  telling: Telling,
  { lives, ends }: Solved,
  run: Run,
  next: Run | undefined,
): PlannedContainer {
  const { ground, paces, pouring, feed, closed } = telling;
  const putUpAt = ground.grid.at(run.start);
  const newSet = isNewSet(ground, lives, run.start);
  const prime = newSet && ground.sets.kind !== 'none' ? ground.sets.prime : NO_PRIME;
  const due = given(setDueFrom(lives, run.start));
  const goesOn = next === undefined && !ends;
  const until = goesOn ? plannedDown(ground.limits, putUpAt, due) : ground.grid.at(run.end);
  const need = workedNeed(paces.lowest, { from: putUpAt, until });
  const fill = volume(run.fill);
  const filled = workedFill(pouring, {
    fill,
    prime,
    need,
    asMuchAsLasts: goesOn && isMost(pouring, fill, prime, need),
  });
  const nextAt = next === undefined ? null : ground.grid.at(next.start);
  return plannedContainer(
    {
      putUpAt,
      alreadyUp: false,
      feed,
      closed,
      fill: filled,
      newSet,
      prime,
      content: contentOf(filled, prime),
      givesFrom: putUpAt,
      down: downFor(telling, putUpAt, putUpAt, due),
      nextAt,
    },
    paces,
  );
}

/** Whether the fill is the most that can be given, and not the least that lasts to the end of the plan. */
function isMost(pouring: Pouring, fill: Volume, prime: Worked<Volume>, need: Worked<Volume>): boolean {
  if (pouring.kind === 'packs') return true;
  const most = Math.min(need.value + prime.value, capacityOf(pouring));
  return fill === Math.floor(most / pouring.step.value) * pouring.step.value;
}

/** What is known of the container now up, with the limit of the set it hangs on. */
function toldUp(telling: Telling, solved: Solved, up: ContainerUp, at: Instant): PlannedContainer {
  const { paces, feed, closed, ground } = telling;
  const entry = { kind: 'entry', id: up.id } as const;
  const own: readonly FixedLimit[] =
    up.comesDownBy === null ? [] : [{ because: 'expiry', at: up.comesDownBy, basis: entry }];
  const more = [...own, ...given(setDueFrom(solved.lives, -1))];
  const next = solved.optimum.containers[0];
  return plannedContainer(
    {
      putUpAt: up.putUpAt,
      alreadyUp: true,
      feed,
      closed,
      fill: recordedFill(up.filled, up.id),
      newSet: false,
      prime: NO_PRIME,
      content: recordedContent(up.remaining, up.id),
      givesFrom: at,
      down: downFor(telling, up.putUpAt, at, more),
      nextAt: next === undefined ? null : ground.grid.at(next.start),
    },
    paces,
  );
}

/** Every container of the plan, the one already up first. */
export function tellChain(
  telling: Telling,
  solved: Solved,
  up: ContainerUp | null,
  at: Instant,
): readonly PlannedContainer[] {
  const runs = solved.optimum.containers;
  return [
    ...(up === null ? [] : [toldUp(telling, solved, up, at)]),
    ...runs.map((run, index) => toldRun(telling, solved, run, runs[index + 1])),
  ];
}
