/** One thing wrong at a time in an otherwise clean order: its standing and shape, its text, its feed, its people. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { ml, mlPerHour } from '@feedwright/core/base/volume';
import { at, type Fault, first, tryFaults } from './fault.ts';
import { ANSWERED, coded, imported, only, plainOrder, standing } from './given.ts';

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

tryFaults(FAULTS);
