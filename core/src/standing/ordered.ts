/**
 * What was ordered over a span? Twice: as it is written, and less the fasts that were ordered too. Each stretch is worked by
 * the order that was in force in it, and by the steps that had been confirmed by then. [ST15]
 */
import type { Instant, Span } from '../base/instant.ts';
import { add, NOTHING, type Volume } from '../base/volume.ts';
import type { Order } from '../order/order.ts';
import { credibleNumbers } from '../order/rules/credible-numbers.ts';
import type { Policy } from '../policy/policy.ts';
import { needWithin } from '../programme/programme.ts';
import { programmeOf } from '../programme/programme-of.ts';
import type { Course } from './course.ts';
import { advancementOf, changesOf, orderInForce } from './readings/orders.ts';
import { feedingDayAt, type Place } from './spans.ts';

export type Ordered = { readonly asWritten: Volume; readonly lessFasts: Volume };

const NOTHING_YET: Ordered = { asWritten: NOTHING, lessFasts: NOTHING };

const plus = (a: Ordered, b: Ordered): Ordered => ({
  asWritten: add(a.asWritten, b.asWritten),
  lessFasts: add(a.lessFasts, b.lessFasts),
});

/** Where the feeding days begin that have a part in the span; the first may have begun before it. */
function daysIn(course: Course, span: Span, place: Place): readonly Instant[] {
  const starts: Instant[] = [];
  for (let at = span.from; at < span.until; ) {
    const day = feedingDayAt(course, at, place);
    if (day === null) return [span.from];
    starts.push(day.from);
    at = day.until;
  }
  return starts;
}

/** From the beginning of its first feeding day, cut wherever a day begins or what is ordered may have changed. */
function stints(course: Course, span: Span, days: readonly Instant[]): readonly Span[] {
  const from = days[0] ?? span.from;
  const cuts = new Set(
    [...days, span.from, ...changesOf(course.orders)].filter((at) => at > from && at < span.until),
  );
  const bounds: readonly Instant[] = [from, ...[...cuts].toSorted((a, b) => a - b), span.until];
  return bounds.slice(1).map((until, place) => ({ from: bounds[place]!, until }));
}

/** @param already what was ordered earlier in the same feeding day: an order for a day's volume wants the rest. */
function orderedIn(course: Course, order: Order, span: Span, policy: Policy, already: Volume): Volume {
  const programme = programmeOf({
    order,
    policy,
    standing: {
      at: span.from,
      running: null,
      feedingSince: course.delivery.feedingSince,
      receivedToday: already,
      waterToday: NOTHING,
      advancement: advancementOf(course.orders, order.id, span.from),
      openIntolerance: false,
    },
    span,
    pace: 'lowest',
  });
  return needWithin(programme, span);
}

/** Null where no single order was in force, or its numbers make no sense. */
function orderedInStint(
  course: Course,
  stint: Span,
  policy: Policy,
  already: Ordered,
): Ordered | 'none' | null {
  const inForce = orderInForce(course.orders, stint.from);
  if (inForce.kind === 'fork') return null;
  if (inForce.kind !== 'one') return 'none';
  const { order } = inForce;
  if (credibleNumbers(order).length > 0) return null;
  const plain = { ...order, holds: [], medicines: [] };
  const holds = order.holds.filter((one) => one.why === 'fast');
  return {
    asWritten: orderedIn(course, plain, stint, policy, already.asWritten),
    lessFasts: orderedIn(course, { ...plain, holds }, stint, policy, already.lessFasts),
  };
}

/**
 * Null where no single order was in force for some of the span, or its numbers make no sense: then there is nothing to
 * compare with. Fasts are the order's own and those recorded since; pauses that nobody ordered stay in both.
 */
export function orderedWithin(course: Course, span: Span, place: Place): Ordered | null {
  const days = daysIn(course, span, place);
  let ordered = NOTHING_YET;
  let today = NOTHING_YET;
  let found = false;
  for (const stint of stints(course, span, days)) {
    if (days.includes(stint.from)) today = NOTHING_YET;
    const part = orderedInStint(course, stint, place.policy, today);
    const isWithin = stint.from >= span.from;
    if (part === null && isWithin) return null;
    if (part === null || part === 'none') continue;
    today = plus(today, part);
    if (isWithin) ordered = plus(ordered, part);
    found ||= isWithin;
  }
  return found ? ordered : null;
}
