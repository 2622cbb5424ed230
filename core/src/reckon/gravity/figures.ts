/** How is an estimate shown? With one or two figures and its band, and its working made from the very figure shown. */
import { type Fraction, fraction } from '../../base/fraction.ts';
import { type Basis, input, shownChoice, shownNumber, type Working } from '../../base/working.ts';
import type { HydraulicId } from './sources.ts';
import { HYDRAULICS } from './sources.ts';

export type Banded = {
  readonly unit: string;
  /** Null where it never comes to that: it stops before. */
  readonly low: Fraction | null;
  readonly mid: Fraction | null;
  readonly high: Fraction | null;
  readonly working: Working;
};

/** Two figures, as an exact fraction; null for what is no finite number. [GR9] */
export function twoFigures(value: number): Fraction | null {
  if (!Number.isFinite(value)) return null;
  const rounded = Number(value.toPrecision(2));
  const decimals = value === 0 ? 0 : Math.min(9, Math.max(0, 1 - Math.floor(Math.log10(Math.abs(rounded)))));
  return fraction(Math.round(rounded * 10 ** decimals), 10 ** decimals);
}

export const published = (source: HydraulicId): Basis => ({
  kind: 'published',
  source,
  provenance: HYDRAULICS[source].provenance,
});

export type From = readonly [symbol: string, value: number, unit: string, basis: Basis];

/** Four figures of what was put in are enough to work it again. */
function fourFigures(value: number): Fraction {
  const decimals = value === 0 ? 0 : Math.min(9, Math.max(0, 3 - Math.floor(Math.log10(Math.abs(value)))));
  return fraction(Math.round(value * 10 ** decimals), 10 ** decimals);
}

export function banded(
  [symbol, unit, equation, source]: readonly [string, string, string, HydraulicId],
  values: { readonly low: number; readonly mid: number; readonly high: number },
  from: readonly From[],
): Banded {
  const [low, mid, high] = [twoFigures(values.low), twoFigures(values.mid), twoFigures(values.high)];
  return {
    unit,
    low,
    mid,
    high,
    working: {
      equation,
      inputs: from.map(([name, value, of, basis]) => input(name, shownNumber(fourFigures(value), of), basis)),
      result: { symbol, is: mid === null ? shownChoice('never') : shownNumber(mid, unit) },
      rule: 'GR9',
      basis: published(source),
    },
  };
}
