/** Which cartons are opened: against trying everything. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { HOUR, hours, instant } from '@feedwright/core/base/instant';
import { ml, subtract, sum } from '@feedwright/core/base/volume';
import { chooseCartons, type Pour, type Store } from '@feedwright/core/plan/containers/cartons';
import fc from 'fast-check';
import { runs } from '../runs.ts';

const START = Date.UTC(2026, 10, 25, 8);
const at = (hour: number) => instant(START + hour * HOUR);

const store = (more: Partial<Store>): Store => ({
  sizes: [ml(200), ml(500)],
  keepFor: hours(24),
  opened: [],
  end: at(24),
  ...more,
});
const pour = (from: number, until: number, mL: number): Pour => ({
  at: at(from),
  until: at(until),
  needs: ml(mL),
});

const told = (pours: readonly Pour[], from: Store) =>
  chooseCartons(pours, from).map(({ uses }) =>
    uses.map((use) => [use.carton, use.take / ml(1), use.left / ml(1)]),
  );

test('[PL21] the oldest that may still hang goes first; what is too old for this container is left', () => {
  const opened = [
    { id: 'B', openedAt: at(-12), remaining: ml(100) },
    { id: 'A', openedAt: at(-20), remaining: ml(150) },
    { id: 'C', openedAt: at(-4), remaining: ml(100) },
  ];
  assert.deepEqual(told([pour(0, 8, 180)], store({ opened })), [
    [
      ['open:B', 100, 0],
      ['open:C', 80, 20],
    ],
  ]);
  assert.deepEqual(told([pour(0, 4, 180)], store({ opened })), [
    [
      ['open:A', 150, 0],
      ['open:B', 30, 70],
    ],
  ]);
});

test('[PL21] where nothing may be kept, the least is thrown away, then the fewest opened', () => {
  const none = store({ keepFor: null, sizes: [ml(200), ml(250), ml(500)] });
  assert.deepEqual(told([pour(0, 8, 400)], none), [
    [
      ['new:1', 200, 0],
      ['new:2', 200, 0],
    ],
  ]);
  assert.deepEqual(told([pour(0, 8, 500)], none), [[['new:1', 500, 0]]]);
  assert.deepEqual(told([pour(0, 8, 480)], none), [[['new:1', 480, 20]]]);
  const kept = { id: 'A', openedAt: at(-1), remaining: ml(100) };
  assert.deepEqual(told([pour(0, 8, 200)], { ...none, opened: [kept] }), [[['new:1', 200, 0]]]);
});

test('[PL21] a carton that is used again keeps its name and its own limit', () => {
  const chosen = chooseCartons([pour(0, 8, 480), pour(8, 16, 480)], store({ sizes: [ml(500)] }));
  const uses = chosen.map((one) => one.uses);
  assert.deepEqual(
    chosen.map((one) => one.oldestUntil),
    [null, at(24)],
  );
  assert.deepEqual(uses[0]?.[0], { carton: 'new:1', take: ml(480), left: ml(20), keepUntil: at(24) });
  assert.deepEqual(uses[1], [
    { carton: 'new:1', take: ml(20), left: ml(0), keepUntil: null },
    { carton: 'new:2', take: ml(460), left: ml(40), keepUntil: at(32) },
  ]);
});

test('[PL21] feed that does not come in cartons has none', () => {
  assert.deepEqual(told([pour(0, 8, 480)], store({ sizes: [] })), [[]]);
});

type Cost = readonly [wasted: number, opened: number, kept: number];
type Open = { readonly until: number; readonly left: number };

/** Every way of opening cartons and of taking from what is open, in steps of 50 mL. */
function leastCost(pours: readonly Pour[], from: Store): Cost {
  const step = ml(50);
  const keepFor = from.keepFor;
  let best: Cost = [Number.POSITIVE_INFINITY, 0, 0];
  const isLess = (a: Cost, b: Cost): boolean =>
    a[0] !== b[0] ? a[0] < b[0] : a[1] !== b[1] ? a[1] < b[1] : a[2] < b[2];
  const take = (
    index: number,
    missing: number,
    open: readonly Open[],
    from_: number,
    opened: number,
  ): void => {
    const one = pours[index];
    if (one === undefined) {
      const ends = open.filter((carton) => carton.until >= from.end);
      const kept = ends.reduce((total, carton) => total + carton.left, 0);
      const all = open.reduce((total, carton) => total + carton.left, 0);
      const cost: Cost = [all - kept, opened, kept];
      if (isLess(cost, best)) best = cost;
      return;
    }
    if (missing === 0) {
      take(index + 1, pours[index + 1]?.needs ?? 0, open, 0, opened);
      return;
    }
    for (let at_ = from_; at_ < open.length; at_++) {
      const carton = open[at_] as Open;
      if (carton.until < one.until) continue;
      for (let amount = step as number; amount <= Math.min(carton.left, missing); amount += step) {
        const rest = open.map((other, i) => (i === at_ ? { ...other, left: other.left - amount } : other));
        take(index, missing - amount, rest, at_ + 1, opened);
      }
    }
    for (const size of from.sizes) {
      const amount = Math.min(size, missing);
      const until = keepFor === null ? Number.NEGATIVE_INFINITY : one.at + keepFor;
      take(index, missing - amount, [...open, { until, left: size - amount }], open.length + 1, opened + 1);
    }
  };
  const opened = from.opened.map((one) => ({
    until: keepFor === null ? Number.NEGATIVE_INFINITY : one.openedAt + keepFor,
    left: one.remaining as number,
  }));
  const usable = keepFor === null ? [] : opened;
  take(0, pours[0]?.needs ?? 0, usable, 0, 0);
  return best;
}

function costOf(pours: readonly Pour[], from: Store): Cost {
  const left = new Map<string, { left: number; until: number }>();
  const keepFor = from.keepFor;
  if (keepFor !== null) {
    for (const one of from.opened)
      left.set(`open:${one.id}`, { left: one.remaining, until: one.openedAt + keepFor });
  }
  const chosen = chooseCartons(pours, from);
  chosen.forEach(({ uses: some }, index) => {
    const one = pours[index] as Pour;
    assert.equal(sum(some.map((use) => use.take)), one.needs);
    for (const use of some) {
      const before = left.get(use.carton);
      if (before !== undefined) {
        assert.equal(subtract(before.left as never, use.take), use.left);
        assert.ok(before.until >= one.until, 'a carton hangs past its own limit');
      }
      const until = before?.until ?? (keepFor === null ? Number.NEGATIVE_INFINITY : one.at + keepFor);
      left.set(use.carton, { left: use.left, until });
    }
  });
  const all = [...left.values()];
  const kept = all.filter((one) => one.until >= from.end).reduce((total, one) => total + one.left, 0);
  const opened = [...left.keys()].filter((name) => name.startsWith('new:')).length;
  return [all.reduce((total, one) => total + one.left, 0) - kept, opened, kept];
}

test('[PL21] nothing that could be opened or kept would throw away less, open fewer, or leave less open', () => {
  const fifty = (most: number) => fc.integer({ min: 1, max: most }).map((count) => ml(count * 50));
  const situations = fc.record({
    needs: fc.array(fifty(8), { minLength: 1, maxLength: 3 }),
    gap: fc.constantFrom(4, 8, 16),
    sizes: fc.constantFrom([ml(200)], [ml(200), ml(250)], [ml(250), ml(500)], [ml(200), ml(250), ml(500)]),
    keepHours: fc.constantFrom(null, 4, 12, 24),
    opened: fc.array(fc.record({ hoursAgo: fc.integer({ min: 0, max: 20 }), remaining: fifty(4) }), {
      maxLength: 2,
    }),
  });
  fc.assert(
    fc.property(situations, ({ needs, gap, sizes, keepHours, opened }) => {
      const pours = needs.map(
        (one, index): Pour => ({
          at: at(index * gap),
          until: at((index + 1) * gap),
          needs: one,
        }),
      );
      const from = store({
        sizes,
        keepFor: keepHours === null ? null : hours(keepHours),
        opened: opened.map((one, index) => ({
          id: String(index),
          openedAt: at(-one.hoursAgo),
          remaining: one.remaining,
        })),
      });
      assert.deepEqual(costOf(pours, from), leastCost(pours, from));
    }),
    runs(1000),
  );
});
