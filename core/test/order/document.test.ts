import assert from 'node:assert/strict';
import { test } from 'node:test';

import { orderDocument, parseOrderText } from '@feedwright/core/order/document';
import fc from 'fast-check';
import { runs } from '../runs.ts';
import { arbOrder } from './arbitrary.ts';

test('[OR1] order → document → order is the identity, for orders however odd', () => {
  for (const wildness of ['sane', 'odd'] as const) {
    fc.assert(
      fc.property(arbOrder(wildness), (order) => {
        const text = JSON.stringify(orderDocument(order));
        assert.deepEqual(parseOrderText(text), { ok: true, value: order });
      }),
      runs(2_000),
    );
  }
});
