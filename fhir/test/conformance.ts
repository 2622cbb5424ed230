/**
 * Does a resource say what FHIR's own definitions allow?
 * A walk over the StructureDefinitions that HL7 publishes with its examples: names, cardinality, choice of types, JSON
 * types and patterns of primitives, required codes, targets of references, and every invariant by FHIRPath. For tests
 * only; what it can see is shown by faults planted in `conformance.test.ts`.
 */
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import fhirpath from 'fhirpath';
import r4Model from 'fhirpath/fhir-context/r4';
import r5Model from 'fhirpath/fhir-context/r5';

type Version = 'R4' | 'R5';
type Rule = { key: string; severity: string; expression?: string };
type Type = { code: string; targetProfile?: string[] };
type Definition = {
  path: string;
  min: number;
  max: string;
  type?: Type[];
  contentReference?: string;
  binding?: { strength: string; valueSet?: string };
  constraint?: Rule[];
};
type Nested = { [name: string]: unknown };

const require = createRequire(import.meta.url);
const PACKAGES = { R4: 'hl7.fhir.r4.examples', R5: 'hl7.fhir.r5.examples' };
const MODELS = { R4: r4Model, R5: r5Model };

const folder = (version: Version): string => dirname(require.resolve(`${PACKAGES[version]}/package.json`));

const files = new Map<string, Nested | null>();

/** A file of the specification's own package, or null where it has none of that name. */
export function specification(version: Version, name: string): Nested | null {
  const path = join(folder(version), `${name}.json`);
  if (!files.has(path)) files.set(path, existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : null);
  return files.get(path) ?? null;
}

/** The text of an example as it is published. */
export const exampleText = (version: Version, name: string): string =>
  readFileSync(join(folder(version), `${name}.json`), 'utf8');

const elements = (version: Version, type: string): Definition[] | null => {
  const definition = specification(version, `StructureDefinition-${type}`);
  return definition === null ? null : (definition.snapshot as { element: Definition[] }).element;
};

/** The codes of a value set that is enumerated in the package; null where it is not. */
function codesOf(version: Version, url: string): Set<string> | null {
  const name = url.split('|')[0]!.split('/').at(-1)!;
  const set = specification(version, `ValueSet-${name}`) as {
    compose?: { include: { system?: string; concept?: { code: string }[] }[] };
  } | null;
  const codes: string[] = [];
  for (const include of set?.compose?.include ?? []) {
    const system = include.system?.split('/').at(-1) ?? '';
    const concepts =
      include.concept ??
      (specification(version, `CodeSystem-${system}`) as { concept?: { code: string }[] } | null)?.concept;
    if (concepts === undefined) return null;
    codes.push(...concepts.map(({ code }) => code));
  }
  return set === null ? null : new Set(codes);
}

const PRIMITIVE_JSON: { [type: string]: string } = {
  boolean: 'boolean',
  decimal: 'number',
  integer: 'number',
  positiveInt: 'number',
  unsignedInt: 'number',
};

function primitiveFault(version: Version, type: string, value: unknown): string | null {
  const wanted = PRIMITIVE_JSON[type] ?? 'string';
  if (typeof value !== wanted) return `is no ${wanted}`;
  const definition = elements(version, type)?.find(({ path }) => path === `${type}.value`);
  const regex = (
    definition?.type as { extension?: { url: string; valueString?: string }[] }[] | undefined
  )?.[0]?.extension?.find(({ url }) => url.endsWith('/regex'))?.valueString;
  if (value === '') return 'is empty';
  // The published pattern of an R5 decimal has one brace too many.
  const pattern = regex?.replace('{1,9}})', '{1,9})');
  return pattern !== undefined && !new RegExp(`^(?:${pattern})$`).test(String(value))
    ? 'has another shape'
    : null;
}

function checkPrimitive({ version, found }: At, type: string, value: unknown, where: string): void {
  const fault = type === 'xhtml' ? null : primitiveFault(version, type, value);
  if (fault !== null) found.push(`${where}: ${fault}`);
}

type At = { version: Version; root: Nested; found: string[] };

function checkInvariants(at: At, value: Nested, base: string, rules: Rule[], where: string): void {
  for (const { key, severity, expression } of rules) {
    if (expression === undefined || key === 'ele-1' || key === 'ext-1') continue;
    const env = { resource: at.root, rootResource: at.root };
    const held = fhirpath.evaluate(value, { base, expression }, env, MODELS[at.version], {
      traceFn: () => {},
    });
    // What comes to nothing is not broken: R4's ref-1 does for a reference by its display alone.
    if ((held as unknown[])[0] === false) at.found.push(`${where}: ${key} (${severity})`);
  }
}

function checkBinding(at: At, value: unknown, { binding }: Definition, where: string): void {
  if (binding?.strength !== 'required' || binding.valueSet === undefined || typeof value !== 'string') return;
  const codes = codesOf(at.version, binding.valueSet);
  if (codes !== null && !codes.has(value)) at.found.push(`${where}: ${value} is not in ${binding.valueSet}`);
}

function checkReference(at: At, value: unknown, { targetProfile }: Type, where: string): void {
  const target = /^([A-Za-z]+)\/[^/]+$/.exec(String((value as Nested)?.reference ?? ''))?.[1];
  const allowed = targetProfile?.map((profile) => profile.split('/').at(-1));
  if (
    target !== undefined &&
    allowed !== undefined &&
    !allowed.includes('Resource') &&
    !allowed.includes(target)
  ) {
    at.found.push(`${where}: a reference to ${target}`);
  }
}

function checkValue(
  at: At,
  all: Definition[],
  one: Definition,
  type: Type,
  value: unknown,
  where: string,
): void {
  checkBinding(at, value, one, where);
  if (type.code === 'Reference') checkReference(at, value, type, where);
  const nested = one.contentReference?.slice(1) ?? one.path;
  const definitions = all.some(({ path }) => path.startsWith(`${nested}.`))
    ? all
    : elements(at.version, type.code);
  const primitive = type.code.startsWith('http:') ? 'string' : type.code;
  if (type.code === 'Resource') checkResource(at, value as Nested, where);
  else if (definitions === all) checkNode(at, all, nested, value, where);
  else if (/^[a-z]/.test(primitive)) checkPrimitive(at, primitive, value, where);
  else if (definitions !== null) checkNode(at, definitions, type.code, value, where);
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Checks one element under its JSON name, and gives back the names that it may have. */
function checkChild(at: At, all: Definition[], one: Definition, node: Nested, where: string): string[] {
  const name = one.path.split('.').at(-1)!;
  const isChoice = name.endsWith('[x]');
  const types = one.type ?? [{ code: 'Element' }];
  const named = isChoice
    ? types.map((type) => ({ type, name: name.replace('[x]', capital(type.code)) }))
    : [{ type: types[0]!, name }];
  const present = named.filter((each) => node[each.name] !== undefined);
  if (present.length > 1) at.found.push(`${where}.${name}: more than one type`);
  if (one.min > 0 && present.length === 0) at.found.push(`${where}.${name}: missing`);
  for (const { type, name: key } of present) {
    const value = node[key];
    const isList = one.max !== '1';
    if (Array.isArray(value) !== isList) at.found.push(`${where}.${key}: ${isList ? 'no list' : 'a list'}`);
    else if (isList && (value as unknown[]).length === 0) at.found.push(`${where}.${key}: an empty list`);
    else {
      const each = isList ? (value as unknown[]) : [value];
      for (const [i, item] of each.entries()) {
        checkValue(at, all, one, type, item, isList ? `${where}.${key}[${i}]` : `${where}.${key}`);
      }
    }
  }
  return named.map((each) => each.name);
}

function checkNode(at: At, all: Definition[], base: string, value: unknown, where: string): void {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    at.found.push(`${where}: is no object`);
    return;
  }
  const node = value as Nested;
  if (Object.keys(node).length === 0) at.found.push(`${where}: an empty object`);
  const children = all.filter(
    ({ path }) => path.startsWith(`${base}.`) && !path.slice(base.length + 1).includes('.'),
  );
  const known = new Set(children.flatMap((child) => checkChild(at, all, child, node, where)));
  for (const name of Object.keys(node)) {
    const plain = name.startsWith('_') ? name.slice(1) : name;
    if (!known.has(plain) && !(name === 'resourceType' && !base.includes('.'))) {
      at.found.push(`${where}.${name}: unknown`);
    }
  }
  checkInvariants(at, node, base, all.find(({ path }) => path === base)?.constraint ?? [], where);
}

function checkResource(at: At, resource: Nested, where: string): void {
  const type = String(resource?.resourceType ?? '');
  const definitions = elements(at.version, type);
  if (definitions === null) at.found.push(`${where}: no resource of type ${type}`);
  else checkNode(at, definitions, type, resource, where);
}

/** Everything in which a resource departs from the definitions, one line each; none where it conforms. */
export function departures(resource: unknown, version: Version): string[] {
  const root = resource as Nested;
  const at: At = { version, root, found: [] };
  checkResource(at, root, String(root.resourceType));
  return at.found;
}
