/**
 * When did feed stand still that was running, why, and what did that cost? Minutes, reason and mL at the rate it had run. A
 * feed that came to its end is no interruption. [ST12]
 */
import { between, type Duration, type Instant, later, type Span } from '../../base/instant.ts';
import { given, type Rate, type Volume } from '../../base/volume.ts';
import type { PauseReason } from '../../record/fact.ts';
import { emptyTrail, grown, type Trail, told } from '../trail.ts';

type Open = { readonly from: Instant; readonly reason: PauseReason; readonly rate: Rate | null };
type Over = Open & { readonly until: Instant };

export type InterruptionsState = { readonly open: Open | null; readonly over: Trail<Over> };

export type Interruption = Span & {
  readonly reason: PauseReason;
  readonly lasted: Duration;
  /** What would have run at the rate before; null where no rate is known, or it stood still for years. */
  readonly lost: Volume | null;
  /** It is not over. */
  readonly open: boolean;
};

export const beginInterruptions = (): InterruptionsState => ({ open: null, over: emptyTrail() });

export function endInterruption(state: InterruptionsState, until: Instant): InterruptionsState {
  const { open, over } = state;
  if (open === null) return state;
  return { open: null, over: until > open.from ? grown(over, { ...open, until }) : over };
}

/** Where it stood still already the reason changes, and nothing is counted twice. */
export const interrupt = (
  state: InterruptionsState,
  from: Instant,
  reason: PauseReason,
  rate: Rate | null,
): InterruptionsState => ({ ...endInterruption(state, from), open: { from, reason, rate } });

const wouldHaveRun = (rate: Rate | null, lasted: Duration): Volume | null =>
  rate === null || !Number.isSafeInteger(rate * lasted) ? null : given(rate, lasted);

const shown = ({ from, until, reason, rate }: Over, span: Span, open: boolean): Interruption => {
  const part = { from: later(from, span.from), until: until < span.until ? until : span.until };
  const lasted = between(part.from, part.until);
  return { ...part, reason, lasted, lost: wouldHaveRun(rate, lasted), open };
};

/** Each cut to the span, in order; the open one up to its end. */
export function interruptionsWithin({ open, over }: InterruptionsState, span: Span): readonly Interruption[] {
  const meets = (one: Span): boolean => one.from < span.until && one.until > span.from;
  const past = told(over)
    .filter(meets)
    .map((one) => shown(one, span, false));
  if (open === null || open.from >= span.until) return past;
  return [...past, shown({ ...open, until: span.until }, span, true)];
}
