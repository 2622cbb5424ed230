/**
 * What does this CodeableConcept name?
 * Codes pass through as they are: no terminology is shipped or guessed at. A SNOMED CT identifier that fails its own
 * check digit was mistyped somewhere, which is said.
 */
import { type Element, field, items, text, textOf } from './element.ts';
import { note, within } from './reading.ts';

export type Coding = {
  readonly system: string | null;
  readonly code: string | null;
  readonly display: string | null;
};

export type Concept = { readonly text: string | null; readonly codings: readonly Coding[] };

const SNOMED = 'http://snomed.info/sct';

/** Multiplication in the dihedral group of order 10, and the permutation that each place is put through. */
const product = (a: number, b: number): number =>
  a < 5 ? (b < 5 ? (a + b) % 5 : 5 + ((a + b) % 5)) : b < 5 ? 5 + ((a - b + 5) % 5) : (a - b + 10) % 5;

const PERMUTATION = [1, 5, 7, 6, 2, 8, 3, 0, 9, 4];

const permuted = (digit: number, place: number): number => {
  let moved = digit;
  for (let step = place % 8; step > 0; step -= 1) moved = PERMUTATION[moved]!;
  return moved;
};

/**
 * Whether a number ends in its Verhoeff check digit, as every SNOMED CT identifier does.
 * Source: SNOMED CT Release File Specification, section on the check digit (I6 in docs/sources.md).
 */
export function passesVerhoeff(digits: string): boolean {
  if (!/^\d{6,18}$/.test(digits)) return false;
  const check = [...digits]
    .reverse()
    .reduce((sofar, digit, place) => product(sofar, permuted(Number(digit), place)), 0);
  return check === 0;
}

/** [FH20] A name that begins or ends with a space matches nothing; it is trimmed, and said. */
export function tidyName(element: Element | null): string | null {
  const written = text(element);
  if (written === null || element === null) return null;
  const trimmed = written.trim();
  if (trimmed !== written) note(element, 'FH20', 'fhir/name-with-spaces', { written, trimmed });
  return trimmed === '' ? null : trimmed.slice(0, 200);
}

function codingOf(coding: Element): Coding {
  const [system, code] = [textOf(coding, 'system'), textOf(coding, 'code')];
  if (system === SNOMED && code !== null && !passesVerhoeff(code)) {
    note(within(coding, 'code'), 'FH20', 'fhir/check-digit', { system: 'SNOMED CT', code });
  }
  return { system, code, display: tidyName(field(coding, 'display')) };
}

export const conceptOf = (element: Element | null): Concept =>
  element === null
    ? { text: null, codings: [] }
    : { text: tidyName(field(element, 'text')), codings: items(element, 'coding').map(codingOf) };

/** The words for it that people wrote: text first, then what the codes display. */
export const namesOf = ({ text: said, codings }: Concept): readonly string[] =>
  [said, ...codings.map(({ display }) => display)].filter((name) => name !== null);

export const labelOf = (concept: Concept): string | null =>
  namesOf(concept)[0] ?? concept.codings.find(({ code }) => code !== null)?.code ?? null;
