/**
 * What is one line of the record? An entry: a fact with when it happened, when and by whom it was recorded, on which
 * device, and under which order and policy. Entries are immutable and are never refused for what other entries say.
 */
import type { Instant } from '../base/instant.ts';
import type { Fact } from './fact.ts';

export type Envelope = {
  /** Made on the device; the same entry sent twice is one entry. */
  readonly id: string;
  readonly course: string;
  readonly happenedAt: Instant;
  readonly recordedAt: Instant;
  /** Who recorded it, as the people list knows them. */
  readonly by: string;
  readonly device: string;
  /** The device's own running number: breaks ties and shows gaps. */
  readonly number: number;
  /** What was acted under; a superseded order never voids a fact. */
  readonly order: string | null;
  readonly policy: string | null;
  /** The planned task that this does, by the id the plan gave it. */
  readonly task: string | null;
  /** The entry that this one replaces; that one is then read as entered in error. */
  readonly corrects: string | null;
};

export type Entry = Envelope & { readonly fact: Fact };

/** An entry of a kind or version that this release does not know: kept, passed on and said, never dropped. */
export type UnknownEntry = Envelope & { readonly fact: { readonly kind: string; readonly raw: unknown } };

export type AnyEntry = Entry | UnknownEntry;

export const isKnown = (entry: AnyEntry): entry is Entry => !('raw' in entry.fact);

/** The order of truth: when it happened, then when it was recorded, then device and its number, then id. */
export function compareEntries(a: Envelope, b: Envelope): number {
  if (a.happenedAt !== b.happenedAt) return a.happenedAt - b.happenedAt;
  if (a.recordedAt !== b.recordedAt) return a.recordedAt - b.recordedAt;
  if (a.device !== b.device) return a.device < b.device ? -1 : 1;
  if (a.number !== b.number) return a.number - b.number;
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}
