/** What does the JSON of a plan promise? Its schema, from which `schema plan` is printed and against which plans are tested. */
import { z } from 'zod';

const moment = (about: string) =>
  z.iso.datetime({ offset: true }).meta({ description: `${about}; RFC 3339 with the zone's offset` });
const ml = (about: string) =>
  z
    .number()
    .min(0)
    .meta({ description: `${about}, in mL` });
const rate = z.number().min(0).meta({ description: 'mL/h' });
const working = z.record(z.string(), z.looseObject({ equation: z.string(), rule: z.string() })).meta({
  description: 'How each number came about: equation, numbers put in with their basis, result, rule',
});

const problem = z.strictObject({
  rule: z.string().meta({ description: 'The rule, such as OR12' }),
  level: z.enum(['stop', 'ask', 'note']),
  says: z.string(),
  remedy: z.string(),
  path: z.string().meta({ description: 'The field of the order, outermost first' }),
  confirm: z.string().nullable().meta({ description: 'The key with which it is confirmed, where it can be' }),
  confirmedBy: z.string().nullable(),
});

const piece = z.strictObject({
  from: moment('When it begins'),
  until: moment('When it ends'),
  rateMlPerHour: rate,
  volumeMl: ml('What is given as one volume over the time').optional(),
  ifEatenLessThan: z
    .string()
    .optional()
    .meta({ description: 'Given only if less than this share of the meal was eaten, as 1/2' }),
  working: z.looseObject({}),
});

const carton = z.strictObject({
  carton: z.string().meta({ description: 'open:<id> for one already open, new:<n> for one from the store' }),
  takeMl: ml('What is poured from it'),
  leftMl: ml('What stays in it'),
  keepUntil: moment('Kept cold until').nullable(),
});

const container = z.strictObject({
  putUpAt: moment('When it is put up; the hang clock starts here'),
  alreadyUp: z.boolean(),
  feed: z.string(),
  closed: z.boolean().meta({ description: 'Spiked whole, not poured' }),
  runsDryAt: moment(
    'The first moment at which it is empty, if it empties before it must come down',
  ).nullable(),
  runsDryEarliest: moment('The same, if every step up is confirmed as early as it may be').nullable(),
  takeDownBy: moment('The earliest of its limits'),
  because: z.string().meta({ description: 'The limit that governs' }),
  nextAt: moment('When the next one is put up').nullable(),
  fillMl: ml('What is poured, or the container that is spiked'),
  newSet: z.boolean(),
  primeMl: ml('What the new set takes: line and spill'),
  volumeToDeliverMl: ml('What can be delivered before it comes down'),
  leftOverMl: ml('What is thrown away with it'),
  formulaMl: ml('What of a diluted feed is formula; null at full strength').nullable(),
  addWaterMl: ml('The water that it is mixed with; null at full strength').nullable(),
  cartons: z.array(carton),
  working,
});

const task = z.strictObject({
  id: z.string(),
  kind: z.string(),
  earliest: moment('The earliest it may be done'),
  nominal: moment('When it is meant to be done'),
  latest: moment('The latest it may be done'),
  about: z.string().nullable(),
  beside: z.enum(['before', 'between', 'after']).nullable(),
  volumeMl: ml('How much').nullable(),
  rateMlPerHour: rate.nullable(),
  rule: z.string(),
  working,
});

const amount = z.number().nullable();

const day = z.strictObject({
  from: moment('The start of the feeding day'),
  until: moment('Its end'),
  formulaMl: ml('Formula'),
  mixtureMl: ml('Formula with the water that dilutes it'),
  energyKcal: z.number().min(0),
  proteinG: z.number().min(0),
  waterMl: z.strictObject({
    formula: ml('Water in the feed'),
    flushes: ml('Water given beside it'),
    total: ml('Both'),
  }),
  orderedMl: amount,
  needs: z.strictObject({ energyKcal: amount, proteinG: amount, waterMl: amount }),
  working,
});

export const planSchema = z
  .strictObject({
    document: z.literal('feedwright-plan/1'),
    at: moment('The moment it was made for'),
    from: moment('The start of what is planned'),
    until: moment('The end of what is planned'),
    zone: z.string(),
    problems: z.array(problem),
    programme: z.array(piece),
    gaps: z.array(
      z.strictObject({
        from: moment('When feed stops'),
        until: moment('When it may run again'),
        why: z.string(),
        holds: z.array(z.string()),
        untilKnown: z.boolean(),
      }),
    ),
    shortfallMl: ml('What was ordered and cannot be given').nullable(),
    lost: z.array(
      z.strictObject({
        from: moment('Where it is lost, or the day or window that falls short'),
        until: moment('Its end'),
        why: z.string(),
        volumeMl: ml('How much'),
        working: z.looseObject({}),
      }),
    ),
    containers: z.array(container),
    waterBags: z.array(container),
    visits: z.array(z.strictObject({ at: moment('When'), tasks: z.array(task) })),
    day: day.nullable(),
    infeasible: z.array(
      z.strictObject({
        rule: z.string(),
        code: z.string(),
        about: z.string(),
        at: moment('When').nullable(),
        says: z.string(),
      }),
    ),
  })
  .meta({
    title: 'Feedwright plan',
    description: 'What should happen from now on; the order and local policy decide',
  });

/** The JSON Schema (2020-12) of what `plan --json` prints. */
export const planJsonSchema = (): object => z.toJSONSchema(planSchema);
