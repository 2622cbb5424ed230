/** How many drops a minute, and what does a whole number of drops really give? */

import { shownDuration } from '../../base/working.ts';
import { gives, names, optional, quantity } from '../asking/asks.ts';
import { hours, rate, volume } from '../asking/usual-asks.ts';
import { calculation, type Known } from '../declare.ts';
import { of, over, rounded, times, UNITY } from '../exact.ts';
import { msOf } from './time.ts';

const dropFactor = quantity('k', '{gtt}/mL', ['5', '100'], 'dropFactor', 'drop', 'factor', 'gttPerMl', 'set');
const SIXTY = of(60);

export const dripRate = calculation({
  name: 'drip-rate',
  also: ['drops', 'drop-rate', 'gtt', 'drops-per-minute', 'gtt-per-minute'],
  asks: {
    volumeMl: optional(volume),
    hours: optional(hours),
    rateMlPerHour: optional(rate),
    dropFactorGttPerMl: dropFactor,
  },
  oneOf: [[['rateMlPerHour'], ['volumeMl', 'hours']]],
  gives: {
    exactDropsPerMinute: gives('g₀', '{gtt}/min', '0.01'),
    dropsPerMinute: gives('g', '{gtt}/min'),
    reallyMlPerHour: gives('r′', 'mL/h', '0.1'),
    reallyLasts: names('t′'),
    reallyHours: gives('t′', 'h', '0.01'),
  },
  equations: [
    'g₀ = V × k / (60 × t)  or  r × k / 60',
    'g = g₀ to a whole drop',
    'r′ = 60 × g / k',
    't′ = V / r′',
  ],
  sources: ['E8'],
  rule: 'RK11',
  example: { volume: '1000 mL', hours: '12', dropFactor: '10' },
  compute: ({ volumeMl: V, hours: t, rateMlPerHour: r, dropFactorGttPerMl: k }, sheet) => {
    const perMinute =
      r === null ? over(times(V as Known, k), times(SIXTY, t as Known)) : over(times(r, k), SIXTY);
    const from = r === null ? [V as Known, k, t as Known] : [r, k];
    const exact = sheet.number(
      'exactDropsPerMinute',
      r === null ? 'g₀ = V × k / (60 × t)' : 'g₀ = r × k / 60',
      from,
      perMinute,
    );
    const g = sheet.number('dropsPerMinute', 'g = g₀ to a whole drop', [exact], perMinute);
    const whole = { ...g, ...rounded(g, UNITY, 'half-up') };
    if (whole.n === 0n) {
      sheet.caution('less-than-a-drop-a-minute');
      return [exact, g];
    }
    const really = sheet.number(
      'reallyMlPerHour',
      'r′ = 60 × g / k',
      [whole, k],
      over(times(SIXTY, whole), k),
    );
    if (V === null) return [exact, g, really];
    const lasts = sheet.number('reallyHours', 't′ = V / r′', [V, really], over(V, really));
    return [
      exact,
      g,
      really,
      lasts,
      sheet.shown('reallyLasts', 't′ = V / r′', [V, really], shownDuration(msOf(lasts))),
    ];
  },
});

export const rateFromDrops = calculation({
  name: 'rate-from-drops',
  also: ['drops-to-rate', 'ml-per-hour-from-drops'],
  asks: {
    dropsPerMinute: quantity(
      'g',
      '{gtt}/min',
      ['1', '400'],
      'drops',
      'gttMin',
      'gttPerMin',
      'gtt',
      'dropRate',
    ),
    dropFactorGttPerMl: dropFactor,
  },
  gives: { rateMlPerHour: gives('r', 'mL/h', '0.1') },
  equations: ['r = 60 × g / k'],
  sources: ['E8'],
  rule: 'RK9',
  example: { drops: '25 gtt/min', dropFactor: '15 gtt/mL' },
  compute: ({ dropsPerMinute: g, dropFactorGttPerMl: k }, sheet) => [
    sheet.number('rateMlPerHour', 'r = 60 × g / k', [g, k], over(times(SIXTY, g), k)),
  ],
});
