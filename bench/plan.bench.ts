/** Is a patient planned in an instant, and a hospital in a thousand of them? */
import { instant } from '@feedwright/core/base/instant';
import { ml } from '@feedwright/core/base/volume';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import { parseOrder } from '@feedwright/core/order/document';
import type { PlanRequest } from '@feedwright/core/plan/plan';
import { planFor } from '@feedwright/core/plan/plan-for';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import { blankStanding, type Standing } from '@feedwright/core/standing/standing';
import { medians, type Report } from './measure.ts';

const HOUR = 3_600_000;
const NOW = instant(Date.UTC(2026, 10, 25, 8));
const PATIENTS = 1_000;
const MIX = 40;
const iso = (at: number): string => new Date(at).toISOString();

const order = (id: string, own: object): object => ({
  document: 'feedwright-order/1',
  id,
  zone: 'Europe/London',
  setting: 'hospital',
  patient: {
    name: 'Ada',
    birthDate: '1950-02-28',
    identifiers: [{ kind: 'hospital-number', value: id }],
    dosingWeight: { kg: 60, on: '2026-11-20' },
  },
  prescriber: { name: 'a prescriber' },
  prescribedAt: iso(NOW - 25 * HOUR),
  startsAt: iso(NOW - 24 * HOUR),
  feed: { id: 'standard-1.0', strength: 1 },
  access: {
    device: 'nasogastric',
    french: 10,
    lumens: [{ name: 'port', tip: 'gastric', uses: ['feed', 'medicine'] }],
    feedBy: 'port',
    medicineBy: 'port',
  },
  method: 'pump',
  water: { water: 'tap', given: [{ kind: 'interval', volumeMl: 30, everyHours: 4 }] },
  ...own,
});

function requestFor(id: string, own: object, more: Partial<Standing> = {}): PlanRequest {
  const parsed = parseOrder(order(id, own));
  if (!parsed.ok) throw new Error(`order ${id}: ${JSON.stringify(parsed.issues)}`);
  const request = {
    order: parsed.value,
    feeds: DEFAULT_FEEDS,
    policy: DEFAULT_POLICY,
    standing: { ...blankStanding(NOW), ...more },
    until: instant(NOW + 24 * HOUR),
  };
  if (planFor(request).programme === null) throw new Error(`order ${id} has no plan`);
  return request;
}

const continuous = (rateMlPerHour: number) => ({ regimen: { kind: 'continuous', rateMlPerHour } });

/** What a day on a ward is made of: medicines with holds, a scan, a bag and a set that are up, something kept cold. */
const BUSY: object = {
  ...continuous(65),
  holds: [{ id: 'scan', from: iso(NOW + 5 * HOUR), until: iso(NOW + 7 * HOUR), why: 'procedure' }],
  medicines: [
    {
      name: 'phenytoin',
      times: ['10:00', '22:00'],
      volumeMl: 10,
      holdBeforeMinutes: 60,
      holdAfterMinutes: 60,
    },
    { name: 'furosemide', times: ['08:30', '14:30'], volumeMl: 5 },
    { name: 'paracetamol', times: ['08:30', '14:30', '20:30', '02:30'], volumeMl: 20 },
  ],
};
const MID_DAY: Partial<Standing> = {
  running: { rate: 6500 as never, since: instant(NOW - 3 * HOUR) },
  container: {
    id: 'bag',
    feed: 'standard-1.0',
    putUpAt: instant(NOW - 3 * HOUR),
    comesDownBy: null,
    filled: ml(520),
    remaining: ml(325),
  },
  set: { putUpAt: instant(NOW - 15 * HOUR) },
  cartons: [{ id: 'A', feed: 'standard-1.0', openedAt: instant(NOW - 3 * HOUR), remaining: ml(180) }],
  feedingSince: instant(NOW - 24 * HOUR),
};

const BOLUS: object = {
  method: 'syringe',
  regimen: { kind: 'bolus', volumeMl: 240, times: ['08:00', '11:00', '14:00', '17:00', '20:00', '23:00'] },
  water: { water: 'tap', given: [{ kind: 'around-feeds', beforeMl: 30, afterMl: 30 }] },
};

export default async function plan(report: Report): Promise<void> {
  const plain = requestFor('plain', continuous(60));
  const busy = requestFor('busy', BUSY, MID_DAY);
  const bolus = requestFor('bolus', BOLUS);
  const [one = Number.NaN, full = Number.NaN, poured = Number.NaN] = await medians(
    200,
    () => planFor(plain),
    () => planFor(busy),
    () => planFor(bolus),
  );
  report({ what: '24 hours of continuous feed', measured: one, limit: 3, unit: 'ms' });
  report({ what: '24 hours of six boluses', measured: poured, limit: 3, unit: 'ms' });
  report({
    what: '24 hours with medicines, a scan and a bag that is up',
    measured: full,
    limit: 3,
    unit: 'ms',
  });
  // The same mix of orders in both: a thousand people, and forty of them twenty-five times.
  const person = (index: number) => requestFor(`${index}`, continuous(50 + (index % MIX)));
  const ward = Array.from({ length: PATIENTS }, (_, index) => person(index));
  const again = ward.map((_, index) => ward[index % MIX] as PlanRequest);
  const planAll = (requests: readonly PlanRequest[]) => () =>
    requests.reduce((visits, request) => visits + planFor(request).visits.length, 0);
  const [thousand = Number.NaN, thousandTimes = Number.NaN] = await medians(5, planAll(ward), planAll(again));
  report({
    what: '1,000 patients, against 1,000 times one',
    measured: thousand / thousandTimes,
    limit: 1.5,
    unit: '×',
  });
}
