/**
 * The default policy on medicines that want the feed held. For a continuous gastric feed: holding a jejunal one helps less.
 * The order's own hold governs; these are what to compare it with.
 */
import { minutes } from '../../base/instant.ts';
import type { PolicyKey } from '../keys.ts';
import type { PolicyAlternative, PolicyRow } from '../policy.ts';
import { adult, type From, fromMemory, other, read, secondary } from './row.ts';

type Held = PolicyKey extends infer K ? (K extends `medicine.hold.${infer M}.before` ? M : never) : never;

const hold = (
  medicine: Held,
  before: number,
  afterwards: number,
  from: From,
  ...alternatives: readonly PolicyAlternative[]
): readonly PolicyRow[] => [
  adult(`medicine.hold.${medicine}.before`, minutes(before), from, ...alternatives),
  adult(`medicine.hold.${medicine}.after`, minutes(afterwards), from, ...alternatives),
];

/** Written in texts whose names are not at hand. */
const TEXTS = fromMemory('common-practice');

export const MEDICINE_DEFAULTS: readonly PolicyRow[] = [
  ...hold(
    'empty-stomach',
    30,
    30,
    read('S59'),
    other('15 min before only', read('S59'), 'second of three proposals'),
    other('1 h before, 2 h after', read('S59'), 'third of three proposals'),
  ),
  ...hold(
    'phenytoin',
    60,
    60,
    read('S31'),
    other('1–2 h each side', read('S63'), 'hospital review'),
    other('2 h each side, 60 mL water', read('S100'), 'or up to 6 h after, or 1 h each side'),
    other('no interaction', read('S64'), 'trials in healthy volunteers'),
  ),
  ...hold(
    'levothyroxine',
    60,
    60,
    read('S68'),
    other('30 min each side', read('S68'), 'crushed tablet, in its trial; the liquid needed none'),
    other('none before day 7', fromMemory('S60'), 'then 1 h each side'),
  ),
  ...hold(
    'ciprofloxacin',
    60,
    120,
    read('S62'),
    other('30–60 min or more each side', read('S31'), 'the whole class; never by a jejunal tube'),
  ),
  ...hold('tetracyclines', 60, 120, TEXTS, other('1–2 h before, 2 h after', TEXTS, 'divalent cations')),
  ...hold(
    'warfarin',
    60,
    60,
    read('S31'),
    other('binds to the tube', read('S70'), 'a third of the dose, in vitro'),
  ),
  ...hold(
    'levodopa',
    60,
    30,
    secondary('S113'),
    other('boluses between doses', read('S69'), 'and less protein, one case in intensive care'),
  ),
  ...hold('sucralfate', 60, 60, TEXTS, other('not beyond the stomach', TEXTS, 'post-pyloric tips')),
  ...hold('carbamazepine', 60, 120, TEXTS, other('varies', TEXTS, 'suspension: dilute, never in the feed')),
];
