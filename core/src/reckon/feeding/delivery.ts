/** What does a volume of feed deliver? Used wherever a rounded rate or whole containers are worked again. */
import { gives, optional } from '../asking/asks.ts';
import { densities, hoursADay, rate, volume, weight } from '../asking/usual-asks.ts';
import { calculation, type Known, type Line, type Sheet } from '../declare.ts';
import { of, over, times } from '../exact.ts';

export const nutrients = {
  energyKcal: gives('E', 'kcal'),
  proteinG: gives('P', 'g'),
  formulaWaterMl: gives('Vw', 'mL'),
  fibreG: gives('F', 'g'),
};

type Densities = {
  readonly energyKcalPerMl: Known | null;
  readonly proteinGPerL: Known | null;
  readonly waterFraction: Known | null;
  readonly fibreGPerL: Known | null;
};

/** Energy, protein, formula water and fibre of a volume, as far as the feed’s densities are known. */
export function nutrientsOf(
  V: Known,
  { energyKcalPerMl: e, proteinGPerL: p, waterFraction: w, fibreGPerL: f }: Densities,
  sheet: Sheet<keyof typeof nutrients>,
): readonly (Line & Known)[] {
  return [
    ...(e === null ? [] : [sheet.number('energyKcal', `E = ${V.symbol} × e`, [V, e], times(V, e))]),
    ...(p === null
      ? []
      : [sheet.number('proteinG', `P = ${V.symbol} × p / 1000`, [V, p], over(times(V, p), of(1000)))]),
    ...(w === null ? [] : [sheet.number('formulaWaterMl', `Vw = ${V.symbol} × w`, [V, w], times(V, w))]),
    ...(f === null
      ? []
      : [sheet.number('fibreG', `F = ${V.symbol} × f / 1000`, [V, f], over(times(V, f), of(1000)))]),
  ];
}

export const delivered = calculation({
  name: 'delivered',
  also: ['delivery', 'provides', 'check-back', 'nutrients'],
  asks: {
    volumeMl: optional(volume),
    rateMlPerHour: optional(rate),
    hours: optional(hoursADay),
    ...densities,
    weightKg: optional(weight),
  },
  oneOf: [[['volumeMl'], ['rateMlPerHour', 'hours']]],
  gives: {
    volumeMl: gives('V', 'mL'),
    ...nutrients,
    energyKcalPerKg: gives('E/W', 'kcal/kg', '0.1'),
    proteinGPerKg: gives('P/W', 'g/kg', '0.01'),
  },
  equations: ['V = r × t', 'E = V × e', 'P = V × p / 1000', 'Vw = V × w', 'F = V × f / 1000'],
  sources: ['E1'],
  rule: 'RK6',
  example: { rate: '70 mL/h', hours: '22', energyDensity: '1.2 kcal/mL' },
  compute: (given, sheet) => {
    const { volumeMl, rateMlPerHour: r, hours: t, weightKg: W } = given;
    const V =
      r !== null && t !== null
        ? sheet.number('volumeMl', 'V = r × t', [r, t], times(r, t))
        : sheet.number('volumeMl', 'V', [], volumeMl as Known, 'arithmetic');
    const found = nutrientsOf(V, given, sheet);
    const perKg =
      W === null
        ? []
        : found.flatMap((line) => {
            if (line.key === 'energyKcal')
              return [sheet.number('energyKcalPerKg', 'E / W', [line, W], over(line, W), 'arithmetic')];
            if (line.key === 'proteinG')
              return [sheet.number('proteinGPerKg', 'P / W', [line, W], over(line, W), 'arithmetic')];
            return [];
          });
    return [V, ...found, ...perKg];
  },
});
