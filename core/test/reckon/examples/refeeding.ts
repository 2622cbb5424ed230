/** Refeeding, falling electrolytes, weight lost. */
import type { Example, Trap } from './example.ts';

export const REFEEDING: readonly Example[] = [
  {
    id: 'F01',
    source: 'X23',
    kind: 'printed',
    runs: [
      { work: 'refeeding-start', given: { weight_kg: '30' }, shows: { niceCeilingKcal: 300 } },
      { work: 'refeeding-start', given: { weight_kg: '50' }, shows: { niceCeilingKcal: 500 } },
      { work: 'refeeding-start', given: { weight_kg: '60' }, shows: { niceCeilingKcal: 600 } },
    ],
    note: 'printed under “normal risk”; in NICE it is the start for high risk',
  },
  {
    id: 'F03',
    source: 'X38',
    kind: 'own',
    runs: [
      {
        work: 'refeeding-start',
        given: { weight_kg: '48' },
        shows: { niceCeilingKcal: 480, niceExtremeCeilingKcal: 240 },
      },
    ],
  },
  {
    id: 'F04',
    source: 'X38',
    kind: 'own',
    runs: [
      {
        work: 'refeeding-start',
        given: { weight_kg: '48', goal_kcal: '1440' },
        shows: { aspenLowKcal: 480, aspenHighKcal: 960, aspenStepKcal: 475 },
        exact: { aspenStepKcal: 475.2 },
      },
    ],
  },
  {
    id: 'F05',
    source: 'X38',
    kind: 'own',
    runs: [
      {
        work: 'electrolyte-fall',
        given: { of: 'phosphate', before: '1.2', after: '0.9', unit: 'mmol/L' },
        shows: { fallPercent: 25, band: 'moderate' },
      },
    ],
  },
  {
    id: 'F08',
    source: 'X38',
    kind: 'own',
    runs: [
      {
        work: 'electrolyte-fall',
        given: { of: 'phosphate', before: '1.0', after: '0.8', unit: 'mmol/L' },
        shows: { fallPercent: 20, band: 'moderate' },
        exact: { fallPercent: 20 },
      },
      {
        work: 'electrolyte-fall',
        given: { of: 'phosphate', before: '1.0', after: '0.8', boundary: 'lower-band-at-both' },
        shows: { band: 'mild' },
      },
    ],
    note: 'exactly 20 % stands in two printed bands: the rule used is said, the other may be asked for',
  },
  {
    id: 'F10',
    source: 'X39',
    kind: 'own',
    runs: [
      {
        work: 'weight-loss',
        given: { usual_lb: '167', now_lb: '156' },
        shows: { lossPercent: 6.6, percentOfUsual: 93.4 },
        exact: { lossPercent: 6.586826, percentOfUsual: 93.413174 },
      },
    ],
  },
];

const tableRow = (weight_kg: string, printed: number, right: number): Trap => ({
  id: 'F02',
  source: 'X23',
  run: { work: 'refeeding-start', given: { weight_kg }, shows: { niceCeilingKcal: right } },
  printed: { niceCeilingKcal: printed },
  because: 'the table rounds to a whole 100, which takes 35 kg over its own ceiling of 10 kcal/kg',
});

export const REFEEDING_TRAPS: readonly Trap[] = [
  tableRow('35', 400, 350),
  tableRow('45', 400, 450),
  tableRow('55', 500, 550),
];
