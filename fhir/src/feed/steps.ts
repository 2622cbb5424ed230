/**
 * Do several administrations climb from one amount to the next?
 * FHIR writes steps as administrations that begin one after another, often without an end: read by the letter they would
 * run together. A regular climb is an advancement, whose steps wait for tolerance and for somebody to confirm them.
 */
import { type Duration, duration, type Instant } from '@feedwright/core/base/instant';
import { showInstant, type Zone } from '@feedwright/core/base/zone';
import type { Advancement } from '@feedwright/core/order/order';
import { ask, note, type Place, stop } from '../read/reading.ts';

export type Step<Q> = {
  readonly from: Instant | null;
  readonly until: Instant | null;
  readonly amount: Q;
};

type Timed<Q> = Step<Q> & { readonly from: Instant };

const isTimed = <Q>(step: Step<Q>): step is Timed<Q> => step.from !== null;

/** The climb, where steps are even in time and rise evenly, the last perhaps by less; else null. */
export function advancementOf<Q extends number>(steps: readonly Timed<Q>[]): Advancement<Q> | null {
  const [first, second, ...rest] = steps;
  if (first === undefined || second === undefined) return null;
  const every: Duration = duration(second.from - first.from);
  const step = (second.amount - first.amount) as Q;
  const goal = rest.at(-1) ?? second;
  const even = steps.every(({ from, amount }, place) => {
    const reached = first.amount + place * step;
    const onTime = from === first.from + place * every;
    return onTime && amount === (place === steps.length - 1 ? Math.min(reached, goal.amount) : reached);
  });
  const lastRises = goal.amount > first.amount + (steps.length - 2) * step;
  const gapless = steps.every(
    ({ until }, place) => place === steps.length - 1 || until === null || until >= steps[place + 1]!.from,
  );
  return even && lastRises && gapless && step > 0 && every > 0
    ? { start: first.amount, step, every, goal: goal.amount }
    : null;
}

/** [FH13] Steps that do not end before the next begins: whether each replaces the one before is asked. */
function askEnds<Q>(place: Place, steps: readonly Timed<Q>[], zone: Zone, show: (amount: Q) => string): void {
  const openEnded = steps.some(({ until }, at) => {
    const next = steps[at + 1];
    return next !== undefined && (until === null || until > next.from);
  });
  if (!openEnded) return;
  ask(place, 'FH13', 'fhir/steps-without-end', 'steps', {
    steps: steps.map(({ from, amount }) => `${show(amount)} from ${showInstant(from, zone)}`),
    together: show(steps.reduce((total, { amount }) => total + Number(amount), 0) as Q),
  });
}

/**
 * Steps in the order of time, or null where one has no beginning; then that is on record.
 */
export function inOrder<Q extends number>(
  place: Place,
  steps: readonly Step<Q>[],
  zone: Zone,
  show: (amount: Q) => string,
): readonly Timed<Q>[] | null {
  const timed = steps.filter(isTimed).toSorted((a, b) => a.from - b.from);
  if (steps.length > 1 && timed.length < steps.length) {
    stop(place, 'FH13', 'fhir/steps-without-times');
    return null;
  }
  askEnds(place, timed, zone, show);
  return timed;
}

/** [FH13] Says that what FHIR puts at fixed moments is taken as steps that wait for somebody. */
export const noteAdvancement = (place: Place, { every }: Advancement<number>): void =>
  note(place, 'FH13', 'fhir/steps-become-advancement', { everyMinutes: every / 60_000 });
