/** [OR3] Could every number of the order have been meant? Until they could, nothing is worked out from them. */
import { type Fraction, fraction } from '../../base/fraction.ts';
import { type Duration, HOUR, MINUTE } from '../../base/instant.ts';
import { inMl, inMlPerHour, type Rate, type Volume } from '../../base/volume.ts';
import { compare, ofFraction, toFraction } from '../../reckon/exact.ts';
import { CREDIBLE, type CredibleKind, isCredible, MOST_ITEMS } from '../credible.ts';
import { strengthOf } from '../mixture.ts';
import type { Advancement, Order, Problem, Regimen, WaterGiven } from '../order.ts';
import { mixturePerDay } from '../per-day.ts';
import { problem } from '../problem.ts';

type Path = readonly (string | number)[];
type Numbered = { readonly path: Path; readonly value: Fraction; readonly kind: CredibleKind };

const number = (path: Path, value: Fraction | null, kind: CredibleKind): readonly Numbered[] =>
  value === null ? [] : [{ path, value, kind }];
const atRate = (path: Path, rate: Rate | null): readonly Numbered[] =>
  number(path, rate === null ? null : inMlPerHour(rate), 'rate');
const ofVolume = (path: Path, volume: Volume | null, kind: CredibleKind): readonly Numbered[] =>
  number(path, volume === null ? null : inMl(volume), kind);
const inHours = (path: Path, lasts: Duration, kind: CredibleKind): readonly Numbered[] =>
  number(path, fraction(lasts, HOUR), kind);
const inMinutes = (path: Path, lasts: Duration | null, kind: CredibleKind): readonly Numbered[] =>
  number(path, lasts === null ? null : fraction(lasts, MINUTE), kind);

const ADVANCE = ['regimen', 'advance'] as const;
const everyStep = (advance: Advancement<unknown>): readonly Numbered[] =>
  inHours([...ADVANCE, 'everyHours'], advance.every, 'interval');

const rateSteps = (advance: Advancement<Rate> | null): readonly Numbered[] =>
  advance === null
    ? []
    : [
        ...(['start', 'step', 'goal'] as const).flatMap((of) =>
          atRate([...ADVANCE, `${of}MlPerHour`], advance[of]),
        ),
        ...everyStep(advance),
      ];

const volumeSteps = (advance: Advancement<Volume> | null): readonly Numbered[] =>
  advance === null
    ? []
    : [
        ...(['start', 'step', 'goal'] as const).flatMap((of) =>
          ofVolume([...ADVANCE, `${of}Ml`], advance[of], 'feed'),
        ),
        ...everyStep(advance),
      ];

function inRegimen(regimen: Regimen): readonly Numbered[] {
  const at = (field: string): Path => ['regimen', field];
  switch (regimen.kind) {
    case 'continuous':
      return [
        ...atRate(at('rateMlPerHour'), regimen.rate.rate),
        ...(regimen.perDay === null
          ? []
          : inHours(['regimen', 'perDay', 'hours'], regimen.perDay.lasts, 'hoursPerDay')),
        ...rateSteps(regimen.advance),
      ];
    case 'cyclic':
      return [
        ...atRate(at('rateMlPerHour'), regimen.rate?.rate ?? null),
        ...ofVolume(at('volumeMl'), regimen.volume?.volume ?? null, 'volumePerDay'),
        ...rateSteps(regimen.advance),
      ];
    case 'intermittent':
    case 'bolus':
      return [
        ...ofVolume(at('volumeMl'), regimen.volume.volume, 'feed'),
        ...inMinutes(at('minutes'), regimen.lasts, 'minutes'),
        ...(regimen.kind === 'bolus'
          ? regimen.meals.flatMap((meal, i) =>
              number(['regimen', 'meals', i, 'ifEatenLessThan'], meal.ifEatenLessThan, 'share'),
            )
          : []),
        ...volumeSteps(regimen.advance),
      ];
    case 'volume-targeted':
      return [
        ...ofVolume(at('volumeMlPerDay'), regimen.volumePerDay.volume, 'volumePerDay'),
        ...atRate(at('baseRateMlPerHour'), regimen.baseRate.rate),
        ...atRate(at('mostRateMlPerHour'), regimen.mostRate?.rate ?? null),
        ...rateSteps(regimen.advance),
      ];
  }
}

function inWater(given: WaterGiven, i: number): readonly Numbered[] {
  const at = (field: string): Path => ['water', 'given', i, field];
  if (given.kind === 'around-feeds') {
    return [
      ...ofVolume(at('beforeMl'), given.before, 'doseOrNone'),
      ...ofVolume(at('afterMl'), given.after, 'doseOrNone'),
    ];
  }
  return [
    ...ofVolume(at('volumeMl'), given.volume, 'dose'),
    ...(given.kind === 'times' ? [] : inHours(at('everyHours'), given.every, 'interval')),
  ];
}

const besideFeed = (order: Order): readonly Numbered[] => [
  ...(order.water?.given ?? []).flatMap(inWater),
  ...order.medicines.flatMap((medicine, i) => [
    ...ofVolume(['medicines', i, 'volumeMl'], medicine.volume, 'doseOrNone'),
    ...inMinutes(['medicines', i, 'holdBeforeMinutes'], medicine.holdBefore, 'minutesOrNone'),
    ...inMinutes(['medicines', i, 'holdAfterMinutes'], medicine.holdAfter, 'minutesOrNone'),
    ...ofVolume(['medicines', i, 'waterBeforeMl'], medicine.waterBefore, 'doseOrNone'),
    ...ofVolume(['medicines', i, 'waterAfterMl'], medicine.waterAfter, 'doseOrNone'),
  ]),
  ...order.modules.flatMap((module, i) => [
    ...ofVolume(['modules', i, 'waterMl'], module.water, 'doseOrNone'),
    ...number(['modules', i, 'energyKcal'], module.energyKcal, 'energy'),
    ...number(['modules', i, 'proteinG'], module.proteinG, 'protein'),
  ]),
];

const ofPatient = ({ patient, feed, access, needs, ...order }: Order): readonly Numbered[] => [
  ...number(['patient', 'dosingWeight', 'kg'], patient.dosingWeight?.kg ?? null, 'weight'),
  ...number(['patient', 'heightCm'], patient.heightCm, 'height'),
  ...number(['feed', 'strength'], feed?.strength ?? null, 'strength'),
  ...number(['feed', 'statedKcalPerMl'], feed?.statedKcalPerMl ?? null, 'density'),
  ...number(['access', 'french'], access?.french ?? null, 'french'),
  ...atRate(['mostRateMlPerHour'], order.mostRate),
  ...ofVolume(['mostVolumeMlPerDay'], order.mostVolumePerDay, 'volumePerDay'),
  ...ofVolume(['fluidLimitMlPerDay'], order.fluidLimitPerDay, 'volumePerDay'),
  ...ofVolume(['intravenousMlPerDay'], order.intravenousPerDay, 'volumePerDayOrNone'),
  ...order.otherEnergy.flatMap((other, i) =>
    number(['otherEnergy', i, 'kcalPerDay'], other.kcalPerDay, 'energy'),
  ),
  ...number(['needs', 'energyKcalPerDay'], needs.energyKcalPerDay, 'energy'),
  ...number(['needs', 'proteinGPerDay'], needs.proteinGPerDay, 'protein'),
  ...ofVolume(['needs', 'waterMlPerDay'], needs.waterPerDay, 'volumePerDay'),
];

const notCredible = (path: Path, value: Fraction, kind: CredibleKind): Problem =>
  problem('order/not-credible', path, { value, ...CREDIBLE[kind] });

const tooMany = (path: Path, found: readonly unknown[], most: number): readonly Problem[] =>
  found.length <= most
    ? []
    : [
        problem('order/not-credible', path, {
          value: fraction(found.length),
          most: fraction(most),
          unit: '1',
        }),
      ];

function longLists({ regimen, water, medicines, modules }: Order): readonly Problem[] {
  const lists: readonly (readonly [Path, readonly unknown[], number])[] = [
    [['medicines'], medicines, MOST_ITEMS.medicines],
    [['modules'], modules, MOST_ITEMS.modules],
    [['water', 'given'], water?.given ?? [], MOST_ITEMS.given],
    [['regimen', 'times'], regimen !== null && 'times' in regimen ? regimen.times : [], MOST_ITEMS.times],
    ...medicines.map((medicine, i) => [['medicines', i, 'times'], medicine.times, MOST_ITEMS.times] as const),
    ...modules.map((module, i) => [['modules', i, 'times'], module.times, MOST_ITEMS.times] as const),
    ...(water?.given ?? []).map(
      (given, i) =>
        [
          ['water', 'given', i, 'times'],
          given.kind === 'times' ? given.times : [],
          MOST_ITEMS.times,
        ] as const,
    ),
  ];
  return lists.flatMap(([path, found, most]) => tooMany(path, found, most));
}

/** Each number may be credible, and yet what they come to together in a day is not. */
function dayNotCredible(order: Order): readonly Problem[] {
  const perDay = order.regimen === null ? null : mixturePerDay(order.regimen, strengthOf(order));
  const { most } = CREDIBLE.volumePerDay;
  return perDay === null || compare(perDay.ml, ofFraction(most)) <= 0
    ? []
    : [notCredible(['regimen'], toFraction(perDay.ml), 'volumePerDay')];
}

export function credibleNumbers(order: Order): readonly Problem[] {
  const numbers = [
    ...(order.regimen === null ? [] : inRegimen(order.regimen)),
    ...besideFeed(order),
    ...ofPatient(order),
  ];
  const found = [
    ...numbers
      .filter(({ value, kind }) => !isCredible(value, CREDIBLE[kind]))
      .map(({ path, value, kind }) => notCredible(path, value, kind)),
    ...longLists(order),
  ];
  return found.length > 0 ? found : dayNotCredible(order);
}
