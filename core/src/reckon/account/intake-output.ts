/** What went in and what came out in a window, and what is the balance? */
import type { Bad } from '../../base/result.ts';
import { assumed, choice, gives, optional, quantity } from '../asking/asks.ts';
import { rate } from '../asking/usual-asks.ts';
import { moment, zone } from '../asking/when.ts';
import { calculation, type Known, type Line } from '../declare.ts';
import { minus, of, plus, times } from '../exact.ts';
import { hoursFromTo } from '../feeding/time.ts';
import {
  type Entry,
  entries,
  halfOf,
  inWindow,
  timesOfDay,
  totalOf,
  type Window,
  within,
} from './entries.ts';

const IN = {
  oralMl: entries('oral', 'oral', 'drinks', 'mouth'),
  feedMl: entries('feed', 'feed', 'formula', 'tubeFeed', 'enteral', 'feeds'),
  flushMl: entries('flush', 'flush', 'flushes', 'water'),
  medicineMl: entries('medicine', 'medicine', 'medicines', 'meds', 'medWater', 'medicineWater'),
  intravenousMl: entries('iv', 'iv', 'intravenous'),
  iceMl: entries('ice', 'ice', 'iceChips'),
  otherInMl: entries('other in', 'otherIn', 'intake', 'in'),
};
const OUT = {
  urineMl: entries('urine', 'urine', 'voided'),
  vomitMl: entries('vomit', 'vomit', 'emesis'),
  stoolMl: entries('stool', 'stool', 'diarrhoea', 'diarrhea'),
  drainMl: entries('drain', 'drain', 'drains', 'drainage', 'ngDrainage'),
  residualDiscardedMl: entries('residual discarded', 'residualDiscarded', 'discarded', 'grvDiscarded'),
  otherOutMl: entries('other out', 'otherOut', 'output', 'out'),
};
const NEUTRAL = {
  residualReturnedMl: entries('residual returned', 'residualReturned', 'returned', 'grvReturned'),
};

const window = {
  start: optional(moment('start', 'from', 'windowStart', 'shiftStart')),
  until: optional(moment('until', 'to', 'end', 'windowEnd', 'shiftEnd')),
};

type Clock = { readonly kind: string; readonly minute?: number } | null;
const minuteOf = (moment: Clock): number | null =>
  moment?.kind === 'clock' ? (moment.minute ?? null) : null;

const windowOf = (start: Clock, until: Clock): Window | null => {
  const [from, to] = [minuteOf(start), minuteOf(until)];
  return from === null || to === null ? null : { from, until: to };
};

type Lists = Readonly<Record<string, readonly Entry[] | null>>;

/** The amounts of these kinds that count, kind by kind, and how many entries are left out. */
function gather(
  given: Lists,
  keys: readonly string[],
  by: Window | null,
): { readonly known: readonly Known[]; readonly left: number } {
  const found = keys.map((key) => within(given[key] ?? [], by));
  return { known: found.flatMap((one) => one.counted), left: found.reduce((all, one) => all + one.left, 0) };
}

export const intakeOutput = calculation({
  name: 'intake-output',
  also: ['i-and-o', 'io', 'fluid-balance', 'balance', 'intake-and-output', 'intake'],
  asks: {
    ...IN,
    ...OUT,
    ...NEUTRAL,
    ...window,
    discardedCountsAs: assumed(
      choice(
        'discarded counts as',
        { output: [], 'off-intake': ['minus-intake'], nothing: ['not-counted'] },
        'discardedAs',
        'discarded',
      ),
      'output',
      'off-intake',
      'nothing',
    ),
  },
  gives: {
    intakeMl: gives('I', 'mL'),
    outputMl: gives('O', 'mL'),
    balanceMl: gives('B', 'mL'),
    leftOut: gives('n', '1'),
  },
  equations: [
    'I = what went in from start to before end, ice by half',
    'O = what came out in the same time',
    'B = I − O',
  ],
  sources: ['E9', 'E10', 'E11'],
  rule: 'RK16',
  example: {
    oral: '08:30 120; 10:00 180; 17:00 200',
    iv: '500; 500',
    from: '08:00',
    until: '16:00',
    urine: '09:00 400',
  },
  compute: (given, sheet) => {
    const { start, until, discardedCountsAs: as } = given;
    if ((start === null) !== (until === null))
      return sheet.refuse(start === null ? 'start' : 'until', 'reckon/half-a-window');
    const by = windowOf(start, until);
    if (start !== null && by === null) return sheet.refuse('start', 'reckon/clock-times-only');
    const lists = given as unknown as Lists;
    const plainIn = gather(
      lists,
      Object.keys(IN).filter((key) => key !== 'iceMl'),
      by,
    );
    const ice = gather(lists, ['iceMl'], by);
    const discarded = gather(lists, ['residualDiscardedMl'], by);
    const out = gather(
      lists,
      Object.keys(OUT).filter((key) => key !== 'residualDiscardedMl'),
      by,
    );
    const took = plus(totalOf(plainIn.known), halfOf(ice.known));
    const gone = totalOf(discarded.known);
    const usesDiscarded = discarded.known.length > 0;
    const I = sheet.number(
      'intakeMl',
      as === 'off-intake' && usesDiscarded ? 'I = Σ in + ½ ice − discarded' : 'I = Σ in + ½ ice',
      [...plainIn.known, ...ice.known, ...(as === 'off-intake' ? discarded.known : [])],
      as === 'off-intake' ? minus(took, gone) : took,
      ice.known.length > 0 ? 'E10' : 'E9',
    );
    const O = sheet.number(
      'outputMl',
      'O = Σ out',
      [...out.known, ...(as === 'output' ? discarded.known : [])],
      as === 'output' ? plus(totalOf(out.known), gone) : totalOf(out.known),
      usesDiscarded ? 'E11' : 'E9',
    );
    const left = plainIn.left + ice.left + discarded.left + out.left;
    if (by !== null) sheet.used('window', 'start-counts-end-does-not', []);
    return [
      I,
      O,
      sheet.number('balanceMl', 'B = I − O', [I, O], minus(I, O)),
      sheet.number('leftOut', 'entries outside the window', [], of(left), 'arithmetic'),
    ];
  },
});

export const irrigation = calculation({
  name: 'irrigation',
  also: ['true-urine', 'bladder-irrigation'],
  asks: {
    bagMl: quantity('B', 'mL', ['0', '20000'], 'bag', 'total', 'output', 'drained'),
    rateMlPerHour: optional({ ...rate, also: [...rate.also, 'irrigation', 'irrigationRate'] }),
    hours: optional(quantity('t', 'h', ['0.1', '48'], 'hours', 'duration')),
    start: optional(moment('start', 'from')),
    until: optional(moment('until', 'end', 'to')),
    zone: optional(zone),
    irrigantMl: optional(quantity('i', 'mL', ['0', '20000'], 'irrigant', 'irrigationVolume', 'instilled')),
  },
  oneOf: [[['irrigantMl'], ['rateMlPerHour', 'hours'], ['rateMlPerHour', 'start', 'until']]],
  gives: { irrigantMl: gives('i', 'mL'), trueUrineMl: gives('U', 'mL') },
  equations: ['i = r × t', 'U = B − i'],
  sources: ['E10'],
  rule: 'RK16',
  example: { bag: '925 mL', rate: '50 mL/h', start: '07:00', until: '12:00' },
  compute: (given, sheet): readonly Line[] | Bad => {
    const { bagMl: B, rateMlPerHour: r, irrigantMl, start, until, zone: inZone } = given;
    const hours = start && until ? hoursFromTo(start, until, inZone, sheet) : given.hours;
    if (hours !== null && 'ok' in hours) return hours;
    const i =
      irrigantMl !== null
        ? sheet.number('irrigantMl', 'i', [], irrigantMl, 'arithmetic')
        : sheet.number(
            'irrigantMl',
            'i = r × t',
            [r as Known, hours as Known],
            times(r as Known, hours as Known),
          );
    const U = minus(B, i);
    if (U.n < 0n) return sheet.refuse('bagMl', 'reckon/bag-below-irrigant');
    return [i, sheet.number('trueUrineMl', 'U = B − i', [B, i], U)];
  },
});

export const feedsInWindow = calculation({
  name: 'feeds-in-window',
  also: ['feeds-in-shift', 'shift-intake'],
  asks: {
    feedMl: quantity('f', 'mL', ['0', '5000'], 'feed', 'volume', 'bolus'),
    waterMl: assumed(
      quantity('w', 'mL', ['0', '5000'], 'water', 'flush', 'waterAfterEach', 'waterAfter'),
      '0',
    ),
    times: timesOfDay('times', 'feedTimes', 'at'),
    start: moment('start', 'from', 'shiftStart'),
    until: moment('until', 'to', 'end', 'shiftEnd'),
  },
  gives: { feedsInWindow: gives('n', '1'), intakeMl: gives('I', 'mL') },
  equations: ['n = feeds from start to before end', 'I = n × (f + w)'],
  sources: ['E10'],
  rule: 'RK16',
  example: {
    feed: '300 mL',
    water: '100 mL',
    times: '04:00; 08:00; 12:00; 16:00; 20:00; 24:00',
    from: '23:00',
    until: '07:00',
  },
  compute: ({ feedMl: f, waterMl: w, times: list, start, until }, sheet) => {
    const by = windowOf(start, until);
    if (by === null) return sheet.refuse('start', 'reckon/clock-times-only');
    const there = list.filter((minute) => inWindow(minute, by)).length;
    sheet.used('window', 'start-counts-end-does-not', []);
    const n = sheet.number('feedsInWindow', 'n = feeds from start to before end', [], of(there));
    return [n, sheet.number('intakeMl', 'I = n × (f + w)', [n, f, w], times(n, plus(f, w)))];
  },
});
