/**
 * What does a span come to: received against ordered, what stood still, what went in and came out, what was in it? A shift, a
 * feeding day, an order's time: the same account, over whichever. Adjoining accounts add up to the whole, to the last unit.
 */
import { earlier, type Instant, later, type Span, within } from '../base/instant.ts';
import { NOTHING, subtract, sum, type Volume } from '../base/volume.ts';
import { ARITHMETIC, input, shownVolume, type Worked, worked } from '../base/working.ts';
import type { FeedList } from '../feeds/feed.ts';
import { ask } from '../policy/policy.ts';
import type { Course } from './course.ts';
import { type Nutrition, nutritionWithin } from './nutrition.ts';
import { type Ordered, orderedWithin } from './ordered.ts';
import { type Interruption, interruptionsWithin } from './readings/interruptions.ts';
import type { IntakeKind, Output, OutputKind } from './readings/liquids.ts';
import { type ByName, byRateBy, estimatedWithin, grouped, keptBy, receivedBy } from './received.ts';
import { contextAt, type Place } from './spans.ts';
import { cutAt, sumWithin } from './stretch.ts';
import { told } from './trail.ts';

export type View = Place & { readonly at: Instant; readonly feeds: FeedList };

export type IntakeOutput = {
  readonly feed: Volume;
  readonly intake: Readonly<Record<IntakeKind, Volume>>;
  readonly output: Readonly<Partial<Record<OutputKind, Volume>>>;
  /** How often something came out that nobody measured: the total is of the rest. */
  readonly unmeasured: Readonly<Partial<Record<OutputKind, number>>>;
  readonly totalIn: Worked<Volume>;
  readonly totalOut: Worked<Volume>;
  /** Below nothing where more came out. */
  readonly balance: Worked<Volume>;
};

export type Account = {
  readonly span: Span;
  /** Mixture that reached the patient. */
  readonly received: Volume;
  /** How much of it no counter has confirmed yet: a later reading may restate it. */
  readonly estimated: Volume;
  /** What rate × time alone says: where it differs, a counter restated it. */
  readonly byRate: Volume;
  readonly byContainer: readonly ByName[];
  readonly byOrder: readonly ByName[];
  readonly ordered: Ordered | null;
  readonly interruptions: readonly Interruption[];
  readonly liquids: IntakeOutput;
  readonly nutrition: Nutrition;
};

const INTAKE_KINDS = ['water', 'medicine', 'oral', 'intravenous', 'other'] as const;

const measured = (outputs: readonly Output[]): Volume => sum(outputs.map((one) => one.volume ?? NOTHING));

const byKind = <T>(outputs: readonly Output[], of: (own: readonly Output[]) => T) =>
  Object.fromEntries([...Map.groupBy(outputs, (one) => one.what)].map(([what, own]) => [what, of(own)]));

const total = (symbol: string, terms: readonly (readonly [string, Volume])[]): Worked<Volume> =>
  worked(sum(terms.map(([, volume]) => volume)), shownVolume, {
    symbol,
    equation: `${symbol} = ${terms.map(([name]) => `V_${name}`).join(' + ') || '0'}`,
    inputs: terms.map(([name, volume]) => input(`V_${name}`, shownVolume(volume), ARITHMETIC)),
    rule: 'ST20',
    basis: ARITHMETIC,
  });

/** [ST20] Whole liquid volumes, each once. */
export function intakeOutputWithin(course: Course, span: Span, at: Instant): IntakeOutput {
  const feed = sumWithin(receivedBy(course, at).list, span);
  const taken = cutAt(
    told(course.liquids.intake).filter((one) => one.from <= at),
    at,
  );
  const intake = Object.fromEntries(
    INTAKE_KINDS.map((what) => [
      what,
      sumWithin(
        taken.filter((one) => one.what === what),
        span,
      ),
    ]),
  ) as Record<IntakeKind, Volume>;
  const outputs = told(course.liquids.output).filter((one) => one.at <= at && within(span, one.at));
  const output = byKind(
    outputs.filter((one) => one.volume !== null),
    measured,
  );
  const totalIn = total('V_in', [
    ['feed', feed],
    ...INTAKE_KINDS.map((what) => [what, intake[what]] as const),
  ]);
  const totalOut = total('V_out', Object.entries(output));
  return {
    feed,
    intake,
    output,
    unmeasured: byKind(
      outputs.filter((one) => one.volume === null),
      (own) => own.length,
    ),
    totalIn,
    totalOut,
    balance: worked(subtract(totalIn.value, totalOut.value), shownVolume, {
      symbol: 'V_balance',
      equation: 'V_balance = V_in − V_out',
      inputs: [
        input('V_in', shownVolume(totalIn.value), { kind: 'working', working: totalIn.working }),
        input('V_out', shownVolume(totalOut.value), { kind: 'working', working: totalOut.working }),
      ],
      rule: 'ST20',
      basis: ARITHMETIC,
    }),
  };
}

/** The account of a span as it is known at `at`; what of the span is still to come is not in it. */
export function accountOver(course: Course, span: Span, view: View): Account {
  const { at, policy, feeds } = view;
  const received = receivedBy(course, at).list;
  const context = contextAt(course, at, view.zone);
  const counts = ask(policy, 'account.discarded-residual-off-nutrition', context);
  const kept = keptBy(course, at, counts.known && counts.value);
  const doses = told(course.liquids.doses).filter((one) => one.at <= at);
  const soFar: Span = { from: span.from, until: later(span.from, earlier(span.until, at)) };
  return {
    span,
    received: sumWithin(received, span),
    estimated: estimatedWithin(received, span),
    byRate: sumWithin(byRateBy(course, at), span),
    byContainer: grouped(received, span, (one) => one.container),
    byOrder: grouped(received, span, (one) => one.order),
    ordered: orderedWithin(course, soFar, view),
    interruptions: interruptionsWithin(course.interruptions, soFar),
    liquids: intakeOutputWithin(course, span, at),
    nutrition: nutritionWithin({ ...kept, doses }, span, feeds),
  };
}
