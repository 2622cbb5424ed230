/** [OR47] [OR52] What do the medicines cost the feed, and may what is lost be made up? */
import { fraction } from '../../base/fraction.ts';
import {
  DAY,
  type Duration,
  duration,
  instant,
  MINUTE,
  overlap,
  type Span,
  union,
} from '../../base/instant.ts';
import { times, toFraction } from '../../reckon/exact.ts';
import type { MedicineByTube, Order, Problem, Regimen } from '../order.ts';
import { inHours, windowOf } from '../per-day.ts';
import { problem } from '../problem.ts';
import { runningRates } from '../rates.ts';
import { isPostPyloric, type Review } from '../review.ts';

const span = (from: number, lasts: number): Span => ({ from: instant(from), until: instant(from + lasts) });

/** The day before and the day after are laid beside it, so that a hold or window over midnight counts once and wholly. */
const DAYS = [-1, 0, 1] as const;
const everyDay = (from: number, lasts: number): readonly Span[] =>
  DAYS.map((day) => span(from + day * DAY, lasts));

const holdsOf = (medicine: MedicineByTube): readonly Span[] =>
  medicine.times.flatMap((time) =>
    everyDay(time * MINUTE - medicine.holdBefore, medicine.holdBefore + medicine.holdAfter),
  );

/** When feed runs on a day without a clock change; null for a feed in portions, which loses nothing by waiting. */
function runs(regimen: Regimen): readonly Span[] | null {
  switch (regimen.kind) {
    case 'continuous':
      return regimen.perDay === null
        ? everyDay(0, DAY)
        : everyDay(regimen.perDay.from * MINUTE, regimen.perDay.lasts);
    case 'cyclic':
      return everyDay(regimen.from * MINUTE, windowOf(regimen));
    case 'volume-targeted':
      return everyDay(0, DAY);
    default:
      return null;
  }
}

/** How long feed is off on one day; holds that overlap count once. */
function offPerDay(regimen: Regimen, medicines: readonly MedicineByTube[]): Duration {
  const running = union(runs(regimen) ?? []);
  const today = span(0, DAY);
  const off = union(medicines.flatMap(holdsOf)).flatMap((hold) =>
    running.flatMap((run) => {
      const both = overlap(hold, run);
      const shared = both === null ? null : overlap(both, today);
      return shared === null ? [] : [shared.until - shared.from];
    }),
  );
  return duration(off.reduce((total, one) => total + one, 0));
}

/** [OR47] */
function cost(order: Order): readonly Problem[] {
  const { regimen, medicines } = order;
  const holding = medicines.filter(({ holdBefore, holdAfter }) => holdBefore + holdAfter > 0);
  const [rate] = runningRates(order);
  if (regimen === null || rate === undefined || holding.length === 0) return [];
  const off = offPerDay(regimen, holding);
  if (off === 0) return [];
  return [
    problem('order/holds-cost', ['medicines'], {
      medicines: holding.map((medicine) => medicine.name),
      offMinutes: fraction(off, MINUTE),
      value: toFraction(times(rate.rate, inHours(off))),
      rate: toFraction(rate.rate),
      unit: 'mL/d',
      /** Whether a programme may make it up; for a fixed rate somebody has to be asked. */
      madeUp:
        regimen.kind === 'volume-targeted' || order.catchUpProtocol !== null || rate.what === 'from-volume',
    }),
  ];
}

/** [OR52] Why nothing is made up although the order would have it. */
function noCatchUp({ order, isChild, feedLumen }: Review): readonly Problem[] {
  const { regimen, catchUpProtocol } = order;
  if (regimen?.kind !== 'volume-targeted' && catchUpProtocol === null) return [];
  const named = catchUpProtocol !== null;
  const why = [
    ...(order.refeedingCaution ? ['refeeding-caution'] : []),
    ...((regimen?.advance ?? null) === null ? [] : ['advancing']),
    // For these two only a protocol that the order names will do.
    ...(isChild === true && !named ? ['child'] : []),
    ...(isPostPyloric(feedLumen) && !named ? ['post-pyloric'] : []),
  ];
  return why.length === 0
    ? []
    : [problem('order/no-catch-up', ['regimen'], { why, protocol: catchUpProtocol })];
}

export const interruption = (review: Review): readonly Problem[] => [
  ...cost(review.order),
  ...noCatchUp(review),
];
