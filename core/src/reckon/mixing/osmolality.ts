/** How concentrated in particles is it after dilution, and how much water brings it down to a wanted osmolality? */
import { gives, optional, quantity } from '../asking/asks.ts';
import { volumeOf } from '../asking/usual-asks.ts';
import { calculation, type Known } from '../declare.ts';
import { compare, minus, over, plus, times } from '../exact.ts';
import { strength } from './dilution.ts';

const osmolality = quantity('o', 'mosm/kg', ['1', '10000'], 'osmolality', 'mosm', 'osm', 'osmolarity');

export const osmolalityAfter = calculation({
  name: 'osmolality',
  also: ['osmolality-after-dilution', 'osmolality-of-dilution', 'dilute-osmolality'],
  asks: {
    osmolalityMosmPerKg: osmolality,
    strength: optional(strength),
    volumeMl: optional(quantity('V', 'mL', ['0.1', '20000'], 'volume', 'formula', 'feed')),
    waterMl: optional(volumeOf('W', 'water')),
  },
  oneOf: [[['strength'], ['volumeMl', 'waterMl']]],
  gives: { osmolalityMosmPerKg: gives('o′', 'mosm/kg'), totalMl: gives('T', 'mL') },
  equations: ['o′ = o × s', 'T = V + W', 'o′ = o × V / T'],
  sources: ['E49'],
  rule: 'RK12',
  cautions: ['osmolality-is-approximate'],
  example: { osmolality: '600 mOsm/kg', strength: '1/2' },
  compute: ({ osmolalityMosmPerKg: o, strength: s, volumeMl, waterMl }, sheet) => {
    if (s !== null) return [sheet.number('osmolalityMosmPerKg', 'o′ = o × s', [o, s], times(o, s))];
    const [V, W] = [volumeMl as Known, waterMl as Known];
    const T = sheet.number('totalMl', 'T = V + W', [V, W], plus(V, W), 'arithmetic');
    return [T, sheet.number('osmolalityMosmPerKg', 'o′ = o × V / T', [o, V, T], over(times(o, V), T))];
  },
});

export const waterForOsmolality = calculation({
  name: 'water-for-osmolality',
  also: ['dilute-to-osmolality', 'dilute-medicine', 'medicine-dilution'],
  asks: {
    volumeMl: quantity('V', 'mL', ['0.1', '5000'], 'volume', 'medicine', 'dose'),
    osmolalityMosmPerKg: osmolality,
    wantedMosmPerKg: quantity('o′', 'mosm/kg', ['1', '10000'], 'wanted', 'target', 'to', 'desired'),
  },
  gives: { totalMl: gives('T', 'mL'), waterMl: gives('W', 'mL') },
  equations: ['T = V × o / o′', 'W = T − V'],
  sources: ['E49'],
  rule: 'RK12',
  cautions: ['osmolality-is-approximate'],
  example: { volume: '10 mL', osmolality: '3000 mOsm/kg', wanted: '500 mOsm/kg' },
  compute: ({ volumeMl: V, osmolalityMosmPerKg: o, wantedMosmPerKg: to }, sheet) => {
    if (compare(to, o) > 0) return sheet.refuse('wantedMosmPerKg', 'reckon/water-only-thins');
    const T = sheet.number('totalMl', 'T = V × o / o′', [V, o, to], over(times(V, o), to));
    return [T, sheet.number('waterMl', 'W = T − V', [T, V], minus(T, V))];
  },
});
