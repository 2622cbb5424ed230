/** One thing wrong at a time in an order that is otherwise clean: each is told apart, with its level and what settles it. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { ml, mlPerHour } from '@feedwright/core/base/volume';
import {
  ANSWERED,
  coded,
  imported,
  type Nested,
  only,
  plainOrder,
  quantity,
  standing,
  withRate,
} from './given.ts';

const at = '2026-11-25T18:00:00+00:00';
const ROUTES = 'http://terminology.hl7.org/CodeSystem/v3-RouteOfAdministration';

const first = (order: Nested): Nested => order.enteralFormula.administration[0];
const repeatOf = (order: Nested): Nested => first(order).schedule.repeat;

test('[FH1] the order without anything wrong is read whole, and nothing stands before its plan', () => {
  const read = imported(plainOrder(), ANSWERED);
  assert.deepEqual(standing(read), []);
  assert.deepEqual(read.ignored, []);
  const { order } = read;
  assert.deepEqual(order.regimen, {
    kind: 'continuous',
    rate: { rate: mlPerHour(62.5), of: 'mixture' },
    perDay: null,
    advance: null,
  });
  assert.deepEqual(order.feed, {
    id: 'standard-1.0',
    strength: { n: 1, d: 1 },
    additives: [],
    statedKcalPerMl: { n: 1, d: 1 },
    preparedAt: null,
    expiresAt: null,
  });
  assert.deepEqual([order.method, order.setting, order.mostVolumePerDay], ['pump', 'hospital', ml(1500)]);
  assert.deepEqual(order.water?.given, [{ kind: 'interval', volume: ml(30), every: 14_400_000, from: null }]);
  assert.deepEqual(order.patient.identifiers, [{ kind: 'hospital number', value: 'HN 1' }]);
  assert.equal(coded(read, 'fhir/full-strength').length, 1);
});

type Fault = {
  readonly name: string;
  readonly rule: string;
  readonly change: (order: Nested) => void;
  /** Level, code and, where a person can settle it, the key. */
  readonly says: readonly [level: string, code: string, confirm?: string];
  readonly data?: Readonly<Record<string, unknown>>;
};

const unit = (code: string) => (order: Nested) => {
  first(order).rateQuantity = quantity(60, code);
};

const FAULTS: readonly Fault[] = [
  // the order's own standing
  ...['revoked', 'completed', 'entered-in-error', 'unknown', 'wish'].map(
    (status): Fault => ({
      name: `status ${status}`,
      rule: 'FH4',
      change: (order) => (order.status = status),
      says: ['stop', 'fhir/not-in-force'],
      data: { status },
    }),
  ),
  { name: 'no status', rule: 'FH4', change: (o) => delete o.status, says: ['stop', 'fhir/not-in-force'] },
  {
    name: 'a draft',
    rule: 'FH4',
    change: (o) => (o.status = 'draft'),
    says: ['ask', 'fhir/not-authorised', 'authorised'],
  },
  {
    name: 'a proposal',
    rule: 'FH4',
    change: (o) => (o.intent = 'proposal'),
    says: ['ask', 'fhir/not-authorised', 'authorised'],
  },
  {
    name: 'nothing ordered',
    rule: 'FH5',
    change: (o) => delete o.enteralFormula,
    says: ['stop', 'fhir/nothing-ordered'],
  },
  // names, shapes
  {
    name: 'R5 spelling of the route',
    rule: 'FH2',
    change: (o) => (o.enteralFormula.routeOfAdministration = o.enteralFormula.routeofAdministration),
    says: ['stop', 'fhir/other-version'],
    data: { version: 'R4', name: 'routeofAdministration' },
  },
  {
    name: 'R5 nesting of the schedule',
    rule: 'FH2',
    change: (o) => (first(o).schedule.timing = [{ repeat: { boundsPeriod: { start: at } } }]),
    says: ['stop', 'fhir/other-version'],
    data: { name: 'schedule.repeat' },
  },
  {
    name: 'a value as text',
    rule: 'FH2',
    change: (o) => (first(o).rateQuantity.value = '60'),
    says: ['stop', 'fhir/wrong-type'],
    data: { expected: 'number', found: 'string', value: '60' },
  },
  {
    name: 'one administration where a list is',
    rule: 'FH2',
    change: (o) => (o.enteralFormula.administration = first(o)),
    says: ['stop', 'fhir/wrong-type'],
    data: { expected: 'list', found: 'object' },
  },
  {
    name: 'a modifier extension',
    rule: 'FH3',
    change: (o) =>
      (first(o).modifierExtension = [{ url: 'http://example.org/not-given', valueBoolean: true }]),
    says: ['stop', 'fhir/must-understand'],
    data: { name: 'modifierExtension' },
  },
  {
    name: 'implicit rules',
    rule: 'FH3',
    change: (o) => (o.implicitRules = 'http://example.org/rules'),
    says: ['stop', 'fhir/must-understand'],
  },
  {
    name: 'an element nobody knows',
    rule: 'FH3',
    change: (o) => (o.speed = 'fast'),
    says: ['note', 'fhir/not-used'],
    data: { value: 'fast' },
  },
  {
    name: 'an extension',
    rule: 'FH3',
    change: (o) => (first(o).extension = [{ url: 'x' }]),
    says: ['note', 'fhir/not-used'],
  },
  // energy
  {
    name: 'kcal per litre called kcal per mL',
    rule: 'FH6',
    change: (o) => (o.enteralFormula.caloricDensity = quantity(1500, 'kcal/mL')),
    says: ['stop', 'fhir/density-impossible', 'energyKcalPerMl'],
    data: { kcalPerMl: '1500', likely: '1.5' },
  },
  {
    name: 'small calories',
    rule: 'FH6',
    change: (o) => (o.enteralFormula.caloricDensity = quantity(1.5, 'cal/mL')),
    says: ['stop', 'fhir/density-impossible', 'energyKcalPerMl'],
    data: { kcalPerMl: '0.0015', likely: '1.5' },
  },
  {
    name: 'a density that no power of a thousand explains',
    rule: 'FH6',
    change: (o) => (o.enteralFormula.caloricDensity = quantity(20, 'kcal/mL')),
    says: ['stop', 'fhir/density-impossible', 'energyKcalPerMl'],
    data: { kcalPerMl: '20', likely: null },
  },
  // units
  {
    name: 'ml/hr',
    rule: 'FH7',
    change: unit('ml/hr'),
    says: ['ask', 'fhir/unit-not-valid', 'unit.rate'],
    data: { unit: 'ml/hr', likely: 'mL/h', value: '60' },
  },
  {
    name: 'cc/hr',
    rule: 'FH7',
    change: unit('cc/hr'),
    says: ['ask', 'fhir/unit-not-valid', 'unit.rate'],
    data: { likely: 'mL/h' },
  },
  {
    name: 'a rate in mL',
    rule: 'FH7',
    change: unit('mL'),
    says: ['ask', 'fhir/unit-of-another-kind', 'unit.rate'],
  },
  {
    name: 'a megalitre an hour',
    rule: 'FH7',
    change: unit('ML/h'),
    says: ['ask', 'fhir/unit-not-valid', 'unit.rate'],
    data: { likely: 'mL/h' },
  },
  {
    name: 'mL/24.h',
    rule: 'FH7',
    change: (o) => (o.enteralFormula.maxVolumeToDeliver = quantity(1500, 'mL/24.h')),
    says: ['ask', 'fhir/unit-multiplies', 'unit.maximum'],
    data: { likely: 'mL/d' },
  },
  {
    name: 'Cal/mL',
    rule: 'FH7',
    change: (o) => (o.enteralFormula.caloricDensity = quantity(1, 'Cal/mL')),
    says: ['ask', 'fhir/unit-not-valid', 'unit.density'],
    data: { likely: 'kcal/mL' },
  },
  {
    name: 'a value without unit',
    rule: 'FH7',
    change: (o) => (first(o).rateQuantity = { value: 60 }),
    says: ['ask', 'fhir/unit-missing', 'unit.rate'],
  },
  {
    name: 'a unit of another system',
    rule: 'FH7',
    change: (o) => (first(o).rateQuantity.system = 'http://example.org/units'),
    says: ['ask', 'fhir/unit-system-unknown', 'unit.rate'],
    data: { system: 'http://example.org/units' },
  },
  {
    name: 'a code without system',
    rule: 'FH7',
    change: (o) => delete first(o).rateQuantity.system,
    says: ['ask', 'fhir/unit-without-system', 'unit.rate'],
  },
  {
    name: 'a display that is another unit',
    rule: 'FH7',
    change: (o) => (first(o).rateQuantity.unit = 'mL/min'),
    says: ['ask', 'fhir/unit-display-disagrees', 'unit.rate'],
    data: { unit: 'mL/h', display: 'mL/min' },
  },
  {
    name: 'a unit by its display alone',
    rule: 'FH7',
    change: (o) => (first(o).rateQuantity = { value: 60, unit: 'mL/h' }),
    says: ['note', 'fhir/unit-by-display'],
  },
  // numbers
  ...[0, -60].map(
    (value): Fault => ({
      name: `a rate of ${value}`,
      rule: 'FH8',
      change: (o) => (first(o).rateQuantity.value = value),
      says: ['stop', 'fhir/not-positive'],
    }),
  ),
  {
    name: 'a rate of 60000',
    rule: 'FH8',
    change: (o) => (first(o).rateQuantity.value = 60_000),
    says: ['stop', 'fhir/not-credible'],
    data: { written: '60000 mL/h' },
  },
  {
    name: 'a number of seventeen digits',
    rule: 'FH8',
    change: (o) => (first(o).rateQuantity.value = 62.500000000000014),
    says: ['stop', 'fhir/number-too-long'],
  },
  {
    name: 'a rate finer than the pump',
    rule: 'FH8',
    change: (o) => (first(o).rateQuantity = quantity(1, 'L/d')),
    says: ['ask', 'fhir/rate-too-fine', 'rateMlPerHour'],
    data: { mlPerHour: '41.66666667' },
  },
  {
    name: 'a comparator',
    rule: 'FH8',
    change: (o) => (first(o).rateQuantity.comparator = '<'),
    says: ['stop', 'fhir/comparator'],
    data: { comparator: '<' },
  },
  {
    name: 'no value',
    rule: 'FH8',
    change: (o) => delete first(o).rateQuantity.value,
    says: ['stop', 'fhir/value-missing'],
  },
  // route and tube
  {
    name: 'a vein',
    rule: 'FH9',
    change: (o) => (o.enteralFormula.routeofAdministration.coding[0].code = 'IVINJ'),
    says: ['stop', 'fhir/route-intravenous'],
  },
  {
    name: 'a central line in words',
    rule: 'FH9',
    change: (o) => (o.enteralFormula.routeofAdministration = { text: 'central venous line' }),
    says: ['stop', 'fhir/route-intravenous'],
  },
  {
    name: 'the rectum',
    rule: 'FH9',
    change: (o) => (o.enteralFormula.routeofAdministration.coding[0].code = 'RECTINSTL'),
    says: ['stop', 'fhir/route-no-tube'],
    data: { code: 'RECTINSTL' },
  },
  {
    name: 'two routes',
    rule: 'FH9',
    change: (o) => o.enteralFormula.routeofAdministration.coding.push({ system: ROUTES, code: 'GT' }),
    says: ['stop', 'fhir/routes-several'],
  },
  {
    name: 'no route',
    rule: 'FH10',
    change: (o) => delete o.enteralFormula.routeofAdministration,
    says: ['ask', 'fhir/device-unsaid', 'device'],
  },
  ...['EFT', 'ENTINSTL', 'OJJ'].map(
    (code): Fault => ({
      name: `route ${code}`,
      rule: 'FH10',
      change: (o) => (o.enteralFormula.routeofAdministration.coding[0].code = code),
      says: ['ask', 'fhir/device-unsaid', 'device'],
    }),
  ),
  {
    name: 'a gastro-jejunal tube',
    rule: 'FH10',
    change: (o) => (o.enteralFormula.routeofAdministration.coding[0].code = 'GJT'),
    says: ['ask', 'fhir/lumen-unsaid', 'lumen'],
  },
  // times
  {
    name: 'a start without time',
    rule: 'FH11',
    change: (o) => (repeatOf(o).boundsPeriod.start = '2026-11-25'),
    says: ['ask', 'fhir/day-without-time', 'start'],
    data: { value: '2026-11-25' },
  },
  {
    name: 'a start without offset',
    rule: 'FH11',
    change: (o) => (repeatOf(o).boundsPeriod.start = '2026-11-25T18:00:00'),
    says: ['ask', 'fhir/no-offset', 'offset'],
  },
  {
    name: 'a start at 25 o’clock',
    rule: 'FH11',
    change: (o) => (repeatOf(o).boundsPeriod.start = '2026-11-25T25:00:00Z'),
    says: ['stop', 'fhir/not-a-moment'],
  },
  {
    name: 'an end before the start',
    rule: 'FH11',
    change: (o) => (repeatOf(o).boundsPeriod.end = '2026-11-25T17:00:00Z'),
    says: ['stop', 'fhir/ends-before-start'],
  },
  // schedules
  {
    name: 'a length from nowhere',
    rule: 'FH12',
    change: (o) => {
      repeatOf(o).boundsDuration = quantity(5, 'd');
      delete repeatOf(o).boundsPeriod;
    },
    says: ['ask', 'fhir/end-without-moment', 'end'],
  },
  {
    name: 'a number of times',
    rule: 'FH12',
    change: (o) => (repeatOf(o).count = 6),
    says: ['ask', 'fhir/end-without-moment', 'end'],
    data: { name: 'count' },
  },
  {
    name: 'some weekdays',
    rule: 'FH12',
    change: (o) => (repeatOf(o).dayOfWeek = ['mon', 'wed']),
    says: ['stop', 'fhir/not-every-day'],
  },
  {
    name: 'every other day',
    rule: 'FH12',
    change: (o) => Object.assign(repeatOf(o), { period: 2, periodUnit: 'd' }),
    says: ['stop', 'fhir/not-every-day'],
  },
  {
    name: 'six times a day',
    rule: 'FH12',
    change: (o) => {
      withRate(o, {
        schedule: { repeat: { boundsPeriod: { start: at }, frequency: 6, period: 1, periodUnit: 'd' } },
        quantity: quantity(240, 'mL'),
      });
    },
    says: ['ask', 'fhir/times-not-fixed', 'times'],
    data: { often: 6, likely: '02:00,06:00,10:00,14:00,18:00,22:00' },
  },
  {
    name: 'every five hours',
    rule: 'FH12',
    change: (o) => {
      withRate(o, {
        schedule: { repeat: { boundsPeriod: { start: at }, frequency: 1, period: 5, periodUnit: 'h' } },
        quantity: quantity(240, 'mL'),
      });
    },
    says: ['ask', 'fhir/times-not-fixed', 'times'],
    data: { likely: null },
  },
  {
    name: 'by meals',
    rule: 'FH12',
    change: (o) =>
      withRate(o, { schedule: { repeat: { when: ['PCM', 'PCV'] } }, quantity: quantity(240, 'mL') }),
    says: ['ask', 'fhir/schedule-by-event', 'times'],
    data: { value: 'PCM, PCV' },
  },
  {
    name: 'BID',
    rule: 'FH12',
    change: (o) =>
      withRate(o, { schedule: { code: { coding: [{ code: 'BID' }] } }, quantity: quantity(240, 'mL') }),
    says: ['ask', 'fhir/schedule-by-code', 'times'],
    data: { value: 'BID' },
  },
  {
    name: 'by dates',
    rule: 'FH12',
    change: (o) =>
      withRate(o, { schedule: { event: [at, '2026-11-26T18:00:00Z'] }, quantity: quantity(240, 'mL') }),
    says: ['ask', 'fhir/schedule-by-dates', 'times'],
  },
  {
    name: 'four to six times',
    rule: 'FH12',
    change: (o) => {
      withRate(o, {
        schedule: { repeat: { frequency: 4, frequencyMax: 6, period: 1, periodUnit: 'd' } },
        quantity: quantity(240, 'mL'),
      });
    },
    says: ['ask', 'fhir/schedule-open', 'times'],
    data: { value: 'frequencyMax' },
  },
  {
    name: 'six times at four times',
    rule: 'FH12',
    change: (o) => {
      withRate(o, {
        schedule: {
          repeat: {
            frequency: 6,
            period: 1,
            periodUnit: 'd',
            timeOfDay: ['06:00:00', '12:00:00', '18:00:00', '22:00:00'],
          },
        },
        quantity: quantity(240, 'mL'),
      });
    },
    says: ['ask', 'fhir/times-disagree', 'times'],
  },
  {
    name: 'half a minute past',
    rule: 'FH12',
    change: (o) =>
      withRate(o, { schedule: { repeat: { timeOfDay: ['06:00:30'] } }, quantity: quantity(240, 'mL') }),
    says: ['stop', 'fhir/not-a-time'],
  },
  {
    name: 'a volume without times',
    rule: 'FH12',
    change: (o) => withRate(o, { quantity: quantity(240, 'mL') }),
    says: ['ask', 'fhir/volume-without-times', 'times'],
  },
  {
    name: 'a volume once a day at a rate',
    rule: 'FH12',
    change: (o) => {
      withRate(o, {
        schedule: { repeat: { frequency: 1, period: 1, periodUnit: 'd', timeOfDay: ['20:00:00'] } },
        quantity: quantity(1000, 'mL'),
        rateQuantity: quantity(100, 'mL/h'),
      });
    },
    says: ['ask', 'fhir/once-a-day', 'regimen'],
  },
  {
    name: 'two kinds of rate',
    rule: 'FH12',
    change: (o) => (first(o).rateRatio = { numerator: quantity(240, 'mL'), denominator: quantity(4, 'h') }),
    says: ['stop', 'fhir/two-rates'],
  },
  {
    name: 'a rate and a bolus',
    rule: 'FH12',
    change: (o) => {
      o.enteralFormula.administration.push({
        schedule: { repeat: { timeOfDay: ['12:00:00'] } },
        quantity: quantity(240, 'mL'),
      });
    },
    says: ['stop', 'fhir/administrations-mixed'],
  },
  {
    name: 'a volume, a rate and a length that disagree',
    rule: 'FH12',
    change: (o) => {
      withRate(o, {
        schedule: { repeat: { timeOfDay: ['06:00:00', '18:00:00'], duration: 1, durationUnit: 'h' } },
        quantity: quantity(240, 'mL'),
        rateQuantity: quantity(120, 'mL/h'),
      });
    },
    says: ['stop', 'fhir/amounts-contradict'],
    data: { minutes: 60, minutesByRate: 120 },
  },
  // steps
  {
    name: 'steps down',
    rule: 'FH13',
    change: (o) => {
      const step = (start: string, rate: number) => ({
        schedule: { repeat: { boundsPeriod: { start } } },
        rateQuantity: quantity(rate, 'mL/h'),
      });
      o.enteralFormula.administration = [step(at, 60), step('2026-11-25T22:00:00Z', 40)];
    },
    says: ['ask', 'fhir/steps-uneven', 'rateMlPerHour'],
    data: { rates: ['60 mL/h', '40 mL/h'] },
  },
  {
    name: 'steps without times',
    rule: 'FH13',
    change: (o) => {
      o.enteralFormula.administration = [
        { rateQuantity: quantity(60, 'mL/h') },
        { rateQuantity: quantity(80, 'mL/h') },
      ];
    },
    says: ['stop', 'fhir/steps-without-times'],
  },
  // the maximum
  {
    name: 'a maximum without time',
    rule: 'FH14',
    change: (o) => (o.enteralFormula.maxVolumeToDeliver = quantity(1500, 'mL')),
    says: ['ask', 'fhir/maximum-without-time', 'maximumMlPerDay'],
    data: { ml: '1500' },
  },
  {
    name: 'a maximum an hour',
    rule: 'FH14',
    change: (o) => (o.enteralFormula.maxVolumeToDeliver = quantity(80, 'mL/h')),
    says: ['ask', 'fhir/maximum-of-another-time', 'maximumMlPerDay'],
  },
  {
    name: 'a rate past the maximum',
    rule: 'FH15',
    change: (o) => (o.enteralFormula.maxVolumeToDeliver = quantity(1250, 'mL/d')),
    says: ['stop', 'fhir/past-maximum', 'maximum'],
    // 62.5 mL/h reach 1250 mL in 20 h.
    data: { firstDay: '1500 mL, 1500 kcal', at: '2026-11-26T14:00:00+00:00' },
  },
  // text
  ...[
    ['Hold for physio at 2 pm', 'fhir/hold-in-text', 'feedingHours'],
    ['Run at 80 mL/hr', 'fhir/only-in-text', 'instruction'],
    ['Give 1.2 kcal/mL', 'fhir/density-in-text', 'energyKcalPerMl'],
    ['Half strength today', 'fhir/strength-in-text', 'strength'],
    ['Advance as tolerated', 'fhir/only-in-text', 'instruction'],
    ['Flush with 50 mL water', 'fhir/only-in-text', 'instruction'],
    ['Max 1200 mls', 'fhir/only-in-text', 'instruction'],
  ].map(
    ([text, code, confirm]): Fault => ({
      name: `“${text}” in the text`,
      rule: 'FH16',
      change: (o) => (o.enteralFormula.administrationInstruction = text),
      says: ['ask', code!, confirm!],
    }),
  ),
  {
    name: 'a hold in a note',
    rule: 'FH16',
    change: (o) => (o.note = [{ text: 'NPO from midnight' }]),
    says: ['ask', 'fhir/hold-in-text', 'feedingHours'],
  },
  // the feed
  {
    name: 'a feed that is not listed',
    rule: 'FH17',
    change: (o) => (o.enteralFormula.baseFormulaType.text = 'something else'),
    says: ['ask', 'fhir/feed-not-listed', 'feed'],
  },
  {
    name: 'two feeds in one',
    rule: 'FH17',
    change: (o) => (o.enteralFormula.baseFormulaProductName = 'energy-1.5'),
    says: ['ask', 'fhir/feeds-several', 'feed'],
    data: { candidates: ['standard-1.0', 'energy-1.5'] },
  },
  {
    name: 'another density than the feed’s',
    rule: 'FH17',
    change: (o) => (o.enteralFormula.caloricDensity.value = 0.5),
    says: ['ask', 'fhir/strength-unsaid', 'strength'],
  },
  {
    name: 'no density',
    rule: 'FH17',
    change: (o) => delete o.enteralFormula.caloricDensity,
    says: ['ask', 'fhir/strength-unsaid', 'strength'],
  },
  {
    name: 'an additive without amount',
    rule: 'FH18',
    change: (o) => (o.enteralFormula.additiveType = { coding: [{ code: 'lipid', display: 'Lipid' }] }),
    says: ['ask', 'fhir/additive-without-amount', 'additives'],
    data: { additives: ['Lipid'] },
  },
  // who
  {
    name: 'no prescriber',
    rule: 'FH19',
    change: (o) => delete o.orderer,
    says: ['ask', 'fhir/prescriber-unnamed', 'prescriber'],
  },
  {
    name: 'an allergy that is only pointed at',
    rule: 'FH19',
    change: (o) => (o.allergyIntolerance = [{ reference: 'AllergyIntolerance/1' }]),
    says: ['ask', 'fhir/allergy-unseen', 'allergies'],
  },
  {
    name: 'a mistyped SNOMED CT id',
    rule: 'FH20',
    change: (o) =>
      (o.enteralFormula.baseFormulaType.coding = [
        { system: 'http://snomed.info/sct', code: '442991000124103' },
      ]),
    says: ['note', 'fhir/check-digit'],
  },
  {
    name: 'a name with spaces around it',
    rule: 'FH20',
    change: (o) => (o.enteralFormula.baseFormulaType.text = ' standard-1.0 '),
    says: ['note', 'fhir/name-with-spaces'],
    data: { trimmed: 'standard-1.0' },
  },
];

for (const { name, rule, change, says, data = {} } of FAULTS) {
  test(`[${rule}] ${name}: ${says[0]} ${says[1]}`, () => {
    const [level, code, confirm] = says;
    const read = imported(plainOrder(change), ANSWERED);
    const found = only(read, code);
    assert.deepEqual([found.rule, found.level], [rule, level]);
    assert.equal(found.data.confirm, confirm);
    for (const [field, value] of Object.entries(data)) assert.deepEqual(found.data[field], value, field);
    assert.ok(found.path.every((step) => typeof step === 'string' || typeof step === 'number'));
  });
}

test('[FH11] an order never says its zone: it is asked', () => {
  const { zone: _, ...rest } = ANSWERED;
  const zone = only(imported(plainOrder(), rest), 'fhir/zone-missing');
  assert.deepEqual([zone.rule, zone.level, zone.data.confirm], ['FH11', 'ask', 'zone']);
});

test('[FH10] what drives the feed is asked', () => {
  const { method: _, ...rest } = ANSWERED;
  const method = only(imported(plainOrder(), rest), 'fhir/method-unsaid');
  assert.deepEqual([method.rule, method.level, method.data.confirm], ['FH10', 'ask', 'method']);
});
