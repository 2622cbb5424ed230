/**
 * What does one administration give: at which rate, how much, and when?
 * Amounts become the exact units of the account; a rate finer than a hundredth of a mL/h is asked about and not rounded.
 */
import { type Rate, rate, type Volume, volume } from '@feedwright/core/base/volume';
import type { Zone } from '@feedwright/core/base/zone';
import { type Exact, of, rounded, times } from '@feedwright/core/reckon/exact';
import type { Dialect } from '../dialect.ts';
import { conceptOf, labelOf } from '../read/coded.ts';
import { booleanOf, type Element, field } from '../read/element.ts';
import { type Amount, amountOf, isMeant, rateOfRatio, shown } from '../read/quantity.ts';
import { answered, ask, stop } from '../read/reading.ts';
import { type Schedule, scheduleOf } from './schedule.ts';

export type Administration = {
  readonly element: Element;
  readonly schedule: Schedule;
  readonly volume: Volume | null;
  readonly rate: Rate | null;
};

const UNITS_PER_ML = of(360_000_000);
const STEPS_PER_ML_PER_HOUR = of(100);

/** Down to the unit of the account, a 360-millionth of a mL: an ounce is not a whole number of them. */
export const volumeOf = (value: Exact): Volume => {
  const { n, d } = rounded(times(value, UNITS_PER_ML), of(1), 'down');
  return volume(Number(n / d));
};

function volumeIn(administration: Element): Volume | null {
  const quantity = field(administration, 'quantity');
  const amount = amountOf(quantity, ['volume'], 'unit.volume');
  if (quantity === null || amount === null || !isMeant(quantity, amount, 'volumePerDay')) return null;
  return volumeOf(amount.value);
}

/** [FH8] The pump's step is 0.01 mL/h; which way to round is for a person to say. */
function wholeRate(element: Element, amount: Amount): Rate | null {
  const hundredths = times(amount.value, STEPS_PER_ML_PER_HOUR);
  if (hundredths.n % hundredths.d === 0n) return rate(Number(hundredths.n / hundredths.d));
  return ask(element, 'FH8', 'fhir/rate-too-fine', 'rateMlPerHour', {
    written: amount.written,
    mlPerHour: shown(amount.value),
  });
}

function rateIn(administration: Element): Rate | null {
  const quantity = field(administration, 'rateQuantity');
  const ratio = field(administration, 'rateRatio');
  if (quantity !== null && ratio !== null) {
    stop(administration, 'FH12', 'fhir/two-rates');
    return null;
  }
  const element = quantity ?? ratio;
  if (element === null) return null;
  const amount = ratio === null ? amountOf(quantity, ['volume/time'], 'unit.rate') : rateOfRatio(ratio);
  return amount !== null && isMeant(element, amount, 'rate') ? wholeRate(element, amount) : null;
}

/** [FH12] Feed "when needed" has no time of its own. */
function stopWhenNeeded(administration: Element, dialect: Dialect): void {
  const schedule = dialect.schedule(administration);
  const reason = labelOf(conceptOf(field(schedule, 'asNeededFor')));
  if (booleanOf(schedule, 'asNeeded') === true || reason !== null) {
    stop(schedule!, 'FH12', 'fhir/when-needed', { reason });
  }
}

/** One for each Timing of the administration; one without a schedule where it has none. */
export function administrationsOf(
  administration: Element,
  dialect: Dialect,
  zone: Zone,
): readonly Administration[] {
  stopWhenNeeded(administration, dialect);
  const amounts = { volume: volumeIn(administration), rate: rateIn(administration) };
  const timings = dialect.timings(administration);
  const schedules =
    timings.length > 0 ? timings.map((timing) => scheduleOf(timing, zone)) : [unscheduled(administration)];
  return schedules.map((schedule) => ({ element: administration, schedule, ...amounts }));
}

const unscheduled = (administration: Element): Schedule => ({
  place: administration,
  from: answered(administration, 'start'),
  until: null,
  repeats: false,
  times: null,
  timesADay: null,
  lasts: null,
});
