/**
 * Which rule speaks, and how loudly? Every code that a judgement of an order can give, with its number in RULES.md and
 * its level. The words for a code live in `screen/`.
 */
import type { Problem } from './order.ts';

export const ORDER_PROBLEMS = {
  // what must be there and make sense before anything is worked out
  'order/missing': ['OR2', 'stop'],
  'order/not-credible': ['OR3', 'stop'],
  'order/dates-contradict': ['OR4', 'stop'],
  'order/ended': ['OR5', 'stop'],
  // the tube
  'order/no-such-lumen': ['OR6', 'stop'],
  'order/lumen-twice': ['OR6', 'stop'],
  'order/lumen-not-for': ['OR7', 'stop'],
  'order/bolus-post-pyloric': ['OR8', 'stop'],
  'order/bolus-post-pyloric-allowed': ['OR9', 'ask'],
  'order/post-pyloric-without-pump': ['OR10', 'ask'],
  'order/tip-unusual': ['OR11', 'ask'],
  // the feed
  'order/feed-not-listed': ['OR12', 'stop'],
  'order/allergy': ['OR13', 'stop'],
  'order/allergy-possible': ['OR14', 'ask'],
  'order/density-off': ['OR15', 'stop'],
  'order/density-differs': ['OR16', 'ask'],
  'order/strength-impossible': ['OR17', 'stop'],
  'order/closed-mixed': ['OR18', 'stop'],
  'order/closed-poured': ['OR19', 'ask'],
  'order/human-milk-no-number': ['OR20', 'ask'],
  'order/feed-expired': ['OR21', 'stop'],
  'order/feed-prepared-later': ['OR21', 'stop'],
  // how and how much
  'order/method-contradicts': ['OR22', 'stop'],
  'order/method-unusual': ['OR23', 'ask'],
  'order/window-empty': ['OR24', 'stop'],
  'order/time-off-clock': ['OR25', 'stop'],
  'order/time-twice': ['OR25', 'stop'],
  'order/feeds-overlap': ['OR25', 'stop'],
  'order/amounts-contradict': ['OR26', 'stop'],
  'order/over-own-rate': ['OR27', 'stop'],
  'order/advance-contradicts': ['OR28', 'stop'],
  'order/hold-contradicts': ['OR29', 'stop'],
  'order/water-contradicts': ['OR30', 'stop'],
  // ceilings
  'order/rate-over-local': ['OR31', 'ask'],
  'order/rate-over-per-kg': ['OR32', 'ask'],
  'order/bolus-over-local': ['OR33', 'ask'],
  'order/bolus-over-usual': ['OR34', 'ask'],
  'order/bolus-over-per-kg': ['OR35', 'ask'],
  'order/faster-than-least': ['OR36', 'ask'],
  'order/over-fluid-limit': ['OR37', 'ask'],
  'order/over-refeeding-ceiling': ['OR38', 'ask'],
  'order/refeeding-unchecked': ['OR39', 'ask'],
  // worth knowing
  'order/policy-silent': ['OR40', 'note'],
  'order/allergies-to-compare': ['OR41', 'note'],
  'order/diluted': ['OR42', 'note'],
  'order/powder': ['OR43', 'note'],
  'order/medicine-post-pyloric': ['OR44', 'note'],
  'order/away-from-needs': ['OR45', 'note'],
  'order/water-under-needs': ['OR46', 'note'],
  'order/holds-cost': ['OR47', 'note'],
  'order/advances': ['OR48', 'note'],
  'order/water-kind': ['OR49', 'note'],
  'order/hold-without-end': ['OR50', 'note'],
  'order/holds-overlap': ['OR50', 'note'],
  'order/short-by-rounding': ['OR51', 'note'],
  'order/done-early': ['OR51', 'note'],
  'order/rate-between-steps': ['OR58', 'note'],
  'order/no-catch-up': ['OR52', 'note'],
  'order/confirmation-idle': ['OR53', 'note'],
  'order/no-start': ['OR54', 'note'],
  'order/prescribed-later': ['OR54', 'note'],
  'order/cannot-check': ['OR55', 'note'],
  'order/water-seldom': ['OR56', 'note'],
  'order/water-without-feeds': ['OR56', 'note'],
} as const satisfies Record<string, readonly [rule: `OR${number}`, level: Problem['level']]>;

export type OrderProblemCode = keyof typeof ORDER_PROBLEMS;

/**
 * A problem by its code. Numbers in `data` are exact fractions beside their `unit`; what is asked carries `confirm`, the
 * rule that a named person's confirmation has to name.
 */
export function problem(code: OrderProblemCode, path: Problem['path'], data: Problem['data'] = {}): Problem {
  const [rule, level] = ORDER_PROBLEMS[code];
  return { rule, level, code, path, data: level === 'ask' ? { ...data, confirm: rule } : data };
}
