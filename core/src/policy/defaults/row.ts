/**
 * How is a default written down, so that it can be read across like a table?
 * `adult('hang.open-liquid', hours(8), fromMemory('S2'), other('12 h', read('S19'), …))`: key, value, where the value
 * came from, and what other bodies say. The value is typed by the key, so a duration cannot stand where a volume belongs.
 */
import { type Fraction, fraction } from '../../base/fraction.ts';
import { type Duration, hours } from '../../base/instant.ts';
import type { Provenance } from '../../base/working.ts';
import { daysOfYears } from '../age.ts';
import type { POLICY_KEYS, PolicyKey } from '../keys.ts';
import type { AgeBand, PolicyAlternative, PolicyRow, PolicyValue, Setting } from '../policy.ts';

export const ADULT: AgeBand = { fromDays: daysOfYears(18), belowDays: null };
export const CHILD: AgeBand = { fromDays: 0, belowDays: daysOfYears(18) };
export const NEONATE: AgeBand = { fromDays: 0, belowDays: 28 };
export const CHILD_PAST_NEONATE: AgeBand = { fromDays: 28, belowDays: daysOfYears(18) };

/** A source (its number in docs/sources.md) and how sure we are that it says so. */
export type From = { readonly source: string; readonly provenance: Provenance };

export const read = (source: string): From => ({ source, provenance: 'read' });
export const secondary = (source: string): From => ({ source, provenance: 'secondary' });
export const fromMemory = (source: string): From => ({ source, provenance: 'from-memory' });
/** Worked out from, or carried over from, what the source says of something else. */
export const derived = (source: string): From => ({ source, provenance: 'derived' });
export const COMMON_PRACTICE: From = { source: 'common-practice', provenance: 'common-practice' };
/** Where there is no value: only the facility can give one. */
export const FACILITY: From = { source: 'facility', provenance: 'facility' };

export const other = (value: string, from: From, note: string): PolicyAlternative => ({
  value,
  ...from,
  note,
});

export const days = (count: number): Duration => hours(24 * count);
export const percent = (count: number): Fraction => fraction(count, 100);

type ValueOf<K extends PolicyKey> = PolicyValue[(typeof POLICY_KEYS)[K]['kind']];
type For = { readonly band: AgeBand | null; readonly setting: Setting | null };
type WriteRow = <K extends PolicyKey>(
  key: K,
  value: ValueOf<K> | null,
  from: From,
  ...alternatives: readonly PolicyAlternative[]
) => PolicyRow;

const rowsFor =
  ({ band, setting }: For): WriteRow =>
  (key, value, from, ...alternatives) => ({
    key,
    value,
    band,
    setting,
    ...from,
    setBy: 'Feedwright default',
    setOn: '2026-11-25',
    effectiveFrom: null,
    isDefault: true,
    alternatives,
  });

export const anyAge = rowsFor({ band: null, setting: null });
export const adult = rowsFor({ band: ADULT, setting: null });
export const adultAtHome = rowsFor({ band: ADULT, setting: 'home' });
export const child = rowsFor({ band: CHILD, setting: null });
export const neonate = rowsFor({ band: NEONATE, setting: null });
export const childPastNeonate = rowsFor({ band: CHILD_PAST_NEONATE, setting: null });
