/**
 * How long until it is empty? The pressure falls with the level, and the flow with the pressure.
 * Time is A/(ρg) ∫ dp/Q. The loss p is known for every Q, so the flow is the variable and no equation is solved on the
 * way: by parts, ∫ dp/Q = p₀/Q₀ − p₁/Q₁ + ∫ (p/Q) d ln Q, whose integrand is all but constant for a laminar feed.
 * A pair of Gauss and Kronrod gives value and error. SI.
 */
import { flowUnder, GRAVITY } from './flow.ts';
import { type Line, lossOf, type Reach } from './loss.ts';

/** A barrel, or a bag that collapses evenly: straight sides. */
export type Vessel = {
  readonly volume: number;
  readonly area: number;
  /** Of the surface over the stomach when it is full. */
  readonly height: number;
};

/** What runs, against what: `back` is the stomach's pressure in Pa, `factor` what the whole flow is out by. */
export type Run = {
  readonly reaches: readonly Reach[];
  readonly line: Line;
  readonly back: number;
  readonly factor: number;
};

export type Lasts =
  | { readonly ends: true; readonly seconds: number; readonly error: number }
  /** It stops by itself with `left` m³ still in it. */
  | { readonly ends: false; readonly left: number };

/** The seven nodes of Kronrod about the three of Gauss, from the outside in; the last is the middle. */
const NODES = [0.9604912687080202, 0.7745966692414834, 0.4342437493468026, 0] as const;
const KRONROD = [0.1046562260264673, 0.2684880898683334, 0.4013974147759622, 0.4509165386584741] as const;
const GAUSS = [0, 5 / 9, 0, 8 / 9] as const;

type Sum = { readonly value: number; readonly error: number };

/** Counted, not walked: this is the inner loop. */
function pair(of: (x: number) => number, from: number, to: number): Sum {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  const last = NODES.length - 1;
  const centre = of(middle);
  let [fine, coarse] = [(KRONROD[last] ?? 0) * centre, (GAUSS[last] ?? 0) * centre];
  for (let place = 0; place < last; place++) {
    const step = half * (NODES[place] ?? 0);
    const y = of(middle - step) + of(middle + step);
    fine += (KRONROD[place] ?? 0) * y;
    coarse += (GAUSS[place] ?? 0) * y;
  }
  return { value: fine * half, error: Math.abs((fine - coarse) * half) };
}

const CLOSE = 1e-7;
const MOST_HALVINGS = 12;

/** Halves where the pair disagrees by more than a ten-millionth; the error is their whole disagreement. [GR4] */
function integral(of: (x: number) => number, from: number, to: number, halvings = 0): Sum {
  const whole = pair(of, from, to);
  if (whole.error <= CLOSE * Math.abs(whole.value) || halvings === MOST_HALVINGS) return whole;
  const middle = (from + to) / 2;
  const [first, second] = [integral(of, from, middle, halvings + 1), integral(of, middle, to, halvings + 1)];
  return { value: first.value + second.value, error: first.error + second.error };
}

/** Pa that drive the flow while `volume` is in the vessel. */
export const driving = ({ line, back }: Run, vessel: Vessel, volume: number): number =>
  line.fluid.density * GRAVITY * (vessel.height - (vessel.volume - volume) / vessel.area) - back;

/** m³/s while `volume` is in the vessel. */
export const flowWith = (run: Run, vessel: Vessel, volume: number, near = 0): number =>
  flowUnder(run.line, driving(run, vessel, volume), near) * run.factor;

/** From one volume in the vessel down to another. [GR4] */
export function lasts(run: Run, vessel: Vessel, from: number, to: number, near = 0): Lasts {
  const { line, factor } = run;
  const [above, below] = [driving(run, vessel, from), driving(run, vessel, to)];
  if (from <= to) return { ends: true, seconds: 0, error: 0 };
  const weight = line.fluid.density * GRAVITY;
  if (!(below > 0)) return { ends: false, left: Math.min(from, to - (below * vessel.area) / weight) };
  const fast = flowUnder(line, above, near);
  const slow = flowUnder(line, below, (fast * below) / above);
  const resistance = (x: number): number => {
    const q = Math.exp(x);
    return lossOf(line, q) / q;
  };
  const rest = integral(resistance, Math.log(slow), Math.log(fast));
  const scale = vessel.area / weight / factor;
  return {
    ends: true,
    seconds: scale * (above / fast - below / slow + rest.value),
    error: scale * rest.error,
  };
}

export type Point = { readonly seconds: number; readonly volume: number; readonly flow: number };

/** The level as it falls from `first`, in even steps of volume, until it is empty or stops. */
export function curve(run: Run, vessel: Vessel, first: number, steps: number): readonly Point[] {
  let [seconds, flow] = [0, flowWith(run, vessel, first)];
  const points: Point[] = [{ seconds, volume: first, flow }];
  for (let step = 1; step <= steps; step++) {
    const [from, to] = [first * (1 - (step - 1) / steps), first * (1 - step / steps)];
    const one = lasts(run, vessel, from, to, flow / run.factor);
    if (!one.ends) return points;
    seconds += one.seconds;
    flow = flowWith(run, vessel, to, flow / run.factor);
    points.push({ seconds, volume: to, flow });
  }
  return points;
}

/** One stretch of running between two fillings, as volumes in the vessel. */
export type Stretch = { readonly from: number; readonly to: number };

/**
 * A feed larger than the barrel, in several pours: filled, let run down to `topUpAt`, filled again, until all is in, and
 * then let run empty. `topUpAt` is less than the vessel holds. [GR7]
 */
export function pours(total: number, vessel: Vessel, topUpAt: number): readonly Stretch[] {
  let within = Math.min(total, vessel.volume);
  let waiting = total - within;
  const stretches: Stretch[] = [];
  while (waiting > 1e-12) {
    stretches.push({ from: within, to: topUpAt });
    const added = Math.min(waiting, vessel.volume - topUpAt);
    within = topUpAt + added;
    waiting -= added;
  }
  return [...stretches, { from: within, to: 0 }];
}

/** All stretches together; `left` counts what waits to be poured as well. [GR7] */
export function lastsInPours(run: Run, vessel: Vessel, stretches: readonly Stretch[]): Lasts {
  const known = new Map<string, Lasts>();
  let [seconds, error] = [0, 0];
  for (const [place, { from, to }] of stretches.entries()) {
    const name = `${from} ${to}`;
    const one = known.get(name) ?? lasts(run, vessel, from, to);
    known.set(name, one);
    if (!one.ends) {
      const waiting = stretches
        .slice(place + 1)
        .reduce((sum, next, i) => sum + next.from - (stretches[place + i]?.to ?? 0), 0);
      return { ends: false, left: one.left + waiting };
    }
    seconds += one.seconds;
    error += one.error;
  }
  return { ends: true, seconds, error };
}
