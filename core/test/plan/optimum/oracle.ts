/**
 * The optimum as an integer programme for HiGHS, in successive stages with no gap: containers; these held, visits; these
 * held, deviation; these held, waste. Never by weights.
 *
 *   up_h          the container now up is followed at h           run_h_k       one runs from h to k (end: the end)
 *   visit_h       somebody comes at h                             do_i_h        task i is done at h
 *
 * Runs form one path from the container now up to the end; a run starts only at a visit; a task is done only at one.
 */
import assert from 'node:assert/strict';
import loadHighs from 'highs';
import { deviationOf, fillOf, inWindow, openSlots, type Story, upLasts, wasteOf } from './story.ts';

type Term = readonly [coefficient: number, variable: string];
type Row = { readonly terms: readonly Term[]; readonly is: '=' | '<='; readonly value: number };

export type Stages = {
  readonly containers: number;
  readonly visits: number;
  readonly deviation: number;
  readonly waste: number;
};

/** The package's types describe its CommonJS face, in which the loader is one step further in. */
const highs = await (loadHighs as unknown as typeof loadHighs.default)();

/** One term on a line: the reader of this text format has a longest line. */
const written = (terms: readonly Term[]): string =>
  terms
    .map(([coefficient, variable]) => `${coefficient < 0 ? '-' : '+'} ${Math.abs(coefficient)} ${variable}`)
    .join('\n');

/** The least of a whole-number objective, or null when the rows contradict each other. */
function least(
  objective: readonly Term[],
  rows: readonly Row[],
  variables: readonly string[],
): number | null {
  const text = [
    'Minimize',
    written(objective.length > 0 ? objective : [[0, 'nothing']]),
    'Subject To',
    ...rows.map(({ terms, is, value }) => `${written(terms)}\n${is} ${value}`),
    'Bounds',
    '0 <= nothing <= 1',
    'Binary',
    ...variables,
    'End',
  ].join('\n');
  const { Status, ObjectiveValue } = highs.solve(text, {
    mip_rel_gap: 0,
    mip_abs_gap: 0,
    output_flag: false,
  });
  if (Status === 'Infeasible') return null;
  assert.equal(Status, 'Optimal');
  const whole = Math.round(ObjectiveValue);
  assert.ok(Math.abs(ObjectiveValue - whole) < 1e-4, `not whole: ${ObjectiveValue}`);
  return whole;
}

type Run = { readonly from: number | null; readonly until: number; readonly variable: string };

function runsOf(story: Story): readonly Run[] {
  const ends = [...openSlots(story), story.slots];
  const ofUp = ends
    .filter((until) => upLasts(story.feed, until))
    .map((until) => ({ from: null, until, variable: `up_${until}` }));
  const others = openSlots(story).flatMap((from) =>
    ends
      .filter((until) => until > from && fillOf(story.feed, from, until) !== null)
      .map((until) => ({ from, until, variable: `run_${from}_${until}` })),
  );
  return [...ofUp, ...others];
}

function chainRows(story: Story, runs: readonly Run[]): readonly Row[] {
  const into = (slot: number): Term[] =>
    runs.filter(({ until }) => until === slot).map(({ variable }) => [1, variable]);
  const outOf = (slot: number | null, sign: 1 | -1): Term[] =>
    runs.filter(({ from }) => from === slot).map(({ variable }) => [sign, variable]);
  return [
    { terms: [...outOf(null, 1), [0, 'nothing']], is: '=', value: 1 },
    ...openSlots(story).flatMap((slot): Row[] => [
      { terms: [...into(slot), ...outOf(slot, -1), [0, 'nothing']], is: '=', value: 0 },
      { terms: [...into(slot), [-1, `visit_${slot}`]], is: '<=', value: 0 },
    ]),
  ];
}

function taskRows(story: Story): { readonly rows: readonly Row[]; readonly deviation: readonly Term[] } {
  const rows: Row[] = [];
  const deviation: Term[] = [];
  for (const [i, task] of story.tasks.entries()) {
    const slots = openSlots(story).filter((slot) => inWindow(story, task, slot));
    rows.push({
      terms: [...slots.map((slot): Term => [1, `do_${i}_${slot}`]), [0, 'nothing']],
      is: '=',
      value: 1,
    });
    for (const slot of slots) {
      rows.push({
        terms: [
          [1, `do_${i}_${slot}`],
          [-1, `visit_${slot}`],
        ],
        is: '<=',
        value: 0,
      });
      deviation.push([deviationOf(story, task, slot), `do_${i}_${slot}`]);
    }
  }
  return { rows, deviation };
}

/** Null when there is no plan at all. */
export function solve(story: Story): Stages | null {
  const runs = runsOf(story);
  const { rows, deviation } = taskRows(story);
  const visits = openSlots(story).map((slot): Term => [1, `visit_${slot}`]);
  const objectives: Readonly<Record<keyof Stages, readonly Term[]>> = {
    containers: runs.filter(({ until }) => until < story.slots).map(({ variable }) => [1, variable]),
    visits,
    deviation,
    waste: runs.map(({ from, until, variable }) => [wasteOf(story, from, until), variable]),
  };
  const names = [...visits, ...deviation].map(([, name]) => name);
  const variables = [...runs.map(({ variable }) => variable), ...names];
  const held = [...chainRows(story, runs), ...rows];
  const stages = { containers: 0, visits: 0, deviation: 0, waste: 0 };
  for (const stage of ['containers', 'visits', 'deviation', 'waste'] as const) {
    const value = least(objectives[stage], held, variables);
    if (value === null) {
      assert.equal(stage, 'containers', 'what one stage allows, the next one finds');
      return null;
    }
    stages[stage] = value;
    held.push({ terms: [...objectives[stage], [0, 'nothing']], is: '=', value });
  }
  return stages;
}
