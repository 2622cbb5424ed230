/**
 * Which FHIR does this order speak? R4 (R4B says the same of this resource) and R5 call and nest some elements
 * differently; each version's names live in one file, and nothing else knows them.
 */
import { type Element, eachOf, field, isObject, items, textOf } from './read/element.ts';
import { stop, within } from './read/reading.ts';

export type FhirVersion = 'R4' | 'R5';
export type Json = null | boolean | number | string | readonly Json[] | { readonly [name: string]: Json };
export type JsonObject = { readonly [name: string]: Json };

export type WrittenAdditive = {
  readonly concept: Element | null;
  readonly name: Element | null;
  readonly quantity: Element | null;
};

export type Additive = { readonly name: string; readonly quantity: JsonObject | null };

/** What the other version calls an element (lists are walked through), and what this version calls it. */
type Foreign = { readonly path: readonly string[]; readonly name: string };

export type Dialect = {
  readonly version: FhirVersion;
  readonly subject: string;
  readonly route: string;
  readonly foreign: readonly Foreign[];
  /** The CodeableConcept of a type of formula. */
  readonly concept: (type: Element | null) => Element | null;
  readonly additives: (formula: Element) => readonly WrittenAdditive[];
  readonly timings: (administration: Element) => readonly Element[];
  /** The element that says "when needed", where there is one. */
  readonly schedule: (administration: Element) => Element | null;
  readonly toConcept: (text: string) => JsonObject;
  readonly toSchedule: (timing: JsonObject) => JsonObject;
  /** The additives as elements of `enteralFormula`, and how many of them found a place there. */
  readonly toAdditives: (additives: readonly Additive[]) => {
    readonly elements: JsonObject;
    readonly carried: number;
  };
};

/** Every element at a path, through lists. */
function elementsAt(element: Element, path: readonly string[]): readonly Element[] {
  const [name, ...rest] = path;
  if (name === undefined) return [element];
  if (!isObject(element.json)) return [];
  return eachOf(element, name).flatMap((one) => elementsAt(one, rest));
}

const count = (order: Element, foreign: readonly Foreign[]): number =>
  foreign.reduce((total, { path }) => total + elementsAt(order, path).length, 0);

const PROFILED: readonly (readonly [RegExp, FhirVersion])[] = [
  [/\|4\.[03]\.|\/R4B?\/|\/4\.[03]\//, 'R4'],
  [/\|5\.0\.|\/R5\/|\/5\.0\//, 'R5'],
];

function profiled(order: Element): FhirVersion | null {
  const profiles = items(field(order, 'meta'), 'profile').map(({ json }) => String(json));
  const found = PROFILED.filter(([shape]) => profiles.some((profile) => shape.test(profile)));
  return found.length === 1 ? found[0]![1] : null;
}

/** By the profile it claims where that names a version, else by which version's names it uses more of. */
export function dialectOf(order: Element, r4: Dialect, r5: Dialect): Dialect {
  const claimed = profiled(order);
  if (claimed !== null) return claimed === 'R4' ? r4 : r5;
  return count(order, r4.foreign) > count(order, r5.foreign) ? r5 : r4;
}

/** [FH2] An element by the other version's name means nothing in this one: said, with the right name, and not read. */
export function stopForeign(order: Element, { foreign, version }: Dialect): void {
  for (const { path, name } of foreign) {
    for (const found of elementsAt(order, path)) {
      stop(found, 'FH2', 'fhir/other-version', { version, found: path.join('.'), name });
    }
  }
}

/** [FH3] What says that it changes the meaning of the rest, and is not understood, forbids reading the rest. */
export function stopModifiers(element: Element): void {
  if (textOf(element, 'implicitRules') !== null) {
    stop(within(element, 'implicitRules'), 'FH3', 'fhir/must-understand', { name: 'implicitRules' });
  }
  walkModifiers(element);
}

function walkModifiers(element: Element): void {
  if (typeof element.json !== 'object' || element.json === null) return;
  for (const [step, json] of Object.entries(element.json)) {
    const child = {
      reading: element.reading,
      path: [...element.path, Array.isArray(element.json) ? Number(step) : step],
      json,
    };
    if (step === 'modifierExtension') {
      stop(child, 'FH3', 'fhir/must-understand', { name: 'modifierExtension' });
    } else if (step !== 'contained') walkModifiers(child);
  }
}
