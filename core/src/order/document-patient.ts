/** How are the person and the tube written in an order document? */
import { z } from 'zod';
import type { Zone } from '../base/zone.ts';
import { MOST_ITEMS } from './credible.ts';
import {
  day,
  exactly,
  kept,
  listOf,
  maybe,
  moment,
  orNull,
  text,
  writeMoment,
  writeNumber,
} from './document-values.ts';
import type { AccessDevice, Patient } from './order.ts';

export const patientSchema = z
  .strictObject({
    name: maybe(text('Name')),
    birthDate: maybe(day('Date of birth')),
    identifiers: listOf(
      z.strictObject({ kind: text('Whose number it is: hospital-number'), value: text('The number itself') }),
      MOST_ITEMS.identifiers,
      'Numbers that identify the person',
    ),
    place: maybe(text('Ward, room, bed')),
    allergies: listOf(
      text('Something the person is allergic to, in plain words'),
      MOST_ITEMS.allergies,
      'Allergies',
    ),
    dosingWeight: maybe(
      z
        .strictObject({ kg: exactly('weight', 'Weight'), on: maybe(day('The day it was taken')) })
        .meta({ description: 'The weight that doses are worked from' }),
    ),
    heightCm: maybe(exactly('height', 'Height')),
  })
  .meta({ description: 'The person who is fed' });

export const writePatient = (patient: Patient): z.input<typeof patientSchema> =>
  kept({
    ...patient,
    identifiers: [...patient.identifiers],
    allergies: [...patient.allergies],
    dosingWeight: orNull(patient.dosingWeight, ({ kg, on }) => kept({ kg: writeNumber(kg), on })),
    heightCm: orNull(patient.heightCm, writeNumber),
  });

const DEVICES = [
  'nasogastric',
  'orogastric',
  'nasoduodenal',
  'nasojejunal',
  'gastrostomy',
  'gastrostomy-button',
  'gastro-jejunal',
  'jejunostomy',
] as const;

const lumenSchema = z.strictObject({
  name: text('What the lumen is called on this device'),
  tip: maybe(z.enum(['gastric', 'duodenal', 'jejunal']).meta({ description: 'Where it ends' })),
  uses: listOf(z.enum(['feed', 'medicine', 'drain', 'vent']), 4, 'What it may be used for'),
});

export const accessSchema = z
  .strictObject({
    device: z.enum(DEVICES).meta({ description: 'The kind of tube' }),
    french: maybe(exactly('french', 'Outer diameter')),
    lumens: listOf(lumenSchema, MOST_ITEMS.lumens, 'Each lumen with its own tip'),
    feedBy: maybe(text('The name of the lumen that feed is given by')),
    medicineBy: maybe(text('The name of the lumen that medicines are given by')),
    placedAt: maybe(moment('When it was placed')),
  })
  .meta({ description: 'The access device. Rules ask the lumen, not the device' });

export const writeAccess = (access: AccessDevice, zone: Zone): z.input<typeof accessSchema> =>
  kept({
    ...access,
    french: orNull(access.french, writeNumber),
    lumens: access.lumens.map((lumen) => kept({ ...lumen, uses: [...lumen.uses] })),
    placedAt: orNull(access.placedAt, (at) => writeMoment(at, zone)),
  });
