/**
 * What may a person answer to what a FHIR order leaves open?
 * One table: the key, what kind of value it takes, an example, what it settles, and how it is read. An answer is never
 * made up here: where there is none, the problem that asks stays open.
 */
import { decimalToFraction, parseDecimal } from '@feedwright/core/base/decimal';
import { type Fraction, fraction } from '@feedwright/core/base/fraction';
import { type Duration, duration, HOUR, type Instant, MINUTE } from '@feedwright/core/base/instant';
import { bad, type Issue, issue, ok, type Result } from '@feedwright/core/base/result';
import { PER_ML, PER_ML_PER_HOUR, type Rate, rate, type Volume, volume } from '@feedwright/core/base/volume';
import {
  type DayName,
  parseInstant,
  parseTimeOfDay,
  type TimeOfDay,
  type Zone,
  zone,
} from '@feedwright/core/base/zone';
import { CREDIBLE, type CredibleKind, isCredible } from '@feedwright/core/order/credible';
import { parseUcum } from './ucum.ts';

/** What a value looks like, by kind, for help and for refusals. */
type Reader<T> = { readonly kind: string; readonly read: (text: string) => T | null };
type Answer<T> = Reader<T> & { readonly example: string; readonly about: string };

const answer = <T>(reader: Reader<T>, example: string, about: string): Answer<T> => ({
  ...reader,
  example,
  about,
});

function readNumber(text: string, credible: CredibleKind): Fraction | null {
  const read = parseDecimal(text, { pointIsDecimal: true });
  const value = read.ok ? decimalToFraction(read.value) : null;
  return value !== null && isCredible(value, CREDIBLE[credible]) ? value : null;
}

const number = (credible: CredibleKind): Reader<Fraction> => ({
  kind: `number of ${CREDIBLE[credible].unit}`,
  read: (text) => readNumber(text, credible),
});

const wholeUnits = (value: Fraction | null, per: number): number | null => {
  const units = value === null ? null : (BigInt(value.n) * BigInt(per)) / BigInt(value.d);
  const exact = value !== null && (BigInt(value.n) * BigInt(per)) % BigInt(value.d) === 0n;
  return units !== null && exact ? Number(units) : null;
};

/** A quantity kept in whole units of its own. */
const quantity = <T>(credible: CredibleKind, per: number, make: (units: number) => T): Reader<T> => ({
  kind: `number of ${CREDIBLE[credible].unit}`,
  read: (text) => {
    const units = wholeUnits(readNumber(text, credible), per);
    return units === null ? null : make(units);
  },
});

const oneOf = <const T extends string>(...choices: readonly T[]): Reader<T> => ({
  kind: `one of ${choices.join(', ')}`,
  read: (text) => choices.find((choice) => choice === text.toLowerCase()) ?? null,
});

/** One line, so that it can be printed anywhere. */
const TEXT: Reader<string> = {
  kind: 'text',
  read: (text) => (/^[^\p{Cc}]{1,200}$/u.test(text) ? text : null),
};

const LIST: Reader<readonly string[]> = {
  kind: 'list, parted by ;',
  read: (text) => {
    const items = text.split(';').map((item) => item.trim());
    return items.every((item) => TEXT.read(item) !== null) ? items : null;
  },
};

const moment: Reader<Instant> = { kind: 'moment with its offset', read: parseInstant };

const day: Reader<DayName> = {
  kind: 'day as YYYY-MM-DD',
  read: (text) => (/^\d{4}-\d\d-\d\d$/.test(text) && parseInstant(`${text}T00:00Z`) !== null ? text : null),
};

const TIMES: Reader<readonly TimeOfDay[]> = {
  kind: 'times as HH:MM,HH:MM',
  read: (text) => {
    const times = text.split(',').map((one) => parseTimeOfDay(one.trim()));
    const known = times.filter((one) => one !== null);
    return known.length === times.length && new Set(known).size === known.length
      ? known.toSorted((a, b) => a - b)
      : null;
  },
};

export type FeedingHours = 'all-day' | { readonly from: TimeOfDay; readonly lasts: Duration };

const MINUTES_A_DAY = 1440;

const HOURS: Reader<FeedingHours> = {
  kind: 'all-day, or HH:MM-HH:MM',
  read: (text) => {
    if (text === 'all-day') return text;
    const [from = null, until = null] = text.split('-').map((one) => parseTimeOfDay(one.trim()));
    if (from === null || until === null || from === until || text.split('-').length !== 2) return null;
    return { from, lasts: duration(((until - from + MINUTES_A_DAY) % MINUTES_A_DAY) * MINUTE) };
  },
};

const STRENGTH: Reader<Fraction> = {
  kind: 'full, or a fraction as 3/4',
  read: (text) => {
    if (text === 'full') return fraction(1);
    const [, n = '0', d = '0'] = /^(\d{1,3})\/(\d{1,3})$/.exec(text) ?? [];
    const isPart = Number(n) > 0 && Number(n) <= Number(d);
    return isPart ? fraction(Number(n), Number(d)) : readNumber(text, 'share');
  },
};

export type Offset = 'local' | 'utc';

const UNIT: Reader<string> = {
  kind: 'UCUM code',
  read: (text) => (parseUcum(text) === null ? null : text),
};

const unitOf = (what: string, example: string): Answer<string> =>
  answer(UNIT, example, `The unit in which ${what} is meant, where the one written cannot be used`);

const rateOf = quantity<Rate>('rate', PER_ML_PER_HOUR, rate);
const volumeOf = (kind: CredibleKind): Reader<Volume> => quantity(kind, PER_ML, volume);

export const ANSWERS = {
  zone: answer<Zone>({ kind: 'IANA time zone', read: zone }, 'Europe/London', 'The zone of the ward’s clock'),
  offset: answer<Offset>(
    oneOf('local', 'utc'),
    'local',
    'How times without an offset are meant: by the ward’s clock, or in UTC',
  ),
  start: answer(moment, '2026-11-25T18:00:00+00:00', 'When feeding starts, where no moment is written'),
  end: answer<Instant | 'open'>(
    { kind: 'open, or a moment', read: (text) => (text === 'open' ? text : parseInstant(text)) },
    'open',
    'When the order ends; open: not until it is changed',
  ),
  prescribedAt: answer(
    moment,
    '2026-11-25T09:30:00+00:00',
    'When it was prescribed, where only a day is written',
  ),
  prescriber: answer(TEXT, 'Dr A. Careful', 'Who prescribed it, where nobody is named'),
  authorised: answer(oneOf('yes'), 'yes', 'That a draft or a proposal has been authorised as an order'),
  energyKcalPerMl: answer(
    number('density'),
    '1.5',
    'The energy density that is meant, where what is written cannot be or is contradicted',
  ),
  feed: answer(TEXT, 'standard-1.0', 'Which feed of the feed list is meant, by its id'),
  strength: answer(STRENGTH, 'full', 'The strength; FHIR has no place for it'),
  additives: answer(
    LIST,
    '20 mL/d; 10 g/d',
    'How much of each additive, in the order in which they are written',
  ),
  device: answer(
    oneOf(
      'nasogastric',
      'orogastric',
      'nasoduodenal',
      'nasojejunal',
      'gastrostomy',
      'gastrostomy-button',
      'gastro-jejunal',
      'jejunostomy',
    ),
    'gastrostomy-button',
    'The kind of tube, where the route leaves it open',
  ),
  tip: answer(
    oneOf('gastric', 'duodenal', 'jejunal'),
    'jejunal',
    'Where the tube ends, where the route leaves it open',
  ),
  lumen: answer(oneOf('gastric', 'jejunal'), 'jejunal', 'Which lumen of a gastro-jejunal tube is fed by'),
  french: answer(number('french'), '14', 'The size of the tube'),
  method: answer(oneOf('pump', 'gravity', 'syringe'), 'pump', 'What drives the feed'),
  minutes: answer<Duration>(quantity('minutes', MINUTE, duration), '35', 'How long one feed takes'),
  times: answer(TIMES, '06:00,12:00,18:00', 'The times of the feeds, where the schedule does not fix them'),
  regimen: answer(
    oneOf('cyclic', 'intermittent', 'volume-targeted'),
    'cyclic',
    'What one volume a day means: a window, one feed, or a target that may be made up',
  ),
  steps: answer(oneOf('replace'), 'replace', 'That each rate runs until the next one begins'),
  feedingHours: answer(
    HOURS,
    '07:00-19:00',
    'The hours of the day in which it runs, where text speaks of a hold',
  ),
  rateMlPerHour: answer<Rate>(rateOf, '60', 'The rate, where the written ones cannot be used as they are'),
  maximumMlPerDay: answer(
    volumeOf('volumePerDay'),
    '946',
    'The most in a day, where its time base is missing or wrong, or the schedule goes past it',
  ),
  maximum: answer(
    oneOf('governs'),
    'governs',
    'That the maximum stands although the rate goes past it: feeding ends there each day',
  ),
  instruction: answer(
    oneOf('considered'),
    'considered',
    'That a person has read the free text and dealt with it',
  ),
  'unit.rate': unitOf('a rate', 'mL/h'),
  'unit.volume': unitOf('a volume', 'mL'),
  'unit.maximum': unitOf('the maximum', 'mL/d'),
  'unit.density': unitOf('the energy density', 'kcal/mL'),
  'unit.time': unitOf('a length of time', 'h'),
  'unit.body': unitOf('a weight or height', 'kg'),
  patientName: answer(TEXT, 'Ada Example', 'The patient’s name'),
  birthDate: answer(day, '1950-02-28', 'The patient’s date of birth'),
  identifier: answer(TEXT, 'HN 123456', 'A number that identifies the patient'),
  place: answer(TEXT, 'Ward 4, bed 2', 'Where the patient is'),
  allergies: answer(LIST, 'none', 'What the patient is allergic to, or none'),
  weightKg: answer(number('weight'), '70', 'The weight that doses are worked from'),
  weightOn: answer(day, '2026-11-24', 'The day that weight was taken'),
  setting: answer(oneOf('hospital', 'residential-care', 'home'), 'hospital', 'Where the person is cared for'),
  waterKind: answer(
    oneOf('tap', 'cooled-boiled', 'sterile'),
    'tap',
    'The kind of water; FHIR has no place for it',
  ),
  waterMl: answer(volumeOf('dose'), '30', 'How much water at a time'),
  waterEveryHours: answer<Duration>(
    quantity('interval', HOUR, duration),
    '4',
    'How long from water to water',
  ),
  by: answer(TEXT, 'N. Nurse', 'Who gives these answers'),
} as const satisfies Record<string, Answer<unknown>>;

export type AnswerKey = keyof typeof ANSWERS;
export type Answers = {
  readonly [K in AnswerKey]?: (typeof ANSWERS)[K] extends Answer<infer T> ? T : never;
};

const isAnswerKey = (key: string): key is AnswerKey => Object.hasOwn(ANSWERS, key);

/** `OR31` answers a rule about the order itself, which is read elsewhere. */
const isRule = (key: string): boolean => /^[A-Z]{2}\d+$/.test(key);

const refusal = (key: AnswerKey, text: string): Issue => {
  const { kind, example } = ANSWERS[key];
  return issue(['confirm', key], 'answer/not-understood', { key, text, kind, example });
};

/**
 * Reads the answers a person gave as KEY=VALUE. Keys that name a rule (`OR31`) are left to others.
 * @returns the answers by key, or an issue for each key that is not known and each value that cannot be read.
 */
export function readAnswers(given: Readonly<Record<string, string>>): Result<Answers> {
  const issues: Issue[] = [];
  const read: Record<string, unknown> = {};
  for (const [key, text] of Object.entries(given)) {
    if (isRule(key)) continue;
    if (!isAnswerKey(key)) {
      issues.push(issue(['confirm', key], 'answer/unknown', { key, known: Object.keys(ANSWERS) }));
      continue;
    }
    const value = ANSWERS[key].read(text.trim());
    if (value === null) issues.push(refusal(key, text));
    else read[key] = value;
  }
  return issues.length > 0 ? bad(...issues) : ok(read as Answers);
}
