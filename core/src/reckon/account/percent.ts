/** What part is it of what was ordered, how much was that, and by how much has it changed? */
import { assumed, gives, names, optional, quantities, quantity } from '../asking/asks.ts';
import { calculation, type Known } from '../declare.ts';
import { compare, minus, of, over, plus, times } from '../exact.ts';

const HUNDRED = of(100);

export const percentage = calculation({
  name: 'percentage',
  also: ['percent', 'percent-of', 'part-of'],
  asks: {
    part: optional(quantities('a', '1', ['0', '1000000'], 'n', 'given', 'deficit')),
    whole: optional(quantity('b', '1', ['0.001', '1000000'], 'of', 'total', 'prescribed')),
    percent: optional(quantity('p', '%', ['0.0001', '1000'], 'percentage')),
  },
  oneOf: [
    [
      ['part', 'whole'],
      ['part', 'percent'],
      ['whole', 'percent'],
    ],
  ],
  gives: { percent: gives('p', '%', '0.1'), part: gives('a', '1', '0.1'), whole: gives('b', '1', '0.1') },
  equations: ['p = 100 × a / b', 'b = 100 × a / p', 'a = p × b / 100'],
  sources: [],
  rule: 'RK9',
  example: { part: '46', of: '64' },
  compute: ({ part, whole: b, percent: p }, sheet) => {
    const a = part ?? [];
    if (part !== null && b !== null)
      return [sheet.number('percent', 'p = 100 × a / b', [...a, b], over(times(HUNDRED, plus(...a)), b))];
    if (part !== null)
      return [
        sheet.number(
          'whole',
          'b = 100 × a / p',
          [...a, p as Known],
          over(times(HUNDRED, plus(...a)), p as Known),
        ),
      ];
    return [
      sheet.number(
        'part',
        'a = p × b / 100',
        [p as Known, b as Known],
        over(times(p as Known, b as Known), HUNDRED),
      ),
    ];
  },
});

export const percentChange = calculation({
  name: 'percent-change',
  also: ['percent-rise', 'change-percent', 'rise'],
  asks: {
    before: quantity('a', '1', ['0.001', '1000000'], 'earlier', 'first', 'from'),
    after: quantity('b', '1', ['0', '1000000'], 'later', 'last', 'to'),
  },
  gives: { changePercent: gives('p', '%', '0.1') },
  equations: ['p = 100 × (b − a) / a'],
  sources: [],
  rule: 'RK9',
  example: { before: '114', after: '150' },
  compute: ({ before: a, after: b }, sheet) => [
    sheet.number('changePercent', 'p = 100 × (b − a) / a', [a, b], over(times(HUNDRED, minus(b, a)), a)),
  ],
});

export const percentDelivered = calculation({
  name: 'percent-delivered',
  also: ['delivered-percent', 'percent-of-ordered', 'adequacy', 'delivered-against-ordered'],
  asks: {
    deliveredMl: quantity('D', 'mL', ['0', '20000'], 'delivered', 'given', 'received'),
    orderedMl: quantity('G', 'mL', ['1', '20000'], 'ordered', 'prescribed', 'goal', 'target'),
    tolerancePercent: assumed(quantity('τ', '%', ['1', '50', 'print'], 'tolerance', 'band'), '10', '5'),
  },
  gives: {
    percentDelivered: gives('p', '%', '0.1'),
    shortMl: gives('S', 'mL'),
    lowMl: gives('L', 'mL'),
    highMl: gives('U', 'mL'),
    adequate: names('L ≤ D ≤ U'),
  },
  equations: ['p = 100 × D / G', 'S = G − D', 'L = G × (1 − τ/100)', 'U = G × (1 + τ/100)', 'L ≤ D ≤ U'],
  sources: ['E53'],
  rule: 'RK5',
  example: { delivered: '1365 mL', ordered: '1500 mL' },
  compute: ({ deliveredMl: D, orderedMl: G, tolerancePercent: tolerance }, sheet) => {
    const part = over(times(G, tolerance), HUNDRED);
    const [L, U] = [minus(G, part), plus(G, part)];
    return [
      sheet.number('percentDelivered', 'p = 100 × D / G', [D, G], over(times(HUNDRED, D), G), 'arithmetic'),
      sheet.number('shortMl', 'S = G − D', [G, D], minus(G, D), 'arithmetic'),
      sheet.number('lowMl', 'L = G × (1 − τ/100)', [G, tolerance], L),
      sheet.number('highMl', 'U = G × (1 + τ/100)', [G, tolerance], U),
      sheet.choice(
        'adequate',
        'L ≤ D ≤ U',
        [D, G, tolerance],
        compare(D, L) >= 0 && compare(D, U) <= 0 ? 'yes' : 'no',
      ),
    ];
  },
});
