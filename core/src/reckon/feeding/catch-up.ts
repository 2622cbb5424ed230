/** How fast, now that hours were lost? Spread over the hours that run, never over the ceiling, the shortfall said. */
import { instant, MINUTE, type Span, union } from '../../base/instant.ts';
import { bad, issue, ok } from '../../base/result.ts';
import { shownChoice } from '../../base/working.ts';
import { assumed, gives, givesMost, listed, names, optional, quantities, quantity } from '../asking/asks.ts';
import { rate, volume } from '../asking/usual-asks.ts';
import { parseClock, showClock } from '../asking/when.ts';
import { type Ask, calculation, type Known } from '../declare.ts';
import { compare, type Exact, least, less, minus, notNegative, of, over, plus, times } from '../exact.ts';

const ceiling = optional(
  quantity('m', 'mL/h', ['1', '1000'], 'ceiling', 'cap', 'most', 'maximum', 'max', 'maxRate', 'limit'),
);
const HUNDRED = of(100);

export const catchUp = calculation({
  name: 'catch-up',
  also: ['volume-based', 'catch-up-rate', 'vbf', 'volume-based-rate', 'make-up'],
  asks: {
    goalMl: quantity('G', 'mL', ['1', '20000'], 'goal', 'target', 'dayVolume', 'goalVolume', 'volume'),
    receivedMl: quantity('D', 'mL', ['0', '20000'], 'received', 'given', 'delivered', 'sofar'),
    hoursLeft: quantity('t', 'h', ['0', '25', 'definition'], 'hours', 'left', 'remaining', 'hoursRemaining'),
    plannedHoldHours: assumed(
      quantity('h', 'h', ['0', '25', 'definition'], 'hold', 'plannedHold', 'fast', 'plannedFast'),
      '0',
    ),
    ceilingMlPerHour: ceiling,
  },
  gives: {
    remainingMl: gives('R', 'mL'),
    hoursToRun: gives('t′', 'h', '0.01'),
    neededRateMlPerHour: gives('r₀', 'mL/h', '0.1'),
    rateMlPerHour: givesMost('r', 'mL/h'),
    atCeiling: names('r₀ > m'),
    deliverableMl: gives('V', 'mL'),
    shortfallMl: gives('S', 'mL'),
    overMl: gives('O', 'mL'),
  },
  equations: [
    'R = G − D, not less than 0',
    't′ = t − h',
    'r₀ = R / t′',
    'r = least of r₀ and m, down to the pump’s step',
    'V = r × t′',
    'S = R − V',
    'O = D − G, not less than 0',
  ],
  sources: ['S37'],
  rule: 'RK7',
  cautions: ['catch-up-only-if-ordered'],
  example: { goal: '1800 mL', received: '300 mL', hoursLeft: '8', ceiling: '150 mL/h' },
  compute: ({ goalMl: G, receivedMl: D, hoursLeft: t, plannedHoldHours: h, ceilingMlPerHour: m }, sheet) => {
    if (compare(h, t) > 0) return sheet.refuse('plannedHoldHours', 'reckon/longer-than-what-is-left');
    const R = sheet.number('remainingMl', 'R = G − D, not less than 0', [G, D], notNegative(minus(G, D)));
    const O = sheet.number(
      'overMl',
      'O = D − G, not less than 0',
      [D, G],
      notNegative(minus(D, G)),
      'arithmetic',
    );
    const run = sheet.number('hoursToRun', 't′ = t − h', [t, h], minus(t, h));
    if (m === null) sheet.caution('no-ceiling-given');
    if (run.n === 0n) {
      sheet.caution('no-hours-left');
      return [R, O, run, sheet.number('shortfallMl', 'S = R − V', [R], R, 'arithmetic')];
    }
    const needed = sheet.number('neededRateMlPerHour', 'r₀ = R / t′', [R, run], over(R, run));
    const most = m === null ? needed : least(needed, m);
    const r = sheet.number(
      'rateMlPerHour',
      'r = least of r₀ and m, down to the pump’s step',
      m ? [needed, m] : [needed],
      most,
    );
    const V = sheet.number(
      'deliverableMl',
      'V = r × t′',
      [sheet.rounded(r), run],
      times(sheet.rounded(r), run),
    );
    return [
      R,
      run,
      needed,
      r,
      sheet.choice(
        'atCeiling',
        'r₀ > m',
        m ? [needed, m] : [needed],
        m !== null && compare(needed, m) > 0 ? 'yes' : 'no',
      ),
      V,
      sheet.number('shortfallMl', 'S = R − V', [R, V], minus(R, V), 'arithmetic'),
      O,
    ];
  },
});

const DAY_MINUTES = 1440;

function readSpan(text: string): readonly Span[] | null {
  const [from = '', until = '', ...more] = text.split(/\s*(?:-|–|to)\s*/);
  const [first, last] = [parseClock(from), parseClock(until)];
  if (first === null || last === null || more.length > 0) return null;
  const at = (minute: number) => instant(minute * MINUTE);
  if (last > first) return [{ from: at(first), until: at(last) }];
  return [
    { from: at(first), until: at(DAY_MINUTES) },
    { from: at(0), until: at(last) },
  ];
}

/** `10:00-12:00; 11:30-13:00`: times off feed on one clock day; where they overlap they count once. */
const spans: Ask<readonly Span[]> = {
  kind: 'entries',
  symbol: 'holds',
  unit: '',
  also: ['holdTimes', 'interruptions', 'off'],
  band: null,
  choices: [],
  required: true,
  assumed: null,
  others: [],
  takes: () => false,
  read: (raw) => {
    const read = listed(raw).map((one) => readSpan(String(one)));
    return read.some((one) => one === null)
      ? bad(issue([], 'reckon/not-a-span', { text: raw.map(String).join('; ') }))
      : ok(union(read.flatMap((one) => one ?? [])));
  },
  show: (list) =>
    shownChoice(
      list.map((one) => `${showClock(one.from / MINUTE)}–${showClock(one.until / MINUTE)}`).join('; '),
    ),
};

const hoursIn = (list: readonly Span[]): Exact =>
  over(of(list.reduce((total, span) => total + span.until - span.from, 0)), of(60 * MINUTE));

export const holdAdjusted = calculation({
  name: 'hold-adjusted-rate',
  also: ['holds', 'hold-adjusted', 'rate-with-holds', 'interrupted', 'lost-hours'],
  asks: {
    volumeMl: optional(volume),
    rateMlPerHour: optional(rate),
    heldHours: optional(
      quantities(
        'h',
        'h',
        ['0', '25', 'definition'],
        'held',
        'hold',
        'hoursHeld',
        'heldHoursPerDay',
        'holdHours',
      ),
    ),
    holds: optional(spans),
    hoursADay: assumed(quantity('T', 'h', ['0.5', '25', 'definition'], 'hours', 'hoursPerDay', 'day'), '24'),
    ceilingMlPerHour: ceiling,
  },
  oneOf: [[['heldHours'], ['holds']]],
  gives: {
    hoursHeld: gives('h', 'h', '0.01'),
    hoursToRun: gives('t', 'h', '0.01'),
    lostPercent: gives('L', '%'),
    lostMl: gives('Vl', 'mL'),
    neededRateMlPerHour: gives('r₀', 'mL/h', '0.1'),
    rateMlPerHour: givesMost('r', 'mL/h'),
    deliverableMl: gives('V′', 'mL'),
    shortfallMl: gives('S', 'mL'),
  },
  equations: [
    'h = union of the holds',
    't = T − h',
    'L = 100 × h / T',
    'Vl = r × h',
    'r₀ = V / t',
    'r = least of r₀ and m, down to the pump’s step',
    'V′ = r × t',
    'S = V − V′',
  ],
  sources: ['S37'],
  rule: 'RK7',
  cautions: ['catch-up-only-if-ordered'],
  example: { volume: '1200 mL', holds: '10:00-12:00; 11:30-14:00', ceiling: '150 mL/h' },
  compute: (given, sheet) => {
    const { volumeMl, rateMlPerHour: old, heldHours, holds, hoursADay: T, ceilingMlPerHour: m } = given;
    const h = sheet.number(
      'hoursHeld',
      'h = union of the holds',
      heldHours ?? [],
      heldHours ? plus(...heldHours) : hoursIn(holds ?? []),
      'arithmetic',
    );
    if (less(T, h)) return sheet.refuse(heldHours ? 'heldHours' : 'holds', 'reckon/longer-than-the-day');
    const t = sheet.number('hoursToRun', 't = T − h', [T, h], minus(T, h), 'arithmetic');
    const lost = sheet.number(
      'lostPercent',
      'L = 100 × h / T',
      [h, T],
      over(times(HUNDRED, h), T),
      'arithmetic',
    );
    const lines = [h, t, lost];
    if (old !== null) lines.push(sheet.number('lostMl', 'Vl = r × h', [old, h], times(old, h), 'arithmetic'));
    const V: Known | null =
      volumeMl ??
      (old === null ? null : { ...times(old, T), symbol: 'V', unit: 'mL', basis: { kind: 'arithmetic' } });
    if (V === null) return lines;
    if (m === null) sheet.caution('no-ceiling-given');
    if (t.n === 0n) {
      sheet.caution('no-hours-left');
      return [...lines, sheet.number('shortfallMl', 'S = V − V′', [V], V, 'arithmetic')];
    }
    const needed = sheet.number('neededRateMlPerHour', 'r₀ = V / t', [V, t], over(V, t));
    const r = sheet.number(
      'rateMlPerHour',
      'r = least of r₀ and m, down to the pump’s step',
      m ? [needed, m] : [needed],
      m ? least(needed, m) : needed,
    );
    const really = sheet.number(
      'deliverableMl',
      'V′ = r × t',
      [sheet.rounded(r), t],
      times(sheet.rounded(r), t),
    );
    return [
      ...lines,
      needed,
      r,
      really,
      sheet.number('shortfallMl', 'S = V − V′', [V, really], minus(V, really), 'arithmetic'),
    ];
  },
});
