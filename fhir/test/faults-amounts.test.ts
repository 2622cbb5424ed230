/** One thing wrong at a time in an otherwise clean order: energy, units, numbers, the maximum. */
import { type Fault, first, rateIn, tryFaults } from './fault.ts';
import { quantity } from './given.ts';

const FAULTS: readonly Fault[] = [
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
    change: rateIn('ml/hr'),
    says: ['ask', 'fhir/unit-not-valid', 'unit.rate'],
    data: { unit: 'ml/hr', likely: 'mL/h', value: '60' },
  },
  {
    name: 'cc/hr',
    rule: 'FH7',
    change: rateIn('cc/hr'),
    says: ['ask', 'fhir/unit-not-valid', 'unit.rate'],
    data: { likely: 'mL/h' },
  },
  {
    name: 'a rate in mL',
    rule: 'FH7',
    change: rateIn('mL'),
    says: ['ask', 'fhir/unit-of-another-kind', 'unit.rate'],
  },
  {
    name: 'a megalitre an hour',
    rule: 'FH7',
    change: rateIn('ML/h'),
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
];

tryFaults(FAULTS);
