/**
 * What does the pump's counter say of what ran? Its difference between two readings is the best record of that time; where
 * it cannot be told from the last reading, the estimate is what stands.
 */
import type { Instant } from '../../base/instant.ts';
import { add, givenSoFar, NOTHING, subtract, type Volume, volume } from '../../base/volume.ts';
import { emptyTrail, grown, told } from '../trail.ts';
import { type Counted, cut, type Delivered, type DeliveryState, type Source } from './delivery.ts';

/** [ST3] The counter's difference, laid over the pieces in proportion: the floor of the cumulative amount, so that they add up. */
function laidOver(pieces: readonly Delivered[], counted: Volume): readonly Delivered[] {
  const whole = pieces.reduce((total, one) => total + one.volume, 0) as Volume;
  let [weight, before] = [0, 0];
  return pieces.map((one) => {
    weight += one.volume;
    const upTo = givenSoFar(counted, weight as never, whole as never);
    const amount = volume(upTo - before);
    before = upTo;
    return { ...one, by: 'counter', volume: amount };
  });
}

/** Where rate × time says that nothing ran, the difference is spread evenly since the last reading. */
function uniform(state: DeliveryState, at: Instant, counted: Volume, source: Source): Delivered {
  const from = state.countedAt ?? state.feedingSince ?? at;
  const order = state.running?.order ?? null;
  return {
    from,
    until: at,
    volume: counted,
    by: 'counter',
    byRate: NOTHING,
    container: source.container,
    mixture: source.mixture,
    order,
  };
}

const settledWith = (state: DeliveryState, pieces: readonly Delivered[], source: Source): DeliveryState => {
  const own = source.container === null ? [] : pieces.filter((one) => one.container === source.container);
  return {
    ...state,
    settled: pieces.reduce(grown<Delivered>, state.settled),
    pending: state.pending.length === 0 ? state.pending : emptyTrail(),
    drawn: own.reduce((total, one) => add(total, one.volume), state.drawn),
    drawnPending: NOTHING,
  };
};

export type Reading = {
  readonly entry: string;
  /** What the counter shows; null where it was cleared unread. */
  readonly shows: Volume | null;
  /** What the next reading is compared with. */
  readonly onFrom: Volume;
};

/** Whether a reading can be told from the last: one that is less, without the counter having been cleared, cannot. */
export const isFallen = ({ counter }: DeliveryState, shows: Volume | null): boolean =>
  shows !== null && shows < counter;

/** [ST3] [ST5] A reading settles what was estimated; unread or fallen, the estimate itself is what stands. */
export function readCounter(
  state: DeliveryState,
  at: Instant,
  reading: Reading,
  source: Source,
): DeliveryState {
  const now = cut(state, at, source);
  const next = { ...now, counter: reading.onFrom, countedAt: at };
  const pieces = told(now.pending);
  if (reading.shows === null || isFallen(now, reading.shows)) return settledWith(next, pieces, source);
  const counted = subtract(reading.shows, now.counter);
  const byRate = pieces.reduce((total, one) => add(total, one.volume), NOTHING);
  const from = now.countedAt ?? now.feedingSince ?? at;
  const laid =
    byRate > 0 ? laidOver(pieces, counted) : counted > 0 ? [uniform(now, at, counted, source)] : [];
  const settled = settledWith(next, laid, source);
  const record: Counted = { from, until: at, counted, byRate, entry: reading.entry };
  return { ...settled, counted: grown(settled.counted, record) };
}
