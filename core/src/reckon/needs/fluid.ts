/** How much fluid a day, by weight, by body surface, by age? Each rule that is in print, and which was used. */
import { assumed, choice, gives, optional, quantity } from '../asking/asks.ts';
import { adultWeight, energyGoal, height, weight } from '../asking/usual-asks.ts';
import { calculation, type Known, type Line, type Sheet } from '../declare.ts';
import { type Exact, least, less, minus, notNegative, of, over, plus, times } from '../exact.ts';
import type { SourceId } from '../sources.ts';
import { surface } from './weights.ts';

const [TEN, TWENTY, DAY] = [of(10), of(20), of(24)];

/** So much for each of the first ten kg, so much for each of the next ten, so much for each further one. */
const stepped = (W: Exact, first: string, second: string, further: string): Exact =>
  plus(
    times(of(first), least(W, TEN)),
    times(of(second), notNegative(minus(least(W, TWENTY), TEN))),
    times(of(further), notNegative(minus(W, TWENTY))),
  );

const further = assumed(
  quantity('k', 'mL/kg', ['10', '30', 'print'], 'aboveTwenty', 'perKgAbove20', 'further', 'above20'),
  '20',
  '15',
  '25',
);

const hollidayGives = {
  fluidMl: gives('F', 'mL'),
  fromDayMlPerHour: gives('F/24', 'mL/h', '0.1'),
  rateMlPerHour: gives('r', 'mL/h', '0.1'),
  apartMlPerHour: gives('r − F/24', 'mL/h', '0.1'),
};

const DAILY = 'F = 100 × W to 10 kg + 50 × W from 10 to 20 kg + k × W over 20 kg';
const HOURLY = 'r = 4 × W to 10 kg + 2 × W from 10 to 20 kg + 1 × W over 20 kg';

export const hollidaySegar = calculation({
  name: 'holliday-segar',
  also: ['maintenance-fluid', '4-2-1', '421', '100-50-20', 'child-fluid', 'maintenance'],
  asks: {
    weightKg: quantity('W', 'kg', ['2', '100', 'equation'], 'weight', 'wt', 'w'),
    furtherMlPerKg: further,
  },
  gives: hollidayGives,
  equations: [DAILY, 'F / 24', HOURLY, 'r − F/24'],
  sources: ['E29'],
  rule: 'RK5',
  cautions: ['two-forms-differ', 'not-for-newborn'],
  example: { weight: '25 kg' },
  compute: ({ weightKg: W, furtherMlPerKg: k }, sheet) => {
    const F = sheet.number(
      'fluidMl',
      DAILY,
      [W, k],
      plus(stepped(W, '100', '50', '0'), times(k, notNegative(minus(W, TWENTY)))),
    );
    const fromDay = sheet.number('fromDayMlPerHour', 'F / 24', [F], over(F, DAY), 'arithmetic');
    const r = sheet.number('rateMlPerHour', HOURLY, [W], stepped(W, '4', '2', '1'));
    return [
      F,
      fromDay,
      r,
      sheet.number('apartMlPerHour', 'r − F/24', [r, fromDay], minus(r, fromDay), 'arithmetic'),
    ];
  },
});

const perDay = {
  lowMl: gives('F', 'mL'),
  highMl: gives('F₂', 'mL'),
  lowMlPerHour: gives('F/24', 'mL/h', '0.1'),
  highMlPerHour: gives('F₂/24', 'mL/h', '0.1'),
};

/** The day’s amount and the hour’s, for one figure or a range. */
function ranged(
  k: Known,
  k2: Known | null,
  by: Known,
  source: SourceId,
  sheet: Sheet<keyof typeof perDay>,
): readonly Line[] {
  const F = sheet.number('lowMl', `F = k × ${by.symbol}`, [k, by], times(k, by), source);
  const lines = [F, sheet.number('lowMlPerHour', 'F / 24', [F], over(F, DAY), 'arithmetic')];
  if (k2 === null) return lines;
  const F2 = sheet.number('highMl', `F₂ = k₂ × ${by.symbol}`, [k2, by], times(k2, by), source);
  return [...lines, F2, sheet.number('highMlPerHour', 'F₂ / 24', [F2], over(F2, DAY), 'arithmetic')];
}

export const fluidPerKg = calculation({
  name: 'fluid-per-kg',
  also: ['fluid-by-weight', 'ml-per-kg'],
  asks: {
    weightKg: weight,
    fluidMlPerKg: quantity('k', 'mL/kg', ['1', '250'], 'perKg', 'low', 'mlPerKg', 'fluid'),
    highMlPerKg: optional(quantity('k₂', 'mL/kg', ['1', '250'], 'high', 'to', 'upTo')),
  },
  gives: perDay,
  equations: ['F = k × W', 'F / 24'],
  sources: ['E30'],
  rule: 'RK9',
  example: { weight: '70 kg', fluidMlPerKg: '30', high: '35 mL/kg' },
  compute: ({ weightKg: W, fluidMlPerKg: k, highMlPerKg: k2 }, sheet) => ranged(k, k2, W, 'E30', sheet),
});

export const fluidPerArea = calculation({
  name: 'fluid-per-area',
  also: ['fluid-by-surface', 'fluid-per-m2', 'bsa-fluid', 'fluid-bsa'],
  asks: {
    surfaceM2: optional(quantity('S', 'm2', ['0.1', '3.5'], 'bsa', 'surface', 'area', 'bodySurface')),
    weightKg: optional(weight),
    heightCm: optional(height),
    fluidMlPerM2: assumed(
      quantity('k', 'mL/m2', ['500', '4000', 'print'], 'perM2', 'low', 'mlPerM2', 'fluid'),
      '1500',
      '1200',
      '1600',
    ),
    highMlPerM2: optional(quantity('k₂', 'mL/m2', ['500', '4000', 'print'], 'high', 'to', 'upTo')),
  },
  oneOf: [[['surfaceM2'], ['weightKg', 'heightCm']]],
  gives: { surfaceM2: gives('S', 'm2', '0.01'), ...perDay },
  equations: ['S = √(H × W / 3600)', 'F = k × S', 'F / 24'],
  sources: ['E32', 'E33'],
  rule: 'RK5',
  example: { bsa: '0.8 m2', low: '1500', high: '2000' },
  compute: ({ surfaceM2, weightKg: W, heightCm: H, fluidMlPerM2: k, highMlPerM2: k2 }, sheet) => {
    const S =
      surfaceM2 === null
        ? surface('mosteller', W as Known, H as Known, 'surfaceM2', sheet)
        : sheet.number('surfaceM2', 'S', [], surfaceM2, 'arithmetic');
    return [S, ...ranged(k, k2, S, 'E32', sheet)];
  },
});

/** 55 and 75 years are both in the middle group. */
const byAge = (A: Exact): string => (less(A, of(55)) ? '35' : less(of(75), A) ? '25' : '30');

const RULES = {
  'per-kg': ['30-35'],
  stepped: ['segmented', '1500'],
  'by-age': ['age'],
  'per-kcal': ['1-ml-per-kcal', 'kcal'],
} as const;

export const adultFluid = calculation({
  name: 'adult-fluid',
  also: ['fluid-needs', 'fluid-need', 'fluid-adult', 'water-needs'],
  asks: {
    weightKg: adultWeight,
    by: assumed(choice('by', RULES, 'rule', 'method', 'form'), 'per-kg', 'stepped', 'by-age', 'per-kcal'),
    furtherMlPerKg: further,
    ageYears: optional(quantity('A', 'a', ['18', '120', 'equation'], 'age', 'ageY')),
    energyKcal: optional(energyGoal),
  },
  gives: { ...perDay, fluidMl: gives('F', 'mL') },
  equations: [
    'F = 30 × W, F₂ = 35 × W',
    'F = 1500 + k × (W − 20)',
    'F = 35 × W under 55 years, 30 × W at 55–75, 25 × W over 75',
    'F = 1 × E',
  ],
  sources: ['E30', 'E24', 'E31', 'E57', 'E1'],
  rule: 'RK5',
  example: { weight: '70 kg', by: 'stepped' },
  compute: ({ weightKg: W, by, furtherMlPerKg: k, ageYears: A, energyKcal: E }, sheet) => {
    if (by === 'per-kg')
      return ranged(
        sheet.printed('k', of(30), 'mL/kg', 'E24'),
        sheet.printed('k₂', of(35), 'mL/kg', 'E24'),
        W,
        'E24',
        sheet,
      );
    if (by === 'stepped') {
      const value = plus(of(1500), times(k, minus(W, TWENTY)));
      return [
        sheet.number('fluidMl', 'F = 1500 + k × (W − 20)', [k, W], value, less(k, TWENTY) ? 'E31' : 'E30'),
      ];
    }
    if (by === 'per-kcal') {
      if (E === null)
        return sheet.refuse('energyKcal', 'reckon/missing', { unit: 'kcal', accepted: ['kcal', 'kJ'] });
      return [sheet.number('fluidMl', 'F = 1 × E', [E], E, 'E1')];
    }
    if (A === null) return sheet.refuse('ageYears', 'reckon/missing', { unit: 'a', accepted: ['y'] });
    const source = less(A, of(55)) ? 'E57' : 'E31';
    const perKg = sheet.printed('k', of(byAge(A)), 'mL/kg', source);
    return [sheet.number('fluidMl', 'F = k × W', [perKg, W], times(perKg, W), source)];
  },
});
