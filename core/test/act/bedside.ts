/** A bedside to act at: an order placed at eight, a device in somebody's hand, and wishes some minutes into the course. */

import { act } from '@feedwright/core/act/act';
import type { Acted, Acting, Wish } from '@feedwright/core/act/wish';
import { type Instant, instant, MINUTE, minutes } from '@feedwright/core/base/instant';
import type { AnyEntry, Entry } from '@feedwright/core/record/entry';
import type { Fact } from '@feedwright/core/record/fact';
import { ledgerOf } from '@feedwright/core/record/ledger';
import { AT, orderWith, policyOf } from '../order/example.ts';

export const at = (minute: number): Instant => instant(AT + minute * MINUTE);

let made = 0;

/** An entry as another device sent it. */
export function sent(minute: number, fact: AnyEntry['fact'], more: Partial<Entry> = {}): AnyEntry {
  made += 1;
  const who = { id: `sent-${made}`, course: 'course-1', by: 'nurse-2', device: 'tablet-2', number: made };
  const under = { order: null, policy: null, task: null, corrects: null };
  return { ...who, happenedAt: at(minute), recordedAt: at(minute), ...under, ...more, fact } as AnyEntry;
}

export const placed = (order = orderWith()): AnyEntry => sent(0, { kind: 'order-placed/1', placed: order });

/** At `now` minutes into the course, with those entries recorded. */
export function acting(now: number, entries: readonly AnyEntry[], more: Partial<Acting> = {}): Acting {
  let ids = 0;
  return {
    course: 'course-1',
    begins: AT,
    ledger: ledgerOf(entries),
    plan: null,
    policy: policyOf({ 'duplicate.within': minutes(5) }),
    context: { ageDays: null, setting: 'hospital', at: at(now) },
    by: 'nurse-1',
    device: { id: 'tablet-1', nextNumber: 40, lastRecordedAt: null },
    clock: at(now),
    tolerance: minutes(2),
    newId: () => {
      ids += 1;
      return `made-${ids}`;
    },
    ...more,
  };
}

/** Rule and code of the refusal, or the kinds of what was recorded. */
export const outcome = (acted: Acted): string =>
  acted.ok
    ? acted.entries.map((entry) => entry.fact.kind).join(' ')
    : `${acted.refusal.rule} ${acted.refusal.code}`;

export const entriesOf = (acted: Acted): readonly Entry[] => {
  if (!acted.ok) throw new Error(JSON.stringify(acted.refusal));
  return acted.entries;
};

/** A wish of whatever family: the families differ only in which facts they let through. */
export const tell = (minute: number, fact: Fact, task?: string): Wish =>
  ({ wish: 'care', happenedAt: at(minute), fact, ...(task === undefined ? {} : { task }) }) as Wish;

export const tried = (now: number, entries: readonly AnyEntry[], wish: Wish): string =>
  outcome(act(acting(now, entries), wish));
