/** An order said in FHIR conforms to its version, and read back is the same order as far as FHIR carries it. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type Fraction, fraction } from '@feedwright/core/base/fraction';
import { type Duration, duration, HOUR, type Instant, instant, MINUTE } from '@feedwright/core/base/instant';
import { ml, mlPerHour, NOTHING, type Rate, rate, type Volume, volume } from '@feedwright/core/base/volume';
import type { TimeOfDay, Zone } from '@feedwright/core/base/zone';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import type { AccessDevice, Additive, Advancement, Order, Regimen } from '@feedwright/core/order/order';
import fc from 'fast-check';
import { runs } from '../../core/test/runs.ts';
import { nutritionOrderOf } from '../src/order-to-fhir.ts';
import { departures } from './conformance.ts';
import { type Answers, imported, standing } from './given.ts';

const whole = (min: number, max: number) => fc.integer({ min, max });

const rates: fc.Arbitrary<Rate> = whole(1, 80_000).map(rate);
/** Tenths of a mL. */
const volumes: fc.Arbitrary<Volume> = whole(1, 20_000).map((tenths) => volume(tenths * 36_000_000));
const time: fc.Arbitrary<TimeOfDay> = whole(0, 1439);
const times = fc
  .uniqueArray(time, { minLength: 1, maxLength: 8 })
  .map((all) => all.toSorted((a, b) => a - b));
const inMinutes = (max: number): fc.Arbitrary<Duration> =>
  whole(1, max).map((count) => duration(count * MINUTE));

/** An even climb whose last step may be smaller. */
const climb = <Q extends number>(
  unit: number,
  make: (units: number) => Q,
): fc.Arbitrary<Advancement<Q> | null> =>
  fc.option(
    fc
      .tuple(whole(1, 50), whole(1, 20), whole(1, 8), whole(0, 19), whole(1, 24))
      .map(([start, step, count, less, hours]) => ({
        start: make(start * unit),
        step: make(step * unit),
        every: duration(hours * HOUR),
        goal: make((start + step * count - Math.min(less, step - 1)) * unit),
      }))
      // Of two amounts alone, the step is what lies between them.
      .map((advance) =>
        advance.goal - advance.start < advance.step
          ? { ...advance, step: (advance.goal - advance.start) as Q }
          : advance,
      ),
  );

const mixture = 'mixture' as const;

const continuous: fc.Arbitrary<Regimen> = fc
  .tuple(rates, fc.option(fc.tuple(time, inMinutes(1439))), climb(100, rate))
  .map(([one, perDay, advance]) => ({
    kind: 'continuous',
    rate: { rate: advance?.goal ?? one, of: mixture },
    perDay: perDay === null ? null : { from: perDay[0], lasts: perDay[1] },
    advance,
  }));

const cyclic: fc.Arbitrary<Regimen> = fc
  .tuple(time, whole(1, 1439), fc.option(rates), volumes)
  .map(([from, minutes, one, amount]) => ({
    kind: 'cyclic',
    from,
    until: (from + minutes) % 1440,
    rate: one === null ? null : { rate: one, of: mixture },
    volume: { volume: amount, of: mixture },
    advance: null,
  }));

const intermittent: fc.Arbitrary<Regimen> = fc
  .tuple(volumes, times, inMinutes(240), fc.constantFrom('pump', 'gravity'), climb(360_000_000, volume))
  .map(([amount, all, lasts, by, advance]) => ({
    kind: 'intermittent',
    volume: { volume: advance?.goal ?? amount, of: mixture },
    times: all,
    lasts,
    by,
    advance,
  }));

const bolus: fc.Arbitrary<Regimen> = fc
  .tuple(volumes, times, fc.option(inMinutes(60)), climb(360_000_000, volume))
  .map(([amount, all, lasts, advance]) => ({
    kind: 'bolus',
    volume: { volume: advance?.goal ?? amount, of: mixture },
    times: all,
    lasts,
    meals: [],
    advance,
  }));

const targeted: fc.Arbitrary<Regimen> = fc.tuple(volumes, rates).map(([amount, one]) => ({
  kind: 'volume-targeted',
  volumePerDay: { volume: amount, of: mixture },
  baseRate: { rate: one, of: mixture },
  mostRate: null,
  advance: null,
}));

const regimen = fc.oneof(continuous, cyclic, intermittent, bolus, targeted);

const TIPS = {
  nasogastric: 'gastric',
  orogastric: 'gastric',
  nasoduodenal: 'duodenal',
  nasojejunal: 'jejunal',
  gastrostomy: 'gastric',
  'gastrostomy-button': 'gastric',
  jejunostomy: 'jejunal',
} as const;

const singleLumen = fc.constantFrom(...(Object.keys(TIPS) as (keyof typeof TIPS)[])).map(
  (device): AccessDevice => ({
    device,
    french: null,
    lumens: [{ name: 'feed', tip: TIPS[device], uses: ['feed'] }],
    feedBy: 'feed',
    medicineBy: null,
    placedAt: null,
  }),
);

const doubleLumen = fc.constantFrom('gastric', 'jejunal').map(
  (fed): AccessDevice => ({
    device: 'gastro-jejunal',
    french: null,
    lumens: (['gastric', 'jejunal'] as const).map((name) => ({
      name,
      tip: name,
      uses: name === fed ? ['feed'] : [],
    })),
    feedBy: fed,
    medicineBy: null,
    placedAt: null,
  }),
);

const words = fc.constantFrom('Ada Example', 'Ærøskøbing', 'soya', 'HN 12', 'O’Neil-Łukasz', '日本');

const additive: fc.Arbitrary<Additive> = fc
  .tuple(fc.constantFrom('lipid', 'protein'), whole(1, 500), fc.constantFrom('mL', 'g', 'mL/d', 'mL/(24.h)'))
  .map(([name, tenths, unit]) => ({ name, amount: `${tenths / 10} ${unit}` }));

const strengths: readonly Fraction[] = [fraction(1), fraction(1, 2), fraction(3, 4), fraction(2, 3)];

const feed = (most: number): fc.Arbitrary<NonNullable<Order['feed']>> =>
  fc.record(
    {
      id: fc.constantFrom(...DEFAULT_FEEDS.feeds.map(({ id }) => id)),
      strength: fc.constantFrom(...strengths),
      additives: fc.uniqueArray(additive, { maxLength: most, selector: ({ name }) => name }),
      statedKcalPerMl: fc.option(whole(100, 3000).map((thousandths) => fraction(thousandths, 1000))),
      preparedAt: fc.constant(null),
      expiresAt: fc.constant(null),
    },
    { noNullPrototype: true },
  );

const moment: fc.Arbitrary<Instant> = whole(0, 40_000_000).map((seconds) =>
  instant(1_750_000_000_000 + seconds * 1000),
);

const methodOf = (one: Regimen): NonNullable<Order['method']> =>
  one.kind === 'intermittent' ? one.by : one.kind === 'bolus' ? 'syringe' : 'pump';

const afterAllSteps = (from: Instant, { advance }: Regimen, by: Duration): Instant =>
  instant(
    from +
      by +
      (advance === null ? 0 : advance.every * Math.ceil((advance.goal - advance.start) / advance.step)),
  );

const order = (mostAdditives: number): fc.Arbitrary<Order> =>
  fc
    .record({
      id: fc.constantFrom('order-1', 'ward 4/7', 'ß'),
      zone: fc.constantFrom('Europe/London', 'UTC', 'Asia/Kolkata', 'America/St_Johns') as fc.Arbitrary<Zone>,
      name: words,
      identifier: fc.option(words),
      allergies: fc.uniqueArray(words, { maxLength: 2 }),
      prescriber: words,
      prescribedAt: moment,
      startsAt: moment,
      lasts: fc.option(inMinutes(10_000)),
      feed: feed(mostAdditives),
      access: fc.oneof(singleLumen, doubleLumen),
      regimen,
      // Over what any of these regimens gives in a day: one that is passed is asked about.
      most: fc.option(whole(193_000, 200_000).map((tenths) => volume(tenths * 36_000_000))),
      held: fc.boolean(),
    })
    .map(({ name, identifier, allergies, prescriber, lasts, most, held, ...rest }) => ({
      ...rest,
      replaces: null,
      setting: 'hospital',
      patient: {
        name,
        birthDate: null,
        identifiers: identifier === null ? [] : [{ kind: 'hospital number', value: identifier }],
        place: null,
        allergies,
        dosingWeight: null,
        heightCm: null,
      },
      prescriber: { name: prescriber, role: null },
      endsAt: lasts === null ? null : afterAllSteps(rest.startsAt, rest.regimen, lasts),
      method: methodOf(rest.regimen),
      water: null,
      holds: held ? [{ id: 'on-hold', from: rest.startsAt, until: null, why: 'other', note: null }] : [],
      medicines: [],
      modules: [],
      mostRate: null,
      mostVolumePerDay: most,
      fluidLimitPerDay: null,
      intravenousPerDay: NOTHING,
      otherEnergy: [],
      needs: { energyKcalPerDay: null, proteinGPerDay: null, waterPerDay: null },
      catchUpProtocol: null,
      refeedingCaution: false,
      confirmations: [],
    }));

/** What FHIR leaves to a person, as the order has it. */
const answersFor = (of: Order): Answers => ({
  zone: of.zone,
  method: of.method ?? '',
  setting: of.setting,
  strength: `${of.feed?.strength.n}/${of.feed?.strength.d}`,
  ...(of.access === null ? {} : { device: of.access.device }),
  ...(of.access?.device === 'gastro-jejunal' ? { lumen: of.access.feedBy ?? '' } : {}),
  regimen:
    of.regimen?.kind === 'volume-targeted' || of.regimen?.kind === 'cyclic'
      ? of.regimen.kind
      : 'intermittent',
});

for (const version of ['R4', 'R5'] as const) {
  const mostAdditives = version === 'R4' ? 0 : 2;

  test(`[FH22] ${version}: an exported order conforms, and read back it is the same`, () => {
    fc.assert(
      fc.property(order(mostAdditives), (one) => {
        const exported = nutritionOrderOf(one, version);
        assert.ok(exported.ok);
        const read = imported(JSON.stringify(exported.value.resource), answersFor(one));
        assert.equal(read.version, version);
        assert.deepEqual(read.order, one);
        assert.deepEqual(standing(read), []);
        assert.deepEqual(read.ignored, []);
      }),
      runs(3000),
    );
  });

  test(`[FH22] ${version}: an exported order conforms to the definitions of its version`, () => {
    fc.assert(
      fc.property(order(mostAdditives), (one) => {
        const exported = nutritionOrderOf(one, version);
        assert.ok(exported.ok);
        const found = departures(JSON.parse(JSON.stringify(exported.value.resource)), version);
        // A narrative (dom-6, a warning) is for whoever signs the resource to write.
        assert.deepEqual(found, ['NutritionOrder: dom-6 (warning)']);
      }),
      runs(300),
    );
  });
}

const PLAIN: Order = {
  id: 'plain',
  replaces: null,
  zone: 'Europe/London' as Zone,
  setting: 'hospital',
  patient: {
    name: 'Ada Example',
    birthDate: null,
    identifiers: [],
    place: null,
    allergies: [],
    dosingWeight: null,
    heightCm: null,
  },
  prescriber: { name: 'Dr A. Careful', role: null },
  prescribedAt: instant(1_764_000_000_000),
  startsAt: instant(1_764_000_000_000),
  endsAt: null,
  feed: {
    id: 'standard-1.0',
    strength: fraction(1),
    additives: [],
    statedKcalPerMl: fraction(1),
    preparedAt: null,
    expiresAt: null,
  },
  access: null,
  method: null,
  regimen: { kind: 'continuous', rate: { rate: mlPerHour(60), of: mixture }, perDay: null, advance: null },
  water: null,
  holds: [],
  medicines: [],
  modules: [],
  mostRate: null,
  mostVolumePerDay: null,
  fluidLimitPerDay: null,
  intravenousPerDay: NOTHING,
  otherEnergy: [],
  needs: { energyKcalPerDay: null, proteinGPerDay: null, waterPerDay: null },
  catchUpProtocol: null,
  refeedingCaution: false,
  confirmations: [],
};

const leftOut = (change: Partial<Order>, version: 'R4' | 'R5' = 'R4'): readonly string[] => {
  const exported = nutritionOrderOf({ ...PLAIN, ...change }, version);
  assert.ok(exported.ok);
  return exported.value.notCarried.filter((name) => name !== 'zone' && name !== 'setting');
};

test('[FH22] what FHIR does not carry is listed, and what it carries is not', () => {
  assert.deepEqual(leftOut({}), []);
  assert.deepEqual(leftOut({ method: 'pump', intravenousPerDay: ml(500) }), ['method', 'intravenousPerDay']);
  assert.deepEqual(leftOut({ water: { water: 'tap', given: [] } }), ['water']);
  assert.deepEqual(leftOut({ mostRate: mlPerHour(80), refeedingCaution: true }), [
    'mostRate',
    'refeedingCaution',
  ]);
  const additives = [
    { name: 'lipid', amount: '20 mL' },
    { name: 'protein', amount: 'a scoop' },
  ];
  const feedWith = (some: readonly Additive[]): Partial<Order> => ({
    feed: { ...PLAIN.feed!, additives: some },
  });
  assert.deepEqual(leftOut(feedWith(additives.slice(0, 1)), 'R5'), []);
  assert.deepEqual(leftOut(feedWith(additives), 'R5'), ['feed.additives']);
  assert.deepEqual(leftOut(feedWith(additives.slice(0, 1)), 'R4'), ['feed.additives']);
  const thirds = { ...PLAIN.feed!, statedKcalPerMl: fraction(2, 3) };
  assert.deepEqual(leftOut({ feed: thirds }), ['feed.statedKcalPerMl (exactly)']);
  const ofFormula: Regimen = {
    ...(PLAIN.regimen as Extract<Regimen, { kind: 'continuous' }>),
    rate: { rate: mlPerHour(60), of: 'formula' },
  };
  assert.deepEqual(leftOut({ regimen: ofFormula }), ['regimen.of']);
});

test('[FH22] [FH16] a strength and a hold are put where a person reads them, and asked about when read back', () => {
  const hold = { id: 'scan', from: PLAIN.startsAt!, until: null, why: 'procedure', note: null } as const;
  const change = { holds: [hold], feed: { ...PLAIN.feed!, strength: fraction(3, 4) } };
  assert.deepEqual(leftOut(change), ['feed.strength', 'holds']);
  const exported = nutritionOrderOf({ ...PLAIN, ...change }, 'R4');
  assert.ok(exported.ok);
  const asked = standing(
    imported(JSON.stringify(exported.value.resource), { zone: 'Europe/London', method: 'pump' }),
  );
  assert.ok(
    asked.includes('ask FH16 fhir/hold-in-text') && asked.includes('ask FH16 fhir/strength-in-text'),
    asked.join(),
  );
});

test('[FH22] an order without what FHIR requires is refused, each lack by its name', () => {
  const exported = nutritionOrderOf(
    { ...PLAIN, prescribedAt: null, patient: { ...PLAIN.patient, name: null } },
    'R5',
  );
  assert.ok(!exported.ok);
  assert.deepEqual(
    exported.issues.map(({ code, data }) => [code, data.name]),
    [
      ['fhir/required', 'dateTime'],
      ['fhir/required', 'patient'],
    ],
  );
});
