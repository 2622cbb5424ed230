/**
 * What was done, if a task was done as planned? One fact where the plan, the order or local policy knows every value of it.
 * What has to be looked at, measured or decided is asked for: it is never taken to have been as expected.
 */
import { fraction } from '../base/fraction.ts';
import type { Rate, Volume } from '../base/volume.ts';
import type { Worked } from '../base/working.ts';
import type { Order } from '../order/order.ts';
import { lumenNamed } from '../order/review.ts';
import type { Local } from '../plan/local.ts';
import type { PlannedContainer, Task, TaskKind, Visit } from '../plan/plan.ts';
import type { Fact, FactKind, PauseReason } from '../record/fact.ts';
import type { Asked } from './wish.ts';

export type Planned = {
  readonly order: Order;
  readonly local: Local;
  readonly visit: Visit;
  readonly containers: readonly PlannedContainer[];
  readonly waterBags: readonly PlannedContainer[];
  /** For a container that is put up. */
  readonly newId: () => string;
};

type Because = Asked['because'];
/** What was done, or what would tell it and why it has to be told. */
export type AsPlanned =
  | { readonly facts: readonly Fact[] }
  | { readonly answeredBy: FactKind; readonly because: Because };

const done = (...facts: readonly Fact[]): AsPlanned => ({ facts });
const asked = (answeredBy: FactKind, because: Because): AsPlanned => ({ answeredBy, because });
const unknown = (answeredBy: FactKind): AsPlanned => asked(answeredBy, 'not-known');

const value = <T>(worked: Worked<T> | null): T | null => worked?.value ?? null;

const OWN_LIMITS: ReadonlySet<PlannedContainer['because']> = new Set([
  'expiry',
  'prepared-limit',
  'opened-limit',
  'label-limit',
] as const);

function putUp(
  container: PlannedContainer | undefined,
  holds: 'feed' | 'water',
  planned: Planned,
): AsPlanned {
  const { order, newId } = planned;
  const strength = holds === 'water' ? fraction(1) : order.feed?.strength;
  if (container === undefined || strength === undefined) return unknown('container-put-up/1');
  const { feed, closed, fill, newSet, because, takeDownBy } = container;
  return done({
    kind: 'container-put-up/1',
    container: newId(),
    holds,
    feed,
    strength,
    closed,
    filled: fill.value,
    newSet,
    comesDownBy: OWN_LIMITS.has(because) ? takeDownBy.value : null,
    lot: null,
    expires: null,
  });
}

const hungAt = (containers: readonly PlannedContainer[], { at }: Visit, feed: string | null) =>
  containers.find((one) => !one.alreadyUp && one.putUpAt === at && (feed === null || one.feed === feed));

function changeSet({ local }: Planned): AsPlanned {
  const [line, spilt] = [local.may('set.prime.line'), local.may('set.prime.spill')];
  return line === null || spilt === null
    ? unknown('set-changed/1')
    : done({ kind: 'set-changed/1', line: line.value, spilt: spilt.value });
}

const started = (rate: Rate | null, volume: Volume | null, { order }: Planned): AsPlanned =>
  rate === null || order.method !== 'pump'
    ? unknown('pump-started/1')
    : done({ kind: 'pump-started/1', rate, volumeToBeDelivered: volume });

const MEDICINE = 'medicine:';

/** Why feed stops: the hold that a stop is for, or that this feed has ended. */
function reasonOf(about: string | null, order: Order): PauseReason | null {
  if (about === null) return null;
  const holds = about.split(' + ');
  const own = order.holds.find((hold) => holds.includes(hold.id));
  return own?.why ?? (holds.some((hold) => hold.startsWith(MEDICINE)) ? 'medicine' : 'other');
}

function stopped({ about }: Task, { order }: Planned): AsPlanned {
  // By gravity the feed has run in, or has not: what is left has to be looked at.
  if (order.method !== 'pump') return asked('container-taken-down/1', 'measured');
  const reason = reasonOf(about, order);
  return reason === null
    ? done({ kind: 'pump-stopped/1', reason: 'feed-ended' })
    : done({ kind: 'pump-paused/1', reason, note: null });
}

/** A feed that a pump gives is started; one that a person gives is given. Whether a meal was eaten, nobody planned. */
function given(task: Task, planned: Planned): AsPlanned {
  const { order } = planned;
  const volume = value(task.volume);
  if (task.about === 'meal') return asked('feed-given/1', 'decided');
  if (order.method === 'pump') return started(value(task.rate), volume, planned);
  if (volume === null || order.method === null || order.feed === null) return unknown('feed-given/1');
  const { id: feed, strength } = order.feed;
  const how = { lasted: null, heightCm: null, timedBarrel: null };
  return done({ kind: 'feed-given/1', by: order.method, feed, strength, volume, ...how });
}

type Water = Extract<Fact, { kind: 'water-given/1' }>;

function waterKind({ order, local }: Planned): Water['water'] | null {
  if (order.water !== null) return order.water.water;
  const tip = lumenNamed(order, order.access?.feedBy ?? null)?.tip ?? null;
  if (tip === null) return null;
  const said = local.may(tip === 'gastric' ? 'water.gastric' : 'water.jejunal');
  return (said?.value ?? null) as Water['water'] | null;
}

const whyFlushed = ({ about }: Task, { medicines }: Order): Water['why'] =>
  about === 'residual' ? 'residual' : medicines.some(({ name }) => name === about) ? 'medicine' : 'flush';

function water(task: Task, why: Water['why'], planned: Planned): AsPlanned {
  const [volume, kind] = [value(task.volume), waterKind(planned)];
  return volume === null || kind === null
    ? unknown('water-given/1')
    : done({ kind: 'water-given/1', water: kind, volume, why });
}

function medicine({ about, volume }: Task, { order }: Planned): AsPlanned {
  return volume === null || about === null
    ? unknown('medicine-given/1')
    : done({
        kind: 'medicine-given/1',
        name: about,
        volume: volume.value,
        lumen: order.access?.medicineBy ?? null,
      });
}

function module(task: Task, planned: Planned): AsPlanned {
  const one = planned.order.modules.find(({ name }) => name === task.about);
  const within = water(task, 'module', planned);
  if (one === undefined || !('facts' in within)) return unknown('module-given/1');
  const { name, energyKcal, proteinG } = one;
  return done({ kind: 'module-given/1', name, energyKcal, proteinG }, ...within.facts);
}

function rateChanged({ rate }: Task): AsPlanned {
  return rate === null ? unknown('rate-changed/1') : done({ kind: 'rate-changed/1', rate: rate.value });
}

const AS_PLANNED: { readonly [K in TaskKind]: (task: Task, planned: Planned) => AsPlanned } = {
  'put-up-container': ({ about }, planned) =>
    putUp(hungAt(planned.containers, planned.visit, about), 'feed', planned),
  'put-up-water-bag': (_task, planned) =>
    putUp(hungAt(planned.waterBags, planned.visit, null), 'water', planned),
  'change-set': (_task, planned) => changeSet(planned),
  'start-feed': (task, planned) => started(value(task.rate), value(task.volume), planned),
  'stop-feed': stopped,
  'change-rate': rateChanged,
  'give-feed': given,
  'give-bolus': given,
  flush: (task, planned) => water(task, whyFlushed(task, planned.order), planned),
  'give-water': (task, planned) => water(task, 'free-water', planned),
  'give-medicine': medicine,
  'give-module': module,
  'mouth-care': () => done({ kind: 'mouth-care-done/1' }),
  'take-down-container': () => asked('container-taken-down/1', 'measured'),
  'check-position': () => asked('position-set/1', 'measured'),
  'check-tube': () => asked('tube-checked/1', 'measured'),
  'check-tolerance': () => asked('distension-noted/1', 'measured'),
  'measure-residual': () => asked('residual-checked/1', 'measured'),
  'confirm-step': () => asked('step-confirmed/1', 'decided'),
  weigh: () => asked('weight-measured/1', 'measured'),
  'measure-glucose': () => asked('laboratory-result/1', 'measured'),
  'take-bloods': () => asked('laboratory-result/1', 'measured'),
};

/** [AC12] What doing the task as planned comes to. */
export const asPlanned = (task: Task, planned: Planned): AsPlanned => AS_PLANNED[task.kind](task, planned);
