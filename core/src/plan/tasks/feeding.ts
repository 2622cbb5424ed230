/**
 * When does feed start, stop and change, and when is a feed given? Read off the programme: stretches that run at a rate,
 * and feeds that are a volume at a named time. What stops for a hold is flushed by the rules of holds, not of feeds.
 */
import { between, type Instant, type Span } from '../../base/instant.ts';
import { type Rate, rateFor, subtract, sum, type Volume } from '../../base/volume.ts';
import {
  ARITHMETIC,
  input,
  shownDuration,
  shownRate,
  shownVolume,
  type Worked,
  worked,
} from '../../base/working.ts';
import { type Gap, type Piece, type Programme, pieceGives } from '../../programme/programme.ts';
import type { Course } from '../course.ts';
import type { Task } from '../plan.ts';
import { afterwards, around, starting, stopping, task, type Window } from './due.ts';

/** Feed running without a break, at one rate or at several one after the other. */
export type Stretch = Span & { readonly pieces: readonly Piece[] };

/** One feed: a volume that begins at a named time. */
export type Feeding = {
  readonly whole: Span;
  readonly volume: Worked<Volume>;
  /** Given only if too little of a meal was eaten. */
  readonly ifMealMissed: boolean;
};

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

/** What a hold cuts out of a feed is not given: the pieces that are left are the feed. */
function feedingOf(pieces: readonly Piece[]): readonly Feeding[] {
  const first = pieces[0];
  if (first?.gives.kind !== 'volume') return [];
  const { whole, volume, ifEatenLessThan } = first.gives;
  const given = sum(pieces.map((piece) => pieceGives(piece, piece.until)));
  const ordered = { value: volume, working: first.working };
  const basis = { kind: 'working', working: first.working } as const;
  const cut = worked(given, shownVolume, {
    symbol: 'V',
    equation: 'V = V_feed − V_held',
    inputs: [
      input('V_feed', shownVolume(volume), basis),
      input('V_held', shownVolume(subtract(volume, given)), ARITHMETIC),
    ],
    rule: 'PL33',
    basis,
  });
  return [{ whole, volume: given === volume ? ordered : cut, ifMealMissed: ifEatenLessThan !== undefined }];
}

export function feedingsOf({ pieces }: Programme): readonly Feeding[] {
  const feeds = Map.groupBy(pieces.filter(named), ({ gives }) =>
    gives.kind === 'volume' ? gives.whole.from : null,
  );
  return [...feeds.values()].flatMap(feedingOf);
}

export const isRunning = ({ pieces }: Programme, at: Instant): boolean =>
  pieces.some((piece) => at >= piece.from && at < piece.until);

/** The stretch without feed that begins or ends at a moment because of holds, or null. */
export const heldFrom = ({ gaps }: Programme, at: Instant): Gap | null =>
  gaps.find((gap) => gap.from === at && gap.holds.length > 0) ?? null;
export const heldUntil = ({ gaps }: Programme, at: Instant): Gap | null =>
  gaps.find((gap) => gap.until === at && gap.holds.length > 0) ?? null;

export const heldBy = (gap: Gap | null): string | null => (gap === null ? null : gap.holds.join(' + '));

/** What the pump does now is not what the programme says: it is put right at the first visit. */
function putRightNow({ programme, standing }: Course, stretches: readonly Stretch[]): readonly Task[] {
  const now = stretches[0]?.from === programme.span.from ? stretches[0] : null;
  const first = now?.pieces[0];
  if (standing.running === null) {
    if (now === null || first === undefined) return [];
    return [task({ kind: 'start-feed', rate: rateOf(first), rule: 'PL32' }, starting(now.from))];
  }
  if (first === undefined) return [task({ kind: 'stop-feed', rule: 'PL32' }, stopping(standing.at))];
  const ordered = rateOf(first);
  return ordered?.value === standing.running.rate
    ? []
    : [task({ kind: 'change-rate', rate: ordered, rule: 'PL32' }, starting(first.from))];
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
    .filter((stretch) => stretch.until < programme.span.until)
    .map((stretch) =>
      task(
        { kind: 'stop-feed', about: heldBy(heldFrom(programme, stretch.until)), rule: 'PL32' },
        stopping(stretch.until),
      ),
    );
  const starts = stretches
    .filter((stretch) => stretch.from > programme.span.from)
    .map((stretch) =>
      task(
        {
          kind: 'start-feed',
          about: heldBy(heldUntil(programme, stretch.from)),
          rate: rateOf(stretch.pieces[0] as Piece),
          rule: 'PL32',
        },
        starting(stretch.from),
      ),
    );
  const hasFeeds = programme.pieces.some(named);
  const now = hasFeeds ? [] : putRightNow(course, stretches);
  return {
    stops: [...now.filter((one) => one.kind === 'stop-feed'), ...stops],
    starts: [...now.filter((one) => one.kind !== 'stop-feed'), ...starts, ...stretches.flatMap(rateChanges)],
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
export function feedWindow(course: Course, { whole }: Feeding): Window {
  const window = course.local.should('window.feed')?.value ?? null;
  if (window === null || !isPouredPerFeed(course)) return starting(whole.from);
  return course.regimen.kind === 'bolus'
    ? around(whole.from, window)
    : { ...around(whole.from, window), latest: starting(whole.from).latest };
}

export const feedEndWindow = (course: Course, { whole }: Feeding): Window =>
  afterwards(whole.until, course.local.should('window.feed')?.value ?? between(whole.until, whole.until));

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
