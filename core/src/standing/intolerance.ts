/**
 * Is something open that says the feed is not borne? Feed stopped for it; a hold for it; a residual at which policy stops,
 * or of a look that is never returned; marked distension; severe pain or pain on feeding; vomiting since the last time that
 * tolerance was due to be looked at. A later finding that is better closes its own sign. [ST51]
 */
import { before, type Instant } from '../base/instant.ts';
import { ask, type Policy, type PolicyContext } from '../policy/policy.ts';
import type { Course } from './course.ts';
import { orderInForce } from './readings/orders.ts';
import type { Residual } from './readings/tolerance.ts';
import { lastOf, told } from './trail.ts';

export type IntoleranceSign =
  | 'stopped-for-it'
  | 'held-for-it'
  | 'residual'
  | 'residual-look'
  | 'distension'
  | 'pain'
  | 'vomiting';

export type ResidualRun = {
  readonly last: Residual | null;
  /** The last that was a number. */
  readonly lastNumber: Residual | null;
  /** How many in a row, by the time they were done, were over policy's alert; null where policy has none. */
  readonly run: number | null;
  /** Whether the last number is one at which policy stops; null where policy has none. */
  readonly stops: boolean | null;
};

const NEVER_RETURNED: ReadonlySet<string> = new Set(['blood', 'coffee-ground', 'faeculent']);
/** The first year of life, in days. */
const INFANT_BELOW_DAYS = 365;

/** Green counts in an infant, and where nobody has said how old somebody is. */
const isNeverReturned = (look: string | null, { ageDays }: PolicyContext): boolean =>
  look !== null &&
  (NEVER_RETURNED.has(look) || (look === 'green' && (ageDays === null || ageDays < INFANT_BELOW_DAYS)));

type Compare = (residual: Residual) => boolean;

/** Over a threshold, as policy compares; null where it names none. */
function over(
  policy: Policy,
  context: PolicyContext,
  key: 'residual.alert' | 'residual.stop',
): Compare | null {
  const limit = ask(policy, key, context);
  const compare = ask(policy, 'residual.compare', context);
  if (!limit.known || !compare.known) return null;
  return ({ volume }) =>
    volume !== null && (compare.value === 'more-than' ? volume > limit.value : volume >= limit.value);
}

/** [ST52] What is no number neither counts nor resets; a number below resets. */
export function residualRun(course: Course, policy: Policy, context: PolicyContext): ResidualRun {
  const { residuals } = course.tolerance;
  const numbers = told(residuals).filter((one) => one.volume !== null);
  const lastNumber = numbers.at(-1) ?? null;
  const alerts = over(policy, context, 'residual.alert');
  const stops = over(policy, context, 'residual.stop');
  const below = alerts === null ? -1 : numbers.findLastIndex((one) => !alerts(one));
  return {
    last: lastOf(residuals),
    lastNumber,
    run: alerts === null ? null : numbers.length - 1 - below,
    stops: stops === null ? null : lastNumber !== null && stops(lastNumber),
  };
}

function heldForIt(course: Course, at: Instant): boolean {
  const inForce = orderInForce(course.orders, at);
  if (inForce.kind !== 'one') return false;
  return inForce.order.holds.some(
    ({ why, from, until }) => why === 'intolerance' && from <= at && (until === null || until > at),
  );
}

/** Where policy does not say how often tolerance is looked at, vomiting stays open until feed is started again. */
function vomitedLately(course: Course, policy: Policy, context: PolicyContext): boolean {
  const last = lastOf(course.tolerance.vomits);
  if (last === null) return false;
  const every = ask(policy, 'check.tolerance.every', context);
  if (every.known) return last.at > before(context.at, every.value);
  return (course.delivery.running?.since ?? last.at) <= last.at;
}

export function openIntolerance(
  course: Course,
  policy: Policy,
  context: PolicyContext,
): readonly IntoleranceSign[] {
  const { interruptions, tolerance } = course;
  const residual = residualRun(course, policy, context);
  const look = lastOf(tolerance.residuals)?.look ?? null;
  const signs: readonly (readonly [IntoleranceSign, boolean])[] = [
    ['stopped-for-it', interruptions.open?.reason === 'intolerance'],
    ['held-for-it', heldForIt(course, context.at)],
    ['residual', residual.stops === true],
    ['residual-look', isNeverReturned(look, context)],
    ['distension', tolerance.distension?.degree === 'marked'],
    ['pain', tolerance.pain?.degree === 'severe' || tolerance.pain?.onFeeding === true],
    ['vomiting', vomitedLately(course, policy, context)],
  ];
  return signs.flatMap(([sign, open]) => (open ? [sign] : []));
}
