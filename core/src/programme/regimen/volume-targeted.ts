/**
 * How does a feed run that is ordered as a volume a day? At the base rate; faster, within the ceiling, where more was
 * lost than the base rate will give by the end of the feeding day; and not on past the volume. [PR10]
 */
import { later, overlap, type Span, within } from '../../base/instant.ts';
import { givenSoFar, type Rate, type Volume } from '../../base/volume.ts';
import {
  ARITHMETIC,
  input,
  shownDuration,
  shownRate,
  shownVolume,
  type Worked,
  worked,
} from '../../base/working.ts';
import type { Regimen } from '../../order/order.ts';
import { type Level, rateLevels } from '../advancement.ts';
import { mayCatchUp } from '../catch-up.ts';
import { type Draft, drafts, missedFor, missedInHolds, NO_FEED } from '../draft.ts';
import { type Frame, firstFed } from '../frame.ts';
import { asOrdered, mixtureRate, mixtureVolume } from '../mixture.ts';
import { cutTo, lasting, without } from '../spans.ts';
import { type Target, towards } from '../target.ts';
import { atLevels } from './continuous.ts';

type VolumeTargeted = Extract<Regimen, { kind: 'volume-targeted' }>;

type Amounts = {
  readonly volume: Worked<Volume>;
  readonly levels: readonly Level<Rate>[];
  readonly most: Worked<Rate> | null;
};

function amountsOf(
  frame: Frame,
  { volumePerDay, baseRate, mostRate, advance }: VolumeTargeted,
): Amounts | null {
  const ordered = asOrdered(volumePerDay.volume, shownVolume, 'V', 'regimen.volumePerDay');
  const volume = mixtureVolume(frame, ordered, volumePerDay.of);
  const levels = rateLevels(frame, baseRate, advance, 'regimen.baseRate');
  if (volume === null || levels === null) return null;
  if (mostRate === null) return { volume, levels, most: null };
  const most = mixtureRate(frame, asOrdered(mostRate.rate, shownRate, 'r', 'regimen.mostRate'), mostRate.of);
  return most === null ? null : { volume, levels, most };
}

/** A day on which feeding begins or the order ends wants its share of the volume; a day of 23 or 25 hours all of it. */
function wantedOn(volume: Worked<Volume>, day: Span, hours: readonly Span[]): Worked<Volume> {
  const [ordered, lasts] = [lasting(hours), lasting([day])];
  if (ordered === lasts) return volume;
  return worked(givenSoFar(volume.value, ordered, lasts), shownVolume, {
    equation: 'V = V_day × t_ordered / t_day',
    inputs: [
      input('V_day', shownVolume(volume.value), { kind: 'working', working: volume.working }),
      input('t_ordered', shownDuration(ordered), ARITHMETIC),
      input('t_day', shownDuration(lasts), ARITHMETIC),
    ],
    symbol: 'V',
    rule: 'PR14',
    basis: ARITHMETIC,
  });
}

function onDay(frame: Frame, day: Span, { volume, levels, most }: Amounts): Draft {
  const { at, receivedToday } = frame.standing;
  const course = { from: later(frame.ordered.from, firstFed(frame)), until: frame.ordered.until };
  const shared = overlap(day, course);
  const hours = shared === null ? [] : [shared];
  if (hours.length === 0) return NO_FEED;
  const target: Target = {
    period: day,
    open: without(atLevels(hours, levels), frame.held),
    wanted: wantedOn(volume, day, hours),
    received: within(day, at) ? { at, volume: receivedToday } : null,
    stops: true,
    because: null,
  };
  return drafts([
    towards(frame, target, mayCatchUp(frame, day, most)),
    { ...NO_FEED, missed: missedInHolds(hours, frame.held) },
  ]);
}

export function volumeTargetedDraft(frame: Frame, regimen: VolumeTargeted): Draft {
  const amounts = amountsOf(frame, regimen);
  return amounts === null
    ? { ...NO_FEED, missed: missedFor('amount-not-known', cutTo(frame.days, frame.ordered)) }
    : drafts(frame.days.map((day) => onDay(frame, day, amounts)));
}
