/** The default policy on visits, routine checks and the patient's position, the account and its warnings. */

import { fraction } from '../../base/fraction.ts';
import { hours, minutes } from '../../base/instant.ts';
import { ml } from '../../base/volume.ts';
import type { PolicyRow } from '../policy.ts';
import {
  adult,
  adultAtHome,
  anyAge,
  COMMON_PRACTICE,
  derived,
  FACILITY,
  fromMemory,
  other,
  read,
} from './row.ts';

const WINDOW_ROWS: readonly PolicyRow[] = [
  anyAge('window.flush', minutes(30), COMMON_PRACTICE),
  anyAge('window.check', minutes(60), COMMON_PRACTICE),
  anyAge(
    'window.medicine',
    minutes(30),
    COMMON_PRACTICE,
    other('60 min', COMMON_PRACTICE, 'not time-critical'),
  ),
  anyAge('window.feed', minutes(30), COMMON_PRACTICE),
  anyAge('window.daily', minutes(120), COMMON_PRACTICE),
];

const CHECK_ROWS: readonly PolicyRow[] = [
  adult('check.position.every', hours(4), COMMON_PRACTICE),
  adult(
    'check.tube.every',
    hours(4),
    read('S16'),
    other('before each use', read('S10'), 'always before feeding starts'),
    other('each shift', COMMON_PRACTICE, 'range in use'),
  ),
  adult(
    'check.tube.on-clock',
    false,
    fromMemory('S1'),
    other('yes', read('S16'), 'every 4 h while feed runs'),
  ),
  adult(
    'check.residual.routine',
    false,
    read('S4'),
    other('every 4–6 h', read('S4'), 'Canadian guideline 2015, 250–500 mL acceptable'),
    other('every 4 h, then 6–8 h', fromMemory('S2'), 'first 48 h, then at goal'),
    other('every 4 h', fromMemory('S108'), 'review over 200 mL'),
    other('no', read('S49'), 'trial: no more pneumonia without it'),
  ),
  adult(
    'check.residual.every',
    hours(6),
    read('S49'),
    other('4–6 h', read('S4'), 'Canadian guideline 2015'),
    other('4 h', fromMemory('S108'), 'review over 200 mL'),
    other('4 h, then 6–8 h', fromMemory('S2'), 'first 48 h, then at goal'),
  ),
  adult('check.residual.before-feed', false, read('S4')),
  adult('care.mouth.every', hours(4), COMMON_PRACTICE),
  adult(
    'check.weight.every',
    hours(72),
    derived('S76'),
    other('twice a week', read('S76'), 'more often where fluid is a concern'),
    other('weekly, then monthly', fromMemory('S5'), 'daily where fluid is a concern'),
  ),
  adultAtHome('check.weight.every', hours(30 * 24), derived('S76'), other('monthly', read('S76'), 'stable')),
  adult(
    'check.glucose.every',
    hours(24),
    read('S76'),
    other('1–2 a day, then weekly', fromMemory('S5'), 'until stable'),
  ),
  adult(
    'check.bloods.every',
    hours(24),
    fromMemory('S5'),
    other('12 h for 3 days', read('S7'), 'K, Mg, phosphate at high refeeding risk'),
    other('8 h', read('S35'), 'K, Mg, phosphate at high refeeding risk, one handbook'),
    other('daily', read('S96'), 'phosphate in intensive care'),
  ),
  adult(
    'check.tolerance.every',
    hours(12),
    derived('S2'),
    other('each shift or day', read('S2'), 'distension, firmness, discomfort'),
  ),
];

const POSITION_ROWS: readonly PolicyRow[] = [
  adult(
    'position.head-of-bed',
    30,
    read('S2'),
    other('20°', read('S57'), 'acceptable with restrictions; 30° or more preferred'),
    other('30° at most', read('S56'), 'guidance on pressure ulcers'),
    other('30°', read('S58'), 'mean reached in a trial bundle'),
  ),
  adult(
    'position.head-of-bed.target',
    45,
    read('S2'),
    other('30–45°', read('S30'), 'during feeding'),
    other('45°', read('S56'), 'some bodies'),
    other('30° at most', read('S56'), 'guidance on pressure ulcers'),
  ),
  adult(
    'position.after-feed',
    minutes(60),
    read('S30'),
    other('1–2 h', read('S30'), 'after a bolus'),
    other('30 min', fromMemory('S108'), 'hospital adults'),
    other('30–60 min', COMMON_PRACTICE, 'nursing texts'),
  ),
  anyAge(
    'position.pause-when-flat',
    null,
    FACILITY,
    other('yes', COMMON_PRACTICE, 'for care with the head down'),
    other('no', COMMON_PRACTICE, 'a short while flat costs less than the volume lost'),
  ),
];

const ACCOUNT_ROWS: readonly PolicyRow[] = [
  anyAge(
    'account.tolerance.fraction',
    fraction(1, 10),
    derived('S89'),
    other('90–110 %', read('S89'), 'band of its audit of weighed bags'),
  ),
  adult('account.tolerance.volume', ml(50), COMMON_PRACTICE),
  anyAge('account.discarded-residual-off-nutrition', false, COMMON_PRACTICE),
  anyAge(
    'delivered.alert',
    fraction(4, 5),
    read('S40'),
    other('90 %', read('S87'), 'definition of a successful day'),
    other('90 %', read('S89'), 'below it a bag counts as short'),
  ),
  anyAge('warn.dry-within', minutes(15), COMMON_PRACTICE),
  anyAge('warn.paused-for', minutes(30), COMMON_PRACTICE),
  anyAge(
    'glucose.after-stop-within',
    minutes(30),
    COMMON_PRACTICE,
    other('60 min', COMMON_PRACTICE, 'hourly while feed is off'),
  ),
  anyAge('duplicate.within', minutes(10), COMMON_PRACTICE),
];

export const BEDSIDE_DEFAULTS: readonly PolicyRow[] = [
  ...WINDOW_ROWS,
  ...CHECK_ROWS,
  ...POSITION_ROWS,
  ...ACCOUNT_ROWS,
];
