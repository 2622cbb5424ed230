/** How is a day’s volume given: in boluses, in a cycle, or step by step up to the goal? */
import { assumed, count, gives, givesMost, names, optional, quantity } from '../asking/asks.ts';
import { densities, energyDensity, energyGoal, hoursADay, rate, volume } from '../asking/usual-asks.ts';
import { moment, place, zone } from '../asking/when.ts';
import { calculation, type Known } from '../declare.ts';
import { compare, least, minus, of, over, plus, rounded, times, UNITY } from '../exact.ts';
import { nutrients, nutrientsOf } from './delivery.ts';
import { elapsed, endGives, endLines, start } from './time.ts';

const HOURS = of(24);

export const bolus = calculation({
  name: 'bolus',
  also: ['bolus-split', 'bolus-volume', 'intermittent', 'per-feed'],
  asks: {
    volumeMl: volume,
    feeds: optional(count('n', '48', 'feedsPerDay', 'n', 'boluses', 'times', 'feedings', 'numberOfFeeds')),
    everyHours: optional(quantity('i', 'h', ['0.5', '24', 'definition'], 'every', 'interval')),
    ceilingMl: optional(quantity('m', 'mL', ['1', '2000'], 'ceiling', 'most', 'maximum', 'max')),
    ...densities,
  },
  oneOf: [[['feeds'], ['everyHours']]],
  gives: {
    feeds: gives('n', '1'),
    bolusMl: gives('b', 'mL'),
    deliveredVolumeMl: gives('V′', 'mL'),
    leastFeeds: gives('n₀', '1'),
    overCeiling: names('b > m'),
    ...nutrients,
  },
  equations: ['n = 24 / i', 'b = V / n', 'V′ = n × b', 'n₀ = V / m, up to a whole feed'],
  sources: ['S30'],
  rule: 'RK6',
  example: { volume: '1800 mL', feeds: '5' },
  compute: (given, sheet) => {
    const { volumeMl: V, feeds, everyHours: i, ceilingMl: m } = given;
    const each = feeds ?? over(HOURS, i as Known);
    if (each.n % each.d !== 0n) return sheet.refuse('everyHours', 'reckon/does-not-divide-day');
    const n =
      feeds === null
        ? sheet.number('feeds', 'n = 24 / i', [i as Known], each, 'arithmetic')
        : sheet.number('feeds', 'n', [], feeds, 'arithmetic');
    const b = sheet.number('bolusMl', 'b = V / n', [V, n], over(V, n));
    const really = sheet.number(
      'deliveredVolumeMl',
      'V′ = n × b',
      [n, sheet.rounded(b)],
      times(n, sheet.rounded(b)),
    );
    const lines = [n, b, really, ...nutrientsOf(really, given, sheet)];
    if (m === null) return lines;
    const fewest = rounded(over(V, m), UNITY, 'up');
    return [
      ...lines,
      sheet.choice('overCeiling', 'b > m', [b, m], compare(b, m) > 0 ? 'yes' : 'no', 'S30'),
      sheet.number('leastFeeds', 'n₀ = V / m, up to a whole feed', [V, m], fewest, 'arithmetic'),
    ];
  },
});

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
    let hours = given.hours;
    if (hours === null && from !== null && until !== null) {
      const [first, last] = [place(from, inZone, 'start'), place(until, inZone, 'until')];
      if (!first.ok) return first;
      if (!last.ok) return last;
      const lasts = elapsed(first.value, last.value);
      if (lasts === null) return sheet.refuse('until', 'reckon/mixed-moments');
      if (lasts <= 0 || lasts > 25 * 3_600_000) return sheet.refuse('until', 'reckon/not-within-a-day');
      hours = {
        ...over(of(lasts), of(3_600_000)),
        symbol: 't',
        unit: 'h',
        basis: { kind: 'asked', name: 't' },
      };
    }
    const t = sheet.number(
      'hours',
      from && until ? 't = end − start' : 't',
      [],
      hours as Known,
      'arithmetic',
    );
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
