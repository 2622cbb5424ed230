/** "The visit as planned": one entry for each task whose every value is known, and a question for what is measured. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { act } from '@feedwright/core/act/act';
import type { Acted, Acting, Wish } from '@feedwright/core/act/wish';
import { hours, type Instant, minutes } from '@feedwright/core/base/instant';
import { ml, mlPerHour } from '@feedwright/core/base/volume';
import type { OrderDocument } from '@feedwright/core/order/document';
import type { Plan } from '@feedwright/core/plan/plan';
import { planFor } from '@feedwright/core/plan/plan-for';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import { layOver } from '@feedwright/core/policy/local';
import type { Policy } from '@feedwright/core/policy/policy';
import type { Fact } from '@feedwright/core/record/fact';
import { ledgerOf, withEntry } from '@feedwright/core/record/ledger';
import { blankStanding } from '@feedwright/core/standing/standing';
import { AT, FEEDS, orderWith, policyOf } from '../order/example.ts';
import { acting, at, entriesOf, outcome, placed, sent } from './bedside.ts';

/** The defaults with what a facility has to set itself. */
const POLICY: Policy = layOver(
  DEFAULT_POLICY,
  policyOf({
    'day.start': 480,
    'pour.step': ml(10),
    'bag.capacity': ml(1_000),
    'set.prime.line': ml(15),
    'set.prime.spill': ml(5),
    'hang.open-liquid': hours(4),
    'duplicate.within': minutes(5),
  }),
);

type Bedside = { readonly acting: Acting; readonly plan: Plan };

function bedside(changes: Partial<OrderDocument> = {}, policy = POLICY): Bedside {
  const order = orderWith(changes);
  const plan = planFor({ order, feeds: FEEDS, policy, standing: blankStanding(AT) });
  assert.ok(plan.visits.length > 0, JSON.stringify(plan.problems));
  return { plan, acting: acting(0, [placed(order)], { plan, policy, clock: plan.span.until }) };
}

const doVisit = (visit: Instant): Wish => ({ wish: 'do-visit', visit, happenedAt: visit });
const kindsAsked = (acted: Acted): string =>
  acted.ok ? acted.asked.map(({ task, because }) => `${task.kind}:${because}`).join(' ') : 'refused';
const factsOf = (acted: Acted): readonly Fact[] => entriesOf(acted).map(({ fact }) => fact);

/** The visit at which something is done. */
const visitWith = ({ plan }: Bedside, kind: string): Instant =>
  plan.visits.find(({ tasks }) => tasks.some((task) => task.kind === kind))?.at ??
  assert.fail(
    `no visit to ${kind}: ${plan.visits.flatMap(({ tasks }) => tasks.map((one) => one.kind)).join(' ')}`,
  );

test('[AC12] the first visit as planned: set, container and pump are recorded, what is looked at is asked', () => {
  const here = bedside();
  const visit = here.plan.visits[0]!;
  const acted = act(here.acting, doVisit(visit.at));
  const [container] = here.plan.containers;
  assert.deepEqual(
    factsOf(acted).filter(({ kind }) => kind !== 'water-given/1' && kind !== 'mouth-care-done/1'),
    [
      { kind: 'set-changed/1', line: ml(15), spilt: ml(5) },
      {
        kind: 'container-put-up/1',
        container: factsOf(acted).find((fact) => fact.kind === 'container-put-up/1')?.container,
        holds: 'feed',
        feed: 'standard',
        strength: { n: 1, d: 1 },
        closed: false,
        filled: container?.fill.value,
        newSet: true,
        comesDownBy: null,
        lot: null,
        expires: null,
      },
      {
        kind: 'pump-started/1',
        rate: mlPerHour(75),
        volumeToBeDelivered: container?.volumeToDeliver.value,
      },
    ],
  );
  for (const entry of entriesOf(acted)) {
    assert.equal(entry.happenedAt, visit.at);
    assert.ok(
      visit.tasks.some(({ id }) => id === entry.task),
      entry.task ?? 'no task',
    );
  }
});

test('[AC12] every task of every visit is either recorded once or asked for, and what is measured is never recorded', () => {
  const MEASURED = [
    'position-set/1',
    'tube-checked/1',
    'residual-checked/1',
    'weight-measured/1',
    'laboratory-result/1',
    'container-taken-down/1',
    'distension-noted/1',
    'step-confirmed/1',
  ];
  const orders: readonly Partial<OrderDocument>[] = [
    {},
    {
      regimen: { kind: 'cyclic', from: '09:00', until: '22:00', rateMlPerHour: 100 },
      medicines: [{ name: 'a medicine', times: ['09:00', '21:00'], volumeMl: 10 }],
      modules: [{ name: 'protein', times: ['12:00'], waterMl: 60, energyKcal: 24, proteinG: 6 }],
    },
    {
      method: 'syringe',
      regimen: { kind: 'bolus', volumeMl: 240, times: ['09:00', '13:00', '18:00'], minutes: 30 },
      water: { water: 'cooled-boiled', given: [{ kind: 'around-feeds', beforeMl: 30, afterMl: 30 }] },
    },
    {
      method: 'gravity',
      regimen: { kind: 'intermittent', volumeMl: 250, times: ['09:00', '15:00'], minutes: 40, by: 'gravity' },
    },
    {
      regimen: { kind: 'intermittent', volumeMl: 250, times: ['09:00', '15:00'], minutes: 60, by: 'pump' },
    },
    { water: { water: 'sterile', given: [{ kind: 'second-bag', volumeMl: 50, everyHours: 2 }] } },
  ];
  const [recorded, asked] = [new Set<string>(), new Set<string>()];
  for (const changes of orders) {
    const here = bedside(changes);
    for (const visit of here.plan.visits) {
      const acted = act(here.acting, doVisit(visit.at));
      const entries = entriesOf(acted);
      const questions = acted.ok ? acted.asked.map(({ task }) => task.id) : [];
      const ids = new Set([...entries.map(({ task }) => task), ...questions]);
      assert.deepEqual([...ids].toSorted(), visit.tasks.map(({ id }) => id).toSorted());
      assert.ok(questions.every((id) => entries.every(({ task }) => task !== id)));
      assert.ok(entries.every(({ fact }) => !MEASURED.includes(fact.kind)));
      for (const one of visit.tasks) (questions.includes(one.id) ? asked : recorded).add(one.kind);
    }
  }
  for (const kind of [
    'put-up-container',
    'put-up-water-bag',
    'start-feed',
    'flush',
    'give-medicine',
    'give-module',
    'give-bolus',
    'give-feed',
  ]) {
    assert.ok(recorded.has(kind), `${kind} was never recorded`);
  }
  for (const kind of ['check-position', 'check-tube', 'take-down-container']) {
    assert.ok(asked.has(kind), `${kind} was never asked for`);
  }
});

test('[AC12] a bolus as planned is what the order says, in its strength; water is of the kind ordered', () => {
  const here = bedside({
    method: 'syringe',
    regimen: { kind: 'bolus', volumeMl: 240, times: ['09:00'], minutes: 30 },
    water: { water: 'cooled-boiled', given: [{ kind: 'around-feeds', beforeMl: 25, afterMl: 35 }] },
  });
  const facts = factsOf(act(here.acting, doVisit(visitWith(here, 'give-bolus'))));
  assert.deepEqual(
    facts.filter(({ kind }) => kind === 'feed-given/1' || kind === 'water-given/1'),
    [
      { kind: 'water-given/1', water: 'cooled-boiled', volume: ml(25), why: 'flush' },
      {
        kind: 'feed-given/1',
        by: 'syringe',
        feed: 'standard',
        strength: { n: 1, d: 1 },
        volume: ml(240),
        lasted: null,
        heightCm: null,
        timedBarrel: null,
      },
      { kind: 'water-given/1', water: 'cooled-boiled', volume: ml(35), why: 'flush' },
    ],
  );
});

test('[AC12] a feed that stops for a hold is paused for its reason, one that ends is stopped', () => {
  const theatre = { id: 'theatre', from: '2026-11-25T14:00:00+00:00', until: '2026-11-25T16:00:00+00:00' };
  const held = bedside({ holds: [{ ...theatre, why: 'procedure' }] });
  const pausing = factsOf(act(held.acting, doVisit(visitWith(held, 'stop-feed'))));
  assert.ok(
    pausing.some((fact) => fact.kind === 'pump-paused/1' && fact.reason === 'procedure'),
    JSON.stringify(pausing),
  );
  const cyclic = bedside({ regimen: { kind: 'cyclic', from: '09:00', until: '21:00', rateMlPerHour: 100 } });
  const ending = factsOf(act(cyclic.acting, doVisit(visitWith(cyclic, 'stop-feed'))));
  assert.ok(ending.some((fact) => fact.kind === 'pump-stopped/1' && fact.reason === 'feed-ended'));
});

test('[AC12] a bolus that depends on a meal is asked about', () => {
  const here = bedside({
    method: 'syringe',
    regimen: {
      kind: 'bolus',
      volumeMl: 240,
      times: [],
      minutes: 30,
      meals: [{ at: '13:00', ifEatenLessThan: '1/2' }],
    },
  });
  const acted = act(here.acting, doVisit(visitWith(here, 'give-bolus')));
  assert.match(kindsAsked(acted), /give-bolus:decided/);
});

test('[AC12] what is done already is not recorded again', () => {
  const here = bedside();
  const visit = here.plan.visits[0]!;
  const first = act(here.acting, doVisit(visit.at));
  const ledger = entriesOf(first).reduce(withEntry, here.acting.ledger);
  const again = act({ ...here.acting, ledger }, doVisit(visit.at));
  assert.deepEqual(entriesOf(again), []);
  assert.equal(kindsAsked(again), kindsAsked(first));
});

test('[AC13] a visit that nobody planned, that is all done, or without one order in force is refused', () => {
  const here = bedside();
  const visit = here.plan.visits[0]!;
  const tried = (more: Partial<Acting>, when = visit.at) =>
    outcome(act({ ...here.acting, ...more }, doVisit(when)));
  assert.equal(tried({}, at(1)), 'AC13 act/no-such-visit');
  assert.equal(tried({ plan: null }), 'AC13 act/no-such-visit');
  assert.equal(tried({ ledger: ledgerOf([]) }), 'AC13 act/no-order');
  const fork = [placed(), sent(0, { kind: 'order-placed/1', placed: { ...orderWith(), id: 'other' } })];
  assert.equal(tried({ ledger: ledgerOf(fork) }), 'AC13 act/no-order');
  const done = visit.tasks.map((task) => sent(0, { kind: 'mouth-care-done/1' }, { task: task.id }));
  assert.equal(tried({ ledger: ledgerOf([placed(), ...done]) }), 'AC13 act/visit-done');
});

test('[AC12] a visit of which one thing is impossible is not recorded in part', () => {
  const here = bedside();
  const visit = here.plan.visits[0]!;
  const ledger = withEntry(here.acting.ledger, sent(0, { kind: 'tube-out/1', how: null }));
  assert.equal(outcome(act({ ...here.acting, ledger }, doVisit(visit.at))), 'AC3 act/tube-out');
});

test('[AC12] what neither plan, order nor policy knows is asked for, not guessed', () => {
  const here = bedside();
  const visit = here.plan.visits[0]!;
  const silent = { ...here.acting, policy: policyOf({}) };
  assert.match(kindsAsked(act(silent, doVisit(visit.at))), /change-set:not-known/);
});
