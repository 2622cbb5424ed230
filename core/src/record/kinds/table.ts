/** Which kinds of fact does this release read and write? All of them, each with how it is written. */
import type { FactKind } from '../fact.ts';
import { BODY_KINDS } from './body.ts';
import { CARE_KINDS } from './care.ts';
import { CONTAINER_KINDS } from './container.ts';
import { GIVEN_KINDS } from './given.ts';
import type { Kind } from './kind.ts';
import { ORDER_KINDS } from './orders.ts';
import { PERSON_KINDS } from './person.ts';
import { PUMP_KINDS } from './pump.ts';
import { TUBE_KINDS } from './tube.ts';

export const KINDS: { readonly [K in FactKind]: Kind } = {
  ...ORDER_KINDS,
  ...PERSON_KINDS,
  ...TUBE_KINDS,
  ...CONTAINER_KINDS,
  ...PUMP_KINDS,
  ...GIVEN_KINDS,
  ...BODY_KINDS,
  ...CARE_KINDS,
};

export const FACT_KINDS = Object.keys(KINDS) as readonly FactKind[];

const BY_NAME: ReadonlyMap<unknown, Kind> = new Map(Object.entries(KINDS));

/** How a kind is written, or null where this release does not know it. */
export const kindNamed = (name: unknown): Kind | null => BY_NAME.get(name) ?? null;
