/** How much energy and protein by weight, and what does an intake come to for each kg? */
import { gives, optional, quantity } from '../asking/asks.ts';
import { energyGoal, weight } from '../asking/usual-asks.ts';
import { calculation } from '../declare.ts';
import { over, times } from '../exact.ts';

const low = (unit: string, limits: readonly [string, string], ...also: readonly string[]) =>
  quantity('k', unit, limits, 'perKg', 'low', 'from', ...also);
const high = (unit: string, limits: readonly [string, string]) =>
  optional(quantity('k₂', unit, limits, 'high', 'to', 'upTo'));

export const energyPerKg = calculation({
  name: 'energy-per-kg',
  also: ['kcal-per-kg', 'energy-by-weight'],
  asks: {
    weightKg: weight,
    energyKcalPerKg: low('kcal/kg', ['1', '250'], 'energy', 'kcal', 'kcalKg', 'kcalPerKg'),
    highKcalPerKg: high('kcal/kg', ['1', '250']),
  },
  gives: { energyKcal: gives('E', 'kcal'), highKcal: gives('E₂', 'kcal') },
  equations: ['E = k × W', 'E₂ = k₂ × W'],
  sources: ['E1'],
  rule: 'RK9',
  example: { weight: '74 kg', energyKcalPerKg: '25' },
  compute: ({ weightKg: W, energyKcalPerKg: k, highKcalPerKg: k2 }, sheet) => [
    sheet.number('energyKcal', 'E = k × W', [k, W], times(k, W)),
    ...(k2 === null ? [] : [sheet.number('highKcal', 'E₂ = k₂ × W', [k2, W], times(k2, W))]),
  ],
});

export const proteinPerKg = calculation({
  name: 'protein-per-kg',
  also: ['protein-by-weight', 'protein-need'],
  asks: {
    weightKg: weight,
    proteinGPerKg: low('g/kg', ['0.1', '8'], 'protein', 'gKg', 'gPerKg'),
    highGPerKg: high('g/kg', ['0.1', '8']),
  },
  gives: { proteinG: gives('P', 'g'), highG: gives('P₂', 'g') },
  equations: ['P = k × W', 'P₂ = k₂ × W'],
  sources: ['E3'],
  rule: 'RK9',
  example: { weight: '67.6 kg', proteinGPerKg: '1.5', round: '0.1' },
  compute: ({ weightKg: W, proteinGPerKg: k, highGPerKg: k2 }, sheet) => [
    sheet.number('proteinG', 'P = k × W', [k, W], times(k, W)),
    ...(k2 === null ? [] : [sheet.number('highG', 'P₂ = k₂ × W', [k2, W], times(k2, W))]),
  ],
});

export const intakePerKg = calculation({
  name: 'intake-per-kg',
  also: ['kcal-per-kg-given', 'per-kg'],
  asks: {
    weightKg: weight,
    energyKcal: optional(energyGoal),
    proteinG: optional(quantity('P', 'g', ['0', '1000'], 'protein')),
    volumeMl: optional(quantity('V', 'mL', ['0', '20000'], 'volume', 'fluid')),
  },
  gives: {
    energyKcalPerKg: gives('E/W', 'kcal/kg', '0.1'),
    proteinGPerKg: gives('P/W', 'g/kg', '0.01'),
    volumeMlPerKg: gives('V/W', 'mL/kg', '0.1'),
  },
  equations: ['E / W', 'P / W', 'V / W'],
  sources: [],
  rule: 'RK9',
  example: { weight: '80 kg', energy: '2160 kcal' },
  compute: ({ weightKg: W, energyKcal: E, proteinG: P, volumeMl: V }, sheet) => [
    ...(E === null ? [] : [sheet.number('energyKcalPerKg', 'E / W', [E, W], over(E, W))]),
    ...(P === null ? [] : [sheet.number('proteinGPerKg', 'P / W', [P, W], over(P, W))]),
    ...(V === null ? [] : [sheet.number('volumeMlPerKg', 'V / W', [V, W], over(V, W))]),
  ],
});
