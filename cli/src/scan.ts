/** `feedwright scan TEXT`: what a container's code says, which feed it is, whether it is ordered and in date. */
import { type Instant, instant } from '@feedwright/core/base/instant';
import { dayAt, showInstant, type Zone } from '@feedwright/core/base/zone';
import type { ScannedDate } from '@feedwright/core/feeds/scan/date';
import { judgeScan, type ScanJudgement } from '@feedwright/core/feeds/scan/judge';
import { parseScan, type Scan } from '@feedwright/core/feeds/scan/scan';
import type { Order } from '@feedwright/core/order/order';
import { ENGLISH } from '@feedwright/core/screen/english/english';
import type { Line } from '@feedwright/core/screen/line';
import { problemJson } from '@feedwright/core/screen/plan/json';
import { problemLines } from '@feedwright/core/screen/problem-lines';
import { momentArgument, zoneArgument } from './arguments.ts';
import { feedsFrom } from './facility.ts';
import { orRefuse, STOPPED } from './fail.ts';
import { readOrder } from './order-file.ts';
import { columns, plain, printJson, printLines } from './print.ts';
import { readText } from './read.ts';

export type ScanOptions = {
  readonly order?: string;
  readonly feeds?: string;
  readonly at?: string;
  readonly zone?: string;
  readonly json?: boolean;
};

type Answer = {
  readonly scan: Scan;
  readonly judgement: ScanJudgement;
  readonly order: Order | null;
  readonly at: Instant;
  readonly zone: Zone;
};

const dateText = (date: ScannedDate | null): string => date?.day ?? 'not in the code';

const isOrderedText = ({ judgement, order }: Answer): string => {
  if (order === null) return 'no order given: not compared';
  if (judgement.isOrdered === null) return 'not known';
  return judgement.isOrdered ? 'yes' : 'no';
};

const IN_DATE = { 'in-date': 'in date', expired: 'expired', 'not-known': 'not known' } as const;

function answerLines(answer: Answer): readonly Line[] {
  const { scan, judgement, at, zone } = answer;
  const { feed, inDate, usableUntil } = judgement;
  const until = usableUntil === null ? '' : `, usable until ${showInstant(usableUntil.value, zone)}`;
  const rows = [
    ['product number', scan.gtin],
    ['feed', feed === null ? 'not known by this number' : `${feed.id}  ${feed.name}`],
    ['as ordered', isOrderedText(answer)],
    ['lot', scan.lot ?? 'not in the code'],
    ['serial', scan.serial ?? 'not in the code'],
    ['made', dateText(scan.produced)],
    ['best before', dateText(scan.bestBefore)],
    ['expiry', dateText(scan.expires)],
    ['at', `${showInstant(at, zone)} (${zone})`],
    ['in date', `${IN_DATE[inDate]}${until}`],
  ];
  return [
    ...columns(rows).map((text) => plain(text)),
    ...problemLines(judgement.problems, ENGLISH),
    plain(ENGLISH.plan.defer, 'quiet'),
  ];
}

function answerJson({ scan, judgement, at, zone }: Answer): object {
  const { feed, isOrdered, inDate, usableUntil, problems } = judgement;
  return {
    scan,
    feed: feed?.id ?? null,
    isOrdered,
    inDate,
    usableUntil: usableUntil === null ? null : showInstant(usableUntil.value, zone),
    at: showInstant(at, zone),
    zone,
    problems: problems.map((one) => problemJson(one, ENGLISH)),
    stops: problems.some(({ level }) => level === 'stop'),
  };
}

/** The zone of the order, of the flag, or else of this computer, which the answer names. */
function zoneOf(order: Order | null, flag: Zone | undefined): Zone {
  const own = () => Intl.DateTimeFormat().resolvedOptions().timeZone;
  return order?.zone ?? flag ?? zoneArgument('--zone', own());
}

export function scan(text: string, options: ScanOptions): void {
  const feeds = feedsFrom(options.feeds);
  const flag = options.zone === undefined ? undefined : zoneArgument('--zone', options.zone);
  const order =
    options.order === undefined ? null : readOrder(options.order, { zone: flag, confirmed: {}, feeds }).order;
  const zone = zoneOf(order, flag);
  const at = options.at === undefined ? instant(Date.now()) : momentArgument('--at', options.at, zone);
  const code = text === '-' ? readText('-').text : text;
  const read = orRefuse(parseScan(code, Number(dayAt(at, zone).slice(0, 4))), 'scan');
  const judgement = judgeScan(read, { order, feeds, at, zone });
  const answer = { scan: read, judgement, order, at, zone };
  if (options.json === true) printJson(answerJson(answer));
  else printLines(answerLines(answer));
  if (judgement.problems.some(({ level }) => level === 'stop')) process.exitCode = STOPPED;
}
