/**
 * Which rows cannot hold together? A margin as long as the limit it is taken off, an alert above the stop, a question
 * asked only above the hard ceiling. Each is tried for everybody to whom both rows apply, at every time.
 */
import { compare, type Fraction, fraction, plus, times } from '../base/fraction.ts';
import type { PolicyKey } from './keys.ts';

export type Contradiction = {
  readonly rule: string;
  readonly code: string;
  /** Of the keys' values, in order, in the units of the account. */
  readonly keys: readonly PolicyKey[];
  readonly possible: (values: readonly Fraction[]) => boolean;
};

const less = ([a, b]: readonly Fraction[]): boolean => compare(a!, b!) < 0;
const notMore = ([a, b]: readonly Fraction[]): boolean => compare(a!, b!) <= 0;
/** Windows of ± a around tasks that are b apart do not overlap: else one visit could count for two tasks. */
const twiceNotMore = ([a, b]: readonly Fraction[]): boolean => compare(times(a!, fraction(2)), b!) <= 0;

const each = (
  rule: string,
  code: string,
  possible: Contradiction['possible'],
  ...pairs: readonly (readonly PolicyKey[])[]
): readonly Contradiction[] => pairs.map((keys) => ({ rule, code, keys, possible }));

const HANG: readonly PolicyKey[] = [
  'hang.closed',
  'hang.open-liquid',
  'hang.water-added',
  'hang.powder',
  'hang.concentrate',
  'hang.additives',
  'hang.human-milk',
  'hang.blenderised',
  'hang.water',
];

const beforeEachLimit = (key: PolicyKey): readonly (readonly PolicyKey[])[] =>
  HANG.map((limit) => [key, limit]);

export const CONTRADICTIONS: readonly Contradiction[] = [
  ...each('PO12', 'policy/margin-not-under-limit', less, ...beforeEachLimit('hang.margin')),
  ...each('PO13', 'policy/more-than', notMore, ['ceiling.bolus.ask', 'ceiling.bolus']),
  ...each('PO14', 'policy/more-than', notMore, ['placement.ph.second-checker-from', 'placement.ph.limit']),
  ...each(
    'PO15',
    'policy/more-than',
    notMore,
    ['position.head-of-bed', 'position.head-of-bed.target'],
    ['stoma.bumper.slack.least', 'stoma.bumper.slack.most'],
  ),
  ...each('PO16', 'policy/more-than', notMore, ['pour.step', 'bag.capacity']),
  ...each(
    'PO16',
    'policy/prime-not-under-capacity',
    ([line, spill, capacity]) => compare(plus(line!, spill!), capacity!) < 0,
    ['set.prime.line', 'set.prime.spill', 'bag.capacity'],
  ),
  ...each(
    'PO17',
    'policy/windows-overlap',
    twiceNotMore,
    ['window.flush', 'flush.continuous.every'],
    ['window.check', 'check.position.every'],
    ['window.check', 'check.tube.every'],
    ['window.check', 'check.residual.every'],
    ['window.check', 'check.tolerance.every'],
    ['window.check', 'care.mouth.every'],
    ['window.daily', 'check.weight.every'],
    ['window.daily', 'check.glucose.every'],
    ['window.daily', 'check.bloods.every'],
  ),
  ...each('PO17', 'policy/warning-not-under-limit', less, ...beforeEachLimit('warn.dry-within')),
  ...each('PO17', 'policy/warning-not-under-limit', less, ...beforeEachLimit('warn.paused-for')),
  ...each(
    'PO18',
    'policy/more-than',
    notMore,
    ['residual.alert', 'residual.stop'],
    ['residual.share.alert', 'residual.share.stop'],
  ),
  ...each(
    'PO19',
    'policy/not-in-order',
    less,
    ['refeeding.fall.mild', 'refeeding.fall.moderate'],
    ['refeeding.fall.moderate', 'refeeding.fall.severe'],
    ['refeeding.nice.extreme.bmi', 'refeeding.nice.one.bmi'],
    ['refeeding.nice.one.bmi', 'refeeding.nice.two.bmi'],
    ['refeeding.nice.two.loss', 'refeeding.nice.one.loss'],
    ['refeeding.nice.two.little-intake', 'refeeding.nice.one.little-intake'],
    ['refeeding.nice.one.little-intake', 'refeeding.nice.extreme.little-intake'],
    ['refeeding.aspen.significant.bmi', 'refeeding.aspen.moderate.bmi'],
  ),
  ...each(
    'PO19',
    'policy/more-than',
    notMore,
    ['refeeding.start.extreme.kcal-per-kg', 'refeeding.start.kcal-per-kg'],
    ['refeeding.electrolytes.every', 'refeeding.electrolytes.for'],
  ),
];
