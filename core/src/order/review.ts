/**
 * What do the rules look at? One order together with what it leads to: the feed in the facility's list, the lumen that
 * is fed into, the person's age, and what local policy says of such a person at that moment.
 */
import type { Instant } from '../base/instant.ts';
import type { Basis } from '../base/working.ts';
import { type DayName, dayAt } from '../base/zone.ts';
import { type Feed, type FeedList, feedById } from '../feeds/feed.ts';
import { ageInDays, daysOfYears } from '../policy/age.ts';
import type { POLICY_KEYS, PolicyKey } from '../policy/keys.ts';
import {
  ask,
  type Policy,
  type PolicyAnswer,
  type PolicyContext,
  type PolicyValue,
} from '../policy/policy.ts';
import type { Lumen, Order, Problem } from './order.ts';
import { problem } from './problem.ts';

type ValueOf<K extends PolicyKey> = PolicyValue[(typeof POLICY_KEYS)[K]['kind']];

export type Review = {
  readonly order: Order;
  readonly at: Instant;
  readonly today: DayName;
  readonly feeds: FeedList;
  readonly policy: Policy;
  /** Null when the order names none or one that is not listed. */
  readonly feed: Feed | null;
  readonly feedLumen: Lumen | null;
  /** Null while the age is not known. */
  readonly isChild: boolean | null;
  readonly local: <K extends PolicyKey>(key: K) => PolicyAnswer<ValueOf<K>>;
};

/** Whose rows of local policy hold for this order. */
export function policyContext(order: Order, at: Instant): PolicyContext {
  const { birthDate } = order.patient;
  const ageDays = birthDate === null ? null : ageInDays(birthDate, dayAt(at, order.zone));
  return { ageDays, setting: order.setting, at };
}

/** The end of childhood where the order itself is judged: the age at which the published adult rows begin. */
export const ADULT_FROM_DAYS = daysOfYears(18);

export const lumenNamed = (order: Order, name: string | null): Lumen | null =>
  order.access?.lumens.find((lumen) => lumen.name === name) ?? null;

export function review(order: Order, feeds: FeedList, policy: Policy, at: Instant): Review {
  const context = policyContext(order, at);
  return {
    order,
    at,
    today: dayAt(at, order.zone),
    feeds,
    policy,
    feed: order.feed === null ? null : feedById(feeds, order.feed.id),
    feedLumen: lumenNamed(order, order.access?.feedBy ?? null),
    isChild: context.ageDays === null ? null : context.ageDays < ADULT_FROM_DAYS,
    local: (key) => ask(policy, key, context),
  };
}

export const isPostPyloric = (lumen: Lumen | null): boolean =>
  lumen?.tip === 'duodenal' || lumen?.tip === 'jejunal';

/** [OR40] What local policy does not say is named, never guessed. `about` is the rule that could not be asked. */
export const silent = (key: PolicyKey, why: 'no-row' | 'not-set', about: string): Problem =>
  problem('order/policy-silent', ['policy', key], { key, why, about });

/** What a problem says of the policy row that it rests on. */
export const restsOn = (key: PolicyKey, basis: Basis) => ({ key, basis });
