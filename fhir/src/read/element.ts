/**
 * What stands at this place of the document?
 * Small typed readers over JSON that may be anything. Each marks what it read, so that whatever nobody read can be named
 * afterwards; a value of another JSON type is a stop that says which was expected, and reads as absent.
 */
import { isNumeral, type Numeral, writtenAs } from './numeral.ts';
import { type Path, type Place, pathText, stop } from './reading.ts';

export type Element = Place & { readonly json: unknown };

const kindOf = (json: unknown): string =>
  json === null
    ? 'null'
    : Array.isArray(json)
      ? 'list'
      : isNumeral(json)
        ? 'number'
        : typeof json === 'object'
          ? 'object'
          : typeof json;

const MOST_SHOWN = 120;

/** One short value, on one line, fit to be printed anywhere; what is not short is named by its kind. */
export const excerpt = (json: unknown): string =>
  typeof json === 'object' && json !== null && !isNumeral(json)
    ? kindOf(json)
    : oneLine(isNumeral(json) ? writtenAs(json) : String(json)).slice(0, MOST_SHOWN);

/** Control characters could end a printed line or steer a terminal. */
export const oneLine = (text: string): string => text.replace(/\p{Cc}+/gu, ' ');

export const isObject = (json: unknown): json is Readonly<Record<string, unknown>> =>
  kindOf(json) === 'object';

/** Marks an element as understood, and what it stands in as touched. */
function mark({ reading, path }: Place): void {
  reading.read.add(pathText(path));
  for (const depth of path.keys()) reading.touched.add(pathText(path.slice(0, depth)));
}

function wrongType(element: Element, expected: string): null {
  if (element.reading.read.has(pathText(element.path))) return null;
  mark(element);
  stop(element, 'FH2', 'fhir/wrong-type', {
    expected,
    found: kindOf(element.json),
    value: excerpt(element.json),
  });
  return null;
}

/** The element of that name, or null where there is none. */
export function field(element: Element | null, name: string): Element | null {
  if (element === null) return null;
  if (!isObject(element.json)) return wrongType(element, 'object');
  const json = Object.hasOwn(element.json, name) ? element.json[name] : undefined;
  return json === undefined || json === null
    ? null
    : { reading: element.reading, path: [...element.path, name], json };
}

export const fieldNames = (element: Element): readonly string[] =>
  isObject(element.json) ? Object.keys(element.json) : [];

/** The elements of the list of that name; none where there is none. */
export function items(element: Element | null, name: string): readonly Element[] {
  const list = field(element, name);
  if (list === null) return [];
  if (!Array.isArray(list.json)) {
    wrongType(list, 'list');
    return [];
  }
  return list.json
    .map((json, place) => ({ reading: list.reading, path: [...list.path, place], json }))
    .filter(({ json }) => json !== null);
}

/** One element or a list of them: FHIR's versions differ. */
export function eachOf(element: Element | null, name: string): readonly Element[] {
  const found = field(element, name);
  return found === null ? [] : Array.isArray(found.json) ? items(element, name) : [found];
}

const seen = <T>(element: Element, value: T): T => {
  mark(element);
  return value;
};

/** The text on one line, or null where there is none. */
export const text = (element: Element | null): string | null =>
  element === null
    ? null
    : typeof element.json === 'string'
      ? seen(element, oneLine(element.json))
      : wrongType(element, 'string');

export const textOf = (element: Element | null, name: string): string | null => text(field(element, name));

export const numeralOf = (element: Element | null, name: string): Numeral | null => {
  const found = field(element, name);
  if (found === null) return null;
  return isNumeral(found.json) ? seen(found, found.json) : wrongType(found, 'number');
};

export const booleanOf = (element: Element | null, name: string): boolean | null => {
  const found = field(element, name);
  if (found === null) return null;
  return typeof found.json === 'boolean' ? seen(found, found.json) : wrongType(found, 'boolean');
};

export type Unread = { readonly path: Path; readonly value: string };

/** The highest elements in which nothing was read, in the order of the document. */
export function unread(element: Element): readonly Unread[] {
  const { reading, path, json } = element;
  const here = pathText(path);
  if (reading.read.has(here)) return [];
  if (!reading.touched.has(here)) return [{ path, value: excerpt(json) }];
  const children = Array.isArray(json) ? [...json.entries()] : isObject(json) ? Object.entries(json) : [];
  return children.flatMap(([step, child]) => unread({ reading, path: [...path, step], json: child }));
}
