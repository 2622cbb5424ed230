/** The order of a golden day: an adult of 70 kg with a nasogastric tube, of which a day says only what is different. */
import { type OrderDocument, parseOrder } from '@feedwright/core/order/document';
import type { Order } from '@feedwright/core/order/order';
import { DOCUMENT } from '../order/example.ts';

export type { OrderDocument };

export function orderWith(changes: Partial<OrderDocument>): Order {
  const parsed = parseOrder({ ...DOCUMENT, feed: { id: 'standard-1.0', strength: 'full' }, ...changes });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues));
  return parsed.value;
}
