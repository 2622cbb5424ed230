/**
 * What does a standing look like to a program? Plain JSON: unit-bearing keys, instants with the zone's offset, volumes in mL,
 * and beside what was worked out its working. The numbers are made from the same values as the words.
 */
import { fraction } from '../../base/fraction.ts';
import type { OrderInForce } from '../../record/orders.ts';
import type { ContainerAccount } from '../../standing/disagreements.ts';
import type { ContainerUp } from '../../standing/standing.ts';
import type { CourseStanding } from '../../standing/standing-at.ts';
import { jsonNumber } from '../number.ts';
import { type Json, mlOf, type PlanReading, rateOf } from '../plan/json.ts';
import { accountJson } from './account-json.ts';
import { personJson, toleranceJson, tubeJson } from './body-json.ts';
import { type Moment, maybe, maybeMl, moments } from './json-values.ts';

const upJson = (one: ContainerUp, at: Moment): Json => ({
  id: one.id,
  feed: one.feed,
  putUpAt: at(one.putUpAt),
  comesDownBy: maybe(one.comesDownBy, at),
  filledMl: mlOf(one.filled),
  remainingMl: mlOf(one.remaining),
});

const containerJson = (one: ContainerAccount, at: Moment): Json => ({
  id: one.container.id,
  feed: one.container.feed,
  strength: `${one.container.strength.n}/${one.container.strength.d}`,
  closed: one.container.closed,
  putUpAt: at(one.container.putUpAt),
  takenDownAt: maybe(one.takenDownAt, at),
  filledMl: mlOf(one.container.filled),
  primedMl: mlOf(one.container.primed),
  drawnMl: mlOf(one.drawn),
  byRateMl: mlOf(one.byRate),
  remainingMl: mlOf(one.remaining),
  leftMl: maybeMl(one.left),
});

function orderJson(order: OrderInForce, at: Moment): Json {
  switch (order.kind) {
    case 'one':
      return { kind: 'one', order: order.order.id, next: order.next?.id ?? null };
    case 'fork':
      return { kind: 'fork', orders: order.orders.map((one) => one.id) };
    case 'stopped':
      return { kind: 'stopped', order: order.order, at: at(order.at), reason: order.reason };
    case 'none':
      return { kind: 'none' };
  }
}

/** What runs and what hangs. */
function nowJson(standing: CourseStanding, at: Moment): { readonly [key: string]: Json } {
  const { running, interruption, lineClosed, readBack, position } = standing;
  return {
    running: maybe(running, ({ rate, since }) => ({ rateMlPerHour: rateOf(rate), since: at(since) })),
    interruption: maybe(interruption, ({ from, reason, lasted, lost }) => ({
      from: at(from),
      reason,
      minutes: jsonNumber(fraction(lasted, 60_000), 2),
      lostMl: maybeMl(lost),
    })),
    container: maybe(standing.container, (one) => upJson(one, at)),
    runsDryAt: maybe(standing.runsDryAt, at),
    waterBag: maybe(standing.waterBag, (one) => upJson(one, at)),
    setPutUpAt: maybe(standing.set, (one) => at(one.putUpAt)),
    cartons: standing.cartons.map((one) => ({
      id: one.id,
      feed: one.feed,
      openedAt: at(one.openedAt),
      remainingMl: mlOf(one.remaining),
    })),
    prepared: standing.prepared.map((one) => ({
      id: one.id,
      feed: one.feed,
      preparedAt: at(one.preparedAt),
      expiresAt: maybe(one.expiresAt, at),
      volumeMl: mlOf(one.volume),
    })),
    lineClosed: maybe(lineClosed, ({ fact, ...one }) => ({
      at: at(one.at),
      clamped: fact.clamped,
      capped: fact.capped,
    })),
    readBack: maybe(readBack, ({ fact, ...one }) => ({
      at: at(one.at),
      rateMlPerHour: rateOf(fact.rate),
      volumeToBeDeliveredMl: maybeMl(fact.volumeToBeDelivered),
    })),
    position: maybe(position, (one) => ({
      at: at(one.at),
      headOfBedDegrees: one.headOfBedDegrees,
      posture: one.posture,
    })),
  };
}

/** What somebody confirmed, declined, answered or has to settle. */
function saidJson(standing: CourseStanding, at: Moment, { words }: PlanReading) {
  const { advancement, stepDeclined, answers, contradictions } = standing;
  return {
    steps: {
      confirmed: advancement.stepsConfirmed,
      since: maybe(advancement.since, at),
      declined: maybe(stepDeclined, (one) => ({ at: at(one.at), step: one.step, reason: one.reason })),
    },
    answers: answers.map((one) => ({ ...one, at: at(one.at) })),
    contradictions: contradictions.map(({ code, data, entries, ...one }) => ({
      code,
      at: at(one.at),
      entries: [...entries],
      ...words.standing.contradictions[code](data),
    })),
  };
}

/** The whole standing of a course. */
export function standingJson(course: string, standing: CourseStanding, reading: PlanReading): Json {
  const at = moments(reading.zone);
  const { today, yesterday, shift } = standing;
  return {
    document: 'feedwright-standing/1',
    course,
    at: at(standing.at),
    zone: reading.zone,
    entries: standing.entries,
    unknown: { ...standing.unknown },
    order: orderJson(standing.orderInForce, at),
    ...nowJson(standing, at),
    containers: standing.containers.map((one) => containerJson(one, at)),
    today: maybe(today, (one) => accountJson(one, reading)),
    yesterday: maybe(yesterday, (one) => accountJson(one, reading)),
    shift: maybe(shift, (one) => accountJson(one, reading)),
    tube: tubeJson(standing, at),
    tolerance: toleranceJson(standing, at),
    person: personJson(standing, at),
    mouthCareAt: maybe(standing.mouthCareAt, at),
    feedingSince: maybe(standing.feedingSince, at),
    ...saidJson(standing, at, reading),
    done: [...standing.done],
  };
}
