/** Which questions can be put to local policy, and in what unit each is answered? */

export type KeyKind = 'duration' | 'volume' | 'rate' | 'fraction' | 'count' | 'switch' | 'choice' | 'time';

type Key = { readonly kind: KeyKind; readonly unit: string; readonly choices?: readonly string[] };

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
  'position.head-of-bed': of('count', 'deg'),
  'position.head-of-bed.target': of('count', 'deg'),
  'position.after-feed': of('duration', 'min'),
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
  // refeeding
  'refeeding.start.kcal-per-kg': of('fraction', 'kcal/kg/d'),
  'refeeding.start.extreme.kcal-per-kg': of('fraction', 'kcal/kg/d'),
  // placement
  'placement.pack': oneOf('radiograph-first', 'ph-first-then-radiograph'),
  'placement.ph.limit': of('fraction', '[pH]'),
  'placement.ph.second-checker-from': of('fraction', '[pH]'),
  'placement.new-stoma': of('duration', 'h'),
  'placement.first-feed.stoma': of('duration', 'h'),
  // residual
  'residual.compare': oneOf('more-than', 'at-least'),
  'residual.alert': of('volume', 'mL'),
  'residual.stop': of('volume', 'mL'),
  'residual.consecutive': of('count', '1'),
  'residual.return-most': of('volume', 'mL'),
  'residual.recheck-after': of('duration', 'h'),
  'residual.jejunal-allowed': of('switch', 'yes/no'),
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
