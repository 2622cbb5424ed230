/** What does a feeding day come to so far? Received against ordered, what stood still, intake and output, what was in it. */
import { fraction } from '../../base/fraction.ts';
import type { Volume } from '../../base/volume.ts';
import type { Account } from '../../standing/account.ts';
import type { Ordered } from '../../standing/ordered.ts';
import type { Interruption } from '../../standing/readings/interruptions.ts';
import { type Line, line } from '../line.ts';
import { showFraction, showVolume } from '../number.ts';
import { showDuration } from '../time.ts';
import { workingLines } from '../working-text.ts';
import { type StandingPage, spanText } from './page.ts';

/** Cut, not rounded: 79.96 % is not 80. */
const percent = (part: Volume, whole: Volume): string =>
  showFraction(fraction(Number((BigInt(part) * 1_000n) / BigInt(whole)), 10), 1);

function against(received: Volume, ordered: Ordered | null, soFar: boolean, page: StandingPage): string {
  const { standing } = page.words;
  if (ordered === null) return standing.notCompared;
  const { asWritten, lessFasts } = ordered;
  if (asWritten <= 0) return '';
  const of = standing.ofOrdered(showVolume(asWritten), percent(received, asWritten), soFar);
  return lessFasts === asWritten ? of : `${of} ${standing.lessFasts(showVolume(lessFasts))}`;
}

function receivedLines({ received, estimated, byRate, ordered, span }: Account, page: StandingPage) {
  const { standing } = page.words;
  const soFar = page.standing.at < span.until;
  const first = `${standing.received(showVolume(received))} ${against(received, ordered, soFar, page)}`;
  return [
    line(`  ${first.trimEnd()}`),
    ...(estimated > 0 ? [line(`  ${standing.estimated(showVolume(estimated))}`, 'quiet')] : []),
    ...(byRate === received ? [] : [line(`  ${standing.byRate(showVolume(byRate))}`, 'quiet')]),
  ];
}

function stoodStill({ from, until, reason, lasted, lost }: Interruption, page: StandingPage): Line {
  const { standing } = page.words;
  const why = standing.stoodStill(standing.pauses[reason], showDuration(lasted));
  const span = spanText({ from, until }, page);
  return line(`  ${span}  ${why}${lost === null ? '' : standing.wouldHaveRun(showVolume(lost))}`);
}

type Amount = readonly [name: string, volume: Volume | undefined];

const amounts = (list: readonly Amount[]): string =>
  list
    .flatMap(([name, volume]) =>
      volume === undefined || volume === 0 ? [] : [`${name} ${showVolume(volume)}`],
    )
    .join(', ');

function liquidLines({ liquids }: Account, page: StandingPage): readonly Line[] {
  const { standing } = page.words;
  const { feed, intake, output, unmeasured, totalIn, totalOut, balance } = liquids;
  const names = <K extends string>(
    said: Readonly<Record<K, string>>,
    of: Readonly<Partial<Record<K, Volume>>>,
  ) => (Object.keys(said) as K[]).map((what): Amount => [said[what], of[what]]);
  const went = amounts(names(standing.intake, { feed, ...intake }));
  const came = amounts(names(standing.output, output));
  const lines = [
    ...(went === '' ? [] : [standing.wentIn(showVolume(totalIn.value), went)]),
    ...(came === '' ? [] : [standing.cameOut(showVolume(totalOut.value), came)]),
    standing.balance(showVolume(balance.value)),
    ...Object.entries(unmeasured).map(([what, times]) =>
      standing.unmeasured(standing.output[what as keyof typeof output], times),
    ),
  ];
  return [
    ...lines.map((text) => line(`  ${text}`)),
    ...(page.workings
      ? workingLines(balance.working, page).map((text) => line(`      ${text}`, 'quiet'))
      : []),
  ];
}

function nutritionLines({ nutrition }: Account, page: StandingPage): readonly Line[] {
  const { plan, standing } = page.words;
  const { energyKcal, proteinG, freeWater, unknownFeeds } = nutrition;
  const energy = `${plan.energy} ${showFraction(energyKcal.value, 0)} kcal`;
  const protein = `${plan.protein} ${showFraction(proteinG.value, 1)} g`;
  const { feed, given, total } = freeWater;
  const workings = [energyKcal, proteinG, total].flatMap((one) => workingLines(one.working, page));
  return [
    line(`  ${energy}, ${protein}`),
    line(`  ${plan.water(showVolume(feed.value), showVolume(given.value), showVolume(total.value))}`),
    ...unknownFeeds.map((feedId) => line(`  ${standing.feedNotListed(feedId)}`, 'ask')),
    ...(page.workings ? workings.map((text) => line(`      ${text}`, 'quiet')) : []),
  ];
}

/** The account of a feeding day under its heading. */
export function accountLines(heading: string, account: Account, page: StandingPage): readonly Line[] {
  return [
    line(`${heading}  ${spanText(account.span, page)}`, 'heading'),
    ...receivedLines(account, page),
    ...account.interruptions.map((one) => stoodStill(one, page)),
    ...nutritionLines(account, page),
    ...liquidLines(account, page),
  ];
}
