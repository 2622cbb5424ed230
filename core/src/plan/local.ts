/**
 * What does local policy say of this patient, here and now, and what does it leave unsaid?
 * What a plan cannot do without stops it when it is missing; what only leaves a task out is noted. Nothing is guessed.
 */
import type { Basis } from '../base/working.ts';
import type { Problem } from '../order/order.ts';
import type { POLICY_KEYS, PolicyKey } from '../policy/keys.ts';
import {
  ask,
  type Policy,
  type PolicyAnswer,
  type PolicyContext,
  type PolicyValue,
} from '../policy/policy.ts';

type ValueOf<K extends PolicyKey> = PolicyValue[(typeof POLICY_KEYS)[K]['kind']];

/** A value together with where it came from. */
export type Said<T> = { readonly value: T; readonly basis: Basis };

export type Local = {
  /** What policy says, or null; silence is not held against it. */
  readonly may: <K extends PolicyKey>(key: K) => Said<ValueOf<K>> | null;
  /** What policy says, or null with a note that it ought to. */
  readonly should: <K extends PolicyKey>(key: K) => Said<ValueOf<K>> | null;
  /** What policy says, or null, and then there is no plan. */
  readonly must: <K extends PolicyKey>(key: K) => Said<ValueOf<K>> | null;
  /** What was missed so far, one problem for each key. */
  readonly missed: () => readonly Problem[];
};

/** [PL10] A value that local policy does not give is named, never filled in. */
export function localFor(policy: Policy, context: PolicyContext): Local {
  const answers = new Map<PolicyKey, PolicyAnswer<unknown>>();
  const missed = new Map<PolicyKey, Problem>();
  const answer = <K extends PolicyKey>(key: K): PolicyAnswer<ValueOf<K>> => {
    const known = answers.get(key) ?? ask(policy, key, context);
    answers.set(key, known);
    return known as PolicyAnswer<ValueOf<K>>;
  };
  const miss = (key: PolicyKey, level: Problem['level'], why: string): null => {
    if (missed.get(key)?.level !== 'stop') {
      missed.set(key, {
        rule: 'PL10',
        level,
        code: 'plan/policy-silent',
        path: ['policy', key],
        data: { key, why },
      });
    }
    return null;
  };
  const asking =
    (level: Problem['level'] | null) =>
    <K extends PolicyKey>(key: K): Said<ValueOf<K>> | null => {
      const known = answer(key);
      if (known.known) return known;
      return level === null ? null : miss(key, level, known.why);
    };
  return {
    may: asking(null),
    should: asking('note'),
    must: asking('stop'),
    missed: () => [...missed.values()],
  };
}
