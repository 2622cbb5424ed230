/** How is an exact amount written as a FHIR Quantity? As a decimal with its UCUM code; what no decimal can hold is said. */
import type { Fraction } from '@feedwright/core/base/fraction';
import { inMl, inMlPerHour, type Rate, type Volume } from '@feedwright/core/base/volume';
import type { Zone } from '@feedwright/core/base/zone';
import { compare, decimalText, of, ofFraction } from '@feedwright/core/reckon/exact';
import type { JsonObject } from '../dialect.ts';
import { UCUM_SYSTEM } from '../read/quantity.ts';

/** What is written so far: in which zone, and what found no place. */
export type Out = { readonly zone: Zone; readonly notCarried: Set<string> };

const MOST_PLACES = 9;

/** A decimal of at most nine places; where that is not the number itself, it is said that it was not carried exactly. */
function decimal(out: Out, value: Fraction, path: string): number {
  const text = decimalText(ofFraction(value), MOST_PLACES);
  if (compare(of(text), ofFraction(value)) !== 0) out.notCarried.add(`${path} (exactly)`);
  return Number(text);
}

export const quantity = (out: Out, value: Fraction, code: string, path: string): JsonObject => ({
  value: decimal(out, value, path),
  unit: code,
  system: UCUM_SYSTEM,
  code,
});

export const mL = (out: Out, volume: Volume, path: string, code = 'mL'): JsonObject =>
  quantity(out, inMl(volume), code, path);
export const mLPerHour = (out: Out, rate: Rate, path: string): JsonObject =>
  quantity(out, inMlPerHour(rate), 'mL/h', path);
