/** What must the kidneys carry, how much free water is lacking, what would calcium be at a normal albumin? */
import { assumed, choice, gives, optional, quantity, yesOrNo } from '../asking/asks.ts';
import { sex, weight } from '../asking/usual-asks.ts';
import { calculation, type Known, type Line } from '../declare.ts';
import { less, minus, of, over, plus, times } from '../exact.ts';
import { SUBSTANCES } from '../risk/substances.ts';

const ion = (symbol: string, ...also: readonly string[]) => quantity(symbol, 'mmol', ['0', '500'], ...also);

export const renalSoluteLoad = calculation({
  name: 'renal-solute-load',
  also: ['prsl', 'rsl', 'potential-renal-solute-load', 'solute-load'],
  asks: {
    proteinG: quantity('P', 'g', ['0', '200'], 'protein', 'proteinGL'),
    sodiumMmol: ion('Na', 'na', 'sodium'),
    chlorideMmol: ion('Cl', 'cl', 'chloride'),
    potassiumMmol: ion('K', 'k', 'potassium'),
    phosphorusMmol: optional(ion('Ph', 'phosphorusMmol')),
    phosphorusMg: optional(quantity('Ph', 'mg', ['0', '5000'], 'p', 'phosphorus', 'pMgL')),
    form: assumed(
      choice('form', { potential: ['fomon', 'prsl', 'new'], older: ['old', 'simple'] }, 'equation'),
      'potential',
      'older',
    ),
    weightGainGPerDay: optional(quantity('g', 'g', ['0', '100'], 'gain', 'weightGain')),
  },
  gives: {
    nitrogenMg: gives('N', 'mg'),
    ureaMosm: gives('u', 'mosm', '0.1'),
    phosphorusMmol: gives('Ph', 'mmol', '0.1'),
    loadMosm: gives('S', 'mosm', '0.1'),
    estimateMosm: gives('S′', 'mosm', '0.1'),
  },
  equations: [
    'N = 1000 × P / 6.25',
    'u = N / 28',
    'Ph = mg / 31',
    'S = u + Na + Cl + K + Ph',
    'S = Na + K + Cl + 4 × P (older)',
    'S′ = S − 0.9 × g',
  ],
  sources: ['E45', 'E46', 'E43'],
  rule: 'RK5',
  example: { protein: '15 g', na: '8', k: '18', cl: '12', phosphorus: '310 mg' },
  compute: (given, sheet) => {
    const {
      proteinG: P,
      sodiumMmol: Na,
      chlorideMmol: Cl,
      potassiumMmol: K,
      phosphorusMg: mg,
      weightGainGPerDay: g,
    } = given;
    if (given.form === 'older') {
      const S = sheet.number(
        'loadMosm',
        'S = Na + K + Cl + 4 × P',
        [Na, K, Cl, P],
        plus(Na, K, Cl, times(of(4), P)),
        'E46',
      );
      return [S];
    }
    const N = sheet.number(
      'nitrogenMg',
      'N = 1000 × P / 6.25',
      [P],
      over(times(of(1000), P), of('6.25')),
      'E43',
    );
    const u = sheet.number('ureaMosm', 'u = N / 28', [N], over(N, of(28)));
    const Ph =
      given.phosphorusMmol !== null
        ? sheet.number('phosphorusMmol', 'Ph', [], given.phosphorusMmol, 'arithmetic')
        : mg !== null
          ? sheet.number('phosphorusMmol', 'Ph = mg / 31', [mg], over(mg, of(31)))
          : null;
    if (Ph === null)
      return sheet.refuse('phosphorusMg', 'reckon/missing', { unit: 'mg', accepted: ['mg', 'mmol'] });
    const S = sheet.number(
      'loadMosm',
      'S = u + Na + Cl + K + Ph',
      [u, Na, Cl, K, Ph],
      plus(u, Na, Cl, K, Ph),
    );
    const lines: Line[] = [N, u, Ph, S];
    return g === null
      ? lines
      : [...lines, sheet.number('estimateMosm', 'S′ = S − 0.9 × g', [S, g], minus(S, times(of('0.9'), g)))];
  },
});

const FRACTIONS = {
  child: '0.6',
  male: '0.6',
  female: '0.5',
  'older-male': '0.5',
  'older-female': '0.45',
} as const;

export const freeWaterDeficit = calculation({
  name: 'free-water-deficit',
  also: ['water-deficit', 'fwd'],
  asks: {
    weightKg: weight,
    sodiumMmolPerL: quantity('Na', 'mmol/L', ['100', '200'], 'na', 'sodium', 'serumSodium'),
    targetMmolPerL: assumed(
      quantity('T', 'mmol/L', ['130', '150', 'print'], 'target', 'goal', 'desired', 'normal'),
      '140',
      '145',
    ),
    sex: optional(sex),
    older: assumed(yesOrNo('older', 'elderly'), 'no'),
    child: assumed(yesOrNo('child'), 'no'),
    bodyWater: optional(
      quantity('k', '1', ['0.35', '0.8', 'print'], 'fraction', 'tbw', 'tbwFraction', 'totalBodyWater'),
    ),
  },
  gives: {
    bodyWaterL: gives('TBW', 'L', '0.1'),
    deficitL: gives('D', 'L', '0.1'),
    deficitMl: gives('D', 'mL'),
  },
  equations: [
    'TBW = k × W; k = 0.6 child or man, 0.5 woman or older man, 0.45 older woman',
    'D = TBW × (Na / T − 1)',
  ],
  sources: ['E47'],
  rule: 'RK5',
  cautions: ['correct-slowly'],
  example: { weight: '70 kg', na: '154', sex: 'male' },
  compute: (
    { weightKg: W, sodiumMmolPerL: Na, targetMmolPerL: T, sex: who, older, child, bodyWater },
    sheet,
  ) => {
    if (bodyWater === null && who === null && !child)
      return sheet.refuse('sex', 'reckon/missing', { unit: '', accepted: ['male', 'female'] });
    const group = child ? 'child' : older ? (`older-${who ?? 'male'}` as const) : (who ?? 'male');
    const k: Known = bodyWater ?? sheet.printed('k', of(FRACTIONS[group]), '1');
    if (less(Na, T)) sheet.caution('no-deficit');
    sheet.used('body-water', bodyWater === null ? `${group} ${FRACTIONS[group]}` : 'as-given', []);
    const total = sheet.number('bodyWaterL', 'TBW = k × W', [k, W], times(k, W));
    const D = times(total, minus(over(Na, T), of(1)));
    const litres = sheet.number('deficitL', 'D = TBW × (Na / T − 1)', [total, Na, T], D);
    return [total, litres, sheet.number('deficitMl', '1000 × D', [litres], times(of(1000), D), 'arithmetic')];
  },
});

export const correctedCalcium = calculation({
  name: 'corrected-calcium',
  also: ['calcium'],
  asks: {
    calciumMgPerDl: quantity('Ca', 'mg/dL', ['2', '25'], 'ca', 'calcium'),
    albuminGPerDl: quantity('Al', 'g/dL', ['0.5', '7'], 'albumin', 'alb'),
  },
  gives: {
    correctedMgPerDl: gives('Ca′', 'mg/dL', '0.1'),
    correctedMmolPerL: gives('Ca′', 'mmol/L', '0.01'),
  },
  equations: ['Ca′ = Ca + 0.8 × (4 − Al)', 'mmol/L = 10 × mg/dL / M'],
  sources: ['E48', 'E51'],
  rule: 'RK9',
  example: { calcium: '8.0', albumin: '2.5' },
  compute: ({ calciumMgPerDl: Ca, albuminGPerDl: Al }, sheet) => {
    const c = sheet.number(
      'correctedMgPerDl',
      'Ca′ = Ca + 0.8 × (4 − Al)',
      [Ca, Al],
      plus(Ca, times(of('0.8'), minus(of(4), Al))),
    );
    const M = sheet.printed('M', SUBSTANCES.calcium.molarMass, 'g/mol', 'E51');
    return [
      c,
      sheet.number('correctedMmolPerL', 'mmol/L = 10 × mg/dL / M', [c, M], over(times(of(10), c), M), 'E51'),
    ];
  },
});
