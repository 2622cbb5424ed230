/** How fast, and how much? Rate from volume and hours, volume from rate and hours, and both from a goal. */
import { assumed, gives, optional, quantity } from '../asking/asks.ts';
import {
  densities,
  energyDensity,
  energyGoal,
  hoursADay,
  proteinDensity,
  proteinGoal,
  rate as rateAsk,
  volume as volumeAsk,
  weight,
} from '../asking/usual-asks.ts';
import { calculation, type Known, type Line, type NumberLine, type Sheet } from '../declare.ts';
import { of, over, times } from '../exact.ts';
import { nutrients, nutrientsOf } from './delivery.ts';

/** The share of the goal that this feed is to cover: 60 % overnight. */
const share = assumed(
  quantity('k', '1', ['0.01', '1', 'definition'], 'share', 'shareOfGoal', 'fraction', 'shareOvernight'),
  '1',
);

export const rate = calculation({
  name: 'rate',
  also: ['pump-rate', 'flow-rate', 'rate-for-volume'],
  asks: { volumeMl: volumeAsk, hours: hoursADay },
  gives: { rateMlPerHour: gives('r', 'mL/h'), deliveredVolumeMl: gives('V′', 'mL') },
  equations: ['r = V / t', 'V′ = r × t'],
  sources: ['E1'],
  rule: 'RK6',
  example: { volume: '1542 mL', hours: '22' },
  compute: ({ volumeMl: V, hours: t }, sheet) => {
    const r = sheet.number('rateMlPerHour', 'r = V / t', [V, t], over(V, t));
    return [r, again(r, t, sheet)];
  },
});

/** The volume that the rate as shown really gives. */
function again(r: NumberLine, t: Known, sheet: Sheet<'deliveredVolumeMl' | 'rateMlPerHour'>): NumberLine {
  const shown = sheet.rounded(r);
  return sheet.number('deliveredVolumeMl', 'V′ = r × t', [shown, t], times(shown, t));
}

export const volume = calculation({
  name: 'volume',
  also: ['volume-for-rate', 'total-volume', 'daily-volume'],
  asks: { rateMlPerHour: rateAsk, hours: hoursADay },
  gives: { volumeMl: gives('V', 'mL') },
  equations: ['V = r × t'],
  sources: ['E1'],
  rule: 'RK9',
  example: { rate: '68 mL/h', hours: '24' },
  compute: ({ rateMlPerHour: r, hours: t }, sheet) => [
    sheet.number('volumeMl', 'V = r × t', [r, t], times(r, t)),
  ],
});

const goalGives = {
  volumeMl: gives('V', 'mL'),
  rateMlPerHour: gives('r', 'mL/h'),
  deliveredVolumeMl: gives('V′', 'mL'),
  ...nutrients,
};

/** With hours: rate, and what the rounded rate delivers. Without: what the rounded volume delivers. */
function fromGoal(
  V: NumberLine,
  given: Parameters<typeof nutrientsOf>[1] & { readonly hours: Known | null },
  sheet: Sheet<keyof typeof goalGives>,
): readonly Line[] {
  const { hours: t } = given;
  if (t === null) return [V, ...nutrientsOf(sheet.rounded(V), given, sheet)];
  const r = sheet.number('rateMlPerHour', 'r = V / t', [V, t], over(V, t));
  const really = again(r, t, sheet);
  return [V, r, really, ...nutrientsOf(really, given, sheet)];
}

export const volumeForEnergy = calculation({
  name: 'volume-for-energy',
  also: [
    'rate-for-energy',
    'energy-goal',
    'goal-rate',
    'volume-for-goal',
    'rate-for-goal',
    'formula-for-energy',
  ],
  asks: {
    energyKcal: optional(energyGoal),
    weightKg: optional(weight),
    energyKcalPerKg: optional(quantity('q', 'kcal/kg', ['1', '250'], 'perKg', 'kcalPerKg')),
    ...densities,
    energyKcalPerMl: energyDensity,
    share,
    hours: optional(hoursADay),
  },
  oneOf: [[['energyKcal'], ['weightKg', 'energyKcalPerKg']]],
  gives: { goalKcal: gives('E', 'kcal'), ...goalGives },
  equations: ['E = q × W', 'V = k × E / e', 'r = V / t', 'V′ = r × t'],
  sources: ['E1'],
  rule: 'RK6',
  example: { goal: '1850 kcal', energyDensity: '1.2 kcal/mL', hours: '22' },
  compute: (given, sheet) => {
    const { energyKcalPerMl: e, share: k, weightKg: W, energyKcalPerKg: q } = given;
    const goal = W && q ? [sheet.number('goalKcal', 'E = q × W', [q, W], times(q, W))] : [];
    const E = goal[0] ?? (given.energyKcal as Known);
    const V = sheet.number('volumeMl', 'V = k × E / e', [k, E, e], over(times(k, E), e));
    return [...goal, ...fromGoal(V, given, sheet)];
  },
});

export const volumeForProtein = calculation({
  name: 'volume-for-protein',
  also: ['rate-for-protein', 'protein-goal', 'formula-for-protein'],
  asks: {
    proteinG: proteinGoal,
    ...densities,
    proteinGPerL: proteinDensityAboveNone(),
    share,
    hours: optional(hoursADay),
  },
  gives: goalGives,
  equations: ['V = 1000 × k × P / p', 'r = V / t', 'V′ = r × t'],
  sources: ['E2'],
  rule: 'RK6',
  example: {
    goal: '80 g',
    proteinDensity: '14 g/250mL',
    energyDensity: '1.0 kcal/mL',
    water: '213 mL/250mL',
  },
  compute: (given, sheet) => {
    const { proteinG: P, proteinGPerL: p, share: k } = given;
    const V = sheet.number('volumeMl', 'V = 1000 × k × P / p', [k, P, p], over(times(of(1000), k, P), p));
    return fromGoal(V, given, sheet);
  },
});

/** A feed that is asked to cover protein has some. */
function proteinDensityAboveNone(): typeof proteinDensity {
  return quantity('p', 'g/L', ['1', '250'], ...proteinDensity.also);
}
