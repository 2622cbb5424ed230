/** What was ordered for each person of the ward? The twelve order documents, read as any order is. */
import { impossible } from '@feedwright/core/base/result';
import { parseOrder } from '@feedwright/core/order/document';
import type { Order } from '@feedwright/core/order/order';
import bed01 from './bed-01-continuous-nasogastric.json' with { type: 'json' };
import bed02 from './bed-02-cyclic-gastrostomy.json' with { type: 'json' };
import bed03 from './bed-03-intermittent-gravity.json' with { type: 'json' };
import bed04 from './bed-04-intermittent-pump.json' with { type: 'json' };
import bed05 from './bed-05-bolus-with-meals.json' with { type: 'json' };
import bed06 from './bed-06-volume-targeted.json' with { type: 'json' };
import bed07 from './bed-07-gastro-jejunal.json' with { type: 'json' };
import bed08 from './bed-08-advancing-nasojejunal.json' with { type: 'json' };
import bed09 from './bed-09-infant.json' with { type: 'json' };
import bed10 from './bed-10-refeeding-caution.json' with { type: 'json' };
import bed11 from './bed-11-clock-change.json' with { type: 'json' };
import bed12 from './bed-12-diluted-fluid-limit.json' with { type: 'json' };

function orderIn(document: unknown): Order {
  const read = parseOrder(document);
  return read.ok ? read.value : impossible(`a demo order does not read: ${JSON.stringify(read.issues)}`);
}

export const EDITH = orderIn(bed01);
export const AMBROSE = orderIn(bed02);
export const ORIEL = orderIn(bed03);
export const CASIMIR = orderIn(bed04);
export const PHILIPPA = orderIn(bed05);
export const TOBIAS = orderIn(bed06);
export const WILHELMINA = orderIn(bed07);
export const GIDEON = orderIn(bed08);
export const WREN = orderIn(bed09);
export const LEOPOLD = orderIn(bed10);
export const MARGUERITE = orderIn(bed11);
export const BALTHAZAR = orderIn(bed12);
