/**
 * Do two facts say the same? Same kind and same values, whoever recorded them and when.
 * Facts are plain data made by one reader, so the same value always has the same fields in the same order.
 */
import type { Fact } from './fact.ts';

function sameValue(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const fields = Object.keys(a) as (keyof typeof a)[];
  return (
    fields.length === Object.keys(b).length &&
    fields.every((field) => field in b && sameValue(a[field], b[field]))
  );
}

export const alike = (a: Fact, b: Fact): boolean => a.kind === b.kind && sameValue(a, b);
