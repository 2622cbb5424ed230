/** What do the Observations beside the order say of weight and height? The latest counts, with its day. */
import type { Fraction } from '@feedwright/core/base/fraction';
import type { DayName } from '@feedwright/core/base/zone';
import type { CredibleKind } from '@feedwright/core/order/credible';
import type { Resource } from '../read/bundle.ts';
import { conceptOf } from '../read/coded.ts';
import { field } from '../read/element.ts';
import { dayWritten } from '../read/moment.ts';
import { amountOf, exactlyFraction, isMeant } from '../read/quantity.ts';
import { note } from '../read/reading.ts';

const LOINC = 'http://loinc.org';

type Sought = {
  readonly codes: readonly string[];
  readonly dimension: 'mass' | 'length';
  readonly credible: CredibleKind;
};

/** LOINC codes as the FHIR vital signs profiles use them (I2, I3 in docs/sources.md). */
export const WEIGHT: Sought = { codes: ['29463-7', '3141-9'], dimension: 'mass', credible: 'weight' };
export const HEIGHT: Sought = { codes: ['8302-2'], dimension: 'length', credible: 'height' };

export type Measured = { readonly value: Fraction; readonly on: DayName | null };

const isCoded = (observation: Resource, codes: readonly string[]): boolean =>
  conceptOf(field(observation, 'code')).codings.some(
    ({ system, code }) => system === LOINC && code !== null && codes.includes(code),
  );

function amountIn(observation: Resource, { dimension, credible }: Sought): Fraction | null {
  const quantity = field(observation, 'valueQuantity');
  const amount = amountOf(quantity, [dimension], 'unit.body');
  return quantity === null || amount === null || !isMeant(quantity, amount, credible)
    ? null
    : exactlyFraction(amount.value);
}

/** [FH19] The latest measurement of its kind; those before it are named as not used. */
export function measured(observations: readonly Resource[], sought: Sought): Measured | null {
  const found = observations
    .filter((observation) => isCoded(observation, sought.codes))
    .flatMap((observation) => {
      const value = amountIn(observation, sought);
      const on = dayWritten(field(observation, 'effectiveDateTime'));
      return value === null ? [] : [{ value, on, observation }];
    })
    .toSorted((a, b) => (b.on ?? '').localeCompare(a.on ?? ''));
  const [latest, ...older] = found;
  for (const { observation, on } of older) note(observation, 'FH19', 'fhir/older-measurement', { on });
  return latest === undefined ? null : { value: latest.value, on: latest.on };
}
