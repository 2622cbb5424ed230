/** How great is the risk of refeeding by each body’s criteria, and at how much energy may feeding start? */
import { assumed, choice, gives, givesMost, names, optional, quantity, yesOrNo } from '../asking/asks.ts';
import { height, weight } from '../asking/usual-asks.ts';
import { calculation, type Known, type Line } from '../declare.ts';
import { type Exact, less, minus, notNegative, of, times } from '../exact.ts';
import { bmiOf } from '../needs/weights.ts';
import { aspen, aspenBand, type Findings, nice, niceBand } from './refeeding-criteria.ts';

const GRADES = { none: ['no'], mild: [], moderate: [], severe: [] } as const;
const grade = (symbol: string, ...also: readonly string[]) => optional(choice(symbol, GRADES, ...also));
const days = (symbol: string, ...also: readonly string[]) =>
  optional(quantity(symbol, 'd', ['0', '365'], ...also));

export const refeedingRisk = calculation({
  name: 'refeeding-risk',
  also: ['refeeding', 'refeeding-criteria', 'nice-refeeding', 'aspen-refeeding'],
  asks: {
    bmiKgPerM2: optional(quantity('B', 'kg/m2', ['5', '100'], 'bmi')),
    weightKg: optional(weight),
    heightCm: optional(height),
    lossPercent: optional(quantity('l', '%', ['0', '80'], 'loss', 'weightLoss', 'lossPercentage')),
    lossMonths: optional(
      quantity('m', 'mo', ['0.1', '24'], 'months', 'lossOver', 'over', 'weightLossMonths'),
    ),
    daysOfLittleIntake: days(
      'd',
      'daysLittleIntake',
      'littleIntake',
      'noIntakeDays',
      'daysNoIntake',
      'intakeDays',
      'days',
      'starvationDays',
    ),
    intakePercentOfNeed: optional(
      quantity('p', '%', ['0', '200'], 'intake', 'intakePercent', 'percentOfNeed'),
    ),
    daysOfPoorIntake: days('dp', 'poorIntakeDays', 'poorIntake'),
    acuteIllness: optional(yesOrNo('acute', 'acute', 'illness')),
    electrolytes: optional(
      choice(
        'electrolytes',
        {
          normal: ['no', 'none'],
          'minimally-low': ['low', 'yes', 'mild', 'minimal'],
          'moderately-or-significantly-low': [
            'moderately-low',
            'moderate',
            'significantly-low',
            'severe',
            'very-low',
          ],
        },
        'lowElectrolytes',
        'lowKPo4Mg',
      ),
    ),
    alcoholOrDrugs: optional(yesOrNo('alcohol or drugs', 'alcohol', 'drugs', 'alcoholDrugs')),
    fatLoss: grade('fat loss', 'fat'),
    muscleLoss: grade('muscle loss', 'muscle'),
    higherRiskDisease: grade('disease', 'disease', 'comorbidity', 'illnessGrade'),
  },
  gives: {
    bmiKgPerM2: gives('B', 'kg/m2', '0.1'),
    niceBand: names('NICE'),
    niceMajor: names('NICE, one of'),
    niceMinor: names('NICE, two of'),
    aspenBand: names('ASPEN'),
    aspenSevere: names('ASPEN, one of'),
    aspenModerate: names('ASPEN, two of'),
    notGiven: names('not given'),
  },
  equations: [
    'NICE high: one of B < 16, l > 15 % in 3–6 months, d > 10, low K, PO4 or Mg; or two of B < 18.5, l > 10 %, d > 5, alcohol or drugs',
    'NICE extreme: B < 14 or d > 15',
    'ASPEN significant: one of B < 16, l ≥ 7.5 % in 3 months or > 10 % in 6, d > 7 or under 50 % of need, low levels, severe losses or disease',
    'ASPEN moderate: two of 16 ≤ B ≤ 18.5, l ≥ 5 % in 1 month, d 5–6 or under 75 % of need, minimally low levels, lesser losses or disease',
  ],
  sources: ['S7'],
  rule: 'RK10',
  cautions: ['adults-only'],
  example: {
    bmi: '17.2',
    loss: '11 %',
    months: '4',
    daysLittleIntake: '3',
    electrolytes: 'normal',
    alcohol: 'no',
  },
  compute: (given, sheet) => {
    const { weightKg: W, heightCm: H, bmiKgPerM2 } = given;
    const bmi: Exact | null = bmiKgPerM2 ?? (W && H && bmiOf(W, H));
    const findings: Findings = { ...given, bmi };
    const known = Object.values(given).filter(
      (one) => typeof one === 'object' && one !== null && 'unit' in one,
    );
    const from = known as readonly Known[];
    const [byNice, byAspen] = [nice(findings), aspen(findings)];
    const said = (list: readonly string[]): string => (list.length === 0 ? 'none' : list.join(', '));
    const notGiven = [...new Set([...byNice.notGiven, ...byAspen.notGiven])];
    if (notGiven.length > 0) sheet.caution('criteria-not-given');
    const lines: Line[] = [
      sheet.choice('niceBand', 'NICE: one major or two minor', from, niceBand(findings)),
      sheet.choice('niceMajor', 'NICE, one of', from, said(byNice.major)),
      sheet.choice('niceMinor', 'NICE, two of', from, said(byNice.minor)),
      sheet.choice('aspenBand', 'ASPEN: one severe or two moderate', from, aspenBand(findings)),
      sheet.choice('aspenSevere', 'ASPEN, one of', from, said(byAspen.major)),
      sheet.choice('aspenModerate', 'ASPEN, two of', from, said(byAspen.minor)),
      sheet.choice('notGiven', 'not given', [], said(notGiven), 'S7'),
    ];
    if (bmi === null || bmiKgPerM2 !== null) return lines;
    return [
      sheet.number('bmiKgPerM2', 'B = W / (H/100)²', [W as Known, H as Known], bmi, 'arithmetic'),
      ...lines,
    ];
  },
});

export const refeedingStart = calculation({
  name: 'refeeding-start',
  also: ['refeeding-ceiling', 'refeeding-energy', 'start-energy', 'refeeding-kcal'],
  asks: {
    weightKg: weight,
    goalKcal: optional(quantity('G', 'kcal', ['100', '10000'], 'goal', 'goalKcal', 'needs', 'energyGoal')),
    otherEnergyKcal: assumed(
      quantity('O', 'kcal', ['0', '10000'], 'other', 'otherEnergy', 'dextrose', 'otherKcal'),
      '0',
    ),
  },
  gives: {
    niceCeilingKcal: givesMost('N', 'kcal'),
    niceExtremeCeilingKcal: givesMost('X', 'kcal'),
    niceHalfOfNeedsKcal: givesMost('H', 'kcal'),
    aspenLowKcal: gives('A', 'kcal'),
    aspenHighKcal: givesMost('A₂', 'kcal'),
    aspenDextroseLowG: gives('D', 'g'),
    aspenDextroseHighG: gives('D₂', 'g'),
    aspenStepKcal: givesMost('S', 'kcal'),
    leftUnderNiceKcal: givesMost('N − O', 'kcal'),
    leftUnderNiceExtremeKcal: givesMost('X − O', 'kcal'),
    leftUnderAspenKcal: givesMost('A₂ − O', 'kcal'),
  },
  equations: [
    'N = 10 × W, down',
    'X = 5 × W, down',
    'H = 0.5 × G, down',
    'A = 10 × W',
    'A₂ = 20 × W, down',
    'D = 100 g, D₂ = 150 g',
    'S = 0.33 × G, down',
    'N − O, X − O, A₂ − O: not less than 0',
  ],
  sources: ['S7', 'E37'],
  rule: 'RK7',
  cautions: ['ceiling-counts-all-energy', 'both-bodies'],
  example: { weight: '48 kg', goal: '1440 kcal' },
  compute: ({ weightKg: W, goalKcal: G, otherEnergyKcal: O }, sheet) => {
    const N = sheet.number('niceCeilingKcal', 'N = 10 × W, down', [W], times(of(10), W));
    const X = sheet.number('niceExtremeCeilingKcal', 'X = 5 × W, down', [W], times(of(5), W));
    const A2 = sheet.number('aspenHighKcal', 'A₂ = 20 × W, down', [W], times(of(20), W));
    const left = (
      key: 'leftUnderNiceKcal' | 'leftUnderNiceExtremeKcal' | 'leftUnderAspenKcal',
      under: Known,
      equation: string,
    ) => sheet.number(key, equation, [under, O], notNegative(minus(under, O)), 'arithmetic');
    if (less(N, O)) sheet.caution('other-energy-is-over-the-ceiling');
    return [
      N,
      X,
      ...(G === null
        ? []
        : [sheet.number('niceHalfOfNeedsKcal', 'H = 0.5 × G, down', [G], times(of('0.5'), G), 'E37')]),
      sheet.number('aspenLowKcal', 'A = 10 × W', [W], times(of(10), W)),
      A2,
      sheet.number('aspenDextroseLowG', 'D = 100 g', [], of(100)),
      sheet.number('aspenDextroseHighG', 'D₂ = 150 g', [], of(150)),
      ...(G === null ? [] : [sheet.number('aspenStepKcal', 'S = 0.33 × G, down', [G], times(of('0.33'), G))]),
      left('leftUnderNiceKcal', N, 'N − O'),
      left('leftUnderNiceExtremeKcal', X, 'X − O'),
      left('leftUnderAspenKcal', A2, 'A₂ − O'),
    ];
  },
});
