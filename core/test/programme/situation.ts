/** An ordinary adult's order and an ordinary ward's policy, so that a test has to write only what it is about. */
import { fraction } from '@feedwright/core/base/fraction';
import { type Duration, type Instant, minutes, type Span } from '@feedwright/core/base/instant';
import { ml, mlPerHour, NOTHING, PER_ML, PER_ML_PER_HOUR, type Volume } from '@feedwright/core/base/volume';
import {
  parseInstant,
  parseTimeOfDay,
  showInstant,
  type TimeOfDay,
  type Zone,
  zone,
} from '@feedwright/core/base/zone';
import type { Hold, MedicineByTube, Order, Regimen } from '@feedwright/core/order/order';
import type { PolicyKey } from '@feedwright/core/policy/keys';
import type { Policy, PolicyRow } from '@feedwright/core/policy/policy';
import type { Pace } from '@feedwright/core/programme/frame';
import { needUpTo, type Programme } from '@feedwright/core/programme/programme';
import { programmeOf } from '@feedwright/core/programme/programme-of';
import { blankStanding, type Standing } from '@feedwright/core/standing/standing';

export const LONDON = zone('Europe/London') as Zone;
export const NEW_YORK = zone('America/New_York') as Zone;
/** Its clocks change by half an hour. */
export const LORD_HOWE = zone('Australia/Lord_Howe') as Zone;

export const at = (text: string): Instant => {
  const found = parseInstant(text);
  if (found === null) throw new Error(`not an instant: ${text}`);
  return found;
};

export const time = (text: string): TimeOfDay => {
  const found = parseTimeOfDay(text);
  if (found === null) throw new Error(`not a time: ${text}`);
  return found;
};

export const span = (from: string, until: string): Span => ({ from: at(from), until: at(until) });

export const PATIENT: Order['patient'] = {
  name: 'Ada',
  birthDate: '1950-02-28',
  identifiers: [{ kind: 'hospital-number', value: '000111' }],
  place: null,
  allergies: [],
  dosingWeight: null,
  heightCm: null,
};

export const accessWith = (tip: 'gastric' | 'duodenal' | 'jejunal' | null): Order['access'] => ({
  device: tip === 'gastric' ? 'nasogastric' : 'nasojejunal',
  french: null,
  lumens: [{ name: 'port', tip, uses: ['feed', 'medicine'] }],
  feedBy: 'port',
  medicineBy: 'port',
  placedAt: null,
});

export const orderFor = (regimen: Regimen | null, more: Partial<Order> = {}): Order => ({
  id: 'order',
  replaces: null,
  zone: LONDON,
  setting: 'hospital',
  patient: PATIENT,
  prescriber: null,
  prescribedAt: null,
  startsAt: null,
  endsAt: null,
  feed: {
    id: 'standard-1.0',
    strength: fraction(1),
    additives: [],
    statedKcalPerMl: null,
    preparedAt: null,
    expiresAt: null,
  },
  access: accessWith('gastric'),
  method: 'pump',
  regimen,
  water: null,
  holds: [],
  medicines: [],
  modules: [],
  mostRate: null,
  mostVolumePerDay: null,
  fluidLimitPerDay: null,
  intravenousPerDay: NOTHING,
  otherEnergy: [],
  needs: { energyKcalPerDay: null, proteinGPerDay: null, waterPerDay: null },
  catchUpProtocol: null,
  refeedingCaution: false,
  confirmations: [],
  ...more,
});

export const hold = (id: string, from: string, until: string | null): Hold => ({
  id,
  from: at(from),
  until: until === null ? null : at(until),
  why: 'procedure',
  note: null,
});

export const medicine = (
  name: string,
  times: readonly string[],
  before: number,
  after: number,
): MedicineByTube => ({
  name,
  times: times.map(time),
  volume: ml(10),
  holdBefore: minutes(before),
  holdAfter: minutes(after),
  waterBefore: null,
  waterAfter: null,
  lowersGlucose: false,
});

/** The day begins at 06:00, the pump steps by 1 mL/h, 150 mL/h at most: the published ward sheet's ceiling (S37). */
const ROWS = {
  'day.start': time('06:00'),
  'pump.rate-step': mlPerHour(1),
  'catch-up.ceiling': mlPerHour(150),
  'catch-up.first-day': false,
  'ceiling.rate.gastric': mlPerHour(150),
  'ceiling.rate.jejunal': mlPerHour(125),
  'ceiling.rate.cyclic': mlPerHour(150),
  'bolus.least-duration': minutes(15),
} as const;

export type Rows = Partial<Record<PolicyKey, PolicyRow['value']>>;

/** The ordinary ward's policy with rows changed, or taken away by `undefined`. */
export function policyWith(rows: { [K in PolicyKey]?: Rows[K] | undefined } = {}): Policy {
  const all = Object.entries({ ...ROWS, ...rows }).filter(([, value]) => value !== undefined);
  return {
    name: 'test',
    version: '1',
    rows: all.map(([key, value]) => ({
      key: key as PolicyKey,
      value: value as PolicyRow['value'],
      band: null,
      setting: null,
      source: 'S37',
      provenance: 'read',
      setBy: 'test',
      setOn: '2026-11-25',
      effectiveFrom: null,
      alternatives: [],
    })),
  };
}

/** Fed for days already, unless a test says otherwise. */
export const standingAt = (when: Instant, more: Partial<Standing> = {}): Standing => ({
  ...blankStanding(when),
  feedingSince: (when - 5 * 86_400_000) as Instant,
  ...more,
});

type More = { standing?: Partial<Standing>; policy?: Policy; pace?: Pace; seenAt?: Instant };

export const programmeFor = (order: Order, over: Span, more: More = {}): Programme =>
  programmeOf({
    order,
    policy: more.policy ?? policyWith(),
    standing: standingAt(more.seenAt ?? over.from, more.standing),
    span: over,
    pace: more.pace ?? 'lowest',
  });

export const inMl = (amount: Volume): number => amount / PER_ML;
export const totalMl = (programme: Programme): number => inMl(needUpTo(programme, programme.span.until));

const clock = (when: Instant, inZone: Zone): string =>
  showInstant(when, inZone).slice(5, 16).replace('T', ' ');

/** `11-25 20:00 – 11-26 08:00  62`: a programme as a table that a nurse can read. A volume over a time ends in mL. */
export const table = (programme: Programme, inZone: Zone = LONDON): readonly string[] =>
  programme.pieces.map(({ from, until, gives }) => {
    const what = gives.kind === 'rate' ? `${gives.rate / PER_ML_PER_HOUR}` : `${inMl(gives.volume)} mL`;
    return `${clock(from, inZone)} – ${clock(until, inZone)}  ${what}`;
  });

export const gapTable = (programme: Programme, inZone: Zone = LONDON): readonly string[] =>
  programme.gaps.map(
    ({ from, until, why, holds, untilKnown }) =>
      `${clock(from, inZone)} – ${clock(until, inZone)}  ${[why, ...holds].join(' ')}${untilKnown ? '' : ' …'}`,
  );

export const lostTable = (programme: Programme): readonly string[] =>
  (programme.lost ?? []).map(({ why, volume }) => `${why} ${inMl(volume.value)}`);

export const continuous = (
  rate: number,
  more: Partial<Extract<Regimen, { kind: 'continuous' }>> = {},
): Regimen => ({
  kind: 'continuous',
  rate: { rate: mlPerHour(rate), of: 'mixture' },
  perDay: null,
  advance: null,
  ...more,
});

export const cyclic = (
  from: string,
  until: string,
  { rate, volume }: { rate?: number; volume?: number },
): Regimen => ({
  kind: 'cyclic',
  from: time(from),
  until: time(until),
  rate: rate === undefined ? null : { rate: mlPerHour(rate), of: 'mixture' },
  volume: volume === undefined ? null : { volume: ml(volume), of: 'mixture' },
  advance: null,
});

export const intermittent = (volume: number, times: readonly string[], lasts: Duration): Regimen => ({
  kind: 'intermittent',
  volume: { volume: ml(volume), of: 'mixture' },
  times: times.map(time),
  lasts,
  by: 'pump',
  advance: null,
});

export const volumeTargeted = (volume: number, base: number, most?: number): Regimen => ({
  kind: 'volume-targeted',
  volumePerDay: { volume: ml(volume), of: 'mixture' },
  baseRate: { rate: mlPerHour(base), of: 'mixture' },
  mostRate: most === undefined ? null : { rate: mlPerHour(most), of: 'mixture' },
  advance: null,
});
