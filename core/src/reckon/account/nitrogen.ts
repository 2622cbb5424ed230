/** How much nitrogen went in and out, how much energy is there to it, and how much of a nutrient is so much energy? */
import { assumed, choice, gives, optional, quantity } from '../asking/asks.ts';
import { energyGoal } from '../asking/usual-asks.ts';
import { calculation, type Known } from '../declare.ts';
import { minus, of, over, plus, times } from '../exact.ts';

const PER_N = of('6.25');
const HUNDRED = of(100);
const protein = quantity('P', 'g', ['0', '500'], 'protein', 'proteinIntake');

export const nitrogen = calculation({
  name: 'nitrogen',
  also: ['nitrogen-of-protein', 'protein-to-nitrogen'],
  asks: {
    proteinG: optional(protein),
    nitrogenG: optional(quantity('N', 'g', ['0', '100'], 'nitrogen', 'n')),
  },
  oneOf: [[['proteinG'], ['nitrogenG']]],
  gives: { nitrogenG: gives('N', 'g', '0.1'), proteinG: gives('P', 'g', '0.1') },
  equations: ['N = P / 6.25', 'P = 6.25 × N'],
  sources: ['E43'],
  rule: 'RK9',
  example: { protein: '90 g' },
  compute: ({ proteinG: P, nitrogenG: N }, sheet) =>
    P !== null
      ? [sheet.number('nitrogenG', 'N = P / 6.25', [P], over(P, PER_N))]
      : [sheet.number('proteinG', 'P = 6.25 × N', [N as Known], times(PER_N, N as Known))],
});

export const nitrogenBalance = calculation({
  name: 'nitrogen-balance',
  also: ['n-balance'],
  asks: {
    proteinG: protein,
    urineUreaNitrogenG: quantity(
      'U',
      'g',
      ['0', '80'],
      'uun',
      'urineUreaNitrogen',
      'urinaryUreaNitrogen',
      'urea',
    ),
    otherLossesG: assumed(
      quantity('x', 'g', ['0', '20', 'print'], 'other', 'otherLosses', 'insensible'),
      '4',
    ),
  },
  gives: {
    nitrogenInG: gives('Ni', 'g', '0.1'),
    nitrogenOutG: gives('No', 'g', '0.1'),
    balanceG: gives('B', 'g', '0.1'),
    proteinBalanceG: gives('Pb', 'g', '0.1'),
  },
  equations: ['Ni = P / 6.25', 'No = U + x', 'B = Ni − No', 'Pb = 6.25 × B'],
  sources: ['E43'],
  rule: 'RK3',
  example: { protein: '90 g', uun: '20 g' },
  compute: ({ proteinG: P, urineUreaNitrogenG: U, otherLossesG: x }, sheet) => {
    const Ni = sheet.number('nitrogenInG', 'Ni = P / 6.25', [P], over(P, PER_N));
    const No = sheet.number('nitrogenOutG', 'No = U + x', [U, x], plus(U, x));
    const B = sheet.number('balanceG', 'B = Ni − No', [Ni, No], minus(Ni, No));
    return [Ni, No, B, sheet.number('proteinBalanceG', 'Pb = 6.25 × B', [B], times(PER_N, B))];
  },
});

const percentOfEnergy = quantity(
  'p',
  '%',
  ['0.1', '100', 'definition'],
  'percent',
  'proteinPercent',
  'proteinPercentOfKcal',
  'percentOfKcal',
  'share',
);

export const energyToNitrogen = calculation({
  name: 'energy-to-nitrogen',
  also: ['npc-n', 'npc-to-n', 'kcal-to-nitrogen', 'calorie-nitrogen-ratio', 'non-protein-kcal', 'kcal-n'],
  asks: {
    energyKcal: energyGoal,
    proteinG: optional({ ...protein, also: ['protein'] }),
    percentOfEnergy: optional(percentOfEnergy),
  },
  oneOf: [[['proteinG'], ['percentOfEnergy']]],
  gives: {
    proteinG: gives('P', 'g', '0.1'),
    nitrogenG: gives('N', 'g', '0.1'),
    nonProteinKcal: gives('En', 'kcal'),
    nonProteinKcalPerG: gives('En/N', 'kcal/g'),
    totalKcalPerG: gives('E/N', 'kcal/g'),
  },
  equations: ['P = p × E / 100 / 4', 'N = P / 6.25', 'En = E − 4 × P', 'En / N', 'E / N'],
  sources: ['E44', 'E3'],
  rule: 'RK5',
  cautions: ['two-ratios'],
  example: { energy: '2162 kcal', percent: '16.7' },
  compute: ({ energyKcal: E, proteinG, percentOfEnergy: p }, sheet) => {
    const P =
      proteinG !== null
        ? sheet.number('proteinG', 'P', [], proteinG, 'arithmetic')
        : sheet.number(
            'proteinG',
            'P = p × E / 100 / 4',
            [p as Known, E],
            over(times(p as Known, E), of(400)),
            'E3',
          );
    if (P.n === 0n) return sheet.refuse('proteinG', 'reckon/nothing-in-it');
    const N = sheet.number('nitrogenG', 'N = P / 6.25', [P], over(P, PER_N));
    const En = sheet.number('nonProteinKcal', 'En = E − 4 × P', [E, P], minus(E, times(of(4), P)));
    if (En.n < 0n) return sheet.refuse('proteinG', 'reckon/more-protein-than-energy');
    sheet.used('ratio', 'both', []);
    return [
      P,
      N,
      En,
      sheet.number('nonProteinKcalPerG', 'En / N', [En, N], over(En, N)),
      sheet.number('totalKcalPerG', 'E / N', [E, N], over(E, N), 'E3'),
    ];
  },
});

export const nitrogenForEnergy = calculation({
  name: 'nitrogen-for-energy',
  also: ['nitrogen-by-ratio', 'protein-by-ratio'],
  asks: {
    energyKcal: energyGoal,
    ratioKcalPerG: quantity('q', 'kcal/g', ['25', '500'], 'ratio', 'kcalPerGN', 'kcalToN'),
  },
  gives: { nitrogenG: gives('N', 'g', '0.1'), proteinG: gives('P', 'g', '0.1') },
  equations: ['N = E / q', 'P = 6.25 × N'],
  sources: ['E44'],
  rule: 'RK9',
  example: { energy: '1500 kcal', ratio: '150' },
  compute: ({ energyKcal: E, ratioKcalPerG: q }, sheet) => {
    const N = sheet.number('nitrogenG', 'N = E / q', [E, q], over(E, q));
    return [N, sheet.number('proteinG', 'P = 6.25 × N', [N], times(PER_N, N))];
  },
});

const PER_GRAM = { protein: '4', carbohydrate: '4', fat: '9', alcohol: '7' } as const;

export const macronutrient = calculation({
  name: 'grams-from-percent',
  also: ['macronutrient', 'percent-of-energy', 'protein-from-percent', 'percent-to-grams', 'protein-grams'],
  asks: {
    energyKcal: energyGoal,
    percentOfEnergy: optional(percentOfEnergy),
    nutrientG: optional(
      quantity('G', 'g', ['0', '2000'], 'grams', 'protein', 'fat', 'carbohydrate', 'amount'),
    ),
    of: assumed(
      choice(
        'of',
        { protein: [], carbohydrate: ['carb', 'cho', 'carbs'], fat: ['lipid'], alcohol: [] },
        'nutrient',
      ),
      'protein',
    ),
    kcalPerG: optional(quantity('k', 'kcal/g', ['1', '10', 'print'], 'kcalPerGProtein', 'perGram')),
  },
  oneOf: [[['percentOfEnergy'], ['nutrientG']]],
  gives: {
    nutrientKcal: gives('En', 'kcal'),
    nutrientG: gives('G', 'g', '0.1'),
    percentOfEnergy: gives('p', '%', '0.1'),
  },
  equations: [
    'En = p × E / 100',
    'G = En / k; k = 4 protein and carbohydrate, 9 fat, 7 alcohol',
    'En = G × k',
    'p = 100 × En / E',
  ],
  sources: ['E3'],
  rule: 'RK3',
  example: { energy: '2162 kcal', percent: '16.7' },
  compute: ({ energyKcal: E, percentOfEnergy: p, nutrientG: G, of: which, kcalPerG }, sheet) => {
    const k = kcalPerG ?? sheet.printed('k', of(PER_GRAM[which]), 'kcal/g');
    if (p !== null) {
      const En = sheet.number('nutrientKcal', 'En = p × E / 100', [p, E], over(times(p, E), HUNDRED));
      return [En, sheet.number('nutrientG', 'G = En / k', [En, k], over(En, k))];
    }
    const En = sheet.number('nutrientKcal', 'En = G × k', [G as Known, k], times(G as Known, k));
    return [En, sheet.number('percentOfEnergy', 'p = 100 × En / E', [En, E], over(times(HUNDRED, En), E))];
  },
});
