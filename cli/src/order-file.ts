/** Which order is in this file? Our own order document or a FHIR NutritionOrder, with what was confirmed on the command line. */

import type { FeedList } from '@feedwright/core/feeds/feed';
import { parseOrder } from '@feedwright/core/order/document';
import type { Order, Problem } from '@feedwright/core/order/order';
import { looksLikeFhir, orderFromFhir } from '@feedwright/fhir/order-from-fhir';
import { orRefuse, refuse } from './fail.ts';
import { jsonOf, readText } from './read.ts';

export type Confirmed = Readonly<Record<string, string>>;
export type OrderInFile = { readonly order: Order; readonly problems: readonly Problem[] };

const RULE = /^[A-Z]{2}\d+$/;

/** `OR31=Dr Example` says who confirmed what the rule asked; every other key answers a question of the import. */
const confirmationsIn = (confirmed: Confirmed): Order['confirmations'] =>
  Object.entries(confirmed)
    .filter(([key]) => RULE.test(key))
    .map(([rule, by]) => ({ rule, by, at: null, why: null }));

const withConfirmations = (order: Order, confirmed: Confirmed): Order => ({
  ...order,
  confirmations: [...order.confirmations, ...confirmationsIn(confirmed)],
});

/** An order document names its own zone; a zone on the command line may only fill a gap, never move its times. */
function withZone(json: unknown, zone: string | undefined, name: string): unknown {
  if (zone === undefined || typeof json !== 'object' || json === null) return json;
  const written = (json as { zone?: unknown }).zone;
  if (written === undefined) return { ...json, zone };
  return written === zone ? json : refuse(name, 'argument/zone-differs', { written, zone });
}

/** The order in a file, or a refusal naming file, field, value and remedy. */
export function readOrder(
  file: string,
  { zone, confirmed, feeds }: { zone: string | undefined; confirmed: Confirmed; feeds: FeedList },
): OrderInFile {
  const read = readText(file);
  const json = jsonOf(read);
  if (looksLikeFhir(json)) {
    const answers = { ...(zone === undefined ? {} : { zone }), ...confirmed };
    const imported = orRefuse(orderFromFhir(read.text, answers, feeds), file);
    return { order: withConfirmations(imported.order, confirmed), problems: imported.problems };
  }
  const order = orRefuse(parseOrder(withZone(json, zone, file)), file);
  return { order: withConfirmations(order, confirmed), problems: [] };
}
