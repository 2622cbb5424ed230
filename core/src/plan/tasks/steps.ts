/** When may an order that goes up in steps go up? Somebody is asked, each time; nothing steps by itself. */
import { after, duration, type Instant, later, MINUTE, type Span } from '../../base/instant.ts';
import type { Rate, Volume } from '../../base/volume.ts';
import type { Worked } from '../../base/working.ts';
import type { Policy } from '../../policy/policy.ts';
import { rateLevels, volumeLevels } from '../../programme/advancement.ts';
import { type Frame, frameOf } from '../../programme/frame.ts';
import type { Course } from '../course.ts';
import { gridUp } from '../grid.ts';
import type { Task } from '../plan.ts';
import { afterwards, task, taskId, type Window } from './due.ts';
import { feedingsOf, feedWindow } from './feeding.ts';

type Step = {
  readonly rate: Worked<Rate> | null;
  readonly volume: Worked<Volume> | null;
};

function stepsOf({ regimen }: Course, frame: Frame): readonly Step[] {
  if (regimen.advance === null) return [];
  if (regimen.kind === 'intermittent' || regimen.kind === 'bolus') {
    const levels = volumeLevels(frame, regimen.volume, regimen.advance, 'regimen.volume') ?? [];
    return levels.map(({ is }) => ({ rate: null, volume: is }));
  }
  const start = { rate: regimen.advance.start, of: 'mixture' } as const;
  const ordered = regimen.kind === 'volume-targeted' ? regimen.baseRate : (regimen.rate ?? start);
  const levels = rateLevels(frame, ordered, regimen.advance, 'regimen.rate') ?? [];
  return levels.map(({ is }) => ({ rate: is, volume: null }));
}

/** From when the level that holds now counts: from the last step, or from when feeding began or will; null if it will not. */
function levelSince({ standing, programme, feedFrom }: Course): Instant | null {
  const runs = programme.pieces.find((piece) => piece.until > feedFrom);
  const begins = runs === undefined ? null : later(runs.from, feedFrom);
  return standing.advancement.since ?? standing.feedingSince ?? begins;
}

/** Where a question is asked: a volume goes up with a feed, so the question waits for the next one. */
function askedAt(course: Course, due: Instant, step: Step): Window | null {
  if (step.volume === null) return afterwards(due, course.local.should('window.check')?.value ?? duration(0));
  const feeding = feedingsOf(course).find(({ whole }) => whole.from >= due);
  if (feeding === undefined) return null;
  const { earliest, nominal, latest } = feedWindow(course, feeding);
  return { earliest: later(earliest, due), nominal, latest };
}

/**
 * [PL43] A question for each step that may come, with what it would go up to; one that nobody was asked stays open, and the
 * next one is its interval after that. Where one was answered with no, the next asks for the same step.
 */
export function stepTasks(course: Course, policy: Policy): readonly Task[] {
  const { order, standing, horizon, regimen } = course;
  const since = levelSince(course);
  if (regimen.advance === null || since === null) return [];
  const span: Span = { from: standing.at, until: after(horizon.until, duration(1)) };
  const frame = frameOf({ order, policy, standing, span, pace: 'highest' });
  const every = duration(Math.max(regimen.advance.every, MINUTE));
  const tasks: Task[] = [];
  let due = after(since, every);
  for (const step of stepsOf(course, frame).slice(1)) {
    while (standing.done.has(taskId({ kind: 'confirm-step' }, due))) due = after(due, every);
    const window = askedAt(course, due, step);
    if (window === null || due >= horizon.until || window.nominal >= horizon.until) break;
    const open = { ...window, latest: later(window.latest, gridUp(standing.at)) };
    tasks.push(task({ kind: 'confirm-step', ...step, dueAt: due, rule: 'PL43' }, open));
    // While its own window is open the question is not late, and the next one does not move.
    due = after(window.latest < standing.at ? standing.at : due, every);
  }
  return tasks;
}
