/**
 * Are containers, tasks and visits planned fast enough? Visits and deviation for 1,000 tasks against HiGHS, an open solver
 * for integer programmes, which must find the same optimum in two stages with no gap; and two days' worth of plain time.
 */
import { optimum } from '@feedwright/core/plan/optimum/optimum';
import type { OptimumProblem, TaskWindow } from '@feedwright/core/plan/optimum/problem';
import loadHighs from 'highs';
import { medians, type Report } from './measure.ts';

const MINUTES = 5;
const DAY = 288;

/** The same numbers from 0 to 1 in every run: 31-bit linear congruence. */
function dice(): () => number {
  let seed = 20_261;
  return () => {
    seed = (seed * 48_271) % 2_147_483_647;
    return seed / 2_147_483_647;
  };
}

/** Tasks spread over a time, each with up to an hour of room on either side. */
function tasksOver(slots: number, count: number): readonly TaskWindow[] {
  const roll = dice();
  const upTo = (most: number): number => Math.floor(roll() * most);
  return Array.from({ length: count }, () => {
    const nominal = upTo(slots * MINUTES);
    return { earliest: nominal - upTo(60), nominal, latest: nominal + MINUTES + upTo(60) };
  });
}

const tasksOnly = (slots: number, count: number): OptimumProblem => ({
  slots,
  slotLength: MINUTES,
  protectedSlots: new Uint8Array(slots),
  tasks: tasksOver(slots, count),
  feed: null,
});

/** A day of 70 mL/h, poured in steps of 10 mL into containers that hold 500 mL and may hang for 8 h; volumes in 1/60 mL. */
function fedDay(count: number): OptimumProblem {
  const need = (slot: number): number => slot * 70 * MINUTES;
  return {
    ...tasksOnly(DAY, count),
    feed: {
      need: Float64Array.from({ length: DAY + 1 }, (_, slot) => need(slot)),
      needAtLimit: Float64Array.from({ length: DAY }, (_, slot) => need(slot + 96)),
      prime: new Float64Array(DAY).fill(15 * 60),
      filling: { kind: 'poured', capacity: 500 * 60, step: 10 * 60 },
      up: { remaining: 200 * 60, needAtLimit: need(60) },
      ends: false,
    },
  };
}

type Possible = { readonly task: number; readonly slot: number; readonly deviation: number };

function possibilities({ slots, tasks }: OptimumProblem): readonly Possible[] {
  return tasks.flatMap(({ earliest, nominal, latest }, task) => {
    const first = Math.max(0, Math.ceil(earliest / MINUTES));
    const last = Math.min(slots - 1, Math.floor(latest / MINUTES));
    return Array.from({ length: last - first + 1 }, (_, i) => first + i).map((slot) => ({
      task,
      slot,
      deviation: Math.abs(slot * MINUTES - nominal),
    }));
  });
}

/** First the fewest visits that cover every window; then, with so many, the least deviation. */
function programmes({ slots, tasks }: OptimumProblem, possible: readonly Possible[]) {
  const byTask = tasks.map((_, task) => possible.filter((one) => one.task === task));
  const visits = Array.from({ length: slots }, (_, slot) => `v${slot}`);
  const sum = (terms: readonly string[]): string => terms.join('\n+ ');
  const covered = byTask.map((ones) => `${sum(ones.map(({ slot }) => `v${slot}`))}\n>= 1`);
  const done = byTask.map((ones) => `${sum(ones.map(({ task, slot }) => `d${task}_${slot}`))}\n= 1`);
  const onlyAtVisits = possible.map(({ task, slot }) => `d${task}_${slot} - v${slot} <= 0`);
  const binary = ['Binary', ...visits, 'End'];
  return {
    fewest: ['Minimize', sum(visits), 'Subject To', ...covered, ...binary].join('\n'),
    nearest: (count: number): string =>
      [
        'Minimize',
        sum(possible.map(({ task, slot, deviation }) => `${deviation} d${task}_${slot}`)),
        'Subject To',
        `${sum(visits)}\n= ${count}`,
        ...done,
        ...onlyAtVisits,
        ...binary,
      ].join('\n'),
  };
}

/** Ms that the solver took for both stages, and what it found. */
async function solved(problem: OptimumProblem) {
  // The package's types describe its CommonJS face, in which the loader is one step further in.
  const highs = await (loadHighs as unknown as typeof loadHighs.default)();
  const { fewest, nearest } = programmes(problem, possibilities(problem));
  let ms = 0;
  const least = (programme: string): number => {
    const start = performance.now();
    const { Status, ObjectiveValue } = highs.solve(programme, {
      mip_rel_gap: 0,
      mip_abs_gap: 0,
      output_flag: false,
    });
    ms += performance.now() - start;
    if (Status !== 'Optimal') throw new Error(`the solver says ${Status}`);
    return Math.round(ObjectiveValue);
  };
  const visits = least(fewest);
  return { visits, deviation: least(nearest(visits)), ms };
}

export default async function optimumBench(report: Report): Promise<void> {
  const thousand = tasksOnly(10 * DAY, 1_000);
  const solver = await solved(thousand);
  const { visits, deviation } = optimum(thousand).cost;
  if (visits !== solver.visits || deviation !== solver.deviation)
    throw new Error(
      `${visits} visits, ${deviation} min; the solver has ${solver.visits}, ${solver.deviation}`,
    );
  const [ours = Number.NaN] = await medians(50, () => optimum(thousand));
  report({
    what: 'visits and deviation for 1,000 tasks, 50 times, against the solver',
    measured: (50 * ours) / solver.ms,
    limit: 1,
    unit: '×',
  });
  const many = tasksOnly(100 * DAY, 10_000);
  const [manyTasks = Number.NaN] = await medians(10, () => optimum(many));
  report({
    what: 'visits and deviation for 10,000 tasks',
    measured: manyTasks,
    limit: 100,
    unit: 'ms',
  });
  const [day40, day80] = [fedDay(40), fedDay(80)];
  const [forty = Number.NaN, eighty = Number.NaN] = await medians(
    200,
    () => optimum(day40),
    () => optimum(day80),
  );
  for (const [count, measured] of [
    [40, forty],
    [80, eighty],
  ] as const)
    report({ what: `a fed day with ${count} tasks`, measured, limit: 2, unit: 'ms' });
}
