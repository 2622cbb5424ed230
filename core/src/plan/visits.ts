/**
 * Who comes when, and does what in which order? The visits that the optimum chose, with their tasks in bedside order and
 * what is to be done with containers and sets at each: hung after what was stopped and given, before feed starts.
 */
import { earlier, type Instant, later } from '../base/instant.ts';
import { NOTHING, type Rate, subtract, type Volume } from '../base/volume.ts';
import { ARITHMETIC, input, shownVolume, type Worked, worked } from '../base/working.ts';
import type { Piece } from '../programme/programme.ts';
import { lastFed, type Need, needBetween } from './containers/need.ts';
import { type Grid, gridDown } from './grid.ts';
import type { PlannedVisit } from './optimum/problem.ts';
import type { PlannedContainer, Task, Visit } from './plan.ts';
import { starting, task } from './tasks/due.ts';
import type { Due } from './tasks/tasks.ts';

const rateAt = (need: Need, at: Instant): Worked<Rate> | null => {
  const piece = need.programme.pieces.find((one) => one.until > at);
  return piece?.gives.kind === 'rate' ? { value: piece.gives.rate, working: (piece as Piece).working } : null;
};

/** What is done with a container where it is put up: the set if it is new, the container, what to programme. */
function hanging(need: Need, container: PlannedContainer): readonly Task[] {
  const { putUpAt, newSet, volumeToDeliver, feed } = container;
  const window = starting(putUpAt);
  return [
    ...(newSet ? [task({ kind: 'change-set', rule: 'PL14' }, window)] : []),
    task(
      {
        kind: 'put-up-container',
        about: feed,
        volume: volumeToDeliver,
        rate: rateAt(need, putUpAt),
        rule: 'PL16',
      },
      window,
    ),
  ];
}

/** From when nothing more is given from a container: it may be taken down. */
const emptyOfUse = (need: Need, { putUpAt, takeDownBy }: PlannedContainer): Instant =>
  gridDown(lastFed(need, { from: putUpAt, until: takeDownBy.value }) ?? putUpAt);

/** Due at its limit; once it has given what it is to give it may be done before. */
const takingDown = (need: Need, container: PlannedContainer, at: Instant): Task => {
  const { putUpAt, takeDownBy, feed } = container;
  const window = {
    earliest: earlier(emptyOfUse(need, container), takeDownBy.value),
    nominal: takeDownBy.value,
    latest: later(takeDownBy.value, at),
  };
  // Named by when it was put up: why and when it comes down may be told anew once it has given its last.
  return task({ kind: 'take-down-container', about: feed, dueAt: putUpAt, rule: 'PL12' }, window);
};

/** [PL17] Where feed starts again from a container that has given some already, the pump is set to the rest. */
function withVolume({ need, containers, feedFrom }: Arranged, one: Task): Task {
  if (one.kind !== 'start-feed' && one.kind !== 'change-rate') return one;
  const container = containers.findLast(({ putUpAt }) => putUpAt <= one.nominal);
  if (container === undefined) return one;
  const { volumeToDeliver } = container;
  const since = container.alreadyUp ? feedFrom : container.putUpAt;
  const given = needBetween(need, { from: since, until: one.nominal });
  if (given === NOTHING) return { ...one, volume: volumeToDeliver };
  const rest = subtract(volumeToDeliver.value, given);
  const volume: Worked<Volume> = worked(rest > 0 ? rest : NOTHING, shownVolume, {
    symbol: 'V_rest',
    equation: 'V_rest = V_deliver − V_given',
    inputs: [
      input('V_deliver', shownVolume(volumeToDeliver.value), {
        kind: 'working',
        working: volumeToDeliver.working,
      }),
      input('V_given', shownVolume(given), ARITHMETIC),
    ],
    rule: 'PL17',
    basis: ARITHMETIC,
  });
  return { ...one, volume };
}

export type Arranged = {
  readonly grid: Grid;
  readonly need: Need;
  readonly feedFrom: Instant;
  readonly due: Due;
  /** The tasks in the order in which they were put to the optimum. */
  readonly tasks: readonly Task[];
  readonly planned: readonly PlannedVisit[];
  readonly containers: readonly PlannedContainer[];
  /** Containers that hang on from one feed to the next, pours that are hung for one feed, or boluses poured as they are given. */
  readonly hanging: 'chain' | 'per-feed' | 'none';
};

/** Containers that come down before the next one goes up, or with none to follow. */
const takenDown = ({ hanging, containers, grid }: Arranged): readonly PlannedContainer[] =>
  hanging === 'chain'
    ? containers.filter(({ takeDownBy, nextAt }) => takeDownBy.value < (nextAt ?? grid.span.until))
    : [];

/** Taken down at the last visit before it must be, once nothing more is given from it; or at the next one after. */
function visitFor({ planned, grid, need }: Arranged, container: PlannedContainer): PlannedVisit | undefined {
  const by = container.takeDownBy.value;
  const fed = emptyOfUse(need, container);
  const at = ({ slot }: PlannedVisit): Instant => grid.at(slot);
  return (
    planned.findLast((visit) => at(visit) <= by && at(visit) >= fed) ??
    planned.find((visit) => at(visit) >= gridDown(by))
  );
}

/** [PL2] The visits with everything that is done at each. */
export function visitsOf(arranged: Arranged): readonly Visit[] {
  const { grid, need, due, tasks, planned, containers } = arranged;
  const order = new Map([...due.beforeHanging, ...due.afterHanging].map((one, index) => [one, index]));
  const rank = (one: Task): number => order.get(one) ?? 0;
  const before = due.beforeHanging.length;
  const takenAt = Map.groupBy(takenDown(arranged), (one) => visitFor(arranged, one));
  return planned.map((visit) => {
    const at = grid.at(visit.slot);
    const here = visit.tasks.map((one) => tasks[one] as Task).toSorted((a, b) => rank(a) - rank(b));
    const hangs =
      arranged.hanging === 'none' ? [] : containers.filter((one) => !one.alreadyUp && one.putUpAt === at);
    return {
      at,
      tasks: [
        ...here.filter((one) => rank(one) < before),
        ...(takenAt.get(visit) ?? []).map((one) => takingDown(need, one, at)),
        ...hangs.flatMap((one) => hanging(need, one)),
        ...here.filter((one) => rank(one) >= before).map((one) => withVolume(arranged, one)),
      ],
    };
  });
}
