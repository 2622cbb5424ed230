/** How much water is in the feed, how much more is needed, and in how many flushes? */
import { assumed, choice, count, gives, givesMost, optional, quantities, quantity } from '../asking/asks.ts';
import { energyGoal, hoursADay, rate, volume, volumeOf, waterFraction } from '../asking/usual-asks.ts';
import { calculation, type Known, type Line } from '../declare.ts';
import { compare, minus, notNegative, of, over, plus, rounded, times, UNITY } from '../exact.ts';
import { feedsADay, feedsAsks } from './feeds-a-day.ts';

const fluidGoal = optional(
  quantity('G', 'mL', ['1', '20000'], 'goal', 'fluidGoal', 'fluid', 'fluidNeed', 'waterGoal'),
);
const mlPerKcal = assumed(
  quantity('q', 'mL/kcal', ['0.5', '2', 'print'], 'mlPerKcal', 'rule', 'fluidGoalRule', 'perKcal'),
  '1',
  '1.2',
);

export const formulaWater = calculation({
  name: 'formula-water',
  also: ['free-water', 'water-in-feed', 'total-water', 'water-provided'],
  asks: {
    volumeMl: optional(volume),
    rateMlPerHour: optional(rate),
    hours: optional(hoursADay),
    waterFraction,
    flushMl: optional(quantities('f', 'mL', ['0', '5000'], 'flush', 'flushes')),
  },
  oneOf: [[['volumeMl'], ['rateMlPerHour', 'hours']]],
  gives: { volumeMl: gives('V', 'mL'), formulaWaterMl: gives('Vw', 'mL'), totalWaterMl: gives('T', 'mL') },
  equations: ['V = r × t', 'Vw = V × w', 'T = Vw + f'],
  sources: ['E1'],
  rule: 'RK6',
  example: { volume: '1920 mL', water: '81 %', flushes: '6 x 100 mL' },
  compute: ({ volumeMl, rateMlPerHour: r, hours: t, waterFraction: w, flushMl: f }, sheet) => {
    const V =
      volumeMl === null
        ? sheet.number('volumeMl', 'V = r × t', [r as Known, t as Known], times(r as Known, t as Known))
        : sheet.number('volumeMl', 'V', [], volumeMl, 'arithmetic');
    const Vw = sheet.number('formulaWaterMl', 'Vw = V × w', [V, w], times(V, w));
    if (f === null) return [V, Vw];
    return [V, Vw, sheet.number('totalWaterMl', 'T = Vw + f', [Vw, ...f], plus(Vw, ...f), 'arithmetic')];
  },
});

export const fluidForEnergy = calculation({
  name: 'fluid-for-energy',
  also: ['fluid-per-kcal', 'ml-per-kcal'],
  asks: { energyKcal: energyGoal, mlPerKcal },
  gives: { fluidMl: gives('G', 'mL') },
  equations: ['G = q × E'],
  sources: ['E1'],
  rule: 'RK5',
  example: { energy: '1848 kcal' },
  compute: ({ energyKcal: E, mlPerKcal: q }, sheet) => [
    sheet.number('fluidMl', 'G = q × E', [q, E], times(q, E)),
  ],
});

export const flushes = calculation({
  name: 'flushes',
  also: ['flush-plan', 'flush', 'flush-size', 'flush-volume', 'extra-water', 'water-flushes', 'flush-count'],
  asks: {
    goalMl: fluidGoal,
    energyKcal: optional(energyGoal),
    mlPerKcal,
    volumeMl: optional(volume),
    waterFraction: optional(waterFraction),
    formulaWaterMl: optional(volumeOf('Vw', 'formulaWater', 'waterInFeed')),
    otherWaterMl: assumed(volumeOf('Vo', 'other', 'otherWater', 'medicineWater', 'intravenous', 'iv'), '0'),
    flushes: optional(count('n', '96', 'flushesPerDay', 'numberOfFlushes', 'n', 'times')),
    everyHours: feedsAsks.everyHours,
    flushMl: optional(quantity('f', 'mL', ['1', '2000'], 'size', 'flushSize', 'each', 'flushVolume')),
    hours: optional(hoursADay),
  },
  oneOf: [
    [['goalMl'], ['energyKcal']],
    [['volumeMl', 'waterFraction'], ['formulaWaterMl']],
  ],
  gives: {
    fluidMl: gives('G', 'mL'),
    formulaWaterMl: gives('Vw', 'mL'),
    extraWaterMl: gives('X', 'mL'),
    flushes: gives('n', '1'),
    flushMl: gives('f', 'mL'),
    flushesNeeded: gives('n′', '1'),
    extraWaterMlPerHour: gives('x', 'mL/h'),
    overMl: gives('O', 'mL'),
  },
  equations: [
    'G = q × E',
    'Vw = V × w',
    'X = G − Vw − Vo, not less than 0',
    'n = 24 / i',
    'f = X / n',
    'n′ = X / f, up to a whole flush',
    'x = X / t',
  ],
  sources: ['E1'],
  rule: 'RK6',
  example: { volume: '1540 mL', water: '805 mL/L', energy: '1848 kcal', hours: '22', flushes: '6' },
  compute: (given, sheet) => {
    const { goalMl, energyKcal: E, mlPerKcal: q, volumeMl: V, waterFraction: w, otherWaterMl: Vo } = given;
    const G =
      goalMl === null
        ? sheet.number('fluidMl', 'G = q × E', [q, E as Known], times(q, E as Known))
        : sheet.number('fluidMl', 'G', [], goalMl, 'arithmetic');
    const Vw =
      given.formulaWaterMl === null
        ? sheet.number(
            'formulaWaterMl',
            'Vw = V × w',
            [V as Known, w as Known],
            times(V as Known, w as Known),
          )
        : sheet.number('formulaWaterMl', 'Vw', [], given.formulaWaterMl, 'arithmetic');
    const more = minus(minus(G, Vw), Vo);
    const X = sheet.number(
      'extraWaterMl',
      'X = G − Vw − Vo, not less than 0',
      [G, Vw, Vo],
      notNegative(more),
    );
    const lines: Line[] = [G, Vw, X];
    if (more.n < 0n)
      lines.push(
        sheet.number('overMl', 'O = Vw + Vo − G', [Vw, Vo, G], minus(plus(Vw, Vo), G), 'arithmetic'),
      );
    const { everyHours: i, flushMl: size, hours: t } = given;
    const each = feedsADay({ feeds: given.flushes, everyHours: i }, sheet);
    if (each !== null && 'ok' in each) return each;
    if (each !== null) {
      const n = sheet.number('flushes', given.flushes ? 'n' : 'n = 24 / i', i ? [i] : [], each, 'arithmetic');
      lines.push(n, sheet.number('flushMl', 'f = X / n', [X, n], over(X, n)));
    }
    if (size !== null)
      lines.push(
        sheet.number(
          'flushesNeeded',
          'n′ = X / f, up to a whole flush',
          [X, size],
          rounded(over(X, size), UNITY, 'up'),
          'arithmetic',
        ),
      );
    if (t !== null) lines.push(sheet.number('extraWaterMlPerHour', 'x = X / t', [X, t], over(X, t)));
    return lines;
  },
});

const COUNTS = { 'whole-volume': ['volume', 'whole', 'liquid'], 'free-water': ['free', 'water'] } as const;
const part = (symbol: string, ...also: readonly string[]) =>
  optional(quantities(symbol, 'mL', ['0', '20000'], ...also));

export const totalFluid = calculation({
  name: 'total-fluid',
  also: ['fluid-limit', 'total-fluid-limit', 'fluid-total'],
  asks: {
    limitMl: optional(quantity('L', 'mL', ['1', '20000'], 'limit', 'fluidLimit', 'most')),
    feedMl: part('V', 'feed', 'formula', 'volume'),
    waterFraction: optional(waterFraction),
    flushMl: part('f', 'flush', 'flushes', 'water'),
    medicineMl: part('m', 'medicine', 'medicines', 'meds', 'medication'),
    intravenousMl: part('iv', 'iv', 'intravenous', 'drip'),
    oralMl: part('o', 'oral', 'drinks', 'mouth'),
    counts: assumed(choice('counts', COUNTS, 'count', 'feedCounts'), 'whole-volume', 'free-water'),
  },
  gives: {
    totalMl: gives('T', 'mL'),
    leftMl: givesMost('R', 'mL'),
    overMl: gives('O', 'mL'),
    percentOfLimit: gives('p', '%'),
  },
  equations: [
    'T = V + f + m + iv + o',
    'T = V × w + f + m + iv + o',
    'R = L − T, not less than 0',
    'O = T − L, not less than 0',
    'p = 100 × T / L',
  ],
  sources: ['E9'],
  rule: 'RK5',
  example: { limit: '2000 mL', feed: '1500 mL', flushes: '6 x 30 mL', iv: '100 mL' },
  compute: (given, sheet) => {
    const { limitMl: L, waterFraction: w, counts } = given;
    const feed = given.feedMl ?? [];
    if (counts === 'free-water' && w === null && feed.length > 0)
      return sheet.refuse('waterFraction', 'reckon/missing', {
        unit: '1',
        accepted: ['805 mL/L', '80.5 %', '0.805'],
      });
    const rest = [
      ...(given.flushMl ?? []),
      ...(given.medicineMl ?? []),
      ...(given.intravenousMl ?? []),
      ...(given.oralMl ?? []),
    ];
    const whole = plus(...feed);
    const counted = counts === 'free-water' && w !== null ? times(whole, w) : whole;
    const equation = counts === 'free-water' ? 'T = V × w + f + m + iv + o' : 'T = V + f + m + iv + o';
    const T = sheet.number(
      'totalMl',
      equation,
      [...feed, ...(counts === 'free-water' && w !== null ? [w] : []), ...rest],
      plus(counted, ...rest),
    );
    if (L === null) return [T];
    const isOver = compare(T, L) > 0;
    return [
      T,
      sheet.number('leftMl', 'R = L − T, not less than 0', [L, T], notNegative(minus(L, T)), 'arithmetic'),
      ...(isOver ? [sheet.number('overMl', 'O = T − L', [T, L], minus(T, L), 'arithmetic')] : []),
      sheet.number('percentOfLimit', 'p = 100 × T / L', [T, L], over(times(of(100), T), L), 'arithmetic'),
    ];
  },
});
