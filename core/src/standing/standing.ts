/**
 * What is true of a course now? The type that the plan is made from, and the standing of somebody for whom nothing has
 * been recorded yet. Folding a ledger into it is the business of the files beside this one.
 */
import type { Instant } from '../base/instant.ts';
import { NOTHING, type Rate, type Volume } from '../base/volume.ts';

/** The container on the patient. Its clock started when it was spiked or first poured, whatever the pump did since. */
export type ContainerUp = {
  readonly id: string;
  readonly feed: string;
  readonly putUpAt: Instant;
  /** The earliest of its own limits that do not depend on the order: expiry, prepared-at, oldest ingredient. */
  readonly comesDownBy: Instant | null;
  readonly filled: Volume;
  /** What is still in it, the line not counted. */
  readonly remaining: Volume;
};

export type OpenCarton = {
  readonly id: string;
  readonly feed: string;
  readonly openedAt: Instant;
  readonly remaining: Volume;
};

export type Standing = {
  readonly at: Instant;
  /** What the pump is doing; null when nothing runs. */
  readonly running: { readonly rate: Rate; readonly since: Instant } | null;
  readonly container: ContainerUp | null;
  /** The pump's second bag of water. */
  readonly waterBag: ContainerUp | null;
  readonly set: { readonly putUpAt: Instant } | null;
  readonly cartons: readonly OpenCarton[];
  /** When feeding of this course began; null before the first feed: the first day has rules of its own. */
  readonly feedingSince: Instant | null;
  /** Mixture received, and water given, since the feeding day began. */
  readonly receivedToday: Volume;
  readonly waterToday: Volume;
  /** Steps of an advancement that somebody confirmed, and when the last one was. */
  readonly advancement: { readonly stepsConfirmed: number; readonly since: Instant | null };
  readonly openIntolerance: boolean;
  /** Tasks already done, as the ids that the plan gave them. */
  readonly done: ReadonlySet<string>;
};

/** Nothing recorded: no container up, no set, nothing received. */
export const blankStanding = (at: Instant): Standing => ({
  at,
  running: null,
  container: null,
  waterBag: null,
  set: null,
  cartons: [],
  feedingSince: null,
  receivedToday: NOTHING,
  waterToday: NOTHING,
  advancement: { stepsConfirmed: 0, since: null },
  openIntolerance: false,
  done: new Set(),
});
