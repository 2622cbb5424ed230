/** Which questions can be put to local policy, and in what unit each is answered? */

export type KeyKind = 'duration' | 'volume' | 'rate' | 'fraction' | 'count' | 'switch' | 'choice' | 'time';

/** What a key asks for: the kind of its value, the unit it is written in, and for a choice the names to choose from. */
export type Key = { readonly kind: KeyKind; readonly unit: string; readonly choices?: readonly string[] };

const of = <K extends KeyKind>(kind: K, unit: string): { kind: K; unit: string } => ({ kind, unit });

/** A value out of a few named ones; the unit names them all. */
const oneOf = (
  ...choices: readonly string[]
): { kind: 'choice'; unit: string; choices: readonly string[] } => ({
  kind: 'choice',
  unit: choices.join(' / '),
  choices,
});

export const POLICY_KEYS = {
  // the day
  'day.start': of('time', 'HH:MM'),
  'shift.length': of('duration', 'h'),
  // hang limits, by how the feed comes
  'hang.closed': of('duration', 'h'),
  'hang.open-liquid': of('duration', 'h'),
  'hang.water-added': of('duration', 'h'),
  'hang.powder': of('duration', 'h'),
  'hang.concentrate': of('duration', 'h'),
  'hang.additives': of('duration', 'h'),
  'hang.human-milk': of('duration', 'h'),
  'hang.blenderised': of('duration', 'h'),
  'hang.water': of('duration', 'h'),
  'hang.margin': of('duration', 'min'),
  // sets, bags, cartons, pouring
  'set.change.open': of('duration', 'h'),
  'set.change.closed': of('duration', 'h'),
  'set.with-each-closed-container': of('switch', 'yes/no'),
  'set.prime.line': of('volume', 'mL'),
  'set.prime.spill': of('volume', 'mL'),
  'bag.capacity': of('volume', 'mL'),
  'pour.step': of('volume', 'mL'),
  'pour.per-feed': of('switch', 'yes/no'),
  'carton.keep': of('switch', 'yes/no'),
  'carton.keep-for': of('duration', 'h'),
  'prepared.keep-for': of('duration', 'h'),
  // water
  'flush.continuous.volume': of('volume', 'mL'),
  'flush.continuous.every': of('duration', 'h'),
  'flush.feed.before': of('volume', 'mL'),
  'flush.feed.after': of('volume', 'mL'),
  'flush.medicine.before': of('volume', 'mL'),
  'flush.medicine.after': of('volume', 'mL'),
  'flush.medicine.between': of('volume', 'mL'),
  'flush.residual.after': of('volume', 'mL'),
  'flush.hold.before': of('volume', 'mL'),
  'flush.hold.after': of('volume', 'mL'),
  'water.gastric': oneOf('tap', 'cooled-boiled', 'sterile'),
  'water.jejunal': oneOf('tap', 'cooled-boiled', 'sterile'),
  // visits: how far from its nominal time a task may be done
  'window.flush': of('duration', 'min'),
  'window.check': of('duration', 'min'),
  'window.medicine': of('duration', 'min'),
  'window.feed': of('duration', 'min'),
  'window.daily': of('duration', 'min'),
  // checks
  'check.position.every': of('duration', 'h'),
  'check.tube.every': of('duration', 'h'),
  'check.tube.on-clock': of('switch', 'yes/no'),
  'check.residual.routine': of('switch', 'yes/no'),
  'check.residual.every': of('duration', 'h'),
  'check.residual.before-feed': of('switch', 'yes/no'),
  'care.mouth.every': of('duration', 'h'),
  'check.weight.every': of('duration', 'h'),
  'check.glucose.every': of('duration', 'h'),
  'check.bloods.every': of('duration', 'h'),
  'check.tolerance.every': of('duration', 'h'),
  'position.head-of-bed': of('count', 'deg'),
  'position.head-of-bed.target': of('count', 'deg'),
  'position.after-feed': of('duration', 'min'),
  'position.pause-when-flat': of('switch', 'yes/no'),
  // ceilings
  'ceiling.rate.gastric': of('rate', 'mL/h'),
  'ceiling.rate.jejunal': of('rate', 'mL/h'),
  'ceiling.rate.cyclic': of('rate', 'mL/h'),
  'ceiling.rate.per-kg': of('fraction', 'mL/kg/h'),
  'ceiling.bolus': of('volume', 'mL'),
  'ceiling.bolus.ask': of('volume', 'mL'),
  'ceiling.bolus.per-kg': of('fraction', 'mL/kg'),
  'bolus.least-duration': of('duration', 'min'),
  'pump.rate-step': of('rate', 'mL/h'),
  'jejunal.bolus-allowed': of('switch', 'yes/no'),
  // catching up lost volume
  'catch-up.ceiling': of('rate', 'mL/h'),
  'catch-up.first-day': of('switch', 'yes/no'),
  'catch-up.first-day.rate': of('rate', 'mL/h'),
  // advancement: what a prescriber may be shown as usual; the order decides
  'advance.rate.start': of('rate', 'mL/h'),
  'advance.rate.step': of('rate', 'mL/h'),
  'advance.rate.every': of('duration', 'h'),
  'advance.bolus.start': of('volume', 'mL'),
  'advance.bolus.step': of('volume', 'mL'),
  'advance.bolus.every': of('duration', 'h'),
  // refeeding
  'refeeding.start.kcal-per-kg': of('fraction', 'kcal/kg/d'),
  'refeeding.start.extreme.kcal-per-kg': of('fraction', 'kcal/kg/d'),
  // refeeding risk by NICE CG32: any one of these, or any two of those
  'refeeding.nice.one.bmi': of('fraction', 'kg/m2'),
  'refeeding.nice.one.loss': of('fraction', '1'),
  'refeeding.nice.one.little-intake': of('duration', 'd'),
  'refeeding.nice.two.bmi': of('fraction', 'kg/m2'),
  'refeeding.nice.two.loss': of('fraction', '1'),
  'refeeding.nice.two.little-intake': of('duration', 'd'),
  'refeeding.nice.extreme.bmi': of('fraction', 'kg/m2'),
  'refeeding.nice.extreme.little-intake': of('duration', 'd'),
  // refeeding risk by ASPEN 2020: two moderate items, or one significant
  'refeeding.aspen.moderate.bmi': of('fraction', 'kg/m2'),
  'refeeding.aspen.moderate.loss-in-month': of('fraction', '1'),
  'refeeding.aspen.moderate.no-intake': of('duration', 'd'),
  'refeeding.aspen.moderate.intake-share': of('fraction', '1'),
  'refeeding.aspen.moderate.low-intake-acute': of('duration', 'd'),
  'refeeding.aspen.significant.bmi': of('fraction', 'kg/m2'),
  'refeeding.aspen.significant.loss-in-3-months': of('fraction', '1'),
  'refeeding.aspen.significant.loss-in-6-months': of('fraction', '1'),
  'refeeding.aspen.significant.no-intake': of('duration', 'd'),
  'refeeding.aspen.significant.intake-share': of('fraction', '1'),
  'refeeding.aspen.significant.low-intake-acute': of('duration', 'd'),
  'refeeding.aspen.low-intake-chronic': of('duration', 'd'),
  // refeeding once fed: falls from the last value before feeding, and absolute values
  'refeeding.fall.mild': of('fraction', '1'),
  'refeeding.fall.moderate': of('fraction', '1'),
  'refeeding.fall.severe': of('fraction', '1'),
  'refeeding.fall.within': of('duration', 'd'),
  'refeeding.phosphate.low': of('fraction', 'mmol/L'),
  'refeeding.phosphate.fall': of('fraction', 'mmol/L'),
  'electrolyte.potassium.critical': of('fraction', 'mmol/L'),
  'electrolyte.magnesium.critical': of('fraction', 'mmol/L'),
  'electrolyte.phosphate.critical': of('fraction', 'mmol/L'),
  'refeeding.electrolytes.every': of('duration', 'h'),
  'refeeding.electrolytes.for': of('duration', 'h'),
  'refeeding.low-electrolytes': oneOf('delay-if-severely-low', 'start-and-replace'),
  'refeeding.thiamine.before-first-feed': of('switch', 'yes/no'),
  // placement
  'placement.pack': oneOf('radiograph-first', 'ph-first-then-radiograph'),
  'placement.ph.limit': of('fraction', '[pH]'),
  'placement.ph.second-checker-from': of('fraction', '[pH]'),
  'placement.ph.off-feed': of('duration', 'min'),
  'placement.new-stoma': of('duration', 'h'),
  'placement.first-feed.stoma': of('duration', 'h'),
  // the stoma
  'stoma.tract.established': of('duration', 'd'),
  'stoma.rotation.from': of('duration', 'd'),
  'stoma.rotation.every': of('duration', 'h'),
  'stoma.balloon.every': of('duration', 'h'),
  'stoma.bumper.slack.least': of('count', 'mm'),
  'stoma.bumper.slack.most': of('count', 'mm'),
  // residual
  'residual.compare': oneOf('more-than', 'at-least'),
  'residual.alert': of('volume', 'mL'),
  'residual.stop': of('volume', 'mL'),
  'residual.consecutive': of('count', '1'),
  'residual.return-most': of('volume', 'mL'),
  'residual.recheck-after': of('duration', 'h'),
  'residual.jejunal-allowed': of('switch', 'yes/no'),
  'residual.least-french': of('count', 'Fr'),
  'residual.per-kg': of('fraction', 'mL/kg'),
  'residual.share.alert': of('fraction', '1'),
  'residual.share.stop': of('fraction', '1'),
  // medicines that want the feed held, in minutes before and after
  'medicine.hold.empty-stomach.before': of('duration', 'min'),
  'medicine.hold.empty-stomach.after': of('duration', 'min'),
  'medicine.hold.phenytoin.before': of('duration', 'min'),
  'medicine.hold.phenytoin.after': of('duration', 'min'),
  'medicine.hold.levothyroxine.before': of('duration', 'min'),
  'medicine.hold.levothyroxine.after': of('duration', 'min'),
  'medicine.hold.ciprofloxacin.before': of('duration', 'min'),
  'medicine.hold.ciprofloxacin.after': of('duration', 'min'),
  'medicine.hold.tetracyclines.before': of('duration', 'min'),
  'medicine.hold.tetracyclines.after': of('duration', 'min'),
  'medicine.hold.warfarin.before': of('duration', 'min'),
  'medicine.hold.warfarin.after': of('duration', 'min'),
  'medicine.hold.levodopa.before': of('duration', 'min'),
  'medicine.hold.levodopa.after': of('duration', 'min'),
  'medicine.hold.sucralfate.before': of('duration', 'min'),
  'medicine.hold.sucralfate.after': of('duration', 'min'),
  'medicine.hold.carbamazepine.before': of('duration', 'min'),
  'medicine.hold.carbamazepine.after': of('duration', 'min'),
  // the account
  'account.tolerance.fraction': of('fraction', '1'),
  'account.tolerance.volume': of('volume', 'mL'),
  'account.discarded-residual-off-nutrition': of('switch', 'yes/no'),
  'delivered.alert': of('fraction', '1'),
  // warnings
  'warn.dry-within': of('duration', 'min'),
  'warn.paused-for': of('duration', 'min'),
  'glucose.after-stop-within': of('duration', 'min'),
  'duplicate.within': of('duration', 'min'),
} as const satisfies Record<string, Key>;

export type PolicyKey = keyof typeof POLICY_KEYS;

/** The key of that name, or null if local policy is never asked that. */
export const policyKey = (name: string): PolicyKey | null =>
  Object.hasOwn(POLICY_KEYS, name) ? (name as PolicyKey) : null;
