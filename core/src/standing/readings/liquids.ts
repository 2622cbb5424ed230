/**
 * What else went in and came out? Whole liquid volumes, each counted once: intake and output are one total, free water is
 * another, and they are never mixed. Feed is not here: it is in the delivery. [ST20]
 */
import type { Fraction } from '../../base/fraction.ts';
import type { Instant, Span } from '../../base/instant.ts';
import { add, NOTHING, subtract, type Volume } from '../../base/volume.ts';
import type { BodyFact, GivenFact, PumpFact } from '../../record/fact.ts';
import type { Stretch } from '../stretch.ts';
import { emptyTrail, grown, type Trail } from '../trail.ts';

export type IntakeKind = 'water' | 'medicine' | 'oral' | 'intravenous' | 'other';
export type OutputKind =
  | 'urine'
  | 'drain'
  | 'gastric-drainage'
  | 'stoma'
  | 'other'
  | 'vomit'
  | 'stool'
  | 'residual-discarded'
  | 'lost-from-tube';

export type Intake = Stretch & { readonly what: IntakeKind };
/** `volume: null`: it happened and nobody measured it. */
export type Output = { readonly at: Instant; readonly what: OutputKind; readonly volume: Volume | null };
/** Energy and protein that come without a volume of feed. */
export type Dose = {
  readonly at: Instant;
  readonly name: string;
  readonly energyKcal: Fraction;
  readonly proteinG: Fraction;
};
export type FeedLost = { readonly at: Instant; readonly volume: Volume };

export type LiquidsState = {
  readonly intake: Trail<Intake>;
  readonly output: Trail<Output>;
  readonly doses: Trail<Dose>;
  /** Feed that never reached the patient, and feed that came back out of the tube. */
  readonly lostBefore: Trail<FeedLost>;
  readonly lostFromTube: Trail<FeedLost>;
  /** The pump's counter of water, when it was last read, and what the bag now up has given by it. */
  readonly waterCounter: { readonly shows: Volume; readonly at: Instant | null; readonly ofBag: Volume };
};

export const beginLiquids = (): LiquidsState => ({
  intake: emptyTrail(),
  output: emptyTrail(),
  doses: emptyTrail(),
  lostBefore: emptyTrail(),
  lostFromTube: emptyTrail(),
  waterCounter: { shows: NOTHING, at: null, ofBag: NOTHING },
});

const tookIn = (
  state: LiquidsState,
  what: IntakeKind,
  { from, until }: Span,
  volume: Volume,
): LiquidsState =>
  volume > 0 ? { ...state, intake: grown(state.intake, { from, until, volume, what }) } : state;

const cameOut = (state: LiquidsState, what: OutputKind, at: Instant, volume: Volume | null): LiquidsState =>
  volume === 0 ? state : { ...state, output: grown(state.output, { at, what, volume }) };

const atOnce = (at: Instant): Span => ({ from: at, until: at });

type Given = Exclude<GivenFact, { readonly kind: 'feed-given/1' }>;

export function given(state: LiquidsState, fact: Given, at: Instant): LiquidsState {
  switch (fact.kind) {
    case 'water-given/1':
      return tookIn(state, 'water', atOnce(at), fact.volume);
    case 'medicine-given/1':
      return tookIn(state, 'medicine', atOnce(at), fact.volume);
    case 'module-given/1': {
      const { name, energyKcal, proteinG } = fact;
      return { ...state, doses: grown(state.doses, { at, name, energyKcal, proteinG }) };
    }
    case 'feed-lost/1':
      return lost(state, fact, at);
    case 'intake-measured/1': {
      const taken = tookIn(state, fact.route, atOnce(at), fact.volume);
      if (fact.energyKcal === null) return taken;
      const dose = { at, name: fact.route, energyKcal: fact.energyKcal, proteinG: { n: 0, d: 1 } };
      return { ...taken, doses: grown(taken.doses, dose) };
    }
  }
}

/** [ST7] [ST8] Before the patient it was never received; out of the tube it is output, once. */
function lost(
  state: LiquidsState,
  { where, volume }: Extract<GivenFact, { readonly kind: 'feed-lost/1' }>,
  at: Instant,
): LiquidsState {
  if (where === 'before-patient') return { ...state, lostBefore: grown(state.lostBefore, { at, volume }) };
  const out = cameOut(state, 'lost-from-tube', at, volume);
  return { ...out, lostFromTube: grown(out.lostFromTube, { at, volume }) };
}

/** [ST21] Residual that was returned is neither intake nor output; what was thrown away is output. */
export function body(state: LiquidsState, fact: BodyFact, at: Instant): LiquidsState {
  switch (fact.kind) {
    case 'residual-checked/1':
      return cameOut(state, 'residual-discarded', at, fact.discarded);
    case 'vomited/1':
      return cameOut(state, 'vomit', at, fact.volume);
    case 'stool-passed/1':
      return cameOut(state, 'stool', at, fact.volume);
    case 'output-measured/1':
      return cameOut(state, fact.what, at, fact.volume);
    default:
      return state;
  }
}

type CounterFact = Extract<PumpFact, { readonly kind: 'counter-read/1' | 'counter-cleared/1' }>;

export const isWaterFallen = ({ waterCounter }: LiquidsState, shows: Volume | null): boolean =>
  shows !== null && shows < waterCounter.shows;

/** Water that the pump counted since the last reading, evenly over that time; cleared unread it is not known. */
export function readWaterCounter(state: LiquidsState, fact: CounterFact, at: Instant): LiquidsState {
  const shows = fact.kind === 'counter-read/1' ? fact.volume : fact.read;
  const { waterCounter: last } = state;
  const known = shows !== null && !isWaterFallen(state, shows);
  const counted = known ? subtract(shows, last.shows) : NOTHING;
  const then = fact.kind === 'counter-read/1' ? fact.volume : NOTHING;
  const waterCounter = { shows: then, at, ofBag: add(last.ofBag, counted) };
  return tookIn({ ...state, waterCounter }, 'water', { from: last.at ?? at, until: at }, counted);
}

export const changeWaterBag = (state: LiquidsState): LiquidsState => ({
  ...state,
  waterCounter: { ...state.waterCounter, ofBag: NOTHING },
});
