/**
 * Under which order is the person fed at an instant? Orders are placed, take each other's place, are held and stopped. Two
 * that are in force at once are a fork: then there is no order to plan by, and charting goes on.
 */
import type { Instant } from '../base/instant.ts';
import type { Hold, Order } from '../order/order.ts';
import { alike } from './alike.ts';
import type { Entry } from './entry.ts';
import type { Fact } from './fact.ts';
import { counts, type Ledger } from './ledger.ts';

type Told<K extends Fact['kind']> = Entry & { readonly fact: Extract<Fact, { kind: K }> };
type Placed = Told<'order-placed/1'>;
type Stopped = Told<'order-stopped/1'>;

export type OrderInForce =
  | {
      readonly kind: 'one';
      /** With the holds that were recorded since, each with its end where somebody ended it. */
      readonly order: Order;
      readonly placed: Entry;
      /** Placed already, and to take its place from its own start on. */
      readonly next: Order | null;
    }
  /** No plan until all but one are replaced, stopped or marked in error. */
  | { readonly kind: 'fork'; readonly orders: readonly Order[] }
  | { readonly kind: 'stopped'; readonly order: string; readonly at: Instant; readonly reason: string }
  | { readonly kind: 'none' };

const is =
  <K extends Fact['kind']>(kind: K) =>
  (entry: Entry): entry is Told<K> =>
    entry.fact.kind === kind;

/** The same order placed twice is one; the same name with another content is a second order. */
function placedOnce(told: readonly Entry[]): readonly Placed[] {
  const kept: Placed[] = [];
  for (const entry of told.filter(is('order-placed/1'))) {
    if (!kept.some((one) => alike(one.fact, entry.fact))) kept.push(entry);
  }
  return kept;
}

const isReplaced = ({ fact }: Placed, placed: readonly Placed[]): boolean =>
  placed.some(
    (other) => other.fact.placed.replaces === fact.placed.id && other.fact.placed.id !== fact.placed.id,
  );

/** [RC10] Every hold as the latest word has it: the order's own from when it was placed, and those recorded by themselves. */
function holdsOf(order: Placed, told: readonly Entry[]): readonly Hold[] {
  const holds = new Map<string, Hold>();
  for (const { id, fact, happenedAt } of told) {
    if (id === order.id) for (const hold of order.fact.placed.holds) holds.set(hold.id, hold);
    if (fact.kind === 'order-held/1') holds.set(fact.hold.id, fact.hold);
    if (fact.kind !== 'order-hold-ended/1') continue;
    const hold = holds.get(fact.hold);
    if (hold === undefined || (hold.until !== null && hold.until <= happenedAt)) continue;
    if (happenedAt <= hold.from) holds.delete(hold.id);
    else holds.set(hold.id, { ...hold, until: happenedAt });
  }
  return [...holds.values()];
}

/** An order that begins later leaves the one that it replaces in force until then. */
function inForce(head: Placed, placed: readonly Placed[], stopped: ReadonlySet<string>, at: Instant) {
  let [current, next]: [Placed, Placed | null] = [head, null];
  for (let left = placed.length; left > 0; left -= 1) {
    const { startsAt, replaces } = current.fact.placed;
    const last = placed.find(({ fact }) => fact.placed.id === replaces && !stopped.has(fact.placed.id));
    if (startsAt === null || startsAt <= at || last === undefined) break;
    [current, next] = [last, current];
  }
  return { current, next };
}

const ordersOf = (placed: readonly Placed[]): readonly Order[] => placed.map(({ fact }) => fact.placed);

/** [RC8] [RC9] The order by which the person is fed at an instant, by what had happened until then. */
export function orderAt(ledger: Ledger, at: Instant): OrderInForce {
  const told = ledger.orders.filter((entry) => entry.happenedAt <= at && counts(ledger, entry));
  const placed = placedOnce(told);
  if (placed.length === 0) return { kind: 'none' };
  const stops = told.filter(is('order-stopped/1'));
  const stopped = new Set(stops.map(({ fact }) => fact.stopped));
  const last = placed.filter((one) => !isReplaced(one, placed));
  // Orders that replace each other in a ring leave none that was placed last.
  if (last.length === 0) return { kind: 'fork', orders: ordersOf(placed) };
  const heads = last.filter(({ fact }) => !stopped.has(fact.placed.id));
  const [head] = heads;
  if (head === undefined) return lastStop(stops, last);
  if (heads.length > 1) return { kind: 'fork', orders: ordersOf(heads) };
  const { current, next } = inForce(head, placed, stopped, at);
  const order = { ...current.fact.placed, holds: holdsOf(current, told) };
  return { kind: 'one', order, placed: current, next: next?.fact.placed ?? null };
}

function lastStop(stops: readonly Stopped[], last: readonly Placed[]): OrderInForce {
  const stop = stops.findLast(({ fact }) => last.some((one) => one.fact.placed.id === fact.stopped));
  return stop === undefined
    ? { kind: 'none' }
    : { kind: 'stopped', order: stop.fact.stopped, at: stop.happenedAt, reason: stop.fact.reason };
}
