/**
 * How does a plan read on paper? What to do next first; then what runs, the containers, the visits and what the day comes
 * to, in lines short enough to copy by hand.
 */
import type { Instant } from '../../base/instant.ts';
import { dayAt } from '../../base/zone.ts';
import type { Order } from '../../order/order.ts';
import type { Infeasible, Plan } from '../../plan/plan.ts';
import type { Piece } from '../../programme/programme.ts';
import { BLANK, type Line, line, section } from '../line.ts';
import { showRate, showVolume } from '../number.ts';
import { problemLines } from '../problem-lines.ts';
import { tidy } from '../said.ts';
import type { Words } from '../words.ts';
import { containerLines, setUp } from './containers.ts';
import { dayLines } from './day.ts';
import { feedLine, whoLine } from './heading.ts';
import { moment, type Page, type PlanTextOptions } from './page.ts';
import { runLines } from './runs.ts';
import { taskList } from './visits.ts';

/** What runs from then on: the piece that begins then, else the one that is running. */
const pieceFrom = (pieces: readonly Piece[], at: Instant): Piece | undefined =>
  pieces.find((piece) => piece.until > at);

/** The first thing to do, as one sentence with a verb and a number. */
function nextLine(plan: Plan, page: Page): readonly Line[] {
  const { words } = page;
  const visit = plan.visits[0];
  if (visit === undefined) return [];
  const container = plan.containers.find((one) => !one.alreadyUp && one.putUpAt === visit.at);
  const piece = container === undefined ? undefined : pieceFrom(plan.programme?.pieces ?? [], visit.at);
  const says =
    container === undefined
      ? taskList(visit, page)
      : [
          setUp(container, page),
          ...(container.newSet ? [words.plan.newSet] : []),
          ...(piece?.gives.kind === 'rate' ? [words.plan.startAt(showRate(piece.gives.rate))] : []),
          words.plan.downBy(moment(container.takeDownBy.value, page)),
        ].join(', ');
  return [line(`${words.plan.next}  ${moment(visit.at, page)}  ${tidy(says)}.`, 'next')];
}

const infeasibleLine = (one: Infeasible, words: Words): Line => {
  const { says, remedy } = words.infeasible[one.code]({ ...one.data, about: one.about });
  return line(`${words.levels.ask}  ${one.rule}  ${says} ${remedy}`, 'ask');
};

/** What the pump is set to give from the second bag. */
const byPumpLines = ({ order, words }: Page): readonly Line[] =>
  (order.water?.given ?? []).flatMap((one) =>
    one.kind === 'second-bag'
      ? [line(`  ${words.plan.byPump(showVolume(one.volume), words.lasts(one.every))}`)]
      : [],
  );

function partLines(plan: Plan, page: Page): readonly Line[] {
  const { words } = page;
  const { containers, waterBags, visits } = plan;
  return [
    ...section(
      words.plan.containers,
      containers.flatMap((one, index) => containerLines(one, containers.slice(0, index), page)),
    ),
    ...section(
      words.plan.waterBags,
      waterBags.length === 0
        ? []
        : [...byPumpLines(page), ...waterBags.flatMap((one) => containerLines(one, [], page))],
    ),
    ...section(
      words.plan.visits,
      visits.map((visit) => line(`  ${moment(visit.at, page)}  ${taskList(visit, page)}`)),
    ),
  ];
}

/** The plan as lines of text. Where a problem stops, only what must be settled. */
export function planLines(plan: Plan, order: Order, options: PlanTextOptions): readonly Line[] {
  const { words } = options;
  const page: Page = { ...options, order, zone: order.zone, today: dayAt(plan.at, order.zone) };
  const head = [line(words.plan.title(whoLine(order)), 'title'), line(feedLine(page), 'quiet'), BLANK];
  const problems = problemLines(plan.problems, words);
  if (plan.programme === null) return [...head, line(words.plan.noPlan, 'stop'), ...problems];
  return [
    ...head,
    ...nextLine(plan, page),
    BLANK,
    ...runLines(plan.programme, page),
    ...partLines(plan, page),
    ...(plan.day === null ? [] : dayLines(plan.day, page)),
    ...plan.infeasible.map((one) => infeasibleLine(one, words)),
    ...problems,
    line(`${words.plan.enteralOnly} ${words.plan.defer}`, 'quiet'),
  ];
}
