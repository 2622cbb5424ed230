/**
 * What is fixed before any rate is worked? The feeding days that the span touches, whole; the order's own beginning and
 * end; what is held; what local policy says to this patient now. Everything is worked over whole days and windows and
 * cut to the span last, so that programmes over adjoining spans are the programme over both.
 */
import { after, before, DAY, duration, type Instant, later, type Span, within } from '../base/instant.ts';
import { type Rate, rate, type Volume } from '../base/volume.ts';
import { ARITHMETIC, type Basis } from '../base/working.ts';
import { lastTime, nextTime, type TimeOfDay } from '../base/zone.ts';
import type { Order } from '../order/order.ts';
import { policyContext, type Review } from '../order/review.ts';
import { ask, type Policy } from '../policy/policy.ts';
import { type Held, heldDuring } from './holds.ts';
import { ALWAYS } from './spans.ts';

/**
 * How fast an advancement may be thought to go. `lowest`: only the steps that somebody confirmed, to fill by; `highest`:
 * every step at its earliest, to warn by.
 */
export type Pace = 'lowest' | 'highest';

/** What a programme has to know of what has happened: a standing says it. */
export type SoFar = {
  readonly at: Instant;
  readonly running: { readonly rate: Rate; readonly since: Instant } | null;
  /** When feeding of this course began; null before the first feed. */
  readonly feedingSince: Instant | null;
  /** Mixture received, and water given, since the feeding day began. */
  readonly receivedToday: Volume;
  readonly waterToday: Volume;
  readonly advancement: { readonly stepsConfirmed: number; readonly since: Instant | null };
  readonly openIntolerance: boolean;
};

export type ProgrammeRequest = {
  readonly order: Order;
  readonly policy: Policy;
  readonly standing: SoFar;
  readonly span: Span;
  readonly pace: Pace;
};

type Local = Review['local'];

export type Frame = {
  readonly order: Order;
  readonly policy: Policy;
  readonly standing: SoFar;
  readonly pace: Pace;
  readonly ageDays: number | null;
  readonly local: Local;
  /** The feeding days that the span touches, whole; false where policy does not say when they begin: then from midnight. */
  readonly days: readonly Span[];
  readonly daysKnown: boolean;
  /** The same with days before and after, for a window that reaches into them or out of them; and all of their time. */
  readonly nearDays: readonly Span[];
  readonly near: Span;
  /** From the order's own beginning to its own end. */
  readonly ordered: Span;
  readonly held: readonly Held[];
  readonly pumpStep: { readonly rate: Rate; readonly basis: Basis };
};

/** The feeding days that a span touches, each from policy's `day.start` to the next: 23, 24½ or 25 hours too. [PR14] */
export function feedingDays(span: Span, start: TimeOfDay, zone: Order['zone']): readonly Span[] {
  const days: Span[] = [];
  for (let from = lastTime(start, span.from, zone); from < span.until; ) {
    const until = nextTime(start, from, zone);
    days.push({ from, until });
    from = until;
  }
  return days;
}

/** The feeding day of a moment that is near. */
export const dayOf = ({ nearDays }: Frame, at: Instant): Span | null =>
  nearDays.find((day) => within(day, at)) ?? null;

/** When this course was first fed, or can be at the earliest: what a day lacked before that was never lost. */
export const firstFed = ({ order, standing }: Frame): Instant =>
  standing.feedingSince ?? later(order.startsAt ?? standing.at, standing.at);

function pumpStepOf(local: Local): Frame['pumpStep'] {
  const step = local('pump.rate-step');
  return step.known && step.value > 0
    ? { rate: step.value, basis: step.basis }
    : { rate: rate(1), basis: ARITHMETIC };
}

const allOf = (spans: readonly Span[], empty: Span): Span => ({
  from: spans[0]?.from ?? empty.from,
  until: spans.at(-1)?.until ?? empty.until,
});

const ROOM = duration(2 * DAY);

export function frameOf({ order, policy, standing, span, pace }: ProgrammeRequest): Frame {
  const context = policyContext(order, standing.at);
  const local: Local = (key) => ask(policy, key, context);
  const start = local('day.start');
  const begins = start.known ? start.value : 0;
  const days = feedingDays(span, begins, order.zone);
  const whole = allOf(days, span);
  const room = { from: before(whole.from, ROOM), until: after(whole.until, ROOM) };
  const nearDays = feedingDays(room, begins, order.zone);
  return {
    order,
    policy,
    standing,
    pace,
    ageDays: context.ageDays,
    local,
    days,
    daysKnown: start.known,
    nearDays,
    near: allOf(nearDays, whole),
    ordered: { from: order.startsAt ?? ALWAYS.from, until: order.endsAt ?? ALWAYS.until },
    held: heldDuring(order, nearDays),
    pumpStep: pumpStepOf(local),
  };
}
