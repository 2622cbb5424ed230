/**
 * How is a number written so that a tired eye reads it once and rightly?
 * A leading zero, no trailing zero, the language's own marks, and the unit fixed by us: a locale would write `ml`.
 */
import { type Fraction, fraction, type Rounding, roundTo } from '../base/fraction.ts';
import { inMl, inMlPerHour, type Rate, type Volume } from '../base/volume.ts';

export type NumberStyle = {
  readonly decimalMark: string;
  /** Between thousands; a no-break space, comma or point. */
  readonly groupMark: string;
};

export const ENGLISH_NUMBERS: NumberStyle = { decimalMark: '.', groupMark: ',' };

const grouped = (digits: string, mark: string): string => digits.replace(/\B(?=(\d{3})+(?!\d))/g, mark);

/** A fraction with at most `places` decimals, rounded the way asked, without trailing zeros: 62.50 is `62.5`. */
export function showFraction(
  value: Fraction,
  places: number,
  way: Rounding = 'half-up',
  style: NumberStyle = ENGLISH_NUMBERS,
): string {
  const scale = 10 ** places;
  const rounded = roundTo(value, fraction(1, scale), way);
  const scaled = (rounded.n * scale) / rounded.d;
  const digits = String(Math.abs(Math.round(scaled))).padStart(places + 1, '0');
  const whole = digits.slice(0, digits.length - places);
  const part = places === 0 ? '' : digits.slice(-places).replace(/0+$/, '');
  const sign = scaled < 0 ? '−' : '';
  return `${sign}${grouped(whole, style.groupMark)}${part === '' ? '' : style.decimalMark + part}`;
}

/** Whole mL unless the amount is under 10 mL, where a tenth matters. */
export const showVolume = (amount: Volume, way: Rounding = 'half-up', style = ENGLISH_NUMBERS): string =>
  `${showFraction(inMl(amount), Math.abs(amount) < 10 * 360_000_000 ? 1 : 0, way, style)} mL`;

export const showRate = (at: Rate, style = ENGLISH_NUMBERS): string =>
  `${showFraction(inMlPerHour(at), 2, 'down', style)} mL/h`;

/** A plain JSON number with at most `places` decimals, rounded the way asked. */
export const jsonNumber = (value: Fraction, places: number, way: Rounding = 'half-up'): number => {
  const rounded = roundTo(value, fraction(1, 10 ** places), way);
  return rounded.n / rounded.d;
};
