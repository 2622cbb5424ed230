/**
 * When does feed start, stop and change, and when is a feed given? Read off the programme: stretches that run at a rate,
 * and feeds that are a volume at a named time. What stops for a hold is flushed by the rules of holds, not of feeds.
 */
import { between, earlier, type Instant, instant, later, type Span, within } from '../../base/instant.ts';
import { type Rate, rateFor, subtract, type Volume } from '../../base/volume.ts';
import {
  ARITHMETIC,
  input,
  shownDuration,
  shownRate,
  shownVolume,
  type Worked,
  worked,
} from '../../base/working.ts';
import type { Held } from '../../programme/holds.ts';
import { type Piece, type Programme, pieceGives } from '../../programme/programme.ts';
import type { Course } from '../course.ts';
import { gridUp } from '../grid.ts';
import type { Task } from '../plan.ts';
import { afterwards, around, nearest, starting, stopping, task, type Window } from './due.ts';

/** Feed running without a break, at one rate or at several one after the other. */
export type Stretch = Span & { readonly pieces: readonly Piece[] };

/** One feed: a volume that begins at a named time, or what a hold leaves of it. */
export type Feeding = {
  readonly whole: Span;
  readonly volume: Worked<Volume>;
  readonly starts: 'at-its-time' | 'after-a-hold';
  /** Given only if too little of a meal was eaten. */
  readonly ifMealMissed: boolean;
};

type FeedingCourse = Pick<Course, 'programme' | 'held'>;

const rateOf = (piece: Piece): Worked<Rate> | null =>
  piece.gives.kind === 'rate' ? { value: piece.gives.rate, working: piece.working } : null;

export function stretchesOf({ pieces }: Programme): readonly Stretch[] {
  const stretches: Stretch[] = [];
  for (const piece of pieces) {
    if (piece.gives.kind !== 'rate') continue;
    const last = stretches.at(-1);
    if (last?.until === piece.from) {
      stretches[stretches.length - 1] = {
        from: last.from,
        until: piece.until,
        pieces: [...last.pieces, piece],
      };
    } else stretches.push({ from: piece.from, until: piece.until, pieces: [piece] });
  }
  return stretches;
}

const named = (piece: Piece): boolean => piece.gives.kind === 'volume';

/**
 * A part of a feed that runs without a break. What a hold cuts off is not given, and what it leaves on either side is a feed
 * of its own; where only the span that was looked at cuts it, the feed is whole.
 */
function partOf(course: FeedingCourse, piece: Piece): readonly Feeding[] {
  if (piece.gives.kind !== 'volume') return [];
  const { whole, volume: ordered, ifEatenLessThan } = piece.gives;
  const { span } = course.programme;
  const isLate = piece.from > span.from || heldUntil(course, piece.from) !== null;
  const isCut = piece.until < span.until || heldFrom(course, piece.until) !== null;
  const part: Span = { from: isLate ? piece.from : whole.from, until: isCut ? piece.until : whole.until };
  const given = pieceGives({ ...piece, ...part }, part.until);
  const basis = { kind: 'working', working: piece.working } as const;
  const cut = worked(given, shownVolume, {
    symbol: 'V',
    equation: 'V = V_feed − V_held',
    inputs: [
      input('V_feed', shownVolume(ordered), basis),
      input('V_held', shownVolume(subtract(ordered, given)), ARITHMETIC),
    ],
    rule: 'PL33',
    basis,
  });
  return [
    {
      whole: part,
      volume: given === ordered ? { value: ordered, working: piece.working } : cut,
      starts: part.from === whole.from ? 'at-its-time' : 'after-a-hold',
      ifMealMissed: ifEatenLessThan !== undefined,
    },
  ];
}

export const feedingsOf = (course: FeedingCourse): readonly Feeding[] =>
  course.programme.pieces.flatMap((piece) => partOf(course, piece));

export const isRunning = ({ pieces }: Programme, at: Instant): boolean =>
  pieces.some((piece) => at >= piece.from && at < piece.until);

/** The hold that begins or ends at a moment, or null. */
export const heldFrom = ({ held }: Pick<Course, 'held'>, at: Instant): Held | null =>
  held.find((one) => one.from === at) ?? null;
export const heldUntil = ({ held }: Pick<Course, 'held'>, at: Instant): Held | null =>
  held.find((one) => one.until === at) ?? null;

export const heldBy = (held: Held | null): string | null => (held === null ? null : held.holds.join(' + '));

/** Feed that runs all day begins without a flush of its own; whatever begins daily has one. */
export const beginsDaily = ({ regimen }: Course): boolean =>
  regimen.kind === 'cyclic' || (regimen.kind === 'continuous' && regimen.perDay !== null);

/** Feed that was held starts when the hold is over; what starts by its own schedule may at the grid point before. */
export const startWindow = (course: Course, at: Instant): Window =>
  heldUntil(course, at) === null ? nearest(at) : starting(at);

/** Whether a stretch is still to be started, or stopped: what falls on this point of the grid is, unless the pump shows that it was. */
export const isToStart = ({ feedFrom, standing }: Course, { from }: Stretch): boolean =>
  from > feedFrom || (gridUp(from) >= feedFrom && standing.running === null);
export const isToStop = ({ feedFrom, standing, programme }: Course, { until }: Stretch): boolean =>
  until < programme.span.until && (until > feedFrom || (until === feedFrom && standing.running !== null));

/** What the pump does now is not what the programme says: it is put right at the first visit. */
function putRightNow(course: Course, stretches: readonly Stretch[]): readonly Task[] {
  const { standing, feedFrom } = course;
  const stretch = stretches.find((one) => within(one, feedFrom));
  const now = starting(feedFrom);
  if (stretch === undefined) {
    const stops = standing.running !== null && !stretches.some((one) => one.until === feedFrom);
    return stops ? [task({ kind: 'stop-feed', rule: 'PL32' }, stopping(standing.at))] : [];
  }
  const ordered = rateOf(stretch.pieces.find((piece) => within(piece, feedFrom)) as Piece);
  if (standing.running === null) {
    return isToStart(course, stretch) ? [] : [task({ kind: 'start-feed', rate: ordered, rule: 'PL32' }, now)];
  }
  return ordered?.value === standing.running.rate
    ? []
    : [task({ kind: 'change-rate', rate: ordered, rule: 'PL32' }, now)];
}

/** Adjoining pieces that differ in rate: the pump is set anew where they meet. */
const rateChanges = ({ pieces }: Stretch): readonly Task[] =>
  pieces.slice(1).flatMap((piece, index) => {
    const [was, is] = [rateOf(pieces[index] as Piece), rateOf(piece)];
    return was?.value === is?.value
      ? []
      : [task({ kind: 'change-rate', rate: is, rule: 'PL32' }, starting(piece.from))];
  });

/** [PL32] Feed at a rate: stopped, started and set anew exactly where the programme says so. */
export function runningTasks(course: Course): {
  readonly stops: readonly Task[];
  readonly starts: readonly Task[];
} {
  const { programme } = course;
  const stretches = stretchesOf(programme);
  const stops = stretches
    .filter((stretch) => isToStop(course, stretch))
    .map((stretch) =>
      task(
        { kind: 'stop-feed', about: heldBy(heldFrom(course, stretch.until)), rule: 'PL32' },
        stopping(stretch.until),
      ),
    );
  const starts = stretches
    .filter((stretch) => isToStart(course, stretch))
    .map((stretch) =>
      task(
        {
          kind: 'start-feed',
          about: heldBy(heldUntil(course, stretch.from)),
          rate: rateOf(stretch.pieces[0] as Piece),
          rule: 'PL32',
        },
        startWindow(course, stretch.from),
      ),
    );
  const hasFeeds = programme.pieces.some(named);
  const now = hasFeeds ? [] : putRightNow(course, stretches);
  const changes = stretches.flatMap(rateChanges).filter((one) => one.nominal > course.feedFrom);
  return {
    stops: [...now.filter((one) => one.kind === 'stop-feed'), ...stops],
    starts: [...now.filter((one) => one.kind !== 'stop-feed'), ...starts, ...changes],
  };
}

/** By pump, a feed is set to the rate that gives its volume in its time, never faster. */
function pumpRate({ order, regimen }: Course, { volume, whole }: Feeding): Worked<Rate> | null {
  if (order.method !== 'pump' || regimen.kind !== 'intermittent') return null;
  const lasts = between(whole.from, whole.until);
  return worked(rateFor(volume.value, lasts), shownRate, {
    symbol: 'r',
    equation: 'r = V / t',
    inputs: [
      input('V', shownVolume(volume.value), { kind: 'working', working: volume.working }),
      input('t', shownDuration(lasts), { kind: 'order', path: 'regimen.minutes' }),
    ],
    rounded: { way: 'down', step: { n: 1, d: 100 } },
    rule: 'PL33',
    basis: { kind: 'order', path: 'regimen' },
  });
}

/** Whether each feed is a pour of its own: a bolus always, another feed where policy says so. */
export const isPouredPerFeed = ({ regimen, local }: Pick<Course, 'regimen' | 'local'>): boolean =>
  regimen.kind === 'bolus' ||
  (regimen.kind === 'intermittent' && (local.may('pour.per-feed')?.value ?? false));

/**
 * When a feed may begin. One poured for itself may be early or late, a bolus either way: the nurse stays with it. A feed
 * that runs on by itself may only be early, and its end is only met late, so that it has always run in. From a bag that
 * serves several feeds it begins at its moment, because what is in the bag was reckoned so.
 */
export function feedWindow(course: Course, { whole, starts }: Feeding): Window {
  const by = course.local.should('window.feed')?.value ?? null;
  if (starts === 'after-a-hold') return starting(whole.from);
  if (by === null || !isPouredPerFeed(course)) return nearest(whole.from);
  const { earliest, nominal, latest } = around(whole.from, by);
  // It is given between the holds on either side of it, all of it.
  const free = course.held.reduce((at, { until }) => (until <= nominal ? later(at, until) : at), earliest);
  if (course.regimen.kind !== 'bolus') return { earliest: free, nominal, latest: nearest(nominal).latest };
  const next = course.held.find(({ from }) => from >= whole.until)?.from ?? null;
  const last = next === null ? latest : earlier(latest, instant(next - between(whole.from, whole.until)));
  return { earliest: free, nominal, latest: later(last, nominal) };
}

/** Met once it is in; never later than a hold begins. */
export function feedEndWindow(course: Course, { whole }: Feeding): Window {
  const { until } = whole;
  if (heldFrom(course, until) !== null) return stopping(until);
  const window = afterwards(until, course.local.should('window.feed')?.value ?? between(until, until));
  const next = course.held.find(({ from }) => from > until)?.from ?? null;
  return next === null ? window : { ...window, latest: later(earlier(window.latest, next), gridUp(until)) };
}

type GiveKind = Extract<Task['kind'], 'give-bolus' | 'give-feed'>;

/** What a feed is given as: the kind and the matter of its task, by which it is known again. */
export const givenAs = (
  { regimen }: Course,
  { ifMealMissed }: Feeding,
): { kind: GiveKind; about: string | null } => ({
  kind: regimen.kind === 'bolus' ? 'give-bolus' : 'give-feed',
  about: ifMealMissed ? 'meal' : null,
});

/** [PL33] Feeds that are a volume at a time: given, and one that runs on by itself is ended. */
export function givingTasks(
  course: Course,
  feeding: Feeding,
): { readonly give: Task; readonly end: Task | null } {
  const bolus = course.regimen.kind === 'bolus';
  const give = task(
    {
      ...givenAs(course, feeding),
      volume: feeding.volume,
      rate: pumpRate(course, feeding),
      rule: 'PL33',
    },
    feedWindow(course, feeding),
  );
  return {
    give,
    end: bolus ? null : task({ kind: 'stop-feed', rule: 'PL33' }, feedEndWindow(course, feeding)),
  };
}
