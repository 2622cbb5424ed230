/** How much energy and protein by weight, and by which body’s rule where the body mass index decides? */
import { assumed, choice, gives, names, optional, quantity } from '../asking/asks.ts';
import { adultWeight, energyGoal, height, sex, weight } from '../asking/usual-asks.ts';
import { calculation, type Known, type Line, type Sheet } from '../declare.ts';
import { compare, type Exact, less, of, over, times } from '../exact.ts';
import type { SourceId } from '../sources.ts';
import { bmiOf, IDEAL_EQUATIONS, IDEAL_SOURCE, idealForm, idealOf } from './weights.ts';

const low = (unit: string, limits: readonly [string, string], ...also: readonly string[]) =>
  quantity('k', unit, limits, 'perKg', 'low', 'from', ...also);
const high = (unit: string, limits: readonly [string, string]) =>
  optional(quantity('k₂', unit, limits, 'high', 'to', 'upTo'));

export const energyPerKg = calculation({
  name: 'energy-per-kg',
  also: ['kcal-per-kg', 'energy-by-weight'],
  asks: {
    weightKg: weight,
    energyKcalPerKg: low('kcal/kg', ['1', '250'], 'energy', 'kcal', 'kcalKg', 'kcalPerKg'),
    highKcalPerKg: high('kcal/kg', ['1', '250']),
  },
  gives: { energyKcal: gives('E', 'kcal'), highKcal: gives('E₂', 'kcal') },
  equations: ['E = k × W', 'E₂ = k₂ × W'],
  sources: ['E1'],
  rule: 'RK9',
  example: { weight: '74 kg', energyKcalPerKg: '25' },
  compute: ({ weightKg: W, energyKcalPerKg: k, highKcalPerKg: k2 }, sheet) => [
    sheet.number('energyKcal', 'E = k × W', [k, W], times(k, W)),
    ...(k2 === null ? [] : [sheet.number('highKcal', 'E₂ = k₂ × W', [k2, W], times(k2, W))]),
  ],
});

export const proteinPerKg = calculation({
  name: 'protein-per-kg',
  also: ['protein-by-weight', 'protein-need'],
  asks: {
    weightKg: weight,
    proteinGPerKg: low('g/kg', ['0.1', '8'], 'protein', 'gKg', 'gPerKg'),
    highGPerKg: high('g/kg', ['0.1', '8']),
  },
  gives: { proteinG: gives('P', 'g'), highG: gives('P₂', 'g') },
  equations: ['P = k × W', 'P₂ = k₂ × W'],
  sources: ['E3'],
  rule: 'RK9',
  example: { weight: '67.6 kg', proteinGPerKg: '1.5', round: '0.1' },
  compute: ({ weightKg: W, proteinGPerKg: k, highGPerKg: k2 }, sheet) => [
    sheet.number('proteinG', 'P = k × W', [k, W], times(k, W)),
    ...(k2 === null ? [] : [sheet.number('highG', 'P₂ = k₂ × W', [k2, W], times(k2, W))]),
  ],
});

export const intakePerKg = calculation({
  name: 'intake-per-kg',
  also: ['kcal-per-kg-given', 'per-kg'],
  asks: {
    weightKg: weight,
    energyKcal: optional(energyGoal),
    proteinG: optional(quantity('P', 'g', ['0', '1000'], 'protein')),
    volumeMl: optional(quantity('V', 'mL', ['0', '20000'], 'volume', 'fluid')),
  },
  gives: {
    energyKcalPerKg: gives('E/W', 'kcal/kg', '0.1'),
    proteinGPerKg: gives('P/W', 'g/kg', '0.01'),
    volumeMlPerKg: gives('V/W', 'mL/kg', '0.1'),
  },
  equations: ['E / W', 'P / W', 'V / W'],
  sources: [],
  rule: 'RK9',
  example: { weight: '80 kg', energy: '2160 kcal' },
  compute: ({ weightKg: W, energyKcal: E, proteinG: P, volumeMl: V }, sheet) => [
    ...(E === null ? [] : [sheet.number('energyKcalPerKg', 'E / W', [E, W], over(E, W))]),
    ...(P === null ? [] : [sheet.number('proteinGPerKg', 'P / W', [P, W], over(P, W))]),
    ...(V === null ? [] : [sheet.number('volumeMlPerKg', 'V / W', [V, W], over(V, W))]),
  ],
});

type Rule = {
  readonly low: string;
  readonly high: string;
  readonly of: 'actual' | 'ideal';
  readonly group: string;
};
const [THIRTY, FORTY, FIFTY] = [of(30), of(40), of(50)];

/** 30–50 takes in both ends: at 30 the lower energy holds, at 50 still, and only over 50 ideal weight. */
const sccmEnergy = (B: Exact): Rule =>
  less(B, THIRTY)
    ? { low: '25', high: '30', of: 'actual', group: 'bmi-under-30' }
    : compare(B, FIFTY) <= 0
      ? { low: '11', high: '14', of: 'actual', group: 'bmi-30-to-50' }
      : { low: '22', high: '25', of: 'ideal', group: 'bmi-over-50' };

/** At 40 the two groups overlap: 40 belongs to the higher one. */
const sccmProtein = (B: Exact): Rule =>
  less(B, THIRTY)
    ? { low: '1.2', high: '2.0', of: 'actual', group: 'bmi-under-30' }
    : less(B, FORTY)
      ? { low: '2.0', high: '2.0', of: 'ideal', group: 'bmi-30-to-40' }
      : { low: '2.5', high: '2.5', of: 'ideal', group: 'bmi-40-or-more' };

const RULES = {
  'sccm-aspen-2016': { energy: sccmEnergy, protein: sccmProtein, source: 'E17' },
  'aspen-2022': {
    energy: () => ({ low: '12', high: '25', of: 'actual', group: 'first-7-to-10-days' }),
    protein: null,
    source: 'E18',
  },
  'espen-2023': {
    energy: () => ({ low: '20', high: '25', of: 'actual', group: 'critical-illness' }),
    protein: null,
    source: 'E19',
  },
  nice: {
    energy: () => ({ low: '25', high: '35', of: 'actual', group: 'not-severely-ill' }),
    protein: () => ({ low: '0.8', high: '1.5', of: 'actual', group: 'not-severely-ill' }),
    source: 'E24',
  },
} as const satisfies Record<
  string,
  { energy: (B: Exact) => Rule; protein: ((B: Exact) => Rule) | null; source: SourceId }
>;

const guidelineGives = {
  bmiKgPerM2: gives('B', 'kg/m2', '0.1'),
  idealWeightKg: gives('I', 'kg', '0.1'),
  energyGroup: names('group'),
  lowKcal: gives('E', 'kcal'),
  highKcal: gives('E₂', 'kcal'),
  proteinGroup: names('group'),
  lowProteinG: gives('P', 'g'),
  highProteinG: gives('P₂', 'g'),
};

/** Both ends of a range, from the weight that the rule names. */
function range(
  rule: Rule,
  [lowKey, highKey, symbol, unit]: readonly [
    'lowKcal' | 'lowProteinG',
    'highKcal' | 'highProteinG',
    string,
    string,
  ],
  weights: { readonly actual: Known; readonly ideal: Known },
  source: SourceId,
  sheet: Sheet<keyof typeof guidelineGives>,
): readonly Line[] {
  const by = weights[rule.of];
  const [k, k2] = [
    sheet.printed('k', of(rule.low), unit, source),
    sheet.printed('k₂', of(rule.high), unit, source),
  ];
  return [
    sheet.number(lowKey, `${symbol} = k × ${by.symbol}`, [k, by], times(k, by), source),
    sheet.number(highKey, `${symbol}₂ = k₂ × ${by.symbol}`, [k2, by], times(k2, by), source),
  ];
}

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
  gives: guidelineGives,
  equations: [
    'B = W / (H/100)²',
    'E = k × W  or  k × I',
    'SCCM/ASPEN 2016: B < 30: 25–30 × W; 30 ≤ B ≤ 50: 11–14 × W; B > 50: 22–25 × I',
    'SCCM/ASPEN 2016: protein B < 30: 1.2–2.0 × W; 30 ≤ B < 40: 2.0 × I; B ≥ 40: 2.5 × I',
    'ASPEN 2022: 12–25 × W; ESPEN 2023: 20–25 × W; NICE: 25–35 × W and protein 0.8–1.5 × W',
  ],
  sources: ['E17', 'E18', 'E19', 'E24', 'E25', 'E26'],
  rule: 'RK10',
  example: { sex: 'male', weight: '120 kg', height: '170 cm' },
  compute: ({ sex: who, weightKg: W, heightCm: H, body, idealBy }, sheet) => {
    const { energy, protein, source } = RULES[body];
    const B = sheet.number('bmiKgPerM2', 'B = W / (H/100)²', [W, H], bmiOf(W, H), 'arithmetic');
    const rules = [energy(B), protein?.(B)];
    const needsIdeal = rules.some((rule) => rule?.of === 'ideal');
    if (needsIdeal && less(H, of('152.4')))
      return sheet.refuse('heightCm', 'reckon/ideal-begins-at-60-inches', {});
    const I = sheet.number(
      'idealWeightKg',
      IDEAL_EQUATIONS[idealBy][who],
      [H],
      idealOf(idealBy, who, H),
      IDEAL_SOURCE[idealBy],
    );
    const weights = { actual: W, ideal: I };
    const lines: Line[] = needsIdeal ? [B, I] : [B];
    const [e, p] = rules;
    if (e !== undefined)
      lines.push(
        sheet.choice('energyGroup', 'B', [B], e.group, source),
        ...range(e, ['lowKcal', 'highKcal', 'E', 'kcal/kg'], weights, source, sheet),
      );
    if (p !== undefined)
      lines.push(
        sheet.choice('proteinGroup', 'B', [B], p.group, source),
        ...range(p, ['lowProteinG', 'highProteinG', 'P', 'g/kg'], weights, source, sheet),
      );
    return lines;
  },
});
