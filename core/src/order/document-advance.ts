/** How are steps up written in an order document? By rate for what runs, by volume for what comes in portions. */
import { z } from 'zod';
import type { Rate, Volume } from '../base/volume.ts';
import { hoursIn, maybe, rateIn, volumeIn, writeHours, writeMl, writeMlPerHour } from './document-values.ts';
import type { Advancement } from './order.ts';

export const rateAdvance = maybe(
  z
    .strictObject({
      startMlPerHour: rateIn('The rate to begin with'),
      stepMlPerHour: rateIn('How much it may rise at a step'),
      everyHours: hoursIn('How long between two steps', 'interval'),
      goalMlPerHour: rateIn('The rate to reach'),
    })
    .transform(
      ({
        startMlPerHour: start,
        stepMlPerHour: step,
        everyHours: every,
        goalMlPerHour: goal,
      }): Advancement<Rate> => ({
        start,
        step,
        every,
        goal,
      }),
    )
    .meta({ description: 'Steps up, each on tolerance and confirmed by somebody' }),
);

export const volumeAdvance = maybe(
  z
    .strictObject({
      startMl: volumeIn('The volume to begin with', 'feed'),
      stepMl: volumeIn('How much it may rise at a step', 'feed'),
      everyHours: hoursIn('How long between two steps', 'interval'),
      goalMl: volumeIn('The volume to reach', 'feed'),
    })
    .transform(
      ({ startMl: start, stepMl: step, everyHours: every, goalMl: goal }): Advancement<Volume> => ({
        start,
        step,
        every,
        goal,
      }),
    )
    .meta({ description: 'Steps up, each on tolerance and confirmed by somebody' }),
);

export const writeRateAdvance = ({ start, step, every, goal }: Advancement<Rate>) => ({
  startMlPerHour: writeMlPerHour(start),
  stepMlPerHour: writeMlPerHour(step),
  everyHours: writeHours(every),
  goalMlPerHour: writeMlPerHour(goal),
});

export const writeVolumeAdvance = ({ start, step, every, goal }: Advancement<Volume>) => ({
  startMl: writeMl(start),
  stepMl: writeMl(step),
  everyHours: writeHours(every),
  goalMl: writeMl(goal),
});
