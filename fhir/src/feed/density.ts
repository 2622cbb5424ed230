/**
 * How much energy is in a mL, by the order's own words?
 * The unit that orders often carry, `cal/mL`, is by UCUM the small calorie: read by the letter, a thousandth of what was
 * surely meant. It is never raised in silence: the letter and the likely meaning are shown, and a person says which.
 */
import type { Fraction } from '@feedwright/core/base/fraction';
import { compare, type Exact, of, ofFraction, over, times } from '@feedwright/core/reckon/exact';
import { type Element, field } from '../read/element.ts';
import { type Amount, amountOf, exactlyFraction, isMeant, shown } from '../read/quantity.ts';
import { answered, answeredInstead, stopUntil } from '../read/reading.ts';

export type Density = {
  /** As the order is to be read: what a person answered, else the letter. */
  readonly kcalPerMl: Fraction | null;
  /** The number as it is written, whatever its unit; for comparing with the free text. */
  readonly written: Amount | null;
  /** Whether a person said, or nobody had to. */
  readonly settled: boolean;
  readonly likely: Exact | null;
};

/**
 * Pure fat gives 9 kcal a gram (the general Atwater factor, I7 in docs/sources.md) and is lighter than water: nothing pourable has
 * more in a mL. No feed that is sold or mixed has less than a tenth (common practice).
 */
const MOST = of(9);
const LEAST = of('1/10');
const THOUSAND = of(1000);

const isPossible = (kcalPerMl: Exact): boolean =>
  compare(kcalPerMl, LEAST) >= 0 && compare(kcalPerMl, MOST) <= 0;

const likelyOf = (letter: Exact): Exact | null =>
  [times(letter, THOUSAND), over(letter, THOUSAND)].find(isPossible) ?? null;

const NONE: Density = { kcalPerMl: null, written: null, settled: false, likely: null };

function impossible(element: Element, written: Amount): Density {
  const likely = likelyOf(written.value);
  // [FH6] Before this is settled no plan may be thought of.
  const answer = stopUntil(element, 'FH6', 'fhir/density-impossible', 'energyKcalPerMl', {
    written: written.written,
    kcalPerMl: shown(written.value),
    likely: likely === null ? null : shown(likely),
  });
  return {
    kcalPerMl: answer ?? exactlyFraction(written.value),
    written,
    settled: answer !== null,
    likely,
  };
}

/** [FH6] The energy density of an enteral formula. */
export function densityOf(formula: Element): Density {
  const element = field(formula, 'caloricDensity');
  const amount = amountOf(element, ['energy/volume'], 'unit.density');
  if (element === null || amount === null || !isMeant(element, amount, 'density')) {
    return { ...NONE, kcalPerMl: answered(formula, 'energyKcalPerMl') };
  }
  if (!isPossible(amount.value)) return impossible(element, amount);
  const answer = answeredInstead(
    element,
    'energyKcalPerMl',
    amount.written,
    (said) => compare(ofFraction(said), amount.value) === 0,
  );
  return {
    kcalPerMl: answer ?? exactlyFraction(amount.value),
    written: amount,
    settled: true,
    likely: amount.value,
  };
}
