/** Rates, volumes, what is delivered, water, time. */
import type { Example, Trap } from './example.ts';

export const DELIVERY: readonly Example[] = [
  {
    id: 'A09',
    source: 'X1',
    kind: 'printed',
    runs: [
      {
        work: 'volume-for-energy',
        given: { kcal_goal: '1850', kcal_per_mL: '1.2', hours: '22' },
        shows: { volumeMl: 1542, rateMlPerHour: 70 },
        exact: { volumeMl: 1541.666667, rateMlPerHour: 70.075758 },
      },
    ],
  },
  {
    id: 'A10',
    source: 'X1',
    kind: 'printed',
    runs: [
      {
        work: 'delivered',
        given: { rate_mL_h: '70', hours: '22', kcal_per_mL: '1.2' },
        shows: { volumeMl: 1540, energyKcal: 1848 },
      },
    ],
    note: 'worked again from the rounded rate',
  },
  {
    id: 'A11',
    source: 'X1',
    kind: 'printed',
    runs: [
      {
        work: 'flushes',
        given: {
          volume_mL: '1540',
          water_mL_per_L: '805',
          fluid_goal_rule: '1 mL per kcal',
          kcal: '1848',
          hours: '22',
        },
        shows: { formulaWaterMl: 1240, extraWaterMl: 608, extraWaterMlPerHour: 28 },
        exact: { formulaWaterMl: 1239.7, extraWaterMl: 608.3, extraWaterMlPerHour: 27.65 },
      },
    ],
  },
  {
    id: 'A15',
    source: 'X2',
    kind: 'printed',
    runs: [
      {
        work: 'delivered',
        given: { rate_mL_h: '68', hours: '24', kcal_per_mL: '1.05', protein_g_per_237mL: '9' },
        shows: { volumeMl: 1632, energyKcal: 1714, proteinG: 62 },
        exact: { energyKcal: 1713.6, proteinG: 61.974684 },
      },
    ],
    note: 'the energy line is labelled mL in print; the number is right',
  },
  {
    id: 'A16',
    source: 'X2',
    kind: 'printed',
    runs: [
      {
        work: 'delivered',
        given: {
          rate_mL_h: '120',
          hours: '24',
          kcal_per_mL: '1.2',
          water_mL_per_237mL: '191',
          fibre_g_per_237mL: '4.3',
        },
        shows: { volumeMl: 2880, energyKcal: 3456, formulaWaterMl: 2321, fibreG: 52 },
        exact: { formulaWaterMl: 2321.012658, fibreG: 52.253165 },
      },
    ],
  },
  {
    id: 'A19',
    source: 'X2',
    kind: 'printed',
    runs: [
      {
        work: 'volume-for-protein',
        given: {
          protein_goal_g: '80',
          protein_g_per_250mL: '14',
          kcal_per_mL: '1.0',
          water_mL_per_250mL: '213',
        },
        shows: { volumeMl: 1429, energyKcal: 1429, formulaWaterMl: 1218 },
        exact: { volumeMl: 1428.571429 },
      },
      {
        work: 'volume-for-protein',
        given: {
          goal: '80 g',
          protein: '14 g/250mL',
          kcal_per_mL: '1.0',
          water: '213 mL/250mL',
          round: 'none',
        },
        exact: { energyKcal: 1428.571429, formulaWaterMl: 1217.142857 },
      },
    ],
    note: 'water from the rounded 1429 mL, as one pours; unrounded it is 1217',
  },
  {
    id: 'A21',
    source: 'X2',
    kind: 'printed',
    runs: [
      {
        work: 'delivered-by-containers',
        given: { cans: '3.5', kcal_per_can: '240', protein_g_per_can: '10' },
        shows: { energyKcal: 840, proteinG: 35 },
      },
    ],
  },
  {
    id: 'A22',
    source: 'X3',
    kind: 'printed',
    runs: [
      {
        work: 'delivered',
        given: { rate_mL_h: '85', hours: '24', kcal_per_mL: '1.06', water_mL_per_L: '835' },
        shows: { volumeMl: 2040, energyKcal: 2162 },
        exact: { energyKcal: 2162.4, formulaWaterMl: 1703.4 },
      },
      {
        work: 'formula-water',
        given: { volume: '2040 mL', water_mL_per_L: '835', round: '0.1' },
        shows: { formulaWaterMl: 1703.4 },
      },
    ],
  },
  {
    id: 'A25',
    source: 'X3',
    kind: 'printed',
    runs: [
      {
        work: 'volume-for-energy',
        given: { kcal_goal: '2028', kcal_per_mL: '1.3', hours: '24' },
        shows: { volumeMl: 1560, rateMlPerHour: 65 },
      },
    ],
    note: 'only the volume is in the part that was read; 65 mL/h follows',
  },
  {
    id: 'A28',
    source: 'X4',
    kind: 'printed',
    runs: [
      {
        work: 'delivered',
        given: { rate_mL_h: '90', hours: '24', kcal_per_mL: '1.2', protein_g_per_L: '55.5' },
        shows: { volumeMl: 2160, proteinG: 120 },
        exact: { energyKcal: 2592, proteinG: 119.88 },
      },
      {
        work: 'delivered',
        given: { rate_mL_h: '90', hours: '24', kcal_per_mL: '1.2', round: '20' },
        shows: { energyKcal: 2600 },
      },
    ],
    note: 'printed as “about”, energy to the nearest 20; 55.5 g/L is not printed on the sheet',
  },
  {
    id: 'A30',
    source: 'X4',
    kind: 'printed',
    runs: [
      {
        work: 'flushes',
        given: { volume_mL: '1800', water_mL_per_L: '805', fluid_goal_mL: '1800', flushes: '2', round: '5' },
        shows: { formulaWaterMl: 1450, extraWaterMl: 350, flushMl: 175 },
        exact: { formulaWaterMl: 1449, extraWaterMl: 351, flushMl: 175.5 },
      },
    ],
    note: 'to the nearest 5; 805 mL/L is taken from X1',
  },
  {
    id: 'A32',
    source: 'X5',
    kind: 'printed',
    runs: [
      {
        work: 'run-out',
        given: { volume_mL: '500', rate_mL_h: '75' },
        shows: { hours: 6.67, lasts: '6 h 40 min' },
        exact: { hours: 6.666667 },
      },
    ],
  },
  {
    id: 'A37',
    source: 'X5',
    kind: 'own',
    runs: [
      {
        work: 'run-out',
        given: { volume_mL: '600', rate_mL_h: '75', start: '08:00' },
        shows: { hours: 8, endsAt: '16:00', daysLater: 0 },
      },
    ],
  },
  {
    id: 'A38',
    source: 'X34',
    kind: 'own',
    runs: [
      {
        work: 'cyclic',
        given: { kcal_goal: '1800', share_overnight: '0.6', kcal_per_mL: '1.5', hours: '12', start: '20:00' },
        shows: { volumeMl: 720, rateMlPerHour: 60, endsAt: '08:00', daysLater: 1 },
      },
    ],
  },
  {
    id: 'A39',
    source: 'X5',
    kind: 'own',
    runs: [
      {
        work: 'run-out',
        given: { volume_mL: '1000', rate_mL_h: '65', start: '19:30' },
        shows: { lasts: '15 h 23 min', endsAt: '10:53', daysLater: 1 },
        exact: { hours: 15.384615 },
      },
    ],
    note: 'cut down to the minute',
  },
];

export const DELIVERY_TRAPS: readonly Trap[] = [
  {
    id: 'A17',
    source: 'X2',
    run: {
      work: 'delivered',
      given: { volume_mL: '2880', protein_g_per_237mL: '13.2' },
      shows: { proteinG: 160 },
      exact: { proteinG: 160.405063 },
    },
    printed: { proteinG: 2321 },
    because: 'the water answer was copied into the protein line',
  },
  {
    id: 'A23',
    source: 'X3',
    run: {
      work: 'grams-from-percent',
      given: { kcal: '2162', protein_percent_of_kcal: '16.7', kcal_per_g_protein: '4' },
      shows: { nutrientKcal: 361, nutrientG: 90.3 },
      exact: { nutrientG: 90.2635, nutrientKcal: 361.054 },
    },
    printed: { nutrientG: 361.05 },
    because: 'kcal of protein were given as grams: the division by 4 was left out',
  },
  {
    id: 'A29',
    source: 'X4',
    run: {
      work: 'delivered',
      given: { rate_mL_h: '75', hours: '24', kcal_per_mL: '1.2', weight_kg: '80' },
      shows: { volumeMl: 1800, energyKcal: 2160, energyKcalPerKg: 27 },
      exact: { energyKcalPerKg: 27 },
    },
    printed: { energyKcalPerKg: 27.5 },
    because: '2160 was rounded up to 2200 and the rounded value was divided',
  },
  {
    id: 'A31',
    source: 'X4',
    run: {
      work: 'bolus',
      given: { volume_mL: '1800', feeds_per_day: '5' },
      shows: { bolusMl: 360 },
    },
    printed: { bolusMl: 440 },
    because: '2200 kcal were divided by the feeds and called mL',
  },
  {
    id: 'A31',
    source: 'X4',
    run: {
      work: 'bolus',
      given: { volume_mL: '1800', feeds_per_day: '4' },
      shows: { bolusMl: 450 },
    },
    printed: { bolusMl: 550 },
    because: '2200 kcal were divided by the feeds and called mL',
  },
];
