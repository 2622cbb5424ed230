/** How far has a level fallen, in which band is that, and what is it in another unit? */
import { assumed, choice, gives, names, optional, quantity, yesOrNo } from '../asking/asks.ts';
import { calculation, type Known, type Line, type Sheet } from '../declare.ts';
import { compare, type Exact, less, minus, of, over, times } from '../exact.ts';
import { concentration, inMmol, SUBSTANCES, type Substance, substance } from './substances.ts';

const HUNDRED = of(100);

/** The fall in hundredths of the first value; less than nothing when it rose. Exact: 4.0 → 3.6 is 10. */
export const fallPercent = (before: Exact, after: Exact): Exact =>
  over(times(HUNDRED, minus(before, after)), before);

export type Boundary = 'upper-band-at-20-not-at-30' | 'upper-band-at-both' | 'lower-band-at-both';
export type FallBand = 'none' | 'mild' | 'moderate' | 'severe';

/** ASPEN prints 10–20, 20–30 and over 30 %: where exactly 20 and 30 belong has to be decided, and is said. */
export function fallBand(percent: Exact, boundary: Boundary): FallBand {
  const [at20, at30] = [compare(percent, of(20)), compare(percent, of(30))];
  if (less(percent, of(10))) return 'none';
  if (at30 > 0 || (at30 === 0 && boundary === 'upper-band-at-both')) return 'severe';
  return at20 > 0 || (at20 === 0 && boundary !== 'lower-band-at-both') ? 'moderate' : 'mild';
}

const boundary = assumed(
  choice('boundary', {
    'upper-band-at-20-not-at-30': ['default', 'over-30'],
    'upper-band-at-both': ['30-or-more', 'at-least-30'],
    'lower-band-at-both': ['20-is-mild'],
  }),
  'upper-band-at-20-not-at-30',
  'upper-band-at-both',
  'lower-band-at-both',
);

const LEVELS = {
  potassium: ['k', 'k+'],
  magnesium: ['mg', 'mg2+', 'magnesemia'],
  phosphate: ['po4', 'p', 'phosphorus', 'phos'],
};

export const electrolyteFall = calculation({
  name: 'electrolyte-fall',
  also: ['fall', 'phosphate-fall', 'percent-fall', 'refeeding-severity', 'electrolyte-drop'],
  asks: {
    electrolyte: choice('of', LEVELS, 'of', 'level', 'which', 'substance'),
    before: concentration('c₁', 'baseline', 'first'),
    after: concentration('c₂', 'now', 'last'),
    unit: assumed(choice('unit', { 'mmol/L': [], 'mg/dL': [], 'meq/L': [] }), 'mmol/L'),
    boundary,
    organDysfunction: assumed(
      yesOrNo('organ dysfunction', 'organ', 'organFailure', 'thiamineDeficiency'),
      'no',
    ),
    daysSinceStart: optional(quantity('d', 'd', ['0', '60'], 'days', 'day', 'sinceStart')),
  },
  gives: {
    beforeMmolPerL: gives('c₁', 'mmol/L', '0.01'),
    afterMmolPerL: gives('c₂', 'mmol/L', '0.01'),
    fallPercent: gives('f', '%', '0.1'),
    band: names('band'),
    withinFiveDays: names('d ≤ 5'),
    lowPhosphateAfterStart: names('phosphate'),
  },
  equations: [
    'f = 100 × (c₁ − c₂) / c₁',
    'mild 10–20 %, moderate 20–30 %, severe over 30 % or with organ dysfunction',
    'd ≤ 5',
    'c₂ ≤ 2.0 mg/dL or c₁ − c₂ > 0.5 mg/dL (phosphate)',
  ],
  sources: ['S8', 'S112', 'E51'],
  rule: 'RK10',
  cautions: ['replacement-hides-a-fall'],
  example: { of: 'phosphate', before: '1.2 mmol/L', after: '0.9 mmol/L' },
  compute: (given, sheet) => {
    const of = given.electrolyte as Substance;
    const [c1, c2] = [inMmol(given.before, given.unit, of, 'c₁'), inMmol(given.after, given.unit, of, 'c₂')];
    if (c1.n === 0n) return sheet.refuse('before', 'reckon/nothing-to-fall-from');
    const first = sheet.number('beforeMmolPerL', 'c₁', [], c1, 'E51');
    const last = sheet.number('afterMmolPerL', 'c₂', [], c2, 'E51');
    const percent = fallPercent(c1, c2);
    const f = sheet.number('fallPercent', 'f = 100 × (c₁ − c₂) / c₁', [first, last], percent);
    const band =
      given.organDysfunction && !less(percent, { n: 10n, d: 1n })
        ? 'severe'
        : fallBand(percent, given.boundary);
    const d = given.daysSinceStart;
    const lines: Line[] = [
      first,
      last,
      f,
      sheet.choice('band', 'mild 10–20 %, moderate 20–30 %, severe over 30 %', [f], band),
    ];
    if (d === null) sheet.caution('days-since-start-not-given');
    else lines.push(sheet.choice('withinFiveDays', 'd ≤ 5', [d], less({ n: 5n, d: 1n }, d) ? 'no' : 'yes'));
    if (of === 'phosphate') lines.push(lowPhosphate(first, last, sheet));
    return lines;
  },
});

/** The third published definition, in mg/dL, is worked in mg/dL. */
function lowPhosphate(c1: Known, c2: Known, sheet: Sheet<'lowPhosphateAfterStart'>): Line {
  const mgPerDl = (c: Exact): Exact => over(times(c, SUBSTANCES.phosphate.molarMass), of(10));
  const isLow = !less(of('2.0'), mgPerDl(c2)) || less(of('0.5'), mgPerDl(minus(c1, c2)));
  return sheet.choice(
    'lowPhosphateAfterStart',
    'c₂ ≤ 2.0 mg/dL or c₁ − c₂ > 0.5 mg/dL',
    [c1, c2],
    isLow ? 'yes' : 'no',
    'S112',
  );
}

export const electrolyteUnits = calculation({
  name: 'electrolyte-units',
  also: ['lab-units', 'mg-dl-to-mmol', 'mmol-to-mg-dl', 'meq', 'convert-lab', 'mmol-meq-mg'],
  asks: {
    of: substance,
    value: concentration('c', 'level', 'concentration', 'amount'),
    unit: assumed(choice('unit', { 'mmol/L': [], 'mg/dL': [], 'meq/L': [] }, 'from'), 'mmol/L'),
  },
  gives: {
    valueMmolPerL: gives('c', 'mmol/L', '0.001'),
    valueMgPerDl: gives('c', 'mg/dL', '0.01'),
    valueMeqPerL: gives('c', 'meq/L', '0.001'),
  },
  equations: ['mmol/L = 10 × mg/dL / M', 'mmol/L = mEq/L / z'],
  sources: ['E51'],
  rule: 'RK15',
  example: { of: 'phosphate', value: '2.0 mg/dL' },
  compute: (given, sheet) => {
    const { molarMass: M, valence } = SUBSTANCES[given.of];
    if ((given.value.unit || given.unit) === 'meq/L' && valence === null)
      return sheet.refuse('value', 'reckon/no-valence', { of: given.of });
    const c = sheet.number(
      'valueMmolPerL',
      'mmol/L',
      [given.value],
      inMmol(given.value, given.unit, given.of, 'c'),
    );
    const molar = sheet.printed('M', M, 'g/mol');
    return [
      c,
      sheet.number('valueMgPerDl', 'mg/dL = mmol/L × M / 10', [c, molar], over(times(c, M), of(10))),
      ...(valence === null
        ? []
        : [
            sheet.number(
              'valueMeqPerL',
              'mEq/L = mmol/L × z',
              [c, sheet.printed('z', of(valence), '1')],
              times(c, of(valence)),
            ),
          ]),
    ];
  },
});
