/** Entries as they are made at a bedside, so that a test has to write only what happened and when. */
import { fraction, ONE } from '@feedwright/core/base/fraction';
import { hours, type Instant, minutes } from '@feedwright/core/base/instant';
import { type Volume as Amount, ml, mlPerHour, NOTHING, PER_ML } from '@feedwright/core/base/volume';
import { parseInstant, type Zone, zone } from '@feedwright/core/base/zone';
import type { FeedList } from '@feedwright/core/feeds/feed';
import type { Policy } from '@feedwright/core/policy/policy';
import type { AnyEntry, Entry } from '@feedwright/core/record/entry';
import type { Fact } from '@feedwright/core/record/fact';
import { ledgerOf } from '@feedwright/core/record/ledger';
import type { Course } from '@feedwright/core/standing/course';
import { foldCourse } from '@feedwright/core/standing/evolve';
import { type CourseStanding, standingAt } from '@feedwright/core/standing/standing-at';
import { policyWith } from '../programme/situation.ts';

export const LONDON = zone('Europe/London') as Zone;
export const DAY = '2026-11-25';

/** `08:00` is today's, in London in winter; a whole instant is itself. */
export const at = (text: string): Instant => {
  const found = parseInstant(/^\d\d:\d\d$/.test(text) ? `${DAY}T${text}:00Z` : text);
  if (found === null) throw new Error(`not a time: ${text}`);
  return found;
};

let number = 0;

/** One entry; each has an id and a number of its own. */
export function said(when: string | Instant, fact: Fact, more: Partial<Entry> = {}): Entry {
  number += 1;
  const happenedAt = typeof when === 'string' ? at(when) : when;
  return {
    id: `entry-${number}`,
    course: 'course',
    happenedAt,
    recordedAt: happenedAt,
    by: 'nurse',
    device: 'tablet',
    number,
    order: null,
    policy: null,
    task: null,
    corrects: null,
    fact,
    ...more,
  };
}

export const pump = {
  start: (rate: number): Fact => ({
    kind: 'pump-started/1',
    rate: mlPerHour(rate),
    volumeToBeDelivered: null,
  }),
  rate: (rate: number): Fact => ({ kind: 'rate-changed/1', rate: mlPerHour(rate) }),
  pause: (reason: 'care' | 'procedure' | 'intolerance' | 'fast' | 'medicine' = 'care'): Fact => ({
    kind: 'pump-paused/1',
    reason,
    note: null,
  }),
  resume: (): Fact => ({ kind: 'pump-resumed/1' }),
  stop: (reason: 'feed-ended' | 'intolerance' = 'feed-ended'): Fact => ({ kind: 'pump-stopped/1', reason }),
  read: (shows: number, counts: 'feed' | 'water' = 'feed'): Fact => ({
    kind: 'counter-read/1',
    counts,
    volume: ml(shows),
  }),
  clear: (shows: number | null): Fact => ({
    kind: 'counter-cleared/1',
    counts: 'feed',
    read: shows === null ? null : ml(shows),
  }),
};

export const bag = {
  up: (
    container: string,
    filled: number,
    more: Partial<Extract<Fact, { kind: 'container-put-up/1' }>> = {},
  ): Fact => ({
    kind: 'container-put-up/1',
    container,
    holds: 'feed',
    feed: 'standard',
    strength: ONE,
    closed: false,
    filled: ml(filled),
    newSet: false,
    comesDownBy: null,
    lot: null,
    expires: null,
    ...more,
  }),
  down: (container: string, left: number | null = null): Fact => ({
    kind: 'container-taken-down/1',
    container,
    left: left === null ? null : ml(left),
    reason: null,
  }),
  set: (line: number, spilt = 0): Fact => ({ kind: 'set-changed/1', line: ml(line), spilt: ml(spilt) }),
};

export const give = {
  feed: (
    volume: number,
    lasted: number | null = null,
    by: 'syringe' | 'gravity' | 'pump' = 'syringe',
  ): Fact => ({
    kind: 'feed-given/1',
    by,
    feed: 'standard',
    strength: ONE,
    volume: ml(volume),
    lasted: lasted === null ? null : minutes(lasted),
    heightCm: null,
    timedBarrel: null,
  }),
  water: (volume: number, why: 'flush' | 'medicine' | 'free-water' = 'flush'): Fact => ({
    kind: 'water-given/1',
    water: 'tap',
    volume: ml(volume),
    why,
  }),
  lost: (volume: number, where: 'before-patient' | 'out-of-tube'): Fact => ({
    kind: 'feed-lost/1',
    where,
    volume: ml(volume),
  }),
};

export const residual = (
  found: 'zero' | 'measured' | 'could-not-aspirate' | 'not-done',
  volume: number | null = null,
  discarded = 0,
): Fact => ({
  kind: 'residual-checked/1',
  found,
  volume: volume === null ? null : ml(volume),
  look: null,
  returned: volume === null ? NOTHING : ml(volume - discarded),
  discarded: ml(discarded),
});

/** mL, for comparing; whole units are compared where it matters. */
export const inMl = (amount: Amount): number => amount / PER_ML;

/** The day begins at 06:00, with two shifts; records may differ by the greater of 10 % or 50 mL (common practice). */
export const ROWS = {
  'shift.length': hours(12),
  'account.tolerance.fraction': fraction(1, 10),
  'account.tolerance.volume': ml(50),
  'residual.compare': 'more-than',
  'residual.alert': ml(250),
  'residual.stop': ml(500),
  'check.tolerance.every': hours(4),
} as const;
export const POLICY = policyWith(ROWS);

export const FEEDS: FeedList = {
  version: 'test',
  feeds: [
    {
      id: 'standard',
      name: 'standard 1.0 kcal/mL',
      feedClass: 'standard',
      system: 'open-liquid',
      energyKcalPerMl: ONE,
      proteinGPerMl: fraction(4, 100),
      waterFraction: fraction(85, 100),
      osmolalityMosmPerKg: null,
      allergens: [],
      packs: [],
      labelHangLimit: null,
      source: 'S31',
      provenance: 'read',
    },
  ],
};

/** What counts of the entries, folded in the order of truth. */
export function courseOf(...entries: readonly AnyEntry[]): Course {
  const ledger = ledgerOf(entries);
  return foldCourse(ledger.entries.filter((one) => !ledger.out.has(one.id)));
}

export const seenAt = (
  when: string | Instant,
  entries: readonly AnyEntry[],
  { policy = POLICY, feeds = FEEDS }: { policy?: Policy; feeds?: FeedList } = {},
): CourseStanding =>
  standingAt(courseOf(...entries), {
    at: typeof when === 'string' ? at(when) : when,
    policy,
    feeds,
    zone: LONDON,
  });
