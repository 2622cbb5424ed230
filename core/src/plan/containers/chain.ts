/**
 * Which containers follow one another on a pump or by gravity, and when is the set changed with them? The optimum says
 * where each container starts. A set is changed with the container that would still be up when it is due, so that it never
 * costs a container of its own; the prime of that container is reckoned with when the question is put.
 */
import { earlier, type Instant } from '../../base/instant.ts';
import { NOTHING, type Volume, volume } from '../../base/volume.ts';
import { SLOT } from '../grid.ts';
import { leastFill, mostOf } from '../optimum/filling.ts';
import { optimum } from '../optimum/optimum.ts';
import type { Optimum, TaskWindow } from '../optimum/problem.ts';
import { demandOf, type Ground, type NewSets } from './demand.ts';
import { type FixedLimit, plannedDown } from './limits.ts';
import { lastFed, needBetween } from './need.ts';
import { setDue } from './sets.ts';

/** What is put to the optimum beside feed. */
export type Visiting = {
  readonly tasks: readonly TaskWindow[];
  readonly protectedSlots: Uint8Array;
};

/** A container of the chain with the set that it hangs on and what goes into it. */
export type Link = {
  readonly putUpAt: Instant;
  readonly nextAt: Instant | null;
  readonly newSet: boolean;
  readonly setDue: FixedLimit | null;
  readonly prime: Volume;
  readonly fill: Volume;
  /** Filled as if the order went on past the end of the plan. */
  readonly goesOn: boolean;
};

export type Solved = {
  readonly optimum: Optimum;
  readonly links: readonly Link[];
  /** When the set in use now is due. */
  readonly setDue: FixedLimit | null;
};

const solve = (ground: Ground, visiting: Visiting, newSets: NewSets): Optimum =>
  optimum({
    slots: ground.grid.slots,
    slotLength: SLOT,
    ...visiting,
    feed: demandOf(ground, newSets),
  });

const dueNow = ({ sets }: Ground): FixedLimit | null =>
  sets.kind === 'timed' && sets.putUpAt !== null ? setDue(sets.putUpAt, sets.limit) : null;

const given = (limit: FixedLimit | null): readonly FixedLimit[] => (limit === null ? [] : [limit]);

/** [PL14] Whether feed runs from a container after the set in use is due: then it is put up with a new one. */
function isNew({ sets, need }: Ground, inUse: FixedLimit | null, putUpAt: Instant, until: Instant): boolean {
  if (sets.kind !== 'timed') return sets.kind === 'with-each';
  if (inUse === null) return true;
  const fed = lastFed(need, { from: putUpAt, until });
  return fed !== null && fed > inUse.at;
}

/** [PL16] The least that lasts to the next container; for the last one, if feed goes on, the most that can be given. */
function fillOf(ground: Ground, link: Omit<Link, 'fill'>, end: Instant): Volume {
  const { need, filling, limits } = ground;
  const needed = (until: Instant): number => needBetween(need, { from: link.putUpAt, until }) + link.prime;
  const least = leastFill(filling, needed(end));
  if (!link.goesOn) return volume(Math.min(least, mostOf(filling)));
  const down = plannedDown(limits, link.putUpAt, given(link.setDue));
  const most = Math.min(mostOf(filling), needed(down));
  if (filling.kind === 'packs')
    return volume(Math.min(Math.max(least, leastFill(filling, most)), mostOf(filling)));
  return volume(Math.max(Math.min(least, mostOf(filling)), Math.floor(most / filling.step) * filling.step));
}

/** The chain with its sets: each used until a container would outlast it. */
function linksOf(ground: Ground, { containers }: Optimum): readonly Link[] {
  const { grid, sets, ends } = ground;
  let inUse = dueNow(ground);
  return containers.map((run, index) => {
    const putUpAt = grid.at(run.start);
    const next = containers[index + 1];
    const end = earlier(grid.at(run.end), grid.span.until);
    const newSet = isNew(ground, inUse, putUpAt, end);
    if (newSet && sets.kind === 'timed') inUse = setDue(putUpAt, sets.limit);
    const link = {
      putUpAt,
      nextAt: next === undefined ? null : grid.at(next.start),
      newSet,
      setDue: inUse,
      prime: newSet && sets.kind !== 'none' ? sets.prime.value : NOTHING,
      goesOn: next === undefined && !ends,
    };
    return { ...link, fill: fillOf(ground, link, end) };
  });
}

/** The moments within the plan at which a set of this chain is due and the next container has a new one. */
function duesOf(ground: Ground, links: readonly Link[]): readonly (Instant | null)[] {
  if (ground.sets.kind !== 'timed') return [];
  const dues = [dueNow(ground), ...links.filter((link) => link.newSet).map((link) => link.setDue)];
  const until = ground.grid.span.until;
  return dues.map((due) => due?.at ?? null).filter((at) => at === null || at < until);
}

const isFull = ({ filling, need }: Ground, links: readonly Link[]): boolean =>
  links.every(({ putUpAt, nextAt, prime, fill }) => {
    if (nextAt === null) return true;
    return needBetween(need, { from: putUpAt, until: nextAt }) + prime <= Math.min(fill, mostOf(filling));
  });

/** Each further set that is due within the plan can move the ones before it: as often as that is asked again, at most. */
const MOST_ROUNDS = 6;

/**
 * [PL1] [PL14] The best chain, its sets changed as it goes. When a set is due depends on the container that it is changed
 * with, so plans long enough for several sets are asked again with what the last answer showed; where that comes to no
 * rest, room for a new set is left in every container.
 */
export function solveChain(ground: Ground, visiting: Visiting): Solved {
  let newSets: NewSets = ground.sets.kind === 'timed' ? duesOf(ground, []) : 'all';
  for (let round = 1; ; round++) {
    const found = solve(ground, visiting, newSets);
    const links = linksOf(ground, found);
    const dues = duesOf(ground, links);
    const settled = newSets === 'all' || dues.every((due) => (newSets as readonly unknown[]).includes(due));
    if (newSets === 'all' || (settled && isFull(ground, links))) {
      return { optimum: found, links, setDue: dueNow(ground) };
    }
    newSets = settled || round === MOST_ROUNDS ? 'all' : dues;
  }
}
