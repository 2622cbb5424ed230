/** How much energy does a ventilated adult need at rest, by Penn State, 2003b or 2010? */
import { assumed, choice, gives, names, quantity } from '../asking/asks.ts';
import { calculation } from '../declare.ts';
import { compare, type Exact, less, minus, of, plus, times } from '../exact.ts';
import { linear, MIFFLIN, person, written } from './resting-energy.ts';
import { bmiOf } from './weights.ts';

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
