/** Which inputs do most calculations ask for? Each with its key’s unit, its other names and its band. */

import type { Ask, Known } from '../declare.ts';
import { choice, optional, quantity } from './asks.ts';

const MALE = ['m', 'man', 'boy', 'men', 'boys'];
const FEMALE = ['f', 'woman', 'girl', 'women', 'girls'];

export const sex = choice('sex', { male: MALE, female: FEMALE }, 'gender');

export const weight = quantity(
  'W',
  'kg',
  ['0.3', '400'],
  'weight',
  'wt',
  'w',
  'mass',
  'actualWeight',
  'bodyWeight',
  'bw',
);
export const adultWeight = quantity(
  'W',
  'kg',
  ['20', '400', 'equation'],
  'weight',
  'wt',
  'w',
  'actualWeight',
  'bodyWeight',
);
export const height = quantity('H', 'cm', ['30', '250'], 'height', 'ht', 'h', 'length', 'stature');
export const adultAge = quantity('A', 'a', ['18', '120', 'equation'], 'age', 'ageY', 'years');

export const volumeOf = (symbol: string, ...also: readonly string[]): Ask<Known> =>
  quantity(symbol, 'mL', ['0', '20000'], ...also);
export const volume = quantity(
  'V',
  'mL',
  ['0.1', '20000'],
  'volume',
  'vol',
  'v',
  'formula',
  'formulaVolume',
  'dailyVolume',
  'feed',
  'amount',
);
export const rate = quantity('r', 'mL/h', ['0.1', '2000'], 'rate', 'r', 'pumpRate', 'flow');
export const hoursADay = quantity(
  't',
  'h',
  ['0.1', '25', 'definition'],
  'hours',
  'hoursPerDay',
  'hoursADay',
  'duration',
  'time',
  'over',
  't',
);
export const hours = quantity('t', 'h', ['0.01', '168'], 'hours', 'duration', 'time', 'over', 't');

export const energyGoal = quantity(
  'E',
  'kcal',
  ['1', '20000'],
  'goal',
  'energy',
  'kcal',
  'kcalGoal',
  'energyGoal',
  'goalKcal',
  'calories',
  'energyNeed',
);
export const proteinGoal = quantity(
  'P',
  'g',
  ['0.1', '500'],
  'goal',
  'protein',
  'proteinGoal',
  'goalProtein',
);
export const energyDensity = quantity(
  'e',
  'kcal/mL',
  ['0.1', '4'],
  'density',
  'energyDensity',
  'energy',
  'kcal',
  'caloricDensity',
);
export const proteinDensity = quantity('p', 'g/L', ['0', '250'], 'protein', 'proteinDensity');
const fibreDensity = quantity('f', 'g/L', ['0', '60'], 'fibre', 'fiber', 'fibreDensity');
/** As a fraction: `0.8`, `80 %`, `805 mL/L`, `191 mL per 237 mL`. */
export const waterFraction = quantity(
  'w',
  'mL/mL',
  ['0.3', '1', 'definition'],
  'water',
  'freeWater',
  'formulaWater',
  'waterFraction',
  'waterContent',
  'free',
);

/** 30 g protein a can; 240 kcal a can; 237 mL a can. */
export const perContainer = {
  energyKcalPerContainer: optional(
    quantity(
      'e',
      'kcal/{can}',
      ['1', '5000'],
      'energyPerContainer',
      'kcalPerContainer',
      'kcalPerCan',
      'energy',
      'kcal',
    ),
  ),
  proteinGPerContainer: optional(
    quantity('p', 'g/{can}', ['0', '300'], 'proteinPerContainer', 'proteinPerCan', 'protein'),
  ),
  waterMlPerContainer: optional(
    quantity('w', 'mL/{can}', ['0', '3000'], 'waterPerContainer', 'waterPerCan', 'water', 'freeWater'),
  ),
  containerMl: optional(
    quantity(
      'c',
      'mL',
      ['1', '3000'],
      'container',
      'can',
      'canMl',
      'canSize',
      'carton',
      'volumePerContainer',
      'perContainer',
      'size',
    ),
  ),
};

/** What is in each mL, where it is known. */
export const densities = {
  energyKcalPerMl: optional(energyDensity),
  proteinGPerL: optional(proteinDensity),
  waterFraction: optional(waterFraction),
  fibreGPerL: optional(fibreDensity),
};
