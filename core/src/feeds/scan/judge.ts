/**
 * May this container be put up? Which feed of the list it is, whether that is the ordered one, and whether it is in
 * date. “Not known” is an answer of its own: a missing date never counts as a good one.
 */
import { type DayName, nextDay } from '../../base/calendar.ts';
import type { Instant } from '../../base/instant.ts';
import { input, shownChoice, shownInstant, type Worked, worked } from '../../base/working.ts';
import { dayAt, instantOf, type Zone } from '../../base/zone.ts';
import type { Feed, FeedList } from '../feed.ts';
import { earliestDay, readDate } from './date.ts';
import { readGtin } from './gtin.ts';
import type { Scan } from './scan.ts';

/** In the form of an order's problems, so that both are said in one list. */
export type ScanProblem = {
  readonly rule: string;
  readonly level: 'stop' | 'ask' | 'note';
  readonly code: string;
  readonly path: readonly (string | number)[];
  readonly data: Readonly<Record<string, unknown>>;
};

export type ScanContext = {
  /** The order that the container is for; null where none is given, and then nothing is compared. */
  readonly order: { readonly feed: { readonly id: string } | null } | null;
  readonly feeds: FeedList;
  readonly at: Instant;
  /** The ward's, by whose clock a day ends. */
  readonly zone: Zone;
};

export type InDate = 'in-date' | 'expired' | 'not-known';

export type ScanJudgement = {
  /** The feed of the list that carries this number, if exactly one does. */
  readonly feed: Feed | null;
  /** Null where there is no order, no feed in it, or no feed known by this number. */
  readonly isOrdered: boolean | null;
  readonly inDate: InDate;
  /** The first moment at which it may no longer be used. */
  readonly usableUntil: Worked<Instant> | null;
  readonly problems: readonly ScanProblem[];
};

const problem = (
  rule: string,
  level: ScanProblem['level'],
  code: string,
  data: ScanProblem['data'] = {},
): ScanProblem => ({ rule, level, code, path: [], data });

/** By the number itself, however it is padded. */
const carries = (feed: Feed, gtin: string): boolean =>
  (feed.gtins ?? []).some((written) => {
    const read = readGtin(written);
    return read.ok && read.value === gtin;
  });

type End = { readonly day: DayName; readonly ai: '15' | '17' };

/** The earlier of best before and expiry; of the same day, the expiry. */
function endOf({ bestBefore, expires }: Scan): End | null {
  if (expires === null) return bestBefore === null ? null : { day: bestBefore.day, ai: '15' };
  return bestBefore !== null && bestBefore.day < expires.day
    ? { day: bestBefore.day, ai: '15' }
    : { day: expires.day, ai: '17' };
}

/** [FE17] Usable to the last moment of the day on it, by the ward's clock: common practice. */
const usableUntil = ({ day, ai }: End, zone: Zone): Worked<Instant> =>
  worked(instantOf(nextDay(day), 0, zone), shownInstant, {
    symbol: 'T',
    equation: 'T = 00:00 after D',
    inputs: [input('D', shownChoice(day), { kind: 'asked', name: `(${ai})` })],
    rule: 'FE17',
    basis: { kind: 'published', source: 'common-practice', provenance: 'common-practice' },
  });

/** [FE18] */
function product(scan: Scan, known: readonly Feed[], order: ScanContext['order']): readonly ScanProblem[] {
  const [feed] = known;
  if (feed === undefined) return [problem('FE18', 'ask', 'scan/not-listed', { gtin: scan.gtin })];
  if (known.length > 1) {
    const feeds = known.map(({ id }) => id);
    return [problem('FE18', 'stop', 'scan/listed-twice', { gtin: scan.gtin, feeds })];
  }
  if (order === null) return [];
  if (order.feed === null) return [problem('FE18', 'ask', 'scan/nothing-ordered', { feed: feed.id })];
  const data = { feed: feed.id, name: feed.name, ordered: order.feed.id };
  return order.feed.id === feed.id ? [] : [problem('FE18', 'stop', 'scan/wrong-feed', data)];
}

/** A date at the end of a lot may be the date itself, whose separator was lost on the way. */
function swallowed(scan: Scan, readIn: number): readonly ScanProblem[] {
  const absent = { '15': scan.bestBefore === null, '17': scan.expires === null };
  return [scan.lot, scan.serial].flatMap((text) => {
    const [, ai, digits = ''] = /(15|17)(\d{6})$/.exec(text ?? '') ?? [];
    const date = ai === undefined || !absent[ai as '15' | '17'] ? null : readDate(digits, readIn);
    return date === null ? [] : [problem('FE14', 'ask', 'scan/date-in-lot', { text, ai, day: date.day })];
  });
}

/** [FE15] [FE17] */
function dates(scan: Scan, end: End | null, inDate: InDate, today: DayName): readonly ScanProblem[] {
  const expiry = {
    'in-date': [],
    expired: [problem('FE17', 'stop', 'scan/expired', { ...end })],
    'not-known': [problem('FE17', 'ask', 'scan/no-date', { form: scan.form })],
  }[inDate];
  const made = scan.produced;
  const months = [made, scan.bestBefore, scan.expires].filter((date) => date?.isMonthOnly === true);
  return [
    ...expiry,
    ...swallowed(scan, Number(today.slice(0, 4))),
    ...(made !== null && earliestDay(made) > today
      ? [problem('FE15', 'ask', 'scan/made-later', { day: made.day })]
      : []),
    ...months.map((date) => problem('FE15', 'note', 'scan/month-only', { day: date?.day })),
  ];
}

const LEVELS = ['stop', 'ask', 'note'] as const;

/**
 * Judges what a code says against order, feed list and clock.
 * @returns which feed it is, whether ordered and in date, with every problem; stops first.
 */
export function judgeScan(scan: Scan, { order, feeds, at, zone }: ScanContext): ScanJudgement {
  const known = feeds.feeds.filter((feed) => carries(feed, scan.gtin));
  const feed = known.length === 1 ? (known[0] ?? null) : null;
  const ordered = order?.feed?.id ?? null;
  const end = endOf(scan);
  const until = end === null ? null : usableUntil(end, zone);
  const inDate = until === null ? 'not-known' : at < until.value ? 'in-date' : 'expired';
  const noLot = scan.lot === null ? [problem('FE16', 'note', 'scan/no-lot')] : [];
  const problems = [...product(scan, known, order), ...dates(scan, end, inDate, dayAt(at, zone)), ...noLot];
  return {
    feed,
    isOrdered: feed === null || ordered === null ? null : ordered === feed.id,
    inDate,
    usableUntil: until,
    problems: LEVELS.flatMap((level) => problems.filter((one) => one.level === level)),
  };
}
