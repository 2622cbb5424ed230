/** When may an order that goes up in steps go up? Somebody is asked, each time; nothing steps by itself. */
import { after, duration, type Instant, type Span, within } from '../../base/instant.ts';
import type { Rate, Volume } from '../../base/volume.ts';
import type { Worked } from '../../base/working.ts';
import type { Policy } from '../../policy/policy.ts';
import { rateLevels, volumeLevels } from '../../programme/advancement.ts';
import { type Frame, frameOf } from '../../programme/frame.ts';
import type { Course } from '../course.ts';
import type { Task } from '../plan.ts';
import { afterwards, task } from './due.ts';

type Step = {
  readonly from: Instant;
  readonly rate: Worked<Rate> | null;
  readonly volume: Worked<Volume> | null;
};

function stepsOf({ regimen }: Course, frame: Frame): readonly Step[] {
  if (regimen.advance === null) return [];
  if (regimen.kind === 'intermittent' || regimen.kind === 'bolus') {
    const levels = volumeLevels(frame, regimen.volume, regimen.advance, 'regimen.volume') ?? [];
    return levels.map(({ from, is }) => ({ from, rate: null, volume: is }));
  }
  const start = { rate: regimen.advance.start, of: 'mixture' } as const;
  const ordered = regimen.kind === 'volume-targeted' ? regimen.baseRate : (regimen.rate ?? start);
  const levels = rateLevels(frame, ordered, regimen.advance, 'regimen.rate') ?? [];
  return levels.map(({ from, is }) => ({ from, rate: is, volume: null }));
}

/** [PL43] A question for each step that may come, with what it would go up to. */
export function stepTasks(course: Course, policy: Policy): readonly Task[] {
  const { order, standing, horizon, regimen, local } = course;
  if (regimen.advance === null) return [];
  const span: Span = { from: standing.at, until: after(horizon.until, duration(1)) };
  const frame = frameOf({ order, policy, standing, span, pace: 'highest' });
  const by = local.should('window.check')?.value ?? duration(0);
  return stepsOf(course, frame)
    .filter((step) => within(horizon, step.from))
    .map(({ from, rate, volume }) =>
      task({ kind: 'confirm-step', rate, volume, rule: 'PL43' }, afterwards(from, by)),
    );
}
