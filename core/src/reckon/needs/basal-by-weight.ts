/** How much basal or total energy by sex, age and weight alone? Schofield, WHO 1985, FAO/WHO/UNU 2004. */
import { gives, optional, quantity } from '../asking/asks.ts';
import { sex } from '../asking/usual-asks.ts';
import { calculation, type Known } from '../declare.ts';
import { type Exact, less, minus, of, over, plus, times } from '../exact.ts';
import type { SourceId } from '../sources.ts';

type Row = {
  readonly below: string;
  readonly perKg: string;
  readonly constant: string;
  readonly source: SourceId;
};
type Table = Readonly<Record<'male' | 'female', readonly Row[]>>;

const rows = (
  source: SourceId,
  ...list: readonly (readonly [string, string, string, SourceId?])[]
): readonly Row[] =>
  list.map(([below, perKg, constant, own]) => ({ below, perKg, constant, source: own ?? source }));

/** A band runs up to its last birthday: somebody of 3 years is in 3–10. */
const SCHOFIELD: Table = {
  male: rows(
    'E20',
    ['3', '59.512', '-30.4'],
    ['10', '22.706', '504.3'],
    ['18', '17.686', '658.2'],
    ['30', '15.057', '692.2'],
    ['60', '11.472', '873.1'],
    ['200', '11.711', '587.7'],
  ),
  female: rows(
    'E20',
    ['3', '58.317', '-31.1'],
    ['10', '20.315', '485.9'],
    ['18', '13.384', '692.6'],
    ['30', '14.818', '486.6'],
    ['60', '8.126', '845.6'],
    ['200', '9.082', '658.5'],
  ),
};

const WHO: Table = {
  male: rows(
    'E21',
    ['3', '60.9', '-54'],
    ['10', '22.7', '495'],
    ['18', '17.5', '651'],
    ['30', '15.3', '679'],
    ['60', '11.6', '879'],
    ['200', '13.5', '487'],
  ),
  female: rows(
    'E21',
    ['3', '61.0', '-51'],
    ['10', '22.5', '499'],
    ['18', '12.2', '746'],
    ['30', '14.7', '496'],
    ['60', '8.7', '829'],
    ['200', '10.5', '596', 'E22'],
  ),
};

const written = ({ perKg, constant }: Row): string =>
  constant.startsWith('-') ? `R = ${perKg} × W − ${constant.slice(1)}` : `R = ${perKg} × W + ${constant}`;

const rowFor = (table: Table, who: 'male' | 'female', A: Exact): Row =>
  table[who].find((row) => less(A, of(row.below))) ?? (table[who].at(-1) as Row);

const weight = quantity('W', 'kg', ['2.5', '250', 'equation'], 'weight', 'wt', 'w', 'actualWeight');
const age = quantity('A', 'a', ['0', '120', 'definition'], 'age', 'ageY', 'years');
const factor = optional(quantity('k', '1', ['0.5', '3'], 'factor', 'activity', 'activityFactor'));

const basalAsks = { sex, ageYears: age, weightKg: weight, factor };
const basalGives = { restingKcal: gives('R', 'kcal'), energyKcal: gives('E', 'kcal') };
const equations = (table: Table): readonly string[] => [...table.male, ...table.female].map(written);

const basal = (name: string, also: readonly string[], table: Table, sources: readonly SourceId[]) =>
  calculation({
    name,
    also,
    asks: basalAsks,
    gives: basalGives,
    equations: [...equations(table), 'E = R × k'],
    sources,
    rule: 'RK12',
    example: { sex: 'male', age: '6', weight: '20 kg' },
    compute: ({ sex: who, ageYears: A, weightKg: W, factor: k }, sheet) => {
      const row = rowFor(table, who, A);
      const R = sheet.number(
        'restingKcal',
        written(row),
        [W, A],
        plus(times(of(row.perKg), W), of(row.constant)),
        row.source,
      );
      return k === null
        ? [R]
        : [R, sheet.number('energyKcal', 'E = R × k', [R, k], times(R, k), 'arithmetic')];
    },
  });

export const schofield = basal('schofield', ['schofield-weight', 'bmr-schofield'], SCHOFIELD, ['E20']);
export const whoBasal = basal('who-basal', ['who', 'who-1985', 'fao-who-unu-1985', 'who-ree'], WHO, [
  'E21',
  'E22',
]);

const TOTAL = {
  male: { equation: 'E = 310.2 + 63.3 × W − 0.263 × W²', k: ['310.2', '63.3', '0.263'] },
  female: { equation: 'E = 263.4 + 65.3 × W − 0.454 × W²', k: ['263.4', '65.3', '0.454'] },
} as const;

export const childTotal = calculation({
  name: 'fao-who-unu',
  also: ['fao', 'fao-who-unu-2004', 'child-total-energy', 'tee-child', 'who-2004'],
  asks: {
    sex,
    weightKg: quantity('W', 'kg', ['5', '70', 'equation'], 'weight', 'wt', 'w'),
    ageYears: optional(quantity('A', 'a', ['1', '18', 'equation'], 'age', 'ageY')),
  },
  gives: { energyKcal: gives('E', 'kcal'), energyKcalPerKg: gives('E/W', 'kcal/kg', '0.1') },
  equations: [TOTAL.male.equation, TOTAL.female.equation, 'E / W'],
  sources: ['E23'],
  rule: 'RK12',
  example: { sex: 'male', weight: '20 kg' },
  compute: (
    { sex: who, weightKg: W }: { readonly sex: 'male' | 'female'; readonly weightKg: Known },
    sheet,
  ) => {
    const { equation, k } = TOTAL[who];
    const value = minus(plus(of(k[0]), times(of(k[1]), W)), times(of(k[2]), W, W));
    const E = sheet.number('energyKcal', equation, [W], value);
    return [E, sheet.number('energyKcalPerKg', 'E / W', [E, W], over(E, W), 'arithmetic')];
  },
});
