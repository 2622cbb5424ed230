/**
 * What does this UCUM code stand for?
 * The codes that orders for tube feeding use, with their exact factors; the tests hold each against UCUM's reference
 * library. UCUM is case sensitive and reads from left to right, which is where orders go wrong: `cal` is the small
 * calorie, a thousandth of the one on a label; `ML` is a megalitre; and `mL/24.h` is mL divided by 24 *times* an hour.
 * Source: The Unified Code for Units of Measure, by its reference library (I1 in docs/sources.md).
 */
import { type Exact, of, over, times, UNITY } from '@feedwright/core/reckon/exact';

/** `volume/time`, `energy/volume`, `mass` …: what is measured, as the code itself is built. */
export type Dimension = string;

export type Unit = {
  readonly code: string;
  readonly dimension: Dimension;
  /** How many of the dimension's own unit it is: mL, h, kcal, kg, cm, French, and what is built of them. */
  readonly factor: Exact;
  /** The divisor of an amount per time, as written: `d`, `(24.h)`. */
  readonly per: string | null;
};

type Atom = readonly [dimension: Dimension, factor: Exact];

const atom = (dimension: Dimension, factor: string): Atom => [dimension, of(factor)];

const ATOMS: Readonly<Record<string, Atom>> = {
  mL: atom('volume', '1'),
  ml: atom('volume', '1'),
  L: atom('volume', '1000'),
  l: atom('volume', '1000'),
  dL: atom('volume', '100'),
  dl: atom('volume', '100'),
  cm3: atom('volume', '1'),
  // 231/128 cubic inches of 2.54 cm.
  '[foz_us]': atom('volume', '29.5735295625'),
  '[tbs_us]': atom('volume', '14.78676478125'),
  '[tsp_us]': atom('volume', '4.92892159375'),
  '[cup_us]': atom('volume', '236.5882365'),
  '[foz_br]': atom('volume', '28.4130625'),
  s: atom('time', '1/3600'),
  min: atom('time', '1/60'),
  h: atom('time', '1'),
  d: atom('time', '24'),
  wk: atom('time', '168'),
  // The thermochemical calorie: UCUM's plain `cal`, and a thousand of them are `[Cal]`.
  kcal: atom('energy', '1'),
  cal: atom('energy', '1/1000'),
  kcal_th: atom('energy', '1'),
  cal_th: atom('energy', '1/1000'),
  '[Cal]': atom('energy', '1'),
  kJ: atom('energy', '250/1046'),
  J: atom('energy', '1/4184'),
  kg: atom('mass', '1'),
  g: atom('mass', '1/1000'),
  mg: atom('mass', '1/1000000'),
  '[lb_av]': atom('mass', '0.45359237'),
  '[oz_av]': atom('mass', '0.028349523125'),
  cm: atom('length', '1'),
  m: atom('length', '100'),
  mm: atom('length', '1/10'),
  '[in_i]': atom('length', '2.54'),
  '[ft_i]': atom('length', '30.48'),
  '[Ch]': atom('gauge', '1'),
};

/** `d`, or a counted one in round brackets: `(24.h)`, `(100.mL)`. */
function readAtom(part: string): Atom | null {
  const [, count = '1', name = part] = /^\((\d{1,4})\.([^.()]+)\)$/.exec(part) ?? [];
  const found = Object.hasOwn(ATOMS, name) ? ATOMS[name] : undefined;
  if (found === undefined || Number(count) === 0) return null;
  return [found[0], times(of(count), found[1])];
}

/** The unit, or null where the code is not valid UCUM or is none that an order for tube feeding has a use for. */
export function parseUcum(code: string): Unit | null {
  const parts = code.split('/');
  const atoms = parts.map(readAtom);
  let [dimension, factor]: Atom = ['', UNITY];
  for (const [place, one] of atoms.entries()) {
    if (one === null) return null;
    dimension = place === 0 ? one[0] : `${dimension}/${one[0]}`;
    factor = place === 0 ? one[1] : over(factor, one[1]);
  }
  return { code, dimension, factor, per: dimension.endsWith('/time') ? (parts.at(-1) ?? null) : null };
}

/** What people write for what UCUM calls otherwise. None of the names on the left is meant to be valid UCUM here. */
const MEANT: Readonly<Record<string, string>> = {
  cc: 'mL',
  ccs: 'mL',
  mls: 'mL',
  ML: 'mL',
  milliliter: 'mL',
  milliliters: 'mL',
  millilitre: 'mL',
  millilitres: 'mL',
  liter: 'L',
  litre: 'L',
  oz: '[foz_us]',
  'fl oz': '[foz_us]',
  ounce: '[foz_us]',
  ounces: '[foz_us]',
  Cal: 'kcal',
  Kcal: 'kcal',
  kCal: 'kcal',
  KCAL: 'kcal',
  Calories: 'kcal',
  kilocalories: 'kcal',
  kj: 'kJ',
  hr: 'h',
  hrs: 'h',
  hour: 'h',
  hours: 'h',
  H: 'h',
  day: 'd',
  days: 'd',
  D: 'd',
  mins: 'min',
  minute: 'min',
  minutes: 'min',
  '24h': 'd',
  '24hr': 'd',
  '24hrs': 'd',
  '24.h': 'd',
  '24 h': 'd',
  '24 hr': 'd',
  lb: '[lb_av]',
  lbs: '[lb_av]',
  kgs: 'kg',
  Kg: 'kg',
  KG: 'kg',
  in: '[in_i]',
  inch: '[in_i]',
  inches: '[in_i]',
  Fr: '[Ch]',
  FR: '[Ch]',
  fr: '[Ch]',
  French: '[Ch]',
  french: '[Ch]',
  Ch: '[Ch]',
  CH: '[Ch]',
};

/**
 * The valid code that was most likely meant by one that is not (`ml/hr` → `mL/h`), to be put to a person and never to
 * be used unasked; null where there is no telling. A valid code needs no such guess.
 */
export function likelyUcum(written: string): string | null {
  const spaced = written
    .trim()
    .replace(/\s+per\s+/gi, '/')
    .replace(/\s*\/\s*/g, '/');
  const guess = spaced.split('/').map((part) => {
    if (Object.hasOwn(MEANT, part)) return MEANT[part];
    return Object.hasOwn(ATOMS, part) ? part.replace('ml', 'mL') : null;
  });
  const code = guess.includes(null) ? null : guess.join('/');
  return code !== null && parseUcum(code) !== null ? code : null;
}

/** Whether it is written so that UCUM multiplies by the hour where a division was meant: `mL/24.h`. */
export const isBracketTrap = (code: string): boolean => /\/\d+\.(s|min|h|d|wk)$/.test(code);
