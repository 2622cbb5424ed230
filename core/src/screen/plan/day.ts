/** What does the feeding day come to? Formula, energy, protein and water, against what was ordered and is needed. */
import { inMl } from '../../base/volume.ts';
import type { DayTotals } from '../../plan/plan.ts';
import { BLANK, type Line, line } from '../line.ts';
import { showFraction, showVolume } from '../number.ts';
import { workingsLines } from '../working-text.ts';
import { moment, type Page } from './page.ts';

/** What is ordered is the mixture, so a diluted feed shows both. */
const formulaText = ({ formula, mixture }: DayTotals, { words }: Page): string =>
  formula.value === mixture.value
    ? showVolume(formula.value)
    : words.plan.inMixture(showVolume(formula.value), showVolume(mixture.value));

export function dayLines(day: DayTotals, page: Page): readonly Line[] {
  const { plan } = page.words;
  const need = (amount: string | null): string => (amount === null ? '' : ` (${plan.needed(amount)})`);
  const kcal = `${showFraction(day.energyKcal.value, 0)} kcal`;
  const protein = `${showFraction(day.proteinG.value, 1)} g`;
  const ordered = day.ordered === null ? '' : ` (${plan.ordered(showVolume(day.ordered.value))})`;
  const { formula, energyKcal, proteinG, water } = day;
  const shown = [formula, energyKcal, proteinG, water.total, ...(day.ordered === null ? [] : [day.ordered])];
  const workings = workingsLines(
    shown.map((one) => one.working),
    page,
  );
  const needs = {
    energy: day.needs.energyKcal === null ? null : `${showFraction(day.needs.energyKcal, 0)} kcal`,
    protein: day.needs.proteinG === null ? null : `${showFraction(day.needs.proteinG, 1)} g`,
    water: day.needs.water === null ? null : `${showFraction(inMl(day.needs.water), 0)} mL`,
  };
  return [
    line(`${plan.day}  ${plan.within(moment(day.day.from, page), moment(day.day.until, page))}`, 'heading'),
    line(`  ${plan.formula} ${formulaText(day, page)}${ordered}`),
    line(`  ${plan.energy} ${kcal}${need(needs.energy)}, ${plan.protein} ${protein}${need(needs.protein)}`),
    line(
      `  ${plan.water(showVolume(day.water.formula.value), showVolume(day.water.flushes.value), showVolume(day.water.total.value))}${need(needs.water)}`,
    ),
    ...(page.workings ? workings.map((text) => line(`      ${text}`, 'quiet')) : []),
    BLANK,
  ];
}
