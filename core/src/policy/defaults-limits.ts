/** The default policy on ceilings for rate and bolus, on making up lost volume, and on starting after little food. */
import { fraction } from '../base/fraction.ts';
import { minutes } from '../base/instant.ts';
import { ml, mlPerHour } from '../base/volume.ts';
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
} from './default-row.ts';
import type { PolicyRow } from './policy.ts';

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
];

const REFEEDING_ROWS: readonly PolicyRow[] = [
  adult(
    'refeeding.start.kcal-per-kg',
    fraction(10),
    read('S7'),
    other('10–20 kcal/kg', read('S7'), 'first 24 h, ASPEN 2020'),
  ),
  adult('refeeding.start.extreme.kcal-per-kg', fraction(5), read('S7')),
];

export const LIMIT_DEFAULTS: readonly PolicyRow[] = [
  ...RATE_ROWS,
  ...BOLUS_ROWS,
  ...CATCH_UP_ROWS,
  ...REFEEDING_ROWS,
];
