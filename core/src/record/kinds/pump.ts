/** How is it written what the pump was set to, did and showed? */
import { choice, line, mlOf, mlPerHourOf, optional, yesOrNo } from './field.ts';
import { kinds } from './kind.ts';

const REASONS = [
  'procedure',
  'care',
  'medicine',
  'intolerance',
  'tube',
  'equipment',
  'fast',
  'other',
] as const;

const rate = mlPerHourOf('rateMlPerHour', 'The rate');
const toBeDelivered = optional(
  mlOf('volumeToBeDeliveredMl', 'The volume at which the pump is set to stop', 'amount'),
);
const counts = choice('counts', 'Which counter', ['feed', 'water']);

export const PUMP_KINDS = kinds({
  'pump-started/1': { about: 'The pump was started', fields: { rate, volumeToBeDelivered: toBeDelivered } },
  'rate-changed/1': { about: 'The pump was set to another rate', fields: { rate } },
  'pump-paused/1': {
    about: 'The pump was paused, or found stopped',
    fields: {
      reason: choice('reason', 'Why', REASONS),
      note: optional(line('note', 'What else is to be known')),
    },
  },
  'pump-resumed/1': { about: 'The pump runs again at its rate', fields: {} },
  'pump-stopped/1': {
    about: 'The pump was stopped, not to be resumed',
    fields: { reason: choice('reason', 'Why', [...REASONS, 'feed-ended']) },
  },
  'counter-read/1': {
    about: 'What the pump’s counter showed',
    fields: { counts, volume: mlOf('volumeMl', 'What it showed', 'amountOrNone') },
  },
  'counter-cleared/1': {
    about: 'The counter was set to nothing',
    fields: {
      counts,
      read: optional(mlOf('readMl', 'What it showed before; left out, nobody read it', 'amountOrNone')),
    },
  },
  'programme-read-back/1': {
    about: 'What the pump is set to, read from it',
    fields: { rate, volumeToBeDelivered: toBeDelivered },
  },
  'line-closed/1': {
    about: 'The line was closed off while feed does not run',
    fields: {
      clamped: yesOrNo('clamped', 'Whether it is clamped'),
      capped: yesOrNo('capped', 'Whether its end is capped'),
    },
  },
});
