/**
 * [OR2] Is everything there that an order for feeding by tube needs? What is missing is named, one problem each.
 * What a complete order holds: ASPEN 2009 order form (S2), ASPEN safe practices 2017 (S1, from memory).
 */
import type { Order, Problem } from '../order.ts';
import { problem } from '../problem.ts';
import type { Review } from '../review.ts';

type Path = Problem['path'];

const missing = (what: string, path: Path, is: boolean, data: Problem['data'] = {}): readonly Problem[] =>
  is ? [problem('order/missing', path, { what, ...data })] : [];

/** The identifiers that are there: a name, a date of birth, each number. */
const identifiersOf = ({ patient }: Order): number =>
  (patient.name === null ? 0 : 1) + (patient.birthDate === null ? 0 : 1) + patient.identifiers.length;

const TWO_IDENTIFIERS = 2;

function ofPatient({ order, isChild }: Review): readonly Problem[] {
  const found = identifiersOf(order);
  const weight = order.patient.dosingWeight;
  return [
    ...missing('two-identifiers', ['patient', 'identifiers'], found < TWO_IDENTIFIERS, { found }),
    // A child's limits go by weight, and the weight by the day.
    ...missing('dosing-weight', ['patient', 'dosingWeight'], isChild === true && weight === null),
    ...missing(
      'dosing-weight-date',
      ['patient', 'dosingWeight', 'on'],
      isChild === true && weight?.on === null,
    ),
  ];
}

function ofAccess({ order, feedLumen }: Review): readonly Problem[] {
  const { access } = order;
  if (access === null) return missing('access-device', ['access'], true);
  const goesDown = order.medicines.length > 0 || order.modules.length > 0;
  const at = access.lumens.findIndex((lumen) => lumen.name === access.feedBy);
  return [
    ...missing('feed-lumen', ['access', 'feedBy'], access.feedBy === null),
    ...missing('tip-site', ['access', 'lumens', at, 'tip'], feedLumen?.tip === null, {
      lumen: feedLumen?.name,
    }),
    ...missing('medicine-lumen', ['access', 'medicineBy'], goesDown && access.medicineBy === null),
  ];
}

function ofRegimen({ regimen }: Order): readonly Problem[] {
  switch (regimen?.kind) {
    case undefined:
      return missing('regimen', ['regimen'], true);
    case 'cyclic':
      return missing('rate-or-volume', ['regimen'], regimen.rate === null && regimen.volume === null);
    case 'intermittent':
      return missing('times', ['regimen', 'times'], regimen.times.length === 0);
    case 'bolus':
      return missing('times', ['regimen', 'times'], regimen.times.length + regimen.meals.length === 0);
    default:
      return [];
  }
}

const ofWater = ({ water }: Order): readonly Problem[] => [
  ...missing('water', ['water'], water === null),
  ...missing('water-amount', ['water', 'given'], water?.given.length === 0),
];

const noTimes = (list: 'medicines' | 'modules', order: Order): readonly Problem[] =>
  order[list].flatMap(({ name, times }, i) =>
    missing('times', [list, i, 'times'], times.length === 0, { of: name }),
  );

export const complete = (review: Review): readonly Problem[] => [
  ...ofPatient(review),
  ...missing('formula', ['feed'], review.order.feed === null),
  ...ofAccess(review),
  ...missing('method', ['method'], review.order.method === null),
  ...ofRegimen(review.order),
  ...ofWater(review.order),
  ...noTimes('medicines', review.order),
  ...noTimes('modules', review.order),
  ...missing('prescriber', ['prescriber'], review.order.prescriber === null),
  ...missing('prescribed-at', ['prescribedAt'], review.order.prescribedAt === null),
];
