/** Can the checker fail? Each fault is planted in the specification's own continuous example, which is clean. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { departures, exampleText } from './conformance.ts';

// biome-ignore lint/suspicious/noExplicitAny: faults are planted anywhere in it
type Nested = { [name: string]: any };

const example = (version: 'R4' | 'R5'): Nested =>
  JSON.parse(exampleText(version, 'NutritionOrder-enteralcontinuous'));

const repeat = (order: Nested): Nested => order.enteralFormula.administration[0].schedule.repeat;

const FAULTS: readonly (readonly [name: string, plant: (order: Nested) => void, says: RegExp])[] = [
  ['status missing', (o) => delete o.status, /status: missing/],
  ['patient missing', (o) => delete o.patient, /patient: missing/],
  ['a status that is none', (o) => (o.status = 'actve'), /actve is not in/],
  ['an intent that is none', (o) => (o.intent = 'wish'), /wish is not in/],
  ['a date that is none', (o) => (o.dateTime = '17.09.2014'), /dateTime: has another shape/],
  ['a time of 25 o’clock', (o) => (repeat(o).boundsPeriod.start = '2014-09-17T25:00:00Z'), /another shape/],
  [
    'the other version’s spelling',
    (o) => {
      o.enteralFormula.routeOfAdministration = o.enteralFormula.routeofAdministration;
      delete o.enteralFormula.routeofAdministration;
    },
    /routeOfAdministration: unknown/,
  ],
  ['an element that is none', (o) => (o.enteralFormula.speed = 1), /speed: unknown/],
  ['a value as text', (o) => (o.enteralFormula.caloricDensity.value = '1'), /value: is no number/],
  [
    'two kinds of rate',
    (o) =>
      (o.enteralFormula.administration[0].rateRatio = { numerator: { value: 1 }, denominator: { value: 1 } }),
    /more than one type/,
  ],
  ['a list where one is', (o) => (o.status = ['active']), /status: a list/],
  ['one where a list is', (o) => (o.identifier = o.identifier[0]), /identifier: no list/],
  ['a code without system', (o) => delete o.enteralFormula.caloricDensity.system, /qty-3/],
  ['an end before the start', (o) => (repeat(o).boundsPeriod.end = '2014-09-17T06:00:00Z'), /per-1/],
  ['a length without unit', (o) => (repeat(o).duration = 3), /tim-1/],
  [
    'times and events together',
    (o) => Object.assign(repeat(o), { timeOfDay: ['07:00:00'], when: ['HS'] }),
    /tim-10/,
  ],
  [
    'a unit of time that is none',
    (o) => Object.assign(repeat(o), { period: 4, periodUnit: 'hr' }),
    /hr is not in/,
  ],
  ['a reference to a device', (o) => (o.patient.reference = 'Device/1'), /reference to Device/],
  ['nothing ordered', (o) => delete o.enteralFormula, /nor-1/],
  ['an empty text', (o) => (o.enteralFormula.administrationInstruction = ''), /is empty/],
  ['an empty object', (o) => (o.enteralFormula.caloricDensity = {}), /empty object/],
  ['an empty list', (o) => (o.enteralFormula.administration = []), /empty list/],
];

test('[FH22] the checker of conformance finds nothing wrong in the examples of the specification', () => {
  for (const version of ['R4', 'R5'] as const) {
    assert.deepEqual(departures(example(version), version), [], version);
  }
});

for (const [name, plant, says] of FAULTS) {
  test(`[FH22] the checker of conformance finds ${name}`, () => {
    const order = example('R4');
    plant(order);
    assert.match(departures(order, 'R4').join('\n'), says);
  });
}

test('[FH22] the checker of conformance knows the versions apart', () => {
  assert.match(departures(example('R4'), 'R5').join('\n'), /patient: unknown/);
  assert.match(departures(example('R5'), 'R4').join('\n'), /subject: unknown/);
});
