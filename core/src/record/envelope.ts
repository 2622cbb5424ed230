/** How is it written when, by whom, on what and under what something was recorded? */
import { z } from 'zod';
import type { AnyEntry, Envelope } from './entry.ts';
import { at, count, type Field, line, name, optional } from './kinds/field.ts';

export const ENVELOPE: { readonly [P in keyof Envelope]: Field<Envelope[P]> } = {
  id: line('id', 'Made on the device; the same entry sent twice is one entry'),
  course: name('course', 'Whose feeding it is about: one course of feeding one person'),
  happenedAt: at('happenedAt', 'When it happened'),
  recordedAt: at('recordedAt', 'When it was recorded, by the device’s clock'),
  by: name('by', 'Who recorded it'),
  device: name('device', 'The device on which it was recorded'),
  number: count('number', 'The device’s own running number', 0, Number.MAX_SAFE_INTEGER),
  order: optional(name('order', 'The order that was acted under')),
  policy: optional(name('policy', 'The version of local policy that was acted under')),
  task: optional(line('task', 'The planned task that this does')),
  corrects: optional(line('corrects', 'The entry that this one replaces')),
};

const FIELDS = Object.entries(ENVELOPE) as readonly [keyof Envelope, Field<unknown>][];

export const envelopeShape = Object.fromEntries(FIELDS.map(([field, { schema }]) => [field, schema]));

type Read = { readonly [P in keyof Envelope]: unknown };
type Written = Readonly<Record<string, unknown>>;

/** An entry in one piece, with its fields in one order: such objects are small and quickly made. */
export const entryOf = (read: Read, fact: AnyEntry['fact']): AnyEntry =>
  ({
    id: read.id,
    course: read.course,
    happenedAt: read.happenedAt,
    recordedAt: read.recordedAt,
    by: read.by,
    device: read.device,
    number: read.number,
    order: read.order,
    policy: read.policy,
    task: read.task,
    corrects: read.corrects,
    fact,
  }) as AnyEntry;

/** The entry, or null where the description has to be asked what is wrong. */
export function entryQuickly(json: Written, fact: AnyEntry['fact']): AnyEntry | null {
  for (const field in json) if (!(field in ENVELOPE) && field !== 'fact') return null;
  const entry = entryOf(
    {
      id: ENVELOPE.id.quick(json.id),
      course: ENVELOPE.course.quick(json.course),
      happenedAt: ENVELOPE.happenedAt.quick(json.happenedAt),
      recordedAt: ENVELOPE.recordedAt.quick(json.recordedAt),
      by: ENVELOPE.by.quick(json.by),
      device: ENVELOPE.device.quick(json.device),
      number: ENVELOPE.number.quick(json.number),
      order: ENVELOPE.order.quick(json.order),
      policy: ENVELOPE.policy.quick(json.policy),
      task: ENVELOPE.task.quick(json.task),
      corrects: ENVELOPE.corrects.quick(json.corrects),
    },
    fact,
  );
  for (const [field] of FIELDS) if (entry[field] === undefined) return null;
  return entry;
}

export function writeEnvelope(entry: Envelope): Written {
  const written: Record<string, unknown> = {};
  for (const [field, { write }] of FIELDS) {
    const value = write(entry[field]);
    if (value !== undefined) written[field] = value;
  }
  return written;
}

/** The description of an entry, whatever its fact is. */
export const envelopeSchema = z.strictObject({ ...envelopeShape, fact: z.unknown() });
