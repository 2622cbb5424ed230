/**
 * Which criteria of which body are met?
 * NICE and ASPEN name different ones, and part at a BMI of exactly 18.5, so both are always counted and both are shown.
 * What was not given is named: a criterion that nobody asked about is not one that is absent.
 */
import { compare, type Exact, less, of } from '../exact.ts';

export type Electrolytes = 'normal' | 'minimally-low' | 'moderately-or-significantly-low';
export type Grade = 'none' | 'mild' | 'moderate' | 'severe';

/** Null is not known. Percentages are of usual weight or of need; times in days and months. */
export type Findings = {
  readonly bmi: Exact | null;
  readonly lossPercent: Exact | null;
  readonly lossMonths: Exact | null;
  readonly daysOfLittleIntake: Exact | null;
  readonly intakePercentOfNeed: Exact | null;
  readonly daysOfPoorIntake: Exact | null;
  readonly acuteIllness: boolean | null;
  readonly electrolytes: Electrolytes | null;
  readonly alcoholOrDrugs: boolean | null;
  readonly fatLoss: Grade | null;
  readonly muscleLoss: Grade | null;
  readonly higherRiskDisease: Grade | null;
};

export type Count = {
  readonly major: readonly string[];
  readonly minor: readonly string[];
  readonly notGiven: readonly string[];
};

const over = (value: Exact | null, limit: string): boolean => value !== null && compare(value, of(limit)) > 0;
const under = (value: Exact | null, limit: string): boolean => value !== null && less(value, of(limit));
const atLeast = (value: Exact | null, limit: string): boolean => value !== null && !less(value, of(limit));

type Criterion = { readonly name: string; readonly known: boolean; readonly met: boolean };
const criterion = (name: string, known: boolean, met: boolean): Criterion => ({
  name,
  known,
  met: known && met,
});
const met = (list: readonly Criterion[]): readonly string[] =>
  list.filter((one) => one.met).map((one) => one.name);
const unknown = (list: readonly Criterion[]): readonly string[] =>
  list.filter((one) => !one.known).map((one) => one.name);

const counted = (major: readonly Criterion[], minor: readonly Criterion[]): Count => ({
  major: met(major),
  minor: met(minor),
  notGiven: [...new Set([...unknown(major), ...unknown(minor)])],
});

/** NICE CG32: one major or two minor make high risk. Loss counts if it took at most six months, or if no time is known. */
export function nice(given: Findings): Count {
  const { bmi, lossPercent, lossMonths, daysOfLittleIntake: days, electrolytes, alcoholOrDrugs } = given;
  const inTime = !over(lossMonths, '6');
  const low = electrolytes !== null && electrolytes !== 'normal';
  return counted(
    [
      criterion('bmi', bmi !== null, under(bmi, '16')),
      criterion('weight-loss', lossPercent !== null, inTime && over(lossPercent, '15')),
      criterion('little-intake', days !== null, over(days, '10')),
      criterion('low-electrolytes', electrolytes !== null, low),
    ],
    [
      criterion('bmi', bmi !== null, under(bmi, '18.5')),
      criterion('weight-loss', lossPercent !== null, inTime && over(lossPercent, '10')),
      criterion('little-intake', days !== null, over(days, '5')),
      criterion('alcohol-or-drugs', alcoholOrDrugs !== null, alcoholOrDrugs === true),
    ],
  );
}

/** NICE's extreme cases, in which it starts at 5 kcal/kg. */
export const niceExtreme = ({ bmi, daysOfLittleIntake }: Findings): boolean =>
  under(bmi, '14') || over(daysOfLittleIntake, '15');

/** A loss is compared with the figure of its own stretch of time: one month, three, six. */
function aspenLoss({ lossPercent: l, lossMonths: m }: Findings): 'major' | 'minor' | null {
  if (l === null) return null;
  if (atLeast(l, '7.5') && m !== null && !over(m, '3')) return 'major';
  if (over(l, '10') && !over(m, '6')) return 'major';
  return atLeast(l, '5') && m !== null && !over(m, '1') ? 'minor' : null;
}

function aspenIntake(given: Findings): 'major' | 'minor' | null {
  const {
    daysOfLittleIntake: none,
    intakePercentOfNeed: p,
    daysOfPoorIntake: d,
    acuteIllness: acute,
  } = given;
  if (over(none, '7')) return 'major';
  if (under(p, '50') && ((acute === true && over(d, '5')) || over(d, '30'))) return 'major';
  if (atLeast(none, '5')) return 'minor';
  return under(p, '75') && ((acute === true && over(d, '7')) || over(d, '30')) ? 'minor' : null;
}

const graded = (grade: Grade | null, minor: readonly Grade[]): 'major' | 'minor' | null =>
  grade === 'severe' ? 'major' : grade !== null && minor.includes(grade) ? 'minor' : null;

/** ASPEN 2020: one severe item makes significant risk, two moderate ones moderate risk. */
export function aspen(given: Findings): Count {
  const { bmi, electrolytes } = given;
  const items: readonly (readonly [string, boolean, 'major' | 'minor' | null])[] = [
    ['bmi', bmi !== null, under(bmi, '16') ? 'major' : bmi !== null && !over(bmi, '18.5') ? 'minor' : null],
    ['weight-loss', given.lossPercent !== null, aspenLoss(given)],
    [
      'little-intake',
      given.daysOfLittleIntake !== null || given.intakePercentOfNeed !== null,
      aspenIntake(given),
    ],
    [
      'low-electrolytes',
      electrolytes !== null,
      electrolytes === 'moderately-or-significantly-low'
        ? 'major'
        : electrolytes === 'minimally-low'
          ? 'minor'
          : null,
    ],
    ['fat-loss', given.fatLoss !== null, graded(given.fatLoss, ['moderate'])],
    ['muscle-loss', given.muscleLoss !== null, graded(given.muscleLoss, ['mild', 'moderate'])],
    ['higher-risk-disease', given.higherRiskDisease !== null, graded(given.higherRiskDisease, ['moderate'])],
  ];
  return counted(
    items.map(([name, known, grade]) => criterion(name, known, grade === 'major')),
    items.map(([name, known, grade]) => criterion(name, known, grade === 'minor')),
  );
}

/** `high` from one major or two minor; short of that, criteria that were not given keep it from being ruled out. */
export const niceBand = (given: Findings): 'extreme' | 'high' | 'not-high' | 'not-high-so-far' => {
  const { major, minor, notGiven } = nice(given);
  if (niceExtreme(given)) return 'extreme';
  if (major.length >= 1 || minor.length >= 2) return 'high';
  return notGiven.length === 0 ? 'not-high' : 'not-high-so-far';
};

export const aspenBand = (
  given: Findings,
): 'significant' | 'moderate' | 'below-moderate' | 'below-moderate-so-far' => {
  const { major, minor, notGiven } = aspen(given);
  if (major.length >= 1) return 'significant';
  if (minor.length >= 2) return 'moderate';
  return notGiven.length === 0 ? 'below-moderate' : 'below-moderate-so-far';
};
