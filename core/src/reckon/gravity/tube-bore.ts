/**
 * How wide is the tube inside? French size is the outside. The bore by construction, as a band, in mm: from memory (H40);
 * pin-gauged drains of 8 and 10 Fr agree within 1 %, 6 Fr is 9 % wider and 12 Fr 10 % narrower than polyurethane's middle
 * here (H2). Stated bores of 12 nasogastric tubes were 88–119 % of the true ones (H1).
 */
import type { Spread } from './fluid.ts';

export type Material = 'polyurethane' | 'silicone' | 'pvc';

type Row = readonly [french: number, low: number, mid: number, high: number];

/** Of PVC only a middle is at hand; its band is taken as wide as polyurethane's, in proportion. */
const PVC_SHARE = 0.12;
const pvc = (french: number, mid: number): Row => [french, mid * (1 - PVC_SHARE), mid, mid * (1 + PVC_SHARE)];

const BORES: Readonly<Record<Material, readonly Row[]>> = {
  polyurethane: [
    [5, 0.9, 1.1, 1.2],
    [6, 1.1, 1.35, 1.5],
    [8, 1.6, 1.9, 2.05],
    [10, 2.1, 2.45, 2.6],
    [12, 2.6, 2.9, 3.2],
    [14, 3.1, 3.4, 3.7],
    [16, 3.5, 3.9, 4.2],
    [18, 3.9, 4.3, 4.7],
    [20, 4.3, 4.8, 5.3],
  ],
  silicone: [
    [8, 1.3, 1.5, 1.7],
    [10, 1.7, 2.0, 2.3],
    [12, 2.0, 2.4, 2.8],
    [14, 2.4, 2.9, 3.2],
    [16, 2.8, 3.3, 3.8],
    [18, 3.2, 3.7, 4.3],
    [20, 3.6, 4.2, 4.8],
    [22, 4.0, 4.6, 5.3],
    [24, 4.4, 5.1, 5.8],
  ],
  pvc: [
    pvc(5, 1.0),
    pvc(6, 1.2),
    pvc(8, 1.7),
    pvc(10, 2.2),
    pvc(12, 2.7),
    pvc(14, 3.2),
    pvc(16, 3.7),
    pvc(18, 4.2),
    pvc(20, 4.7),
  ],
};

/** In mm; null where no bore is known for that size in that material: it is asked for, never guessed. [GR6] */
export function boreOf(french: number, material: Material): Spread | null {
  const row = BORES[material].find(([size]) => size === french);
  return row === undefined ? null : { low: row[1], mid: row[2], high: row[3] };
}

export const sizesOf = (material: Material): readonly number[] => BORES[material].map(([size]) => size);
