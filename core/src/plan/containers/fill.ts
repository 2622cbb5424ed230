/**
 * How much goes into a container? Enough to the next visit at which one is put up, up to a whole pour step; into the last
 * one of a plan, if the order goes on, the most that can be given before it must be down, down to a whole step. A closed
 * container is what the pack is.
 */
import { inMl, type Volume, volume } from '../../base/volume.ts';
import {
  ARITHMETIC,
  type Basis,
  input,
  shownVolume,
  type Worked,
  type WorkingInput,
  worked,
} from '../../base/working.ts';
import type { Said } from '../local.ts';
import type { Filling } from '../optimum/problem.ts';

/** What policy and feed list say of pouring and of packs. */
export type Pouring =
  | {
      readonly kind: 'poured';
      /** Null where it is no bag that is poured into. */
      readonly capacity: Said<Volume> | null;
      readonly step: Said<Volume>;
    }
  | { readonly kind: 'packs'; readonly sizes: readonly Volume[]; readonly basis: Basis };

export const capacityOf = ({ capacity }: Extract<Pouring, { kind: 'poured' }>): Volume =>
  capacity?.value ?? volume(Number.MAX_SAFE_INTEGER);

export const fillingOf = (pouring: Pouring): Filling =>
  pouring.kind === 'poured'
    ? { kind: 'poured', capacity: capacityOf(pouring), step: pouring.step.value }
    : { kind: 'packs', sizes: pouring.sizes };

type Parts = {
  readonly fill: Volume;
  readonly prime: Worked<Volume>;
  /** Up to the next container, or for the last one up to its limit. */
  readonly need: Worked<Volume>;
  /** Whether it is filled as if the order went on past the end of the plan. */
  readonly asMuchAsLasts: boolean;
};

const from = (working: Worked<unknown>): Basis => ({ kind: 'working', working: working.working });

function pouredFill(
  { capacity, step }: Extract<Pouring, { kind: 'poured' }>,
  parts: Parts,
  common: readonly WorkingInput[],
): Worked<Volume> {
  const inputs = [...common, input('p', shownVolume(step.value), step.basis)];
  const how = { symbol: 'V_fill', rule: 'PL16', basis: step.basis };
  const rounded = (way: 'up' | 'down') => ({ way, step: inMl(step.value) }) as const;
  if (!parts.asMuchAsLasts) {
    const equation = 'V_fill = ⌈(V_need + P) / p⌉ × p';
    return worked(parts.fill, shownVolume, { ...how, equation, inputs, rounded: rounded('up') });
  }
  return worked(parts.fill, shownVolume, {
    ...how,
    equation: 'V_fill = ⌊min(V_need + P, C) / p⌋ × p',
    inputs: capacity === null ? inputs : [...inputs, input('C', shownVolume(capacity.value), capacity.basis)],
    rounded: rounded('down'),
  });
}

/** [PL16] The fill with how it comes about. */
export function workedFill(pouring: Pouring, parts: Parts): Worked<Volume> {
  const { fill, prime, need } = parts;
  const inputs = [
    input('V_need', shownVolume(need.value), from(need)),
    input('P', shownVolume(prime.value), from(prime)),
  ];
  if (pouring.kind === 'poured') return pouredFill(pouring, parts, inputs);
  return worked(fill, shownVolume, {
    symbol: 'V_fill',
    equation: 'V_fill = smallest pack ≥ V_need + P, or the largest',
    inputs: [...inputs, ...pouring.sizes.map((size) => input('V_pack', shownVolume(size), pouring.basis))],
    rule: 'PL16',
    basis: pouring.basis,
  });
}

const asRecorded = (symbol: string, amount: Volume, entry: string): Worked<Volume> =>
  worked(amount, shownVolume, {
    symbol,
    equation: `${symbol} = V`,
    inputs: [input('V', shownVolume(amount), { kind: 'entry', id: entry })],
    rule: 'PL16',
    basis: ARITHMETIC,
  });

/** Of a container that somebody put up: what it was filled with, and what is left in it, as the record has it. */
export const recordedFill = (fill: Volume, entry: string): Worked<Volume> =>
  asRecorded('V_fill', fill, entry);
export const recordedContent = (left: Volume, entry: string): Worked<Volume> =>
  asRecorded('V_in', left, entry);
