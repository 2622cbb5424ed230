/**
 * How thick and how heavy is what runs? Water by published formulation, feeds by class, by measurement, or by what is
 * left in a syringe. SI throughout: kg/m³, Pa·s, °C.
 * Floats are right in this folder: it is physics with a band of a factor of two, and nothing here decides a dose.
 */

/** A 90 % band about the likeliest value. */
export type Spread = { readonly low: number; readonly mid: number; readonly high: number };

export const scaled = ({ low, mid, high }: Spread, by: number): Spread => ({
  low: low * by,
  mid: mid * by,
  high: high * by,
});

export const about = (mid: number, share: number): Spread => ({
  low: mid * (1 - share),
  mid,
  high: mid * (1 + share),
});

/** Shear stress is K γ̇ⁿ; an index of 1 is a liquid with one viscosity, K itself. */
export type Fluid = {
  readonly density: number;
  /** Pa·sⁿ */
  readonly consistency: number;
  readonly index: number;
};

const WATER_TERMS = [
  [280.68, -1.9],
  [511.45, -7.7],
  [61.131, -19.6],
  [0.45903, -40],
] as const;

/** Pa·s at 0.1 MPa, −20 to 110 °C: IAPWS SR6-08 (H6, coefficients from memory, checked against published points). [GR1] */
export const waterViscosity = (celsius: number): number =>
  WATER_TERMS.reduce((sum, [a, b]) => sum + a * ((celsius + 273.15) / 300) ** b, 0) * 1e-6;

/** kg/m³ of air-free water, 0 to 100 °C: Kell's rational form (H41, from memory, checked against published points). [GR1] */
export function waterDensity(t: number): number {
  const above =
    999.83952 +
    t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))));
  return above / (1 + 16.87985e-3 * t);
}

export const water = (celsius: number): Fluid => ({
  density: waterDensity(celsius),
  consistency: waterViscosity(celsius),
  index: 1,
});

export type FeedClass = 'standard-1.0' | 'energy-1.5' | 'energy-2.0';

/** At 20 °C; viscosity in mPa·s, density in kg/m³: H40, from memory. 13 feeds of the 1980s had 1.9–28 (H1). */
export const FEED_CLASSES: Readonly<Record<FeedClass, { viscosity: Spread; density: number }>> = {
  'standard-1.0': { viscosity: { low: 5, mid: 8, high: 15 }, density: 1035 },
  'energy-1.5': { viscosity: { low: 15, mid: 25, high: 40 }, density: 1065 },
  'energy-2.0': { viscosity: { low: 50, mid: 80, high: 120 }, density: 1095 },
};

export const ROOM_CELSIUS = 20;
/** A degree takes 2.6 % off: between what the thickest and the thinnest feed lost from 24 to 37 °C (H1). */
const PER_KELVIN = -0.026;

/** How many times as thick a feed is as at another temperature. */
export const thickerAt = (celsius: number, than = ROOM_CELSIUS): number =>
  Math.exp(PER_KELVIN * (celsius - than));
