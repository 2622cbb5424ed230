/** The default policy on where the tube's tip is known to be, on new stomas, and on residuals. */
import { fraction } from '../../base/fraction.ts';
import { hours } from '../../base/instant.ts';
import { ml } from '../../base/volume.ts';
import type { PolicyRow } from '../policy.ts';
import {
  adult,
  anyAge,
  COMMON_PRACTICE,
  child,
  childPastNeonate,
  days,
  derived,
  FACILITY,
  fromMemory,
  neonate,
  other,
  read,
  secondary,
} from './row.ts';

const PLACEMENT_ROWS: readonly PolicyRow[] = [
  // Bodies contradict each other outright, and people have died either way: the facility chooses, nobody else.
  anyAge(
    'placement.pack',
    null,
    FACILITY,
    other('ph-first-then-radiograph', read('S9'), 'pH first, radiograph second (UK, Ireland)'),
    other('radiograph-first', secondary('S106'), 'pH and carbon dioxide judged not accurate enough'),
    other('radiograph-first', read('S17'), 'radiograph as the reference'),
    other('radiograph-first', read('S12'), 'in high-risk patients; pH and capnography in a local protocol'),
  ),
  adult(
    'placement.ph.limit',
    fraction(11, 2),
    read('S9'),
    other('5.5', read('S10'), 'safe range 1 to 5.5'),
    other('5', fromMemory('S1'), 'several hospitals in other countries'),
  ),
  neonate('placement.ph.limit', fraction(5), read('S18')),
  childPastNeonate(
    'placement.ph.limit',
    null,
    FACILITY,
    other('5.5', read('S9'), 'not limited to adults'),
    other('5', read('S18'), 'neonates'),
    other('6 is too high', read('S15'), 'children: specificity 0.42; 4 and 5 undetermined'),
  ),
  adult('placement.ph.second-checker-from', fraction(5), fromMemory('S10')),
  adult('placement.ph.off-feed', hours(1), fromMemory('S1')),
  adult(
    'placement.new-stoma',
    hours(72),
    fromMemory('S110'),
    other('first week', read('S82'), 'pain on feeding, leak or fresh bleeding'),
  ),
  adult(
    'placement.first-feed.stoma',
    hours(4),
    read('S78'),
    other('3–4 h', read('S12'), 'uncomplicated'),
    other('2 h', fromMemory('S2'), 'adults'),
    other('2–4 h', fromMemory('S107'), 'home adults'),
  ),
  child('placement.first-feed.stoma', null, FACILITY, other('6 h', fromMemory('S2'), 'infants and children')),
];

const STOMA_ROWS: readonly PolicyRow[] = [
  adult('stoma.tract.established', days(84), read('S82')),
  adult(
    'stoma.rotation.from',
    days(14),
    derived('S82'),
    other('once healed', fromMemory('S107'), 'home adults'),
    other('14 d', read('S81'), 'a child’s button'),
  ),
  child('stoma.rotation.from', days(14), read('S81')),
  adult(
    'stoma.rotation.every',
    days(7),
    fromMemory('S5'),
    other('daily', fromMemory('S107'), 'and moved 2–10 cm in and out each week'),
    other('pushed in daily', read('S12'), 'against buried bumper'),
  ),
  child(
    'stoma.rotation.every',
    days(7),
    read('S80'),
    other('daily', read('S81'), 'a button, after the first 14 days'),
  ),
  adult('stoma.balloon.every', days(7), fromMemory('S5'), other('weekly', read('S81'), 'a child’s button')),
  child('stoma.balloon.every', days(7), read('S81')),
  adult('stoma.bumper.slack.least', 10, read('S12'), other('5–10 mm', fromMemory('S107'), 'once healed')),
  adult('stoma.bumper.slack.most', 20, read('S12'), other('5–10 mm', fromMemory('S107'), 'once healed')),
];

const RESIDUAL_ROWS: readonly PolicyRow[] = [
  anyAge(
    'residual.compare',
    'more-than',
    read('S49'),
    other('more-than', read('S4'), 'over 500 mL in 6 h'),
    other('at-least', fromMemory('S2'), '250 mL or more at a second check'),
  ),
  adult(
    'residual.alert',
    ml(250),
    read('S49'),
    other('250–500 mL', read('S4'), 'Canadian guideline 2015, every 4–6 h'),
    other('200 mL', fromMemory('S108'), 'review'),
    other('200 or 500 mL', read('S50'), 'trial: no harm at 500'),
  ),
  child(
    'residual.alert',
    null,
    FACILITY,
    other('25 % of the feed', read('S42'), 'preterm: give back, leave out the feed'),
    other('5 mL/kg', COMMON_PRACTICE, 'or half of the last 4 h of feed; varies'),
  ),
  adult(
    'residual.stop',
    ml(500),
    read('S4'),
    other('over 500 mL', read('S2'), 'hold until a new order'),
    other('over 500 mL in 6 h', read('S4'), 'ESPEN 2019: delay'),
  ),
  child('residual.stop', null, FACILITY, other('50 % of the feed', read('S42'), 'preterm: stop and review')),
  adult('residual.consecutive', 2, fromMemory('S2')),
  adult(
    'residual.return-most',
    ml(250),
    read('S52'),
    other('return or discard', read('S51'), 'no proven benefit either way'),
  ),
  child(
    'residual.return-most',
    null,
    FACILITY,
    other('give back 25–50 % of the feed', read('S42'), 'preterm, unless bilious'),
  ),
  adult('residual.recheck-after', hours(1), fromMemory('S4'), other('1–2 h', fromMemory('S4'), 'its range')),
  // A prohibition: safe to hold at every age, and for a patient whose age is not known.
  anyAge('residual.jejunal-allowed', false, fromMemory('S5')),
  adult('residual.least-french', 10, fromMemory('S1')),
  adult('residual.per-kg', null, FACILITY),
  child(
    'residual.per-kg',
    null,
    FACILITY,
    other('1–2 mL/kg', read('S43'), 'neonatal cohorts; under 4 mL/kg in others'),
    other('5 mL/kg', COMMON_PRACTICE, 'intensive care; varies'),
  ),
  adult('residual.share.alert', null, FACILITY),
  child(
    'residual.share.alert',
    null,
    FACILITY,
    other('25 %', read('S42'), 'preterm: give back, leave out the feed'),
  ),
  adult('residual.share.stop', null, FACILITY),
  child('residual.share.stop', null, FACILITY, other('50 %', read('S42'), 'preterm: stop and review')),
];

export const TUBE_DEFAULTS: readonly PolicyRow[] = [...PLACEMENT_ROWS, ...STOMA_ROWS, ...RESIDUAL_ROWS];
