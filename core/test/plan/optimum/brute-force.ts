/**
 * The optimum of a tiny story by trying everything: every set of visits, and every set of those that start a container.
 */
import { deviationOf, fillOf, inWindow, openSlots, type Story, upLasts, wasteOf } from './story.ts';

export type Best = {
  readonly cost: readonly [containers: number, visits: number, deviation: number, waste: number];
  readonly visits: readonly number[];
  readonly starts: readonly number[];
};

/** Negative when `a` comes first; a list comes before one that only goes further. */
export function compareLists(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < Math.min(a.length, b.length); i++) if (a[i] !== b[i]) return a[i]! - b[i]!;
  return a.length - b.length;
}

const compareBest = (a: Best, b: Best): number =>
  compareLists(a.cost, b.cost) || compareLists(a.visits, b.visits) || compareLists(a.starts, b.starts);

function subsets(of: readonly number[]): readonly (readonly number[])[] {
  const sets: number[][] = [[]];
  for (const one of of) sets.push(...sets.map((set) => [...set, one]));
  return sets;
}

function deviationWith(story: Story, visits: readonly number[]): number {
  return story.tasks.reduce((sum, task) => {
    const usable = visits.filter((slot) => inWindow(story, task, slot));
    return sum + Math.min(...usable.map((slot) => deviationOf(story, task, slot)));
  }, 0);
}

/** What the chain of these starts wastes, or null where it cannot be. */
function wasteWith(story: Story, starts: readonly number[]): number | null {
  const ends = [...starts.slice(1), story.slots];
  const first = starts[0] ?? story.slots;
  if (!upLasts(story.feed, first)) return null;
  if (starts.some((start, i) => fillOf(story.feed, start, ends[i]!) === null)) return null;
  return starts.reduce((sum, start, i) => sum + wasteOf(story, start, ends[i]!), wasteOf(story, null, first));
}

/** Null where there is no plan at all. */
export function bruteForce(story: Story): Best | null {
  let best: Best | null = null;
  const chains = subsets(openSlots(story)).flatMap((starts) => {
    const waste = wasteWith(story, starts);
    return waste === null ? [] : [{ starts, waste }];
  });
  const fewest = Math.min(...chains.map(({ starts }) => starts.length));
  const shortest = chains.filter(({ starts }) => starts.length === fewest);
  for (const visits of subsets(openSlots(story))) {
    const deviation = deviationWith(story, visits);
    if (deviation === Number.POSITIVE_INFINITY) continue;
    for (const { starts, waste } of shortest) {
      if (!starts.every((start) => visits.includes(start))) continue;
      const found: Best = { cost: [fewest, visits.length, deviation, waste], visits, starts };
      if (best === null || compareBest(found, best) < 0) best = found;
    }
  }
  return best;
}
