/** What does a recipe from powder, concentrate or two feeds come to, and what recipe gives a wanted density? */
import { assumed, gives, optional, quantity } from '../asking/asks.ts';
import { energyDensity, volumeOf } from '../asking/usual-asks.ts';
import { calculation, type Known, type Line, type Sheet } from '../declare.ts';
import { compare, minus, over, plus, times } from '../exact.ts';

const mixtureGives = {
  totalMl: gives('T', 'mL'),
  totalOz: gives('T', '[foz_us]', '0.1'),
  energyKcal: gives('E', 'kcal'),
  energyKcalPerMl: gives('e', 'kcal/mL', '0.01'),
  energyKcalPerOz: gives('e', 'kcal/[foz_us]', '0.1'),
};

/** A mixture in both ways of writing its density. */
function mixture(T: Known & Line, E: Known & Line, sheet: Sheet<keyof typeof mixtureGives>): readonly Line[] {
  const oz = sheet.ounce();
  return [
    T,
    sheet.number('totalOz', 'T / oz', [T, oz], over(T, oz), 'arithmetic'),
    E,
    sheet.number('energyKcalPerMl', 'e = E / T', [E, T], over(E, T)),
    sheet.number('energyKcalPerOz', 'e = E × oz / T', [E, oz, T], over(times(E, oz), T)),
  ];
}

const water = volumeOf('W', 'water');
const concentrateDensity = quantity(
  'ec',
  'kcal/mL',
  ['0.2', '4'],
  'concentrateDensity',
  'concentrateEnergy',
  'density',
  'energyDensity',
  'concentrate',
  'energy',
);

export const concentrate = calculation({
  name: 'concentrate',
  also: ['liquid-concentrate', 'from-concentrate', 'concentrate-recipe'],
  asks: {
    concentrateMl: quantity('C', 'mL', ['0.1', '20000'], 'concentrate', 'formula'),
    waterMl: water,
    energyKcalPerMl: concentrateDensity,
  },
  gives: mixtureGives,
  equations: ['T = C + W', 'E = C × ec', 'e = E / T'],
  sources: ['E6'],
  rule: 'RK9',
  example: { concentrate: '3 oz', water: '2 oz', density: '40 kcal/oz' },
  compute: ({ concentrateMl: C, waterMl: W, energyKcalPerMl: ec }, sheet) =>
    mixture(
      sheet.number('totalMl', 'T = C + W', [C, W], plus(C, W)),
      sheet.number('energyKcal', 'E = C × ec', [C, ec], times(C, ec)),
      sheet,
    ),
});

export const concentrateFor = calculation({
  name: 'concentrate-for',
  also: ['concentrate-to-density', 'recipe-from-concentrate'],
  asks: {
    energyKcalPerMl: concentrateDensity,
    wantedKcalPerMl: quantity('e', 'kcal/mL', ['0.1', '4'], 'wanted', 'target', 'to'),
    totalMl: quantity('T', 'mL', ['1', '20000'], 'total', 'volume', 'batch'),
  },
  gives: { concentrateMl: gives('C', 'mL'), waterMl: gives('W', 'mL') },
  equations: ['C = T × e / ec', 'W = T − C'],
  sources: ['E6'],
  rule: 'RK9',
  example: { density: '40 kcal/oz', wanted: '24 kcal/oz', total: '5 oz' },
  compute: ({ energyKcalPerMl: ec, wantedKcalPerMl: e, totalMl: T }, sheet) => {
    if (compare(e, ec) > 0) return sheet.refuse('wantedKcalPerMl', 'reckon/water-only-thins');
    const C = sheet.number('concentrateMl', 'C = T × e / ec', [T, e, ec], over(times(T, e), ec));
    return [C, sheet.number('waterMl', 'W = T − C', [T, C], minus(T, C))];
  },
});

const powderAsks = {
  scoops: optional(quantity('n', '1', ['0.1', '200'], 'scoop', 'numberOfScoops')),
  powderG: optional(quantity('G', 'g', ['0.1', '5000'], 'powder', 'grams')),
  energyKcalPerScoop: optional(quantity('k', 'kcal/{scoop}', ['1', '500'], 'kcalPerScoop', 'energyPerScoop')),
  energyKcalPerG: optional(
    quantity(
      'k',
      'kcal/g',
      ['1', '9', 'definition'],
      'kcalPerG',
      'energyPerG',
      'energyPerGram',
      'kcalPerGram',
    ),
  ),
  displacementMlPerScoop: optional(
    quantity('d', 'mL/{scoop}', ['0', '50'], 'displacement', 'displacementPerScoop', 'displaces'),
  ),
  displacementMlPerG: optional(
    quantity('d', 'mL/g', ['0', '2'], 'displacementPerG', 'displacement', 'displacementPerGram'),
  ),
};

export const powder = calculation({
  name: 'powder',
  also: ['powder-recipe', 'from-powder', 'reconstitute'],
  asks: {
    waterMl: quantity('W', 'mL', ['1', '20000'], 'water'),
    ...powderAsks,
    finalMl: optional(quantity('T', 'mL', ['1', '20000'], 'final', 'finalVolume', 'total')),
  },
  oneOf: [
    [
      ['scoops', 'energyKcalPerScoop'],
      ['powderG', 'energyKcalPerG'],
    ],
    [['finalMl'], ['displacementMlPerScoop'], ['displacementMlPerG']],
  ],
  gives: { ...mixtureGives, displacedMl: gives('D', 'mL') },
  equations: ['E = n × k  or  G × k', 'D = n × d  or  G × d', 'T = W + D', 'D = T − W', 'e = E / T'],
  sources: ['E7'],
  rule: 'RK9',
  cautions: ['scoops-are-approximate'],
  example: { water: '9 oz', scoops: '5', kcalPerScoop: '44', displacement: '0.2 oz/scoop' },
  compute: (given, sheet) => {
    const { waterMl: W, scoops, powderG, energyKcalPerScoop, energyKcalPerG, finalMl } = given;
    const byScoop = scoops !== null && energyKcalPerScoop !== null;
    const amount = (byScoop ? scoops : powderG) as Known;
    const k = (byScoop ? energyKcalPerScoop : energyKcalPerG) as Known;
    const E = sheet.number('energyKcal', `E = ${amount.symbol} × k`, [amount, k], times(amount, k));
    if (finalMl !== null) {
      if (compare(finalMl, W) < 0) return sheet.refuse('finalMl', 'reckon/final-below-water');
      const T = sheet.number('totalMl', 'T', [], finalMl, 'arithmetic');
      return [...mixture(T, E, sheet), sheet.number('displacedMl', 'D = T − W', [T, W], minus(T, W))];
    }
    const d = (given.displacementMlPerScoop ?? given.displacementMlPerG) as Known;
    const of = given.displacementMlPerScoop === null ? powderG : scoops;
    if (of === null)
      return sheet.refuse(
        given.displacementMlPerScoop === null ? 'powderG' : 'scoops',
        'reckon/displacement-of-what',
      );
    const D = sheet.number('displacedMl', `D = ${of.symbol} × d`, [of, d], times(of, d));
    return [...mixture(sheet.number('totalMl', 'T = W + D', [W, D], plus(W, D)), E, sheet), D];
  },
});

export const powderFor = calculation({
  name: 'powder-for',
  also: ['powder-for-density', 'powder-target', 'recipe-from-powder'],
  asks: {
    totalMl: quantity('T', 'mL', ['1', '20000'], 'total', 'volume', 'batch', 'final'),
    wantedKcalPerMl: quantity('e', 'kcal/mL', ['0.1', '4'], 'wanted', 'target', 'density', 'energyDensity'),
    energyKcalPerScoop: powderAsks.energyKcalPerScoop,
    energyKcalPerG: powderAsks.energyKcalPerG,
    displacementMlPerScoop: powderAsks.displacementMlPerScoop,
    displacementMlPerG: powderAsks.displacementMlPerG,
  },
  oneOf: [
    [
      ['energyKcalPerScoop', 'displacementMlPerScoop'],
      ['energyKcalPerG', 'displacementMlPerG'],
    ],
  ],
  gives: {
    energyKcal: gives('E', 'kcal'),
    scoops: gives('n', '1', '0.1'),
    powderG: gives('G', 'g', '0.1'),
    waterMl: gives('W', 'mL'),
  },
  equations: ['E = T × e', 'n = E / k  or  G = E / k', 'W = T − n × d  or  T − G × d'],
  sources: ['E7'],
  rule: 'RK9',
  cautions: ['scoops-are-approximate'],
  example: { total: '300 mL', wanted: '22 kcal/oz', kcalPerScoop: '44', displacement: '0.2 oz/scoop' },
  compute: (given, sheet) => {
    const { totalMl: T, wantedKcalPerMl: e, energyKcalPerScoop, displacementMlPerScoop } = given;
    const byScoop = energyKcalPerScoop !== null && displacementMlPerScoop !== null;
    const k = (byScoop ? energyKcalPerScoop : given.energyKcalPerG) as Known;
    const d = (byScoop ? displacementMlPerScoop : given.displacementMlPerG) as Known;
    const E = sheet.number('energyKcal', 'E = T × e', [T, e], times(T, e));
    const amount = byScoop
      ? sheet.number('scoops', 'n = E / k', [E, k], over(E, k))
      : sheet.number('powderG', 'G = E / k', [E, k], over(E, k));
    const W = minus(T, times(amount, d));
    if (W.n <= 0n) return sheet.refuse('wantedKcalPerMl', 'reckon/no-room-for-water');
    return [E, amount, sheet.number('waterMl', `W = T − ${amount.symbol} × d`, [T, amount, d], W)];
  },
});

const second = (symbol: string, ...also: readonly string[]) =>
  quantity(symbol, 'kcal/mL', ['0', '10'], ...also);

export const blend = calculation({
  name: 'blend',
  also: ['mix', 'two-feeds', 'mixture-of-two'],
  asks: {
    firstMl: quantity('V₁', 'mL', ['0.1', '20000'], 'first', 'volume1', 'a'),
    firstKcalPerMl: second('e₁', 'first', 'firstDensity', 'density1'),
    secondMl: quantity('V₂', 'mL', ['0.1', '20000'], 'second', 'volume2', 'b'),
    secondKcalPerMl: second('e₂', 'second', 'secondDensity', 'density2'),
  },
  gives: mixtureGives,
  equations: ['T = V₁ + V₂', 'E = V₁ × e₁ + V₂ × e₂', 'e = E / T'],
  sources: ['E6'],
  rule: 'RK9',
  example: { first: '237 mL', firstDensity: '1.0', second: '237 mL', secondDensity: '1.5' },
  compute: ({ firstMl: a, firstKcalPerMl: ea, secondMl: b, secondKcalPerMl: eb }, sheet) =>
    mixture(
      sheet.number('totalMl', 'T = V₁ + V₂', [a, b], plus(a, b)),
      sheet.number('energyKcal', 'E = V₁ × e₁ + V₂ × e₂', [a, ea, b, eb], plus(times(a, ea), times(b, eb))),
      sheet,
    ),
});

export const fortify = calculation({
  name: 'fortify',
  also: ['fortified-milk', 'fortifier', 'milk-with-powder'],
  asks: {
    milkMl: quantity('M', 'mL', ['1', '5000'], 'milk', 'base', 'volume'),
    milkKcalPerMl: assumed(energyDensity, '20 kcal/oz'),
    powderG: quantity('G', 'g', ['0.1', '500'], 'powder', 'grams', 'fortifier'),
    energyKcalPerG: quantity(
      'k',
      'kcal/g',
      ['0', '9', 'definition'],
      'kcalPerG',
      'energyPerG',
      'kcalPerGram',
    ),
    displacementMlPerG: assumed(quantity('d', 'mL/g', ['0', '2'], 'displacement', 'displacementPerG'), '0'),
  },
  gives: mixtureGives,
  equations: ['T = M + G × d', 'E = M × em + G × k', 'e = E / T'],
  sources: ['E7', 'E42'],
  rule: 'RK9',
  cautions: ['scoops-are-approximate'],
  example: { milk: '100 mL', powder: '4 g', kcalPerG: '5', displacement: '0.7 mL/g' },
  compute: (
    { milkMl: M, milkKcalPerMl: em, powderG: G, energyKcalPerG: k, displacementMlPerG: d },
    sheet,
  ) => {
    if (d.n === 0n) sheet.caution('displacement-not-counted');
    return mixture(
      sheet.number('totalMl', 'T = M + G × d', [M, G, d], plus(M, times(G, d))),
      sheet.number(
        'energyKcal',
        'E = M × em + G × k',
        [M, { ...em, symbol: 'em' }, G, k],
        plus(times(M, em), times(G, k)),
      ),
      sheet,
    );
  },
});
