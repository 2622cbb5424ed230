/** What the tests start from: the specification's examples, an order without anything wrong, and how it is read. */
import assert from 'node:assert/strict';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import type { Problem } from '@feedwright/core/order/order';
import { type Imported, orderFromFhir } from '../src/order-from-fhir.ts';
import { exampleText } from './conformance.ts';

// biome-ignore lint/suspicious/noExplicitAny: tests change it anywhere
export type Nested = { [name: string]: any };
export type Answers = Readonly<Record<string, string>>;

export const example = (version: 'R4' | 'R5', name: string): string =>
  exampleText(version, `NutritionOrder-${name}`);

/** The document read; fails the test where it is refused. */
export function imported(document: Nested | string, answers: Answers = {}): Imported {
  const text = typeof document === 'string' ? document : JSON.stringify(document);
  const result = orderFromFhir(text, answers, DEFAULT_FEEDS);
  assert.ok(result.ok, JSON.stringify(result));
  return result.value;
}

export const refusal = (text: string, answers: Answers = {}) => {
  const result = orderFromFhir(text, answers, DEFAULT_FEEDS);
  assert.ok(!result.ok);
  return result.issues;
};

export const coded = ({ problems }: Imported, code: string): readonly Problem[] =>
  problems.filter((problem) => problem.code === code);

/** The one problem of that code. */
export function only(read: Imported, code: string): Problem {
  const [found, ...more] = coded(read, code);
  assert.ok(found !== undefined && more.length === 0, `${code}: ${coded(read, code).length} found`);
  return found;
}

/** Rule, level and code of everything that stands before a plan. */
export const standing = ({ problems }: Imported): readonly string[] =>
  problems.filter(({ level }) => level !== 'note').map(({ rule, level, code }) => `${level} ${rule} ${code}`);

const UCUM = 'http://unitsofmeasure.org';

export const quantity = (value: number, code: string): Nested => ({ value, unit: code, system: UCUM, code });

/** A continuous R4 order in which everything is said that FHIR can say. */
export const plainOrder = (change: (order: Nested) => void = () => {}): Nested => {
  const order: Nested = {
    resourceType: 'NutritionOrder',
    id: 'plain',
    status: 'active',
    intent: 'order',
    patient: { display: 'Ada Example', identifier: { type: { text: 'hospital number' }, value: 'HN 1' } },
    dateTime: '2026-11-25T09:30:00+00:00',
    orderer: { display: 'Dr A. Careful' },
    enteralFormula: {
      baseFormulaType: { text: 'standard-1.0' },
      caloricDensity: quantity(1, 'kcal/mL'),
      routeofAdministration: {
        coding: [{ system: 'http://terminology.hl7.org/CodeSystem/v3-RouteOfAdministration', code: 'NGT' }],
      },
      administration: [
        {
          schedule: { repeat: { boundsPeriod: { start: '2026-11-25T18:00:00+00:00' } } },
          rateQuantity: quantity(62.5, 'mL/h'),
        },
      ],
      maxVolumeToDeliver: quantity(1500, 'mL/d'),
    },
  };
  change(order);
  return order;
};

/** What a plain order leaves to a person. */
export const ANSWERED: Answers = {
  zone: 'Europe/London',
  method: 'pump',
  waterKind: 'tap',
  waterMl: '30',
  waterEveryHours: '4',
  setting: 'hospital',
};

export const withRate = (order: Nested, administration: Nested): void => {
  order.enteralFormula.administration = [administration];
};

// ——— what may stand beside an order ———

export const PATIENT: Nested = {
  resourceType: 'Patient',
  id: 'p1',
  identifier: [
    { type: { text: 'hospital number' }, value: 'HN 7' },
    { system: 'urn:nhs', value: '943 476 5919' },
  ],
  name: [{ family: 'Example', given: ['Ada', 'Mary'] }],
  birthDate: '1950-02-28',
};

export const weight = (value: number, code: string, on: string, more: Nested = {}): Nested => ({
  resourceType: 'Observation',
  status: 'final',
  code: { coding: [{ system: 'http://loinc.org', code: '29463-7' }] },
  subject: { reference: 'Patient/p1' },
  effectiveDateTime: on,
  valueQuantity: quantity(value, code),
  ...more,
});

export const tube = (type: string, french: number, more: Nested = {}): Nested => ({
  resourceType: 'Device',
  patient: { reference: 'Patient/p1' },
  type: { text: type },
  property: [{ type: { text: 'size' }, valueQuantity: [quantity(french, '[Ch]')] }],
  ...more,
});

export const bundle = (...beside: readonly Nested[]): Nested => ({
  resourceType: 'Bundle',
  type: 'collection',
  entry: [
    {
      resource: plainOrder((order) => {
        order.patient = { reference: 'Patient/p1' };
      }),
    },
    ...beside.map((resource) => ({ resource })),
  ],
});
