/** What does an answer about gravity look like to a program? Plain numbers in the units of their keys, and the codes. */
import { approximately, type Fraction } from '../../base/fraction.ts';
import type { Point } from '../../reckon/gravity/emptying.ts';
import type { AtHeight } from '../../reckon/gravity/estimate.ts';
import type { Banded } from '../../reckon/gravity/figures.ts';
import type { Gravity } from '../../reckon/gravity/gravity.ts';
import { BEDSIDE, DEFERS } from './english.ts';

const number = (value: Fraction | null): number | null => (value === null ? null : approximately(value));

const bandJson = ({ unit, low, mid, high, working }: Banded) => ({
  unit,
  low: number(low),
  mid: number(mid),
  high: number(high),
  equation: working.equation,
  source: working.basis.kind === 'published' ? working.basis.source : null,
});

/** To a tenth of a second and of a millilitre: a picture's worth. */
const pointJson = ({ seconds, volume, flow }: Point) => ({
  minutes: Number((seconds / 60).toFixed(3)),
  mL: Number((volume * 1e6).toFixed(1)),
  mLPerMin: twoDigits(flow * 6e7),
});

const twoDigits = (value: number): number => Number(value.toPrecision(2));

const atHeightJson = ({ cm, flow }: AtHeight) => ({
  cm,
  low: twoDigits(flow.low),
  mid: twoDigits(flow.mid),
  high: twoDigits(flow.high),
});

export function gravityJson(of: Gravity): unknown {
  if (of.kind === 'yes-or-no') return { ...of, note: DEFERS };
  const { flow, time, higher, lower, standsAt, heightFor, priming, water, curve } = of;
  return {
    kind: of.kind,
    flow: bandJson(flow),
    time: bandJson(time),
    pours: of.pours,
    higher: bandJson(higher),
    lower: bandJson(lower),
    standsAt: bandJson(standsAt),
    heightFor: heightFor === null ? null : bandJson(heightFor),
    priming: bandJson(priming),
    water: bandJson(water),
    byHeight: of.byHeight.map(atHeightJson),
    useful: {
      fromCm: twoDigits(of.useful.from),
      toCm: of.useful.to === null ? null : twoDigits(of.useful.to),
    },
    errorSeconds: of.error,
    reynolds: twoDigits(of.reynolds),
    curve: { low: curve.low.map(pointJson), mid: curve.mid.map(pointJson), high: curve.high.map(pointJson) },
    findings: of.findings,
    assumptions: of.assumptions,
    atTheBedside: BEDSIDE,
    note: DEFERS,
  };
}
