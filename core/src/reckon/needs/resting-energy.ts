/** How much energy at rest, from weight, height and age, and for the ventilated? */
import { assumed, choice, gives, names, optional, quantity } from '../asking/asks.ts';
import { adultAge, adultWeight, height, sex } from '../asking/usual-asks.ts';
import { calculation, type Known, type Line, type NumberLine, type Sheet } from '../declare.ts';
import { compare, type Exact, less, minus, of, plus, times } from '../exact.ts';
import type { SourceId } from '../sources.ts';
import { bmiOf } from './weights.ts';

type Sex = 'male' | 'female';
/** constant + a × W + b × H − c × A */
type Linear = {
  readonly constant: string;
  readonly perKg: string;
  readonly perCm: string;
  readonly perYear: string;
};

const linear = (by: Linear, W: Exact, H: Exact, A: Exact): Exact =>
  plus(
    of(by.constant),
    times(of(by.perKg), W),
    times(of(by.perCm), H),
    minus(of(0), times(of(by.perYear), A)),
  );

const written = ({ constant, perKg, perCm, perYear }: Linear): string =>
  `R = ${constant.replace('-', '−')} + ${perKg} × W + ${perCm} × H − ${perYear} × A`;

const MIFFLIN: Readonly<Record<'short' | 'long', Readonly<Record<Sex, Linear>>>> = {
  short: {
    male: { constant: '5', perKg: '10', perCm: '6.25', perYear: '5' },
    female: { constant: '-161', perKg: '10', perCm: '6.25', perYear: '5' },
  },
  long: {
    male: { constant: '5', perKg: '9.99', perCm: '6.25', perYear: '4.92' },
    female: { constant: '-161', perKg: '9.99', perCm: '6.25', perYear: '4.92' },
  },
};

type HarrisBenedict = 'original' | 'revised' | 'short';
const HARRIS_BENEDICT: Readonly<Record<HarrisBenedict, Readonly<Record<Sex, Linear>>>> = {
  original: {
    male: { constant: '66.4730', perKg: '13.7516', perCm: '5.0033', perYear: '6.7550' },
    female: { constant: '655.0955', perKg: '9.5634', perCm: '1.8496', perYear: '4.6756' },
  },
  revised: {
    male: { constant: '88.362', perKg: '13.397', perCm: '4.799', perYear: '5.677' },
    female: { constant: '447.593', perKg: '9.247', perCm: '3.098', perYear: '4.330' },
  },
  short: {
    male: { constant: '66', perKg: '13.7', perCm: '5', perYear: '6.8' },
    female: { constant: '655', perKg: '9.6', perCm: '1.8', perYear: '4.7' },
  },
};
const HARRIS_BENEDICT_SOURCE: Readonly<Record<HarrisBenedict, SourceId>> = {
  original: 'E13',
  revised: 'E14',
  short: 'E13',
};

const adultHeight = quantity('H', 'cm', ['100', '250', 'equation'], ...height.also);
const factor = optional(
  quantity('k', '1', ['0.5', '3'], 'factor', 'activity', 'activityFactor', 'stressFactor', 'stress'),
);
const stress = optional(quantity('k₂', '1', ['0.5', '3'], 'stress', 'stressFactor', 'injuryFactor'));

const restingGives = { restingKcal: gives('R', 'kcal'), energyKcal: gives('E', 'kcal') };

/** Resting energy, and times the factors where they are given. */
function withFactors(
  R: NumberLine,
  k: Known | null,
  k2: Known | null,
  sheet: Sheet<keyof typeof restingGives>,
): readonly Line[] {
  const factors = [k, k2].filter((one) => one !== null);
  if (factors.length === 0) return [R];
  const equation = ['E = R', ...factors.map((one) => one.symbol)].join(' × ');
  return [R, sheet.number('energyKcal', equation, [R, ...factors], times(R, ...factors), 'E54')];
}

const person = { sex, weightKg: adultWeight, heightCm: adultHeight, ageYears: adultAge };
const factors = { factor, stressFactor: stress };

export const mifflin = calculation({
  name: 'mifflin-st-jeor',
  also: ['mifflin', 'msj', 'ree', 'resting-energy'],
  asks: {
    ...person,
    form: assumed(
      choice('form', { short: ['rounded'], long: ['exact', 'unrounded'] }, 'version'),
      'short',
      'long',
    ),
    ...factors,
  },
  gives: restingGives,
  equations: [
    ...Object.values(MIFFLIN.short).map(written),
    ...Object.values(MIFFLIN.long).map(written),
    'E = R × k × k₂',
  ],
  sources: ['E12', 'E54'],
  rule: 'RK5',
  example: { sex: 'female', weight: '75 kg', height: '165.1 cm', age: '45' },
  compute: (
    { sex: who, weightKg: W, heightCm: H, ageYears: A, form, factor: k, stressFactor: k2 },
    sheet,
  ) => {
    const by = MIFFLIN[form][who];
    return withFactors(
      sheet.number('restingKcal', written(by), [W, H, A], linear(by, W, H, A)),
      k,
      k2,
      sheet,
    );
  },
});

export const harrisBenedict = calculation({
  name: 'harris-benedict',
  also: ['hb', 'bee', 'roza-shizgal', 'basal-energy'],
  asks: {
    ...person,
    version: assumed(
      choice(
        'version',
        { original: ['1919'], revised: ['1984', 'roza-shizgal'], short: ['rounded'] },
        'form',
      ),
      'original',
      'revised',
      'short',
    ),
    ...factors,
  },
  gives: restingGives,
  equations: [
    ...Object.values(HARRIS_BENEDICT).flatMap((by) => Object.values(by).map(written)),
    'E = R × k × k₂',
  ],
  sources: ['E13', 'E14', 'E54'],
  rule: 'RK5',
  example: {
    sex: 'female',
    weight: '69.5 kg',
    height: '169 cm',
    age: '30',
    version: 'revised',
    round: '0.01',
  },
  compute: (
    { sex: who, weightKg: W, heightCm: H, ageYears: A, version, factor: k, stressFactor: k2 },
    sheet,
  ) => {
    const by = HARRIS_BENEDICT[version][who];
    const R = sheet.number(
      'restingKcal',
      written(by),
      [W, H, A],
      linear(by, W, H, A),
      HARRIS_BENEDICT_SOURCE[version],
    );
    return withFactors(R, k, k2, sheet);
  },
});

const coefficient = (symbol: string, most: string, ...also: readonly string[]) =>
  quantity(symbol, '1', ['0', most], ...also);

export const ownCoefficients = calculation({
  name: 'resting-by-own-coefficients',
  also: ['own-coefficients', 'basal-own', 'custom-equation'],
  asks: {
    constant: coefficient('c₀', '7000', 'constant', 'c0'),
    perKg: coefficient('a', '30', 'weightTerm', 'a'),
    perCm: coefficient('b', '20', 'heightTerm', 'b'),
    perYear: coefficient('c', '20', 'ageTerm', 'c'),
    weightKg: adultWeight,
    heightCm: adultHeight,
    ageYears: adultAge,
    ...factors,
  },
  gives: restingGives,
  equations: ['R = c₀ + a × W + b × H − c × A', 'E = R × k × k₂'],
  sources: [],
  rule: 'RK5',
  cautions: ['own-coefficients'],
  example: {
    constant: '655',
    perKg: '9.6',
    perCm: '1.8',
    perYear: '4.7',
    weight: '56.8 kg',
    height: '162.6 cm',
    age: '40',
    factor: '1.5',
  },
  compute: (
    { constant, perKg, perCm, perYear, weightKg: W, heightCm: H, ageYears: A, factor: k, stressFactor: k2 },
    sheet,
  ) => {
    const value = minus(plus(constant, times(perKg, W), times(perCm, H)), times(perYear, A));
    const from = [constant, perKg, W, perCm, H, perYear, A];
    return withFactors(
      sheet.number('restingKcal', 'R = c₀ + a × W + b × H − c × A', from, value),
      k,
      k2,
      sheet,
    );
  },
});

export const energyFactor = calculation({
  name: 'energy-factor',
  also: ['activity-factor', 'stress-factor', 'total-energy'],
  asks: {
    restingKcal: quantity(
      'R',
      'kcal',
      ['100', '10000'],
      'ree',
      'bee',
      'bmr',
      'rmr',
      'resting',
      'basal',
      'energy',
    ),
    factor: quantity('k', '1', ['0.5', '3'], 'factor', 'activity', 'activityFactor'),
    stressFactor: stress,
  },
  gives: { energyKcal: gives('E', 'kcal') },
  equations: ['E = R × k × k₂'],
  sources: ['E54'],
  rule: 'RK9',
  example: { resting: '1396 kcal', factor: '1.375' },
  compute: ({ restingKcal: R, factor: k, stressFactor: k2 }, sheet) => [
    k2 === null
      ? sheet.number('energyKcal', 'E = R × k', [R, k], times(R, k))
      : sheet.number('energyKcal', 'E = R × k × k₂', [R, k, k2], times(R, k, k2)),
  ],
});

const PENN = {
  '2003b': {
    equation: 'E = 0.96 × R + 31 × VE + 167 × T − 6212',
    k: ['0.96', '31', '167', '6212'],
    source: 'E15',
  },
  '2010': {
    equation: 'E = 0.71 × R + 64 × VE + 85 × T − 3085',
    k: ['0.71', '64', '85', '3085'],
    source: 'E16',
  },
} as const;

const THIRTY = of(30);
const SIXTY = of(60);

/** 2010 holds for people of 60 years or more with a BMI of 30 or more; 2003b for everybody else. */
const pennFor = (A: Exact, B: Exact): '2003b' | '2010' =>
  less(A, SIXTY) || less(B, THIRTY) ? '2003b' : '2010';

export const pennState = calculation({
  name: 'penn-state',
  also: ['psu', 'ventilated-energy', 'penn-state-2003b', 'penn-state-2010'],
  asks: {
    ...person,
    ventilationLPerMin: quantity('VE', 'L/min', ['1', '40'], 've', 'minuteVentilation', 'ventilation'),
    temperatureCel: quantity('T', 'Cel', ['30', '43'], 'tmax', 'temperature', 'temp', 'maximumTemperature'),
    version: assumed(
      choice('version', { 'by-age-and-bmi': ['auto'], '2003b': ['2003'], '2010': ['modified'] }, 'form'),
      'by-age-and-bmi',
      '2003b',
      '2010',
    ),
  },
  gives: {
    restingKcal: gives('R', 'kcal'),
    bmiKgPerM2: gives('B', 'kg/m2', '0.1'),
    energyKcal: gives('E', 'kcal'),
    versionUsed: names('version'),
  },
  equations: [...Object.values(MIFFLIN.short).map(written), PENN['2003b'].equation, PENN['2010'].equation],
  sources: ['E15', 'E16', 'E12'],
  rule: 'RK5',
  example: { sex: 'male', weight: '80 kg', height: '180 cm', age: '40', ve: '9 L/min', tmax: '38.2 °C' },
  compute: (
    { sex: who, weightKg: W, heightCm: H, ageYears: A, ventilationLPerMin: VE, temperatureCel: T, version },
    sheet,
  ) => {
    const mifflinBy = MIFFLIN.short[who];
    const R = sheet.number('restingKcal', written(mifflinBy), [W, H, A], linear(mifflinBy, W, H, A), 'E12');
    const B = sheet.number('bmiKgPerM2', 'B = W / (H/100)²', [W, H], bmiOf(W, H), 'arithmetic');
    const fitting = pennFor(A, B);
    if (version !== 'by-age-and-bmi' && version !== fitting)
      return sheet.refuse('version', 'reckon/equation-for-others', { asked: version, fitting });
    const { equation, k, source } = PENN[fitting];
    const [a, b, c, d] = k;
    const value = minus(plus(times(of(a), R), times(of(b), VE), times(of(c), T)), of(d));
    if (compare(value, of(0)) <= 0) return sheet.refuse('temperatureCel', 'reckon/no-sense', {});
    return [
      R,
      B,
      sheet.choice('versionUsed', 'version', [A, B], fitting, source),
      sheet.number('energyKcal', equation, [R, VE, T], value, source),
    ];
  },
});
