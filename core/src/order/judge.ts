/**
 * May this order be planned, what must be asked first, and what is worth knowing? All rules of RULES.md, OR2 to OR58,
 * over one order. Codes with data; the words are for `screen/`.
 */
import type { Instant } from '../base/instant.ts';
import type { FeedList } from '../feeds/feed.ts';
import type { Policy } from '../policy/policy.ts';
import type { Confirmation, Order, Problem } from './order.ts';
import { problem } from './problem.ts';
import { type Review, review as reviewOf } from './review.ts';
import { advance } from './rules/advance.ts';
import { allergies } from './rules/allergy.ts';
import { amounts } from './rules/amounts.ts';
import { ceilings } from './rules/ceilings.ts';
import { complete } from './rules/complete.ts';
import { credibleNumbers } from './rules/credible-numbers.ts';
import { dates } from './rules/dates.ts';
import { density, feed } from './rules/feed.ts';
import { interruption } from './rules/interruption.ts';
import { method } from './rules/method.ts';
import { nutrition } from './rules/nutrition.ts';
import { timetable } from './rules/timetable.ts';
import { tube } from './rules/tube.ts';
import { water } from './rules/water.ts';

/** Nothing is worked out with numbers that cannot be meant. */
const arithmetic = (review: Review): readonly Problem[] => [
  ...density(review),
  ...timetable(review),
  ...amounts(review),
  ...advance(review.order),
  ...ceilings(review),
  ...nutrition(review),
  ...interruption(review),
];

function unknownAge({ order, isChild }: Review): readonly Problem[] {
  return isChild === null
    ? [
        problem('order/cannot-check', ['patient', 'birthDate'], {
          lacks: 'age',
          given: order.patient.birthDate,
        }),
      ]
    : [];
}

const LEVELS = ['stop', 'ask', 'note'] as const;
const byLevel = (problems: readonly Problem[]): readonly Problem[] =>
  LEVELS.flatMap((level) => problems.filter((one) => one.level === level));

/** A key that several rules miss is named once. */
function silentOnce(problems: readonly Problem[]): readonly Problem[] {
  const seen = new Set<unknown>();
  return problems.filter(({ code, data }) => {
    if (code !== 'order/policy-silent') return true;
    const isNew = !seen.has(data.key);
    seen.add(data.key);
    return isNew;
  });
}

const answers = (confirmations: readonly Confirmation[], rule: string): Confirmation | undefined =>
  confirmations.findLast((one) => one.rule === rule && one.by.trim() !== '');

function confirmed({ confirmations }: Order, problems: readonly Problem[]): readonly Problem[] {
  return problems.map((one) => {
    const answer = one.level === 'ask' ? answers(confirmations, one.rule) : undefined;
    return answer === undefined ? one : { ...one, confirmedBy: answer.by };
  });
}

/** [OR53] A confirmation of something that nobody asks: the order has changed since, or the rule was mistyped. */
function idle({ confirmations }: Order, problems: readonly Problem[]): readonly Problem[] {
  const asked = new Set(problems.filter((one) => one.level === 'ask').map((one) => one.rule));
  return confirmations.flatMap(({ rule, by }, i) =>
    /^OR\d+$/.test(rule) && !asked.has(rule)
      ? [problem('order/confirmation-idle', ['confirmations', i, 'rule'], { rule, by })]
      : [],
  );
}

/**
 * Everything that is to be said about an order before it is planned, stops first. One that stops must not be planned; one
 * that asks needs a named person's confirmation of its rule in `order.confirmations`, which comes back as `confirmedBy`.
 * Never throws, whatever the order holds.
 * @param at the moment it is judged: policy rows, age and expiry are those of this moment.
 */
export function judgeOrder(order: Order, feeds: FeedList, policy: Policy, at: Instant): readonly Problem[] {
  const review = reviewOf(order, feeds, policy, at);
  const numbers = credibleNumbers(order);
  const found = [
    ...complete(review),
    ...numbers,
    ...dates(review),
    ...tube(review),
    ...feed(review),
    ...allergies(review),
    ...method(order),
    ...water(review),
    ...unknownAge(review),
    ...(numbers.length === 0 ? arithmetic(review) : []),
  ];
  return byLevel(confirmed(order, silentOnce([...found, ...idle(order, found)])));
}

/** Whether a plan may be made: nothing stops, and whatever had to be asked has been confirmed by somebody. */
export const mayBePlanned = (problems: readonly Problem[]): boolean =>
  problems.every((one) => one.level === 'note' || (one.level === 'ask' && one.confirmedBy !== undefined));
