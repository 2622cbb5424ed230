/**
 * How is one value of an entry written, and how is it read quickly? Every field has the description that decides (and
 * from which the JSON Schema is made) and a short way that accepts what is plainly right: a record is read a million
 * entries at a time. What the short way does not take goes to the description, which says what is wrong.
 */
import { z } from 'zod';
import { type Fraction, fraction } from '../../base/fraction.ts';
import type { Duration, Instant } from '../../base/instant.ts';
import type { Rate, Volume } from '../../base/volume.ts';
import { type DayName, parseInstant, showInstant, type Zone } from '../../base/zone.ts';
import type { CredibleKind } from '../../order/credible.ts';
import {
  day,
  exactly,
  maybe,
  minutesIn,
  moment,
  rateIn,
  strength,
  text,
  volumeIn,
  writeMinutes,
  writeMl,
  writeMlPerHour,
  writeNumber,
  writeStrength,
} from '../../order/document-values.ts';

export const UTC = 'UTC' as Zone;

export type Field<T> = {
  /** In the document, with its unit where it has one. */
  readonly name: string;
  readonly schema: z.ZodType<T>;
  /** The value, or undefined where the description is to be asked. */
  readonly quick: (written: unknown) => T | undefined;
  /** `undefined` is left out. */
  write(value: T): unknown;
};

const asIs = <T>(value: T): T => value;

/** Values that come again and again (a rate, a device, a feed's id) are read once and are then one object or text. */
const MOST_REMEMBERED = 4_096;

function remembering<T>(schema: z.ZodType<T>): Field<T>['quick'] {
  const remembered = new Map<unknown, T>();
  return (written) => {
    const known = remembered.get(written);
    if (known !== undefined) return known;
    if (typeof written !== 'string' && typeof written !== 'number') return undefined;
    const read = schema.safeParse(written);
    if (!read.success) return undefined;
    if (remembered.size >= MOST_REMEMBERED) remembered.clear();
    remembered.set(written, read.data);
    return read.data;
  };
}

/** A value that repeats. */
const often = <T>(name: string, schema: z.ZodType<T>, write: (value: T) => unknown): Field<T> => ({
  name,
  schema,
  quick: remembering(schema),
  write,
});

/** A value that is a small document of its own. */
export const part = <T>(name: string, schema: z.ZodType<T>, write: (value: T) => unknown): Field<T> => ({
  name,
  schema,
  quick: (written) => schema.safeParse(written).data,
  write,
});

const PLAINLY_ONE_LINE = /^[ -~]{1,200}$/;

/** A line that hardly ever comes twice: an id, a remark. */
export const line = (name: string, about: string, most = 200): Field<string> => ({
  name,
  schema: text(about, most),
  quick: (written) =>
    typeof written === 'string' && written.length <= most && PLAINLY_ONE_LINE.test(written)
      ? written
      : undefined,
  write: asIs,
});

/** A name that comes again and again, so that one text stands for all of them. */
export const name = (field: string, about: string): Field<string> => often(field, text(about), asIs);

/** Several lines: what a person has to say. */
const PROSE = /^(?:[^\p{Cc}\p{Cs}\u202a-\u202e\u2066-\u2069]|[\n\t])*$/u;

export function prose(field: string, about: string, most = 4_000): Field<string> {
  const schema = z.string().min(1).max(most).regex(PROSE).meta({ description: about });
  return { name: field, schema, quick: (written) => schema.safeParse(written).data, write: asIs };
}

export const yesOrNo = (field: string, about: string): Field<boolean> => ({
  name: field,
  schema: z.boolean().meta({ description: about }),
  quick: (written) => (typeof written === 'boolean' ? written : undefined),
  write: asIs,
});

export const choice = <const T extends string>(
  field: string,
  about: string,
  choices: readonly T[],
): Field<T> => often(field, z.enum(choices).meta({ description: about }) as z.ZodType<T>, asIs);

/** A whole number from `least` to `most`, both within. */
export function count(field: string, about: string, least: number, most: number, unit = '1'): Field<number> {
  const within = (value: number): boolean => value >= least && value <= most;
  const data = { unit, least: fraction(least), orLeast: true, most: fraction(most) };
  return {
    name: field,
    schema: z
      .int()
      .refine(within, { params: { code: 'number/not-credible', data } })
      .meta({ description: about, minimum: least, maximum: most }),
    quick: (written) =>
      typeof written === 'number' && Number.isSafeInteger(written) && within(written) ? written : undefined,
    write: asIs,
  };
}

export const at = (field: string, about: string): Field<Instant> => ({
  name: field,
  schema: moment(about),
  quick: (written) => (typeof written === 'string' ? (parseInstant(written) ?? undefined) : undefined),
  write: (value) => showInstant(value, UTC),
});

export const onDay = (field: string, about: string): Field<DayName> => often(field, day(about), asIs);

export const mlOf = (field: string, about: string, kind: CredibleKind): Field<Volume> =>
  often(field, volumeIn(about, kind), writeMl);

export const mlPerHourOf = (field: string, about: string): Field<Rate> =>
  often(field, rateIn(about), writeMlPerHour);

export const minutesOf = (field: string, about: string): Field<Duration> =>
  often(field, minutesIn(about), writeMinutes);

export const numberOf = (field: string, about: string, kind: CredibleKind) =>
  often(field, exactly(kind, about), writeNumber);

export const strengthOf = (field: string): Field<Fraction> => often(field, strength, writeStrength);

/** May be left out, or written as null: nobody knows, or nobody said. */
export const optional = <T>(field: Field<T>): Field<T | null> => ({
  name: field.name,
  schema: maybe(field.schema),
  quick: (written) => (written === undefined || written === null ? null : field.quick(written)),
  write: (value) => (value === null ? undefined : field.write(value)),
});
