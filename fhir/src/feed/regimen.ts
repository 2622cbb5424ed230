/**
 * Which regimen do the administrations make up, and when does the order begin and end?
 * A rate that runs on, or volumes at their times. What cannot be told is asked, and until it is answered there is none.
 */
import { given, type Rate, type Volume, volume } from '@feedwright/core/base/volume';
import type { Zone } from '@feedwright/core/base/zone';
import type { Order, Regimen } from '@feedwright/core/order/order';
import { answered, ask, type Place } from '../read/reading.ts';
import type { Administration } from './administration.ts';
import { type Feeding, mixed, stepsOf, type Work } from './feeding.ts';
import { byRate } from './rates.ts';
import { MOST_TIMES } from './schedule.ts';
import { byVolume } from './volumes.ts';

/** Several runs a day at a rate: each gives what the rate gives while it lasts. */
function runsAtRate(work: Work, administration: Administration, rate: Rate): Regimen | null {
  const { schedule } = administration;
  const lasts = schedule.lasts ?? ask(schedule.place, 'FH12', 'fhir/length-missing', 'minutes');
  if (lasts === null) return null;
  const feed = { ...administration, volume: given(rate, lasts), schedule: { ...schedule, lasts } };
  return byVolume(work, [feed]);
}

function regimenOf(work: Work, administrations: readonly Administration[]): Regimen | null {
  const [first] = administrations;
  // An amount that could not be read leaves no regimen; why is on record.
  if (first === undefined || administrations.some(({ rate, volume }) => rate === null && volume === null))
    return null;
  if (administrations.every(({ volume }) => volume !== null)) return byVolume(work, administrations);
  if (administrations.some(({ volume }) => volume !== null)) return mixed(work);
  const runs = first.schedule.times?.length ?? 0;
  if (runs <= 1) return byRate(work, administrations);
  return administrations.length > 1 || first.rate === null
    ? mixed(work)
    : runsAtRate(work, first, first.rate);
}

const byBeginning = (a: Administration, b: Administration): number =>
  (a.schedule.from ?? 0) - (b.schedule.from ?? 0);

function volumePerDay([only, ...more]: readonly Administration[]): Volume | null {
  const times = only?.schedule.timesADay ?? null;
  return only?.volume == null || times === null || times > MOST_TIMES || more.length > 0
    ? null
    : volume(only.volume * times);
}

/** [FH12] All administrations of an order as one regimen with its beginning and end. */
export function feedingOf(
  place: Place,
  administrations: readonly Administration[],
  zone: Zone,
  method: Order['method'],
): Feeding {
  const inTime = administrations.toSorted(byBeginning);
  const starts = inTime.map(({ schedule }) => schedule.from).filter((from) => from !== null);
  const answer = answered(place, 'end');
  return {
    regimen: regimenOf({ place, zone, method }, inTime),
    from: starts[0] ?? null,
    // The last to begin says when it ends: the steps before it only make way for it.
    until: inTime.at(-1)?.schedule.until ?? (answer === 'open' ? null : answer),
    rates: stepsOf(inTime, ({ rate, volume }) => (volume === null ? rate : null)),
    volumePerDay: volumePerDay(inTime),
  };
}
