/**
 * How is one value written in an order document, and how is it read?
 * Reading is strict and knows where a number can be taken in two ways; writing gives what reading takes.
 */
import { z } from 'zod';
import { type DayName, parseDay } from '../base/calendar.ts';
import { decimalOfJson, decimalToFraction, parseDecimal } from '../base/decimal.ts';
import { type Fraction, fraction, fractionOf } from '../base/fraction.ts';
import { type Duration, duration, HOUR, type Instant, MINUTE } from '../base/instant.ts';
import { jsonNumber } from '../base/number-text.ts';
import { bad, issue, ok, type Result } from '../base/result.ts';
import {
  inMl,
  inMlPerHour,
  PER_ML,
  PER_ML_PER_HOUR,
  type Rate,
  rate,
  type Volume,
  volume,
} from '../base/volume.ts';
import {
  parseInstant,
  parseTimeOfDay,
  showInstant,
  showTimeOfDay,
  type TimeOfDay,
  type Zone,
  zone,
} from '../base/zone.ts';
import { CREDIBLE, type CredibleKind, isCredible } from './credible.ts';

type Context = z.core.$RefinementCtx;

/** Gives an issue of ours to the validator, which adds the path. */
function refuse(
  context: Context,
  input: unknown,
  code: string,
  data: Readonly<Record<string, unknown>>,
): never {
  context.issues.push({ code: 'custom', input, params: { code, data } });
  return z.NEVER;
}

/** A part that may be left out, or written as null; either way it is null in the order. */
export const maybe = <S extends z.ZodType>(schema: S) => schema.nullish().transform((value) => value ?? null);

export const listOf = <S extends z.ZodType>(schema: S, most: number, about: string) =>
  z
    .array(schema)
    .max(most)
    .nullish()
    .transform((items) => items ?? [])
    .meta({ description: about });

/** No characters that could end a printed line, steer a terminal or turn what is read around. */
const PLAIN_LINE = /^[^\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069]*$/u;

export const text = (about: string, most = 200) =>
  z.string().min(1).max(most).regex(PLAIN_LINE).meta({ description: about });

export const flag = (about: string) =>
  z
    .boolean()
    .nullish()
    .transform((value) => value ?? false)
    .meta({ description: about });

const RATIO = /^(\d{1,15})\/(\d{1,15})$/;

/** `62.5`, `"62.5"`, `"62,5"` and, for what no decimal can hold, `"2/3"`. */
function readNumber(written: number | string): Result<Fraction> {
  if (typeof written === 'string') {
    const [, n, d] = RATIO.exec(written.trim()) ?? [];
    if (n !== undefined && d !== undefined) {
      return BigInt(d) === 0n
        ? bad(issue([], 'number/divided-by-zero', { text: written }))
        : ok(fractionOf(BigInt(n), BigInt(d)));
    }
  }
  const decimal =
    typeof written === 'string' ? parseDecimal(written, { negative: true }) : decimalOfJson(written);
  return decimal.ok ? ok(decimalToFraction(decimal.value)) : decimal;
}

/** As a JSON number where that reads back as the same number, else as a fraction of two whole numbers. */
export const writeNumber = jsonNumber;

const asNumber = ({ n, d }: Fraction): number => n / d;

type NumberField<T> = {
  readonly kind: CredibleKind;
  readonly about: string;
  /** The exact quantity, or null where the number is finer than its step. */
  readonly make: (value: Fraction) => T | null;
  readonly step?: string;
  /** Words that stand for a number. */
  readonly words?: ReadonlyMap<unknown, Fraction>;
};

/** A number with its unit, within what is credible. */
function number<T>({ kind, about, make, step, words = new Map() }: NumberField<T>) {
  const credible = CREDIBLE[kind];
  const { unit, least, orLeast, most } = credible;
  const bounds = { [orLeast ? 'minimum' : 'exclusiveMinimum']: asNumber(least), maximum: asNumber(most) };
  return z
    .union([z.number().meta(bounds), z.string()])
    .transform((written, context): T => {
      const word = words.get(written);
      const read = word === undefined ? readNumber(written) : ok(word);
      if (!read.ok) return refuse(context, written, read.issues[0]!.code, { ...read.issues[0]!.data, unit });
      if (!isCredible(read.value, credible)) {
        return refuse(context, written, 'number/not-credible', {
          value: read.value,
          unit,
          least,
          orLeast,
          most,
        });
      }
      return (
        make(read.value) ?? refuse(context, written, 'number/too-precise', { value: read.value, unit, step })
      );
    })
    .meta({ description: `${about}, in ${unit === '1' ? 'parts of one' : unit}`, unit });
}

/** How many `1/per` it is, or null where it is no whole number of them. */
function unitsIn(value: Fraction, per: number): number | null {
  const scaled = BigInt(value.n) * BigInt(per);
  return scaled % BigInt(value.d) === 0n ? Number(scaled / BigInt(value.d)) : null;
}

const whole =
  <T>(per: number, make: (units: number) => T) =>
  (value: Fraction): T | null => {
    const units = unitsIn(value, per);
    return units === null ? null : make(units);
  };

export const rateIn = (about: string) =>
  number({ kind: 'rate', about, make: whole(PER_ML_PER_HOUR, rate), step: '0.01 mL/h' });

export const volumeIn = (about: string, kind: CredibleKind) =>
  number({ kind, about, make: whole(PER_ML, volume), step: '1/360000000 mL' });

export const hoursIn = (about: string, kind: CredibleKind) =>
  number({ kind, about, make: whole(HOUR, duration), step: '1 ms' });

export const minutesIn = (about: string, kind: CredibleKind = 'minutes') =>
  number({ kind, about, make: whole(MINUTE, duration), step: '1 ms' });

export const exactly = (kind: CredibleKind, about: string) =>
  number<Fraction>({ kind, about, make: (value) => value });

export const writeMl = (amount: Volume): number | string => writeNumber(inMl(amount));
export const writeMlPerHour = (at: Rate): number | string => writeNumber(inMlPerHour(at));
export const writeHours = (lasts: Duration): number | string => writeNumber(fraction(lasts, HOUR));
export const writeMinutes = (lasts: Duration): number | string => writeNumber(fraction(lasts, MINUTE));

const FULL = 'full';

/** ¾ strength as `"3/4"` or 0.75; `"full"` must be written as much as any other. */
export const strength = number<Fraction>({
  kind: 'strength',
  about: 'Strength: "full", or the parts of feed in one part of mixture ("3/4", 0.75)',
  make: (value) => value,
  words: new Map([[FULL, fraction(1)]]),
});

export const writeStrength = ({ n, d }: Fraction): string => (n === d ? FULL : `${n}/${d}`);

const timeOf = <T>(about: string, shape: string, code: string, parse: (written: string) => T | null) =>
  z
    .string()
    .transform((written, context): T => parse(written) ?? refuse(context, written, code, { text: written }))
    .meta({ description: `${about}, as ${shape}` });

export const timeOfDay = (about: string) =>
  timeOf<TimeOfDay>(about, 'HH:MM on the 24-hour wall clock', 'time/not-hh-mm', parseTimeOfDay);

export const moment = (about: string) =>
  timeOf<Instant>(
    about,
    'RFC 3339 with offset: 2026-11-25T18:00:00+00:00',
    'time/not-an-instant',
    parseInstant,
  );

export const day = (about: string) =>
  timeOf<DayName>(about, 'YYYY-MM-DD', 'time/not-a-day', (written) =>
    written.length === 'YYYY-MM-DD'.length && parseDay(written) !== null ? written : null,
  );

export const zoneName = timeOf<Zone>(
  'The zone in which the named times are meant',
  'an IANA name: Europe/London',
  'time/no-such-zone',
  zone,
);

export const writeTime = (time: TimeOfDay): string => showTimeOfDay(time);
export const writeMoment = (at: Instant, inZone: Zone): string => showInstant(at, inZone);

/** Leaves out what reading puts back by itself: null, an empty list, false. */
export const kept = <T extends object>(fields: T): T =>
  Object.fromEntries(
    Object.entries(fields).filter(
      ([, value]) => value !== null && value !== false && !(Array.isArray(value) && value.length === 0),
    ),
  ) as T;

export const orNull = <T, W>(value: T | null, write: (value: T) => W): W | null =>
  value === null ? null : write(value);
