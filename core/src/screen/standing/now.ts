/** What runs, what hangs, what is left of it, and when does it come down? The part of a standing that is read first. */
import type { Plan } from '../../plan/plan.ts';
import type { ContainerUp } from '../../standing/standing.ts';
import type { CourseStanding } from '../../standing/standing-at.ts';
import { type Line, line } from '../line.ts';
import { showRate, showVolume } from '../number.ts';
import { showDuration } from '../time.ts';
import { planned, type StandingPage, time } from './page.ts';

function runningLine({ running, interruption }: CourseStanding, page: StandingPage): Line {
  const { standing } = page.words;
  if (running !== null) return line(`  ${standing.runs(showRate(running.rate), time(running.since, page))}`);
  if (interruption === null) return line(`  ${standing.nothingRuns}`);
  const { reason, from, lasted, lost } = interruption;
  const why = standing.standsStill(standing.pauses[reason], time(from, page), showDuration(lasted));
  return line(`  ${why}${lost === null ? '' : standing.wouldHaveRun(showVolume(lost))}`, 'ask');
}

/** Holds of the order that have begun and not ended. */
function holdLines({ orderInForce, at }: CourseStanding, page: StandingPage): readonly Line[] {
  const { standing } = page.words;
  const holds = orderInForce.kind === 'one' ? orderInForce.order.holds : [];
  return holds
    .filter(({ from, until }) => from <= at && (until === null || until > at))
    .map(({ why, from, note }) =>
      line(`  ${standing.held(standing.pauses[why], time(from, page), note)}`, 'ask'),
    );
}

type Up = keyof Pick<StandingPage['words']['standing'], 'container' | 'waterBag'>;

const upText = ({ id, remaining, filled, putUpAt }: ContainerUp, as: Up, page: StandingPage): string =>
  page.words.standing[as](id, showVolume(remaining, 'down'), showVolume(filled), time(putUpAt, page));

/** The limit that governs is the plan's to say: it depends on feed, order, set and policy. */
function containerLines({ container, runsDryAt, at }: CourseStanding, plan: Plan | null, page: StandingPage) {
  const { words } = page;
  if (container === null) return [line(`  ${words.standing.noContainer}`)];
  const dry = runsDryAt === null ? '' : `, ${words.plan.dryAt(time(runsDryAt, page))}`;
  const first = line(`  ${upText(container, 'container', page)}${dry}`);
  const down = planned(plan);
  if (down === null) return [first, line(`  ${words.standing.limitUnknown}`, 'ask')];
  const [by, why] = [down.takeDownBy.value, words.because[down.because]];
  const limit =
    by < at
      ? line(`  ${words.standing.pastLimit(time(by, page), why)}`, 'stop')
      : line(`  ${words.plan.downBy(time(by, page))} ${words.plan.because(why)}`);
  return [first, limit];
}

function lineOpen({ lineClosed, running }: CourseStanding, page: StandingPage): readonly Line[] {
  if (lineClosed === null || running !== null) return [];
  const { clamped, capped } = lineClosed.fact;
  return clamped && capped
    ? []
    : [line(`  ${page.words.standing.lineOpen(clamped, capped, time(lineClosed.at, page))}`, 'stop')];
}

function orderLine({ orderInForce: order }: CourseStanding, page: StandingPage): readonly Line[] {
  const { standing } = page.words;
  switch (order.kind) {
    case 'one': {
      const { next } = order;
      const starts = next?.startsAt ?? null;
      const after =
        next === null || starts === null
          ? []
          : [line(`  ${standing.nextOrder(next.id, time(starts, page))}`)];
      return [line(`  ${standing.order(order.order.id)}`, 'quiet'), ...after];
    }
    case 'fork':
      return [line(`  ${standing.orderFork(order.orders.map((one) => one.id).join(', '))}`, 'stop')];
    case 'stopped':
      return [line(`  ${standing.orderStopped(order.order, time(order.at, page), order.reason)}`, 'stop')];
    case 'none':
      return [line(`  ${standing.noOrder}`, 'stop')];
  }
}

function stepLines({ advancement, stepDeclined }: CourseStanding, page: StandingPage): readonly Line[] {
  const { stepsConfirmed, since } = advancement;
  const { standing } = page.words;
  const confirmed = since === null ? [] : [line(`  ${standing.steps(stepsConfirmed, time(since, page))}`)];
  if (stepDeclined === null || (since !== null && since > stepDeclined.at)) return confirmed;
  const { step, at, reason } = stepDeclined;
  return [...confirmed, line(`  ${standing.stepDeclined(step, time(at, page), reason)}`, 'ask')];
}

export function nowLines(standing: CourseStanding, plan: Plan | null, page: StandingPage): readonly Line[] {
  const { words } = page;
  const { waterBag, set, cartons } = standing;
  return [
    runningLine(standing, page),
    ...holdLines(standing, page),
    ...containerLines(standing, plan, page),
    ...(waterBag === null ? [] : [line(`  ${upText(waterBag, 'waterBag', page)}`)]),
    ...(set === null ? [] : [line(`  ${words.standing.set(time(set.putUpAt, page))}`, 'quiet')]),
    ...cartons.map((one) => {
      const left = showVolume(one.remaining, 'down');
      return line(`  ${words.standing.carton(one.id, left, time(one.openedAt, page))}`, 'quiet');
    }),
    ...lineOpen(standing, page),
    ...stepLines(standing, page),
    ...orderLine(standing, page),
  ];
}
