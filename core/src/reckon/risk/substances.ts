/** What does a mmol of it weigh, how many charges has it, and in which unit was a level written? */
import { bad, issue, ok } from '../../base/result.ts';
import { choice, outside, shownKnown } from '../asking/asks.ts';
import { readAmount, type Wanted, wanting } from '../asking/quantity-input.ts';
import type { Ask, Band, Known } from '../declare.ts';
import { type Exact, less, of, over, times } from '../exact.ts';

const NAMES = {
  potassium: ['k', 'k+'],
  sodium: ['na', 'na+'],
  chloride: ['cl', 'cl-'],
  magnesium: ['mg', 'mg2+'],
  calcium: ['ca', 'ca2+'],
  phosphate: ['po4', 'p', 'phosphorus', 'phos'],
  glucose: ['sugar', 'dextrose', 'blood-glucose'],
  'urea-nitrogen': ['bun', 'urea'],
  creatinine: ['creat'],
} as const;

export type Substance = keyof typeof NAMES;
export const substance = choice('of', NAMES, 'of', 'substance', 'electrolyte');

type Row = { readonly molarMass: Exact; readonly valence: number | null };
const row = (molarMass: string, valence: number | null): Row => ({ molarMass: of(molarMass), valence });

/** Molar mass in mg/mmol, from the conventional atomic weights (source E51), and charge. */
export const SUBSTANCES: Readonly<Record<Substance, Row>> = {
  potassium: row('39.10', 1),
  sodium: row('22.99', 1),
  chloride: row('35.45', 1),
  magnesium: row('24.31', 2),
  calcium: row('40.08', 2),
  /** As phosphorus; its charge depends on the acidity, so there is no mEq. */
  phosphate: row('30.97', null),
  /** C6H12O6 */
  glucose: row('180.156', null),
  /** Urea by its two N. */
  'urea-nitrogen': row('28.02', null),
  /** C4H7N3O */
  creatinine: row('113.126', null),
};

const LAB_UNITS = ['mmol/L', 'mg/dL', 'meq/L'] as const;
type LabUnit = (typeof LAB_UNITS)[number];
const WANTED: readonly (readonly [LabUnit, Wanted])[] = LAB_UNITS.map((unit) => [unit, wanting(unit)]);
const BAND: Band = { least: of(0), most: of(3000), because: 'slip' };

/** A level in the unit it was written in; without a unit its `unit` is empty and another input says it. */
export const concentration = (symbol: string, ...also: readonly string[]): Ask<Known> => ({
  kind: 'concentration',
  symbol,
  unit: 'mmol/L',
  also,
  band: BAND,
  choices: [],
  required: true,
  assumed: null,
  others: [],
  takes: (unit) => WANTED.some(([, wanted]) => wanted.is.dimension === unit.dimension),
  read: ([raw = ''], reading) => {
    const basis = { kind: 'asked', name: symbol } as const;
    const written = typeof raw === 'string' && /[\p{L}%]/u.test(raw);
    if (!written && reading.unitOfKey === undefined) {
      const amount = readAmount(raw, WANTED[0]?.[1] as Wanted, reading);
      return amount.ok ? ok({ ...amount.value.value, symbol, unit: '', basis }) : amount;
    }
    for (const [unit, wanted] of WANTED) {
      const amount = readAmount(raw, wanted, reading);
      if (!amount.ok && amount.issues[0]?.code === 'reckon/unit-of-another-kind') continue;
      if (!amount.ok) return amount;
      const { value } = amount.value;
      return less(BAND.most, value) ? bad(outside(value, BAND, unit)) : ok({ ...value, symbol, unit, basis });
    }
    return bad(issue([], 'reckon/unit-of-another-kind', { unit: String(raw), accepted: LAB_UNITS }));
  },
  show: shownKnown,
});

/** The level in mmol/L. A substance without charge that is given in mEq/L keeps its number: callers refuse it first. */
export function inMmol(level: Known, unit: LabUnit, substanceName: Substance, symbol: string): Known {
  const { molarMass, valence } = SUBSTANCES[substanceName];
  const written = level.unit === '' ? unit : level.unit;
  const value =
    written === 'mg/dL'
      ? over(times(level, of(10)), molarMass)
      : written === 'meq/L'
        ? over(level, of(valence ?? 1))
        : level;
  return { ...level, n: value.n, d: value.d, symbol, unit: 'mmol/L' };
}
