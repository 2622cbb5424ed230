/** What does the Device beside the order say of the tube? Its size, and what it calls itself, for comparison only. */
import type { Fraction } from '@feedwright/core/base/fraction';
import type { DeviceKind } from '@feedwright/core/order/order';
import { compare } from '@feedwright/core/reckon/exact';
import { conceptOf, namesOf } from '../read/coded.ts';
import { eachOf, items, textOf } from '../read/element.ts';
import { amountOf, exactlyFraction, isMeant } from '../read/quantity.ts';
import { answered, ask } from '../read/reading.ts';
import { type Subject, theirs } from './subject.ts';

const KINDS: readonly (readonly [RegExp, DeviceKind])[] = [
  [/naso-?jejunal/i, 'nasojejunal'],
  [/naso-?duodenal/i, 'nasoduodenal'],
  [/naso-?gastric/i, 'nasogastric'],
  [/oro-?gastric/i, 'orogastric'],
  [/gastro-?jejun/i, 'gastro-jejunal'],
  [/gastrostomy.*button|button.*gastrostomy/i, 'gastrostomy-button'],
  [/gastrostomy/i, 'gastrostomy'],
  [/jejunostomy/i, 'jejunostomy'],
];

const kindOf = (name: string): DeviceKind | null => KINDS.find(([shape]) => shape.test(name))?.[1] ?? null;

export type Tube = {
  readonly french: Fraction | null;
  /** The kind that its name speaks of; null where it names none, or several. */
  readonly called: DeviceKind | null;
};

const FRENCH = '[Ch]';

/** [FH10] Two tubes of two sizes are a question. */
export function tubeOf(subject: Subject): Tube {
  const devices = theirs(subject, 'Device');
  const sizes = devices
    .flatMap((device) => items(device, 'property').flatMap((property) => eachOf(property, 'valueQuantity')))
    .filter((size) => textOf(size, 'code') === FRENCH)
    .flatMap((size) => {
      const amount = amountOf(size, ['gauge'], 'unit.body');
      return amount !== null && isMeant(size, amount, 'french') ? [amount.value] : [];
    });
  const names = devices.flatMap((device) =>
    eachOf(device, 'type').flatMap((type) => namesOf(conceptOf(type))),
  );
  const kinds = [...new Set(names.map(kindOf).filter((kind) => kind !== null))];
  const [size] = sizes;
  const { order } = subject.document;
  const alike = size !== undefined && sizes.every((one) => compare(one, size) === 0);
  return {
    called: kinds.length === 1 ? kinds[0]! : null,
    french: alike
      ? exactlyFraction(size)
      : size === undefined
        ? answered(order, 'french')
        : ask(order, 'FH10', 'fhir/sizes-differ', 'french'),
  };
}
