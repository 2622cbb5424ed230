/**
 * Who lies on the demo ward, and what happened there? Twelve invented people over three invented days, from Saturday
 * 24 October 2026, so that the night in which the clocks go back is among them. A seed decides the small things: how late
 * a round comes, how soon something is written down, how exact a pump is. Nothing here is advice for a real person.
 */
import { impossible } from '@feedwright/core/base/result';
import type { Order } from '@feedwright/core/order/order';
import { readLocalPolicy } from '@feedwright/core/policy/local';
import type { Policy } from '@feedwright/core/policy/policy';
import type { Entry } from '@feedwright/core/record/entry';
import policyDocument from './policy.json' with { type: 'json' };
import { ambrose } from './stories/ambrose.ts';
import { balthazar } from './stories/balthazar.ts';
import { casimir } from './stories/casimir.ts';
import { edith } from './stories/edith.ts';
import { gideon } from './stories/gideon.ts';
import { leopold } from './stories/leopold.ts';
import { marguerite } from './stories/marguerite.ts';
import { oriel } from './stories/oriel.ts';
import { philippa } from './stories/philippa.ts';
import { tobias } from './stories/tobias.ts';
import { wilhelmina } from './stories/wilhelmina.ts';
import { wren } from './stories/wren.ts';
import { AHEAD_BY } from './team.ts';
import { entriesOf } from './telling/entries.ts';
import type { Story } from './telling/story.ts';

export type Person = { readonly course: string; readonly ward: string; readonly order: Order };

export type DemoWard = {
  readonly people: readonly Person[];
  /** The facility's own rows, laid over the default. */
  readonly policy: Policy;
  /** Of all courses, in the order in which they were written down. */
  readonly entries: readonly Entry[];
};

/** The ward that is shown. */
export const SHOWN_SEED = 1;

const STORIES: readonly Story[] = [
  edith,
  ambrose,
  oriel,
  casimir,
  philippa,
  tobias,
  wilhelmina,
  gideon,
  wren,
  leopold,
  marguerite,
  balthazar,
];

function demoPolicy(): Policy {
  const read = readLocalPolicy(policyDocument);
  return read.ok ? read.value : impossible(`the demo policy does not read: ${JSON.stringify(read.issues)}`);
}

/** The ward of a seed: a whole number. The same seed always gives the same ward, to the byte. */
export function demoWard(seed: number): DemoWard {
  const policy = demoPolicy();
  return {
    people: STORIES.map(({ course, ward, order }) => ({ course, ward, order })),
    policy,
    entries: entriesOf(STORIES, { seed, policy: policy.version, aheadBy: AHEAD_BY }),
  };
}
