/**
 * How does feed run towards a volume that is wanted by the end of a day or a window? At the order's rate; faster only
 * where more was lost than that rate will give, and only if making up is allowed; never on past the volume.
 */
import { between, type Instant, type Span } from '../base/instant.ts';
import {
  add,
  given,
  inMlPerHour,
  NOTHING,
  type Rate,
  rate,
  rateDownTo,
  rateFor,
  subtract,
  timeToGive,
  type Volume,
} from '../base/volume.ts';
import {
  ARITHMETIC,
  input,
  shownDuration,
  shownRate,
  shownVolume,
  type Worked,
  worked,
} from '../base/working.ts';
import { asPiece, type Draft, drafts, missedFor, type Short, type Stretch } from './draft.ts';
import type { Frame } from './frame.ts';
import type { CatchUpBar, LossReason } from './programme.ts';
import { ALWAYS, cutTo, lasting } from './spans.ts';

export type Target = {
  readonly period: Span;
  /** The hours in which feed can run, with the rates of the order: holds are cut out already. */
  readonly open: readonly Stretch[];
  readonly wanted: Worked<Volume>;
  /** What the standing says of this period; null where it says nothing: then as planned from the beginning. */
  readonly received: { readonly at: Instant; readonly volume: Volume } | null;
  /** Whether the order asks for this volume. If not, it is only what its rate would have come to. */
  readonly stops: boolean;
  /** Why the order's own rate does not reach the volume, where that is known and no bar to making up is to blame. */
  readonly because: LossReason | null;
};

/** Whether lost volume may be made up, and how fast at most. */
export type CatchUp =
  | { readonly allowed: true; readonly most: Worked<Rate> }
  | { readonly allowed: false; readonly why: CatchUpBar };

type From = { readonly at: Instant; readonly received: Volume };

export const givesOf = (stretches: readonly Stretch[]): Volume =>
  stretches.reduce((total, one) => add(total, given(one.rate, lasting([one]))), NOTHING);

/** What rates come to in their hours: what the order would have given. */
export const comesTo = (stretches: readonly Stretch[]): Worked<Volume> =>
  worked(givesOf(stretches), shownVolume, {
    equation: 'V = Σ r × t',
    inputs: stretches.flatMap((one) => [
      input('r', shownRate(one.rate), { kind: 'working', working: one.working }),
      input('t', shownDuration(lasting([one])), ARITHMETIC),
    ]),
    symbol: 'V',
    rule: 'PR10',
    basis: ARITHMETIC,
  });

function splitAt(
  stretches: readonly Stretch[],
  at: Instant,
): readonly [readonly Stretch[], readonly Stretch[]] {
  return [
    cutTo(stretches, { from: ALWAYS.from, until: at }),
    cutTo(stretches, { from: at, until: ALWAYS.until }),
  ];
}

/** The first ms by which the stretches have given so much; the end of time if they never do. */
function reaches(stretches: readonly Stretch[], wanted: Volume): Instant {
  let left = wanted;
  if (left <= 0) return ALWAYS.from;
  for (const one of stretches) {
    const takes = timeToGive(left, one.rate);
    if (takes !== null && takes <= one.until - one.from) return (one.from + takes) as Instant;
    left = subtract(left, givesOf([one]));
  }
  return ALWAYS.until;
}

/** (wanted − received) / time left, down to the pump's step; zero time left gives no rate. [PR10] [PR13] */
function rateNeeded(frame: Frame, target: Target, from: From, most: Worked<Rate>): Worked<Rate> | null {
  const left = lasting(splitAt(target.open, from.at)[1]);
  if (left <= 0) return null;
  const step = frame.pumpStep;
  const exact = rateFor(subtract(target.wanted.value, from.received), left);
  const needed = rateDownTo(rate(Math.min(exact, most.value)), step.rate);
  return worked(needed, shownRate, {
    equation: 'r = min((V − V_received) / t_left, r_most)',
    inputs: [
      input('V', shownVolume(target.wanted.value), { kind: 'working', working: target.wanted.working }),
      input('V_received', shownVolume(from.received), ARITHMETIC),
      input('t_left', shownDuration(left), ARITHMETIC),
      input('r_most', shownRate(most.value), { kind: 'working', working: most.working }),
      input('r_step', shownRate(step.rate), step.basis),
    ],
    symbol: 'r',
    rounded: { way: 'down', step: inMlPerHour(step.rate) },
    rule: 'PR10',
    basis: { kind: 'published', source: 'S37', provenance: 'read' },
  });
}

/** What runs from a moment on, given what was received by then. */
function runFrom(frame: Frame, target: Target, catchUp: CatchUp, from: From): readonly Stretch[] {
  const ahead = splitAt(target.open, from.at)[1];
  const remaining = subtract(target.wanted.value, from.received);
  const behind = givesOf(ahead) < remaining;
  const needed = behind && catchUp.allowed ? rateNeeded(frame, target, from, catchUp.most) : null;
  const rates =
    needed === null
      ? ahead
      : ahead.map((one) =>
          needed.value > one.rate ? { ...one, rate: needed.value, working: needed.working } : one,
        );
  return target.stops || needed !== null ? splitAt(rates, reaches(rates, remaining))[0] : rates;
}

/** When the rate that runs was set, and what had been received then; null where nothing runs, or not in this period. */
function whenSet(frame: Frame, { period }: Target, now: From): From | null {
  const { running } = frame.standing;
  if (running === null || running.since < period.from || running.since > now.at) return null;
  const since = given(running.rate, between(running.since, now.at));
  return since > now.received ? null : { at: running.since, received: subtract(now.received, since) };
}

/** What was planned at an earlier moment and has been followed since; null if something else was done. */
function followed(planned: readonly Stretch[], then: From, now: From): readonly Stretch[] | null {
  const [done, toCome] = splitAt(planned, now.at);
  return add(then.received, givesOf(done)) === now.received ? toCome : null;
}

/**
 * What is still to run. A rate once set, and followed, stays, and so does the plan of the day: working the rate anew at
 * every look would move it by a step, because what rounding left undone grows against the time left. [PR19]
 */
function ahead(frame: Frame, target: Target, catchUp: CatchUp, now: From): readonly Stretch[] {
  const set = whenSet(frame, target, now);
  const sinceSet = set === null ? [] : runFrom(frame, target, catchUp, set);
  if (set !== null && sinceSet[0]?.rate === frame.standing.running?.rate) {
    const kept = followed(sinceSet, set, now);
    if (kept !== null) return kept;
  }
  const begun: From = { at: target.period.from, received: NOTHING };
  return followed(runFrom(frame, target, catchUp, begun), begun, now) ?? runFrom(frame, target, catchUp, now);
}

function whyShort(target: Target, catchUp: CatchUp, from: From, missing: Volume): LossReason {
  const open = splitAt(target.open, from.at)[1];
  if (open.length === 0) return 'no-time-left';
  if (catchUp.allowed) {
    const atMost = open.every((one) => one.rate >= catchUp.most.value);
    const needed = rateFor(subtract(target.wanted.value, from.received), lasting(open));
    return atMost || needed > catchUp.most.value ? 'ceiling' : 'rounding';
  }
  const fromTheBeginning = subtract(target.wanted.value, givesOf(target.open));
  return target.because !== null && missing <= fromTheBeginning ? target.because : catchUp.why;
}

function shortfall(target: Target, catchUp: CatchUp, from: From, runs: readonly Stretch[]): readonly Short[] {
  const planned = givesOf(runs);
  const missing = subtract(subtract(target.wanted.value, from.received), planned);
  if (missing <= 0) return [];
  const { value, working } = worked(missing, shownVolume, {
    equation: 'V_short = V − V_received − V_planned',
    inputs: [
      input('V', shownVolume(target.wanted.value), { kind: 'working', working: target.wanted.working }),
      input('V_received', shownVolume(from.received), ARITHMETIC),
      input('V_planned', shownVolume(planned), ARITHMETIC),
    ],
    symbol: 'V_short',
    rule: 'PR10',
    basis: ARITHMETIC,
  });
  return [{ ...target.period, volume: value, working, why: whyShort(target, catchUp, from, missing) }];
}

/** Feed that runs, the rest of the open hours once the volume is reached, and rates too small to set. */
function asRun(planned: readonly Stretch[], open: readonly Stretch[]): Draft {
  const reached = planned.at(-1)?.until ?? ALWAYS.from;
  return {
    pieces: planned.filter((one) => one.rate > 0).map(asPiece),
    missed: [
      ...missedFor(
        'nothing-to-set',
        planned.filter((one) => one.rate <= 0),
      ),
      ...missedFor('volume-reached', splitAt(open, reached)[1]),
    ],
    short: [],
  };
}

/** Before `received.at` what was planned from the beginning; from then on what is left to do. */
export function towards(frame: Frame, target: Target, catchUp: CatchUp): Draft {
  const begun: From = { at: target.period.from, received: NOTHING };
  const planned = runFrom(frame, target, catchUp, begun);
  if (target.received === null) {
    return { ...asRun(planned, target.open), short: shortfall(target, catchUp, begun, planned) };
  }
  const now: From = { at: target.received.at, received: target.received.volume };
  const toCome = ahead(frame, target, catchUp, now);
  const [before, after] = splitAt(target.open, now.at);
  return drafts([
    asRun(splitAt(planned, now.at)[0], before),
    { ...asRun(toCome, after), short: shortfall(target, catchUp, now, toCome) },
  ]);
}
