/** How many containers a day, and what do whole ones deliver? */
import { assumed, choice, gives, optional, quantity } from '../asking/asks.ts';
import { energyGoal, perContainer, proteinGoal, volume } from '../asking/usual-asks.ts';
import { calculation, type Known, type Line, type Sheet } from '../declare.ts';
import { type Exact, minus, of, over, rounded, times } from '../exact.ts';

const contents = {
  volumeMl: gives('V', 'mL'),
  energyKcal: gives('E', 'kcal'),
  proteinG: gives('P', 'g'),
  formulaWaterMl: gives('Vw', 'mL'),
};

type PerContainer = { readonly [K in keyof typeof perContainer]: Known | null };

/** What so many containers hold, as far as it is known. */
function contentsOf(n: Known, given: PerContainer, sheet: Sheet<keyof typeof contents>): readonly Line[] {
  const {
    containerMl: c,
    energyKcalPerContainer: e,
    proteinGPerContainer: p,
    waterMlPerContainer: w,
  } = given;
  return [
    ...(c === null ? [] : [sheet.number('volumeMl', 'V = n × c', [n, c], times(n, c))]),
    ...(e === null ? [] : [sheet.number('energyKcal', 'E = n × e', [n, e], times(n, e))]),
    ...(p === null ? [] : [sheet.number('proteinG', 'P = n × p', [n, p], times(n, p))]),
    ...(w === null ? [] : [sheet.number('formulaWaterMl', 'Vw = n × w', [n, w], times(n, w))]),
  ];
}

export const containersHold = calculation({
  name: 'delivered-by-containers',
  also: ['cans-deliver', 'delivered-by-cans', 'containers-hold', 'cans'],
  asks: {
    containers: quantity('n', '1', ['0.01', '100'], 'cans', 'cartons', 'count', 'number', 'n'),
    ...perContainer,
  },
  gives: contents,
  equations: ['V = n × c', 'E = n × e', 'P = n × p', 'Vw = n × w'],
  sources: ['E2'],
  rule: 'RK6',
  example: { cans: '3.5', energyPerContainer: '240 kcal', proteinPerContainer: '10 g' },
  compute: (given, sheet) => contentsOf(given.containers, given, sheet),
});

const STEPS = {
  up: ['up', '1'],
  nearest: ['half-up', '1'],
  down: ['down', '1'],
  half: ['up', '0.5'],
  exact: null,
} as const;

function whole(n: Exact, how: keyof typeof STEPS): Exact {
  const step = STEPS[how];
  return step === null ? n : rounded(n, of(step[1]), step[0]);
}

export const containersADay = calculation({
  name: 'containers-a-day',
  also: ['cans-per-day', 'containers-per-day', 'cans-a-day', 'containers-needed', 'cans-needed'],
  asks: {
    volumeMl: optional(volume),
    energyKcal: optional(energyGoal),
    proteinG: optional(proteinGoal),
    ...perContainer,
    whole: assumed(
      choice(
        'whole',
        {
          up: ['ceil', 'whole'],
          nearest: ['round'],
          down: ['floor'],
          half: ['halves'],
          exact: ['no', 'none'],
        },
        'containersRounded',
      ),
      'up',
      'nearest',
      'down',
      'half',
      'exact',
    ),
  },
  oneOf: [
    [
      ['volumeMl', 'containerMl'],
      ['energyKcal', 'energyKcalPerContainer'],
      ['proteinG', 'proteinGPerContainer'],
    ],
  ],
  gives: {
    containers: gives('n', '1', '0.01'),
    wholeContainers: gives('n′', '1', '0.01'),
    ...contents,
    leftOverMl: gives('L', 'mL'),
  },
  equations: [
    'n = V / c  or  n = E / e  or  n = P / p',
    'n′ = n to whole containers',
    'V = n′ × c',
    'E = n′ × e',
    'P = n′ × p',
  ],
  sources: ['E2'],
  rule: 'RK6',
  example: {
    goal: '1250 kcal',
    energyPerContainer: '500 kcal/can',
    proteinPerContainer: '20 g/can',
    whole: 'half',
  },
  compute: (given, sheet) => {
    const { volumeMl: V, energyKcal: E, proteinG: P, containerMl: c } = given;
    const { energyKcalPerContainer: e, proteinGPerContainer: p } = given;
    const [equation, goal, each] =
      V !== null && c !== null
        ? (['n = V / c', V, c] as const)
        : E !== null && e !== null
          ? (['n = E / e', E, e] as const)
          : (['n = P / p', P as Known, p as Known] as const);
    if (each.n === 0n) return sheet.refuse('proteinGPerContainer', 'reckon/nothing-in-it');
    const n = sheet.number('containers', equation, [goal, each], over(goal, each));
    const used = sheet.number(
      'wholeContainers',
      'n′ = n to whole containers',
      [n],
      whole(n, given.whole),
      'arithmetic',
    );
    const left =
      V === null || c === null
        ? []
        : [
            sheet.number(
              'leftOverMl',
              'L = n′ × c − V',
              [used, c, V],
              minus(times(used, c), V),
              'arithmetic',
            ),
          ];
    return [n, used, ...contentsOf(used, given, sheet), ...left];
  },
});
