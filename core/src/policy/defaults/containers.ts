/** The default policy on the day, hang limits, sets, pouring, and what is kept in the refrigerator. */
import { DAY, duration, hours } from '../../base/instant.ts';
import { ml } from '../../base/volume.ts';
import type { PolicyRow } from '../policy.ts';
import {
  adult,
  adultAtHome,
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

const DAY_ROWS: readonly PolicyRow[] = [
  anyAge(
    'day.start',
    8 * 60,
    COMMON_PRACTICE,
    other('the unit’s own flow-sheet start', read('S37'), 'volume-based orders; not midnight by rule'),
  ),
  anyAge('shift.length', hours(12), COMMON_PRACTICE, other('8 h', COMMON_PRACTICE, 'three shifts a day')),
];

const HANG_ROWS: readonly PolicyRow[] = [
  adult(
    'hang.closed',
    hours(24),
    read('S19'),
    other('24–36 h', read('S19'), 'unopened ready-to-hang liquid, by its maker'),
    other('24–36 h', read('S20'), 'unopened ready-to-hang liquid, by its maker'),
    other('24–48 h', fromMemory('S1'), 'closed container, by its maker'),
    other('48 h', read('S24'), 'bench data accepted for non-vented containers'),
    other('48 h', read('S92'), 'one hospital’s own limit'),
    other('24 h at most', fromMemory('S101'), 'ready to use, the whole session'),
  ),
  child(
    'hang.closed',
    hours(24),
    read('S19'),
    other('24–36 h', read('S20'), 'unopened ready-to-hang liquid, by its maker'),
  ),
  adult(
    'hang.open-liquid',
    hours(8),
    fromMemory('S2'),
    other('4–8 h', fromMemory('S1'), 'wording of the 2017 update, hospital'),
    other('12 h', read('S19'), 'child or adult, poured into another container'),
    other('12 h', read('S20'), 'child or adult, poured into another container'),
    other('12 h', read('S22'), 'study of decanted feed: 106 of 111 cultures acceptable'),
  ),
  adultAtHome(
    'hang.open-liquid',
    hours(12),
    fromMemory('S2'),
    other('12 h', read('S22'), 'children in hospital, with good technique'),
  ),
  child(
    'hang.open-liquid',
    null,
    FACILITY,
    other('12 h', read('S19'), 'child, poured into another container'),
    other('12 h', read('S20'), 'child, poured into another container'),
    other('6 h', read('S19'), 'infant ready-to-feed liquid, 2007 edition'),
    other('4 h', secondary('S20'), 'infant ready-to-feed liquid, 2013 edition; pairing of its rows inferred'),
    other('4 h', fromMemory('S1'), 'neonatal intensive care'),
  ),
  // Water makes a liquid feed a handled one, as a module does: the shorter published limit, at every age.
  anyAge(
    'hang.water-added',
    hours(4),
    derived('S19'),
    other('4 h', derived('S2'), 'as feed with added modules'),
    other('8 h', derived('S2'), 'as the feed itself'),
  ),
  adult(
    'hang.powder',
    hours(4),
    fromMemory('S2'),
    other('4 h', fromMemory('S101'), 'reconstituted feed, the whole session'),
    other('6 h', read('S21'), 'bench data: no growth up to 6 h in aseptically made powder feed'),
  ),
  child(
    'hang.powder',
    hours(4),
    read('S19'),
    other('4 h', secondary('S20'), 'infant powder; pairing of its rows inferred'),
  ),
  anyAge(
    'hang.concentrate',
    hours(4),
    derived('S19'),
    other('4 h', derived('S2'), 'as reconstituted powder'),
  ),
  adult(
    'hang.additives',
    hours(4),
    fromMemory('S2'),
    other('12 h', read('S19'), 'modular feed, adolescent or adult'),
    other('12 h', read('S20'), 'modular feed, adolescent or adult'),
  ),
  child('hang.additives', hours(4), read('S19'), other('4 h', read('S20'), 'modular feed, infant or child')),
  anyAge(
    'hang.human-milk',
    hours(4),
    read('S19'),
    other('4 h', secondary('S20'), 'expressed milk; pairing of its rows inferred'),
    other('4 h', fromMemory('S102'), 'continuous by syringe: syringe and tubing changed every 4 h'),
  ),
  anyAge(
    'hang.blenderised',
    hours(2),
    read('S21'),
    other('bolus only', read('S21'), 'at 32 °C and above: counts unacceptable at 2 h'),
    other('2 h', fromMemory('S1'), 'home-made blenderised feed'),
  ),
  anyAge('hang.water', hours(24), COMMON_PRACTICE),
  anyAge('hang.margin', duration(0), COMMON_PRACTICE),
];

const SET_ROWS: readonly PolicyRow[] = [
  adult(
    'set.change.open',
    hours(24),
    fromMemory('S2'),
    other('after each session', read('S79'), 'community practice, as reported from NICE'),
  ),
  adult('set.change.closed', hours(24), fromMemory('S1'), other('24–48 h', fromMemory('S2'), 'by its maker')),
  // The stricter habit: safe to keep at every age.
  anyAge(
    'set.with-each-closed-container',
    true,
    fromMemory('S1'),
    other('no', COMMON_PRACTICE, 'not where more than 24 h is claimed'),
  ),
  adult('set.prime.line', ml(15), COMMON_PRACTICE, other('15–25 mL', COMMON_PRACTICE, 'by the set')),
  child('set.prime.line', null, FACILITY, other('0.3–2 mL', COMMON_PRACTICE, 'neonatal extension')),
  adult('set.prime.spill', ml(5), COMMON_PRACTICE),
  adult(
    'bag.capacity',
    ml(1000),
    COMMON_PRACTICE,
    other('500 mL', COMMON_PRACTICE, 'smaller bag'),
    other('1500 mL', COMMON_PRACTICE, 'larger bag'),
  ),
  adult('pour.step', ml(10), COMMON_PRACTICE, other('50 mL', COMMON_PRACTICE, 'marks on many bags')),
  anyAge('pour.per-feed', true, COMMON_PRACTICE),
];

const STORE_ROWS: readonly PolicyRow[] = [
  anyAge('carton.keep', true, COMMON_PRACTICE),
  anyAge(
    'carton.keep-for',
    DAY,
    read('S20'),
    other('24 h', read('S19'), 'opened or prepared, refrigerated'),
    other('48 h', COMMON_PRACTICE, 'many product labels; not verified'),
  ),
  anyAge(
    'prepared.keep-for',
    DAY,
    read('S20'),
    other('24 h', read('S19'), 'after preparation, refrigerated'),
  ),
];

export const CONTAINER_DEFAULTS: readonly PolicyRow[] = [
  ...DAY_ROWS,
  ...HANG_ROWS,
  ...SET_ROWS,
  ...STORE_ROWS,
];
