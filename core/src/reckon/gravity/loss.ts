/**
 * How much pressure does it take to push so much through tubes in a row? Friction after Churchill, what is lost where
 * each begins and ends, and the general Reynolds number of Metzner and Reed for feeds that thin as they move. SI.
 */
import type { Fluid } from './fluid.ts';

export type Reach = { readonly bore: number; readonly length: number };

/** A line made ready: what does not change with the flow is worked out once. */
type Made = {
  readonly area: number;
  /** Reynolds number at 1 m/s. */
  readonly reynolds: number;
  readonly bores: number;
  readonly entry: number;
  readonly exit: number;
};
export type Line = {
  readonly fluid: Fluid;
  readonly reaches: readonly Made[];
  /** Kinetic energy of a laminar stream over that of a flat one. */
  readonly alpha: number;
  /** Whatever else resists, in Pa per (m³/s)²: a test rig, not a tube. */
  readonly rig: number;
};

/** Below it the rest of Churchill's sum is under 1e-13 of 64/Re. */
const PLAINLY_LAMINAR = 1000;

/** Darcy's friction factor of a smooth tube in all regimes: Churchill 1977 (H38, from memory). [GR2] */
export function friction(re: number): number {
  if (re < PLAINLY_LAMINAR) return 64 / re;
  const a = (2.457 * Math.log((re / 7) ** 0.9)) ** 16;
  const b = (37_530 / re) ** 16;
  return 8 * ((8 / re) ** 12 + (a + b) ** -1.5) ** (1 / 12);
}

/** Re of Metzner and Reed at 1 m/s; for n = 1 it is ρ d / μ. */
const reynoldsAtOne = ({ density, consistency, index: n }: Fluid, bore: number): number =>
  (density * bore ** n) / (8 ** (n - 1) * consistency * ((3 * n + 1) / (4 * n)) ** n);

/** Where a feed that thins is laminar no more, after Ryan and Johnson as rounded in H39; beyond it this model is silent. */
export const leavesLaminar = (index: number): number => (index === 1 ? 2000 : 3470 - 1370 * index);

const ENTRY_LAMINAR = 0.28;
const ENTRY_TURBULENT = 0.5;

const areaOf = (bore: number): number => (Math.PI / 4) * bore * bore;

/** The row of tubes between two wide vessels, the upper one first. */
export function lineOf(fluid: Fluid, reaches: readonly Reach[], rig = 0): Line {
  const areas = [
    Number.POSITIVE_INFINITY,
    ...reaches.map(({ bore }) => areaOf(bore)),
    Number.POSITIVE_INFINITY,
  ];
  const n = fluid.index;
  return {
    fluid,
    rig,
    alpha: (3 * (3 * n + 1) ** 2) / ((2 * n + 1) * (5 * n + 3)),
    reaches: reaches.map(({ bore, length }, place) => {
      const [above = 1, area = 1, below = 1] = areas.slice(place, place + 3);
      return {
        area,
        reynolds: reynoldsAtOne(fluid, bore),
        bores: length / bore,
        // A widening costs nothing on the way in, a narrowing nothing on the way out.
        entry: Math.max(0, 1 - area / above),
        exit: Math.max(0, 1 - area / below) ** 2,
      };
    }),
  };
}

/** Pa that a flow of q m³/s > 0 needs. Grows with q. [GR2] */
export function lossOf({ fluid, reaches, alpha, rig }: Line, q: number): number {
  const { index, density } = fluid;
  let sum = rig * q * q;
  for (const one of reaches) {
    const v = q / one.area;
    const re = one.reynolds * (index === 1 ? v : v ** (2 - index));
    const f = index === 1 ? friction(re) : 64 / re;
    const turbulent = index === 1 ? Math.min(1, Math.max(0, re / 2000 - 1)) : 0;
    const entry = ENTRY_LAMINAR + (ENTRY_TURBULENT - ENTRY_LAMINAR) * turbulent;
    const exit = alpha + (1 - alpha) * turbulent;
    sum += ((density * v * v) / 2) * (f * one.bores + entry * one.entry + exit * one.exit);
  }
  return sum;
}

/** The greatest Reynolds number along the line. */
export const reynoldsAt = ({ fluid, reaches }: Line, q: number): number =>
  Math.max(...reaches.map((one) => one.reynolds * (q / one.area) ** (2 - fluid.index)));

/** m³ that the line holds. */
export const holds = (reaches: readonly Reach[]): number =>
  reaches.reduce((sum, { bore, length }) => sum + areaOf(bore) * length, 0);
