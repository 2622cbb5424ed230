/**
 * How does a plan read on paper? What to do next first; then what runs, the containers, the visits and what the day comes
 * to, in lines short enough to copy by hand.
 */
import type { Instant } from '../base/instant.ts';
import { inMl } from '../base/volume.ts';
import { dayAt } from '../base/zone.ts';
import type { FeedList } from '../feeds/feed.ts';
import { feedById } from '../feeds/feed.ts';
import type { Order, Problem } from '../order/order.ts';
import type { CartonUse, DayTotals, Plan, PlannedContainer, Task, Visit } from '../plan/plan.ts';
import { type GapReason, type LossReason, needWithin, type Piece } from '../programme/programme.ts';
import { showFraction, showRate, showVolume } from './number.ts';
import { problemSays } from './problem-text.ts';
import { showMoment } from './time.ts';
import type { Words } from './words.ts';
import { type Reading, workingLines } from './working-text.ts';

export type Line = {
  readonly text: string;
  /** What kind of line it is, so that a terminal or a page can set it apart without reading the words. */
  readonly tone: 'title' | 'heading' | 'next' | 'body' | 'quiet' | 'stop' | 'ask' | 'note';
};

export type PlanTextOptions = { readonly words: Words; readonly feeds: FeedList; readonly workings: boolean };

const line = (text: string, tone: Line['tone'] = 'body'): Line => ({ text, tone });
const BLANK = line('');

type Page = Reading & PlanTextOptions & { readonly order: Order };

const moment = (at: Instant, page: Page): string => showMoment(at, page.today, page.zone, page.words);

const tidy = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Name and identifiers: enough to know the person by two of them. */
function who({ patient }: Order): string {
  const ids = patient.identifiers.map((one) => `${one.kind} ${one.value}`);
  const born = patient.birthDate === null ? [] : [`born ${patient.birthDate}`];
  return [patient.name ?? '—', ...ids, ...born, ...(patient.place === null ? [] : [patient.place])].join(
    ' · ',
  );
}

function feedLine(page: Page): string {
  const { order, words, feeds } = page;
  if (order.feed === null) return '';
  const { strength } = order.feed;
  const name = feedById(feeds, order.feed.id)?.name ?? order.feed.id;
  const share = strength.n === strength.d ? words.plan.full : `${strength.n}/${strength.d}`;
  const lumen = order.access?.lumens.find((one) => one.name === order.access?.feedBy);
  const by = order.access === null ? [] : [order.access.device, ...(lumen?.tip == null ? [] : [lumen.tip])];
  return [name, words.plan.strength(share), ...by, ...(order.method === null ? [] : [order.method])].join(
    ' · ',
  );
}

export function problemLines(problems: readonly Problem[], words: Words): readonly Line[] {
  return problems.flatMap((problem) => {
    const { says, remedy } = problemSays(problem, words);
    const confirm =
      problem.confirmedBy !== undefined
        ? ` [${words.plan.confirmedBy(problem.confirmedBy)}]`
        : problem.level === 'ask' && typeof problem.data.confirm === 'string'
          ? ` [${words.plan.confirm(problem.data.confirm)}]`
          : '';
    return [
      line(
        `${words.levels[problem.level]}  ${problem.rule}  ${says} ${remedy}${confirm}`.trimEnd(),
        problem.level,
      ),
    ];
  });
}

const setUp = (container: PlannedContainer, page: Page): string => {
  const { plan } = page.words;
  const amount = showVolume(container.fill.value, 'down');
  return container.closed ? plan.spike(amount) : plan.pour(amount);
};

const rateAt = (pieces: readonly Piece[], at: Instant): Piece | undefined =>
  pieces.find((piece) => piece.until > at && piece.from >= at) ?? pieces.find((piece) => piece.until > at);

/** The first thing to do, as one sentence with a verb and a number. */
function nextLine(plan: Plan, page: Page): readonly Line[] {
  const { words } = page;
  const visit = plan.visits[0];
  if (visit === undefined) return [];
  const container = plan.containers.find((one) => !one.alreadyUp && one.putUpAt === visit.at);
  if (container === undefined)
    return [line(`${words.plan.next}  ${moment(visit.at, page)}  ${tidy(taskList(visit, page))}.`, 'next')];
  const piece = rateAt(plan.programme?.pieces ?? [], container.putUpAt);
  const parts = [
    setUp(container, page),
    ...(container.newSet ? [words.plan.newSet] : []),
    ...(piece?.gives.kind === 'rate' ? [words.plan.startAt(showRate(piece.gives.rate))] : []),
    words.plan.downBy(moment(container.takeDownBy.value, page)),
  ];
  return [line(`${words.plan.next}  ${moment(visit.at, page)}  ${tidy(parts.join(', '))}.`, 'next')];
}

/** A hold that a medicine makes is named for the medicine. */
const holdLabel = (hold: string): string => hold.replace(/^medicine:/, '');

function runLines(plan: Plan, page: Page): readonly Line[] {
  const { words } = page;
  const programme = plan.programme;
  if (programme === null) return [];
  const pieces = programme.pieces.map((piece) => ({
    from: piece.from,
    text:
      piece.gives.kind === 'rate'
        ? showRate(piece.gives.rate)
        : `${showVolume(needWithin(programme, piece))}`,
    until: piece.until,
    working: page.workings ? workingLines(piece.working, page) : [],
  }));
  const gaps = programme.gaps.map((gap) => ({
    from: gap.from,
    until: gap.until,
    text: words.plan.stopped(
      words.gaps[gap.why as GapReason] ?? gap.why,
      gap.holds.map(holdLabel).join(', '),
    ),
    working: [] as readonly string[],
  }));
  const rows = [...pieces, ...gaps].toSorted((a, b) => a.from - b.from);
  const why = (reason: LossReason): string => ({ ...words.gaps, ...words.losses })[reason];
  const short =
    programme.shortfall > 0
      ? [
          line(`  ${words.plan.shortfall(showVolume(programme.shortfall, 'down'))}`, 'ask'),
          ...(programme.lost ?? []).map((lost) =>
            line(
              `      ${words.plan.within(moment(lost.from, page), moment(lost.until, page))}  ${words.plan.lost(showVolume(lost.volume.value), why(lost.why))}`,
              'quiet',
            ),
          ),
        ]
      : [];
  return [
    line(words.plan.runs, 'heading'),
    ...rows.flatMap((row) => [
      line(`  ${words.plan.within(moment(row.from, page), moment(row.until, page))}  ${row.text}`),
      ...row.working.map((text) => line(`      ${text}`, 'quiet')),
    ]),
    ...short,
    BLANK,
  ];
}

function cartonText(use: CartonUse, opened: boolean, page: Page): string {
  const { plan } = page.words;
  const which = use.carton.startsWith('open:')
    ? plan.openCarton(use.carton.slice(5))
    : opened
      ? plan.keptCarton
      : plan.newCarton;
  const keep =
    use.left <= 0
      ? ''
      : use.keepUntil === null
        ? plan.throwAway
        : plan.keepUntil(moment(use.keepUntil, page));
  return plan.carton(which, showVolume(use.take), showVolume(use.left), keep);
}

/** @param before the containers put up earlier: a carton that one of them opened is now a kept one. */
function containerLines(
  container: PlannedContainer,
  before: readonly PlannedContainer[],
  page: Page,
): readonly Line[] {
  const { plan, because } = page.words;
  const opened = new Set(before.flatMap((one) => one.cartons.map((use) => use.carton)));
  const parts = [
    container.alreadyUp ? plan.alreadyUp : setUp(container, page),
    ...(container.newSet ? [plan.newSet] : []),
    ...(container.prime.value > 0 ? [plan.prime(showVolume(container.prime.value))] : []),
    plan.deliver(showVolume(container.volumeToDeliver.value, 'down')),
    ...(container.runsDryAt === null ? [] : [plan.dryAt(moment(container.runsDryAt.value, page))]),
    ...(container.runsDryEarliest === null
      ? []
      : [plan.dryEarliest(moment(container.runsDryEarliest.value, page))]),
    `${plan.downBy(moment(container.takeDownBy.value, page))} ${plan.because(because[container.because])}`,
    ...(container.leftOver.value > 0 ? [plan.leftOver(showVolume(container.leftOver.value))] : []),
  ];
  const workings = [container.fill, container.volumeToDeliver, container.takeDownBy].flatMap((one) =>
    workingLines(one.working, page),
  );
  return [
    line(`  ${moment(container.putUpAt, page)}  ${parts.join(', ')}`),
    ...container.cartons.map((use) =>
      line(`      ${cartonText(use, opened.has(use.carton), page)}`, 'quiet'),
    ),
    ...(page.workings ? workings.map((text) => line(`      ${text}`, 'quiet')) : []),
  ];
}

/** A container's amount and rate are told with the container. */
function taskText(task: Task, page: Page): string {
  const { kind, about, beside = null } = task;
  const name = page.words.taskAbout({ kind, name: page.words.tasks[kind], about, beside });
  if (kind === 'put-up-container') return name;
  const volume = task.volume === null ? '' : ` ${showVolume(task.volume.value)}`;
  const rate = task.rate === null ? '' : ` at ${showRate(task.rate.value)}`;
  return `${name}${volume}${rate}`;
}

const taskList = (visit: Visit, page: Page): string =>
  visit.tasks.map((task) => taskText(task, page)).join('; ');

function dayLines(day: DayTotals, page: Page): readonly Line[] {
  const { plan } = page.words;
  const need = (amount: string | null): string => (amount === null ? '' : ` (${plan.needed(amount)})`);
  const kcal = `${showFraction(day.energyKcal.value, 0)} kcal`;
  const protein = `${showFraction(day.proteinG.value, 1)} g`;
  const ordered = day.ordered === null ? '' : ` (${plan.ordered(showVolume(day.ordered.value))})`;
  const workings = [day.formula, day.energyKcal, day.proteinG, day.water.total].flatMap((one) =>
    workingLines(one.working, page),
  );
  const needs = {
    energy: day.needs.energyKcal === null ? null : `${showFraction(day.needs.energyKcal, 0)} kcal`,
    protein: day.needs.proteinG === null ? null : `${showFraction(day.needs.proteinG, 1)} g`,
    water: day.needs.water === null ? null : `${showFraction(inMl(day.needs.water), 0)} mL`,
  };
  return [
    line(`${plan.day}  ${plan.within(moment(day.day.from, page), moment(day.day.until, page))}`, 'heading'),
    line(`  ${plan.formula} ${showVolume(day.formula.value)}${ordered}`),
    line(`  ${plan.energy} ${kcal}${need(needs.energy)}, ${plan.protein} ${protein}${need(needs.protein)}`),
    line(
      `  ${plan.water(showVolume(day.water.formula.value), showVolume(day.water.flushes.value), showVolume(day.water.total.value))}${need(needs.water)}`,
    ),
    ...(page.workings ? workings.map((text) => line(`      ${text}`, 'quiet')) : []),
    BLANK,
  ];
}

const section = (title: string, lines: readonly Line[]): readonly Line[] =>
  lines.length === 0 ? [] : [line(title, 'heading'), ...lines, BLANK];

/** The plan as lines of text. Where a problem stops, only what must be settled. */
export function planLines(plan: Plan, order: Order, options: PlanTextOptions): readonly Line[] {
  const { words } = options;
  const page: Page = { ...options, order, zone: order.zone, today: dayAt(plan.at, order.zone) };
  const head = [line(words.plan.title(who(order)), 'title'), line(feedLine(page), 'quiet'), BLANK];
  const problems = problemLines(plan.problems, words);
  const best = plan.infeasible.map((one) => {
    const said = words.infeasible[one.code]?.({ ...one.data, about: one.about });
    return line(`${words.levels.ask}  ${one.rule}  ${said?.says ?? one.code} ${said?.remedy ?? ''}`, 'ask');
  });
  if (plan.programme === null) return [...head, line(words.plan.noPlan, 'stop'), ...problems];
  return [
    ...head,
    ...nextLine(plan, page),
    BLANK,
    ...runLines(plan, page),
    ...section(
      words.plan.containers,
      plan.containers.flatMap((one, index) => containerLines(one, plan.containers.slice(0, index), page)),
    ),
    ...section(
      words.plan.waterBags,
      plan.waterBags.flatMap((one) => containerLines(one, [], page)),
    ),
    ...section(
      words.plan.visits,
      plan.visits.map((visit) => line(`  ${moment(visit.at, page)}  ${taskList(visit, page)}`)),
    ),
    ...(plan.day === null ? [] : dayLines(plan.day, page)),
    ...best,
    ...problems,
    line(`${words.plan.enteralOnly} ${words.plan.defer}`, 'quiet'),
  ];
}
