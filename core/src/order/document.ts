/**
 * What does an order document say? Our own JSON form of an order, `feedwright-order/1`: strict, with the unit of each
 * number in the name of its field. Reading finds everything that is wrong at once; writing is the exact inverse.
 */
import { z } from 'zod';
import { knownFields, toIssues, wrongKind } from '../base/document-issues.ts';
import { parseJson } from '../base/json.ts';
import { bad, ok, type Result } from '../base/result.ts';
import { NOTHING } from '../base/volume.ts';
import type { Zone } from '../base/zone.ts';
import { MOST_ITEMS } from './credible.ts';
import { accessSchema, patientSchema, writeAccess, writePatient } from './document-patient.ts';
import { regimenSchema, writeRegimen } from './document-regimen.ts';
import {
  exactly,
  flag,
  kept,
  listOf,
  maybe,
  moment,
  orNull,
  rateIn,
  strength,
  text,
  volumeIn,
  writeMl,
  writeMlPerHour,
  writeMoment,
  writeNumber,
  writeStrength,
  zoneName,
} from './document-values.ts';
import {
  medicineSchema,
  moduleSchema,
  waterSchema,
  writeMedicine,
  writeModule,
  writeWater,
} from './document-water.ts';
import type { Hold, Order } from './order.ts';

export const ORDER_DOCUMENT = 'feedwright-order/1';
/** 1 MB of text: some thousand times what the longest order needs. */
export const MOST_ORDER_TEXT = 1_000_000;

const feedSchema = z
  .strictObject({
    id: text('The id of the feed in the feed list'),
    strength,
    additives: listOf(
      z.strictObject({ name: text('What is mixed in'), amount: maybe(text('How much')) }),
      MOST_ITEMS.additives,
      'Mixed into the feed',
    ),
    statedKcalPerMl: maybe(
      exactly('density', 'The energy density by the order itself, compared with the feed list'),
    ),
    preparedAt: maybe(moment('When the feed was prepared')),
    expiresAt: maybe(moment('When the feed expires')),
  })
  .meta({ description: 'What is given' });

export const holdSchema = z
  .strictObject({
    id: text('A name for it, different from other holds'),
    from: moment('When feed stops'),
    until: maybe(moment('When feed may run again; left out, nobody knows yet')),
    why: z
      .enum(['procedure', 'fast', 'medicine', 'intolerance', 'tube', 'other'])
      .meta({ description: 'Why' }),
    note: maybe(text('What else is to be known', 500)),
  })
  .meta({ description: 'A time during which feed does not run' });

const needsSchema = z
  .strictObject({
    energyKcalPerDay: maybe(exactly('energy', 'Energy needed a day')),
    proteinGPerDay: maybe(exactly('protein', 'Protein needed a day')),
    waterMlPerDay: maybe(volumeIn('Water needed a day', 'volumePerDay')),
  })
  .meta({ description: 'What the person needs a day, as assessed' });

const confirmationSchema = z
  .strictObject({
    rule: text('The rule of the problem that it answers, such as OR31'),
    by: text('Who confirmed it'),
    at: maybe(moment('When')),
    why: maybe(text('Why', 500)),
  })
  .meta({ description: 'What a named person has confirmed' });

export const orderSchema = z
  .strictObject({
    document: z.literal(ORDER_DOCUMENT).meta({ description: 'What this document is, and its version' }),
    id: text('The order’s own number'),
    replaces: maybe(text('The order that it takes the place of')),
    zone: zoneName,
    setting: z
      .enum(['hospital', 'residential-care', 'home'])
      .meta({ description: 'Where the person is fed' }),
    patient: patientSchema,
    prescriber: maybe(
      z
        .strictObject({ name: text('Name'), role: maybe(text('Role')) })
        .meta({ description: 'Who wrote the order' }),
    ),
    prescribedAt: maybe(moment('When it was written')),
    startsAt: maybe(moment('When it begins to hold')),
    endsAt: maybe(moment('When it ceases to hold')),
    feed: maybe(feedSchema),
    access: maybe(accessSchema),
    method: maybe(z.enum(['pump', 'gravity', 'syringe']).meta({ description: 'What drives the feed' })),
    regimen: maybe(regimenSchema),
    water: maybe(waterSchema),
    holds: listOf(holdSchema, MOST_ITEMS.holds, 'Times without feed'),
    medicines: listOf(medicineSchema, MOST_ITEMS.medicines, 'Medicines by the tube'),
    modules: listOf(moduleSchema, MOST_ITEMS.modules, 'Modules by the tube'),
    mostRateMlPerHour: maybe(rateIn('The rate that is never to be exceeded')),
    mostVolumeMlPerDay: maybe(
      volumeIn('The volume of feed that is not to be exceeded in a day', 'volumePerDay'),
    ),
    fluidLimitMlPerDay: maybe(
      volumeIn('All fluid together in a day: feed, water, medicines, intravenous', 'volumePerDay'),
    ),
    intravenousMlPerDay: maybe(volumeIn('Intravenous fluid a day', 'volumePerDayOrNone')),
    otherEnergy: listOf(
      z.strictObject({ name: text('What it is'), kcalPerDay: exactly('energy', 'Its energy a day') }),
      MOST_ITEMS.otherEnergy,
      'Energy from elsewhere: glucose drips, lipid in sedation, parenteral, oral',
    ),
    needs: maybe(needsSchema),
    catchUpProtocol: maybe(text('The protocol by which lost volume may be made up')),
    refeedingCaution: flag('Whether refeeding problems are to be guarded against'),
    confirmations: listOf(confirmationSchema, MOST_ITEMS.confirmations, 'What was asked about and confirmed'),
  })
  .meta({ title: 'Feedwright order', description: 'One order for feeding one person by tube' });

export type OrderDocument = z.input<typeof orderSchema>;

const NO_NEEDS = { energyKcalPerDay: null, proteinGPerDay: null, waterMlPerDay: null };

export function toOrder(read: z.output<typeof orderSchema>): Order {
  const { document: _, needs, ...rest } = read;
  const { mostRateMlPerHour, mostVolumeMlPerDay, fluidLimitMlPerDay, intravenousMlPerDay, ...same } = rest;
  const { waterMlPerDay, ...needed } = needs ?? NO_NEEDS;
  return {
    ...same,
    mostRate: mostRateMlPerHour,
    mostVolumePerDay: mostVolumeMlPerDay,
    fluidLimitPerDay: fluidLimitMlPerDay,
    intravenousPerDay: intravenousMlPerDay ?? NOTHING,
    needs: { ...needed, waterPerDay: waterMlPerDay },
  };
}

/**
 * Reads an order document that is already JSON.
 * @returns the order, or everything that is wrong with the document, each with its path. Never throws on input.
 */
export function parseOrder(json: unknown): Result<Order> {
  const wrong = wrongKind(json, ORDER_DOCUMENT);
  if (wrong !== null) return bad(wrong);
  const read = orderSchema.safeParse(json, { error: knownFields, reportInput: true });
  return read.success ? ok(toOrder(read.data)) : bad(...read.error.issues.flatMap(toIssues));
}

/** Reads the text of an order document: as `parseOrder`, and `json/…` with line and column where it is no JSON. */
export function parseOrderText(text: string): Result<Order> {
  const json = parseJson(text, MOST_ORDER_TEXT);
  return json.ok ? parseOrder(json.value) : json;
}

export const writeHold = (hold: Hold, zone: Zone): z.input<typeof holdSchema> =>
  kept({
    ...hold,
    from: writeMoment(hold.from, zone),
    until: orNull(hold.until, (at) => writeMoment(at, zone)),
  });

function writeFeed(feed: NonNullable<Order['feed']>, zone: Zone): z.input<typeof feedSchema> {
  const at = (moment: typeof feed.preparedAt) => orNull(moment, (one) => writeMoment(one, zone));
  return kept({
    id: feed.id,
    strength: writeStrength(feed.strength),
    additives: feed.additives.map(kept),
    statedKcalPerMl: orNull(feed.statedKcalPerMl, writeNumber),
    preparedAt: at(feed.preparedAt),
    expiresAt: at(feed.expiresAt),
  });
}

function writeNeeds({ energyKcalPerDay, proteinGPerDay, waterPerDay }: Order['needs']) {
  const written = kept({
    energyKcalPerDay: orNull(energyKcalPerDay, writeNumber),
    proteinGPerDay: orNull(proteinGPerDay, writeNumber),
    waterMlPerDay: orNull(waterPerDay, writeMl),
  });
  return Object.keys(written).length === 0 ? null : written;
}

/** Writes an order so that `parseOrder` gives back the same order. What reading supplies by itself is left out. */
export function orderDocument(order: Order): OrderDocument {
  const { zone } = order;
  const at = (moment: Order['startsAt']) => orNull(moment, (one) => writeMoment(one, zone));
  return kept({
    document: ORDER_DOCUMENT,
    id: order.id,
    replaces: order.replaces,
    zone,
    setting: order.setting,
    patient: writePatient(order.patient),
    prescriber: orNull(order.prescriber, kept),
    prescribedAt: at(order.prescribedAt),
    startsAt: at(order.startsAt),
    endsAt: at(order.endsAt),
    feed: orNull(order.feed, (feed) => writeFeed(feed, zone)),
    access: orNull(order.access, (access) => writeAccess(access, zone)),
    method: order.method,
    regimen: orNull(order.regimen, writeRegimen),
    water: orNull(order.water, writeWater),
    holds: order.holds.map((hold) => writeHold(hold, zone)),
    medicines: order.medicines.map(writeMedicine),
    modules: order.modules.map(writeModule),
    mostRateMlPerHour: orNull(order.mostRate, writeMlPerHour),
    mostVolumeMlPerDay: orNull(order.mostVolumePerDay, writeMl),
    fluidLimitMlPerDay: orNull(order.fluidLimitPerDay, writeMl),
    intravenousMlPerDay: order.intravenousPerDay === NOTHING ? null : writeMl(order.intravenousPerDay),
    otherEnergy: order.otherEnergy.map(({ name, kcalPerDay }) => ({
      name,
      kcalPerDay: writeNumber(kcalPerDay),
    })),
    needs: writeNeeds(order.needs),
    catchUpProtocol: order.catchUpProtocol,
    refeedingCaution: order.refeedingCaution,
    confirmations: order.confirmations.map((one) => kept({ ...one, at: at(one.at) })),
  });
}

/** The JSON Schema (2020-12) of an order document, made from the same description that reads it. */
export const orderJsonSchema = (): Readonly<Record<string, unknown>> =>
  z.toJSONSchema(orderSchema, { io: 'input' });
