/** How are water, medicines and modules (what goes down the tube beside the feed) written in an order document? */
import { z } from 'zod';
import { type Duration, duration } from '../base/instant.ts';
import { MOST_ITEMS } from './credible.ts';
import {
  exactly,
  flag,
  hoursIn,
  kept,
  listOf,
  maybe,
  minutesIn,
  orNull,
  text,
  timeOfDay,
  volumeIn,
  writeHours,
  writeMinutes,
  writeMl,
  writeNumber,
  writeTime,
} from './document-values.ts';
import type { MedicineByTube, Module, WaterGiven, WaterOrder } from './order.ts';

const interval = z
  .strictObject({
    kind: z.literal('interval'),
    volumeMl: volumeIn('The volume of one flush', 'dose'),
    everyHours: hoursIn('How long between two flushes', 'interval'),
    from: maybe(timeOfDay('When the first one of a day is due')),
  })
  .transform(
    ({ volumeMl, everyHours, ...rest }): WaterGiven => ({ ...rest, volume: volumeMl, every: everyHours }),
  )
  .meta({ description: 'So much every so many hours, by syringe' });

const aroundFeeds = z
  .strictObject({
    kind: z.literal('around-feeds'),
    beforeMl: volumeIn('The volume before a feed', 'doseOrNone'),
    afterMl: volumeIn('The volume after a feed', 'doseOrNone'),
  })
  .transform(({ kind, beforeMl, afterMl }): WaterGiven => ({ kind, before: beforeMl, after: afterMl }))
  .meta({ description: 'Before and after each feed' });

const atTimes = z
  .strictObject({
    kind: z.literal('times'),
    volumeMl: volumeIn('The volume each time', 'dose'),
    times: listOf(timeOfDay('A time'), MOST_ITEMS.times, 'When it is given'),
  })
  .transform(({ volumeMl, ...rest }): WaterGiven => ({ ...rest, volume: volumeMl }))
  .meta({ description: 'At named times' });

const secondBag = z
  .strictObject({
    kind: z.literal('second-bag'),
    volumeMl: volumeIn('The volume of one flush', 'dose'),
    everyHours: hoursIn('How long between two flushes', 'interval'),
  })
  .transform(({ kind, volumeMl, everyHours }): WaterGiven => ({ kind, volume: volumeMl, every: everyHours }))
  .meta({ description: 'By the pump, from a second bag: a container of its own, with a limit of its own' });

export const waterSchema = z
  .strictObject({
    water: z.enum(['tap', 'cooled-boiled', 'sterile']).meta({ description: 'Which water' }),
    given: listOf(
      z.discriminatedUnion('kind', [interval, aroundFeeds, atTimes, secondBag]),
      12,
      'How it is given',
    ),
  })
  .meta({ description: 'Water by the tube, apart from what medicines and modules need' });

function writeGiven(
  given: WaterGiven,
): z.input<typeof waterSchema>['given'] extends (infer G)[] | null | undefined ? G : never {
  switch (given.kind) {
    case 'interval':
      return kept({
        kind: given.kind,
        volumeMl: writeMl(given.volume),
        everyHours: writeHours(given.every),
        from: orNull(given.from, writeTime),
      });
    case 'around-feeds':
      return { kind: given.kind, beforeMl: writeMl(given.before), afterMl: writeMl(given.after) };
    case 'times':
      return kept({ kind: given.kind, volumeMl: writeMl(given.volume), times: given.times.map(writeTime) });
    case 'second-bag':
      return { kind: given.kind, volumeMl: writeMl(given.volume), everyHours: writeHours(given.every) };
  }
}

export const writeWater = ({ water, given }: WaterOrder): z.input<typeof waterSchema> =>
  kept({ water, given: given.map(writeGiven) });

const NO_HOLD = duration(0);

export const medicineSchema = z
  .strictObject({
    name: text('Name, strength and form'),
    times: listOf(timeOfDay('A time'), MOST_ITEMS.times, 'When it is given'),
    volumeMl: volumeIn('The volume of the medicine as it is given', 'doseOrNone'),
    holdBeforeMinutes: maybe(minutesIn('How long feed is off before it', 'minutesOrNone')),
    holdAfterMinutes: maybe(minutesIn('How long feed is off after it', 'minutesOrNone')),
    waterBeforeMl: maybe(volumeIn('Water before it; left out, local policy says', 'doseOrNone')),
    waterAfterMl: maybe(volumeIn('Water after it; left out, local policy says', 'doseOrNone')),
    lowersGlucose: flag('Whether it lowers blood glucose, so that feed must not stop unnoticed'),
  })
  .transform(
    ({
      volumeMl,
      holdBeforeMinutes,
      holdAfterMinutes,
      waterBeforeMl,
      waterAfterMl,
      ...rest
    }): MedicineByTube => ({
      ...rest,
      volume: volumeMl,
      holdBefore: holdBeforeMinutes ?? NO_HOLD,
      holdAfter: holdAfterMinutes ?? NO_HOLD,
      waterBefore: waterBeforeMl,
      waterAfter: waterAfterMl,
    }),
  )
  .meta({ description: 'A medicine by the tube' });

const holdMinutes = (lasts: Duration) => (lasts === NO_HOLD ? null : writeMinutes(lasts));

export const writeMedicine = (medicine: MedicineByTube): z.input<typeof medicineSchema> =>
  kept({
    name: medicine.name,
    times: medicine.times.map(writeTime),
    volumeMl: writeMl(medicine.volume),
    holdBeforeMinutes: holdMinutes(medicine.holdBefore),
    holdAfterMinutes: holdMinutes(medicine.holdAfter),
    waterBeforeMl: orNull(medicine.waterBefore, writeMl),
    waterAfterMl: orNull(medicine.waterAfter, writeMl),
    lowersGlucose: medicine.lowersGlucose,
  });

export const moduleSchema = z
  .strictObject({
    name: text('Name'),
    times: listOf(timeOfDay('A time'), MOST_ITEMS.times, 'When it is given'),
    waterMl: volumeIn('The water that it is given in, each time', 'doseOrNone'),
    energyKcal: exactly('energy', 'Energy of one dose'),
    proteinG: exactly('protein', 'Protein of one dose'),
  })
  .transform(({ waterMl, ...rest }): Module => ({ ...rest, water: waterMl }))
  .meta({ description: 'Modular protein or the like, in water, apart from the feed' });

export const writeModule = (module: Module): z.input<typeof moduleSchema> =>
  kept({
    name: module.name,
    times: module.times.map(writeTime),
    waterMl: writeMl(module.water),
    energyKcal: writeNumber(module.energyKcal),
    proteinG: writeNumber(module.proteinG),
  });
