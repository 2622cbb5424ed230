/** Is this an order in force, and is it one for feeding by tube? */
import type { Instant } from '@feedwright/core/base/instant';
import type { Hold } from '@feedwright/core/order/order';
import { type Element, field, items, textOf } from './element.ts';
import { ask, note, stop, within } from './reading.ts';

/** FHIR's status, and the id of the hold that it makes. */
export const ON_HOLD = 'on-hold';

const IN_FORCE = ['active', 'on-hold', 'draft'];
const ORDERS = ['order', 'original-order', 'reflex-order', 'filler-order', 'instance-order'];

/** [FH4] Only an order in force is planned; a draft or a proposal once somebody has authorised it. */
export function statusOf(order: Element): string | null {
  const status = textOf(order, 'status');
  const intent = textOf(order, 'intent');
  if (status === null || !IN_FORCE.includes(status)) {
    stop(within(order, 'status'), 'FH4', 'fhir/not-in-force', { status });
  }
  if (status === 'draft' || intent === null || !ORDERS.includes(intent)) {
    ask(within(order, status === 'draft' ? 'status' : 'intent'), 'FH4', 'fhir/not-authorised', 'authorised', {
      status,
      intent,
    });
  }
  return status;
}

/** [FH5] Diets and supplements are recognised and left to others; without a formula for a tube nothing is left. */
export function declineOthers(order: Element, formula: Element | null): void {
  const others = [
    ...(field(order, 'oralDiet') === null ? [] : ['oralDiet']),
    ...(items(order, 'supplement').length === 0 ? [] : ['supplement']),
  ];
  for (const name of others) {
    const place = within(order, name);
    if (formula === null) stop(place, 'FH5', 'fhir/no-tube-feeding', { name });
    else note(place, 'FH5', 'fhir/by-mouth-too', { name });
  }
  if (formula === null && others.length === 0) stop(order, 'FH5', 'fhir/nothing-ordered');
}

/** [FH4] An order on hold runs from when its hold ends, which FHIR does not say. */
export const heldFrom = (status: string | null, from: Instant): readonly Hold[] =>
  status === ON_HOLD ? [{ id: ON_HOLD, from, until: null, why: 'other', note: null }] : [];
