/** [OR30] [OR49] [OR56] Can the water be given as ordered, and is it the water and the rhythm of local policy? */
import { fraction } from '../../base/fraction.ts';
import { HOUR } from '../../base/instant.ts';
import { feedStarts } from '../daily.ts';
import type { Problem, WaterGiven, WaterOrder } from '../order.ts';
import { problem } from '../problem.ts';
import { isPostPyloric, type Review, restsOn, silent } from '../review.ts';

/** [OR49] Which water; beyond the stomach that local policy says nothing of it is worth knowing too. */
function kind({ local, feedLumen }: Review, { water }: WaterOrder): readonly Problem[] {
  const key = isPostPyloric(feedLumen) ? 'water.jejunal' : 'water.gastric';
  const asked = local(key);
  if (!asked.known) return isPostPyloric(feedLumen) ? [silent(key, asked.why, 'OR49')] : [];
  return asked.value === water
    ? []
    : [
        problem('order/water-kind', ['water', 'water'], {
          value: water,
          limit: asked.value,
          ...restsOn(key, asked.basis),
        }),
      ];
}

const runsForHours = ({ order }: Review): boolean =>
  order.regimen !== null && order.regimen.kind !== 'intermittent' && order.regimen.kind !== 'bolus';

/** [OR56] A running feed is flushed at least as often as local policy has it. */
function seldom(review: Review, given: WaterGiven, path: Problem['path']): readonly Problem[] {
  if (given.kind !== 'interval' && given.kind !== 'second-bag') return [];
  const key = 'flush.continuous.every';
  const every = review.local(key);
  if (!runsForHours(review) || !every.known || given.every <= every.value) return [];
  return [
    problem('order/water-seldom', [...path, 'everyHours'], {
      value: fraction(given.every, HOUR),
      limit: fraction(every.value, HOUR),
      unit: 'h',
      ...restsOn(key, every.basis),
    }),
  ];
}

function each(review: Review, given: WaterGiven, i: number): readonly Problem[] {
  const { method, regimen } = review.order;
  const path = ['water', 'given', i];
  const noTimes = given.kind === 'times' && given.times.length === 0;
  return [
    ...(noTimes ? [problem('order/missing', [...path, 'times'], { what: 'times', of: 'water' })] : []),
    ...(given.kind === 'second-bag' && method !== null && method !== 'pump'
      ? [problem('order/water-contradicts', [...path, 'kind'], { what: 'second-bag-without-pump', method })]
      : []),
    ...(given.kind === 'around-feeds' && regimen !== null && feedStarts(regimen) === 0
      ? [problem('order/water-without-feeds', [...path, 'kind'], { regimen: regimen.kind })]
      : []),
    ...seldom(review, given, path),
  ];
}

export function water(review: Review): readonly Problem[] {
  const ordered = review.order.water;
  return ordered === null
    ? []
    : [...kind(review, ordered), ...ordered.given.flatMap((given, i) => each(review, given, i))];
}
