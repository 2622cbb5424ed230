/**
 * The default policy on refeeding: the criteria of two bodies, which differ, the bands of a fall, and where feeding starts.
 * Every row is for adults; for a child none was read.
 */
import { fraction } from '../../base/fraction.ts';
import { hours } from '../../base/instant.ts';
import type { PolicyRow } from '../policy.ts';
import { adult, days, derived, FACILITY, fromMemory, other, percent, read, secondary } from './row.ts';

const NICE_ROWS: readonly PolicyRow[] = [
  adult('refeeding.nice.one.bmi', fraction(16), read('S6')),
  adult('refeeding.nice.one.loss', percent(15), read('S6')),
  adult('refeeding.nice.one.little-intake', days(10), read('S6')),
  adult(
    'refeeding.nice.two.bmi',
    fraction(37, 2),
    read('S6'),
    other('left out', read('S105'), 'a table that reproduces the list without it'),
  ),
  adult(
    'refeeding.nice.two.loss',
    percent(10),
    read('S6'),
    other('in 6 months', read('S105'), 'for 3 to 6 months, in the same table'),
  ),
  adult('refeeding.nice.two.little-intake', days(5), read('S6')),
  adult('refeeding.nice.extreme.bmi', fraction(14), read('S7')),
  adult('refeeding.nice.extreme.little-intake', days(15), read('S7')),
];

const ASPEN_ROWS: readonly PolicyRow[] = [
  adult('refeeding.aspen.moderate.bmi', fraction(37, 2), read('S7')),
  adult('refeeding.aspen.moderate.loss-in-month', percent(5), read('S7')),
  adult('refeeding.aspen.moderate.no-intake', days(5), read('S7')),
  adult('refeeding.aspen.moderate.intake-share', percent(75), read('S7')),
  adult('refeeding.aspen.moderate.low-intake-acute', days(7), read('S7')),
  adult('refeeding.aspen.significant.bmi', fraction(16), read('S7')),
  adult('refeeding.aspen.significant.loss-in-3-months', fraction(75, 1000), read('S7')),
  adult('refeeding.aspen.significant.loss-in-6-months', percent(10), read('S7')),
  adult('refeeding.aspen.significant.no-intake', days(7), read('S7')),
  adult('refeeding.aspen.significant.intake-share', percent(50), read('S7')),
  adult('refeeding.aspen.significant.low-intake-acute', days(5), read('S7')),
  adult(
    'refeeding.aspen.low-intake-chronic',
    days(30),
    derived('S7'),
    other('1 month', read('S7'), 'as printed'),
  ),
];

const FALL_ROWS: readonly PolicyRow[] = [
  adult(
    'refeeding.fall.mild',
    percent(10),
    read('S7'),
    other('10–20 %', read('S8'), 'bands share their edges'),
  ),
  adult(
    'refeeding.fall.moderate',
    percent(20),
    read('S7'),
    other('20–30 %', read('S8'), 'bands share their edges'),
  ),
  adult(
    'refeeding.fall.severe',
    percent(30),
    read('S7'),
    other('over 30 %', read('S8'), 'or organ dysfunction'),
    other('30 %', read('S96'), 'phosphate in intensive care: cut the rate'),
  ),
  adult('refeeding.fall.within', days(5), read('S7')),
  adult(
    'refeeding.phosphate.low',
    fraction(65, 100),
    fromMemory('S111'),
    other('2.0 mg/dL or less', secondary('S112'), 'after feeding starts'),
  ),
  adult(
    'refeeding.phosphate.fall',
    fraction(16, 100),
    fromMemory('S111'),
    other('over 0.5 mg/dL', secondary('S112'), 'after feeding starts'),
  ),
  // No published critical value was found for any of the three: a laboratory has its own.
  adult('electrolyte.potassium.critical', null, FACILITY),
  adult('electrolyte.magnesium.critical', null, FACILITY),
  adult('electrolyte.phosphate.critical', null, FACILITY),
];

const START_ROWS: readonly PolicyRow[] = [
  adult(
    'refeeding.start.kcal-per-kg',
    fraction(10),
    read('S7'),
    other('10–20 kcal/kg', read('S7'), 'first 24 h, ASPEN 2020'),
  ),
  adult('refeeding.start.extreme.kcal-per-kg', fraction(5), read('S7')),
  adult(
    'refeeding.electrolytes.every',
    hours(12),
    read('S7'),
    other('8 h', read('S35'), 'one handbook'),
    other('daily', fromMemory('S5'), 'while at risk'),
    other('2–3 a day', fromMemory('S111'), 'low phosphate'),
  ),
  adult('refeeding.electrolytes.for', hours(72), read('S7')),
  adult(
    'refeeding.low-electrolytes',
    'delay-if-severely-low',
    read('S7'),
    other('start-and-replace', read('S7'), 'NICE: correcting them first is not needed'),
  ),
  adult(
    'refeeding.thiamine.before-first-feed',
    true,
    read('S7'),
    other('200–300 mg a day for 10 days', read('S7'), 'NICE'),
    other('2 mg/kg up to 100–200 mg a day', read('S7'), 'ASPEN 2020, before feed, 5–7 days or more'),
  ),
];

export const REFEEDING_DEFAULTS: readonly PolicyRow[] = [
  ...NICE_ROWS,
  ...ASPEN_ROWS,
  ...FALL_ROWS,
  ...START_ROWS,
];
