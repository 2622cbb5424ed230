/**
 * What did the patient receive of it? What was delivered, less what was lost before it reached them; and for nutrition less
 * what came back out, by what went in last. [ST7] [ST8]
 */
import type { Instant, Span } from '../base/instant.ts';
import { add, NOTHING, type Volume } from '../base/volume.ts';
import type { Course } from './course.ts';
import { sourceOf } from './course.ts';
import { type Delivered, deliveredUpTo } from './readings/delivery.ts';
import type { FeedLost, Intake } from './readings/liquids.ts';
import { cutAt, type Stretch, sumWithin, takenOff } from './stretch.ts';
import { type Trail, told } from './trail.ts';

type Losing<T> = {
  readonly list: readonly T[];
  /** Lost, by the record, over what had gone in by then. */
  readonly over: Volume;
};

const byThen = <T extends { readonly at: Instant }>(trail: Trail<T>, at: Instant): readonly T[] =>
  told(trail).filter((one) => one.at <= at);

function losing<T extends Stretch>(list: readonly T[], losses: readonly FeedLost[]): Losing<T> {
  let [kept, over]: [readonly T[], Volume] = [list, NOTHING];
  for (const loss of losses) {
    const less = takenOff(kept, loss);
    kept = less.kept;
    over = add(over, less.over);
  }
  return { list: kept, over };
}

/** Everything delivered up to a moment, whether or not it reached the patient. */
export const deliveredBy = (course: Course, at: Instant): readonly Delivered[] =>
  cutAt(deliveredUpTo(course.delivery, at, sourceOf(course)), at);

/** [ST7] Feed that reached the patient by a moment. */
export const receivedBy = (course: Course, at: Instant): Losing<Delivered> =>
  losing(deliveredBy(course, at), byThen(course.liquids.lostBefore, at));

/** Water that was given by a moment: by hand, and by the pump from its second bag. */
export const waterBy = ({ liquids }: Course, at: Instant): readonly Intake[] =>
  told(liquids.intake).filter((one) => one.what === 'water' && one.from <= at);

export type Kept = {
  readonly feed: readonly Delivered[];
  readonly water: readonly Intake[];
};

type Either = Stretch & { readonly feed: Delivered | null; readonly water: Intake | null };

const feedOf = (one: Either): readonly Delivered[] =>
  one.feed === null ? [] : [{ ...one.feed, from: one.from, until: one.until, volume: one.volume }];
const waterOf = (one: Either): readonly Intake[] =>
  one.water === null ? [] : [{ ...one.water, from: one.from, until: one.until, volume: one.volume }];

/**
 * [ST8] What stayed in, for nutrition and free water: less feed that came out of the tube, and where policy says so less
 * residual thrown away. What came out is what went in last, feed and water as they came.
 */
export function keptBy(course: Course, at: Instant, discardedCounts: boolean): Kept {
  const feed = receivedBy(course, at).list;
  const water = waterBy(course, at);
  const discarded = discardedCounts
    ? told(course.tolerance.residuals).map((one) => ({ at: one.at, volume: one.discarded }))
    : [];
  const losses = [...told(course.liquids.lostFromTube), ...discarded]
    .filter((one) => one.at <= at && one.volume > 0)
    .toSorted((a, b) => a.at - b.at);
  if (losses.length === 0) return { feed, water };
  const all: readonly Either[] = [
    ...feed.map((one) => ({ ...one, feed: one, water: null })),
    ...water.map((one) => ({ ...one, feed: null, water: one })),
  ];
  const { list } = losing(all, losses);
  return { feed: list.flatMap(feedOf), water: list.flatMap(waterOf) };
}

export type ByName = { readonly name: string | null; readonly volume: Volume };

/** Within a span, by container or order, in the order in which they first gave. */
export function grouped(
  list: readonly Delivered[],
  span: Span,
  name: (one: Delivered) => string | null,
): readonly ByName[] {
  const groups = Map.groupBy(list, name);
  return [...groups]
    .map(([one, own]) => ({ name: one, volume: sumWithin(own, span) }))
    .filter((one) => one.volume !== 0);
}

export const estimatedWithin = (list: readonly Delivered[], span: Span): Volume =>
  sumWithin(
    list.filter((one) => one.by === 'estimate'),
    span,
  );

/** What rate × time alone says by a moment, counter or no counter. */
export const byRateBy = (course: Course, at: Instant): readonly Delivered[] =>
  cutAt(
    deliveredUpTo(course.delivery, at, sourceOf(course)).map((one) => ({ ...one, volume: one.byRate })),
    at,
  );
