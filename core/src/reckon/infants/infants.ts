/** How much milk for an infant: mL/kg/day, mL/kg/h, a feed; by birth or current weight; and what it comes to? */
import { assumed, choice, count, gives, givesMost, names, optional, quantity } from '../asking/asks.ts';
import { rate } from '../asking/usual-asks.ts';
import { calculation, type Known, type Line, type Sheet } from '../declare.ts';
import { compare, type Exact, least, less, minus, of, over, plus, rounded, times, UNITY } from '../exact.ts';

const DAY = of(24);
const infantWeight = quantity('W', 'kg', ['0.3', '20', 'equation'], 'weight', 'wt', 'w', 'dosingWeight');
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
const feeds = optional(count('n', '24', 'feedsPerDay', 'n', 'feedings', 'numberOfFeeds'));
const everyHours = optional(quantity('i', 'h', ['1', '12', 'definition'], 'every', 'interval'));
const milkDensity = optional(
  quantity('e', 'kcal/mL', ['0.4', '2'], 'density', 'milk', 'energyDensity', 'kcal', 'energy'),
);

const weightAsks = {
  weightKg: optional(infantWeight),
  birthWeightKg: optional(quantity('Wb', 'kg', ['0.3', '7', 'equation'], 'birthWeight', 'bw', 'birth')),
  currentWeightKg: optional(
    quantity('Wc', 'kg', ['0.3', '20', 'equation'], 'currentWeight', 'current', 'yesterdaysWeight', 'today'),
  ),
  ageDays: optional(quantity('d', 'd', ['0', '730', 'definition'], 'age', 'dayOfLife', 'days')),
  use: assumed(
    choice('use', {
      'birth-weight-in-first-week': ['auto'],
      birth: ['birthweight'],
      current: ['currentweight', 'today'],
    }),
    'birth-weight-in-first-week',
    'birth',
    'current',
  ),
};

type Weights = {
  readonly weightKg: Known | null;
  readonly birthWeightKg: Known | null;
  readonly currentWeightKg: Known | null;
  readonly ageDays: Known | null;
  readonly use: 'birth-weight-in-first-week' | 'birth' | 'current';
};

/** In the first week the birth weight governs, unless the infant is heavier by then; afterwards the last weight. */
function weightOf(given: Weights): { readonly W: Known; readonly which: string } | null {
  const { weightKg, birthWeightKg: birth, currentWeightKg: current, ageDays: d, use } = given;
  if (weightKg !== null) return { W: weightKg, which: 'the-weight-given' };
  const byBirth = { W: birth as Known, which: 'birth-weight' };
  const byCurrent = { W: current as Known, which: 'current-weight' };
  if (use === 'birth') return birth && byBirth;
  if (use === 'current') return current && byCurrent;
  if (birth === null) return current && byCurrent;
  if (current === null) return d === null || !less(of(7), d) ? byBirth : null;
  if (d === null) return null;
  return less(of(7), d) || less(birth, current) ? byCurrent : byBirth;
}

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
function shares(
  V: Known & Line,
  W: Known,
  given: {
    readonly feeds: Known | null;
    readonly everyHours: Known | null;
    readonly energyKcalPerMl: Known | null;
  },
  sheet: FeedSheet,
): readonly Line[] {
  const { everyHours: i, energyKcalPerMl: e } = given;
  const r = sheet.number('rateMlPerHour', 'r = V / 24', [V], over(V, DAY));
  const lines: Line[] = [r, sheet.number('rateMlPerKgPerHour', 'r / W', [r, W], over(r, W))];
  const each: Exact | null = given.feeds ?? (i && over(DAY, i));
  if (each !== null) {
    const n = sheet.number(
      'feeds',
      i && !given.feeds ? 'n = 24 / i' : 'n',
      i && !given.feeds ? [i] : [],
      each,
      'arithmetic',
    );
    const b = sheet.number('bolusMl', 'b = V / n', [V, n], over(V, n));
    lines.push(n, b, sheet.number('bolusMlPerKg', 'b / W', [b, W], over(b, W), 'arithmetic'));
  }
  if (e !== null) {
    const E = sheet.number('energyKcal', 'E = V × e', [V, e], times(V, e));
    lines.push(E, sheet.number('energyKcalPerKg', 'E / W', [E, W], over(E, W)));
  }
  return [...lines, ...fewestFeeds(W, each, sheet)];
}

/** WHO 2003: at least 12 feeds a day under 1.25 kg, 8 up to 2.5 kg. */
function fewestFeeds(W: Known, each: Exact | null, sheet: FeedSheet): readonly Line[] {
  if (less(of('2.5'), W)) return [];
  const fewest = of(less(W, of('1.25')) ? 12 : 8);
  if (each !== null && less(each, fewest)) sheet.caution('fewer-feeds-than-who');
  return [sheet.number('leastFeeds', 'n₀ = 12 under 1.25 kg, 8 at 1.25–2.5 kg', [W], fewest, 'E40')];
}

const feedEquations = [
  'V = k × W',
  'r = V / 24',
  'r / W',
  'n = 24 / i',
  'b = V / n',
  'E = V × e',
  'n₀ = 12 under 1.25 kg, 8 at 1.25–2.5 kg',
];
const wholeFeeds = (i: Known | null): boolean => i === null || over(DAY, i).n % over(DAY, i).d === 0n;

export const infantFeed = calculation({
  name: 'infant-feed',
  also: ['infant', 'infant-volume', 'neonatal-feed', 'ml-kg-day', 'baby-feed'],
  asks: { ...weightAsks, volumeMlPerKg: perKgDay, feeds, everyHours, energyKcalPerMl: milkDensity },
  gives: feedGives,
  equations: feedEquations,
  sources: ['E42', 'E40'],
  rule: 'RK5',
  example: { weight: '4.4 kg', mlPerKgPerDay: '140', every: '3 h' },
  compute: (given, sheet) => {
    const found = weightOf(given);
    if (found === null) return sheet.refuse('weightKg', 'reckon/which-weight');
    if (!wholeFeeds(given.everyHours)) return sheet.refuse('everyHours', 'reckon/does-not-divide-day');
    const { W, which } = found;
    const V = sheet.number(
      'volumeMl',
      `V = k × ${W.symbol}`,
      [given.volumeMlPerKg, W],
      times(given.volumeMlPerKg, W),
    );
    return [sheet.choice('weightUsed', 'W', [W], which), V, ...shares(V, W, given, sheet)];
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
    feeds,
    everyHours,
    energyKcalPerMl: milkDensity,
  },
  oneOf: [[['volumeMl'], ['rateMlPerHour'], ['bolusMl', 'feeds'], ['bolusMl', 'everyHours']]],
  gives: { ...feedGives, volumeMlPerKg: gives('k', 'mL/kg', '0.1') },
  equations: ['V = n × b', 'V = 24 × r', 'k = V / W', ...feedEquations.slice(1)],
  sources: ['E42', 'E40'],
  rule: 'RK9',
  example: { weight: '2.1 kg', bolus: '42 mL', feeds: '8', milk: '24 kcal/oz' },
  compute: (given, sheet) => {
    const found = weightOf(given);
    if (found === null) return sheet.refuse('weightKg', 'reckon/which-weight');
    if (!wholeFeeds(given.everyHours)) return sheet.refuse('everyHours', 'reckon/does-not-divide-day');
    const { volumeMl, rateMlPerHour: r, bolusMl: b, everyHours: i } = given;
    const n: Known | null = given.feeds ?? (i && { ...i, ...over(DAY, i), symbol: 'n', unit: '1' });
    const V =
      volumeMl !== null
        ? sheet.number('volumeMl', 'V', [], volumeMl, 'arithmetic')
        : r !== null
          ? sheet.number('volumeMl', 'V = 24 × r', [r], times(DAY, r))
          : sheet.number('volumeMl', 'V = n × b', [n as Known, b as Known], times(n as Known, b as Known));
    const { W, which } = found;
    const perKg = sheet.number('volumeMlPerKg', `k = V / ${W.symbol}`, [V, W], over(V, W));
    return [sheet.choice('weightUsed', 'W', [W], which), V, perKg, ...shares(V, W, given, sheet)];
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

const day = count('d', '60', 'day', 'onDay', 'dayOfFeeding');

export const infantAdvance = calculation({
  name: 'infant-advance',
  also: ['advance-per-kg', 'preterm-advance', 'infant-steps'],
  asks: {
    weightKg: infantWeight,
    startMlPerKg: quantity('k₀', 'mL/kg', ['1', '200'], 'start', 'from'),
    stepMlPerKg: quantity('s', 'mL/kg', ['1', '60'], 'step', 'by', 'increase'),
    day,
    ceilingMlPerKg: optional(quantity('m', 'mL/kg', ['10', '300'], 'ceiling', 'goal', 'most', 'full')),
    feeds,
    everyHours,
  },
  gives: {
    volumeMlPerKg: gives('k', 'mL/kg', '0.1'),
    volumeMl: gives('V', 'mL'),
    rateMlPerHour: gives('r', 'mL/h', '0.1'),
    bolusMl: gives('b', 'mL', '0.1'),
    daysToGoal: gives('D', 'd'),
  },
  equations: [
    'k = k₀ + s × (d − 1), at most m',
    'V = k × W',
    'r = V / 24',
    'b = V / n',
    'D = (m − k₀) / s, up to a whole day, and one',
  ],
  sources: ['S42'],
  rule: 'RK7',
  cautions: ['each-step-is-confirmed'],
  example: { weight: '1.0 kg', start: '20 mL/kg/day', step: '20 mL/kg/day', day: '4', feeds: '12' },
  compute: (
    { weightKg: W, startMlPerKg: k0, stepMlPerKg: s, day: d, ceilingMlPerKg: m, feeds: n, everyHours: i },
    sheet,
  ) => {
    if (!wholeFeeds(i)) return sheet.refuse('everyHours', 'reckon/does-not-divide-day');
    const raised = plus(k0, times(s, minus(d, UNITY)));
    if (m === null) sheet.caution('no-ceiling-given');
    else if (less(m, k0)) return sheet.refuse('ceilingMlPerKg', 'reckon/goal-below-start');
    const k = sheet.number(
      'volumeMlPerKg',
      'k = k₀ + s × (d − 1), at most m',
      m ? [k0, s, d, m] : [k0, s, d],
      m ? least(raised, m) : raised,
    );
    const V = sheet.number('volumeMl', 'V = k × W', [k, W], times(k, W));
    const each: Known | null = n ?? (i && { ...i, ...over(DAY, i), symbol: 'n', unit: '1' });
    return [
      k,
      V,
      sheet.number('rateMlPerHour', 'r = V / 24', [V], over(V, DAY)),
      ...(each === null ? [] : [sheet.number('bolusMl', 'b = V / n', [V, each], over(V, each))]),
      ...(m === null
        ? []
        : [
            sheet.number(
              'daysToGoal',
              'D = (m − k₀) / s, up to a whole day, and one',
              [m, k0, s],
              plus(rounded(over(minus(m, k0), s), UNITY, 'up'), UNITY),
              'arithmetic',
            ),
          ]),
    ];
  },
});

const FIRST_DAYS = ['75', '90', '120', '135', '150'] as const;

export const infantFirstDays = calculation({
  name: 'infant-first-days',
  also: ['first-days', 'newborn-volume', 'day-of-life-volume'],
  asks: {
    weightKg: infantWeight,
    day: { ...day, also: [...day.also, 'dayOfLife', 'age'] },
    feeds,
    everyHours,
  },
  gives: {
    volumeMlPerKg: gives('k', 'mL/kg'),
    volumeMl: gives('V', 'mL'),
    rateMlPerHour: gives('r', 'mL/h', '0.1'),
    bolusMl: gives('b', 'mL'),
    ceilingMl: givesMost('M', 'mL'),
  },
  equations: ['k = 75, 90, 120, 135, 150 on days 1 to 5, 150 after', 'V = k × W', 'b = V / n', 'M = 180 × W'],
  sources: ['E39'],
  rule: 'RK7',
  example: { weight: '3.2 kg', day: '5', feeds: '8' },
  compute: ({ weightKg: W, day: d, feeds: n, everyHours: i }, sheet) => {
    if (!wholeFeeds(i)) return sheet.refuse('everyHours', 'reckon/does-not-divide-day');
    const row = FIRST_DAYS[Number(least(d, of(5)).n / least(d, of(5)).d) - 1] ?? '150';
    const k = sheet.number(
      'volumeMlPerKg',
      'k = 75, 90, 120, 135, 150 on days 1 to 5, 150 after',
      [d],
      of(row),
    );
    const V = sheet.number('volumeMl', 'V = k × W', [k, W], times(k, W));
    const each: Known | null = n ?? (i && { ...i, ...over(DAY, i), symbol: 'n', unit: '1' });
    return [
      k,
      V,
      sheet.number('rateMlPerHour', 'r = V / 24', [V], over(V, DAY)),
      ...(each === null ? [] : [sheet.number('bolusMl', 'b = V / n', [V, each], over(V, each))]),
      sheet.number('ceilingMl', 'M = 180 × W', [W], times(of(180), W)),
    ];
  },
});

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
  equations: ['k = 130, with gross oedema 100', 'V = k × W', 'n = 24 / i', 'b = V / n'],
  sources: ['E41'],
  rule: 'RK12',
  cautions: ['tables-of-this-feed-differ'],
  example: { weight: '5 kg', every: '3 h' },
  compute: ({ weightKg: W, oedema, everyHours: i }, sheet) => {
    const each = over(DAY, i);
    if (compare(rounded(each, UNITY, 'down'), each) !== 0)
      return sheet.refuse('everyHours', 'reckon/does-not-divide-day');
    const k = sheet.number(
      'volumeMlPerKg',
      'k = 130, with gross oedema 100',
      [],
      of(oedema === 'gross' ? 100 : 130),
    );
    const V = sheet.number('volumeMl', 'V = k × W', [k, W], times(k, W));
    const n = sheet.number('feeds', 'n = 24 / i', [i], each, 'arithmetic');
    return [k, V, n, sheet.number('bolusMl', 'b = V / n', [V, n], over(V, n))];
  },
});
