/**
 * How is one of our orders said in FHIR?
 * As a NutritionOrder of R4 or R5, the inverse of reading one as far as FHIR can carry it. What it cannot carry is listed
 * and never squeezed into a near-miss element.
 */
import { bad, type Issue, issue, ok, type Result } from '@feedwright/core/base/result';
import { showInstant } from '@feedwright/core/base/zone';
import type { Order } from '@feedwright/core/order/order';
import type { FhirVersion, JsonObject } from './dialect.ts';
import { R4 } from './r4.ts';
import { R5 } from './r5.ts';
import { ON_HOLD } from './read/in-force.ts';
import { formulaOf } from './write/formula.ts';
import { leftBehind } from './write/left-behind.ts';
import type { Out } from './write/quantity.ts';

export type Exported = {
  readonly resource: JsonObject;
  /** The fields of the order that FHIR has no place for and that say something here. */
  readonly notCarried: readonly string[];
};

function patientOf({ patient }: Order): JsonObject {
  const [identifier] = patient.identifiers;
  return {
    ...(identifier === undefined
      ? {}
      : { identifier: { type: { text: identifier.kind }, value: identifier.value } }),
    ...(patient.name === null ? {} : { display: patient.name }),
  };
}

/** The elements that FHIR requires of every NutritionOrder. */
const missing = (order: Order): readonly Issue[] => [
  ...(order.prescribedAt === null ? [issue(['prescribedAt'], 'fhir/required', { name: 'dateTime' })] : []),
  ...(order.patient.name === null && order.patient.identifiers.length === 0
    ? [issue(['patient'], 'fhir/required', { name: 'patient' })]
    : []),
];

const FHIR_ID = /^[A-Za-z0-9\-.]{1,64}$/;

/**
 * An order as a NutritionOrder.
 * @returns the resource and what it could not carry; or issues `fhir/required` where the order lacks what FHIR requires.
 */
export function nutritionOrderOf(order: Order, version: FhirVersion): Result<Exported> {
  const dialect = version === 'R4' ? R4 : R5;
  const lacking = missing(order);
  if (lacking.length > 0 || order.prescribedAt === null) return bad(...lacking);
  const out: Out = { zone: order.zone, notCarried: new Set(leftBehind(order)) };
  const { prescriber } = order;
  const resource = {
    resourceType: 'NutritionOrder',
    ...(FHIR_ID.test(order.id) ? { id: order.id } : {}),
    identifier: [{ value: order.id }],
    status: order.holds.some(({ id }) => id === ON_HOLD) ? 'on-hold' : 'active',
    intent: 'order',
    [dialect.subject]: patientOf(order),
    dateTime: showInstant(order.prescribedAt, order.zone),
    ...(prescriber === null ? {} : { orderer: { display: prescriber.name } }),
    ...(order.patient.allergies.length === 0
      ? {}
      : { allergyIntolerance: order.patient.allergies.map((display) => ({ display })) }),
    enteralFormula: formulaOf(out, dialect, order),
  };
  return ok({ resource, notCarried: [...out.notCarried] });
}
