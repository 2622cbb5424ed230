/**
 * What can no policy mean? For every number a range outside which it is a slip of the pen, not a choice: a hang limit of
 * 80 h, a rate of zero, a pH of 55. Far wider than any default: within it the facility decides.
 */
import { type Fraction, fraction } from '../base/fraction.ts';
import { hours } from '../base/instant.ts';
import { ml, mlPerHour } from '../base/volume.ts';
import { days } from './defaults/row.ts';
import type { PolicyKey } from './keys.ts';

export type Bounds = {
  /** The rule of RULES.md that refuses what lies outside. */
  readonly rule: string;
  readonly least: Fraction;
  /** Whether the least value itself is possible. */
  readonly orLeast: boolean;
  readonly most: Fraction;
};

type Family = Bounds & { readonly keys: readonly PolicyKey[] };

const from = (
  rule: string,
  least: number | Fraction,
  most: number | Fraction,
  keys: readonly PolicyKey[],
): Family => ({
  ...above(rule, least, most, keys),
  orLeast: true,
});

const above = (
  rule: string,
  least: number | Fraction,
  most: number | Fraction,
  keys: readonly PolicyKey[],
): Family => ({
  rule,
  least: typeof least === 'number' ? fraction(least) : least,
  orLeast: false,
  most: typeof most === 'number' ? fraction(most) : most,
  keys,
});

const FAMILIES: readonly Family[] = [
  // 48 h is the longest that is published for anything that hangs or is kept (S1, S24).
  above('PO11', 0, hours(48), [
    'hang.closed',
    'hang.open-liquid',
    'hang.water-added',
    'hang.powder',
    'hang.concentrate',
    'hang.additives',
    'hang.human-milk',
    'hang.blenderised',
    'hang.water',
    'set.change.open',
    'set.change.closed',
    'carton.keep-for',
    'prepared.keep-for',
  ]),
  above('PO10', 0, hours(24), [
    'shift.length',
    'flush.continuous.every',
    'check.position.every',
    'check.residual.every',
    'care.mouth.every',
    'check.tolerance.every',
    'residual.recheck-after',
    'advance.rate.every',
    'advance.bolus.every',
    'bolus.least-duration',
    'warn.dry-within',
    'warn.paused-for',
    'glucose.after-stop-within',
  ]),
  above('PO10', 0, days(90), [
    'check.tube.every',
    'check.weight.every',
    'check.glucose.every',
    'check.bloods.every',
    'refeeding.electrolytes.every',
    'refeeding.electrolytes.for',
    'stoma.rotation.every',
    'stoma.balloon.every',
  ]),
  from('PO10', 0, hours(24), [
    'hang.margin',
    'window.flush',
    'window.check',
    'window.medicine',
    'window.feed',
    'window.daily',
    'position.after-feed',
    'placement.ph.off-feed',
    'duplicate.within',
    'medicine.hold.empty-stomach.before',
    'medicine.hold.empty-stomach.after',
    'medicine.hold.phenytoin.before',
    'medicine.hold.phenytoin.after',
    'medicine.hold.levothyroxine.before',
    'medicine.hold.levothyroxine.after',
    'medicine.hold.ciprofloxacin.before',
    'medicine.hold.ciprofloxacin.after',
    'medicine.hold.tetracyclines.before',
    'medicine.hold.tetracyclines.after',
    'medicine.hold.warfarin.before',
    'medicine.hold.warfarin.after',
    'medicine.hold.levodopa.before',
    'medicine.hold.levodopa.after',
    'medicine.hold.sucralfate.before',
    'medicine.hold.sucralfate.after',
    'medicine.hold.carbamazepine.before',
    'medicine.hold.carbamazepine.after',
  ]),
  from('PO10', 0, days(365), [
    'placement.new-stoma',
    'placement.first-feed.stoma',
    'stoma.tract.established',
    'stoma.rotation.from',
  ]),
  above('PO10', 0, days(365), [
    'refeeding.nice.one.little-intake',
    'refeeding.nice.two.little-intake',
    'refeeding.nice.extreme.little-intake',
    'refeeding.aspen.moderate.no-intake',
    'refeeding.aspen.moderate.low-intake-acute',
    'refeeding.aspen.significant.no-intake',
    'refeeding.aspen.significant.low-intake-acute',
    'refeeding.aspen.low-intake-chronic',
    'refeeding.fall.within',
  ]),
  from('PO10', 0, ml(500), [
    'set.prime.line',
    'set.prime.spill',
    'flush.continuous.volume',
    'flush.feed.before',
    'flush.feed.after',
    'flush.medicine.before',
    'flush.medicine.after',
    'flush.medicine.between',
    'flush.residual.after',
    'flush.hold.before',
    'flush.hold.after',
    'account.tolerance.volume',
  ]),
  above('PO10', 0, ml(5000), ['bag.capacity', 'pour.step']),
  above('PO10', 0, ml(1000), [
    'ceiling.bolus',
    'ceiling.bolus.ask',
    'advance.bolus.start',
    'advance.bolus.step',
    'residual.alert',
    'residual.stop',
  ]),
  from('PO10', 0, ml(1000), ['residual.return-most']),
  above('PO10', 0, mlPerHour(500), [
    'ceiling.rate.gastric',
    'ceiling.rate.jejunal',
    'ceiling.rate.cyclic',
    'catch-up.ceiling',
    'catch-up.first-day.rate',
    'advance.rate.start',
    'advance.rate.step',
  ]),
  above('PO10', 0, mlPerHour(10), ['pump.rate-step']),
  above('PO10', 0, fraction(100), ['ceiling.rate.per-kg', 'ceiling.bolus.per-kg', 'residual.per-kg']),
  above('PO10', 0, fraction(100), ['refeeding.start.kcal-per-kg', 'refeeding.start.extreme.kcal-per-kg']),
  from('PO14', fraction(1), fraction(7), ['placement.ph.limit', 'placement.ph.second-checker-from']),
  from('PO10', fraction(0), fraction(90), ['position.head-of-bed', 'position.head-of-bed.target']),
  from('PO10', fraction(1), fraction(10), ['residual.consecutive']),
  from('PO10', fraction(1), fraction(40), ['residual.least-french']),
  from('PO10', fraction(0), fraction(50), ['stoma.bumper.slack.least', 'stoma.bumper.slack.most']),
  from('PO10', fraction(0), fraction(1), ['account.tolerance.fraction']),
  above('PO10', 0, fraction(1), [
    'delivered.alert',
    'residual.share.alert',
    'residual.share.stop',
    'refeeding.nice.one.loss',
    'refeeding.nice.two.loss',
    'refeeding.aspen.moderate.loss-in-month',
    'refeeding.aspen.moderate.intake-share',
    'refeeding.aspen.significant.loss-in-3-months',
    'refeeding.aspen.significant.loss-in-6-months',
    'refeeding.aspen.significant.intake-share',
    'refeeding.fall.mild',
    'refeeding.fall.moderate',
    'refeeding.fall.severe',
  ]),
  from('PO10', fraction(5), fraction(60), [
    'refeeding.nice.one.bmi',
    'refeeding.nice.two.bmi',
    'refeeding.nice.extreme.bmi',
    'refeeding.aspen.moderate.bmi',
    'refeeding.aspen.significant.bmi',
  ]),
  above('PO10', 0, fraction(20), [
    'refeeding.phosphate.low',
    'refeeding.phosphate.fall',
    'electrolyte.potassium.critical',
    'electrolyte.magnesium.critical',
    'electrolyte.phosphate.critical',
  ]),
  from('PO10', 0, fraction(24 * 60 - 1), ['day.start']),
];

const BY_KEY: ReadonlyMap<PolicyKey, Bounds> = new Map(
  FAMILIES.flatMap((family) => family.keys.map((key) => [key, family] as const)),
);

/** The bounds of a number's key, in the units of the account; null for a switch or a choice. */
export const boundsOf = (key: PolicyKey): Bounds | null => BY_KEY.get(key) ?? null;
