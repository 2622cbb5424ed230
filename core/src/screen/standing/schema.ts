/** What does the JSON of a standing promise? Its schema, from which `schema standing` is printed and against which it is tested. */
import { z } from 'zod';

const moment = (about: string) =>
  z.iso.datetime({ offset: true }).meta({ description: `${about}; RFC 3339 with the zone's offset` });
const ml = (about: string) => z.number().meta({ description: `${about}, in mL` });
const rate = z.number().min(0).meta({ description: 'mL/h' });
const number = z.number();
const working = z.record(z.string(), z.looseObject({ equation: z.string(), rule: z.string() })).meta({
  description: 'How each number came about: equation, numbers put in with their basis, result, rule',
});
const volumes = z.record(z.string(), z.number()).meta({ description: 'By kind, in mL' });

const up = z.strictObject({
  id: z.string(),
  feed: z.string(),
  putUpAt: moment('When it was spiked or first poured: its clock began'),
  comesDownBy: moment('Its own limit, where it has one').nullable(),
  filledMl: ml('What was put in'),
  remainingMl: ml('What is still in it'),
});

const container = z.strictObject({
  id: z.string(),
  feed: z.string(),
  strength: z.string(),
  closed: z.boolean(),
  putUpAt: moment('When it was put up'),
  takenDownAt: moment('When it was taken down').nullable(),
  filledMl: ml('What was put in'),
  primedMl: ml('What the line and the spill took'),
  drawnMl: ml('Drawn by the counter, else by rate × time'),
  byRateMl: ml('Drawn by rate × time alone'),
  remainingMl: ml('Filled less primed less drawn'),
  leftMl: ml('What was found in it').nullable(),
});

const interruption = z.strictObject({
  from: moment('When feed stood still'),
  until: moment('Until when'),
  reason: z.string(),
  minutes: number,
  lostMl: ml('What would have run at the rate before').nullable(),
  open: z.boolean().meta({ description: 'Whether it is not over' }),
});

const byName = z.array(z.strictObject({ name: z.string().nullable(), ml: number }));

const account = z.strictObject({
  from: moment('The beginning of the span'),
  until: moment('Its end'),
  receivedMl: ml('Mixture that reached the patient'),
  estimatedMl: ml('How much of it no counter has confirmed yet'),
  byRateMl: ml('What rate × time alone says'),
  byContainer: byName,
  byOrder: byName,
  orderedMl: z
    .strictObject({ asWritten: number, lessFasts: number })
    .nullable()
    .meta({ description: 'Ordered so far, in mL; null where no single order was in force' }),
  interruptions: z.array(interruption),
  liquids: z.strictObject({
    intakeMl: volumes,
    outputMl: volumes,
    unmeasured: z.record(z.string(), number).meta({ description: 'How often something came out unmeasured' }),
    totalInMl: number,
    totalOutMl: number,
    balanceMl: number,
    working,
  }),
  nutrition: z.strictObject({
    energyKcal: number,
    proteinG: number,
    waterMl: z.strictObject({ formula: number, given: number, total: number }),
    unknownFeeds: z.array(z.string().nullable()),
    working,
  }),
});

const check = z.strictObject({
  at: moment('When'),
  by: z.string(),
  method: z.string(),
  lumen: z.string().nullable(),
  confirmed: z.boolean(),
  ph: number.nullable(),
  markCm: number.nullable(),
  reader: z.string().nullable(),
});

const tube = z.strictObject({
  device: z.string().nullable(),
  placedAt: moment('When it was placed').nullable(),
  markPlacedCm: number.nullable(),
  markCm: number.nullable(),
  movedAt: moment('When it was found moved').nullable(),
  movedSinceConfirmed: z.boolean(),
  out: z.strictObject({ at: moment('Since when'), how: z.string().nullable() }).nullable(),
  blocked: z.array(z.strictObject({ at: moment('Since when'), lumen: z.string().nullable() })),
  lastCheck: check.nullable(),
  confirmedBy: check.nullable(),
});

const tolerance = z.strictObject({
  open: z.array(z.string()).meta({ description: 'Signs that the feed is not borne' }),
  residuals: z.array(
    z.strictObject({
      at: moment('When'),
      found: z.enum(['zero', 'measured', 'could-not-aspirate', 'not-done']),
      volumeMl: number.nullable(),
      look: z.string().nullable(),
      returnedMl: number,
      discardedMl: number,
    }),
  ),
  residualRun: z.strictObject({ run: number.nullable(), stops: z.boolean().nullable() }),
  vomits: z.array(z.strictObject({ at: moment('When'), volumeMl: number.nullable() })),
  stools: z.array(z.strictObject({ at: moment('When'), form: z.string(), volumeMl: number.nullable() })),
  distension: z
    .strictObject({ at: moment('When'), degree: z.string(), girthCm: number.nullable() })
    .nullable(),
  pain: z.strictObject({ at: moment('When'), degree: z.string(), onFeeding: z.boolean() }).nullable(),
  bowelSounds: z.strictObject({ at: moment('When'), heard: z.boolean() }).nullable(),
});

const person = z.strictObject({
  name: z.string().nullable(),
  birthDate: z.string().nullable(),
  allergies: z.array(z.string()).nullable(),
  heightCm: number.nullable(),
  weights: z.array(z.strictObject({ at: moment('When'), kg: number })),
  laboratory: z.array(
    z.strictObject({ at: moment('When'), analyte: z.string(), value: number, unit: z.string() }),
  ),
  otherEnergy: z.array(z.strictObject({ name: z.string(), kcalPerDay: number, since: moment('Since when') })),
});

const order = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('one'), order: z.string(), next: z.string().nullable() }),
  z.strictObject({ kind: z.literal('fork'), orders: z.array(z.string()) }),
  z.strictObject({
    kind: z.literal('stopped'),
    order: z.string(),
    at: moment('When'),
    reason: z.string(),
  }),
  z.strictObject({ kind: z.literal('none') }),
]);

export const standingSchema = z
  .strictObject({
    document: z.literal('feedwright-standing/1'),
    course: z.string(),
    at: moment('The moment that it is true of'),
    zone: z.string(),
    entries: z.int().min(0).meta({ description: 'How many entries it is made from' }),
    unknown: z
      .record(z.string(), z.int())
      .meta({ description: 'Kinds of entry not known here, with how many' }),
    order,
    running: z.strictObject({ rateMlPerHour: rate, since: moment('Since when') }).nullable(),
    interruption: interruption.omit({ until: true, open: true }).nullable(),
    container: up.nullable(),
    runsDryAt: moment('When it is empty, at the rate that runs').nullable(),
    waterBag: up.nullable(),
    setPutUpAt: moment('When the set was put up').nullable(),
    cartons: z.array(
      z.strictObject({ id: z.string(), feed: z.string(), openedAt: moment('When'), remainingMl: number }),
    ),
    prepared: z.array(
      z.strictObject({
        id: z.string(),
        feed: z.string(),
        preparedAt: moment('When'),
        expiresAt: moment('Until when it keeps').nullable(),
        volumeMl: number,
      }),
    ),
    lineClosed: z.strictObject({ at: moment('When'), clamped: z.boolean(), capped: z.boolean() }).nullable(),
    readBack: z
      .strictObject({ at: moment('When'), rateMlPerHour: rate, volumeToBeDeliveredMl: number.nullable() })
      .nullable(),
    position: z
      .strictObject({ at: moment('When'), headOfBedDegrees: number, posture: z.string().nullable() })
      .nullable(),
    containers: z.array(container),
    today: account.nullable(),
    yesterday: account.nullable(),
    shift: account.nullable(),
    tube,
    tolerance,
    person,
    mouthCareAt: moment('When mouth care was done last').nullable(),
    feedingSince: moment('When feeding began').nullable(),
    steps: z.strictObject({
      confirmed: z.int(),
      since: moment('When the last one was confirmed').nullable(),
      declined: z.strictObject({ at: moment('When'), step: z.int(), reason: z.string() }).nullable(),
    }),
    answers: z.array(
      z.strictObject({
        at: moment('When'),
        advice: z.string(),
        answer: z.string(),
        note: z.string().nullable(),
      }),
    ),
    contradictions: z.array(
      z.strictObject({
        code: z.string(),
        at: moment('When it showed'),
        entries: z.array(z.string()),
        says: z.string(),
        remedy: z.string(),
      }),
    ),
    done: z
      .array(z.string())
      .meta({ description: 'Planned tasks that were done, by the ids the plan gave them' }),
  })
  .meta({
    title: 'Feedwright standing',
    description: 'What is true of a course at a moment, by its entries so far',
  });

/** The JSON Schema (2020-12) of a standing, as `replay --json` prints one for each course. */
export const standingJsonSchema = (): object => z.toJSONSchema(standingSchema);
