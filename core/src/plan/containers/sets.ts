/**
 * When is the administration set new, and what does filling it take? A set has a limit of its own, counted from when it was
 * put up; no container may span it. Filling the line takes its volume, which stays in it, and a little is spilt.
 */
import { after, type Duration, type Instant } from '../../base/instant.ts';
import { add, NOTHING, type Volume } from '../../base/volume.ts';
import { ARITHMETIC, input, shownVolume, type Worked, worked } from '../../base/working.ts';
import type { Order } from '../../order/order.ts';
import type { Local, Said } from '../local.ts';
import type { FixedLimit } from './limits.ts';

export type SetRule =
  /** By syringe: there is no set. */
  | { readonly kind: 'none' }
  /** A closed container is spiked with a set of its own. */
  | { readonly kind: 'with-each'; readonly limit: Said<Duration>; readonly prime: Worked<Volume> }
  /** From when it was put up; with the first container where there is none. */
  | {
      readonly kind: 'timed';
      readonly limit: Said<Duration>;
      readonly prime: Worked<Volume>;
      readonly putUpAt: Instant | null;
    };

export const NO_PRIME: Worked<Volume> = worked(NOTHING, shownVolume, {
  symbol: 'P',
  equation: 'P = 0',
  inputs: [],
  rule: 'PL15',
  basis: ARITHMETIC,
});

function primeBy(local: Local): Worked<Volume> | null {
  const line = local.must('set.prime.line');
  const spill = local.must('set.prime.spill');
  if (line === null || spill === null) return null;
  return worked(add(line.value, spill.value), shownVolume, {
    symbol: 'P',
    equation: 'P = V_line + V_spill',
    inputs: [
      input('V_line', shownVolume(line.value), line.basis),
      input('V_spill', shownVolume(spill.value), spill.basis),
    ],
    rule: 'PL15',
    basis: line.basis,
  });
}

/** A syringe is filled and emptied by hand: a bolus needs no set, nor does whatever else is given by syringe. */
const hasSet = (order: Order): boolean => order.method !== 'syringe' && order.regimen?.kind !== 'bolus';

/** [PL14] How sets are changed for this order: with each closed container where policy says so, otherwise by their limit. */
export function setRule(
  order: Order,
  spiked: boolean,
  putUpAt: Instant | null,
  local: Local,
): SetRule | null {
  if (!hasSet(order)) return { kind: 'none' };
  const limit = local.must(spiked ? 'set.change.closed' : 'set.change.open');
  const prime = primeBy(local);
  if (limit === null || prime === null) return null;
  const withEach = spiked && (local.may('set.with-each-closed-container')?.value ?? false);
  return withEach ? { kind: 'with-each', limit, prime } : { kind: 'timed', limit, prime, putUpAt };
}

/** When a set put up then is due, as a limit of what hangs on it. */
export const setDue = (putUpAt: Instant, { value, basis }: Said<Duration>): FixedLimit => ({
  because: 'set-limit',
  at: after(putUpAt, value),
  basis,
});
