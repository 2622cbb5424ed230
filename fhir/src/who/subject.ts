/** Whose order is this, and which of the resources beside it are about the same person? */

import type { Dialect } from '../dialect.ts';
import type { Document, Resource } from '../read/bundle.ts';
import { conceptOf } from '../read/coded.ts';
import { type Element, field, textOf } from '../read/element.ts';
import { note, stop } from '../read/reading.ts';

export type Subject = {
  readonly document: Document;
  /** The order's own reference to the patient. */
  readonly reference: Element | null;
  /** The Patient it leads to, where the document has one. */
  readonly patient: Resource | null;
};

/** `Group/1` and `https://example.org/fhir/Group/1` lead to a Group. */
const typeIn = (reference: string | null): string | null =>
  /(?:^|\/)([A-Z][A-Za-z]+)\/[^/]+$/.exec(reference ?? '')?.[1] ?? null;

/** [FH19] A Bundle with a Patient to whom the order does not lead is about two people. */
export function subjectOf(document: Document, dialect: Dialect): Subject {
  const reference = field(document.order, dialect.subject);
  const whom = document.resolve(reference);
  const type = whom?.type ?? textOf(reference, 'type') ?? typeIn(textOf(reference, 'reference'));
  if (type !== null && type !== 'Patient') {
    stop(reference!, 'FH19', 'fhir/no-patient', { type });
  } else if (whom === null && document.beside.some(({ type }) => type === 'Patient')) {
    stop(reference ?? document.order, 'FH19', 'fhir/patient-unresolved', {
      reference: textOf(reference, 'reference'),
    });
  }
  return { document, reference, patient: whom?.type === 'Patient' ? whom : null };
}

const WITHDRAWN = ['entered-in-error', 'cancelled', 'refuted'];

const isWithdrawn = (resource: Resource): boolean =>
  [
    textOf(resource, 'status'),
    ...conceptOf(field(resource, 'verificationStatus')).codings.map(({ code }) => code),
  ].some((status) => status !== null && WITHDRAWN.includes(status));

function isAboutThem({ document, reference, patient }: Subject, about: Element): boolean {
  const whom = document.resolve(about);
  return patient === null
    ? textOf(about, 'reference') === textOf(reference, 'reference')
    : whom !== null && whom === patient;
}

/** [FH19] The resources of a type that are about the patient; of the others it is said why they are left alone. */
export const theirs = (subject: Subject, type: string): readonly Resource[] =>
  subject.document.beside
    .filter((resource) => resource.type === type)
    .filter((resource) => {
      if (isWithdrawn(resource)) {
        note(resource, 'FH19', 'fhir/withdrawn', { type });
        return false;
      }
      const about = field(resource, 'subject') ?? field(resource, 'patient');
      if (about === null || isAboutThem(subject, about)) return true;
      note(resource, 'FH19', 'fhir/another-patient', { type, of: textOf(about, 'reference') });
      return false;
    });
