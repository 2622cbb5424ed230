/** How fast, now that hours were lost? Spread over the hours that run, never over the ceiling, the shortfall said. */
import { instant, MINUTE, type Span, union } from '../../base/instant.ts';
import { bad, issue, ok } from '../../base/result.ts';
import { shownChoice } from '../../base/working.ts';
import { assumed, gives, givesMost, listed, names, optional, quantities, quantity } from '../asking/asks.ts';
import { rate, volume } from '../asking/usual-asks.ts';
import { moment, parseClock, showClock, zone } from '../asking/when.ts';
import { type Ask, calculation, type Known, type Line, type Sheet } from '../declare.ts';
import { type Exact, least, less, minus, notNegative, of, over, plus, times } from '../exact.ts';
import { hoursFromTo } from './time.ts';

const ceiling = optional(
  quantity('m', 'mL/h', ['1', '1000'], 'ceiling', 'cap', 'most', 'maximum', 'max', 'maxRate', 'limit'),
);
const HUNDRED = of(100);
/** The longest day that a clock change makes. */
const LONGEST_DAY = of(25);

const spreadGives = {
  neededRateMlPerHour: gives('r₀', 'mL/h', '0.1'),
  rateMlPerHour: givesMost('r', 'mL/h'),
  atCeiling: names('r₀ > m'),
  deliverableMl: gives('V′', 'mL'),
  shortfallMl: gives('S', 'mL'),
};

const LEAST = 'r = least of r₀ and m, down to the pump’s step';

/** A volume over the hours that run, never faster than the ceiling; no hours give no rate, only the shortfall. */
function spread(
  V: Known,
  t: Known,
  m: Known | null,
  sheet: Sheet<keyof typeof spreadGives>,
): readonly Line[] {
  if (m === null) sheet.caution('no-ceiling-given');
  if (t.n === 0n) {
    sheet.caution('no-hours-left');
    return [sheet.number('shortfallMl', `S = ${V.symbol}`, [V], V, 'arithmetic')];
  }
  const needed = sheet.number('neededRateMlPerHour', `r₀ = ${V.symbol} / ${t.symbol}`, [V, t], over(V, t));
  const from = m === null ? [needed] : [needed, m];
  const rate = sheet.number('rateMlPerHour', LEAST, from, m === null ? needed : least(needed, m));
  const r = sheet.rounded(rate);
  const given = sheet.number('deliverableMl', `V′ = r × ${t.symbol}`, [r, t], times(r, t));
  return [
    needed,
    rate,
    sheet.choice('atCeiling', 'r₀ > m', from, m !== null && less(m, needed) ? 'yes' : 'no'),
    given,
    sheet.number('shortfallMl', `S = ${V.symbol} − V′`, [V, given], minus(V, given), 'arithmetic'),
  ];
}

export const catchUp = calculation({
  name: 'catch-up',
  also: ['volume-based', 'catch-up-rate', 'vbf', 'volume-based-rate', 'make-up'],
  asks: {
    goalMl: quantity('G', 'mL', ['1', '20000'], 'goal', 'target', 'dayVolume', 'goalVolume', 'volume'),
    receivedMl: quantity('D', 'mL', ['0', '20000'], 'received', 'given', 'delivered', 'sofar'),
    hoursLeft: optional(
      quantity('t', 'h', ['0', '25', 'definition'], 'hours', 'left', 'remaining', 'hoursRemaining'),
    ),
    now: optional(moment('now', 'at', 'start', 'from')),
    until: optional(moment('until', 'dayEnds', 'dayEnd', 'reset', 'end', 'to')),
    zone: optional(zone),
    plannedHoldHours: assumed(
      quantity('h', 'h', ['0', '25', 'definition'], 'hold', 'plannedHold', 'fast', 'plannedFast'),
      '0',
    ),
    ceilingMlPerHour: ceiling,
  },
  oneOf: [[['hoursLeft'], ['now', 'until']]],
  gives: {
    remainingMl: gives('R', 'mL'),
    hoursToRun: gives('t′', 'h', '0.01'),
    ...spreadGives,
    overMl: gives('O', 'mL'),
  },
  equations: [
    'R = G − D, not less than 0',
    't = end − now',
    't′ = t − h',
    'r₀ = R / t′',
    LEAST,
    'V′ = r × t′',
    'S = R − V′',
    'O = D − G, not less than 0',
  ],
  sources: ['S37'],
  rule: 'RK7',
  cautions: ['catch-up-only-if-ordered'],
  example: { goal: '1800 mL', received: '300 mL', hoursLeft: '8', ceiling: '150 mL/h' },
  compute: (given, sheet) => {
    const { goalMl: G, receivedMl: D, plannedHoldHours: h, now, until } = given;
    const t = now && until ? hoursFromTo(now, until, given.zone, sheet) : (given.hoursLeft as Known);
    if ('ok' in t) return t;
    if (less(t, h)) return sheet.refuse('plannedHoldHours', 'reckon/longer-than-what-is-left');
    if (less(LONGEST_DAY, t)) return sheet.refuse('until', 'reckon/not-within-a-day');
    const R = sheet.number('remainingMl', 'R = G − D, not less than 0', [G, D], notNegative(minus(G, D)));
    const beyond = notNegative(minus(D, G));
    const run = sheet.number('hoursToRun', 't′ = t − h', [t, h], minus(t, h));
    return [
      R,
      run,
      ...spread(R, run, given.ceilingMlPerHour, sheet),
      sheet.number('overMl', 'O = D − G, not less than 0', [D, G], beyond, 'arithmetic'),
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
    ...spreadGives,
  },
  equations: [
    'h = union of the holds',
    't = T − h',
    'L = 100 × h / T',
    'Vl = r × h',
    'r₀ = V / t',
    LEAST,
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
    const lines: Line[] = [h, t, lost];
    if (old !== null) lines.push(sheet.number('lostMl', 'Vl = r × h', [old, h], times(old, h), 'arithmetic'));
    const V: Known | null =
      volumeMl ??
      (old === null ? null : { ...times(old, T), symbol: 'V', unit: 'mL', basis: { kind: 'arithmetic' } });
    return V === null ? lines : [...lines, ...spread(V, t, m, sheet)];
  },
});
