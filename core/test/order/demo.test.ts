import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { test } from 'node:test';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import { orderDocument, parseOrderText } from '@feedwright/core/order/document';
import { judgeOrder, mayBePlanned } from '@feedwright/core/order/judge';
import type { Order } from '@feedwright/core/order/order';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import { lines } from './example.ts';

const FOLDER = new URL('../../../demo/', import.meta.url);
const NAMES = readdirSync(FOLDER).filter((name) => /^bed-\d\d-.*\.json$/.test(name));
const textOf = (name: string): string => readFileSync(new URL(name, FOLDER), 'utf8');

function orderIn(name: string): Order {
  const read = parseOrderText(textOf(name));
  assert.ok(read.ok, `${name}: ${JSON.stringify(read)}`);
  return read.value;
}

const judgedAtStart = (order: Order) => judgeOrder(order, DEFAULT_FEEDS, DEFAULT_POLICY, order.startsAt!);

test('[OR1] the demo ward’s twelve orders are written just as they would be written again', () => {
  assert.equal(NAMES.length, 12);
  for (const name of NAMES) assert.deepEqual(orderDocument(orderIn(name)), JSON.parse(textOf(name)), name);
});

test('[OR2] between them they have every regimen, every device, every method and every way of giving water', () => {
  const orders = NAMES.map(orderIn);
  const set = (of: (order: Order) => readonly (string | undefined)[]) =>
    [...new Set(orders.flatMap(of))].toSorted();
  assert.deepEqual(
    set((order) => [order.regimen?.kind]),
    ['bolus', 'continuous', 'cyclic', 'intermittent', 'volume-targeted'],
  );
  assert.deepEqual(
    set((order) => [order.access?.device]),
    [
      'gastro-jejunal',
      'gastrostomy',
      'gastrostomy-button',
      'jejunostomy',
      'nasoduodenal',
      'nasogastric',
      'nasojejunal',
      'orogastric',
    ],
  );
  assert.deepEqual(
    set((order) => [order.method ?? undefined]),
    ['gravity', 'pump', 'syringe'],
  );
  assert.deepEqual(
    set((order) => order.water?.given.map((given) => given.kind) ?? []),
    ['around-feeds', 'interval', 'second-bag', 'times'],
  );
});

/** What is said of each besides its allergies, which are always to be compared. */
const SAID: Readonly<Record<string, readonly string[]>> = {
  'bed-01-continuous-nasogastric': ['note OR47 order/holds-cost medicines'],
  'bed-02-cyclic-gastrostomy': [],
  'bed-03-intermittent-gravity': [],
  'bed-04-intermittent-pump': [],
  'bed-05-bolus-with-meals': ['ask OR34 order/bolus-over-usual regimen.volumeMl'],
  'bed-06-volume-targeted': [
    'note OR50 order/hold-without-end holds.1.until',
    'note OR45 order/away-from-needs needs.proteinGPerDay',
  ],
  'bed-07-gastro-jejunal': [],
  'bed-08-advancing-nasojejunal': ['note OR48 order/advances regimen.advance'],
  'bed-09-infant': [
    'note OR40 order/policy-silent policy.ceiling.bolus',
    'note OR40 order/policy-silent policy.ceiling.bolus.ask',
    'note OR40 order/policy-silent policy.ceiling.bolus.per-kg',
    'note OR40 order/policy-silent policy.bolus.least-duration',
  ],
  'bed-10-refeeding-caution': ['note OR48 order/advances regimen.advance'],
  'bed-11-clock-change': [],
  'bed-12-diluted-fluid-limit': ['note OR42 order/diluted feed.strength'],
};

test('[OR2] each of them can be planned under the default policy, and says what is worth knowing', () => {
  for (const name of NAMES) {
    const problems = judgedAtStart(orderIn(name));
    assert.ok(mayBePlanned(problems), name);
    const said = lines(problems.filter((one) => one.rule !== 'OR41'));
    assert.deepEqual(said, SAID[name.replace('.json', '')], name);
  }
});

test('[OR8] the gastro-jejunal order may not become a bolus by the port that it is fed by', () => {
  const order = orderIn('bed-07-gastro-jejunal.json');
  const bolus = orderIn('bed-05-bolus-with-meals.json');
  const problems = judgedAtStart({ ...order, method: bolus.method, regimen: bolus.regimen });
  assert.equal(problems[0]?.code, 'order/bolus-post-pyloric');
});

test('[OR38] the order under refeeding caution may start at 18.75 mL/h and no faster', () => {
  const order = orderIn('bed-10-refeeding-caution.json');
  // S7 (read): 10 kcal/kg/d; 45 kg: 450 kcal, 18.75 mL/h of 1 kcal/mL.
  const starting = (hundredths: number): Order => {
    const regimen = order.regimen as Extract<Order['regimen'], { kind: 'continuous' }>;
    return {
      ...order,
      regimen: {
        ...regimen,
        advance: { ...regimen.advance!, start: hundredths as never },
        rate: { ...regimen.rate, rate: hundredths as never },
      },
    };
  };
  const asked = (hundredths: number) =>
    judgedAtStart(starting(hundredths)).some((one) => one.rule === 'OR38');
  assert.deepEqual([asked(1_875), asked(1_876)], [false, true]);
});
