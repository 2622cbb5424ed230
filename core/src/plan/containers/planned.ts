/**
 * What is said of a container: how much goes in, what the line takes, what to programme, when it runs dry, by when it
 * must be down and because of what, what is left. Made from where it starts and where the next one does.
 */
import { earlier, type Instant, type Span } from '../../base/instant.ts';
import { NOTHING, subtract, type Volume } from '../../base/volume.ts';
import {
  ARITHMETIC,
  type Basis,
  input,
  shownInstant,
  shownVolume,
  type Worked,
  worked,
} from '../../base/working.ts';
import type { PlannedContainer } from '../plan.ts';
import type { TakeDown } from './limits.ts';
import { lastFed, type Need, needBetween, whenGiven, workedNeed } from './need.ts';

const smaller = (a: Volume, b: Volume): Volume => (a <= b ? a : b);
const from = (working: Worked<unknown>): Basis => ({ kind: 'working', working: working.working });

/** What is fixed of a container before it is told. */
export type Told = {
  readonly putUpAt: Instant;
  readonly alreadyUp: boolean;
  readonly feed: string;
  readonly closed: boolean;
  readonly fill: Worked<Volume>;
  readonly newSet: boolean;
  readonly prime: Worked<Volume>;
  /** What is in it for the patient: the fill without the prime, or what remains in one already up. */
  readonly content: Worked<Volume>;
  /** From when its content is given: from putting up, or from now for one already up. */
  readonly givesFrom: Instant;
  readonly down: TakeDown;
  readonly nextAt: Instant | null;
};

export const contentOf = (fill: Worked<Volume>, prime: Worked<Volume>): Worked<Volume> =>
  worked(subtract(fill.value, smaller(prime.value, fill.value)), shownVolume, {
    symbol: 'V_in',
    equation: 'V_in = max(V_fill − P, 0)',
    inputs: [
      input('V_fill', shownVolume(fill.value), from(fill)),
      input('P', shownVolume(prime.value), from(prime)),
    ],
    rule: 'PL16',
    basis: ARITHMETIC,
  });

/** [PL17] What the pump is set to: what is in it, or less if it must come down before that is given. */
function volumeToDeliver({ content }: Told, needed: Worked<Volume>): Worked<Volume> {
  return worked(smaller(content.value, needed.value), shownVolume, {
    symbol: 'V_deliver',
    equation: 'V_deliver = min(V_in, V_need)',
    inputs: [
      input('V_in', shownVolume(content.value), from(content)),
      input('V_need', shownVolume(needed.value), from(needed)),
    ],
    rule: 'PL17',
    basis: ARITHMETIC,
  });
}

/** [PL18] The first ms at which everything in it has been given; null if it comes down before. */
function runsDry(told: Told, need: Need): Worked<Instant> | null {
  const { content, givesFrom, down } = told;
  const at = whenGiven(need, givesFrom, content.value);
  if (at === null || at > down.by.value) return null;
  const given = workedNeed(need, { from: givesFrom, until: at });
  return worked(at, shownInstant, {
    symbol: 't_dry',
    equation: 't_dry = first t at which V_given(t) ≥ V_in',
    inputs: [
      input('V_in', shownVolume(content.value), from(content)),
      input('t_up', shownInstant(givesFrom), ARITHMETIC),
      input('V_given', shownVolume(given.value), from(given)),
    ],
    rule: 'PL18',
    basis: ARITHMETIC,
  });
}

function leftOver({ content }: Told, given: Worked<Volume>): Worked<Volume> {
  const value = content.value > given.value ? subtract(content.value, given.value) : NOTHING;
  return worked(value, shownVolume, {
    symbol: 'V_left',
    equation: 'V_left = max(V_in − V_given, 0)',
    inputs: [
      input('V_in', shownVolume(content.value), from(content)),
      input('V_given', shownVolume(given.value), from(given)),
    ],
    rule: 'PL19',
    basis: ARITHMETIC,
  });
}

/** The programme to fill by, and the one that warns: every step up taken as soon as it may be. */
export type Paces = { readonly lowest: Need; readonly highest: Need };

/** A container in full. What comes down when the next one goes up leaves what has not been given by then. */
export function plannedContainer(told: Told, { lowest, highest }: Paces): PlannedContainer {
  const { givesFrom, down, nextAt } = told;
  const dry = runsDry(told, lowest);
  const earliest = highest === lowest ? null : runsDry(told, highest);
  const end = nextAt === null ? down.by.value : earlier(nextAt, down.by.value);
  return {
    putUpAt: told.putUpAt,
    alreadyUp: told.alreadyUp,
    feed: told.feed,
    closed: told.closed,
    fill: told.fill,
    newSet: told.newSet,
    prime: told.prime,
    volumeToDeliver: volumeToDeliver(told, workedNeed(lowest, { from: givesFrom, until: down.by.value })),
    runsDryAt: dry,
    runsDryEarliest: earliest?.value === dry?.value ? null : earliest,
    takeDownBy: down.by,
    because: down.because,
    nextAt,
    leftOver: leftOver(told, workedNeed(lowest, { from: givesFrom, until: end })),
    cartons: [],
  };
}

/** When feed ends for good within a span, by its own schedule and not for a hold; null while it goes on or is only held. */
export function feedEndsIn(need: Need, span: Span): Instant | null {
  const at = lastFed(need, span);
  if (at === null || at >= span.until) return null;
  const held = need.programme.gaps.some((gap) => gap.from === at && gap.holds.length > 0);
  return held || needBetween(need, { from: at, until: span.until }) > 0 ? null : at;
}

/** [PL12] A container into which an older carton went comes down by that carton's limit, if that is the sooner. */
export function downByCarton(
  container: PlannedContainer,
  until: Instant | null,
  keptBy: Basis,
  need: Need,
): PlannedContainer {
  const { takeDownBy, runsDryAt, runsDryEarliest, volumeToDeliver: deliver } = container;
  if (until === null || until >= takeDownBy.value) return container;
  const inTime = workedNeed(need, { from: container.putUpAt, until });
  const before = (at: Worked<Instant> | null): Worked<Instant> | null =>
    at === null || at.value > until ? null : at;
  return {
    ...container,
    takeDownBy: worked(until, shownInstant, {
      symbol: 't_down',
      equation: 't_down = min(t_limits, t_opened)',
      inputs: [
        input('t_limits', shownInstant(takeDownBy.value), from(takeDownBy)),
        input('t_opened', shownInstant(until), keptBy),
      ],
      rule: 'PL12',
      basis: ARITHMETIC,
    }),
    because: 'opened-limit',
    volumeToDeliver: worked(smaller(deliver.value, inTime.value), shownVolume, {
      symbol: 'V_deliver',
      equation: 'V_deliver = min(V_deliver, V_need)',
      inputs: [
        input('V_deliver', shownVolume(deliver.value), from(deliver)),
        input('V_need', shownVolume(inTime.value), from(inTime)),
      ],
      rule: 'PL17',
      basis: ARITHMETIC,
    }),
    runsDryAt: before(runsDryAt),
    runsDryEarliest: before(runsDryEarliest),
  };
}
