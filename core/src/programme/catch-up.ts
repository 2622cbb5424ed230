/**
 * May lost volume be made up, and how fast at most? Only where the order is for a volume a day or names a protocol; never
 * while something speaks against it. [PR9] [PR12]
 */
import type { Span } from '../base/instant.ts';
import type { Rate } from '../base/volume.ts';
import type { Worked } from '../base/working.ts';
import { orderedPerDay } from '../order/daily.ts';
import { ADULT_FROM_DAYS, isPostPyloric } from '../order/review.ts';
import { isAdvancing } from './advancement.ts';
import { feedLumen, leastCeiling } from './ceiling.ts';
import { dayOf, type Frame, firstFed } from './frame.ts';
import type { CatchUpBar } from './programme.ts';
import type { CatchUp } from './target.ts';

/** The day on which this course was first fed, or what comes before it; nobody fed yet is fed first now. */
function isFirstDay(frame: Frame, period: Span): boolean {
  const allowed = frame.local('catch-up.first-day');
  if (allowed.known && allowed.value) return false;
  const day = dayOf(frame, period.from);
  return day === null || firstFed(frame) >= day.from;
}

/** What an order must allow by name: a protocol of its own. */
function barUnlessNamed(frame: Frame): CatchUpBar | null {
  if (frame.ageDays === null) return 'age-not-known';
  if (frame.ageDays < ADULT_FROM_DAYS) return 'child';
  const lumen = feedLumen(frame.order);
  if (lumen === null || lumen.tip === null) return 'tip-not-known';
  return isPostPyloric(lumen) ? 'post-pyloric' : null;
}

/** All that goes in on a full day by the order, with the water already given where that is more than was ordered. */
function isOverFluidLimit({ order, policy, standing }: Frame): boolean {
  const limit = order.fluidLimitPerDay;
  if (limit === null) return false;
  const { fluid, flushes, medicineWater, moduleWater } = orderedPerDay(order, policy, standing.at);
  const water = flushes.value + medicineWater.value + moduleWater.value;
  return fluid.value - water + Math.max(water, standing.waterToday) > limit;
}

function barTo(frame: Frame, period: Span): CatchUpBar | null {
  const { order, standing } = frame;
  const named = order.catchUpProtocol !== null;
  if (!named && order.regimen?.kind !== 'volume-targeted') return 'no-protocol';
  if (order.refeedingCaution) return 'refeeding-caution';
  if (standing.openIntolerance) return 'open-intolerance';
  if (order.regimen !== null && isAdvancing(frame, order.regimen.advance)) return 'advancing';
  if (isFirstDay(frame, period)) return 'first-day';
  if (isOverFluidLimit(frame)) return 'over-fluid-limit';
  return named ? null : barUnlessNamed(frame);
}

/** Whether what is lost in the period may be made up, and how fast at most; `most` is what the regimen itself names. */
export function mayCatchUp(frame: Frame, period: Span, most: Worked<Rate> | null): CatchUp {
  const bar = barTo(frame, period);
  if (bar !== null) return { allowed: false, why: bar };
  const ceiling = leastCeiling(frame, { catchUp: true, most });
  return ceiling === null ? { allowed: false, why: 'ceiling-not-known' } : { allowed: true, most: ceiling };
}
