/**
 * What does a plan say, in the words of the golden cases? Short lines, one for each container, stretch and sum, so that a
 * case can be read beside them; and whether a visit holds what a case expects of it.
 */
import { approximately } from '@feedwright/core/base/fraction';
import type { Instant } from '@feedwright/core/base/instant';
import { inMl, inMlPerHour, type Volume } from '@feedwright/core/base/volume';
import type { Worked } from '@feedwright/core/base/working';
import { dayAt, showTimeOfDay, timeOfDayAt, type Zone } from '@feedwright/core/base/zone';
import type { Plan, PlannedContainer, Task } from '@feedwright/core/plan/plan';

const number = (value: number): string => String(Math.round(value * 1000) / 1000);
const mlOf = (amount: Volume): string => `${number(approximately(inMl(amount)))} mL`;

/** `16:00`, and on another day than the plan's first `16:00 on 26 Nov`. */
function clock(at: Instant, plan: Plan, zone: Zone): string {
  const time = showTimeOfDay(timeOfDayAt(at, zone)) + (at % 60_000 === 0 ? '' : `:${(at % 60_000) / 1000}`);
  const day = dayAt(at, zone);
  if (day === dayAt(plan.at, zone)) return time;
  const [, month = '', date = ''] = day.split('-');
  const names = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
  return `${time} on ${Number(date)} ${names[Number(month) - 1]}`;
}

type Told = (at: Instant) => string;

function container(one: PlannedContainer, at: Told): string {
  const maybe = (when: Worked<Instant> | null): string => (when === null ? 'not' : at(when.value));
  const verb = one.alreadyUp ? 'up' : one.closed ? 'spike' : 'pour';
  return [
    `${at(one.putUpAt)} ${verb} ${mlOf(one.fill.value)}`,
    ...(one.newSet ? ['new set'] : []),
    ...(one.prime.value > 0 ? [`prime ${mlOf(one.prime.value)}`] : []),
    `deliver ${mlOf(one.volumeToDeliver.value)}`,
    `dry ${maybe(one.runsDryAt)}`,
    ...(one.runsDryEarliest === null ? [] : [`as early as ${at(one.runsDryEarliest.value)}`]),
    `down by ${at(one.takeDownBy.value)} (${one.because})`,
    ...(one.leftOver.value > 0 ? [`left ${mlOf(one.leftOver.value)}`] : []),
    ...one.cartons.map((use) => {
      const kept = use.keepUntil === null ? '' : ` until ${at(use.keepUntil)}`;
      return `${mlOf(use.take)} of ${use.carton}${use.left > 0 ? ` leaving ${mlOf(use.left)}${kept}` : ''}`;
    }),
  ].join(', ');
}

const taskOf = (one: Task): string =>
  [
    one.kind,
    ...(one.beside === undefined ? [] : [one.beside]),
    ...(one.about === null || one.kind === 'put-up-container' || one.kind === 'take-down-container'
      ? []
      : [one.about]),
    ...(one.volume === null || one.kind === 'start-feed' ? [] : [mlOf(one.volume.value)]),
    ...(one.rate === null || one.kind === 'put-up-container'
      ? []
      : [`at ${number(approximately(inMlPerHour(one.rate.value)))} mL/h`]),
  ].join(' ');

function runs(plan: Plan, at: Told): readonly string[] {
  return (plan.programme?.pieces ?? []).map((piece) => {
    const amount =
      piece.gives.kind === 'rate'
        ? `${number(approximately(inMlPerHour(piece.gives.rate)))} mL/h`
        : mlOf(piece.gives.volume);
    return `runs ${at(piece.from)} to ${at(piece.until)} ${amount}`;
  });
}

function day({ day: totals }: Plan): readonly string[] {
  if (totals === null) return [];
  const { formula, mixture, water } = totals;
  const asMixture = formula.value === mixture.value ? '' : ` in ${mlOf(mixture.value)}`;
  const ordered = totals.ordered === null ? '' : ` of ${mlOf(totals.ordered.value)} ordered`;
  const energy = number(approximately(totals.energyKcal.value));
  const protein = number(approximately(totals.proteinG.value));
  return [
    `day formula ${mlOf(formula.value)}${asMixture}${ordered}, ${energy} kcal, ${protein} g protein`,
    `day water ${mlOf(water.formula.value)} in feed + ${mlOf(water.flushes.value)} given = ${mlOf(water.total.value)}`,
  ];
}

/** Everything that a case can expect, by the word that its lines begin with. */
export function tell(plan: Plan, zone: Zone): readonly string[] {
  const at: Told = (when) => clock(when, plan, zone);
  return [
    ...(plan.programme === null ? ['no plan'] : []),
    ...plan.problems.map(
      (one) => `${one.level} ${one.code}${one.confirmedBy === undefined ? '' : ' confirmed'}`,
    ),
    ...runs(plan, at),
    ...(plan.programme !== null && plan.programme.shortfall > 0
      ? [`short ${mlOf(plan.programme.shortfall)}`]
      : []),
    ...plan.containers.map((one) => `container ${container(one, at)}`),
    ...plan.waterBags.map((one) => `water-bag ${container(one, at)}`),
    `visits ${plan.visits.map((visit) => at(visit.at)).join(', ')}`,
    ...plan.visits.map((visit) => `at ${at(visit.at)}: ${visit.tasks.map(taskOf).join('; ')}`),
    ...day(plan),
    ...plan.infeasible.map(
      (one) => `cannot ${one.code} ${one.about}${one.at === null ? '' : ` at ${at(one.at)}`}`,
    ),
  ];
}

/** Of these every line is expected, and no other; of the rest, what a case names has to be there. */
export const WHOLE = ['runs', 'container', 'water-bag', 'visits', 'day', 'short', 'cannot'] as const;

const words = (line: string): readonly string[] => line.split('; ');

/** Whether a visit's line holds the tasks of the expected one, in its order. */
export function holds(told: string, expected: string): boolean {
  const [when, ...rest] = expected.split(': ');
  if (!told.startsWith(`${when}: `)) return false;
  const tasks = words(told.slice((when as string).length + 2));
  let from = 0;
  return words(rest.join(': ')).every((one) => {
    from = tasks.indexOf(one, from) + 1;
    return from > 0;
  });
}
