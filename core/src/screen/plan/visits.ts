/** How does a visit read? Its tasks, each with its amount. */
import type { Task, Visit } from '../../plan/plan.ts';
import { showRate, showVolume } from '../number.ts';
import type { Page } from './page.ts';

/** A container's amount and rate are told with the container. */
function taskText(task: Task, page: Page): string {
  const { kind, about, beside = null } = task;
  const name = page.words.taskAbout({ kind, name: page.words.tasks[kind], about, beside });
  if (kind === 'put-up-container') return name;
  const volume = task.volume === null ? '' : ` ${showVolume(task.volume.value)}`;
  const rate = task.rate === null ? '' : ` at ${showRate(task.rate.value)}`;
  return `${name}${volume}${rate}`;
}

export const taskList = (visit: Visit, page: Page): string =>
  visit.tasks.map((task) => taskText(task, page)).join('; ');
