/** The default policy on ceilings for rate and bolus, on making up lost volume, and on advancing. */
import { hours, minutes } from '../../base/instant.ts';
import { ml, mlPerHour } from '../../base/volume.ts';
import type { PolicyRow } from '../policy.ts';
import {
  adult,
  anyAge,
  COMMON_PRACTICE,
  child,
  derived,
  FACILITY,
  fromMemory,
  other,
  read,
  secondary,
} from './row.ts';

/** A table for children with kidney disease whose columns had to be put together again: shown, never used. */
const KDOQI = secondary('S41');

const RATE_ROWS: readonly PolicyRow[] = [
  adult(
    'ceiling.rate.gastric',
    mlPerHour(150),
    derived('S37'),
    other('125 mL/h', KDOQI, 'over 14 years; columns reconstructed'),
  ),
  child(
    'ceiling.rate.gastric',
    null,
    FACILITY,
    other('21–54 mL/h', KDOQI, 'under 1 year; columns reconstructed'),
    other('71–92 mL/h', KDOQI, '1 to 6 years; columns reconstructed'),
    other('108–130 mL/h', KDOQI, '6 to 14 years; columns reconstructed'),
    other('125 mL/h', KDOQI, 'over 14 years; columns reconstructed'),
  ),
  adult('ceiling.rate.jejunal', mlPerHour(125), COMMON_PRACTICE),
  adult('ceiling.rate.cyclic', mlPerHour(150), COMMON_PRACTICE),
  adult('ceiling.rate.per-kg', null, FACILITY),
  child(
    'ceiling.rate.per-kg',
    null,
    FACILITY,
    other('6 mL/kg/h', KDOQI, 'under 1 year; columns reconstructed'),
    other('4–5 mL/kg/h', KDOQI, '1 to 6 years; columns reconstructed'),
    other('3–4 mL/kg/h', KDOQI, '6 to 14 years; columns reconstructed'),
  ),
  anyAge('pump.rate-step', mlPerHour(1), COMMON_PRACTICE),
];

const BOLUS_ROWS: readonly PolicyRow[] = [
  adult(
    'ceiling.bolus',
    ml(480),
    read('S31'),
    other('240–480 mL', read('S31'), 'a feed'),
    other('250–300 mL', read('S33'), 'over 15 min, 3 h apart'),
  ),
  child(
    'ceiling.bolus',
    null,
    FACILITY,
    other('80–240 mL', KDOQI, 'under 1 year; columns reconstructed'),
    other('280–375 mL', KDOQI, '1 to 6 years; columns reconstructed'),
    other('430–520 mL', KDOQI, '6 to 14 years; columns reconstructed'),
    other('500 mL', KDOQI, 'over 14 years; columns reconstructed'),
  ),
  adult(
    'ceiling.bolus.ask',
    ml(400),
    fromMemory('S108'),
    other('200–400 mL', fromMemory('S108'), 'over 15 to 60 min'),
    other('250–300 mL', read('S33'), 'over 15 min, 3 h apart'),
  ),
  adult('ceiling.bolus.per-kg', null, FACILITY),
  child(
    'ceiling.bolus.per-kg',
    null,
    FACILITY,
    other('20–30 mL/kg', KDOQI, 'under 1 year; columns reconstructed'),
    other('15–20 mL/kg', KDOQI, '1 to 6 years; columns reconstructed'),
    other('10–20 mL/kg', KDOQI, '6 to 14 years; columns reconstructed'),
    other('10 mL/kg', KDOQI, 'over 14 years; columns reconstructed'),
  ),
  adult(
    'bolus.least-duration',
    minutes(15),
    read('S33'),
    other('10–20 min', read('S2'), 'by syringe; 30–60 min by gravity'),
    other('under 10 min', read('S31'), 'bolus; intermittent 30–45 min'),
    other('4–10 min', read('S32'), 'bolus; intermittent 20–60 min'),
    other('15–60 min', fromMemory('S108'), '200–400 mL'),
  ),
  // A prohibition: safe to hold at every age, and for a patient whose age is not known.
  anyAge('jejunal.bolus-allowed', false, read('S30')),
];

const CATCH_UP_ROWS: readonly PolicyRow[] = [
  adult(
    'catch-up.ceiling',
    mlPerHour(150),
    read('S37'),
    other('120 mL/h', fromMemory('S109'), 'another volume-based protocol'),
  ),
  anyAge('catch-up.first-day', false, read('S37')),
  adult(
    'catch-up.first-day.rate',
    mlPerHour(25),
    read('S37'),
    other('10 mL/h', read('S37'), 'trophic, on vasopressors'),
  ),
];

/** What is usual, for whoever writes the order; nothing steps by these. */
const ADVANCE_ROWS: readonly PolicyRow[] = [
  adult(
    'advance.rate.start',
    mlPerHour(20),
    read('S30'),
    other('10–40 mL/h', fromMemory('S2'), 'continuous'),
    other('20–30 mL/h', read('S30'), 'its range'),
    other('20 mL/h', read('S34'), 'low risk'),
    other('10 mL/h', read('S35'), 'no refeeding risk'),
    other('25 mL/h', read('S37'), 'first day of volume-based feeding'),
    other('25–50 mL/h at half strength', read('S36'), 'older manual; dilution judged unnecessary by S2'),
  ),
  adult(
    'advance.rate.step',
    mlPerHour(20),
    read('S34'),
    other('10–20 mL/h', read('S30'), 'every 4–8 h'),
    other('10–20 mL/h', secondary('S99'), 'every 8–12 h'),
    other('10 mL/h', read('S35'), 'every 6 h'),
  ),
  adult(
    'advance.rate.every',
    hours(8),
    read('S34'),
    other('6–8 h', read('S34'), 'low risk; 4 h for burns or head injury'),
    other('4–8 h', read('S30'), 'continuous'),
    other('8–12 h', secondary('S99'), 'continuous'),
    other('6 h', read('S35'), 'no refeeding risk'),
  ),
  adult('advance.bolus.start', ml(120), secondary('S99'), other('60–120 mL', fromMemory('S2'), 'its range')),
  adult(
    'advance.bolus.step',
    ml(60),
    secondary('S99'),
    other('60–120 mL', fromMemory('S2'), 'its range'),
    other('30–60 mL', secondary('S99'), 'some, up to 120'),
  ),
  adult('advance.bolus.every', hours(8), secondary('S99'), other('8–12 h', fromMemory('S2'), 'its range')),
];

export const LIMIT_DEFAULTS: readonly PolicyRow[] = [
  ...RATE_ROWS,
  ...BOLUS_ROWS,
  ...CATCH_UP_ROWS,
  ...ADVANCE_ROWS,
];
