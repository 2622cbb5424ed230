/** Further printed examples, read in the same sources and in a few others. */
import type { Example, Trap } from './example.ts';

/** ADEPT prints the same schedule by the hour and by the day. */
const ADEPT = [
  ['0.5', 12],
  ['1.0', 24],
  ['1.5', 36],
  ['2.0', 48],
  ['2.5', 60],
  ['3.5', 84],
  ['4.5', 108],
  ['5.5', 132],
  ['6.25', 150],
] as const;

export const FURTHER: readonly Example[] = [
  {
    id: 'Y01',
    source: 'X40',
    kind: 'printed',
    runs: [
      {
        work: 'delivered',
        given: { rate: '80 mL/h', hours: '24', density: '1200 kcal/L', protein: '54 g/L', water: '81 %' },
        shows: { volumeMl: 1920, proteinG: 104, formulaWaterMl: 1555 },
      },
      {
        work: 'formula-water',
        given: { rate: '80 mL/h', hours: '24', water: '81 %', flushes: '6 x 100 mL' },
        shows: { formulaWaterMl: 1555, totalWaterMl: 2155 },
      },
    ],
  },
  {
    id: 'Y02',
    source: 'X40',
    kind: 'printed',
    runs: [
      {
        work: 'volume-for-energy',
        given: { goal: '1800 kcal', density: '1.0', hours: '24', protein: '40 g/L', water: '83 %' },
        shows: { volumeMl: 1800, rateMlPerHour: 75, energyKcal: 1800, proteinG: 72, formulaWaterMl: 1494 },
      },
      {
        work: 'flushes',
        given: { goal: '1800 mL', volume: '1800 mL', water: '83 %' },
        shows: { extraWaterMl: 306 },
      },
    ],
  },
  {
    id: 'Y03',
    source: 'X6',
    kind: 'printed',
    runs: [
      {
        work: 'dilution',
        given: { strength: '1/4', total: '1000 mL' },
        shows: { formulaMl: 250, waterMl: 750 },
      },
      {
        work: 'dilution',
        given: { strength: '1/3', total: '240 mL' },
        shows: { formulaMl: 80, waterMl: 160 },
      },
    ],
    note: 'printed of other liquids than feed; the arithmetic is the same',
  },
  {
    id: 'Y04',
    source: 'X2',
    kind: 'printed',
    runs: [
      {
        work: 'volume-for-energy',
        given: { goal: '2500', density: '1.3', protein: '15.8 g/237mL' },
        shows: { volumeMl: 1923, proteinG: 128 },
      },
      {
        work: 'containers-a-day',
        given: {
          goal: '1250 kcal',
          kcal_per_can: '500',
          protein_g_per_can: '20',
          water_mL_per_can: '175',
          whole: 'exact',
        },
        shows: { containers: 2.5, proteinG: 50, formulaWaterMl: 438 },
      },
    ],
  },
  {
    id: 'Y05',
    source: 'X3',
    kind: 'printed',
    runs: [
      {
        work: 'delivered',
        given: { rate: '60', hours: '24', density: '1.3', water_mL_per_L: '790' },
        shows: { volumeMl: 1440, energyKcal: 1872 },
        exact: { formulaWaterMl: 1137.6 },
      },
      {
        work: 'grams-from-percent',
        given: { energy: '1872', percent: '20.5', round: 'whole' },
        shows: { nutrientG: 96 },
        exact: { nutrientKcal: 383.76 },
      },
      {
        work: 'energy-to-nitrogen',
        given: { energy: '1872', percent: '20.5' },
        shows: { totalKcalPerG: 122 },
      },
      { work: 'energy-per-kg', given: { weight: '67.6 kg', kcal_per_kg: '30' }, shows: { energyKcal: 2028 } },
      {
        work: 'protein-per-kg',
        given: { weight: '67.6 kg', g_per_kg: '1.5', round: '0.1' },
        shows: { proteinG: 101.4 },
      },
    ],
    note: 'the printed 122:1 is TOTAL kcal to nitrogen',
  },
  {
    id: 'Y06',
    source: 'X41',
    kind: 'printed',
    runs: [
      {
        work: 'schofield',
        given: { sex: 'female', age: '25', weight: '55 kg' },
        shows: { restingKcal: 1302 },
      },
    ],
  },
  {
    id: 'Y07',
    source: 'X42',
    kind: 'printed',
    runs: [
      {
        work: 'harris-benedict',
        given: { sex: 'male', weight: '68 kg', height: '168 cm', age: '21', version: 'short' },
        shows: { restingKcal: 1695 },
      },
      {
        work: 'convert',
        given: { value: '150 lb', to: 'kg', pound: '2.2', round: 'whole' },
        shows: { value: 68 },
      },
      { work: 'convert', given: { value: '5ft 6in', to: 'cm', round: 'whole' }, shows: { value: 168 } },
    ],
    note: 'weight and height rounded before use, as printed',
  },
  {
    id: 'Y08',
    source: 'X43',
    kind: 'printed',
    runs: [
      {
        work: 'harris-benedict',
        given: { sex: 'female', weight: '68', height: '178', age: '25', version: 'short', round: '0.1' },
        shows: { restingKcal: 1510.7 },
      },
      {
        work: 'mifflin-st-jeor',
        given: { sex: 'female', weight: '68', height: '178', age: '25', form: 'long' },
        shows: { restingKcal: 1508 },
      },
    ],
  },
  {
    id: 'Y09',
    source: 'X44',
    kind: 'printed',
    runs: [
      { work: 'energy-per-kg', given: { weight: '70 kg', kcal_per_kg: '25' }, shows: { energyKcal: 1750 } },
      {
        work: 'volume-for-energy',
        given: { goal: '1750', density: '1.5', hours: '24', round: '0.1' },
        shows: { volumeMl: 1166.7, rateMlPerHour: 48.6 },
      },
    ],
    note: 'printed as “about 50”: 48.6 is what it comes to',
  },
  {
    id: 'Y10',
    source: 'X34',
    kind: 'printed',
    runs: [
      {
        work: 'volume-for-energy',
        given: { goal: '2400 kcal', density: '1 kcal/mL', hours: '24' },
        shows: { volumeMl: 2400, rateMlPerHour: 100 },
      },
    ],
  },
  {
    id: 'Y11',
    source: 'X45',
    kind: 'printed',
    runs: [{ work: 'volume', given: { rate: '50 mL/h', hours: '24' }, shows: { volumeMl: 1200 } }],
  },
  {
    id: 'Y12',
    source: 'X46',
    kind: 'printed',
    runs: [{ work: 'rate', given: { volume: '720 mL', hours: '24' }, shows: { rateMlPerHour: 30 } }],
  },
  {
    id: 'Y13',
    source: 'X24',
    kind: 'printed',
    runs: ADEPT.flatMap(([hour, day]) => [
      {
        work: 'per-day-to-per-hour',
        given: { mL_kg_day: String(day) },
        shows: { rateMlPerKgPerHour: Number(hour) },
      },
      { work: 'per-day-to-per-hour', given: { mL_kg_h: hour }, shows: { volumeMlPerKg: day } },
    ]),
  },
  {
    id: 'Y14',
    source: 'X35',
    kind: 'own',
    runs: [
      {
        work: 'holliday-segar',
        given: { weight: '25 kg', round: 'whole' },
        shows: { rateMlPerHour: 65, fromDayMlPerHour: 67 },
      },
    ],
    note: 'the two printed forms give 65 and 67 mL/h',
  },
];

export const FURTHER_TRAPS: readonly Trap[] = [
  {
    id: 'Y15',
    source: 'X40',
    run: {
      work: 'delivered',
      given: { rate: '80 mL/h', hours: '24', density: '1200 kcal/L' },
      shows: { energyKcal: 2304 },
    },
    printed: { energyKcal: 2308 },
    because: '1.92 L × 1200 kcal/L was miscalculated',
  },
  {
    id: 'Y16',
    source: 'X47',
    run: {
      work: 'ideal-weight',
      given: { sex: 'female', height: '68 in', by: 'hamwi', frame: 'large' },
      shows: { idealWeightLb: 154 },
    },
    printed: { idealWeightLb: 158 },
    because: '140 lb and 10 % is 154 lb',
  },
];
