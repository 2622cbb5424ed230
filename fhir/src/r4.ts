/**
 * What does FHIR R4 (4.0.1) call the elements of an order for tube feeding? R4B (4.3.0) says the same.
 * Source: StructureDefinition NutritionOrder, HL7 FHIR 4.0.1 (I2 in docs/sources.md).
 */
import type { Dialect } from './dialect.ts';
import { field } from './read/element.ts';

export const R4: Dialect = {
  version: 'R4',
  subject: 'patient',
  // With a small o; R5 wrote it large.
  route: 'routeofAdministration',
  foreign: [
    { path: ['subject'], name: 'patient' },
    { path: ['enteralFormula', 'routeOfAdministration'], name: 'routeofAdministration' },
    { path: ['enteralFormula', 'additive'], name: 'additiveType, additiveProductName' },
    { path: ['enteralFormula', 'baseFormulaType', 'concept'], name: 'baseFormulaType.coding' },
    { path: ['enteralFormula', 'administration', 'schedule', 'timing'], name: 'schedule.repeat' },
    { path: ['enteralFormula', 'administration', 'schedule', 'asNeeded'], name: 'schedule' },
  ],
  concept: (type) => type,
  additives: (formula) => {
    const concept = field(formula, 'additiveType');
    const name = field(formula, 'additiveProductName');
    return concept === null && name === null ? [] : [{ concept, name, quantity: null }];
  },
  timings: (administration) => {
    const timing = field(administration, 'schedule');
    return timing === null ? [] : [timing];
  },
  schedule: () => null,
  toConcept: (text) => ({ text }),
  toSchedule: (timing) => timing,
  // One additive, and no amount.
  toAdditives: ([first]) => ({
    elements: first === undefined ? {} : { additiveProductName: first.name },
    carried: first === undefined ? 0 : 1,
  }),
};
