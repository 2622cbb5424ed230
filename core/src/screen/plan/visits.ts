/** How does a visit read? Its tasks, each with its amount. */
import type { Fraction } from '../../base/fraction.ts';
import { timeOfDayAt } from '../../base/zone.ts';
import type { Task, Visit } from '../../plan/plan.ts';
import { showRate, showVolume } from '../number.ts';
import type { Page } from './page.ts';

const MADE_BY_MEDICINE = /^medicine:/;

/** Several holds that are one stop are named together. */
const isHold = (about: string | null, { order }: Page): boolean =>
  about?.split(' + ').every((id) => MADE_BY_MEDICINE.test(id) || order.holds.some((one) => one.id === id)) ??
  false;

/** The share of the meal under which a bolus is given, where it depends on one. */
function eatenLessThan({ about, nominal }: Task, { order, zone }: Page): Fraction | null {
  const meals = about === 'meal' && order.regimen?.kind === 'bolus' ? order.regimen.meals : [];
  return meals.find((meal) => meal.at === timeOfDayAt(nominal, zone))?.ifEatenLessThan ?? null;
}

/** A container's amount and rate are told with the container. */
function taskText(task: Task, page: Page): string {
  const { kind, about, beside = null } = task;
  const { words } = page;
  const volume = task.volume === null ? null : showVolume(task.volume.value);
  const rate = task.rate === null ? null : showRate(task.rate.value);
  if (kind === 'confirm-step') return words.plan.stepUp(rate ?? volume ?? '');
  const name = words.taskAbout({ kind, name: words.tasks[kind], about, beside, isHold: isHold(about, page) });
  if (kind === 'put-up-container') return name;
  const share = eatenLessThan(task, page);
  return [
    name,
    ...(volume === null ? [] : [volume]),
    ...(rate === null ? [] : [`at ${rate}`]),
    ...(share === null ? [] : [words.plan.ifEaten(`${share.n}/${share.d}`)]),
  ].join(' ');
}

/** A check that is overdue and due again is done once: what reads the same and has no amount stands once. */
export function taskList(visit: Visit, page: Page): string {
  const texts = visit.tasks.map((task) => ({ text: taskText(task, page), once: task.volume === null }));
  const first = (text: string): number => texts.findIndex((one) => one.text === text);
  return texts
    .filter(({ text, once }, index) => !once || first(text) === index)
    .map(({ text }) => text)
    .join('; ');
}
