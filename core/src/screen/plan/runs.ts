/** How does a programme read? What runs when, why nothing runs, and what of the order cannot be given. */
import {
  type GapReason,
  type LossReason,
  needWithin,
  type Piece,
  type Programme,
} from '../../programme/programme.ts';
import { BLANK, type Line, line } from '../line.ts';
import { showRate, showVolume } from '../number.ts';
import { workingLines } from '../working-text.ts';
import { moment, type Page } from './page.ts';

/** A hold that a medicine makes is named for the medicine. */
const holdLabel = (hold: string): string => hold.replace(/^medicine:/, '');

function pieceText(piece: Piece, programme: Programme, { words }: Page): string {
  if (piece.gives.kind === 'rate') return showRate(piece.gives.rate);
  const { ifEatenLessThan: share } = piece.gives;
  const volume = showVolume(needWithin(programme, piece));
  return share === undefined ? volume : `${volume} ${words.plan.ifEaten(`${share.n}/${share.d}`)}`;
}

const pieceRows = (programme: Programme, page: Page) =>
  programme.pieces.map((piece) => ({
    from: piece.from,
    until: piece.until,
    text: pieceText(piece, programme, page),
    working: page.workings ? workingLines(piece.working, page) : [],
  }));

const gapRows = (programme: Programme, { words }: Page) =>
  programme.gaps.map(({ from, until, why, holds }) => ({
    from,
    until,
    text: words.plan.stopped(words.gaps[why as GapReason] ?? why, holds.map(holdLabel).join(', ')),
    working: [] as readonly string[],
  }));

function shortfallLines({ shortfall, lost = [] }: Programme, page: Page): readonly Line[] {
  const { plan, gaps, losses } = page.words;
  const why = (reason: LossReason): string => ({ ...gaps, ...losses })[reason];
  if (shortfall <= 0) return [];
  return [
    line(`  ${plan.shortfall(showVolume(shortfall, 'down'))}`, 'ask'),
    ...lost.map((one) => {
      const span = plan.within(moment(one.from, page), moment(one.until, page));
      return line(`      ${span}  ${plan.lost(showVolume(one.volume.value), why(one.why))}`, 'quiet');
    }),
  ];
}

/** Nothing to run is said too, and why where the order has not begun. */
function nothingLines({ span }: Programme, page: Page): readonly Line[] {
  const { startsAt } = page.order;
  const later = startsAt !== null && startsAt >= span.until;
  const why = later ? `: ${page.words.plan.beginsLater(moment(startsAt, page))}` : '';
  return [line(`  ${page.words.plan.nothing}${why}`)];
}

export function runLines(programme: Programme, page: Page): readonly Line[] {
  const { plan } = page.words;
  const rows = [...pieceRows(programme, page), ...gapRows(programme, page)].toSorted(
    (a, b) => a.from - b.from,
  );
  return [
    line(plan.runs, 'heading'),
    ...rows.flatMap(({ from, until, text, working }) => [
      line(`  ${plan.within(moment(from, page), moment(until, page))}  ${text}`),
      ...working.map((one) => line(`      ${one}`, 'quiet')),
    ]),
    ...(rows.length === 0 ? nothingLines(programme, page) : []),
    ...shortfallLines(programme, page),
    BLANK,
  ];
}
