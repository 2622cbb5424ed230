/** How are single values of a standing written for a program? Null stays null: nobody knows, or it is not so. */
import type { Fraction } from '../../base/fraction.ts';
import type { Instant } from '../../base/instant.ts';
import type { Volume } from '../../base/volume.ts';
import type { Zone } from '../../base/zone.ts';
import { showInstant } from '../../base/zone.ts';
import { jsonNumber } from '../number.ts';
import { type Json, mlOf } from '../plan/json.ts';

export const maybe = <T>(value: T | null, write: (value: T) => Json): Json =>
  value === null ? null : write(value);

export const moments =
  (zone: Zone) =>
  (at: Instant): string =>
    showInstant(at, zone);

export type Moment = (at: Instant) => string;

export const maybeMl = (volume: Volume | null): Json => maybe(volume, mlOf);
export const numberOf = (value: Fraction): number => jsonNumber(value, 4);
