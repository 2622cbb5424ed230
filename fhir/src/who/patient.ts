/**
 * Who is fed, what is known of them, and who prescribed it?
 * From the Patient and the AllergyIntolerance beside the order as far as they are this patient's, else from what the
 * order's references say of themselves, else from a person's answers.
 */
import type { Identifier, Order, Patient } from '@feedwright/core/order/order';
import type { Document, Resource } from '../read/bundle.ts';
import { conceptOf, labelOf, tidyName } from '../read/coded.ts';
import { type Element, field, items, text, textOf } from '../read/element.ts';
import { dayWritten } from '../read/moment.ts';
import { answered, ask, note } from '../read/reading.ts';
import { HEIGHT, measured, WEIGHT } from './measurements.ts';
import { type Subject, theirs } from './subject.ts';

const MOST = 200;

function identifierOf(element: Element | null): Identifier | null {
  const value = textOf(element, 'value')?.trim() ?? '';
  if (element === null || value === '') return null;
  const system = textOf(element, 'system');
  const kind = labelOf(conceptOf(field(element, 'type'))) ?? system ?? 'identifier';
  return { kind: kind.slice(0, MOST), value: value.slice(0, MOST) };
}

/** `text` where there is one, else given names and family name. */
function nameOf(person: Element | null): string | null {
  const [name] = items(person, 'name');
  if (name === undefined) return null;
  const whole = tidyName(field(name, 'text'));
  const given = items(name, 'given').map((element) => text(element) ?? '');
  const parts = [...given, textOf(name, 'family') ?? ''].join(' ').trim().slice(0, MOST);
  return whole ?? (parts === '' ? null : parts);
}

/** [FH19] Those that are written down; one that is only pointed at, and cannot be seen, is asked for. */
function allergiesOf(subject: Subject): readonly string[] {
  const { document } = subject;
  const beside = theirs(subject, 'AllergyIntolerance').map((one) => labelOf(conceptOf(field(one, 'code'))));
  const pointed = items(document.order, 'allergyIntolerance').map((reference) => {
    const display = tidyName(field(reference, 'display'));
    const seen = document.resolve(reference);
    return seen === null ? display : labelOf(conceptOf(field(seen, 'code')));
  });
  const all = [...beside, ...pointed];
  const known = all.filter((one) => one !== null);
  const answer = all.includes(null)
    ? ask(document.order, 'FH19', 'fhir/allergy-unseen', 'allergies', { known })
    : answered(document.order, 'allergies');
  const more = (answer ?? []).filter((one) => one.toLowerCase() !== 'none');
  return [...new Set([...known, ...more])];
}

/** [FH19] Food wishes and exclusions are written for meals; a person compares them with the feed. */
function noteFoods(order: Element): void {
  for (const name of ['foodPreferenceModifier', 'excludeFoodModifier']) {
    const foods = items(order, name).map((element) => labelOf(conceptOf(element)));
    if (foods.length > 0) note(field(order, name)!, 'FH19', 'fhir/food-modifier', { name, foods });
  }
}

function identifiersOf({ document, patient, reference }: Subject): readonly Identifier[] {
  const written = [
    ...items(patient, 'identifier').map(identifierOf),
    identifierOf(field(reference, 'identifier')),
  ].filter((one) => one !== null);
  const answer = answered(document.order, 'identifier');
  return answer === null ? written : [...written, { kind: 'identifier', value: answer }];
}

function dosingWeight(order: Element, observations: readonly Resource[]): Patient['dosingWeight'] {
  const weight = measured(observations, WEIGHT);
  if (weight !== null) return { kg: weight.value, on: weight.on };
  const kg = answered(order, 'weightKg');
  return kg === null ? null : { kg, on: answered(order, 'weightOn') };
}

/** [FH19] The patient, with answers for what is not written. */
export function patientOf(subject: Subject): Patient {
  const { document, patient, reference } = subject;
  const { order } = document;
  const display = tidyName(field(reference, 'display'));
  const observations = theirs(subject, 'Observation');
  noteFoods(order);
  return {
    name: nameOf(patient) ?? display ?? answered(order, 'patientName'),
    birthDate: dayWritten(field(patient, 'birthDate')) ?? answered(order, 'birthDate'),
    identifiers: identifiersOf(subject),
    place: answered(order, 'place'),
    allergies: allergiesOf(subject),
    dosingWeight: dosingWeight(order, observations),
    heightCm: measured(observations, HEIGHT)?.value ?? null,
  };
}

/** [FH19] */
export function prescriberOf(document: Document): Order['prescriber'] {
  const reference = field(document.order, 'orderer');
  const whom = document.resolve(reference);
  const display = tidyName(field(reference, 'display'));
  const name =
    (whom?.type === 'Practitioner' ? nameOf(whom) : null) ??
    display ??
    ask(document.order, 'FH19', 'fhir/prescriber-unnamed', 'prescriber', {
      reference: textOf(reference, 'reference'),
    });
  return name === null ? null : { name, role: null };
}
