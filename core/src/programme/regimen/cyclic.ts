/**
 * How does a cyclic feed run? Over a clock change a volume keeps its volume and the rate changes; a rate keeps its rate
 * and the volume changes; with both it runs at the rate and stops at the volume. [PR5]
 */
import { type Span, within } from '../../base/instant.ts';
import { type Rate, subtract, type Volume } from '../../base/volume.ts';
import { shownVolume, type Worked } from '../../base/working.ts';
import { type Level, rateLevels } from '../advancement.ts';
import { mayCatchUp } from '../catch-up.ts';
import {
  type Draft,
  drafts,
  missedFor,
  missedInHolds,
  NO_FEED,
  runAroundHolds,
  type Stretch,
} from '../draft.ts';
import { dayOf, type Frame } from '../frame.ts';
import { asOrdered, mixtureVolume } from '../mixture.ts';
import type { LossReason } from '../programme.ts';
import { cutTo, lasting, without } from '../spans.ts';
import { comesTo, givesOf, type Target, towards } from '../target.ts';
import { atLevels } from './continuous.ts';
import { type Cyclic, mostFor, rateInWindow, type Window, wantedIn, windowsOf } from './window.ts';

/** The mixture that the order says; undefined where it says none, null where the strength makes no sense of it. */
type Amounts = {
  readonly levels: readonly Level<Rate>[] | null | undefined;
  readonly volume: Worked<Volume> | null | undefined;
};

function amountsOf(frame: Frame, { rate, volume, advance }: Cyclic): Amounts {
  const of = rate?.of ?? volume?.of ?? 'mixture';
  const ordered = rate ?? (advance === null ? null : { rate: advance.start, of });
  return {
    levels: ordered === null ? undefined : rateLevels(frame, ordered, advance, 'regimen.rate'),
    volume:
      volume === null
        ? undefined
        : mixtureVolume(frame, asOrdered(volume.volume, shownVolume, 'V', 'regimen.volume'), volume.of),
  };
}

/**
 * What was received in this window, so far as the standing can say: it counts from the beginning of the feeding day, so
 * only where the window began within that day and no other window's feed is in the count.
 */
function receivedIn(frame: Frame, windows: readonly Window[], window: Window): Target['received'] {
  const { at, receivedToday } = frame.standing;
  if (!within(window, at)) return null;
  const day = dayOf(frame, at);
  const alone =
    day !== null &&
    day.from <= window.from &&
    windows.every((one) => one.from >= window.from || one.until <= day.from);
  return alone ? { at, volume: receivedToday } : null;
}

type Run = { readonly stretches: readonly Stretch[]; readonly because: LossReason };

/** At the rate that gives the volume in the hours that really run. */
function forVolume(
  frame: Frame,
  hours: readonly Span[],
  window: Window,
  wanted: Worked<Volume>,
  whole: Worked<Volume>,
): Run {
  const most = mostFor(frame, whole, window);
  const rate = rateInWindow(frame, wanted, hours, most);
  if (rate === null) return { stretches: [], because: 'no-time-left' };
  const stretches = hours.map((span) => ({ ...span, rate: rate.value, working: rate.working }));
  const open = lasting(without(hours, frame.held));
  const missing = subtract(wanted.value, (most.value * open) as Volume);
  return { stretches, because: missing > 0 ? 'ceiling' : 'rounding' };
}

function atRate(hours: readonly Span[], levels: readonly Level<Rate>[], wanted: Volume): Run {
  const stretches = atLevels(hours, levels);
  return { stretches, because: givesOf(stretches) < wanted ? 'no-time-left' : 'hold' };
}

/** Towards the window's volume, or with a protocol towards what its rate would have come to. */
function towardsVolume(
  frame: Frame,
  windows: readonly Window[],
  window: Window,
  hours: readonly Span[],
  { levels, volume }: { levels: readonly Level<Rate>[] | undefined; volume: Worked<Volume> | undefined },
): Draft {
  const whole = volume ?? comesTo(atLevels(hours, levels ?? []));
  const wanted = volume === undefined ? whole : wantedIn(whole, window, hours);
  const run =
    levels === undefined
      ? forVolume(frame, hours, window, wanted, whole)
      : atRate(hours, levels, wanted.value);
  const target: Target = {
    period: hours[0] ?? window,
    open: without(run.stretches, frame.held),
    wanted,
    received: receivedIn(frame, windows, window),
    stops: volume !== undefined,
    because: run.because,
  };
  return drafts([
    towards(frame, target, mayCatchUp(frame, window, null)),
    { ...NO_FEED, missed: missedInHolds(hours, frame.held) },
  ]);
}

function inWindow(
  frame: Frame,
  windows: readonly Window[],
  window: Window,
  { levels, volume }: Amounts,
): Draft {
  const hours = cutTo([window], frame.ordered).map(({ from, until }) => ({ from, until }));
  const isGone = window.from === window.until && within(frame.ordered, window.from);
  if (hours.length === 0 && !isGone) return NO_FEED;
  if (levels === null || volume === null) return { ...NO_FEED, missed: missedFor('amount-not-known', hours) };
  const isFixed = volume === undefined && frame.order.catchUpProtocol === null;
  return isFixed || (levels === undefined && volume === undefined)
    ? runAroundHolds(atLevels(hours, levels ?? []), frame.held)
    : towardsVolume(frame, windows, window, hours, { levels, volume });
}

export function cyclicDraft(frame: Frame, regimen: Cyclic): Draft {
  const windows = windowsOf(frame, regimen);
  const [first, last] = [frame.days[0], frame.days.at(-1)];
  if (first === undefined || last === undefined) return NO_FEED;
  const amounts = amountsOf(frame, regimen);
  return drafts(
    windows
      .filter((window) => window.until >= first.from && window.from <= last.until)
      .map((window) => inWindow(frame, windows, window, amounts)),
  );
}
