/**
 * What does a plan look like to a program? Plain JSON: unit-bearing keys, instants with the zone's offset, and beside
 * every number the working that it was shown with. The numbers are made from the same values as the words.
 */
import type { Fraction } from '../../base/fraction.ts';
import type { Instant } from '../../base/instant.ts';
import { inMl, inMlPerHour, type Rate, type Volume } from '../../base/volume.ts';
import type { Shown, Worked, Working } from '../../base/working.ts';
import { showInstant, type Zone } from '../../base/zone.ts';
import type { Problem } from '../../order/order.ts';
import type { CartonUse, DayTotals, Infeasible, Plan, PlannedContainer, Task } from '../../plan/plan.ts';
import { pieceGives } from '../../programme/programme.ts';
import { jsonNumber } from '../number.ts';
import { problemSays } from '../problem-text.ts';
import type { Words } from '../words.ts';

export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

export const mlOf = (amount: Volume): number => jsonNumber(inMl(amount), 4);
export const rateOf = (at: Rate): number => jsonNumber(inMlPerHour(at), 2);

/** As many decimals in a working as where the number itself stands, so that both are one number. */
const PLACES: Readonly<Record<string, number>> = { mL: 4, 'mL/h': 2, kcal: 2, g: 2 };

const shownJson = (shown: Shown, zone: Zone): Json => {
  switch (shown.kind) {
    case 'quantity':
      return {
        value: jsonNumber(shown.value, PLACES[shown.unit] ?? 6),
        exact: `${shown.value.n}/${shown.value.d}`,
        unit: shown.unit,
      };
    case 'instant':
      return { at: showInstant(shown.at, zone) };
    case 'duration':
      return { minutes: shown.lasts / 60_000 };
    case 'choice':
      return { choice: shown.code };
  }
};

/** A working as data: the same symbols, numbers, bases and rule that the words show. */
export const workingJson = (working: Working, zone: Zone): Json => ({
  equation: working.equation,
  inputs: working.inputs.map((one) => ({
    symbol: one.symbol,
    ...(shownJson(one.is, zone) as object),
    from:
      one.basis.kind === 'working'
        ? { kind: 'working', working: workingJson(one.basis.working, zone) }
        : one.basis,
  })) as unknown as Json,
  result: { symbol: working.result.symbol, ...(shownJson(working.result.is, zone) as object) } as Json,
  rounded:
    working.rounded === undefined
      ? null
      : { way: working.rounded.way, step: `${working.rounded.step.n}/${working.rounded.step.d}` },
  rule: working.rule,
  basis: (working.basis.kind === 'working' ? { kind: 'working' } : working.basis) as Json,
});

export type PlanReading = { readonly zone: Zone; readonly words: Words };

export const problemJson = (problem: Problem, words: Words): Json => ({
  rule: problem.rule,
  level: problem.level,
  says: problemSays(problem, words).says,
  remedy: problemSays(problem, words).remedy,
  path: problem.path.join('.'),
  confirm: typeof problem.data.confirm === 'string' ? problem.data.confirm : null,
  confirmedBy: problem.confirmedBy ?? null,
});

function taskJson(task: Task, zone: Zone): Json {
  const at = (when: Instant): string => showInstant(when, zone);
  return {
    id: task.id,
    kind: task.kind,
    earliest: at(task.earliest),
    nominal: at(task.nominal),
    latest: at(task.latest),
    about: task.about,
    beside: task.beside ?? null,
    volumeMl: task.volume === null ? null : mlOf(task.volume.value),
    rateMlPerHour: task.rate === null ? null : rateOf(task.rate.value),
    rule: task.rule,
    working: {
      ...(task.volume === null ? {} : { volumeMl: workingJson(task.volume.working, zone) }),
      ...(task.rate === null ? {} : { rateMlPerHour: workingJson(task.rate.working, zone) }),
    },
  };
}

const cartonJson = (use: CartonUse, zone: Zone): Json => ({
  carton: use.carton,
  takeMl: mlOf(use.take),
  leftMl: mlOf(use.left),
  keepUntil: use.keepUntil === null ? null : showInstant(use.keepUntil, zone),
});

function containerJson(container: PlannedContainer, zone: Zone): Json {
  const at = (when: Instant): string => showInstant(when, zone);
  const maybe = (when: Worked<Instant> | null): string | null => (when === null ? null : at(when.value));
  const workings: Record<string, Worked<unknown> | null> = {
    fillMl: container.fill,
    primeMl: container.prime,
    volumeToDeliverMl: container.volumeToDeliver,
    runsDryAt: container.runsDryAt,
    runsDryEarliest: container.runsDryEarliest,
    takeDownBy: container.takeDownBy,
    leftOverMl: container.leftOver,
    formulaMl: container.mix?.formula ?? null,
    addWaterMl: container.mix?.water ?? null,
  };
  return {
    putUpAt: at(container.putUpAt),
    alreadyUp: container.alreadyUp,
    feed: container.feed,
    closed: container.closed,
    runsDryAt: maybe(container.runsDryAt),
    runsDryEarliest: maybe(container.runsDryEarliest),
    takeDownBy: at(container.takeDownBy.value),
    because: container.because,
    nextAt: container.nextAt === null ? null : at(container.nextAt),
    fillMl: mlOf(container.fill.value),
    newSet: container.newSet,
    primeMl: mlOf(container.prime.value),
    volumeToDeliverMl: mlOf(container.volumeToDeliver.value),
    leftOverMl: mlOf(container.leftOver.value),
    formulaMl: container.mix === undefined ? null : mlOf(container.mix.formula.value),
    addWaterMl: container.mix === undefined ? null : mlOf(container.mix.water.value),
    cartons: container.cartons.map((use) => cartonJson(use, zone)),
    working: Object.fromEntries(
      Object.entries(workings).flatMap(([key, one]) =>
        one === null ? [] : [[key, workingJson(one.working, zone)] as const],
      ),
    ),
  };
}

function dayJson(day: DayTotals, zone: Zone): Json {
  const number = (value: Fraction): number => jsonNumber(value, 2);
  return {
    from: showInstant(day.day.from, zone),
    until: showInstant(day.day.until, zone),
    formulaMl: mlOf(day.formula.value),
    mixtureMl: mlOf(day.mixture.value),
    energyKcal: number(day.energyKcal.value),
    proteinG: number(day.proteinG.value),
    waterMl: {
      formula: mlOf(day.water.formula.value),
      flushes: mlOf(day.water.flushes.value),
      total: mlOf(day.water.total.value),
    },
    orderedMl: day.ordered === null ? null : mlOf(day.ordered.value),
    needs: {
      energyKcal: day.needs.energyKcal === null ? null : number(day.needs.energyKcal),
      proteinG: day.needs.proteinG === null ? null : number(day.needs.proteinG),
      waterMl: day.needs.water === null ? null : mlOf(day.needs.water),
    },
    working: {
      formulaMl: workingJson(day.formula.working, zone),
      mixtureMl: workingJson(day.mixture.working, zone),
      energyKcal: workingJson(day.energyKcal.working, zone),
      proteinG: workingJson(day.proteinG.working, zone),
      'waterMl.formula': workingJson(day.water.formula.working, zone),
      'waterMl.flushes': workingJson(day.water.flushes.working, zone),
      'waterMl.total': workingJson(day.water.total.working, zone),
      ...(day.ordered === null ? {} : { orderedMl: workingJson(day.ordered.working, zone) }),
    },
  };
}

const infeasibleJson = (one: Infeasible, { zone, words }: PlanReading): Json => ({
  rule: one.rule,
  code: one.code,
  about: one.about,
  at: one.at === null ? null : showInstant(one.at, zone),
  says: words.infeasible[one.code]?.({ ...one.data, about: one.about }).says ?? one.code,
});

/** The whole plan as JSON: `problems`, `programme`, `gaps`, `containers`, `waterBags`, `visits`, `day`, `infeasible`. */
export function planJson(plan: Plan, reading: PlanReading): Json {
  const { zone, words } = reading;
  const at = (when: Instant): string => showInstant(when, zone);
  return {
    document: 'feedwright-plan/1',
    at: at(plan.at),
    from: at(plan.span.from),
    until: at(plan.span.until),
    zone,
    problems: plan.problems.map((problem) => problemJson(problem, words)),
    programme: (plan.programme?.pieces ?? []).map((piece) => ({
      from: at(piece.from),
      until: at(piece.until),
      ...(piece.gives.kind === 'rate'
        ? { rateMlPerHour: rateOf(piece.gives.rate) }
        : {
            volumeMl: mlOf(pieceGives(piece, piece.until)),
            ...(piece.gives.ifEatenLessThan === undefined
              ? {}
              : { ifEatenLessThan: `${piece.gives.ifEatenLessThan.n}/${piece.gives.ifEatenLessThan.d}` }),
            rateMlPerHour: jsonNumber(
              { n: piece.gives.volume, d: 100 * (piece.gives.whole.until - piece.gives.whole.from) },
              2,
              'down',
            ),
          }),
      working: workingJson(piece.working, zone),
    })),
    gaps: (plan.programme?.gaps ?? []).map((gap) => ({
      from: at(gap.from),
      until: at(gap.until),
      why: gap.why,
      holds: gap.holds,
      untilKnown: gap.untilKnown,
    })),
    shortfallMl: plan.programme === null ? null : mlOf(plan.programme.shortfall),
    lost: (plan.programme?.lost ?? []).map((one) => ({
      from: at(one.from),
      until: at(one.until),
      why: one.why,
      volumeMl: mlOf(one.volume.value),
      working: workingJson(one.volume.working, zone),
    })),
    containers: plan.containers.map((container) => containerJson(container, zone)),
    waterBags: plan.waterBags.map((container) => containerJson(container, zone)),
    visits: plan.visits.map((visit) => ({
      at: at(visit.at),
      tasks: visit.tasks.map((task) => taskJson(task, zone)),
    })),
    day: plan.day === null ? null : dayJson(plan.day, zone),
    infeasible: plan.infeasible.map((one) => infeasibleJson(one, reading)),
  };
}
