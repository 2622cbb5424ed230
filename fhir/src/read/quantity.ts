/**
 * How much is this Quantity, exactly?
 * The value as its digits say, the unit by its UCUM code alone. What cannot be read so is asked about with the valid
 * unit named: `ml/hr` is no UCUM, `mL/24.h` multiplies by the hour, a number alone is no dose. Nothing is converted in
 * silence but one valid unit into another.
 */
import type { Fraction } from '@feedwright/core/base/fraction';
import { CREDIBLE, type CredibleKind, isCredible } from '@feedwright/core/order/credible';
import {
  compare,
  decimalText,
  type Exact,
  NOUGHT,
  of,
  ofFraction,
  over,
  times,
  toFraction,
} from '@feedwright/core/reckon/exact';
import type { AnswerKey } from '../answers.ts';
import { type Dimension, isBracketTrap, likelyUcum, parseUcum, type Unit } from '../ucum.ts';
import { type Element, excerpt, field, numeralOf, textOf } from './element.ts';
import { exactOf, writtenAs } from './numeral.ts';
import { ask, note, stop } from './reading.ts';

export const UCUM_SYSTEM = 'http://unitsofmeasure.org';

type UnitKey = Extract<AnswerKey, `unit.${string}`>;

/** An amount in its dimension's own unit: mL, mL/h, kcal/mL, kg, cm, French. */
export type Amount = {
  readonly value: Exact;
  readonly unit: Unit;
  /** The number alone, in the unit that was written. */
  readonly number: Exact;
  /** As it was written, for people: `1.5 cal/mL`. */
  readonly written: string;
};

export const exactlyFraction = (value: Exact): Fraction | null => {
  if (compare(value, of(1_000_000_000)) > 0) return null;
  const shown = toFraction(value);
  return compare(ofFraction(shown), value) === 0 ? shown : null;
};

/** As many digits as matter to a reader; a boundary is never decided on it. */
export const shown = (value: Exact): string => decimalText(value, 8);

/** Why the unit as written cannot be used; null where it can. */
function unitTrouble(element: Element, wanted: readonly Dimension[]): string | null {
  const system = textOf(element, 'system');
  const code = textOf(element, 'code');
  const display = textOf(element, 'unit');
  if (code === null && display === null) return 'fhir/unit-missing';
  if (system !== null && system !== UCUM_SYSTEM) return 'fhir/unit-system-unknown';
  if (code !== null && system === null) return 'fhir/unit-without-system';
  const written = code ?? display ?? '';
  const unit = parseUcum(written);
  if (unit === null) return isBracketTrap(written) ? 'fhir/unit-multiplies' : 'fhir/unit-not-valid';
  return wanted.includes(unit.dimension) ? null : 'fhir/unit-of-another-kind';
}

/** The display beside the code is for people; where it is itself a valid code of another size, one of them is wrong. */
function displayDisagrees(element: Element, unit: Unit): string | null {
  const display = textOf(element, 'unit');
  const said = display === null ? null : parseUcum(display);
  const same =
    said === null || (said.dimension === unit.dimension && compare(said.factor, unit.factor) === 0);
  return same ? null : display;
}

function unitOf(element: Element, wanted: readonly Dimension[], key: UnitKey): Unit | null {
  const written = textOf(element, 'code') ?? textOf(element, 'unit') ?? '';
  const trouble = unitTrouble(element, wanted);
  const unit = trouble === null ? parseUcum(written) : null;
  const display = unit === null ? null : displayDisagrees(element, unit);
  if (unit !== null && display === null) {
    if (textOf(element, 'code') === null) note(element, 'FH7', 'fhir/unit-by-display', { unit: written });
    return unit;
  }
  const likely = unit === null ? likelyUcum(written) : display;
  const answer = ask(element, 'FH7', trouble ?? 'fhir/unit-display-disagrees', key, {
    value: excerpt(field(element, 'value')?.json ?? ''),
    unit: written,
    system: textOf(element, 'system'),
    ...(display === null ? {} : { display }),
    likely,
  });
  const meant = answer === null ? null : parseUcum(answer);
  if (meant === null || wanted.includes(meant.dimension)) return meant;
  stop(element, 'FH7', 'fhir/unit-of-another-kind', { unit: answer, confirm: key });
  return null;
}

function digitsOf(element: Element): Exact | null {
  const numeral = numeralOf(element, 'value');
  if (numeral === null) {
    if (field(element, 'value') === null) stop(element, 'FH8', 'fhir/value-missing');
    return null;
  }
  const value = exactOf(numeral);
  if (value === null) stop(element, 'FH8', 'fhir/number-too-long', { value: excerpt(numeral) });
  return value;
}

/**
 * The exact amount of a Quantity in one of the wanted dimensions, or null where it cannot be told; then the reason is on
 * record.
 * @param key the answer that says in which unit it is meant.
 */
export function amountOf(element: Element | null, wanted: readonly Dimension[], key: UnitKey): Amount | null {
  if (element === null) return null;
  const comparator = textOf(element, 'comparator');
  if (comparator !== null) {
    stop(element, 'FH8', 'fhir/comparator', { comparator, value: excerpt(field(element, 'value')?.json) });
    return null;
  }
  const value = digitsOf(element);
  const unit = unitOf(element, wanted, key);
  if (value === null || unit === null) return null;
  const written = `${writtenAs(numeralOf(element, 'value')!)} ${textOf(element, 'code') ?? unit.code}`;
  return { value: times(value, unit.factor), unit, number: value, written };
}

/** [FH8] Whether it is more than nothing and can have been meant at all; if not, that is a stop. */
export function isMeant(element: Element, amount: Amount, kind: CredibleKind): boolean {
  const { value, written } = amount;
  if (compare(value, NOUGHT) <= 0) {
    stop(element, 'FH8', 'fhir/not-positive', { written });
    return false;
  }
  const limits = CREDIBLE[kind];
  const read = compare(value, of('1000000000')) <= 0 ? toFraction(value) : null;
  if (read !== null && isCredible(read, limits)) return true;
  stop(element, 'FH8', 'fhir/not-credible', { written, unit: limits.unit, most: limits.most.n });
  return false;
}

/** The rate that a Ratio is (`240 mL` to `4 h`), in mL/h. */
export function rateOfRatio(ratio: Element): Amount | null {
  const top = amountOf(field(ratio, 'numerator'), ['volume'], 'unit.volume');
  const bottom = amountOf(field(ratio, 'denominator'), ['time'], 'unit.time');
  if (top === null || bottom === null) {
    if (field(ratio, 'numerator') === null || field(ratio, 'denominator') === null) {
      stop(ratio, 'FH8', 'fhir/value-missing');
    }
    return null;
  }
  const written = `${top.written} : ${bottom.written}`;
  if (compare(bottom.value, NOUGHT) <= 0) {
    stop(ratio, 'FH8', 'fhir/not-positive', { written });
    return null;
  }
  const value = over(top.value, bottom.value);
  return { value, unit: parseUcum('mL/h')!, number: value, written };
}
