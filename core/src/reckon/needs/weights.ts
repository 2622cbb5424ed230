/** What weight is worked from: body mass index, ideal and adjusted weight, body surface, weight lost? */
import { assumed, choice, gives, names, optional, quantity } from '../asking/asks.ts';
import { height, sex, weight } from '../asking/usual-asks.ts';
import { calculation, type Known, type Line, type Sheet } from '../declare.ts';
import {
  compare,
  type Exact,
  less,
  minus,
  of,
  ofDouble,
  over,
  plus,
  rounded,
  times,
  toDouble,
} from '../exact.ts';

const HUNDRED = of(100);
const INCH = of('2.54');
const squared = (a: Exact): Exact => times(a, a);

export const bmiOf = (W: Exact, H: Exact): Exact => over(W, squared(over(H, HUNDRED)));

const inches = (H: Exact): Exact => over(H, INCH);
const pounds = (W: Exact): Exact => over(W, of('0.45359237'));

export const bmi = calculation({
  name: 'bmi',
  also: ['body-mass-index', 'quetelet'],
  asks: {
    weightKg: weight,
    heightCm: height,
    form: assumed(
      choice(
        'form',
        {
          metric: ['exact', 'kg'],
          '703': ['imperial', 'us', 'lb'],
          'height-squared-first': ['two-places', 'rounded-square'],
        },
        'method',
      ),
      'metric',
      '703',
      'height-squared-first',
    ),
  },
  gives: { bmiKgPerM2: gives('B', 'kg/m2', '0.1') },
  equations: ['B = W / (H/100)²', 'B = 703 × lb / in²', 'B = W / ((H/100)² to two places)'],
  sources: ['E35', 'E36'],
  rule: 'RK5',
  example: { weight: '74 kg', height: '1.63 m' },
  compute: ({ weightKg: W, heightCm: H, form }, sheet) => {
    if (form === '703') {
      const value = over(times(of(703), pounds(W)), squared(inches(H)));
      return [sheet.number('bmiKgPerM2', 'B = 703 × lb / in²', [W, H], value, 'E36')];
    }
    if (form === 'height-squared-first') {
      const square = rounded(squared(over(H, HUNDRED)), of('0.01'), 'half-up');
      return [sheet.number('bmiKgPerM2', 'B = W / ((H/100)² to two places)', [W, H], over(W, square))];
    }
    return [sheet.number('bmiKgPerM2', 'B = W / (H/100)²', [W, H], bmiOf(W, H), 'arithmetic')];
  },
});

type Sex = 'male' | 'female';
export type IdealForm = 'devine' | 'hamwi';
const SIXTY = of(60);

/** Devine’s and Hamwi’s ideal weight in kg. */
export function idealOf(by: IdealForm, who: Sex, H: Exact): Exact {
  const over60 = minus(inches(H), SIXTY);
  if (by === 'devine') return plus(of(who === 'male' ? '50' : '45.5'), times(of('2.3'), over60));
  const lb = who === 'male' ? plus(of(106), times(of(6), over60)) : plus(of(100), times(of(5), over60));
  return times(lb, of('0.45359237'));
}

export const IDEAL_EQUATIONS: Readonly<Record<IdealForm, Readonly<Record<Sex, string>>>> = {
  devine: { male: 'I = 50 + 2.3 × (in − 60)', female: 'I = 45.5 + 2.3 × (in − 60)' },
  hamwi: { male: 'I = (106 + 6 × (in − 60)) lb', female: 'I = (100 + 5 × (in − 60)) lb' },
};
export const IDEAL_SOURCE = { devine: 'E25', hamwi: 'E26' } as const;

/** The equations begin at 60 inches. */
const idealHeight = quantity('H', 'cm', ['152.4', '230', 'equation'], ...height.also);
export const idealForm = assumed(
  choice('by', { devine: [], hamwi: [] }, 'equation', 'method', 'idealBy', 'formula'),
  'devine',
  'hamwi',
);

export const idealWeight = calculation({
  name: 'ideal-weight',
  also: ['ideal-body-weight', 'ibw', 'devine', 'hamwi'],
  asks: {
    sex,
    heightCm: idealHeight,
    by: idealForm,
    frame: assumed(
      choice('frame', { medium: ['average', 'normal'], small: [], large: ['big'] }, 'frameSize'),
      'medium',
    ),
    weightKg: optional(weight),
  },
  gives: {
    idealWeightKg: gives('I', 'kg', '0.1'),
    idealWeightLb: gives('I', '[lb_av]', '0.1'),
    percentOfIdeal: gives('p', '%'),
  },
  equations: [
    ...Object.values(IDEAL_EQUATIONS.devine),
    ...Object.values(IDEAL_EQUATIONS.hamwi),
    'I × 0.9 small, × 1.1 large frame (Hamwi)',
    'p = 100 × W / I',
  ],
  sources: ['E25', 'E26'],
  rule: 'RK5',
  example: { sex: 'male', height: '70 in', weight: '190 kg' },
  compute: ({ sex: who, heightCm: H, by, frame, weightKg: W }, sheet) => {
    if (frame !== 'medium' && by === 'devine') return sheet.refuse('frame', 'reckon/frame-is-hamwi');
    const factor = of(frame === 'small' ? '0.9' : frame === 'large' ? '1.1' : '1');
    const equation =
      frame === 'medium'
        ? IDEAL_EQUATIONS[by][who]
        : `${IDEAL_EQUATIONS[by][who]} × ${frame === 'small' ? '0.9' : '1.1'}`;
    const I = sheet.number(
      'idealWeightKg',
      equation,
      [H],
      times(idealOf(by, who, H), factor),
      IDEAL_SOURCE[by],
    );
    const lb = sheet.number('idealWeightLb', 'I / lb', [I], pounds(I), 'arithmetic');
    return W === null
      ? [I, lb]
      : [
          I,
          lb,
          sheet.number('percentOfIdeal', 'p = 100 × W / I', [W, I], over(times(HUNDRED, W), I), 'arithmetic'),
        ];
  },
});

export const adjustedWeight = calculation({
  name: 'adjusted-weight',
  also: ['adjusted-body-weight', 'abw', 'adjbw'],
  asks: {
    weightKg: weight,
    idealWeightKg: optional(quantity('I', 'kg', ['20', '150'], 'ideal', 'ibw', 'idealWeight')),
    sex: optional(sex),
    heightCm: optional(idealHeight),
    by: idealForm,
    factor: assumed(quantity('k', '1', ['0.1', '0.5', 'print'], 'factor'), '0.25', '0.4', '0.2', '0.1'),
  },
  oneOf: [[['idealWeightKg'], ['sex', 'heightCm']]],
  gives: {
    idealWeightKg: gives('I', 'kg', '0.1'),
    percentOfIdeal: gives('p', '%'),
    adjustedWeightKg: gives('J', 'kg', '0.1'),
  },
  equations: ['J = I + k × (W − I)', 'p = 100 × W / I'],
  sources: ['E27', 'E28'],
  rule: 'RK5',
  example: { sex: 'male', height: '70 in', weight: '190 kg', factor: '0.4' },
  compute: ({ weightKg: W, idealWeightKg, sex: who, heightCm: H, by, factor: k }, sheet) => {
    const I =
      idealWeightKg !== null
        ? sheet.number('idealWeightKg', 'I', [], idealWeightKg, 'arithmetic')
        : sheet.number(
            'idealWeightKg',
            IDEAL_EQUATIONS[by][who as Sex],
            [H as Known],
            idealOf(by, who as Sex, H as Known),
            IDEAL_SOURCE[by],
          );
    if (less(W, I)) sheet.caution('lighter-than-ideal');
    const isPharmacy = compare(k, of('0.25')) !== 0;
    return [
      I,
      sheet.number('percentOfIdeal', 'p = 100 × W / I', [W, I], over(times(HUNDRED, W), I), 'arithmetic'),
      sheet.number(
        'adjustedWeightKg',
        'J = I + k × (W − I)',
        [I, k, W],
        plus(I, times(k, minus(W, I))),
        isPharmacy ? 'E28' : 'E27',
      ),
    ];
  },
});

const surfaceBy = assumed(
  choice('by', { mosteller: [], 'du-bois': ['dubois'] }, 'equation', 'method', 'formula'),
  'mosteller',
  'du-bois',
);

/** m², by square root or powers: a double, rounded only where it is shown. */
export function surface(
  by: 'mosteller' | 'du-bois',
  W: Known,
  H: Known,
  key: 'surfaceM2',
  sheet: Sheet<'surfaceM2'>,
): Known & Line {
  if (by === 'mosteller') {
    const value = ofDouble(Math.sqrt(toDouble(over(times(H, W), of(3600)))));
    return sheet.number(key, 'S = √(H × W / 3600)', [H, W], value, 'E33');
  }
  const value = ofDouble(0.007184 * toDouble(H) ** 0.725 * toDouble(W) ** 0.425);
  return sheet.number(key, 'S = 0.007184 × H^0.725 × W^0.425', [H, W], value, 'E34');
}

export const bodySurface = calculation({
  name: 'body-surface',
  also: ['bsa', 'body-surface-area', 'mosteller', 'du-bois', 'dubois'],
  asks: { weightKg: weight, heightCm: height, by: surfaceBy },
  gives: { surfaceM2: gives('S', 'm2', '0.01') },
  equations: ['S = √(H × W / 3600)', 'S = 0.007184 × H^0.725 × W^0.425'],
  sources: ['E33', 'E34'],
  rule: 'RK5',
  example: { weight: '70 kg', height: '170 cm' },
  compute: ({ weightKg: W, heightCm: H, by }, sheet) => [surface(by, W, H, 'surfaceM2', sheet)],
});

export const weightLoss = calculation({
  name: 'weight-loss',
  also: ['percent-weight-loss', 'weight-loss-percent', 'percent-usual', 'percent-usual-weight'],
  asks: {
    usualWeightKg: quantity('U', 'kg', ['0.3', '400'], 'usual', 'before', 'previous', 'usualWeight'),
    weightKg: { ...weight, also: [...weight.also, 'now', 'current', 'currentWeight'] },
    overMonths: optional(quantity('m', 'mo', ['0.1', '120'], 'months', 'over', 'period', 'time')),
  },
  gives: {
    lostKg: gives('L', 'kg', '0.1'),
    lossPercent: gives('l', '%', '0.1'),
    percentOfUsual: gives('p', '%', '0.1'),
    lossPercentPerMonth: gives('l/m', '%/mo', '0.1'),
    gained: names('W > U'),
  },
  equations: ['L = U − W', 'l = 100 × (U − W) / U', 'p = 100 × W / U', 'l / m'],
  sources: ['E55'],
  rule: 'RK10',
  example: { usual: '167 lb', now: '156 lb' },
  compute: ({ usualWeightKg: U, weightKg: W, overMonths: m }, sheet) => {
    const lost = minus(U, W);
    const percent = over(times(HUNDRED, lost), U);
    const l = sheet.number('lossPercent', 'l = 100 × (U − W) / U', [U, W], percent);
    return [
      sheet.number('lostKg', 'L = U − W', [U, W], lost),
      l,
      sheet.number('percentOfUsual', 'p = 100 × W / U', [W, U], over(times(HUNDRED, W), U)),
      sheet.choice('gained', 'W > U', [W, U], lost.n < 0n ? 'yes' : 'no'),
      ...(m === null ? [] : [sheet.number('lossPercentPerMonth', 'l / m', [l, m], over(l, m), 'arithmetic')]),
    ];
  },
});
