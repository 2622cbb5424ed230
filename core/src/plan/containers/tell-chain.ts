/** What is said of each container of a chain, the one already up first? */

import type { Instant } from '../../base/instant.ts';
import type { ContainerUp } from '../../standing/standing.ts';
import type { PlannedContainer } from '../plan.ts';
import type { Link, Solved } from './chain.ts';
import type { Ground } from './demand.ts';
import { capacityOf, type Pouring, recordedContent, recordedFill, workedFill } from './fill.ts';
import { type ContainerLimits, type FixedLimit, plannedDown, type TakeDown, takeDown } from './limits.ts';
import { workedNeed } from './need.ts';
import { contentOf, feedEndsIn, type Paces, plannedContainer } from './planned.ts';
import { NO_PRIME } from './sets.ts';

export type Telling = {
  readonly ground: Ground;
  /** The limits that are said: of a set that several containers hang on its moment is said, not its length. */
  readonly limits: ContainerLimits;
  readonly paces: Paces;
  readonly pouring: Pouring;
  readonly feed: string;
  readonly closed: boolean;
};

const given = (limit: FixedLimit | null): readonly FixedLimit[] => (limit === null ? [] : [limit]);

type Hung = { readonly putUpAt: Instant; readonly nextAt: Instant | null };

/** By its limits and its set's, or when feed ends for good while it is up. */
function downFor(
  { limits, paces }: Pick<Telling, 'limits' | 'paces'>,
  hung: Hung,
  more: readonly FixedLimit[],
): TakeDown {
  const { putUpAt, nextAt } = hung;
  const down = takeDown(limits, putUpAt, more);
  const at = feedEndsIn(paces.lowest, { from: putUpAt, until: down.by.value });
  if (at === null || (nextAt !== null && nextAt < at)) return down;
  const end: FixedLimit = { because: 'feed-ends', at, basis: { kind: 'order', path: 'regimen' } };
  return takeDown(limits, putUpAt, [...more, end]);
}

/** Whether the fill is the most that can be given, and not the least that lasts to the end of the plan. */
function isMost(pouring: Pouring, { fill, prime, goesOn }: Link, need: number): boolean {
  if (!goesOn || pouring.kind === 'packs') return goesOn;
  const step = pouring.step.value;
  return fill === Math.floor(Math.min(need + prime, capacityOf(pouring)) / step) * step;
}

function toldLink(telling: Telling, link: Link): PlannedContainer {
  const { ground, paces, pouring, feed, closed } = telling;
  const { putUpAt, nextAt, newSet, goesOn } = link;
  const due = given(link.setDue);
  const prime = newSet && ground.sets.kind !== 'none' ? ground.sets.prime : NO_PRIME;
  const end = nextAt ?? ground.grid.span.until;
  const most = workedNeed(paces.lowest, { from: putUpAt, until: plannedDown(ground.limits, putUpAt, due) });
  const asMuchAsLasts = isMost(pouring, link, most.value);
  const need = asMuchAsLasts ? most : workedNeed(paces.lowest, { from: putUpAt, until: end });
  const fill = workedFill(pouring, { fill: link.fill, prime, need, asMuchAsLasts: asMuchAsLasts && goesOn });
  return plannedContainer(
    {
      putUpAt,
      alreadyUp: false,
      feed,
      closed,
      fill,
      newSet,
      prime,
      content: contentOf(fill, prime),
      givesFrom: putUpAt,
      down: downFor(telling, { putUpAt, nextAt }, due),
      nextAt,
    },
    paces,
  );
}

/** What is known of the container now up. `more` are the limits of what it hangs on. */
export function tellUp(
  telling: Pick<Telling, 'limits' | 'paces' | 'feed' | 'closed'>,
  up: ContainerUp,
  at: Instant,
  nextAt: Instant | null,
  more: readonly FixedLimit[],
): PlannedContainer {
  const own: readonly FixedLimit[] =
    up.comesDownBy === null
      ? []
      : [{ because: 'expiry', at: up.comesDownBy, basis: { kind: 'entry', id: up.id } }];
  return plannedContainer(
    {
      putUpAt: up.putUpAt,
      alreadyUp: true,
      feed: telling.feed,
      closed: telling.closed,
      fill: recordedFill(up.filled, up.id),
      newSet: false,
      prime: NO_PRIME,
      content: recordedContent(up.remaining, up.id),
      givesFrom: at,
      down: downFor(telling, { putUpAt: up.putUpAt, nextAt }, [...own, ...more]),
      nextAt,
    },
    telling.paces,
  );
}

/** Every container of the plan, the one already up first. */
export const tellChain = (
  telling: Telling,
  { links, setDue }: Solved,
  up: ContainerUp | null,
  at: Instant,
): readonly PlannedContainer[] => [
  ...(up === null ? [] : [tellUp(telling, up, at, links[0]?.putUpAt ?? null, given(setDue))]),
  ...links.map((link) => toldLink(telling, link)),
];
