/** How much energy at rest, from weight, height and age? */
import { assumed, choice, gives, optional, quantity } from '../asking/asks.ts';
import { adultAge, adultWeight, height, sex } from '../asking/usual-asks.ts';
import { calculation, type Known, type Line, type NumberLine, type Sheet } from '../declare.ts';
import { type Exact, minus, of, plus, times } from '../exact.ts';
import type { SourceId } from '../sources.ts';

type Sex = 'male' | 'female';
/** constant + a × W + b × H − c × A */
type Linear = {
  readonly constant: string;
  readonly perKg: string;
  readonly perCm: string;
  readonly perYear: string;
};

export const linear = (by: Linear, W: Exact, H: Exact, A: Exact): Exact =>
  plus(
    of(by.constant),
    times(of(by.perKg), W),
    times(of(by.perCm), H),
    minus(of(0), times(of(by.perYear), A)),
  );

export const written = ({ constant, perKg, perCm, perYear }: Linear): string =>
  `R = ${constant.replace('-', '−')} + ${perKg} × W + ${perCm} × H − ${perYear} × A`;

export const MIFFLIN: Readonly<Record<'short' | 'long', Readonly<Record<Sex, Linear>>>> = {
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

export const person = { sex, weightKg: adultWeight, heightCm: adultHeight, ageYears: adultAge };
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
