/**
 * Who is it, what do they weigh, what did the laboratory say, what other energy runs? Values as they were told, with their
 * units and times: trends are for the reader to judge.
 */
import type { Fraction } from '../../base/fraction.ts';
import type { Instant } from '../../base/instant.ts';
import type { Analyte, BodyFact, PersonFact } from '../../record/fact.ts';
import { emptyTrail, grown, type Trail } from '../trail.ts';

export type Weight = { readonly at: Instant; readonly kg: Fraction };
export type LabValue = {
  readonly at: Instant;
  readonly analyte: Analyte;
  readonly value: Fraction;
  readonly unit: string;
};
export type OtherEnergyRunning = {
  readonly name: string;
  readonly kcalPerDay: Fraction;
  readonly since: Instant;
};

export type PersonState = {
  readonly identified: Extract<PersonFact, { readonly kind: 'person-identified/1' }> | null;
  readonly heightCm: Fraction | null;
  readonly allergies: readonly string[] | null;
  readonly weights: Trail<Weight>;
  readonly labs: Trail<LabValue>;
  readonly otherEnergy: readonly OtherEnergyRunning[];
};

export const beginPerson = (): PersonState => ({
  identified: null,
  heightCm: null,
  allergies: null,
  weights: emptyTrail(),
  labs: emptyTrail(),
  otherEnergy: [],
});

export function tellPerson(state: PersonState, fact: PersonFact, at: Instant): PersonState {
  switch (fact.kind) {
    case 'person-identified/1':
      return { ...state, identified: fact };
    case 'weight-measured/1':
      return { ...state, weights: grown(state.weights, { at, kg: fact.kg }) };
    case 'height-measured/1':
      return { ...state, heightCm: fact.cm };
    case 'allergies-recorded/1':
      return { ...state, allergies: fact.allergies };
    case 'other-energy-recorded/1': {
      const others = state.otherEnergy.filter((one) => one.name !== fact.name);
      const { name, kcalPerDay } = fact;
      // None a day is how it is said that it runs no more.
      return {
        ...state,
        otherEnergy: kcalPerDay.n === 0 ? others : [...others, { name, kcalPerDay, since: at }],
      };
    }
  }
}

export const tellLab = (
  state: PersonState,
  { analyte, value, unit }: Extract<BodyFact, { readonly kind: 'laboratory-result/1' }>,
  at: Instant,
): PersonState => ({ ...state, labs: grown(state.labs, { at, analyte, value, unit }) });
