/**
 * How is the feed borne? Residuals, vomiting, distension, pain, stools. Nothing drawn, nothing that could be drawn, and
 * nobody looked are three things, and only the first is a number. [ST52]
 */
import type { Instant } from '../../base/instant.ts';
import type { Volume } from '../../base/volume.ts';
import type { BodyFact, ResidualFound, ResidualLook } from '../../record/fact.ts';
import { emptyTrail, grown, type Trail } from '../trail.ts';

export type Residual = {
  readonly at: Instant;
  readonly found: ResidualFound;
  /** A number only where something was measured, or nothing was there. */
  readonly volume: Volume | null;
  readonly look: ResidualLook | null;
  readonly returned: Volume;
  readonly discarded: Volume;
};

type Noted<K extends BodyFact['kind']> = Extract<BodyFact, { readonly kind: K }> & { readonly at: Instant };

export type Vomit = Noted<'vomited/1'>;
export type Stool = Noted<'stool-passed/1'>;

export type ToleranceState = {
  readonly residuals: Trail<Residual>;
  readonly vomits: Trail<Vomit>;
  readonly stools: Trail<Stool>;
  readonly distension: Noted<'distension-noted/1'> | null;
  readonly pain: Noted<'pain-noted/1'> | null;
  readonly bowelSounds: Noted<'bowel-sounds-noted/1'> | null;
};

export const beginTolerance = (): ToleranceState => ({
  residuals: emptyTrail(),
  vomits: emptyTrail(),
  stools: emptyTrail(),
  distension: null,
  pain: null,
  bowelSounds: null,
});

const measured = (found: ResidualFound, volume: Volume | null): Volume | null =>
  found === 'measured' ? volume : found === 'zero' ? (0 as Volume) : null;

export function tellBody(state: ToleranceState, fact: BodyFact, at: Instant): ToleranceState {
  switch (fact.kind) {
    case 'residual-checked/1': {
      const { found, look, returned, discarded } = fact;
      const residual = { at, found, volume: measured(found, fact.volume), look, returned, discarded };
      return { ...state, residuals: grown(state.residuals, residual) };
    }
    case 'vomited/1':
      return { ...state, vomits: grown(state.vomits, { ...fact, at }) };
    case 'stool-passed/1':
      return { ...state, stools: grown(state.stools, { ...fact, at }) };
    case 'distension-noted/1':
      return { ...state, distension: { ...fact, at } };
    case 'pain-noted/1':
      return { ...state, pain: { ...fact, at } };
    case 'bowel-sounds-noted/1':
      return { ...state, bowelSounds: { ...fact, at } };
    default:
      return state;
  }
}
