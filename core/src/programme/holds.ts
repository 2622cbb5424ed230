/**
 * When may feed not run? The holds of the order and those around medicines, laid over each other so that a minute held
 * twice is held once. Told feeding day by feeding day, so that no answer depends on how far ahead somebody looked.
 */
import { after, before, earlier, type Span, union } from '../base/instant.ts';
import { timesWithin } from '../base/zone.ts';
import type { Order } from '../order/order.ts';
import { ALWAYS, cutTo } from './spans.ts';

/** `untilKnown` is false from the beginning of a hold whose end nobody knows. */
export type Held = Span & { readonly holds: readonly string[]; readonly untilKnown: boolean };

type Named = Span & { readonly id: string };

function aroundMedicines(order: Order, near: Span): readonly Named[] {
  return order.medicines.flatMap(({ name, times, holdBefore, holdAfter }) => {
    if (holdBefore <= 0 && holdAfter <= 0) return [];
    const given = timesWithin(times, before(near.from, holdAfter), after(near.until, holdBefore), order.zone);
    return given.map((at) => ({
      id: `medicine:${name}`,
      from: before(at, holdBefore),
      until: after(at, holdAfter),
    }));
  });
}

const namesIn = (named: readonly Named[], span: Span): readonly string[] => [
  ...new Set(named.filter((one) => one.from < span.until && one.until > span.from).map((one) => one.id)),
];

/** The stretches of these feeding days in which feed is held, disjoint and in order. [PR2] [PR3] */
export function heldDuring(order: Order, days: readonly Span[]): readonly Held[] {
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return [];
  const near = { from: first.from, until: last.until };
  const named: readonly Named[] = [
    ...order.holds.map(({ id, from, until }) => ({ id, from, until: until ?? ALWAYS.until })),
    ...aroundMedicines(order, near),
  ].filter((one) => one.from < one.until);
  if (named.length === 0) return [];
  const openEnded = order.holds.filter((hold) => hold.until === null).map((hold) => hold.from);
  const stopsAt = openEnded.reduce(earlier, ALWAYS.until);
  const joined = union(named);
  const known = cutTo(joined, { from: ALWAYS.from, until: stopsAt });
  const unknown = cutTo(joined, { from: stopsAt, until: ALWAYS.until });
  return days.flatMap((day) => [
    ...cutTo(known, day).map((span) => ({ ...span, holds: namesIn(named, span), untilKnown: true })),
    ...cutTo(unknown, day).map((span) => ({ ...span, holds: namesIn(named, span), untilKnown: false })),
  ]);
}
