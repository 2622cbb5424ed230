/**
 * What is wrong with a document, in codes of our own? The validator's findings with the value that was found, and for
 * a field that is not known the known one that it is nearest to.
 */
import type { z } from 'zod';
import { type Issue, issue } from './result.ts';
import { distance } from './spelling.ts';

type Finding = z.core.$ZodIssue;

/** What was written is shown back only so far: a field's name can be a megabyte long. */
const clipped = (text: string): string => text.slice(0, 80);

/** The known word that was most likely meant, or null where none is near. */
export function nearest(word: string, known: readonly string[]): string | null {
  const written = clipped(word).toLowerCase();
  const near = (one: string): number => {
    const [a, b] = [written, one.toLowerCase()];
    // `rate` for `rateMlPerHour`: the unit was left off.
    return b.startsWith(a) || a.startsWith(b) ? 1 : distance(a, b);
  };
  const [best] = known.map((one) => ({ one, far: near(one) })).toSorted((a, b) => a.far - b.far);
  return best !== undefined && best.far <= Math.max(2, written.length / 3) ? best.one : null;
}

const SEPARATOR = ' ';

/** Hands the fields that an object knows to the finding about one that it does not know: as its message. */
export const knownFields: z.core.$ZodErrorMap = (raw) => {
  if (raw.code !== 'unrecognized_keys') return undefined;
  const shape = (raw.inst?._zod.def as { shape?: object } | undefined)?.shape ?? {};
  return Object.keys(shape).join(SEPARATOR);
};

const kindOf = (value: unknown): string =>
  value === null
    ? 'null'
    : Array.isArray(value)
      ? 'list'
      : typeof value === 'object'
        ? 'object'
        : typeof value;

/** What was found is shown back only where it is one short value. */
const shown = (value: unknown): unknown =>
  typeof value === 'string' ? clipped(value) : typeof value === 'object' ? kindOf(value) : value;

const EXPECTED: Readonly<Record<string, string>> = { array: 'list', record: 'object' };

function wrongType(finding: Finding, path: Issue['path'], expected: string): Issue {
  return finding.input === undefined
    ? issue(path, 'field/missing', { field: path.at(-1) ?? '' })
    : issue(path, 'field/wrong-type', {
        expected,
        found: kindOf(finding.input),
        value: shown(finding.input),
      });
}

function notAChoice(finding: Finding, path: Issue['path'], choices: readonly unknown[]): Issue {
  if (finding.input === undefined) return issue(path, 'field/missing', { field: path.at(-1) ?? '', choices });
  const value = shown(finding.input);
  return issue(path, 'field/not-a-choice', {
    value,
    choices,
    nearest: nearest(String(value), choices.map(String)),
  });
}

/** A union is either a choice of objects by their kind, or a number that may be written in two ways. */
function unionIssue(finding: z.core.$ZodIssueInvalidUnion, path: Issue['path']): Issue {
  if (!('options' in finding)) return wrongType(finding, path, 'number');
  const kind = (finding.input as Record<string, unknown> | undefined)?.[String(finding.discriminator)];
  return notAChoice({ ...finding, input: kind }, path, finding.options ?? []);
}

/** One finding of the validator as issues: one for each field that is not known, otherwise one. */
export function toIssues(finding: Finding): readonly Issue[] {
  const path = finding.path.filter((step): step is string | number => typeof step !== 'symbol');
  switch (finding.code) {
    case 'unrecognized_keys': {
      const known = finding.message.split(SEPARATOR);
      return finding.keys
        .map(clipped)
        .map((field) =>
          issue([...path, field], 'field/unknown', { field, nearest: nearest(field, known), known }),
        );
    }
    case 'invalid_type':
      return [wrongType(finding, path, EXPECTED[finding.expected] ?? finding.expected)];
    case 'invalid_value':
      return [notAChoice(finding, path, finding.values)];
    case 'invalid_union':
      return [unionIssue(finding, path)];
    case 'too_small':
      return [issue(path, 'field/empty', { field: path.at(-1) ?? '' })];
    case 'too_big':
      return [issue(path, 'field/too-long', { most: Number(finding.maximum), of: finding.origin })];
    case 'invalid_format':
      return [issue(path, 'text/control-character', { field: path.at(-1) ?? '' })];
    case 'custom': {
      const { code, data } = finding.params as { code: string; data: Issue['data'] };
      return [issue(path, code, data)];
    }
    default:
      return [issue(path, 'field/wrong-type', { expected: finding.code, value: shown(finding.input) })];
  }
}

/** Whether it is not a document of the kind and version that is read here (`feedwright-order/1`); null when it is. */
export function wrongKind(json: unknown, expected: string): Issue | null {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    return issue([], 'document/not-an-object', { expected });
  }
  const { document, resourceType } = json as Record<string, unknown>;
  if (document === expected) return null;
  const found = typeof document === 'string' ? document.slice(0, 80) : null;
  const [family] = expected.split('/');
  if (found !== null && new RegExp(`^${family}/[1-9]\\d*$`).test(found)) {
    return issue(['document'], 'document/newer-version', { found, reads: expected });
  }
  if (found !== null) return issue(['document'], 'document/wrong-kind', { found, expected });
  return issue(['document'], 'document/no-kind', {
    expected,
    ...(typeof resourceType === 'string' ? { resourceType: resourceType.slice(0, 80) } : {}),
  });
}
