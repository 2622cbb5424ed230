/** Policies to try properties on: any row that the types allow, sensible or not, so long as a document can hold it. */
import { type Fraction, fraction } from '@feedwright/core/base/fraction';
import { instant } from '@feedwright/core/base/instant';
import type { Provenance } from '@feedwright/core/base/working';
import { type Key, POLICY_KEYS, type PolicyKey } from '@feedwright/core/policy/keys';
import type { AgeBand, Policy, PolicyContext, PolicyRow, Setting } from '@feedwright/core/policy/policy';
import fc from 'fast-check';

const KEYS = Object.keys(POLICY_KEYS) as PolicyKey[];
const PROVENANCES: readonly Provenance[] = [
  'read',
  'secondary',
  'from-memory',
  'common-practice',
  'facility',
  'derived',
];
const SETTINGS: readonly Setting[] = ['hospital', 'residential-care', 'home'];

/** Plain objects, as documents give them. */
const recordOf = <T>(parts: { [K in keyof T]: fc.Arbitrary<T[K]> }): fc.Arbitrary<T> =>
  fc.record(parts, { noNullPrototype: true }) as fc.Arbitrary<T>;

const fractions: fc.Arbitrary<Fraction> = fc.oneof(
  fc.tuple(fc.nat(10_000), fc.integer({ min: 1, max: 10_000 })).map(([n, d]) => fraction(n, d)),
  fc.tuple(fc.maxSafeNat(), fc.integer({ min: 1, max: 2 ** 53 - 1 })).map(([n, d]) => fraction(n, d)),
);

const wholes = fc.oneof(fc.nat(100_000_000), fc.maxSafeNat());

function valuesOf(key: Key): fc.Arbitrary<PolicyRow['value']> {
  if (key.kind === 'switch') return fc.boolean();
  if (key.kind === 'choice') return fc.constantFrom(...(key.choices ?? []));
  if (key.kind === 'time') return fc.nat(1439);
  return key.kind === 'fraction' ? fractions : wholes;
}

const bands: fc.Arbitrary<AgeBand | null> = fc.option(
  recordOf<AgeBand>({ fromDays: fc.nat(40_000), belowDays: fc.option(fc.nat(40_000)) }),
);

/** One line of text as a document holds it. */
const line = fc
  .string({ minLength: 1, maxLength: 40, unit: 'grapheme' })
  .filter((text) => /^\P{Cc}+$/u.test(text));

/** Moments of the years that RFC 3339 can write with four digits. */
const moments = fc.integer({ min: 0, max: Date.UTC(9999, 11, 31) }).map(instant);
const days = moments.map((at) => new Date(at).toISOString().slice(0, 10));

const rowsOf = (key: PolicyKey): fc.Arbitrary<PolicyRow> =>
  recordOf({
    value: fc.option(valuesOf(POLICY_KEYS[key])),
    band: bands,
    setting: fc.option(fc.constantFrom(...SETTINGS)),
    source: line,
    provenance: fc.constantFrom(...PROVENANCES),
    setBy: line,
    setOn: days,
    effectiveFrom: fc.option(moments),
    alternatives: fc.array(
      recordOf({
        value: line,
        source: line,
        provenance: fc.constantFrom(...PROVENANCES),
        note: fc.oneof(fc.constant(''), line),
      }),
      { maxLength: 2 },
    ),
    isDefault: fc.boolean(),
  }).map(({ isDefault, ...row }) => ({ key, ...row, ...(isDefault ? { isDefault: true as const } : {}) }));

export const rows = fc.constantFrom(...KEYS).chain(rowsOf);

export const policies: fc.Arbitrary<Policy> = recordOf({
  name: line,
  version: line,
  rows: fc.array(rows, { maxLength: 12 }),
});

/** Many rows of one key, for few people and moments, so that they meet each other. */
export const crowds: fc.Arbitrary<Policy> = recordOf({
  name: fc.constant('crowd'),
  version: fc.constant('1'),
  rows: fc.array(
    recordOf({
      key: fc.constantFrom<PolicyKey>('hang.closed', 'hang.powder'),
      value: fc.option(fc.integer({ min: 1, max: 48 * 3_600_000 })),
      band: fc.option(
        recordOf({ fromDays: fc.constantFrom(0, 28, 6575), belowDays: fc.constantFrom(null, 28, 6575) }),
      ),
      setting: fc.option(fc.constantFrom(...SETTINGS)),
      effectiveFrom: fc.option(fc.constantFrom(-2, 0, 1, 2).map(instant)),
      isDefault: fc.boolean(),
    }).map(({ isDefault, ...row }) => ({
      source: 'facility',
      provenance: 'facility' as const,
      setBy: 'somebody',
      setOn: '2026-11-25',
      alternatives: [],
      ...row,
      ...(isDefault ? { isDefault: true as const } : {}),
    })),
    { maxLength: 14 },
  ),
});

export const contexts: fc.Arbitrary<PolicyContext> = recordOf({
  ageDays: fc.option(fc.constantFrom(0, 27, 28, 6574, 6575, 30_000)),
  setting: fc.constantFrom(...SETTINGS),
  at: fc.constantFrom(-3, -2, -1, 0, 1, 2, 3).map(instant),
});
