/**
 * Which tube is in, is it known to be where it should be, and is it open? "Not confirmed" is what was found; where a tube
 * is that was not confirmed, nothing here says. [ST40]
 */
import type { Fraction } from '../../base/fraction.ts';
import type { Instant } from '../../base/instant.ts';
import type { AccessDevice } from '../../order/order.ts';
import type { ConfirmMethod, TubeFact } from '../../record/fact.ts';

export type TubeCheck = {
  readonly at: Instant;
  readonly by: string;
  readonly method: ConfirmMethod;
  readonly lumen: string | null;
  readonly confirmed: boolean;
  readonly ph: Fraction | null;
  readonly markCm: Fraction | null;
  readonly reader: string | null;
};

export type TubeState = {
  /** As it was placed; null where only the order names one. */
  readonly access: AccessDevice | null;
  readonly placedAt: Instant | null;
  /** The mark at placing, and the last that was read. */
  readonly markPlacedCm: Fraction | null;
  readonly markCm: Fraction | null;
  readonly movedAt: Instant | null;
  readonly out: { readonly at: Instant; readonly how: string | null } | null;
  readonly blocked: readonly { readonly lumen: string | null; readonly at: Instant }[];
  /** Of the tube that is in now. */
  readonly lastCheck: TubeCheck | null;
  readonly confirmedBy: TubeCheck | null;
};

export type PositionState = {
  readonly at: Instant;
  readonly headOfBedDegrees: number;
  readonly posture: string | null;
} | null;

export const beginTube = (): TubeState => ({
  access: null,
  placedAt: null,
  markPlacedCm: null,
  markCm: null,
  movedAt: null,
  out: null,
  blocked: [],
  lastCheck: null,
  confirmedBy: null,
});

type Told = Exclude<TubeFact, { readonly kind: 'position-set/1' }>;

/** The latest check of a lumen governs: one that does not confirm takes an earlier confirmation back. */
function checked(state: TubeState, check: TubeCheck): TubeState {
  return {
    ...state,
    lastCheck: check,
    confirmedBy: check.confirmed ? check : null,
    markCm: check.markCm ?? state.markCm,
  };
}

export function tellTube(state: TubeState, fact: Told, at: Instant, by: string): TubeState {
  switch (fact.kind) {
    case 'tube-placed/1': {
      const { access, markCm } = fact;
      return { ...beginTube(), access, placedAt: at, markPlacedCm: markCm, markCm };
    }
    case 'tube-checked/1': {
      const { method, lumen, confirmed, ph, markCm, reader } = fact;
      return checked(state, { at, by, method, lumen, confirmed, ph, markCm, reader });
    }
    case 'tube-moved/1':
      return { ...state, movedAt: at, markCm: fact.markCm };
    case 'tube-out/1':
      return { ...state, out: { at, how: fact.how }, lastCheck: null, confirmedBy: null, blocked: [] };
    case 'tube-blocked/1':
      return state.blocked.some((one) => one.lumen === fact.lumen)
        ? state
        : { ...state, blocked: [...state.blocked, { lumen: fact.lumen, at }] };
    case 'tube-cleared/1':
      return { ...state, blocked: state.blocked.filter((one) => one.lumen !== fact.lumen) };
  }
}

/** Whether it was moved since it was last confirmed: then that confirmation is of another place. */
export const movedSinceConfirmed = ({ movedAt, confirmedBy }: TubeState): boolean =>
  movedAt !== null && confirmedBy !== null && movedAt >= confirmedBy.at;
