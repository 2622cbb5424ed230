/**
 * What holds until a facility says otherwise? The default policy for adults in hospital, each value with its source and
 * with what other bodies say. For a child it has only what was read in its source; the rest waits for the facility.
 */

import { BEDSIDE_DEFAULTS } from './defaults/bedside.ts';
import { CONTAINER_DEFAULTS } from './defaults/containers.ts';
import { LIMIT_DEFAULTS } from './defaults/limits.ts';
import { MEDICINE_DEFAULTS } from './defaults/medicines.ts';
import { REFEEDING_DEFAULTS } from './defaults/refeeding.ts';
import { CHILD, child, FACILITY } from './defaults/row.ts';
import { TUBE_DEFAULTS } from './defaults/tube.ts';
import { WATER_DEFAULTS } from './defaults/water.ts';
import type { Policy, PolicyRow } from './policy.ts';

const WRITTEN: readonly PolicyRow[] = [
  ...CONTAINER_DEFAULTS,
  ...WATER_DEFAULTS,
  ...BEDSIDE_DEFAULTS,
  ...LIMIT_DEFAULTS,
  ...TUBE_DEFAULTS,
  ...REFEEDING_DEFAULTS,
  ...MEDICINE_DEFAULTS,
];

const saysSomethingOfChildren = (row: PolicyRow): boolean =>
  row.band === null || row.band.fromDays < (CHILD.belowDays ?? 0);

/** Where a key speaks of adults only, children get a row that waits, so that the gap shows instead of being missed. */
function waitingForChildren(rows: readonly PolicyRow[]): readonly PolicyRow[] {
  const covered = new Set(rows.filter(saysSomethingOfChildren).map((row) => row.key));
  const adultOnly = new Set(rows.map((row) => row.key).filter((key) => !covered.has(key)));
  return [...adultOnly].map((key) => child(key, null, FACILITY));
}

export const DEFAULT_POLICY: Policy = {
  name: 'Feedwright default, adults in hospital',
  version: '1',
  rows: [...WRITTEN, ...waitingForChildren(WRITTEN)],
};
