/** How much formula and how much water make this strength, and what does the mixture hold? */
import { assumed, gives, optional, quantity } from '../asking/asks.ts';
import { energyDensity, hours, rate, volumeOf } from '../asking/usual-asks.ts';
import { type Ask, calculation, type Known, type Line, type Sheet } from '../declare.ts';
import { compare, type Exact, minus, of, over, plus, times, UNITY } from '../exact.ts';

const WORDS: ReadonlyMap<string, string> = new Map([
  ['full', '1'],
  ['fullstrength', '1'],
  ['threequarter', '3/4'],
  ['threequarters', '3/4'],
  ['twothirds', '2/3'],
  ['half', '1/2'],
  ['halfstrength', '1/2'],
  ['onethird', '1/3'],
  ['third', '1/3'],
  ['quarter', '1/4'],
  ['onequarter', '1/4'],
]);

const asked = quantity('s', '1', ['0.02', '1', 'definition'], 'strength', 's', 'concentration');

/** `3/4`, `75 %`, `0.75`, `three-quarter`: parts of formula in one of mixture. */
export const strength: Ask<Known> = {
  ...asked,
  read: ([raw = '', ...more], reading, note) => {
    const word = typeof raw === 'string' ? WORDS.get(raw.toLowerCase().replace(/[^a-z]/g, '')) : undefined;
    const text = typeof raw === 'string' ? raw.replace(/\s*strength$/i, '') : raw;
    return asked.read([word !== undefined && !/\d/.test(String(raw)) ? word : text, ...more], reading, note);
  },
};

const dilutionGives = {
  totalMl: gives('T', 'mL'),
  formulaMl: gives('F', 'mL'),
  waterMl: gives('W', 'mL'),
  energyKcalPerMl: gives('e′', 'kcal/mL', '0.01'),
  energyKcal: gives('E', 'kcal'),
  proteinG: gives('P', 'g'),
  lastsHours: gives('t', 'h', '0.01'),
};

const asks = {
  strength,
  totalMl: optional(quantity('T', 'mL', ['0.1', '20000'], 'total', 'volume', 'mixture')),
  formulaMl: optional(quantity('F', 'mL', ['0.1', '20000'], 'formula', 'feed')),
  waterMl: optional(quantity('W', 'mL', ['0.1', '20000'], 'water')),
  cans: optional(quantity('n', '1', ['0.1', '100'], 'can', 'containers', 'cartons', 'numberOfCans')),
  canMl: optional(
    quantity('c', 'mL', ['1', '3000'], 'canSize', 'containerMl', 'can', 'cartonMl', 'container', 'per can'),
  ),
  rateMlPerHour: optional(rate),
  hours: optional(hours),
  energyKcalPerMl: optional(energyDensity),
  proteinGPerL: optional(quantity('p', 'g/L', ['0', '250'], 'protein', 'proteinDensity')),
};

/** The mixture and the formula in it, whichever was given. */
function amounts(
  given: { readonly [K in keyof typeof asks]: Known | null } & { readonly strength: Known },
  sheet: Sheet<keyof typeof dilutionGives>,
): { readonly T: Known & Line; readonly F: Known & Line } {
  const { strength: s, totalMl, formulaMl, waterMl, cans: n, canMl: c, rateMlPerHour: r, hours: t } = given;
  if (
    totalMl !== null ||
    (r !== null && t !== null && formulaMl === null && waterMl === null && n === null)
  ) {
    const T =
      totalMl === null
        ? sheet.number(
            'totalMl',
            'T = r × t',
            [r as Known, t as Known],
            times(r as Known, t as Known),
            'arithmetic',
          )
        : sheet.number('totalMl', 'T', [], totalMl, 'arithmetic');
    return { T, F: sheet.number('formulaMl', 'F = T × s', [T, s], times(T, s)) };
  }
  if (waterMl !== null) {
    const share = minus(UNITY, s);
    const T = sheet.number('totalMl', 'T = W / (1 − s)', [waterMl, s], over(waterMl, share));
    return { T, F: sheet.number('formulaMl', 'F = T × s', [T, s], times(T, s)) };
  }
  const F =
    formulaMl === null
      ? sheet.number(
          'formulaMl',
          'F = n × c',
          [n as Known, c as Known],
          times(n as Known, c as Known),
          'arithmetic',
        )
      : sheet.number('formulaMl', 'F', [], formulaMl, 'arithmetic');
  return { T: sheet.number('totalMl', 'T = F / s', [F, s], over(F, s)), F };
}

export const dilution = calculation({
  name: 'dilution',
  also: ['dilute', 'strength', 'dilution-to-strength', 'half-strength'],
  asks: { ...asks, cans: assumed(asks.cans, '1') },
  oneOf: [[['totalMl'], ['formulaMl'], ['waterMl'], ['canMl'], ['rateMlPerHour', 'hours']]],
  gives: dilutionGives,
  equations: [
    'F = T × s',
    'T = F / s',
    'T = r × t',
    'F = n × c',
    'T = W / (1 − s)',
    'W = T − F',
    'e′ = e × s',
    'E = F × e',
    'P = F × p / 1000',
    't = T / r',
  ],
  sources: ['E5'],
  rule: 'RK9',
  example: { strength: '3/4', can: '237 mL', energyDensity: '1.2 kcal/mL' },
  compute: (given, sheet) => {
    const {
      strength: s,
      waterMl,
      energyKcalPerMl: e,
      proteinGPerL: p,
      rateMlPerHour: r,
      hours: t,
      canMl,
    } = given;
    if (waterMl !== null && compare(s, UNITY) === 0)
      return sheet.refuse('waterMl', 'reckon/full-strength-has-no-water');
    const { T, F } = amounts({ ...given, cans: canMl === null ? null : given.cans }, sheet);
    return [
      T,
      F,
      sheet.number('waterMl', 'W = T − F', [T, F], minus(T, F)),
      ...(e === null
        ? []
        : [
            sheet.number('energyKcalPerMl', 'e′ = e × s', [e, s], times(e, s)),
            sheet.number('energyKcal', 'E = F × e', [F, e], times(F, e)),
          ]),
      ...(p === null
        ? []
        : [sheet.number('proteinG', 'P = F × p / 1000', [F, p], over(times(F, p), of(1000)))]),
      ...(r === null || t !== null
        ? []
        : [sheet.number('lastsHours', 't = T / r', [T, r], over(T, r), 'E4')]),
    ];
  },
});

export const strengthOf = calculation({
  name: 'strength-of',
  also: ['what-strength', 'strength-from-volumes'],
  asks: {
    formulaMl: quantity('F', 'mL', ['0.1', '20000'], 'formula', 'feed'),
    waterMl: volumeOf('W', 'water'),
    energyKcalPerMl: optional(energyDensity),
  },
  gives: {
    strengthPercent: gives('s', '%', '0.1'),
    totalMl: gives('T', 'mL'),
    energyKcalPerMl: gives('e′', 'kcal/mL', '0.01'),
  },
  equations: ['T = F + W', 's = 100 × F / T', 'e′ = e × F / T'],
  sources: ['E5'],
  rule: 'RK9',
  example: { formula: '237 mL', water: '79 mL', energyDensity: '1.2 kcal/mL' },
  compute: ({ formulaMl: F, waterMl: W, energyKcalPerMl: e }, sheet) => {
    const T = sheet.number('totalMl', 'T = F + W', [F, W], plus(F, W));
    const part: Exact = over(F, T);
    return [
      sheet.number('strengthPercent', 's = 100 × F / T', [F, T], times(of(100), part)),
      T,
      ...(e === null ? [] : [sheet.number('energyKcalPerMl', 'e′ = e × F / T', [e, F, T], times(e, part))]),
    ];
  },
});

export const diluteToDensity = calculation({
  name: 'dilute-to-density',
  also: ['dilution-to-density', 'target-density'],
  asks: {
    energyKcalPerMl: energyDensity,
    wantedKcalPerMl: quantity('e′', 'kcal/mL', ['0.05', '4'], 'wanted', 'target', 'to', 'wantedDensity'),
    totalMl: optional(quantity('T', 'mL', ['0.1', '20000'], 'total', 'volume', 'mixture')),
    formulaMl: optional(quantity('F', 'mL', ['0.1', '20000'], 'formula', 'feed', 'can')),
  },
  oneOf: [[['totalMl'], ['formulaMl']]],
  gives: {
    strengthPercent: gives('s', '%', '0.1'),
    totalMl: gives('T', 'mL'),
    formulaMl: gives('F', 'mL'),
    waterMl: gives('W', 'mL'),
  },
  equations: ['s = 100 × e′ / e', 'F = T × s', 'T = F / s', 'W = T − F'],
  sources: ['E5'],
  rule: 'RK9',
  example: { energyDensity: '30 kcal/oz', wanted: '24 kcal/oz', total: '500 mL' },
  compute: ({ energyKcalPerMl: e, wantedKcalPerMl: to, totalMl, formulaMl }, sheet) => {
    if (compare(to, e) > 0) return sheet.refuse('wantedKcalPerMl', 'reckon/water-only-thins');
    const s = over(to, e);
    const percent = sheet.number('strengthPercent', 's = 100 × e′ / e', [to, e], times(of(100), s));
    const T =
      totalMl === null
        ? sheet.number('totalMl', 'T = F / s', [formulaMl as Known, percent], over(formulaMl as Known, s))
        : sheet.number('totalMl', 'T', [], totalMl, 'arithmetic');
    const F =
      formulaMl === null
        ? sheet.number('formulaMl', 'F = T × s', [T, percent], times(T, s))
        : sheet.number('formulaMl', 'F', [], formulaMl, 'arithmetic');
    return [percent, T, F, sheet.number('waterMl', 'W = T − F', [T, F], minus(T, F))];
  },
});
