/**
 * What does FHIR R5 (5.0.0) call the elements of an order for tube feeding?
 * Source: StructureDefinition NutritionOrder, HL7 FHIR 5.0.0 (I3 in docs/sources.md).
 */
import type { Dialect } from './dialect.ts';
import { field, items } from './read/element.ts';

export const R5: Dialect = {
  version: 'R5',
  subject: 'subject',
  route: 'routeOfAdministration',
  foreign: [
    { path: ['patient'], name: 'subject' },
    { path: ['enteralFormula', 'routeofAdministration'], name: 'routeOfAdministration' },
    { path: ['enteralFormula', 'additiveType'], name: 'additive.type' },
    { path: ['enteralFormula', 'additiveProductName'], name: 'additive.productName' },
    { path: ['enteralFormula', 'baseFormulaType', 'coding'], name: 'baseFormulaType.concept.coding' },
    { path: ['enteralFormula', 'baseFormulaType', 'text'], name: 'baseFormulaType.concept.text' },
    { path: ['enteralFormula', 'administration', 'schedule', 'repeat'], name: 'schedule.timing.repeat' },
    { path: ['enteralFormula', 'administration', 'schedule', 'event'], name: 'schedule.timing.event' },
    { path: ['enteralFormula', 'administration', 'schedule', 'code'], name: 'schedule.timing.code' },
  ],
  concept: (type) => field(type, 'concept'),
  additives: (formula) =>
    items(formula, 'additive').map((additive) => ({
      concept: field(field(additive, 'type'), 'concept'),
      name: field(additive, 'productName'),
      quantity: field(additive, 'quantity'),
    })),
  timings: (administration) => items(field(administration, 'schedule'), 'timing'),
  schedule: (administration) => field(administration, 'schedule'),
  toConcept: (text) => ({ concept: { text } }),
  toSchedule: (timing) => ({ timing: [timing] }),
  toAdditives: (additives) => ({
    elements:
      additives.length === 0
        ? {}
        : {
            additive: additives.map(({ name, quantity }) => ({
              productName: name,
              ...(quantity === null ? {} : { quantity }),
            })),
          },
    carried: additives.length,
  }),
};
