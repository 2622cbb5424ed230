/**
 * How is a regimen written in an order document? An amount with a strength means the mixture; `of: "formula"` says
 * otherwise, for the whole regimen or, where there are several amounts, for one of them.
 */
import { z } from 'zod';
import { MOST_ITEMS } from './credible.ts';
import { rateAdvance, volumeAdvance, writeRateAdvance, writeVolumeAdvance } from './document-advance.ts';
import {
  exactly,
  hoursIn,
  kept,
  listOf,
  maybe,
  minutesIn,
  orNull,
  rateIn,
  timeOfDay,
  volumeIn,
  writeHours,
  writeMinutes,
  writeMl,
  writeMlPerHour,
  writeNumber,
  writeTime,
} from './document-values.ts';
import type { Of, Regimen } from './order.ts';

const ofAmount = (about: string) =>
  maybe(
    z.enum(['mixture', 'formula']).meta({
      description: `${about}: the mixture as it is given (unless said otherwise), or the formula in it`,
    }),
  );

const of = ofAmount('What the amounts of the regimen are amounts of');
const times = (about: string) => listOf(timeOfDay('A time'), MOST_ITEMS.times, about);

const MIXTURE: Of = 'mixture';

const continuous = z
  .strictObject({
    kind: z.literal('continuous'),
    rateMlPerHour: rateIn('The rate'),
    of,
    perDay: maybe(
      z
        .strictObject({
          from: timeOfDay('When it begins'),
          hours: hoursIn('How long it runs', 'hoursPerDay'),
        })
        .transform(({ from, hours }) => ({ from, lasts: hours }))
        .meta({ description: 'Elapsed hours a day; left out, it runs all day' }),
    ),
    advance: rateAdvance,
  })
  .transform(
    ({ rateMlPerHour, of, ...rest }): Regimen => ({
      ...rest,
      rate: { rate: rateMlPerHour, of: of ?? MIXTURE },
    }),
  )
  .meta({ description: 'By pump at a rate, all day or for some hours of it' });

const cyclic = z
  .strictObject({
    kind: z.literal('cyclic'),
    from: timeOfDay('When it begins'),
    until: timeOfDay('When it ends'),
    rateMlPerHour: maybe(rateIn('The rate')),
    volumeMl: maybe(volumeIn('The volume of one window', 'volumePerDay')),
    of,
    volumeOf: ofAmount('What the volume is a volume of, where it differs'),
    advance: rateAdvance,
  })
  .transform(
    ({ rateMlPerHour, volumeMl, of, volumeOf, ...rest }): Regimen => ({
      ...rest,
      rate: orNull(rateMlPerHour, (rate) => ({ rate, of: of ?? MIXTURE })),
      volume: orNull(volumeMl, (volume) => ({ volume, of: volumeOf ?? of ?? MIXTURE })),
    }),
  )
  .meta({
    description: 'In a window of the day: a rate, a volume, or both (runs at the rate, stops at the volume)',
  });

const intermittent = z
  .strictObject({
    kind: z.literal('intermittent'),
    volumeMl: volumeIn('The volume of one feed', 'feed'),
    of,
    times: times('When the feeds begin'),
    minutes: minutesIn('How long one feed takes'),
    by: z.enum(['pump', 'gravity']).meta({ description: 'What drives it' }),
    advance: volumeAdvance,
  })
  .transform(
    ({ volumeMl, of, minutes, ...rest }): Regimen => ({
      ...rest,
      volume: { volume: volumeMl, of: of ?? MIXTURE },
      lasts: minutes,
    }),
  )
  .meta({ description: 'A volume at named times, by pump or gravity' });

const meal = z
  .strictObject({
    at: timeOfDay('When the bolus after the meal is due'),
    ifEatenLessThan: exactly('share', 'The share of the meal under which it is given'),
  })
  .meta({ description: 'A bolus that is given only if too little of a meal was eaten' });

const bolus = z
  .strictObject({
    kind: z.literal('bolus'),
    volumeMl: volumeIn('The volume of one bolus', 'feed'),
    of,
    times: times('When boluses are given whatever was eaten'),
    minutes: maybe(minutesIn('How long one bolus takes; left out, local policy says')),
    meals: listOf(meal, MOST_ITEMS.meals, 'Boluses that depend on a meal'),
    advance: volumeAdvance,
  })
  .transform(
    ({ volumeMl, of, minutes, ...rest }): Regimen => ({
      ...rest,
      volume: { volume: volumeMl, of: of ?? MIXTURE },
      lasts: minutes,
    }),
  )
  .meta({ description: 'By syringe at named times' });

const volumeTargeted = z
  .strictObject({
    kind: z.literal('volume-targeted'),
    volumeMlPerDay: volumeIn('The volume of a feeding day', 'volumePerDay'),
    baseRateMlPerHour: rateIn('The rate while nothing was lost'),
    mostRateMlPerHour: maybe(rateIn('The rate that making up may not exceed')),
    of,
    baseRateOf: ofAmount('What the base rate is a rate of, where it differs'),
    mostRateOf: ofAmount('What the most is a rate of, where it differs'),
    advance: rateAdvance,
  })
  .transform(
    ({
      volumeMlPerDay,
      baseRateMlPerHour,
      mostRateMlPerHour,
      of,
      baseRateOf,
      mostRateOf,
      ...rest
    }): Regimen => ({
      ...rest,
      volumePerDay: { volume: volumeMlPerDay, of: of ?? MIXTURE },
      baseRate: { rate: baseRateMlPerHour, of: baseRateOf ?? of ?? MIXTURE },
      mostRate: orNull(mostRateMlPerHour, (rate) => ({ rate, of: mostRateOf ?? of ?? MIXTURE })),
    }),
  )
  .meta({ description: 'A volume a day: what was lost is made up within the most' });

export const regimenSchema = z
  .discriminatedUnion('kind', [continuous, cyclic, intermittent, bolus, volumeTargeted])
  .meta({ description: 'How the feed is given over the day' });

type RegimenDocument = z.input<typeof regimenSchema>;

/** Left out where reading would supply it. */
const unless = (said: Of | undefined, supplied: Of): Of | null =>
  said === undefined || said === supplied ? null : said;

const writeTimes = (times: readonly number[]): string[] => times.map(writeTime);

function writeCyclic(regimen: Extract<Regimen, { kind: 'cyclic' }>): RegimenDocument {
  const { kind, from, until, rate, volume, advance } = regimen;
  const of = rate?.of ?? volume?.of ?? MIXTURE;
  return kept({
    kind,
    from: writeTime(from),
    until: writeTime(until),
    rateMlPerHour: orNull(rate, (one) => writeMlPerHour(one.rate)),
    volumeMl: orNull(volume, (one) => writeMl(one.volume)),
    of: unless(of, MIXTURE),
    volumeOf: unless(volume?.of, of),
    advance: orNull(advance, writeRateAdvance),
  });
}

function writeVolumeTargeted(regimen: Extract<Regimen, { kind: 'volume-targeted' }>): RegimenDocument {
  const { kind, volumePerDay, baseRate, mostRate, advance } = regimen;
  return kept({
    kind,
    volumeMlPerDay: writeMl(volumePerDay.volume),
    baseRateMlPerHour: writeMlPerHour(baseRate.rate),
    mostRateMlPerHour: orNull(mostRate, (one) => writeMlPerHour(one.rate)),
    of: unless(volumePerDay.of, MIXTURE),
    baseRateOf: unless(baseRate.of, volumePerDay.of),
    mostRateOf: unless(mostRate?.of, volumePerDay.of),
    advance: orNull(advance, writeRateAdvance),
  });
}

export function writeRegimen(regimen: Regimen): RegimenDocument {
  switch (regimen.kind) {
    case 'continuous':
      return kept({
        kind: regimen.kind,
        rateMlPerHour: writeMlPerHour(regimen.rate.rate),
        of: unless(regimen.rate.of, MIXTURE),
        perDay: orNull(regimen.perDay, ({ from, lasts }) => ({
          from: writeTime(from),
          hours: writeHours(lasts),
        })),
        advance: orNull(regimen.advance, writeRateAdvance),
      });
    case 'cyclic':
      return writeCyclic(regimen);
    case 'intermittent':
      return kept({
        kind: regimen.kind,
        volumeMl: writeMl(regimen.volume.volume),
        of: unless(regimen.volume.of, MIXTURE),
        times: writeTimes(regimen.times),
        minutes: writeMinutes(regimen.lasts),
        by: regimen.by,
        advance: orNull(regimen.advance, writeVolumeAdvance),
      });
    case 'bolus':
      return kept({
        kind: regimen.kind,
        volumeMl: writeMl(regimen.volume.volume),
        of: unless(regimen.volume.of, MIXTURE),
        times: writeTimes(regimen.times),
        minutes: orNull(regimen.lasts, writeMinutes),
        meals: regimen.meals.map(({ at, ifEatenLessThan }) => ({
          at: writeTime(at),
          ifEatenLessThan: writeNumber(ifEatenLessThan),
        })),
        advance: orNull(regimen.advance, writeVolumeAdvance),
      });
    case 'volume-targeted':
      return writeVolumeTargeted(regimen);
  }
}
