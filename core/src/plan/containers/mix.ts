/** What is a diluted feed mixed from? So much formula and so much water make what is poured. [PL26] */
import type { Fraction } from '../../base/fraction.ts';
import { share, subtract } from '../../base/volume.ts';
import { type Basis, input, shownNumber, shownVolume, worked } from '../../base/working.ts';
import type { PlannedContainer } from '../plan.ts';

const STRENGTH: Basis = { kind: 'order', path: 'feed.strength' };

/** The container with what it is mixed from; as it is where nothing is mixed. */
export function withMix(container: PlannedContainer, strength: Fraction): PlannedContainer {
  if (container.alreadyUp || container.closed || strength.n >= strength.d) return container;
  const { fill } = container;
  const from = { kind: 'working', working: fill.working } as const;
  const formula = worked(share(fill.value, strength), shownVolume, {
    symbol: 'V_formula',
    equation: 'V_formula = V_fill × s',
    inputs: [input('V_fill', shownVolume(fill.value), from), input('s', shownNumber(strength), STRENGTH)],
    rule: 'PL26',
    basis: STRENGTH,
  });
  const water = worked(subtract(fill.value, formula.value), shownVolume, {
    symbol: 'V_water',
    equation: 'V_water = V_fill − V_formula',
    inputs: [
      input('V_fill', shownVolume(fill.value), from),
      input('V_formula', shownVolume(formula.value), { kind: 'working', working: formula.working }),
    ],
    rule: 'PL26',
    basis: STRENGTH,
  });
  return { ...container, mix: { formula, water } };
}
