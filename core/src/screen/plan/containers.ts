/** How does a container read? What to pour or spike, from which cartons, until when, and why it comes down. */
import { inMl, type Volume } from '../../base/volume.ts';
import type { CartonUse, PlannedContainer } from '../../plan/plan.ts';
import { type Line, line } from '../line.ts';
import { showFraction, showVolume } from '../number.ts';
import { workingsLines } from '../working-text.ts';
import { moment, type Page } from './page.ts';

/** What is taken from a carton and what stays in it add up to it, so neither is rounded to a whole mL. */
const tenths = (amount: Volume): string => `${showFraction(inMl(amount), 1)} mL`;

export function setUp({ fill, closed, mix }: PlannedContainer, page: Page): string {
  const { plan } = page.words;
  const amount = showVolume(fill.value, 'down');
  if (closed) return plan.spike(amount);
  const pour = plan.pour(amount);
  return mix === undefined
    ? pour
    : `${pour}, ${plan.mixed(tenths(mix.formula.value), tenths(mix.water.value))}`;
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
  return plan.carton(which, tenths(use.take), tenths(use.left), keep);
}

const maybe = <T>(one: T | null): readonly T[] => (one === null ? [] : [one]);

/** @param before the containers put up earlier: a carton that one of them opened is now a kept one. */
export function containerLines(
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
  const workings = workingsLines(
    [container.fill, container.volumeToDeliver, container.takeDownBy, ...maybe(container.runsDryAt)].map(
      (one) => one.working,
    ),
    page,
  );
  return [
    line(`  ${moment(container.putUpAt, page)}  ${parts.join(', ')}`),
    ...container.cartons.map((use) =>
      line(`      ${cartonText(use, opened.has(use.carton), page)}`, 'quiet'),
    ),
    ...(page.workings ? workings.map((text) => line(`      ${text}`, 'quiet')) : []),
  ];
}
