/** The default policy on water: around feeds and medicines, after residuals, around holds. */
import { hours } from '../../base/instant.ts';
import { ml } from '../../base/volume.ts';
import type { PolicyRow } from '../policy.ts';
import {
  adult,
  adultAtHome,
  COMMON_PRACTICE,
  child,
  derived,
  FACILITY,
  fromMemory,
  other,
  read,
} from './row.ts';

/** Published volumes for children were recalled, not read: shown, never used. */
const CHILD_FLUSHES = [
  other('the least that clears the tube', fromMemory('S2'), 'children and neonates'),
  other('0.5–1 mL', COMMON_PRACTICE, 'neonate, up to 2 mL'),
  other('1–5 mL', COMMON_PRACTICE, 'infant'),
  other('5–10 mL', COMMON_PRACTICE, 'child'),
  other('10–20 mL', COMMON_PRACTICE, 'adolescent'),
];

export const WATER_DEFAULTS: readonly PolicyRow[] = [
  adult(
    'flush.continuous.volume',
    ml(30),
    fromMemory('S2'),
    other('30 mL', fromMemory('S107'), 'home, every 4 h in the day'),
    other('20–50 mL', COMMON_PRACTICE, 'every 4 to 6 h'),
  ),
  child('flush.continuous.volume', null, FACILITY, ...CHILD_FLUSHES),
  adult(
    'flush.continuous.every',
    hours(4),
    fromMemory('S2'),
    other('4 h in the day', read('S83'), 'nasojejunal tube at home, and at bedtime and on waking'),
    other('4–6 h', COMMON_PRACTICE, 'range in use'),
  ),
  adult('flush.feed.before', ml(30), fromMemory('S2')),
  child('flush.feed.before', null, FACILITY, ...CHILD_FLUSHES),
  adult('flush.feed.after', ml(30), fromMemory('S2'), other('25–60 mL', read('S33'), 'after each bolus')),
  child('flush.feed.after', null, FACILITY, ...CHILD_FLUSHES),
  adult(
    'flush.medicine.before',
    ml(15),
    read('S59'),
    other('15–30 mL', read('S59'), 'its range'),
    other('15 mL at least', fromMemory('S1'), 'before, between and after'),
    other('60 mL', read('S100'), 'around phenytoin'),
  ),
  adultAtHome('flush.medicine.before', ml(30), fromMemory('S107')),
  child('flush.medicine.before', null, FACILITY, ...CHILD_FLUSHES),
  adult(
    'flush.medicine.after',
    ml(15),
    read('S59'),
    other('15–30 mL', read('S59'), 'its range'),
    other('15 mL at least', fromMemory('S1'), 'before, between and after'),
    other('60 mL', read('S100'), 'around phenytoin'),
  ),
  adultAtHome('flush.medicine.after', ml(30), fromMemory('S107')),
  child('flush.medicine.after', null, FACILITY, ...CHILD_FLUSHES),
  adult(
    'flush.medicine.between',
    ml(15),
    fromMemory('S1'),
    other('5–10 mL', read('S59'), 'between medicines'),
    other('30 mL', fromMemory('S107'), 'home adults'),
  ),
  adultAtHome(
    'flush.medicine.between',
    ml(30),
    fromMemory('S107'),
    other('5–10 mL', read('S59'), 'between medicines'),
    other('15 mL at least', fromMemory('S1'), 'before, between and after'),
  ),
  child('flush.medicine.between', null, FACILITY, ...CHILD_FLUSHES),
  adult('flush.residual.after', ml(30), fromMemory('S2')),
  adult('flush.hold.before', ml(30), derived('S2')),
  adult('flush.hold.after', ml(30), derived('S2')),
  adult(
    'water.gastric',
    null,
    FACILITY,
    other('sterile', fromMemory('S2'), 'immunocompromised or critically ill, and around medicines'),
    other('tap', fromMemory('S101'), 'not immunosuppressed'),
    other('cooled-boiled', fromMemory('S101'), 'immunosuppressed, or fresh-opened sterile'),
  ),
  child(
    'water.gastric',
    null,
    FACILITY,
    other('by age, immune state and place', read('S97'), 'home child; 4 months is its border'),
  ),
  adult(
    'water.jejunal',
    'sterile',
    fromMemory('S2'),
    other('cooled-boiled', read('S83'), 'nasojejunal tube at home'),
    other('cooled-boiled', fromMemory('S101'), 'or fresh-opened sterile'),
  ),
  adultAtHome(
    'water.jejunal',
    'cooled-boiled',
    read('S83'),
    other('sterile', fromMemory('S2'), 'jejunal tubes'),
  ),
];
