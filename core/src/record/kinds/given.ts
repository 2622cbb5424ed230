/** How is it written what was given, by tube or otherwise, and what was lost? */
import { z } from 'zod';
import { minutesIn, volumeIn, writeMinutes, writeMl } from '../../order/document-values.ts';
import { choice, minutesOf, mlOf, name, numberOf, optional, part, strengthOf } from './field.ts';
import { kinds } from './kind.ts';

const timedBarrel = z
  .strictObject({
    volumeMl: volumeIn('What was in the barrel', 'dose'),
    tookMinutes: minutesIn('How long it took to run out'),
  })
  .transform(({ volumeMl, tookMinutes }) => ({ volume: volumeMl, took: tookMinutes }))
  .meta({ description: 'One barrel that somebody timed' });

export const GIVEN_KINDS = kinds({
  'feed-given/1': {
    about: 'A feed was given',
    fields: {
      by: choice('by', 'What drove it', ['syringe', 'gravity', 'pump']),
      feed: name('feed', 'The id of the feed in the feed list'),
      strength: strengthOf('strength'),
      volume: mlOf('volumeMl', 'How much', 'feed'),
      lasted: optional(minutesOf('lastedMinutes', 'How long it took')),
      heightCm: optional(numberOf('heightCm', 'How high the liquid stood above the stomach', 'length')),
      timedBarrel: optional(
        part('timedBarrel', timedBarrel, ({ volume, took }) => ({
          volumeMl: writeMl(volume),
          tookMinutes: writeMinutes(took),
        })),
      ),
    },
  },
  'water-given/1': {
    about: 'Water was given by the tube',
    fields: {
      water: choice('water', 'Which water', ['tap', 'cooled-boiled', 'sterile']),
      volume: mlOf('volumeMl', 'How much', 'feed'),
      why: choice('why', 'What for', ['flush', 'medicine', 'free-water', 'residual', 'module']),
    },
  },
  'module-given/1': {
    about: 'A module was given by the tube; its water is recorded by itself',
    fields: {
      name: name('name', 'Name'),
      energyKcal: numberOf('energyKcal', 'Its energy', 'energy'),
      proteinG: numberOf('proteinG', 'Its protein', 'protein'),
    },
  },
  'medicine-given/1': {
    about: 'A medicine was given by the tube',
    fields: {
      name: name('name', 'Name, strength and form'),
      volume: mlOf('volumeMl', 'The volume of the medicine as it was given', 'doseOrNone'),
      lumen: optional(name('lumen', 'Which lumen, by its name on the device')),
    },
  },
  'feed-lost/1': {
    about: 'Feed was lost: before it reached the person, or out of the person’s tube',
    fields: {
      where: choice('where', 'Where', ['before-patient', 'out-of-tube']),
      volume: mlOf('volumeMl', 'How much', 'amount'),
    },
  },
  'intake-measured/1': {
    about: 'What the person took in otherwise',
    fields: {
      route: choice('route', 'How', ['oral', 'intravenous', 'other']),
      volume: mlOf('volumeMl', 'How much', 'amountOrNone'),
      energyKcal: optional(numberOf('energyKcal', 'Its energy', 'energy')),
    },
  },
});
