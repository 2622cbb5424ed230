/** How much energy and protein by which body’s rule, where the body mass index decides? */
import { assumed, choice, gives, names } from '../asking/asks.ts';
import { adultWeight, height, sex } from '../asking/usual-asks.ts';
import { calculation, type Known, type Line, type Sheet } from '../declare.ts';
import { compare, type Exact, less, of, times } from '../exact.ts';
import type { SourceId } from '../sources.ts';
import { bmiOf, IDEAL_EQUATIONS, IDEAL_SOURCE, idealForm, idealOf } from './weights.ts';

type Rule = {
  readonly low: string;
  readonly high: string;
  readonly of: 'actual' | 'ideal';
  readonly group: string;
  readonly source: SourceId;
};

const rule = (range: string, weight: Rule['of'], group: string, source: SourceId): Rule => {
  const [low = '', high = low] = range.split('–');
  return { low, high, of: weight, group, source };
};

const [THIRTY, FORTY, FIFTY] = [of(30), of(40), of(50)];

/** 30–50 takes in both ends: at 30 the lower energy holds, at 50 still, and only over 50 ideal weight. */
function sccmEnergy(B: Exact): Rule {
  if (less(B, THIRTY)) return rule('25–30', 'actual', 'bmi-under-30', 'E17');
  if (compare(B, FIFTY) <= 0) return rule('11–14', 'actual', 'bmi-30-to-50', 'E17');
  return rule('22–25', 'ideal', 'bmi-over-50', 'E17');
}

/** At 40 the two groups overlap: 40 belongs to the higher one. */
function sccmProtein(B: Exact): Rule {
  if (less(B, THIRTY)) return rule('1.2–2.0', 'actual', 'bmi-under-30', 'E56');
  if (less(B, FORTY)) return rule('2.0', 'ideal', 'bmi-30-to-40', 'E17');
  return rule('2.5', 'ideal', 'bmi-40-or-more', 'E17');
}

type Body = { readonly energy: (B: Exact) => Rule; readonly protein: ((B: Exact) => Rule) | null };
const BODIES = {
  'sccm-aspen-2016': { energy: sccmEnergy, protein: sccmProtein },
  'aspen-2022': { energy: () => rule('12–25', 'actual', 'first-7-to-10-days', 'E18'), protein: null },
  'espen-2023': { energy: () => rule('20–25', 'actual', 'critical-illness', 'E19'), protein: null },
  nice: {
    energy: () => rule('25–35', 'actual', 'not-severely-ill', 'E24'),
    protein: () => rule('0.8–1.5', 'actual', 'not-severely-ill', 'E24'),
  },
} as const satisfies Record<string, Body>;

const needGives = {
  bmiKgPerM2: gives('B', 'kg/m2', '0.1'),
  idealWeightKg: gives('I', 'kg', '0.1'),
  energyGroup: names('group'),
  lowKcal: gives('E', 'kcal'),
  highKcal: gives('E₂', 'kcal'),
  proteinGroup: names('group'),
  lowProteinG: gives('P', 'g'),
  highProteinG: gives('P₂', 'g'),
};
type NeedSheet = Sheet<keyof typeof needGives>;

const KEYS = {
  energy: { group: 'energyGroup', low: 'lowKcal', high: 'highKcal', symbol: 'E', unit: 'kcal/kg' },
  protein: { group: 'proteinGroup', low: 'lowProteinG', high: 'highProteinG', symbol: 'P', unit: 'g/kg' },
} as const;

/** The group and both ends of its range, by the weight that the rule names. */
function range(
  nutrient: keyof typeof KEYS,
  by: Rule,
  B: Known,
  weight: Known,
  sheet: NeedSheet,
): readonly Line[] {
  const { group, low, high, symbol, unit } = KEYS[nutrient];
  const { source } = by;
  const k = sheet.printed('k', of(by.low), unit, source);
  const k2 = sheet.printed('k₂', of(by.high), unit, source);
  return [
    sheet.choice(group, 'B', [B], by.group, source),
    sheet.number(low, `${symbol} = k × ${weight.symbol}`, [k, weight], times(k, weight), source),
    sheet.number(high, `${symbol}₂ = k₂ × ${weight.symbol}`, [k2, weight], times(k2, weight), source),
  ];
}

const IDEAL_BEGINS = of('152.4');

export const guidelineNeeds = calculation({
  name: 'guideline-needs',
  also: [
    'energy-guideline',
    'critical-illness',
    'obesity-energy',
    'obesity',
    'energy-needs',
    'protein-needs',
    'icu-needs',
  ],
  asks: {
    sex,
    weightKg: adultWeight,
    heightCm: height,
    body: assumed(
      choice(
        'body',
        {
          'sccm-aspen-2016': ['sccm', 'sccm-aspen', '2016'],
          'aspen-2022': ['2022'],
          'espen-2023': ['espen', '2023'],
          nice: ['nice-cg32', 'cg32'],
        },
        'guideline',
        'by',
      ),
      'sccm-aspen-2016',
      'aspen-2022',
      'espen-2023',
      'nice',
    ),
    idealBy: { ...idealForm, also: ['ideal', 'idealEquation'] },
  },
  gives: needGives,
  equations: [
    'B = W / (H/100)²',
    'E = k × W  or  k × I',
    'SCCM/ASPEN 2016: B < 30: 25–30 × W; 30 ≤ B ≤ 50: 11–14 × W; B > 50: 22–25 × I',
    'SCCM/ASPEN 2016: protein B < 30: 1.2–2.0 × W; 30 ≤ B < 40: 2.0 × I; B ≥ 40: 2.5 × I',
    'ASPEN 2022: 12–25 × W; ESPEN 2023: 20–25 × W; NICE: 25–35 × W and protein 0.8–1.5 × W',
  ],
  sources: ['E17', 'E56', 'E18', 'E19', 'E24', 'E25', 'E26'],
  rule: 'RK10',
  example: { sex: 'male', weight: '120 kg', height: '170 cm' },
  compute: ({ sex: who, weightKg: W, heightCm: H, body, idealBy }, sheet) => {
    const B = sheet.number('bmiKgPerM2', 'B = W / (H/100)²', [W, H], bmiOf(W, H), 'arithmetic');
    const energy = BODIES[body].energy(B);
    const protein = BODIES[body].protein?.(B);
    const needsIdeal = energy.of === 'ideal' || protein?.of === 'ideal';
    if (needsIdeal && less(H, IDEAL_BEGINS))
      return sheet.refuse('heightCm', 'reckon/ideal-begins-at-60-inches');
    const equation = IDEAL_EQUATIONS[idealBy][who];
    const I = sheet.number('idealWeightKg', equation, [H], idealOf(idealBy, who, H), IDEAL_SOURCE[idealBy]);
    const weights = { actual: W, ideal: I };
    return [
      B,
      ...(needsIdeal ? [I] : []),
      ...range('energy', energy, B, weights[energy.of], sheet),
      ...(protein === undefined ? [] : range('protein', protein, B, weights[protein.of], sheet)),
    ];
  },
});
