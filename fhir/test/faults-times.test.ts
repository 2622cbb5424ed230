/** One thing wrong at a time in an otherwise clean order: route and tube, times, schedules, steps. */
import { at, type Fault, first, repeatOf, tryFaults } from './fault.ts';
import { quantity, withRate } from './given.ts';

const ROUTES = 'http://terminology.hl7.org/CodeSystem/v3-RouteOfAdministration';

const FAULTS: readonly Fault[] = [
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
];

tryFaults(FAULTS);
