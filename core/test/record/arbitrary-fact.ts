/** Facts to try properties on: of every kind, with whatever values a document can hold. */
import { type Fraction, fraction } from '@feedwright/core/base/fraction';
import { type Duration, duration, type Instant, instant, minutes } from '@feedwright/core/base/instant';
import { ml, mlPerHour, NOTHING, type Rate, rate, type Volume, volume } from '@feedwright/core/base/volume';
import type { Analyte, Fact, FactKind, ResidualFound } from '@feedwright/core/record/fact';
import type { FactOf } from '@feedwright/core/record/kinds/kind';
import fc from 'fast-check';
import { arbOrder } from '../order/arbitrary.ts';

type Arb<T> = fc.Arbitrary<T>;

const record = <T extends object>(model: { [K in keyof T]: Arb<T[K]> }): Arb<T> =>
  fc.record(model, { noNullPrototype: true }) as Arb<T>;

const maybe = <T>(of: Arb<T>): Arb<T | null> => fc.option(of, { nil: null });

const PLAIN = /^[^\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069]+$/u;
export const arbLine: Arb<string> = fc
  .oneof(
    fc.constantFrom('a', 'gastric', 'standard-1.0', 'bag-1', 'on the left side'),
    fc.string({ minLength: 1, maxLength: 12, unit: 'grapheme' }),
  )
  .filter((text) => PLAIN.test(text));
const arbProse = fc.oneof(
  arbLine,
  fc.tuple(arbLine, arbLine).map((lines) => lines.join('\n')),
);

/** Most are what somebody would write; some are as fine as the account is. */
const arbVolume = (least: number, most: number): Arb<Volume> =>
  fc.oneof(
    fc.integer({ min: Math.max(least, 1), max: most }).map(ml),
    fc.integer({ min: least === 0 ? 0 : 1, max: ml(most) }).map(volume),
  );
const arbRate: Arb<Rate> = fc.oneof(
  fc.integer({ min: 1, max: 300 }).map(mlPerHour),
  fc.integer({ min: 1, max: 200_000 }).map(rate),
);
const arbNumber = (least: number, most: number): Arb<Fraction> =>
  fc
    .tuple(fc.integer({ min: least * 100, max: most * 100 }), fc.constantFrom(100, 100, 100, 107))
    .map(([n, d]) => fraction(n, d));
const arbStrength = fc.constantFrom(fraction(1), fraction(3, 4), fraction(1, 2), fraction(2, 3));
const arbMinutes: Arb<Duration> = fc.oneof(
  fc.integer({ min: 1, max: 1_440 }).map(minutes),
  fc.integer({ min: 1, max: 86_400_000 }).map(duration),
);
export const arbMoment: Arb<Instant> = fc
  .integer({ min: Date.UTC(2020, 0, 1), max: Date.UTC(2035, 0, 1) })
  .map(instant);
const arbDay = arbMoment.map((at) => new Date(at).toISOString().slice(0, 10));
const just = <const T>(value: T): Arb<T> => fc.constant(value);
const one = <const T>(...of: readonly T[]): Arb<T> => fc.constantFrom(...of);

const arbHold: Arb<FactOf<'order-held/1'>['hold']> = record({
  id: arbLine,
  from: arbMoment,
  until: maybe(arbMoment),
  why: one('procedure', 'fast', 'medicine', 'intolerance', 'tube', 'other'),
  note: maybe(arbLine),
});

const arbAccess: Arb<FactOf<'tube-placed/1'>['access']> = record({
  device: one('nasogastric', 'nasojejunal', 'gastrostomy', 'gastro-jejunal'),
  french: maybe(arbNumber(1, 30)),
  lumens: fc.array(
    record({
      name: arbLine,
      tip: maybe(one('gastric', 'duodenal', 'jejunal')),
      uses: fc.uniqueArray(one('feed', 'medicine', 'drain', 'vent'), { maxLength: 4 }),
    }),
    { maxLength: 3 },
  ),
  feedBy: maybe(arbLine),
  medicineBy: maybe(arbLine),
  placedAt: maybe(arbMoment),
});

/** What was drawn, given back and thrown away; only what was drawn has a number. */
const arbResidual: Arb<FactOf<'residual-checked/1'>> = fc
  .record({
    found: one<ResidualFound>('zero', 'measured', 'could-not-aspirate', 'not-done'),
    drawn: arbVolume(0, 600),
    returnedPercent: fc.integer({ min: 0, max: 100 }),
    look: maybe(one('feed', 'clear', 'bile', 'blood', 'coffee-ground', 'faeculent', 'green')),
  })
  .map(({ found, drawn, returnedPercent, look }) => {
    const kind = 'residual-checked/1';
    if (found !== 'measured') {
      return { kind, found, volume: null, look: null, returned: NOTHING, discarded: NOTHING };
    }
    const returned = volume(Math.floor((drawn / 100) * returnedPercent));
    return { kind, found, volume: drawn, look, returned, discarded: volume(drawn - returned) };
  });

const arbChecked: Arb<FactOf<'tube-checked/1'>> = record<FactOf<'tube-checked/1'>>({
  kind: just('tube-checked/1'),
  method: one('ph', 'radiograph', 'mark', 'under-vision', 'balloon-volume'),
  lumen: maybe(arbLine),
  confirmed: fc.boolean(),
  ph: maybe(arbNumber(0, 14).filter(({ n, d }) => n <= 14 * d)),
  markCm: maybe(arbNumber(1, 100)),
  reader: maybe(arbLine),
}).map((fact) => (fact.method === 'ph' && fact.ph === null ? { ...fact, confirmed: false } : fact));

const REASONS = [
  'procedure',
  'care',
  'medicine',
  'intolerance',
  'tube',
  'equipment',
  'fast',
  'other',
] as const;
const ANALYTES: readonly Analyte[] = [
  'glucose',
  'potassium',
  'magnesium',
  'phosphate',
  'sodium',
  'urea',
  'creatinine',
];

/** The fields of a kind, without naming the kind twice. */
const fact = <K extends FactKind>(
  kind: K,
  fields: { [P in Exclude<keyof FactOf<K>, 'kind'>]: Arb<FactOf<K>[P]> },
): Arb<FactOf<K>> => fc.record({ kind: fc.constant(kind), ...fields }, { noNullPrototype: true }) as never;

/** [RC1] One for each kind: a kind without an arbitrary does not compile. */
export const FACTS: { readonly [K in FactKind]: Arb<FactOf<K>> } = {
  'order-placed/1': fact('order-placed/1', { placed: arbOrder('odd') }),
  'order-held/1': fact('order-held/1', { hold: arbHold }),
  'order-hold-ended/1': fact('order-hold-ended/1', { hold: arbLine }),
  'order-stopped/1': fact('order-stopped/1', { stopped: arbLine, reason: arbLine }),
  'step-confirmed/1': fact('step-confirmed/1', { step: fc.integer({ min: 1, max: 20 }) }),
  'step-declined/1': fact('step-declined/1', { step: fc.integer({ min: 1, max: 20 }), reason: arbLine }),
  'person-identified/1': fact('person-identified/1', {
    name: arbLine,
    birthDate: maybe(arbDay),
    identifiers: fc.array(record({ kind: arbLine, value: arbLine }), { maxLength: 2 }),
    place: maybe(arbLine),
  }),
  'weight-measured/1': fact('weight-measured/1', { kg: arbNumber(1, 200) }),
  'height-measured/1': fact('height-measured/1', { cm: arbNumber(30, 200) }),
  'allergies-recorded/1': fact('allergies-recorded/1', { allergies: fc.array(arbLine, { maxLength: 3 }) }),
  'other-energy-recorded/1': fact('other-energy-recorded/1', {
    name: arbLine,
    kcalPerDay: arbNumber(0, 2_000),
  }),
  'tube-placed/1': fact('tube-placed/1', { access: arbAccess, markCm: maybe(arbNumber(1, 100)) }),
  'tube-checked/1': arbChecked,
  'tube-moved/1': fact('tube-moved/1', { markCm: arbNumber(1, 100) }),
  'tube-out/1': fact('tube-out/1', { how: maybe(arbLine) }),
  'tube-blocked/1': fact('tube-blocked/1', { lumen: maybe(arbLine) }),
  'tube-cleared/1': fact('tube-cleared/1', { lumen: maybe(arbLine), how: maybe(arbLine) }),
  'position-set/1': fact('position-set/1', {
    headOfBedDegrees: fc.integer({ min: 0, max: 90 }),
    posture: maybe(arbLine),
  }),
  'container-prepared/1': fact('container-prepared/1', {
    container: arbLine,
    feed: arbLine,
    strength: arbStrength,
    volume: arbVolume(1, 2_000),
    expiresAt: maybe(arbMoment),
  }),
  'container-put-up/1': fact('container-put-up/1', {
    container: arbLine,
    holds: one('feed', 'water'),
    feed: arbLine,
    strength: arbStrength,
    closed: fc.boolean(),
    filled: arbVolume(1, 2_000),
    newSet: fc.boolean(),
    comesDownBy: maybe(arbMoment),
    lot: maybe(arbLine),
    expires: maybe(arbDay),
  }),
  'container-taken-down/1': fact('container-taken-down/1', {
    container: arbLine,
    left: maybe(arbVolume(0, 2_000)),
    reason: maybe(arbLine),
  }),
  'set-changed/1': fact('set-changed/1', { line: arbVolume(0, 40), spilt: arbVolume(0, 20) }),
  'carton-opened/1': fact('carton-opened/1', { carton: arbLine, feed: arbLine, volume: arbVolume(1, 1_000) }),
  'carton-used/1': fact('carton-used/1', {
    carton: arbLine,
    taken: arbVolume(0, 1_000),
    discarded: fc.boolean(),
  }),
  'pump-started/1': fact('pump-started/1', {
    rate: arbRate,
    volumeToBeDelivered: maybe(arbVolume(1, 2_000)),
  }),
  'rate-changed/1': fact('rate-changed/1', { rate: arbRate }),
  'pump-paused/1': fact('pump-paused/1', { reason: one(...REASONS), note: maybe(arbLine) }),
  'pump-resumed/1': fact('pump-resumed/1', {}),
  'pump-stopped/1': fact('pump-stopped/1', { reason: one(...REASONS, 'feed-ended') }),
  'counter-read/1': fact('counter-read/1', { counts: one('feed', 'water'), volume: arbVolume(0, 20_000) }),
  'counter-cleared/1': fact('counter-cleared/1', {
    counts: one('feed', 'water'),
    read: maybe(arbVolume(0, 20_000)),
  }),
  'programme-read-back/1': fact('programme-read-back/1', {
    rate: arbRate,
    volumeToBeDelivered: maybe(arbVolume(1, 2_000)),
  }),
  'line-closed/1': fact('line-closed/1', { clamped: fc.boolean(), capped: fc.boolean() }),
  'feed-given/1': fact('feed-given/1', {
    by: one('syringe', 'gravity', 'pump'),
    feed: arbLine,
    strength: arbStrength,
    volume: arbVolume(1, 1_000),
    lasted: maybe(arbMinutes),
    heightCm: maybe(arbNumber(1, 100)),
    timedBarrel: maybe(record({ volume: arbVolume(1, 60), took: arbMinutes })),
  }),
  'water-given/1': fact('water-given/1', {
    water: one('tap', 'cooled-boiled', 'sterile'),
    volume: arbVolume(1, 500),
    why: one('flush', 'medicine', 'free-water', 'residual', 'module'),
  }),
  'module-given/1': fact('module-given/1', {
    name: arbLine,
    energyKcal: arbNumber(0, 200),
    proteinG: arbNumber(0, 30),
  }),
  'medicine-given/1': fact('medicine-given/1', {
    name: arbLine,
    volume: arbVolume(0, 50),
    lumen: maybe(arbLine),
  }),
  'feed-lost/1': fact('feed-lost/1', {
    where: one('before-patient', 'out-of-tube'),
    volume: arbVolume(1, 500),
  }),
  'intake-measured/1': fact('intake-measured/1', {
    route: one('oral', 'intravenous', 'other'),
    volume: arbVolume(0, 3_000),
    energyKcal: maybe(arbNumber(0, 500)),
  }),
  'residual-checked/1': arbResidual,
  'vomited/1': fact('vomited/1', { volume: maybe(arbVolume(0, 1_000)) }),
  'stool-passed/1': fact('stool-passed/1', {
    volume: maybe(arbVolume(0, 1_000)),
    form: one('formed', 'loose', 'liquid'),
  }),
  'distension-noted/1': fact('distension-noted/1', {
    degree: one('none', 'mild', 'marked'),
    girthCm: maybe(arbNumber(20, 200)),
  }),
  'pain-noted/1': fact('pain-noted/1', { degree: one('none', 'mild', 'severe'), onFeeding: fc.boolean() }),
  'bowel-sounds-noted/1': fact('bowel-sounds-noted/1', { heard: fc.boolean() }),
  'output-measured/1': fact('output-measured/1', {
    what: one('urine', 'drain', 'gastric-drainage', 'stoma', 'other'),
    volume: arbVolume(0, 3_000),
  }),
  'laboratory-result/1': fact('laboratory-result/1', {
    analyte: one(...ANALYTES),
    value: arbNumber(0, 300),
    unit: one('mmol/L', 'mg/dL'),
  }),
  'mouth-care-done/1': fact('mouth-care-done/1', {}),
  'note-written/1': fact('note-written/1', { text: arbProse }),
  'advice-answered/1': fact('advice-answered/1', { advice: arbLine, answer: arbLine, note: maybe(arbProse) }),
  'duplicate-settled/1': fact('duplicate-settled/1', {
    keeps: arbLine.map((id) => `k${id}`),
    drops: arbLine.map((id) => `d${id}`),
  }),
  'entered-in-error/1': fact('entered-in-error/1', { target: arbLine, reason: arbLine }),
};

export const arbFact: Arb<Fact> = fc.oneof(...Object.values<Arb<Fact>>(FACTS));
