/** One complete order with nothing to say against it, and the means to change one thing about it. */

import { fraction } from '@feedwright/core/base/fraction';
import type { Instant } from '@feedwright/core/base/instant';
import { ml } from '@feedwright/core/base/volume';
import { parseInstant } from '@feedwright/core/base/zone';
import type { Feed, FeedList } from '@feedwright/core/feeds/feed';
import { type OrderDocument, parseOrder } from '@feedwright/core/order/document';
import { judgeOrder } from '@feedwright/core/order/judge';
import type { Order, Problem } from '@feedwright/core/order/order';
import type { PolicyKey } from '@feedwright/core/policy/keys';
import type { Policy, PolicyRow } from '@feedwright/core/policy/policy';

export const moment = (text: string): Instant => parseInstant(text)!;
export const AT = moment('2026-11-25T08:00:00Z');

/** A nasogastric tube fed by pump all day at 75 mL/h: 1800 mL. */
export const DOCUMENT: OrderDocument = {
  document: 'feedwright-order/1',
  id: 'example',
  zone: 'Europe/London',
  setting: 'hospital',
  patient: {
    name: 'Ada Example',
    birthDate: '1950-03-01',
    identifiers: [{ kind: 'hospital-number', value: '000111' }],
    allergies: ['latex'],
    dosingWeight: { kg: 70, on: '2026-11-20' },
  },
  prescriber: { name: 'D. Prescriber', role: 'dietitian' },
  prescribedAt: '2026-11-25T07:00:00+00:00',
  startsAt: '2026-11-25T08:00:00+00:00',
  feed: { id: 'standard', strength: 'full' },
  access: {
    device: 'nasogastric',
    lumens: [{ name: 'port', tip: 'gastric', uses: ['feed', 'medicine'] }],
    feedBy: 'port',
    medicineBy: 'port',
  },
  method: 'pump',
  regimen: { kind: 'continuous', rateMlPerHour: 75 },
  water: { water: 'tap', given: [{ kind: 'interval', volumeMl: 30, everyHours: 4 }] },
};

/** The example with some of its fields in place of its own. A document that does not parse is a mistake in the test. */
export function orderWith(changes: Partial<OrderDocument> = {}): Order {
  const parsed = parseOrder({ ...DOCUMENT, ...changes });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues));
  return parsed.value;
}

const STANDARD: Feed = {
  id: 'standard',
  name: 'standard 1.0 kcal/mL',
  feedClass: 'standard',
  system: 'open-liquid',
  energyKcalPerMl: fraction(1),
  proteinGPerMl: fraction(4, 100),
  waterFraction: fraction(85, 100),
  osmolalityMosmPerKg: 300,
  allergens: ['milk', 'soya'],
  packs: [{ kind: 'carton', volume: ml(500) }],
  labelHangLimit: null,
  source: 'S31',
  provenance: 'read',
};

export const FEEDS: FeedList = {
  version: 'test',
  feeds: [
    STANDARD,
    { ...STANDARD, id: 'dense', energyKcalPerMl: fraction(3, 2), allergens: ['egg'] },
    { ...STANDARD, id: 'closed', system: 'closed', packs: [{ kind: 'container', volume: ml(1000) }] },
    {
      ...STANDARD,
      id: 'either',
      system: 'closed',
      packs: [
        { kind: 'container', volume: ml(1000) },
        { kind: 'carton', volume: ml(500) },
      ],
    },
    { ...STANDARD, id: 'powder', system: 'powder', packs: [] },
    { ...STANDARD, id: 'human-milk', system: 'human-milk', allergens: [], packs: [] },
    {
      ...STANDARD,
      id: 'kitchen',
      system: 'blenderised',
      allergens: ['egg', 'wheat'],
      packs: [],
      compositionVaries: true,
    },
    { ...STANDARD, id: 'water', system: 'water', energyKcalPerMl: fraction(0), allergens: [] },
  ],
};

/** A policy of these rows alone, for everybody everywhere. */
export const policyOf = (values: Partial<Record<PolicyKey, PolicyRow['value']>>): Policy => ({
  name: 'test',
  version: '1',
  rows: Object.entries(values).map(([key, value]) => ({
    key: key as PolicyKey,
    value,
    band: null,
    setting: null,
    source: 'facility',
    provenance: 'facility',
    setBy: 'A. Tester',
    setOn: '2026-11-01',
    effectiveFrom: null,
    alternatives: [],
  })),
});

export const SILENT = policyOf({});

export const judged = (
  order: Order,
  { policy = SILENT, feeds = FEEDS, at = AT }: { policy?: Policy; feeds?: FeedList; at?: Instant } = {},
): readonly Problem[] => judgeOrder(order, feeds, policy, at);

/** The problems of one rule. */
export const ofRule = (rule: string, problems: readonly Problem[]): readonly Problem[] =>
  problems.filter((one) => one.rule === rule);

/** Problems as a table that can be read across: level, rule, code, path. */
export const lines = (problems: readonly Problem[]): readonly string[] =>
  problems.map(({ level, rule, code, path }) => `${level} ${rule} ${code} ${path.join('.')}`);
