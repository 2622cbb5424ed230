/**
 * Under which orders has the person been fed, and how far has an advancement been confirmed? The entries that tell it are
 * kept as they are: which order is in force at a moment is for the record's own rules to say.
 */
import type { Instant } from '../../base/instant.ts';
import type { Order } from '../../order/order.ts';
import type { Entry } from '../../record/entry.ts';
import { ledgerOf } from '../../record/ledger.ts';
import { type OrderInForce, orderAt } from '../../record/orders.ts';
import { emptyTrail, grown, type Trail, told } from '../trail.ts';

export type StepConfirmed = { readonly at: Instant; readonly step: number; readonly order: string | null };

export type OrdersState = {
  readonly told: Trail<Entry>;
  /** The one placed last, by which a pump is taken to run where an entry names none. */
  readonly placed: Order | null;
  readonly steps: Trail<StepConfirmed>;
  readonly declined: { readonly at: Instant; readonly step: number; readonly reason: string } | null;
};

export const beginOrders = (): OrdersState => ({
  told: emptyTrail(),
  placed: null,
  steps: emptyTrail(),
  declined: null,
});

export const tellOrder = (state: OrdersState, entry: Entry): OrdersState => ({
  ...state,
  told: grown(state.told, entry),
  placed: entry.fact.kind === 'order-placed/1' ? entry.fact.placed : state.placed,
});

export const confirmStep = (state: OrdersState, step: number, { happenedAt, order }: Entry): OrdersState => ({
  ...state,
  steps: grown(state.steps, { at: happenedAt, step, order: order ?? state.placed?.id ?? null }),
});

export const declineStep = (
  state: OrdersState,
  { step, reason }: { readonly step: number; readonly reason: string },
  at: Instant,
): OrdersState => ({ ...state, declined: { at, step, reason } });

export const orderInForce = (state: OrdersState, at: Instant): OrderInForce =>
  orderAt(ledgerOf(told(state.told)), at);

/** The order in force, or where there is none the one placed last: for whose age and setting local policy is asked. */
export function orderOf(state: OrdersState, at: Instant): Order | null {
  const inForce = orderInForce(state, at);
  return inForce.kind === 'one' ? inForce.order : state.placed;
}

/**
 * [ST30] How many steps of an order were confirmed by a moment, and when the highest of them was. The same step confirmed on
 * two devices is one step.
 */
export function advancementOf(
  { steps }: OrdersState,
  order: string | null,
  at: Instant,
): { readonly stepsConfirmed: number; readonly since: Instant | null } {
  let reached: { stepsConfirmed: number; since: Instant | null } = { stepsConfirmed: 0, since: null };
  for (const one of told(steps)) {
    if (one.at > at || one.order !== order || one.step <= reached.stepsConfirmed) continue;
    reached = { stepsConfirmed: one.step, since: one.at };
  }
  return reached;
}

/** The moments at which what is ordered may have changed, in order. */
export const changesOf = (state: OrdersState): readonly Instant[] =>
  [...told(state.told).map((one) => one.happenedAt), ...told(state.steps).map((one) => one.at)].toSorted(
    (a, b) => a - b,
  );
