/** Does a printed plan say what its data says: the same numbers, the conditions, the kind of water, whose hold it is? */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { DEFAULT_FEEDS } from '../../src/feeds/default-list.ts';
import { parseOrder } from '../../src/order/document.ts';
import type { Order } from '../../src/order/order.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { planFor } from '../../src/plan/plan-for.ts';
import { DEFAULT_POLICY } from '../../src/policy/defaults.ts';
import { ENGLISH } from '../../src/screen/english/english.ts';
import { planJson } from '../../src/screen/plan/json.ts';
import { planSchema } from '../../src/screen/plan/schema.ts';
import { planLines } from '../../src/screen/plan/text.ts';
import { blankStanding } from '../../src/standing/standing.ts';
import { AT, DOCUMENT } from '../order/example.ts';

const ORDER = {
  ...DOCUMENT,
  feed: { id: 'standard-1.0', strength: 'full' },
  regimen: { kind: 'continuous', rateMlPerHour: 60 },
};

const orderOf = (changes: Readonly<Record<string, unknown>>): Order => {
  const read = parseOrder({ ...ORDER, ...changes });
  assert.ok(read.ok, JSON.stringify(read));
  return read.value;
};

const planOf = (order: Order): Plan =>
  planFor({ order, feeds: DEFAULT_FEEDS, policy: DEFAULT_POLICY, standing: blankStanding(AT) });

function textOf(changes: Readonly<Record<string, unknown>>, workings = false): string {
  const order = orderOf(changes);
  const lines = planLines(planOf(order), order, { words: ENGLISH, feeds: DEFAULT_FEEDS, workings });
  return lines.map((one) => one.text).join('\n');
}

function planned(changes: Readonly<Record<string, unknown>>) {
  const order = orderOf(changes);
  const json = planSchema.parse(planJson(planOf(order), { zone: order.zone, words: ENGLISH }));
  return { text: textOf(changes), json };
}

test('[CL4] a diluted feed shows formula and mixture, and what was ordered as mixture', () => {
  // By hand: 40 mL/h of formula at half strength is 80 mL/h of mixture: 1920 mL, half of them formula.
  const { text, json } = planned({
    feed: { id: 'standard-1.0', strength: '1/2' },
    regimen: { kind: 'continuous', rateMlPerHour: 40, of: 'formula' },
  });
  assert.match(text, /formula 960 mL in 1,920 mL of mixture \(ordered 1,920 mL\)/);
  assert.deepEqual([json.day?.formulaMl, json.day?.mixtureMl, json.day?.orderedMl], [960, 1920, 1920]);
});

test('[CL4] what is taken from a carton and what stays in it add up in words too', () => {
  const { text } = planned({
    feed: { id: 'energy-1.5', strength: '3/4' },
    regimen: { kind: 'continuous', rateMlPerHour: 66 },
  });
  assert.match(text, /take 217\.5 mL, 282\.5 mL left/);
});

test('[PL26] a diluted feed says how much formula and how much water are poured', () => {
  // By hand: 66 mL/h × 4 h = 264 mL with 20 mL of prime are 290 mL; three quarters of it formula, the rest water.
  const { text, json } = planned({
    feed: { id: 'energy-1.5', strength: '3/4' },
    regimen: { kind: 'continuous', rateMlPerHour: 66 },
  });
  assert.match(text, /pour 290 mL, mixed from 217\.5 mL of formula and 72\.5 mL of water, new set/);
  const [first] = json.containers;
  assert.deepEqual([first?.fillMl, first?.formulaMl, first?.addWaterMl], [290, 217.5, 72.5]);
  assert.equal(planned({}).json.containers[0]?.addWaterMl, null);
});

test('[PR7] a bolus that depends on a meal says on how much of it, in words and data', () => {
  const { text, json } = planned({
    method: 'syringe',
    regimen: {
      kind: 'bolus',
      volumeMl: 250,
      times: ['08:00'],
      minutes: 20,
      meals: [{ at: '13:00', ifEatenLessThan: 0.5 }],
    },
  });
  assert.match(text, /13:00–13:20 {2}250 mL only if less than 1\/2 of the meal was eaten/);
  assert.match(text, /give bolus 250 mL only if less than 1\/2 of the meal was eaten/);
  assert.deepEqual(
    json.programme.map((one) => one.ifEatenLessThan),
    [undefined, '1/2'],
  );
});

test('[CL4] a feed that a hold cuts is as much in the data as in the words', () => {
  // By hand: 300 mL in 60 min from 14:00, held from 14:30: half of it is given.
  const { text, json } = planned({
    regimen: { kind: 'intermittent', volumeMl: 300, times: ['14:00'], minutes: 60, by: 'pump' },
    holds: [{ id: 'scan', from: '2026-11-25T14:30:00Z', until: '2026-11-25T16:00:00Z', why: 'procedure' }],
  });
  assert.match(text, /14:00–14:30 {2}150 mL/);
  assert.deepEqual(
    json.programme.map((one) => one.volumeMl),
    [150],
  );
  assert.deepEqual(
    json.lost.map((one) => [one.why, one.volumeMl]),
    [['hold', 150]],
  );
});

test('[SC4] a stop for a hold names the hold, never before or after it', () => {
  const { text, json } = planned({
    holds: [{ id: 'scan', from: '2026-11-25T10:00:00Z', until: '2026-11-25T12:00:00Z', why: 'procedure' }],
  });
  assert.match(text, /10:00 {2}stop feed \(scan\); flush with water \(scan\) 30 mL/);
  assert.match(text, /flush with water \(scan\) 30 mL; start feed \(scan\)/);
  assert.doesNotMatch(text, /(before|after) scan/);
  assert.deepEqual(json.gaps[0]?.holds, ['scan']);
});

test('[SC4] the kind of water, what the pump gives of it, and what a step would go up to', () => {
  const { text } = planned({
    water: { water: 'sterile', given: [{ kind: 'second-bag', volumeMl: 25, everyHours: 1 }] },
    regimen: {
      kind: 'continuous',
      rateMlPerHour: 20,
      advance: { startMlPerHour: 20, stepMlPerHour: 20, everyHours: 8, goalMlPerHour: 80 },
    },
  });
  assert.match(text, /pump · sterile water/);
  assert.match(text, /the pump gives 25 mL every 1 h/);
  assert.match(text, /ask: step up to 40 mL\/h\?/);
});

test('[CL4] a number that does not come out even is one number where it stands and in its working', () => {
  // By hand: 61 mL/h for 7 h 5 min are 432 1/12 mL.
  const { json } = planned({
    regimen: { kind: 'continuous', rateMlPerHour: 61 },
    endsAt: '2026-11-25T15:05:00Z',
  });
  const [first] = json.containers;
  const working = first?.working.volumeToDeliverMl as
    | { result: { value: number; exact: string } }
    | undefined;
  assert.deepEqual([first?.volumeToDeliverMl, working?.result.value], [432.0833, 432.0833]);
  assert.equal(working?.result.exact, '5185/12');
});

test('[SC4] a module is named before its water', () => {
  const { text } = planned({
    modules: [{ name: 'protein', times: ['10:00'], waterMl: 60, energyKcal: 24, proteinG: 6 }],
  });
  assert.match(text, /10:00 {2}give protein in water 60 mL/);
});

test('[SC4] an order that begins after the plan says so', () => {
  const { text } = planned({ startsAt: '2026-11-27T08:00:00Z' });
  assert.match(text, /RUNS\n {2}nothing runs: the order begins at 08:00 on 27 Nov/);
});

test('[CL4] the words of a working go down to what the order, the policy or the feed list says', () => {
  // By hand: 60 mL/h × 8 h = 480 mL and the prime of 15 + 5 mL are 500 mL.
  const lines = textOf({}, true).split('\n');
  const at = lines.findIndex((text) => text.includes('V_fill = 500 mL'));
  const said = lines.slice(at, at + 8).map((text) => text.trim());
  assert.equal(said[0], 'V_fill = ⌈(V_need + P) / p⌉ × p;  V_fill = 500 mL  [PL16]');
  assert.equal(said[1], 'V_need = 480 mL:  V_need = r × t  [PL16]');
  assert.equal(said[2], 'r = 60 mL/h  (order: regimen.rate)');
  assert.equal(said[3], 't = 8 h  (worked out)');
  assert.equal(said[4], 'P = 20 mL:  P = V_line + V_spill  [PL15]');
  assert.match(said[5] ?? '', /^V_line = 15 mL {2}\(local policy set\.prime\.line/);
  assert.ok(lines.some((text) => text.trim() === 'rounded up to a whole 10 mL'));
});

test('[CL4] a share that is no short decimal is written as its parts', () => {
  const text = textOf({ feed: { id: 'standard-1.0', strength: '2/3' } }, true);
  assert.match(text, /s = 2\/3 {2}\(order: feed\.strength\)/);
});
