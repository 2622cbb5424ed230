/** What is an infant’s volume on a day: of advancement, of the first days of life, of starter feed? */
import { assumed, choice, count, gives, givesMost, optional, quantity } from '../asking/asks.ts';
import { calculation, type Known, type Line, type Sheet } from '../declare.ts';
import { least, less, minus, of, over, plus, rounded, times, UNITY } from '../exact.ts';
import { feedsADay, feedsAsks } from '../feeding/feeds-a-day.ts';
import { infantWeight } from './weight-used.ts';

const DAY = of(24);
const day = count('d', '60', 'day', 'onDay', 'dayOfFeeding');

/** The day's volume, its hour, and its feeds where they are given. */
function ofTheDay(
  k: Known,
  W: Known,
  n: Known | null,
  sheet: Sheet<'volumeMl' | 'rateMlPerHour' | 'bolusMl'>,
): readonly Line[] {
  const V = sheet.number('volumeMl', 'V = k × W', [k, W], times(k, W));
  return [
    V,
    sheet.number('rateMlPerHour', 'r = V / 24', [V], over(V, DAY)),
    ...(n === null ? [] : [sheet.number('bolusMl', 'b = V / n', [V, n], over(V, n))]),
  ];
}

const UP_TO = 'k = k₀ + s × (d − 1), at most m';
const DAYS = 'D = (m − k₀) / s, up to a whole day, and one';

export const infantAdvance = calculation({
  name: 'infant-advance',
  also: ['advance-per-kg', 'preterm-advance', 'infant-steps'],
  asks: {
    weightKg: infantWeight,
    startMlPerKg: quantity('k₀', 'mL/kg', ['1', '200'], 'start', 'from'),
    stepMlPerKg: quantity('s', 'mL/kg', ['1', '60'], 'step', 'by', 'increase'),
    day,
    ceilingMlPerKg: optional(quantity('m', 'mL/kg', ['10', '300'], 'ceiling', 'goal', 'most', 'full')),
    ...feedsAsks,
  },
  gives: {
    volumeMlPerKg: gives('k', 'mL/kg', '0.1'),
    volumeMl: gives('V', 'mL'),
    rateMlPerHour: gives('r', 'mL/h', '0.1'),
    bolusMl: gives('b', 'mL', '0.1'),
    daysToGoal: gives('D', 'd'),
  },
  equations: [UP_TO, 'V = k × W', 'r = V / 24', 'b = V / n', DAYS],
  sources: ['S42'],
  rule: 'RK7',
  cautions: ['each-step-is-confirmed'],
  example: { weight: '1.0 kg', start: '20 mL/kg/day', step: '20 mL/kg/day', day: '4', feeds: '12' },
  compute: (given, sheet) => {
    const { weightKg: W, startMlPerKg: k0, stepMlPerKg: s, day: d, ceilingMlPerKg: m } = given;
    const n = feedsADay(given, sheet);
    if (n !== null && 'ok' in n) return n;
    const raised = plus(k0, times(s, minus(d, UNITY)));
    if (m === null) {
      sheet.caution('no-ceiling-given');
      const k = sheet.number('volumeMlPerKg', UP_TO, [k0, s, d], raised);
      return [k, ...ofTheDay(k, W, n, sheet)];
    }
    if (less(m, k0)) return sheet.refuse('ceilingMlPerKg', 'reckon/goal-below-start');
    const k = sheet.number('volumeMlPerKg', UP_TO, [k0, s, d, m], least(raised, m));
    const days = plus(rounded(over(minus(m, k0), s), UNITY, 'up'), UNITY);
    return [k, ...ofTheDay(k, W, n, sheet), sheet.number('daysToGoal', DAYS, [m, k0, s], days, 'arithmetic')];
  },
});

const FIRST_DAYS = ['75', '90', '120', '135', '150'] as const;
const FIRST = 'k = 75, 90, 120, 135, 150 on days 1 to 5, 150 after';

export const infantFirstDays = calculation({
  name: 'infant-first-days',
  also: ['first-days', 'newborn-volume', 'day-of-life-volume'],
  asks: { weightKg: infantWeight, day: { ...day, also: [...day.also, 'dayOfLife', 'age'] }, ...feedsAsks },
  gives: {
    volumeMlPerKg: gives('k', 'mL/kg'),
    volumeMl: gives('V', 'mL'),
    rateMlPerHour: gives('r', 'mL/h', '0.1'),
    bolusMl: gives('b', 'mL'),
    ceilingMl: givesMost('M', 'mL'),
  },
  equations: [FIRST, 'V = k × W', 'r = V / 24', 'b = V / n', 'M = 180 × W'],
  sources: ['E39'],
  rule: 'RK7',
  example: { weight: '3.2 kg', day: '5', feeds: '8' },
  compute: (given, sheet) => {
    const { weightKg: W, day: d } = given;
    const n = feedsADay(given, sheet);
    if (n !== null && 'ok' in n) return n;
    const row = FIRST_DAYS[Number(d.n / d.d) - 1] ?? '150';
    const k = sheet.number('volumeMlPerKg', FIRST, [d], of(row));
    return [k, ...ofTheDay(k, W, n, sheet), sheet.number('ceilingMl', 'M = 180 × W', [W], times(of(180), W))];
  },
});

const PER_KG = 'k = 130, with gross oedema 100';

export const starterFeed = calculation({
  name: 'starter-feed',
  also: ['f-75', 'f75', 'starter-formula', 'severe-malnutrition'],
  asks: {
    weightKg: quantity('W', 'kg', ['2', '15', 'equation'], 'weight', 'wt', 'w'),
    oedema: assumed(
      choice(
        'oedema',
        { 'none-or-mild': ['no', 'none', 'mild', 'moderate'], gross: ['yes', 'severe', '+++'] },
        'edema',
      ),
      'none-or-mild',
    ),
    everyHours: assumed(quantity('i', 'h', ['2', '4', 'print'], 'every', 'interval'), '2'),
  },
  gives: {
    volumeMlPerKg: gives('k', 'mL/kg'),
    volumeMl: gives('V', 'mL'),
    feeds: gives('n', '1'),
    bolusMl: gives('b', 'mL', '5'),
  },
  equations: [PER_KG, 'V = k × W', 'n = 24 / i', 'b = V / n'],
  sources: ['E41'],
  rule: 'RK12',
  cautions: ['tables-of-this-feed-differ'],
  example: { weight: '5 kg', every: '3 h' },
  compute: ({ weightKg: W, oedema, everyHours }, sheet) => {
    const each = feedsADay({ feeds: null, everyHours }, sheet);
    if (each === null || 'ok' in each) return each ?? [];
    const k = sheet.number('volumeMlPerKg', PER_KG, [], of(oedema === 'gross' ? 100 : 130));
    const V = sheet.number('volumeMl', 'V = k × W', [k, W], times(k, W));
    const n = sheet.number('feeds', 'n = 24 / i', [everyHours], each, 'arithmetic');
    return [k, V, n, sheet.number('bolusMl', 'b = V / n', [V, n], over(V, n))];
  },
});
