/**
 * What does an entry change? It touches only the readings that it concerns; the rest of the course is shared with the one
 * before.
 */
import { compare, type Fraction } from '../base/fraction.ts';
import { after, type Instant } from '../base/instant.ts';
import { NOTHING, type Rate, STOPPED } from '../base/volume.ts';
import { type AnyEntry, type Entry, isKnown } from '../record/entry.ts';
import type { Fact, FactKind, PumpFact } from '../record/fact.ts';
import { beginCourse, type Course, sourceOf } from './course.ts';
import {
  type ContainersState,
  changeSet,
  openCarton,
  prepare,
  putUp,
  takeDown,
  useCarton,
} from './readings/containers.ts';
import { contradicted } from './readings/contradictions.ts';
import { readCounter } from './readings/counter.ts';
import { changeSource, giveFeed, haltPump, startPump } from './readings/delivery.ts';
import { endInterruption, interrupt } from './readings/interruptions.ts';
import { body, changeWaterBag, given, readWaterCounter } from './readings/liquids.ts';
import { confirmStep, declineStep, tellOrder } from './readings/orders.ts';
import { tellLab, tellPerson } from './readings/person.ts';
import { tellBody } from './readings/tolerance.ts';
import { tellTube } from './readings/tube.ts';
import { grown } from './trail.ts';

/** Only ever written to inside `foldCourse`, before anybody else sees it; what it holds is replaced, never changed. */
type Draft = { -readonly [K in keyof Course]: Course[K] };
type Handler<F> = (course: Draft, fact: F, entry: Entry) => void;

const actedUnder = (course: Course, entry: Entry): string | null =>
  entry.order ?? course.orders.placed?.id ?? null;

/** A container comes or goes: what ran until then was drawn from the one before. */
function changeContainers(course: Draft, at: Instant, containers: ContainersState): void {
  const before = course.containers;
  if (containers.feedUp?.id !== before.feedUp?.id)
    course.delivery = changeSource(course.delivery, at, sourceOf(course));
  if (containers.waterUp?.id !== before.waterUp?.id) course.liquids = changeWaterBag(course.liquids);
  course.containers = containers;
}

function run(course: Draft, rate: Rate, entry: Entry): void {
  const how = { rate, order: actedUnder(course, entry), source: sourceOf(course) };
  course.delivery = startPump(course.delivery, entry.happenedAt, how);
  course.interruptions = endInterruption(course.interruptions, entry.happenedAt);
}

/** A rate set on a pump that stands still does not start it. */
const rateChanged: Handler<Extract<PumpFact, { readonly kind: 'rate-changed/1' }>> = (
  course,
  { rate },
  entry,
) => {
  if (course.delivery.running === null) course.delivery = { ...course.delivery, lastRate: rate };
  else run(course, rate, entry);
};

const halted: Handler<Extract<PumpFact, { readonly kind: 'pump-paused/1' | 'pump-stopped/1' }>> = (
  course,
  { reason },
  { happenedAt },
) => {
  const { delivery, interruptions } = course;
  if (reason === 'feed-ended') course.interruptions = endInterruption(interruptions, happenedAt);
  else if (delivery.running !== null || interruptions.open !== null)
    course.interruptions = interrupt(interruptions, happenedAt, reason, delivery.lastRate);
  course.delivery = haltPump(course.delivery, happenedAt, sourceOf(course));
};

const counter: Handler<Extract<PumpFact, { readonly kind: 'counter-read/1' | 'counter-cleared/1' }>> = (
  course,
  fact,
  { id, happenedAt },
) => {
  if (fact.counts === 'water') {
    course.liquids = readWaterCounter(course.liquids, fact, happenedAt);
    return;
  }
  const reading =
    fact.kind === 'counter-read/1'
      ? { entry: id, shows: fact.volume, onFrom: fact.volume }
      : { entry: id, shows: fact.read, onFrom: NOTHING };
  course.delivery = readCounter(course.delivery, happenedAt, reading, sourceOf(course));
};

const isSame = (a: Fraction, b: Fraction): boolean => compare(a, b) === 0;

/** The container up is the one that is given from, if it holds that mixture and no syringe is in between. */
const fed: Handler<Extract<Fact, { readonly kind: 'feed-given/1' }>> = (course, fact, entry) => {
  const { feedUp } = course.containers;
  const { feed, strength, volume, by } = fact;
  const isFromUp =
    by !== 'syringe' && feedUp !== null && feedUp.feed === feed && isSame(feedUp.strength, strength);
  const at = entry.happenedAt;
  course.delivery = giveFeed(
    course.delivery,
    {
      at,
      until: fact.lasted === null ? at : after(at, fact.lasted),
      volume,
      mixture: { feed, strength },
      container: isFromUp ? feedUp.id : null,
      order: actedUnder(course, entry),
      counts: by === 'pump',
    },
    sourceOf(course),
  );
};

const orderTold: Handler<Fact> = (course, _, entry) => {
  course.orders = tellOrder(course.orders, entry);
};
const tubeTold: Handler<Parameters<typeof tellTube>[1]> = (course, fact, { happenedAt, by }) => {
  course.tube = tellTube(course.tube, fact, happenedAt, by);
};
const personTold: Handler<Parameters<typeof tellPerson>[1]> = (course, fact, { happenedAt }) => {
  course.person = tellPerson(course.person, fact, happenedAt);
};
const gave: Handler<Parameters<typeof given>[1]> = (course, fact, { happenedAt }) => {
  course.liquids = given(course.liquids, fact, happenedAt);
};
const bodyTold: Handler<Parameters<typeof body>[1]> = (course, fact, { happenedAt }) => {
  course.liquids = body(course.liquids, fact, happenedAt);
  course.tolerance = tellBody(course.tolerance, fact, happenedAt);
};
/** Kept for the record; what it rules over, the ledger has already left out. */
const nothing: Handler<Fact> = () => {};

const HANDLERS: { readonly [K in FactKind]: Handler<Extract<Fact, { readonly kind: K }>> } = {
  'order-placed/1': orderTold,
  'order-held/1': orderTold,
  'order-hold-ended/1': orderTold,
  'order-stopped/1': orderTold,
  'step-confirmed/1': (course, fact, entry) => {
    course.orders = confirmStep(course.orders, fact.step, entry);
  },
  'step-declined/1': (course, fact, { happenedAt }) => {
    course.orders = declineStep(course.orders, fact, happenedAt);
  },
  'person-identified/1': personTold,
  'weight-measured/1': personTold,
  'height-measured/1': personTold,
  'allergies-recorded/1': personTold,
  'other-energy-recorded/1': personTold,
  'tube-placed/1': tubeTold,
  'tube-checked/1': tubeTold,
  'tube-moved/1': tubeTold,
  'tube-out/1': tubeTold,
  'tube-blocked/1': tubeTold,
  'tube-cleared/1': tubeTold,
  'position-set/1': (course, { headOfBedDegrees, posture }, { happenedAt }) => {
    course.position = { at: happenedAt, headOfBedDegrees, posture };
  },
  'container-prepared/1': (course, fact, { happenedAt }) => {
    course.containers = prepare(course.containers, fact, happenedAt);
  },
  'container-put-up/1': (course, fact, { happenedAt }) =>
    changeContainers(course, happenedAt, putUp(course.containers, fact, happenedAt)),
  'container-taken-down/1': (course, fact, { happenedAt }) =>
    changeContainers(course, happenedAt, takeDown(course.containers, fact, happenedAt)),
  'set-changed/1': (course, fact, { happenedAt }) => {
    course.containers = changeSet(course.containers, fact, happenedAt);
  },
  'carton-opened/1': (course, fact, { happenedAt }) => {
    course.containers = openCarton(course.containers, fact, happenedAt);
  },
  'carton-used/1': (course, fact) => {
    course.containers = useCarton(course.containers, fact);
  },
  'pump-started/1': (course, { rate }, entry) => run(course, rate, entry),
  'rate-changed/1': rateChanged,
  'pump-paused/1': halted,
  'pump-stopped/1': halted,
  'pump-resumed/1': (course, _, entry) => run(course, course.delivery.lastRate ?? STOPPED, entry),
  'counter-read/1': counter,
  'counter-cleared/1': counter,
  'programme-read-back/1': (course, fact, { id, happenedAt }) => {
    course.readBack = { at: happenedAt, entry: id, fact };
  },
  'line-closed/1': (course, fact, { id, happenedAt }) => {
    course.lineClosed = { at: happenedAt, entry: id, fact };
  },
  'feed-given/1': fed,
  'water-given/1': gave,
  'module-given/1': gave,
  'medicine-given/1': gave,
  'feed-lost/1': gave,
  'intake-measured/1': gave,
  'residual-checked/1': bodyTold,
  'vomited/1': bodyTold,
  'stool-passed/1': bodyTold,
  'distension-noted/1': bodyTold,
  'pain-noted/1': bodyTold,
  'bowel-sounds-noted/1': bodyTold,
  'output-measured/1': bodyTold,
  'laboratory-result/1': (course, fact, { happenedAt }) => {
    course.person = tellLab(course.person, fact, happenedAt);
  },
  'mouth-care-done/1': (course, _, { happenedAt }) => {
    course.mouthCareAt = happenedAt;
  },
  'note-written/1': nothing,
  'advice-answered/1': (course, { advice, answer, note }, { happenedAt: at }) => {
    course.answers = grown(course.answers, { at, advice, answer, note });
  },
  'duplicate-settled/1': nothing,
  'entered-in-error/1': nothing,
};

function countUnknown(course: Draft, kind: string): void {
  course.unknown = { ...course.unknown, [kind]: (course.unknown[kind] ?? 0) + 1 };
}

function happen(course: Draft, entry: AnyEntry): void {
  course.upTo = entry.happenedAt;
  course.entries += 1;
  if (!isKnown(entry)) {
    countUnknown(course, entry.fact.kind);
    return;
  }
  const odd = contradicted(course, entry);
  if (odd !== null) course.contradictions = grown(course.contradictions, odd);
  if (entry.task !== null) course.done = grown(course.done, { at: entry.happenedAt, task: entry.task });
  const handle = HANDLERS[entry.fact.kind] as Handler<Fact>;
  handle(course, entry.fact, entry);
}

/**
 * Folds entries that count, in the order of truth and each once, into a course: from its beginning, or on from where it was.
 * What it is given stays as it was: a course may be gone on from more than once.
 */
export function foldCourse(entries: Iterable<AnyEntry>, from: Course = beginCourse()): Course {
  const course: Draft = { ...from };
  for (const entry of entries) happen(course, entry);
  return course;
}

/** The course after one entry more. */
export const evolve = (before: Course, entry: AnyEntry): Course => foldCourse([entry], before);
