/** Infants, body mass index, units. */
import type { Example } from './example.ts';

const starter = (
  id: string,
  kg: string,
  cells: readonly (readonly [every: string, round: string, shows: number, exact: number])[],
  day: number,
): Example => ({
  id,
  source: 'X25',
  kind: 'printed',
  runs: cells.map(([every, round, bolusMl, exact]) => ({
    work: 'starter-feed',
    given: { weight_kg: kg, every, round },
    shows: round === '5' ? { bolusMl, volumeMl: day } : { bolusMl },
    exact: { bolusMl: exact, volumeMl: day },
  })),
  note: 'each feed to the nearest 5 mL; of the two ties 32.5 went down and 97.5 up',
});

export const INFANTS: readonly Example[] = [
  {
    id: 'G02',
    source: 'X24',
    kind: 'printed',
    runs: [{ work: 'per-day-to-per-hour', given: { mL_kg_day: '150' }, shows: { rateMlPerKgPerHour: 6.25 } }],
  },
  {
    id: 'G05',
    source: 'X35',
    kind: 'own',
    runs: [
      { work: 'convert', given: { value: '20 kcal/oz', to: 'kcal/mL' }, exact: { value: 0.666667 } },
      {
        work: 'convert',
        given: { value: '20 kcal/oz', to: 'kcal/mL', ounce: '29.57' },
        exact: { value: 0.67628 },
      },
    ],
  },
  {
    id: 'G06',
    source: 'X35',
    kind: 'own',
    runs: [
      {
        work: 'convert',
        given: { value: '22 kcal/oz', to: 'kcal/mL', round: '0.01' },
        shows: { value: 0.73 },
        exact: { value: 0.733333 },
      },
      { work: 'convert', given: { value: '24 kcal/oz', to: 'kcal/mL' }, shows: { value: 0.8 } },
      { work: 'convert', given: { value: '27 kcal/oz', to: 'kcal/mL' }, shows: { value: 0.9 } },
      { work: 'convert', given: { value: '30 kcal/oz', to: 'kcal/mL' }, shows: { value: 1 } },
    ],
  },
  starter(
    'G07',
    '2.0',
    [
      ['2', '5', 20, 21.666667],
      ['3', 'down 5', 30, 32.5],
      ['4', '5', 45, 43.333333],
    ],
    260,
  ),
  starter(
    'G08',
    '5.0',
    [
      ['2', '5', 55, 54.166667],
      ['3', '5', 80, 81.25],
      ['4', '5', 110, 108.333333],
    ],
    650,
  ),
  starter(
    'G09',
    '6.0',
    [
      ['2', '5', 65, 65],
      ['3', '5', 100, 97.5],
      ['4', '5', 130, 130],
    ],
    780,
  ),
  starter(
    'G10',
    '4.0',
    [
      ['2', '5', 45, 43.333333],
      ['3', '5', 65, 65],
      ['4', 'up 5', 90, 86.666667],
    ],
    520,
  ),
  {
    id: 'G11',
    source: 'X35',
    kind: 'own',
    runs: [
      {
        work: 'infant-feed',
        given: { weight_kg: '4.4', mL_kg_day: '140', every: '3 h' },
        shows: { volumeMl: 616, feeds: 8, bolusMl: 77 },
      },
      {
        work: 'infant-feed',
        given: { weight_kg: '4.4', mL_kg_day: '140', every: '4 h' },
        exact: { bolusMl: 102.666667 },
      },
    ],
  },
  {
    id: 'G12',
    source: 'X35',
    kind: 'own',
    runs: [
      { work: 'per-day-to-per-hour', given: { mL_kg_day: '120' }, shows: { rateMlPerKgPerHour: 5 } },
      { work: 'per-day-to-per-hour', given: { mL_kg_day: '160' }, exact: { rateMlPerKgPerHour: 6.666667 } },
      { work: 'per-day-to-per-hour', given: { mL_kg_day: '180' }, shows: { rateMlPerKgPerHour: 7.5 } },
    ],
  },
  {
    id: 'G13',
    source: 'X36',
    kind: 'own',
    runs: [
      {
        work: 'infant-advance',
        given: { weight_kg: '1.0', start_mL_kg_day: '20', step_mL_kg_day: '20', day: '1', feeds: '12' },
        exact: { bolusMl: 1.666667 },
      },
      {
        work: 'infant-advance',
        given: { weight_kg: '1.0', start_mL_kg_day: '20', step_mL_kg_day: '20', day: '4', feeds: '12' },
        shows: { volumeMlPerKg: 80 },
        exact: { bolusMl: 6.666667 },
      },
    ],
  },
  {
    id: 'G15',
    source: 'X37',
    kind: 'own',
    runs: [30, 36, 48, 54, 60].map((bolusMl, index) => ({
      work: 'infant-first-days',
      given: { weight_kg: '3.2', day: String(index + 1), feeds: '8' },
      shows: { bolusMl },
      exact: { bolusMl },
    })),
  },
  {
    id: 'H04',
    source: 'X1',
    kind: 'printed',
    runs: [
      {
        work: 'bmi',
        given: { weight_kg: '74', height_m: '1.63', form: 'height-squared-first' },
        shows: { bmiKgPerM2: 27.8 },
      },
      {
        work: 'bmi',
        given: { weight_kg: '74', height_m: '1.63' },
        shows: { bmiKgPerM2: 27.9 },
        exact: { bmiKgPerM2: 27.852008 },
      },
      {
        work: 'bmi',
        given: { weight: '163 lb', height: '64 in', pound: '2.2' },
        exact: { bmiKgPerM2: 28.037387 },
      },
    ],
    note: '1.63 squared was rounded to 2.66 first',
  },
  {
    id: 'I01',
    source: 'X5',
    kind: 'printed',
    runs: [
      { work: 'convert', given: { value: '8 oz', to: 'mL' }, shows: { value: 240, unit: 'mL' } },
      { work: 'convert', given: { value: '8 oz', to: 'mL', ounce: 'exact' }, exact: { value: 236.588237 } },
    ],
  },
  {
    id: 'I02',
    source: 'X7',
    kind: 'printed',
    runs: (
      [
        ['2', 59],
        ['3', 89],
        ['4.5', 133],
        ['5', 148],
        ['5.5', 163],
      ] as const
    ).map(([oz, value]) => ({
      work: 'convert',
      given: { value: `${oz} oz`, to: 'mL', ounce: '29.57', round: 'whole' },
      shows: { value },
    })),
  },
  {
    id: 'I03',
    source: 'X33',
    kind: 'printed',
    runs: [
      { work: 'french', given: { fr: '9' }, shows: { outerDiameterMm: 3 } },
      { work: 'convert', given: { value: '9 Fr', to: 'mm' }, shows: { value: 3 } },
    ],
  },
  {
    id: 'I07',
    source: 'X11',
    kind: 'own',
    runs: [
      {
        work: 'convert',
        given: { value: '46 lb', to: 'kg', pound: '2.2', round: 'whole' },
        shows: { value: 21 },
        exact: { value: 20.909091 },
      },
      { work: 'convert', given: { value: '46 lb', to: 'kg' }, exact: { value: 20.865249 } },
    ],
    note: '21 is one of the three options; the key was not seen',
  },
];
