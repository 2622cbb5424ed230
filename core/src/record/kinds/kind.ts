/** How is one kind of fact written? Its fields, each with its name in the document, and what would contradict itself. */
import { z } from 'zod';
import type { Issue } from '../../base/result.ts';
import type { Fact, FactKind } from '../fact.ts';
import type { Field } from './field.ts';

export type FactOf<K extends FactKind> = Extract<Fact, { readonly kind: K }>;

type FieldsOf<K extends FactKind> = {
  readonly [P in Exclude<keyof FactOf<K>, 'kind'>]: Field<FactOf<K>[P]>;
};

export type Declared<K extends FactKind> = {
  readonly about: string;
  readonly fields: FieldsOf<K>;
  /** What no fact of this kind can say of itself. Never asks another entry or a clock. */
  readonly contradicts?: (fact: FactOf<K>) => Issue | null;
};

/** A kind as the reader uses it: the fields in a fixed order, each beside the property that it becomes. */
export type Kind = {
  readonly kind: FactKind;
  readonly fields: readonly { readonly as: string; readonly field: Field<unknown> }[];
  readonly schema: z.ZodObject;
  readonly contradicts: (fact: Fact) => Issue | null;
};

function kindOf<K extends FactKind>(kind: K, { about, fields, contradicts }: Declared<K>): Kind {
  const pairs = Object.entries(fields).map(([as, field]) => ({ as, field: field as Field<unknown> }));
  const shape = Object.fromEntries(pairs.map(({ field }) => [field.name, field.schema]));
  return {
    kind,
    fields: pairs,
    schema: z.strictObject({ kind: z.literal(kind), ...shape }).meta({ description: about }),
    contradicts: (contradicts as Kind['contradicts'] | undefined) ?? (() => null),
  };
}

/** The kinds of one family, each checked against the type of its fact. */
export const kinds = <K extends FactKind>(
  declared: { readonly [P in K]: Declared<P> },
): { readonly [P in K]: Kind } =>
  Object.fromEntries(
    Object.entries(declared).map(([kind, one]) => [kind, kindOf(kind as K, one as Declared<K>)]),
  ) as { readonly [P in K]: Kind };

type Written = Readonly<Record<string, unknown>>;

/** The fact, or null where the description has to be asked what is wrong. */
export function readQuickly({ kind, fields }: Kind, written: Written): Fact | null {
  const fact: Record<string, unknown> = { kind };
  let present = 1;
  for (const { as, field } of fields) {
    const one = written[field.name];
    if (one !== undefined) present += 1;
    const value = field.quick(one);
    if (value === undefined) return null;
    fact[as] = value;
  }
  for (const _ in written) present -= 1;
  return present === 0 ? (fact as Fact) : null;
}

/** The fact out of what the description has read. */
export function fromDescription({ kind, fields }: Kind, read: Written): Fact {
  const fact: Record<string, unknown> = { kind };
  for (const { as, field } of fields) fact[as] = read[field.name];
  return fact as Fact;
}

export function writeFact({ kind, fields }: Kind, fact: Fact): Written {
  const written: Record<string, unknown> = { kind };
  for (const { as, field } of fields) {
    const value = field.write((fact as Written)[as]);
    if (value !== undefined) written[field.name] = value;
  }
  return written;
}
