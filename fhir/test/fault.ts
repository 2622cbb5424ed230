/** How is a fault tried? It is planted in an order that is otherwise clean, and has to be told apart from every other. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { ANSWERED, imported, type Nested, only, plainOrder, quantity } from './given.ts';

export type Fault = {
  readonly name: string;
  readonly rule: string;
  readonly change: (order: Nested) => void;
  /** Level, code and, where a person can settle it, the key. */
  readonly says: readonly [level: string, code: string, confirm?: string];
  readonly data?: Readonly<Record<string, unknown>>;
};

/** When the clean order begins. */
export const at = '2026-11-25T18:00:00+00:00';

export const first = (order: Nested): Nested => order.enteralFormula.administration[0];
export const repeatOf = (order: Nested): Nested => first(order).schedule.repeat;

export const rateIn = (code: string) => (order: Nested) => {
  first(order).rateQuantity = quantity(60, code);
};

/** A test for each fault: its one problem, with rule, level, what settles it, and what is shown of it. */
export function tryFaults(faults: readonly Fault[]): void {
  for (const { name, rule, change, says, data = {} } of faults) {
    test(`[${rule}] ${name}: ${says[0]} ${says[1]}`, () => {
      const [level, code, confirm] = says;
      const found = only(imported(plainOrder(change), ANSWERED), code);
      assert.deepEqual([found.rule, found.level], [rule, level]);
      assert.equal(found.data.confirm, confirm);
      for (const [field, value] of Object.entries(data)) assert.deepEqual(found.data[field], value, field);
    });
  }
}
