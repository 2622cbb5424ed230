/**
 * How does a standing read on paper? What runs and hangs first; then the feeding day and the one before it, the tube, how
 * the feed is borne, what was measured, and what has to be settled.
 */
import { fraction } from '../../base/fraction.ts';
import { dayAt, type Zone } from '../../base/zone.ts';
import type { CourseStanding } from '../../standing/standing-at.ts';
import { BLANK, type Line, line, section } from '../line.ts';
import { showFraction } from '../number.ts';
import { whoLine } from '../plan/heading.ts';
import { accountLines } from './account.ts';
import { measuredLines, toleranceLines, tubeLines } from './body.ts';
import { nowLines } from './now.ts';
import { dayAndTime, type StandingPage, type StandingTextOptions, time } from './page.ts';

/** By the order, else by who the person was said to be, else by the course's own name. */
function whoseStanding(course: string, { orderInForce, person }: CourseStanding): string {
  if (orderInForce.kind === 'one') return whoLine(orderInForce.order);
  if (orderInForce.kind === 'fork') return whoLine(orderInForce.orders[0]!);
  return person.identified?.name ?? course;
}

const settleLines = ({ contradictions }: CourseStanding, page: StandingPage): readonly Line[] =>
  contradictions.map(({ code, at, data }) => {
    const { says, remedy } = page.words.standing.contradictions[code](data);
    return line(`  ${page.words.levels.ask}  ST13  ${time(at, page)}  ${says} ${remedy}`, 'ask');
  });

/**
 * The standing as lines of text.
 * @param course its name, for somebody of whom neither order nor name is known.
 * @param zone the clock by which it is read: the order's own.
 */
export function standingLines(
  course: string,
  standing: CourseStanding,
  zone: Zone,
  { words, plan, workings }: StandingTextOptions,
): readonly Line[] {
  const page: StandingPage = { words, zone, today: dayAt(standing.at, zone), standing, workings };
  const { today, yesterday } = standing;
  const says = words.standing;
  const asOf = says.asOf(dayAndTime(standing.at, page), showFraction(fraction(standing.entries), 0));
  return [
    line(says.title(whoseStanding(course, standing)), 'title'),
    line(asOf, 'quiet'),
    BLANK,
    ...section(says.now, nowLines(standing, plan, page)),
    ...(today === null ? [] : [...accountLines(says.today, today, page), BLANK]),
    ...(yesterday === null || yesterday.byContainer.length === 0
      ? []
      : [...accountLines(says.yesterday, yesterday, page), BLANK]),
    ...section(says.tube, tubeLines(standing, page)),
    ...section(says.tolerance, toleranceLines(standing, page)),
    ...section(says.measured, measuredLines(standing, page)),
    ...section(says.toSettle, settleLines(standing, page)),
    ...Object.entries(standing.unknown).map(([kind, count]) => line(says.unknown(kind, count), 'ask')),
  ];
}
