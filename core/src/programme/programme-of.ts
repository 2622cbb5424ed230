/**
 * What should run in this span? The order's regimen over whole days and windows, around its holds, up to its maximum,
 * cut to the span at the very end.
 */
import type { Span } from '../base/instant.ts';
import { sum } from '../base/volume.ts';
import { ARITHMETIC, input, shownDuration, shownRate, shownVolume, worked } from '../base/working.ts';
import { withinDailyMaximum } from './daily-maximum.ts';
import { type Draft, type Missed, missedFor, NO_FEED, type Short } from './draft.ts';
import { type Frame, frameOf, type ProgrammeRequest } from './frame.ts';
import { type Gap, type Lost, type Piece, type Programme, pieceGives } from './programme.ts';
import { bolusDraft } from './regimen/bolus.ts';
import { continuousDraft } from './regimen/continuous.ts';
import { cyclicDraft } from './regimen/cyclic.ts';
import { intermittentDraft } from './regimen/intermittent.ts';
import { volumeTargetedDraft } from './regimen/volume-targeted.ts';
import { cutTo, lasting } from './spans.ts';

/** Whether the order cannot be worked without knowing when a feeding day begins. */
const needsDays = ({ order }: Frame): boolean =>
  order.regimen?.kind === 'volume-targeted' ||
  order.catchUpProtocol !== null ||
  order.mostVolumePerDay !== null;

function draftOf(frame: Frame): Draft {
  const { regimen } = frame.order;
  if (!frame.daysKnown && needsDays(frame)) {
    return { ...NO_FEED, missed: missedFor('day-start-not-known', cutTo(frame.days, frame.ordered)) };
  }
  switch (regimen?.kind) {
    case 'continuous':
      return continuousDraft(frame, regimen);
    case 'cyclic':
      return cyclicDraft(frame, regimen);
    case 'intermittent':
      return intermittentDraft(frame, regimen);
    case 'bolus':
      return bolusDraft(frame, regimen);
    case 'volume-targeted':
      return volumeTargetedDraft(frame, regimen);
    case undefined:
      return NO_FEED;
  }
}

/** Whether two neighbours are parts of one thing. */
type Join<T> = (a: T, b: T) => boolean;

function joined<T extends Span>(things: readonly T[], areOne: Join<T>): readonly T[] {
  const list: T[] = [];
  for (const thing of things.toSorted((a, b) => a.from - b.from)) {
    const last = list.at(-1);
    if (last !== undefined && last.until === thing.from && areOne(last, thing)) {
      list[list.length - 1] = { ...last, until: thing.until };
    } else list.push(thing);
  }
  return list;
}

const samePiece: Join<Piece> = ({ gives: a, working }, b) =>
  working === b.working &&
  (a.kind === 'rate'
    ? b.gives.kind === 'rate' && b.gives.rate === a.rate
    : b.gives.kind === 'volume' && b.gives.whole.from === a.whole.from);

const sameGap: Join<Gap> = (a, b) =>
  a.why === b.why && a.untilKnown === b.untilKnown && a.holds.join('\n') === b.holds.join('\n');

const asGap = ({ from, until, why, holds, untilKnown }: Missed): Gap => ({
  from,
  until,
  why,
  holds,
  untilKnown,
});

/** What a hold takes from feed that is not made up. [PR9] */
function lostInHold({ from, until, why, loses }: Missed): readonly Lost[] {
  if (loses === null) return [];
  const piece: Piece = { ...loses, from, until };
  const amount = pieceGives(piece, until);
  if (amount <= 0) return [];
  const { gives, working } = loses;
  const basis = { kind: 'working', working } as const;
  const volume = worked(amount, shownVolume, {
    equation: gives.kind === 'rate' ? 'V_lost = r × t' : 'V_lost = V × t / t_feed',
    inputs: [
      gives.kind === 'rate'
        ? input('r', shownRate(gives.rate), basis)
        : input('V', shownVolume(gives.volume), basis),
      input('t', shownDuration(lasting([piece])), ARITHMETIC),
      ...(gives.kind === 'rate' ? [] : [input('t_feed', shownDuration(lasting([gives.whole])), ARITHMETIC)]),
    ],
    symbol: 'V_lost',
    rule: 'PR9',
    basis: ARITHMETIC,
  });
  return [{ from, until, why, volume }];
}

const saidIn = (span: Span, { until }: Short): boolean => until > span.from && until <= span.until;

function laidOver({ pieces, missed, short }: Draft, span: Span): Programme {
  const here = cutTo(missed, span);
  const lost: readonly Lost[] = [
    ...here.flatMap(lostInHold),
    ...short
      .filter((one) => saidIn(span, one))
      .map(({ from, until, why, volume: value, working }) => ({
        from,
        until,
        why,
        volume: { value, working },
      })),
  ];
  return {
    span,
    pieces: joined(cutTo(pieces, span), samePiece),
    gaps: joined(here.map(asGap), sameGap),
    shortfall: sum(lost.map((one) => one.volume.value)),
    lost: lost.toSorted((a, b) => a.from - b.from),
  };
}

/**
 * The programme of an order over a span: what runs, what does not and why, and what of the order cannot be given.
 * Programmes over adjoining spans, from one standing, are together the programme over both. [PR17]
 * Precondition: the numbers of the order are credible ([OR3]).
 */
export function programmeOf(request: ProgrammeRequest): Programme {
  if (request.span.from >= request.span.until) return laidOver(NO_FEED, request.span);
  const frame = frameOf(request);
  return laidOver(withinDailyMaximum(frame, draftOf(frame)), request.span);
}
