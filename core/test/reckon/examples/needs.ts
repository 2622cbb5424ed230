/** Energy, protein, fluid, weights. */
import type { Example } from './example.ts';

export const NEEDS: readonly Example[] = [
  {
    id: 'E01',
    source: 'X17',
    kind: 'printed',
    runs: [
      {
        work: 'mifflin-st-jeor',
        given: { sex: 'F', weight_kg: '75', height_cm: '165.1', age_y: '45' },
        shows: { restingKcal: 1396 },
        exact: { restingKcal: 1395.875 },
      },
    ],
  },
  {
    id: 'E02',
    source: 'X17',
    kind: 'printed',
    runs: [
      {
        work: 'energy-factor',
        given: { ree_kcal: '1396', factor: '1.2' },
        shows: { energyKcal: 1675 },
        exact: { energyKcal: 1675.2 },
      },
      {
        work: 'energy-factor',
        given: { ree_kcal: '1396', factor: '1.375' },
        shows: { energyKcal: 1920 },
        exact: { energyKcal: 1919.5 },
      },
    ],
    note: '1919.5 goes up',
  },
  {
    id: 'E03',
    source: 'X18',
    kind: 'printed',
    runs: [
      {
        work: 'resting-by-own-coefficients',
        given: {
          constant: '655',
          perKg: '9.6',
          perCm: '1.7',
          perYear: '4.7',
          weight_kg: '56.8',
          height_cm: '162.6',
          age_y: '40',
          factor: '1.5',
        },
        shows: { restingKcal: 1289, energyKcal: 1933 },
        exact: { restingKcal: 1288.7 },
      },
    ],
    note: 'the source took 1289 × 1.5 = 1933.5 and cut it; unrounded it is 1933.05. 1.7 misprints 1.8, so the coefficients are given, not ours',
  },
  {
    id: 'E05',
    source: 'X19',
    kind: 'printed',
    runs: [
      {
        work: 'harris-benedict',
        given: {
          sex: 'F',
          weight_kg: '69.5',
          height_cm: '169',
          age_y: '30',
          version: 'roza-shizgal',
          round: '0.01',
        },
        shows: { restingKcal: 1483.92 },
        exact: { restingKcal: 1483.9215 },
      },
    ],
  },
  {
    id: 'E07',
    source: 'X1',
    kind: 'printed',
    runs: [
      {
        work: 'convert',
        given: { value: '163 lb', to: 'kg', pound: '2.2', round: 'whole' },
        shows: { value: 74 },
        exact: { value: 74.090909 },
      },
      {
        work: 'convert',
        given: { value: '64 in', to: 'cm', round: 'whole' },
        shows: { value: 163 },
        exact: { value: 162.56 },
      },
      { work: 'energy-per-kg', given: { weight_kg: '74', kcal_per_kg: '25' }, shows: { energyKcal: 1850 } },
    ],
    note: 'the source rounds weight and height before it uses them',
  },
  {
    id: 'E09',
    source: 'X20',
    kind: 'printed',
    runs: [
      {
        work: 'adjusted-weight',
        given: { sex: 'M', height_in: '70', weight_kg: '190', factor: '0.4' },
        shows: { idealWeightKg: 73, percentOfIdeal: 260, adjustedWeightKg: 119.8 },
        exact: { idealWeightKg: 73, percentOfIdeal: 260.273973, adjustedWeightKg: 119.8 },
      },
    ],
  },
  {
    id: 'E11',
    source: 'X21',
    kind: 'printed',
    runs: [
      {
        work: 'holliday-segar',
        given: { weight_kg: '30' },
        shows: { rateMlPerHour: 70, fluidMl: 1700 },
        exact: { fromDayMlPerHour: 70.833333 },
      },
    ],
  },
  {
    id: 'E13',
    source: 'X22',
    kind: 'printed',
    runs: [
      { work: 'holliday-segar', given: { weight_kg: '5' }, shows: { fluidMl: 500, fromDayMlPerHour: 20.8 } },
    ],
  },
  {
    id: 'E15',
    source: 'X22',
    kind: 'printed',
    runs: [
      {
        work: 'holliday-segar',
        given: { weight_kg: '22', round: 'whole' },
        shows: { fluidMl: 1540, fromDayMlPerHour: 64 },
        exact: { fromDayMlPerHour: 64.166667 },
      },
    ],
  },
  {
    id: 'E16',
    source: 'X22',
    kind: 'printed',
    runs: [
      {
        work: 'fluid-per-area',
        given: { bsa_m2: '0.8', low: '1500', high: '2000', round: 'down 1' },
        shows: { lowMl: 1200, lowMlPerHour: 50, highMl: 1600, highMlPerHour: 66 },
        exact: { highMlPerHour: 66.666667 },
      },
      {
        work: 'fluid-per-area',
        given: { bsa_m2: '0.8', low: '1200' },
        shows: { lowMl: 960, lowMlPerHour: 40 },
      },
    ],
    note: '66.67 was cut down',
  },
  {
    id: 'E20',
    source: 'X35',
    kind: 'own',
    runs: [
      { work: 'adult-fluid', given: { weight_kg: '70', by: 'segmented' }, shows: { fluidMl: 2500 } },
      { work: 'adult-fluid', given: { weight_kg: '70' }, shows: { lowMl: 2100, highMl: 2450 } },
    ],
  },
  {
    id: 'E22',
    source: 'X35',
    kind: 'own',
    runs: [
      {
        work: 'mifflin-st-jeor',
        given: { sex: 'M', weight_kg: '80', height_cm: '180', age_y: '40' },
        shows: { restingKcal: 1730 },
        exact: { restingKcal: 1730 },
      },
      {
        work: 'mifflin-st-jeor',
        given: { sex: 'M', weight_kg: '80', height_cm: '180', age_y: '40', form: 'long' },
        exact: { restingKcal: 1732.4 },
      },
    ],
  },
  {
    id: 'E23',
    source: 'X35',
    kind: 'own',
    runs: [
      {
        work: 'penn-state',
        given: { sex: 'M', weight_kg: '80', height_cm: '180', age_y: '40', ve_L_min: '9.0', tmax_C: '38.2' },
        shows: { restingKcal: 1730, energyKcal: 2107, versionUsed: '2003b' },
        exact: { energyKcal: 2107.2 },
      },
    ],
  },
  {
    id: 'E24',
    source: 'X35',
    kind: 'own',
    runs: [
      {
        work: 'penn-state',
        given: {
          sex: 'M',
          weight_kg: '110',
          height_cm: '170',
          age_y: '68',
          ve_L_min: '10.0',
          tmax_C: '38.0',
        },
        shows: { versionUsed: '2010' },
        exact: { restingKcal: 1827.5, bmiKgPerM2: 38.062284, energyKcal: 2082.525 },
      },
    ],
    note: 'coefficients from memory',
  },
  {
    id: 'E25',
    source: 'X35',
    kind: 'own',
    runs: [
      {
        work: 'guideline-needs',
        given: { sex: 'M', weight_kg: '120', height_cm: '170' },
        shows: { lowKcal: 1320, highKcal: 1680, energyGroup: 'bmi-30-to-50' },
        exact: { bmiKgPerM2: 41.522491, idealWeightKg: 65.937008, highProteinG: 164.84252 },
      },
    ],
  },
  {
    id: 'E27',
    source: 'X35',
    kind: 'own',
    runs: [
      {
        work: 'guideline-needs',
        given: { sex: 'F', weight_kg: '90', height_cm: '160' },
        shows: { lowKcal: 990, highKcal: 1260 },
        exact: { bmiKgPerM2: 35.15625, idealWeightKg: 52.38189, lowProteinG: 104.76378 },
      },
    ],
  },
  {
    id: 'E28',
    source: 'X35',
    kind: 'own',
    runs: [
      {
        work: 'adjusted-weight',
        given: { sex: 'M', weight_kg: '130', height_cm: '175' },
        exact: { idealWeightKg: 70.464567, adjustedWeightKg: 85.348425 },
      },
    ],
  },
  {
    id: 'E29',
    source: 'X35',
    kind: 'own',
    runs: [
      {
        work: 'fao-who-unu',
        given: { sex: 'M', weight_kg: '20' },
        shows: { energyKcal: 1471 },
        exact: { energyKcal: 1471 },
      },
    ],
  },
  {
    id: 'E31',
    source: 'X35',
    kind: 'own',
    runs: [
      { work: 'who-basal', given: { sex: 'boy', age: '6', weight_kg: '25' }, exact: { restingKcal: 1062.5 } },
      {
        work: 'who-basal',
        given: { sex: 'girl', age: '6', weight_kg: '25' },
        exact: { restingKcal: 1061.5 },
      },
    ],
  },
  {
    id: 'E32',
    source: 'X35',
    kind: 'own',
    runs: [
      { work: 'schofield', given: { sex: 'boy', age: '6', weight_kg: '20' }, exact: { restingKcal: 958.42 } },
      { work: 'schofield', given: { sex: 'girl', age: '6', weight_kg: '20' }, exact: { restingKcal: 892.2 } },
      {
        work: 'schofield',
        given: { sex: 'boy', age: '18 months', weight_kg: '8' },
        exact: { restingKcal: 445.696 },
      },
    ],
    note: 'under 3 years the constant is subtracted; a secondary page adds it',
  },
  {
    id: 'E33',
    source: 'X35',
    kind: 'own',
    runs: [
      {
        work: 'body-surface',
        given: { height_cm: '170', weight_kg: '70' },
        shows: { surfaceM2: 1.82 },
        exact: { surfaceM2: 1.818119 },
      },
      { work: 'body-surface', given: { height_cm: '110', weight_kg: '18' }, exact: { surfaceM2: 0.74162 } },
    ],
  },
];
