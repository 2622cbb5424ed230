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

export type Ordered = { readonly asWritten: Volume; readonly lessFasts: Volume };

/** The span cut wherever what is ordered may have changed. */
function stints(course: Course, span: Span): readonly Span[] {
  const cuts = new Set(changesOf(course.orders).filter((at) => at > span.from && at < span.until));
  const bounds: readonly Instant[] = [span.from, ...cuts, span.until];
  return bounds.slice(1).map((until, place) => ({ from: bounds[place]!, until }));
}

function orderedIn(course: Course, order: Order, span: Span, policy: Policy): Volume {
  const programme = programmeOf({
    order,
    policy,
    standing: {
      at: span.from,
      running: null,
      feedingSince: course.delivery.feedingSince,
      receivedToday: NOTHING,
      waterToday: NOTHING,
      advancement: advancementOf(course.orders, order.id, span.from),
      openIntolerance: false,
    },
    span,
    pace: 'lowest',
  });
  return needWithin(programme, span);
}

/**
 * Null where no single order was in force for some of the span, or its numbers make no sense: then there is nothing to
 * compare with. Fasts are the order's own and those recorded since; pauses that nobody ordered stay in both.
 */
export function orderedWithin(course: Course, span: Span, policy: Policy): Ordered | null {
  let ordered: Ordered = { asWritten: NOTHING, lessFasts: NOTHING };
  let found = false;
  for (const stint of stints(course, span)) {
    const inForce = orderInForce(course.orders, stint.from);
    if (inForce.kind === 'fork') return null;
    if (inForce.kind !== 'one') continue;
    const { order } = inForce;
    if (credibleNumbers(order).length > 0) return null;
    found = true;
    const plain = { ...order, holds: [], medicines: [] };
    const holds = order.holds.filter((one) => one.why === 'fast');
    const asWritten = orderedIn(course, plain, stint, policy);
    const lessFasts = holds.length === 0 ? asWritten : orderedIn(course, { ...plain, holds }, stint, policy);
    ordered = { asWritten: add(ordered.asWritten, asWritten), lessFasts: add(ordered.lessFasts, lessFasts) };
  }
  return found ? ordered : null;
}
