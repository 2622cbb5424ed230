/**
 * How fast does it run by gravity, how long does it take, and does it run at all?
 * Always a band, never a promise: bore goes in by its fourth power and the stomach pushes back. Nothing here is a dose, a
 * rate to set or a limit; the only limit it is held against is the order's or local policy's, and the answer then says
 * that it is an estimate which was compared.
 */
import { bad, issue, ok, type Result } from '../../base/result.ts';
import type { Basis } from '../../base/working.ts';
import type { Inputs } from '../asking/keys.ts';
import { compare, toDouble as float, of, over } from '../exact.ts';
import { type GravityGiven, readGravity } from './asks.ts';
import { type Belief, ends, middle, type Setup, type Timed, timeOneBarrel, unread } from './band.ts';
import { flowWith, pours, type Run, type Stretch } from './emptying.ts';
import {
  type AtHeight,
  type BandedCurve,
  bandedCurve,
  changeBy,
  flowByHeight,
  heightFor,
  overEnds,
  PER_MINUTE,
  secondsOf,
  surfaceOf,
  waterFlow,
} from './estimate.ts';
import { type Banded, banded, type From, published } from './figures.ts';
import { againstPolicy, type Finding, type Least, runningFindings } from './findings.ts';
import type { Spread } from './fluid.ts';
import { holds, leavesLaminar, reynoldsAt } from './loss.ts';
import { type Assumption, balanceCm, CM_WATER, describe } from './setup.ts';

export type GravityFlow = {
  readonly kind: 'flow';
  /** At the height given, as first filled. mL/min. */
  readonly flow: Banded;
  /** min for the whole feed, with its top-ups; null at an end where it stops before. */
  readonly time: Banded;
  /** How many times it is filled. */
  readonly pours: number;
  /** By how many % the flow changes 10 cm higher and lower; null where nothing runs to begin with. */
  readonly higher: Banded;
  readonly lower: Banded;
  /** cm over the stomach at which it stands still; below, it runs back. */
  readonly standsAt: Banded;
  /** cm for the time wanted; null where nothing was wanted. */
  readonly heightFor: Banded | null;
  /** mL that fill the tubes. */
  readonly priming: Banded;
  /** mL/min of water in the same tubes at the same height: a fast flush says nothing about the feed. */
  readonly water: Banded;
  /** mL/min by height, with its band. */
  readonly byHeight: readonly AtHeight[];
  /** cm from which it surely runs, to which one feed takes its least time; null where that is not known or beyond reach. */
  readonly useful: { readonly from: number; readonly to: number | null };
  /** SI; of one filling, by even steps of volume. */
  readonly curve: BandedCurve;
  /** s, of the time in the middle: how far the sum may be from the equations it sums. */
  readonly error: number;
  readonly reynolds: number;
  readonly findings: readonly Finding[];
  readonly assumptions: readonly Assumption[];
};
/** Food made liquid: yes or no and no more. */
export type GravityYesOrNo = {
  readonly kind: 'yes-or-no';
  readonly answer: 'yes-maybe' | 'doubtful' | 'no' | 'not-known';
  readonly assumptions: readonly Assumption[];
};
export type Gravity = GravityFlow | GravityYesOrNo;

const TEN_CM = 0.1;
const DAYS_NEWBORN = 28;
const DAYS_INFANT = 365;
/** mPa·s at 50 1/s, above which gravity is no method for food made liquid: worked out for 14–24 Fr over 25 cm. */
const BLENDED_NO = 300;
/** Deviations from which a timed pour no longer fits the set-up described. */
const STRANGE = 3;

/** cm at which the likeliest time is the least one allowed; null where that is not known or over two metres. */
function highest(setup: Setup, belief: Belief, stretches: readonly Stretch[], least: Least): number | null {
  if (least === null) return null;
  const { mid } = heightFor(setup, belief, stretches, least.lasts / 1000);
  return Number.isFinite(mid) ? mid : null;
}

/** @returns the range of the answer to blended feed, from its viscosity at 50 1/s. [GR6] */
function yesOrNo(setup: Setup | null): GravityYesOrNo['answer'] {
  if (setup === null) return 'not-known';
  const { low, high } = setup.consistency;
  const apparent = (k: number): number => k * 50 ** (setup.index - 1) * 1e3;
  if (apparent(low) > BLENDED_NO) return 'no';
  return apparent(high) > BLENDED_NO ? 'doubtful' : 'yes-maybe';
}

function learned(given: GravityGiven, setup: Setup, findings: Finding[]): Result<Belief> {
  if (given.timedMin === null) {
    return given.timedMl === null
      ? ok(unread(setup))
      : bad(issue(['timedMin'], 'reckon/missing', { unit: 'min' }));
  }
  const from = filled(given, setup);
  const whole = given.timedMl === null ? from : float(given.timedMl) * 1e-6;
  if (whole > from * (1 + 1e-9)) return bad(issue(['timedMl'], 'gravity/timed-too-much', { mL: from * 1e6 }));
  const timed: Timed = { from, to: Math.max(0, from - whole), seconds: float(given.timedMin) * 60 };
  const found = timeOneBarrel(setup, timed);
  if (!found.ok) return found;
  findings.push({ code: 'timed', data: { mL: whole * 1e6, min: timed.seconds / 60 } });
  if (Math.abs(found.value.surprise) > STRANGE)
    findings.push({ code: found.value.surprise > 0 ? 'timed-slower' : 'timed-faster', data: {} });
  return ok(found.value.belief);
}

/** m³ in the vessel to begin with. */
const filled = ({ feedMl }: GravityGiven, { vessel }: Setup): number =>
  feedMl === null ? vessel.volume : Math.min(vessel.volume, float(feedMl) * 1e-6);

function inputsOf(given: GravityGiven, { tubes, vessel }: Setup, run: Run): readonly From[] {
  const [usual, { fluid }] = [published('H40'), run.line];
  const asked = (name: string): Basis => ({ kind: 'asked', name });
  const feed = (['viscosityMpas', 'consistency'] as const).find((key) => given[key] !== null);
  const basisOfFeed = feed
    ? asked(feed)
    : published(given.feed === 'water' ? 'H6' : given.leftMl ? 'H11' : 'H40');
  const boreKey = {
    tube: 'boreMm',
    'giving-set': 'setMm',
    extension: 'extensionMm',
    connector: null,
  } as const;
  return [
    ['H', float(given.heightCm), 'cm', asked('heightCm')],
    [
      'P',
      run.back / CM_WATER,
      'cm[H2O]',
      given.stomachCmH2O === null ? published('H15') : asked('stomachCmH2O'),
    ],
    ['K', fluid.consistency * 1e3, fluid.index === 1 ? 'mPa.s' : 'mPa.s^n', basisOfFeed],
    ...(fluid.index === 1 ? [] : [['n', fluid.index, '1', asked('flowIndex')] as const]),
    ['ρ', fluid.density, 'kg/m3', given.feed === 'water' ? published('H41') : usual],
    ...(run.factor === 1 ? [] : [['c', run.factor, '1', asked('timedMin')] as const]),
    ...tubes.flatMap(({ what, length }, place): readonly From[] => {
      const key = boreKey[what];
      return [
        [`d ${what}`, (run.reaches[place]?.bore ?? 0) * 1e3, 'mm', key && given[key] ? asked(key) : usual],
        [`L ${what}`, length * 100, 'cm', what === 'connector' ? usual : asked('lengthCm')],
      ];
    }),
    ['A', vessel.area * 1e4, 'cm2', given.barrelMm === null ? usual : asked('barrelMm')],
  ];
}

/** c is what a timed pour puts the whole flow right by; 1 and left out without one. */
const balanceOf = ({ factor }: Run): string =>
  `ρ g H − P = Σ ½ ρ v² (f L/d + K_in + K_out), v = Q / ${factor === 1 ? '' : 'c '}¼ π d²`;

function flowing(
  given: GravityGiven,
  setup: Setup,
  belief: Belief,
  least: Least,
  before: readonly Finding[],
): Omit<GravityFlow, 'assumptions'> {
  const { vessel } = setup;
  const first = filled(given, setup);
  const total = given.feedMl === null ? vessel.volume : float(given.feedMl) * 1e-6;
  const stretches = pours(total, vessel, float(given.topUpMl) * 1e-6);
  const all = ends(setup, belief, first);
  const flow = overEnds((end) => flowWith(all[end], vessel, first) * PER_MINUTE);
  const change = (by: number) => changeBy(setup, belief, first, by);
  const inOrder = ({ low, mid, high }: Spread): Spread => ({
    low: Math.min(low, high),
    mid,
    high: Math.max(low, high),
  });
  const seconds = secondsOf(setup, belief, stretches);
  const inMinutes = { low: seconds.low / 60, mid: seconds.mid / 60, high: seconds.high / 60 };
  const balance = balanceCm(setup);
  const from = inputsOf(given, setup, middle(setup, belief));
  const wanted = given.wantedMin;
  const reynolds = flow.mid > 0 ? reynoldsAt(all.mid.line, flow.mid / PER_MINUTE) : 0;
  return {
    kind: 'flow',
    flow: banded(['Q', 'mL/min', balanceOf(all.mid), 'H36'], flow, from),
    time: banded(['t', 'min', 't = ∫ dV / Q(V)', 'H36'], inMinutes, from),
    pours: stretches.length,
    higher: banded(['ΔQ', '%', 'ΔQ = Q(H + 10 cm) / Q(H) − 1', 'H36'], inOrder(change(TEN_CM)), from),
    lower: banded(['ΔQ', '%', 'ΔQ = Q(H − 10 cm) / Q(H) − 1', 'H36'], inOrder(change(-TEN_CM)), from),
    standsAt: banded(['H₀', 'cm', 'H₀ = P / (ρ g)', 'H15'], balance, from),
    heightFor:
      wanted === null
        ? null
        : banded(
            ['H', 'cm', 't(H) = t', 'H36'],
            inOrder(heightFor(setup, belief, stretches, float(wanted) * 60)),
            from,
          ),
    priming: banded(['V', 'mL', 'V = Σ ¼ π d² L', 'H36'], primed(setup), from),
    water: banded(['Q_w', 'mL/min', balanceOf(all.mid), 'H38'], waterFlow(setup, all, first), from),
    byHeight: flowByHeight(setup, belief, first),
    useful: {
      from: balance.high,
      to: highest(setup, belief, stretches, given.feedMl === null ? null : least),
    },
    curve: bandedCurve(setup, belief, first),
    error: seconds.error,
    reynolds,
    findings: [
      ...before,
      ...runningFindings(flow, balance, surfaceOf(setup, first)),
      ...(given.feedMl === null ? [{ code: 'whole-feed-unsaid', data: {} }] : againstPolicy(seconds, least)),
      ...(reynolds > leavesLaminar(setup.index) ? [{ code: 'not-laminar', data: { reynolds } }] : []),
    ],
  };
}

const primed = ({ tubes }: Setup): Spread =>
  overEnds((end) => holds(tubes.map(({ bore, length }) => ({ bore: bore[end], length }))) * 1e6);

/**
 * Works it out. [GR5, GR6]
 * @param inputs keys of `GRAVITY_ASKS` as people write them.
 * @returns everything that is missing or will not do; or the answer. Not offered to the newborn or past the stomach.
 */
export function gravityOf(inputs: Inputs, least: (ageDays: number) => Least): Result<Gravity> {
  const read = readGravity(inputs);
  if (!read.ok) return read;
  const { given } = read.value;
  // Exact: whether somebody is newborn is decided on whole days, not on a float.
  if (compare(given.ageYears, over(of(DAYS_NEWBORN * 24), of(8766))) < 0)
    return bad(issue(['ageYears'], 'gravity/newborn'));
  if (given.tip !== 'gastric') return bad(issue(['tip'], 'gravity/past-the-stomach'));
  const described = describe(given);
  if (!described.ok) return described;
  const { setup, assumptions } = described.value;
  if (given.feed === 'blended') return ok({ kind: 'yes-or-no', answer: yesOrNo(setup), assumptions });
  if (setup === null) return bad(issue(['viscosityMpas'], 'gravity/viscosity-missing'));
  const days = Math.floor(float(given.ageYears) * 365.25);
  const findings: Finding[] = days < DAYS_INFANT ? [{ code: 'infant', data: {} }] : [];
  const belief = learned(given, setup, findings);
  if (!belief.ok) return belief;
  return ok({ ...flowing(given, setup, belief.value, least(days), findings), assumptions });
}
