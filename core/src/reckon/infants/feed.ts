/** How much milk for an infant: mL/kg/day, mL/kg/h, a feed, and what it comes to; and back from what it gets. */
import { gives, names, optional, quantity } from '../asking/asks.ts';
import { rate } from '../asking/usual-asks.ts';
import { calculation, type Known, type Line, type Sheet } from '../declare.ts';
import { type Exact, less, of, over, times } from '../exact.ts';
import { feedsADay, feedsAsks } from '../feeding/feeds-a-day.ts';
import { weightAsks, weightUsed } from './weight-used.ts';

const DAY = of(24);
const perKgDay = quantity(
  'k',
  'mL/kg',
  ['1', '300'],
  'mlPerKgPerDay',
  'mlKgDay',
  'perKg',
  'volumePerKg',
  'mlPerKg',
);
const milkDensity = optional(
  quantity('e', 'kcal/mL', ['0.4', '2'], 'density', 'milk', 'energyDensity', 'kcal', 'energy'),
);

const feedGives = {
  weightUsed: names('W'),
  volumeMl: gives('V', 'mL'),
  rateMlPerHour: gives('r', 'mL/h', '0.1'),
  rateMlPerKgPerHour: gives('r/W', 'mL/kg/h', '0.01'),
  feeds: gives('n', '1'),
  bolusMl: gives('b', 'mL'),
  bolusMlPerKg: gives('b/W', 'mL/kg', '0.1'),
  leastFeeds: gives('n₀', '1'),
  energyKcal: gives('E', 'kcal'),
  energyKcalPerKg: gives('E/W', 'kcal/kg', '0.1'),
};

type FeedSheet = Sheet<keyof typeof feedGives>;

/** The hour's and the feed's share of a day's volume, and its energy. */
function shares(V: Known, W: Known, n: Known | null, e: Known | null, sheet: FeedSheet): readonly Line[] {
  const r = sheet.number('rateMlPerHour', 'r = V / 24', [V], over(V, DAY));
  const lines: Line[] = [r, sheet.number('rateMlPerKgPerHour', 'r / W', [r, W], over(r, W))];
  if (n !== null) {
    const b = sheet.number('bolusMl', 'b = V / n', [V, n], over(V, n));
    const perKg = sheet.number('bolusMlPerKg', 'b / W', [b, W], over(b, W), 'arithmetic');
    lines.push(sheet.number('feeds', 'n', [], n, 'arithmetic'), b, perKg);
  }
  if (e !== null) {
    const E = sheet.number('energyKcal', 'E = V × e', [V, e], times(V, e));
    lines.push(E, sheet.number('energyKcalPerKg', 'E / W', [E, W], over(E, W)));
  }
  return [...lines, ...fewestFeeds(W, n, sheet)];
}

/** WHO 2003: at least 12 feeds a day under 1.25 kg, 8 up to 2.5 kg. */
function fewestFeeds(W: Known, n: Exact | null, sheet: FeedSheet): readonly Line[] {
  if (less(of('2.5'), W)) return [];
  const fewest = of(less(W, of('1.25')) ? 12 : 8);
  if (n !== null && less(n, fewest)) sheet.caution('fewer-feeds-than-who');
  return [sheet.number('leastFeeds', 'n₀ = 12 under 1.25 kg, 8 at 1.25–2.5 kg', [W], fewest, 'E40')];
}

const equations = [
  'r = V / 24',
  'r / W',
  'n = 24 / i',
  'b = V / n',
  'b / W',
  'E = V × e',
  'E / W',
  'n₀ = 12 under 1.25 kg, 8 at 1.25–2.5 kg',
];

export const infantFeed = calculation({
  name: 'infant-feed',
  also: ['infant', 'infant-volume', 'neonatal-feed', 'ml-kg-day', 'baby-feed'],
  asks: { ...weightAsks, volumeMlPerKg: perKgDay, ...feedsAsks, energyKcalPerMl: milkDensity },
  gives: feedGives,
  equations: ['V = k × W', ...equations],
  sources: ['E42', 'E40'],
  rule: 'RK5',
  example: { weight: '4.4 kg', mlPerKgPerDay: '140', every: '3 h' },
  compute: (given, sheet) => {
    const found = weightUsed(given);
    if (found === null) return sheet.refuse('weightKg', 'reckon/which-weight');
    const n = feedsADay(given, sheet);
    if (n !== null && 'ok' in n) return n;
    const { W, which } = found;
    const k = given.volumeMlPerKg;
    const V = sheet.number('volumeMl', `V = k × ${W.symbol}`, [k, W], times(k, W));
    return [sheet.choice('weightUsed', 'W', [W], which), V, ...shares(V, W, n, given.energyKcalPerMl, sheet)];
  },
});

export const infantPerKg = calculation({
  name: 'infant-per-kg',
  also: ['infant-intake', 'ml-per-kg-per-day', 'infant-ml-kg'],
  asks: {
    ...weightAsks,
    volumeMl: optional(quantity('V', 'mL', ['0.5', '5000'], 'volume', 'total', 'day')),
    bolusMl: optional(quantity('b', 'mL', ['0.2', '500'], 'bolus', 'feed', 'each', 'feedVolume')),
    rateMlPerHour: optional(rate),
    ...feedsAsks,
    energyKcalPerMl: milkDensity,
  },
  oneOf: [[['volumeMl'], ['rateMlPerHour'], ['bolusMl', 'feeds'], ['bolusMl', 'everyHours']]],
  gives: { ...feedGives, volumeMlPerKg: gives('k', 'mL/kg', '0.1') },
  equations: ['V = n × b', 'V = 24 × r', 'k = V / W', ...equations],
  sources: ['E42', 'E40'],
  rule: 'RK9',
  example: { weight: '2.1 kg', bolus: '42 mL', feeds: '8', milk: '24 kcal/oz' },
  compute: (given, sheet) => {
    const found = weightUsed(given);
    if (found === null) return sheet.refuse('weightKg', 'reckon/which-weight');
    const n = feedsADay(given, sheet);
    if (n !== null && 'ok' in n) return n;
    const { volumeMl, rateMlPerHour: r, bolusMl: b } = given;
    const V =
      volumeMl !== null
        ? sheet.number('volumeMl', 'V', [], volumeMl, 'arithmetic')
        : r !== null
          ? sheet.number('volumeMl', 'V = 24 × r', [r], times(DAY, r))
          : sheet.number('volumeMl', 'V = n × b', [n as Known, b as Known], times(n as Known, b as Known));
    const { W, which } = found;
    const perKg = sheet.number('volumeMlPerKg', `k = V / ${W.symbol}`, [V, W], over(V, W));
    return [
      sheet.choice('weightUsed', 'W', [W], which),
      V,
      perKg,
      ...shares(V, W, n, given.energyKcalPerMl, sheet),
    ];
  },
});

export const perDayToPerHour = calculation({
  name: 'per-day-to-per-hour',
  also: ['ml-kg-day-to-ml-kg-h', 'mlkgday-to-mlkgh', 'per-hour'],
  asks: {
    volumeMlPerKg: optional(perKgDay),
    rateMlPerKgPerHour: optional(
      quantity('q', 'mL/kg/h', ['0.05', '20'], 'mlPerKgPerHour', 'mlKgH', 'perHour'),
    ),
  },
  oneOf: [[['volumeMlPerKg'], ['rateMlPerKgPerHour']]],
  gives: { rateMlPerKgPerHour: gives('q', 'mL/kg/h', '0.01'), volumeMlPerKg: gives('k', 'mL/kg', '0.1') },
  equations: ['q = k / 24', 'k = 24 × q'],
  sources: ['E38'],
  rule: 'RK9',
  example: { mlPerKgPerDay: '150' },
  compute: ({ volumeMlPerKg: k, rateMlPerKgPerHour: q }, sheet) =>
    k !== null
      ? [sheet.number('rateMlPerKgPerHour', 'q = k / 24', [k], over(k, DAY))]
      : [sheet.number('volumeMlPerKg', 'k = 24 × q', [q as Known], times(DAY, q as Known))],
});
