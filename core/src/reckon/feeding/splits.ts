/** How is a day’s volume given: in boluses, in a cycle, or step by step up to the goal? */
import type { Bad } from '../../base/result.ts';
import { assumed, gives, givesMost, names, optional, quantity } from '../asking/asks.ts';
import { densities, energyDensity, energyGoal, hoursADay, rate, volume } from '../asking/usual-asks.ts';
import { moment, zone } from '../asking/when.ts';
import { calculation, type Known, type Line, type Sheet } from '../declare.ts';
import { compare, least, less, minus, of, over, plus, rounded, times, UNITY } from '../exact.ts';
import { nutrients, nutrientsOf } from './delivery.ts';
import { feedsADay, feedsAsks } from './feeds-a-day.ts';
import { endGives, endLines, hoursFromTo, start } from './time.ts';

/** The longest day that a clock change makes. */
const LONGEST_DAY = of(25);

export const bolus = calculation({
  name: 'bolus',
  also: ['bolus-split', 'bolus-volume', 'intermittent', 'per-feed'],
  asks: {
    volumeMl: optional(volume),
    energyKcal: optional(energyGoal),
    ...feedsAsks,
    ceilingMl: optional(quantity('m', 'mL', ['1', '2000'], 'ceiling', 'most', 'maximum', 'max')),
    containerMl: optional(
      quantity('c', 'mL', ['1', '3000'], 'container', 'can', 'canMl', 'canSize', 'carton'),
    ),
    ...densities,
  },
  oneOf: [
    [['volumeMl'], ['energyKcal', 'energyKcalPerMl']],
    [['feeds'], ['everyHours']],
  ],
  gives: {
    volumeMl: gives('V', 'mL'),
    feeds: gives('n', '1'),
    bolusMl: gives('b', 'mL'),
    containersPerFeed: gives('b/c', '1', '0.01'),
    deliveredVolumeMl: gives('V′', 'mL'),
    leastFeeds: gives('n₀', '1'),
    overCeiling: names('b > m'),
    ...nutrients,
  },
  equations: [
    'V = E / e',
    'n = 24 / i',
    'b = V / n',
    'b / c',
    'V′ = n × b',
    'n₀ = V / m, up to a whole feed',
  ],
  sources: ['S30'],
  rule: 'RK6',
  example: { volume: '1800 mL', feeds: '5' },
  compute: (given, sheet) => {
    const { energyKcal: E, energyKcalPerMl: e, containerMl: c } = given;
    const each = feedsADay(given, sheet) as Known | Bad;
    if ('ok' in each) return each;
    const V =
      given.volumeMl === null
        ? sheet.number('volumeMl', 'V = E / e', [E as Known, e as Known], over(E as Known, e as Known), 'E1')
        : sheet.number('volumeMl', 'V', [], given.volumeMl, 'arithmetic');
    const n = sheet.number(
      'feeds',
      given.feeds ? 'n' : 'n = 24 / i',
      given.everyHours ? [given.everyHours] : [],
      each,
      'arithmetic',
    );
    const b = sheet.number('bolusMl', 'b = V / n', [V, n], over(V, n));
    const programmed = sheet.rounded(b);
    const really = sheet.number('deliveredVolumeMl', 'V′ = n × b', [n, programmed], times(n, programmed));
    return [
      V,
      n,
      b,
      really,
      ...nutrientsOf(really, given, sheet),
      ...(c === null ? [] : [sheet.number('containersPerFeed', 'b / c', [b, c], over(b, c), 'arithmetic')]),
      ...underCeiling(V, b, given.ceilingMl, sheet),
    ];
  },
});

/** Whether one feed is over its ceiling, and how many would not be. */
function underCeiling(
  V: Known,
  b: Known,
  m: Known | null,
  sheet: Sheet<'overCeiling' | 'leastFeeds'>,
): readonly Line[] {
  if (m === null) return [];
  const fewest = rounded(over(V, m), UNITY, 'up');
  return [
    sheet.choice('overCeiling', 'b > m', [b, m], compare(b, m) > 0 ? 'yes' : 'no', 'S30'),
    sheet.number('leastFeeds', 'n₀ = V / m, up to a whole feed', [V, m], fewest, 'arithmetic'),
  ];
}

export const cyclic = calculation({
  name: 'cyclic',
  also: ['cyclic-rate', 'nocturnal', 'overnight', 'cycle'],
  asks: {
    volumeMl: optional(volume),
    energyKcal: optional(energyGoal),
    ...densities,
    energyKcalPerMl: optional(energyDensity),
    share: assumed(quantity('k', '1', ['0.01', '1', 'definition'], 'shareOvernight', 'fraction'), '1'),
    hours: optional(hoursADay),
    start: optional(start),
    until: optional(moment('until', 'end', 'to', 'stop')),
    zone: optional(zone),
  },
  oneOf: [
    [['volumeMl'], ['energyKcal', 'energyKcalPerMl']],
    [['hours'], ['start', 'until']],
  ],
  gives: {
    volumeMl: gives('V', 'mL'),
    hours: gives('t', 'h', '0.01'),
    rateMlPerHour: gives('r', 'mL/h'),
    deliveredVolumeMl: gives('V′', 'mL'),
    ...nutrients,
    ...endGives,
  },
  equations: [
    'V = k × E / e',
    'V = k × V₂₄',
    't = end − start',
    'r = V / t',
    'V′ = r × t',
    'end = start + t',
  ],
  sources: ['S30'],
  rule: 'RK6',
  example: { goal: '1800 kcal', share: '60 %', energyDensity: '1.5 kcal/mL', hours: '12', start: '20:00' },
  compute: (given, sheet) => {
    const { volumeMl, energyKcal: E, energyKcalPerMl: e, share: k, zone: inZone, start: from, until } = given;
    const V =
      volumeMl === null
        ? sheet.number(
            'volumeMl',
            'V = k × E / e',
            [k, E as Known, e as Known],
            over(times(k, E as Known), e as Known),
          )
        : sheet.number('volumeMl', 'V = k × V₂₄', [k, { ...volumeMl, symbol: 'V₂₄' }], times(k, volumeMl));
    const hours = from && until ? hoursFromTo(from, until, inZone, sheet) : (given.hours as Known);
    if ('ok' in hours) return hours;
    if (less(LONGEST_DAY, hours)) return sheet.refuse('until', 'reckon/not-within-a-day');
    const t = sheet.number('hours', from && until ? 't = end − start' : 't', [], hours, 'arithmetic');
    const r = sheet.number('rateMlPerHour', 'r = V / t', [V, t], over(V, t));
    const really = sheet.number(
      'deliveredVolumeMl',
      'V′ = r × t',
      [sheet.rounded(r), t],
      times(sheet.rounded(r), t),
    );
    const end = endLines(from, inZone, t, sheet);
    return 'ok' in end ? end : [V, t, r, really, ...nutrientsOf(really, given, sheet), ...end];
  },
});

const step = quantity('s', 'mL/h', ['0.5', '200'], 'step', 'by', 'increase');

export const advanceRate = calculation({
  name: 'advance-rate',
  also: ['advancement', 'advance', 'titrate', 'step-up'],
  asks: {
    startMlPerHour: quantity('r₀', 'mL/h', ['0.5', '500'], 'start', 'startRate', 'from'),
    stepMlPerHour: step,
    everyHours: quantity('i', 'h', ['1', '72'], 'every', 'interval'),
    goalMlPerHour: { ...rate, symbol: 'g', also: ['goal', 'goalRate', 'to', 'rate'] },
    afterHours: optional(quantity('t', 'h', ['0', '1000'], 'after', 'at')),
  },
  gives: {
    steps: gives('n', '1'),
    hoursToGoal: gives('T', 'h', '0.1'),
    rateMlPerHour: givesMost('r', 'mL/h'),
  },
  equations: [
    'n = (g − r₀) / s, up to a whole step',
    'T = n × i',
    'r = least of g and r₀ + s × whole intervals in t',
  ],
  sources: ['S30'],
  rule: 'RK7',
  cautions: ['each-step-is-confirmed'],
  example: { start: '20 mL/h', step: '20 mL/h', every: '6 h', goal: '75 mL/h', after: '13 h' },
  compute: (
    { startMlPerHour: r0, stepMlPerHour: s, everyHours: i, goalMlPerHour: g, afterHours: t },
    sheet,
  ) => {
    if (compare(g, r0) < 0) return sheet.refuse('goalMlPerHour', 'reckon/goal-below-start');
    const n = sheet.number(
      'steps',
      'n = (g − r₀) / s, up to a whole step',
      [g, r0, s],
      rounded(over(minus(g, r0), s), UNITY, 'up'),
    );
    const lines = [n, sheet.number('hoursToGoal', 'T = n × i', [n, i], times(n, i))];
    if (t === null) return lines;
    const reached = least(g, plus(r0, times(s, rounded(over(t, i), UNITY, 'down'))));
    return [
      ...lines,
      sheet.number(
        'rateMlPerHour',
        'r = least of g and r₀ + s × whole intervals in t',
        [g, r0, s, t, i],
        reached,
      ),
    ];
  },
});
