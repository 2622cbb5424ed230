/**
 * What is hanging, what hung, what was prepared, which cartons are open? A container's clock starts when it is spiked or
 * first poured and nothing restarts it: neither a pause, nor hanging it again. [ST10]
 */
import type { Fraction } from '../../base/fraction.ts';
import { earlier, type Instant } from '../../base/instant.ts';
import { add, NOTHING, subtract, type Volume, volume } from '../../base/volume.ts';
import type { DayName } from '../../base/zone.ts';
import type { ContainerFact } from '../../record/fact.ts';
import type { OpenCarton } from '../standing.ts';
import { emptyTrail, grown, type Trail, told } from '../trail.ts';

export type Container = {
  readonly id: string;
  readonly holds: 'feed' | 'water';
  readonly feed: string;
  readonly strength: Fraction;
  readonly closed: boolean;
  readonly filled: Volume;
  /** Went into a new line, or was spilt in priming it: never for the patient. */
  readonly primed: Volume;
  readonly putUpAt: Instant;
  readonly comesDownBy: Instant | null;
  readonly lot: string | null;
  readonly expires: DayName | null;
};

export type TakenDown = Container & {
  readonly takenDownAt: Instant;
  /** Null where nobody looked. */
  readonly left: Volume | null;
  readonly reason: string | null;
};

export type PreparedContainer = {
  readonly id: string;
  readonly feed: string;
  readonly strength: Fraction;
  readonly volume: Volume;
  readonly preparedAt: Instant;
  readonly expiresAt: Instant | null;
};

/** The last priming, and the container that it was taken off; null while that is still to come. */
type Prime = { readonly at: Instant; readonly volume: Volume; readonly off: string | null };

export type ContainersState = {
  readonly feedUp: Container | null;
  readonly waterUp: Container | null;
  readonly down: Trail<TakenDown>;
  readonly set: { readonly putUpAt: Instant } | null;
  readonly prime: Prime | null;
  readonly prepared: readonly PreparedContainer[];
  readonly cartons: readonly OpenCarton[];
};

export const beginContainers = (): ContainersState => ({
  feedUp: null,
  waterUp: null,
  down: emptyTrail(),
  set: null,
  prime: null,
  prepared: [],
  cartons: [],
});

type Told<K extends ContainerFact['kind']> = Extract<ContainerFact, { readonly kind: K }>;

export const forPatient = ({ filled, primed }: Container): Volume => volume(Math.max(0, filled - primed));

const earliestOf = (a: Instant | null, b: Instant | null): Instant | null =>
  a === null ? b : b === null ? a : earlier(a, b);

/** Primed at the moment at which its container comes down: the line was filled from the next one. */
function unprimed(state: ContainersState, up: Container, at: Instant): readonly [Container, Prime | null] {
  const { prime } = state;
  return prime === null || prime.off !== up.id || prime.at !== at
    ? [up, prime]
    : [
        { ...up, primed: subtract(up.primed, prime.volume) },
        { ...prime, off: null },
      ];
}

type Down = { readonly left: Volume | null; readonly reason: string | null };

function takenDown(state: ContainersState, up: Container, at: Instant, how: Down): ContainersState {
  const [own, prime] = unprimed(state, up, at);
  const down = grown(state.down, { ...own, takenDownAt: at, ...how });
  return up.holds === 'feed'
    ? { ...state, down, prime, feedUp: null }
    : { ...state, down, prime, waterUp: null };
}

export const isUp = ({ feedUp, waterUp }: ContainersState, id: string): boolean =>
  feedUp?.id === id || waterUp?.id === id;

/** One put up where another hangs takes its place; what was left in that one nobody said. */
export function putUp(
  state: ContainersState,
  fact: Told<'container-put-up/1'>,
  at: Instant,
): ContainersState {
  if (isUp(state, fact.container)) return state;
  const other = fact.holds === 'feed' ? state.feedUp : state.waterUp;
  const free = other === null ? state : takenDown(state, other, at, { left: null, reason: null });
  const prepared = free.prepared.find((one) => one.id === fact.container) ?? null;
  const hungBefore = told(free.down).findLast((one) => one.id === fact.container);
  const isPrimed = fact.holds === 'feed' && free.prime !== null && free.prime.off === null;
  const container: Container = {
    id: fact.container,
    holds: fact.holds,
    feed: fact.feed,
    strength: fact.strength,
    closed: fact.closed,
    filled: fact.filled,
    primed: isPrimed ? (free.prime?.volume ?? NOTHING) : NOTHING,
    putUpAt: hungBefore?.putUpAt ?? at,
    comesDownBy: earliestOf(fact.comesDownBy, prepared?.expiresAt ?? null),
    lot: fact.lot,
    expires: fact.expires,
  };
  const prime = isPrimed && free.prime !== null ? { ...free.prime, off: container.id } : free.prime;
  return {
    ...free,
    prime,
    set: fact.newSet && fact.holds === 'feed' ? { putUpAt: at } : free.set,
    prepared: prepared === null ? free.prepared : free.prepared.filter((one) => one !== prepared),
    ...(fact.holds === 'feed' ? { feedUp: container } : { waterUp: container }),
  };
}

export function takeDown(
  state: ContainersState,
  fact: Told<'container-taken-down/1'>,
  at: Instant,
): ContainersState {
  const up = [state.feedUp, state.waterUp].find((one) => one?.id === fact.container) ?? null;
  return up === null ? state : takenDown(state, up, at, { left: fact.left, reason: fact.reason });
}

/** The line and what is spilt are taken off the container that hangs, else off the one that is put up next. */
export function changeSet(state: ContainersState, fact: Told<'set-changed/1'>, at: Instant): ContainersState {
  const primed = add(fact.line, fact.spilt);
  const { feedUp } = state;
  return {
    ...state,
    set: { putUpAt: at },
    prime: { at, volume: primed, off: feedUp?.id ?? null },
    feedUp: feedUp === null ? null : { ...feedUp, primed: add(feedUp.primed, primed) },
  };
}

export function prepare(
  state: ContainersState,
  fact: Told<'container-prepared/1'>,
  preparedAt: Instant,
): ContainersState {
  const { container: id, feed, strength, volume: amount, expiresAt } = fact;
  const others = state.prepared.filter((one) => one.id !== id);
  return { ...state, prepared: [...others, { id, feed, strength, volume: amount, preparedAt, expiresAt }] };
}

export function openCarton(
  state: ContainersState,
  fact: Told<'carton-opened/1'>,
  openedAt: Instant,
): ContainersState {
  if (state.cartons.some((one) => one.id === fact.carton)) return state;
  const carton = { id: fact.carton, feed: fact.feed, openedAt, remaining: fact.volume };
  return { ...state, cartons: [...state.cartons, carton] };
}

/** An empty or discarded carton is gone. */
export const useCarton = (state: ContainersState, fact: Told<'carton-used/1'>): ContainersState => ({
  ...state,
  cartons: state.cartons
    .map((one) => (one.id === fact.carton ? { ...one, remaining: subtract(one.remaining, fact.taken) } : one))
    .filter((one) => one.remaining > 0 && !(one.id === fact.carton && fact.discarded)),
});
