/**
 * Which cartons are opened for the pours of a plan? Chosen once the pours are known: so that the least is thrown away, then
 * the fewest are opened, and the oldest is used first. What is kept cold goes only into a container that comes down before
 * the carton's own limit.
 */
import { after, type Duration, type Instant, instant } from '../../base/instant.ts';
import { subtract, type Volume, volume } from '../../base/volume.ts';
import type { CartonUse } from '../plan.ts';

/** A pour: how much feed it takes from cartons, when, and until when it hangs. In order of time. */
export type Pour = { readonly at: Instant; readonly until: Instant; readonly needs: Volume };

export type Store = {
  /** The sizes that cartons come in; none where feed is not poured from cartons. */
  readonly sizes: readonly Volume[];
  /** How long what is left in an opened one may be kept; null where it may not. */
  readonly keepFor: Duration | null;
  readonly opened: readonly { readonly id: string; readonly openedAt: Instant; readonly remaining: Volume }[];
  /** The end of the plan: what may still be kept then is not thrown away. */
  readonly end: Instant;
};

type Open = { readonly name: string; readonly keptUntil: Instant; readonly left: Volume };
type Uses = readonly (readonly CartonUse[])[];

/** The cartons of a pour, and until when the oldest of those that were open before may hang. */
export type Chosen = { readonly uses: readonly CartonUse[]; readonly oldestUntil: Instant | null };
type Choice = {
  readonly wasted: number;
  readonly opened: number;
  /** What is still kept at the end of the plan. */
  readonly kept: number;
  readonly uses: Uses;
};

const COSTS = ['wasted', 'opened', 'kept'] as const;

function isLess(a: Choice, b: Choice): boolean {
  const differs = COSTS.find((cost) => a[cost] !== b[cost]);
  return differs !== undefined && a[differs] < b[differs];
}

const volumeOf = (cartons: readonly Open[]): number => cartons.reduce((sum, one) => sum + one.left, 0);

/** Cartons that hold `amount` together and would not without any one of them; larger ones first. */
function coversOf(amount: number, sizes: readonly number[]): readonly (readonly number[])[] {
  const [size, ...smaller] = sizes;
  if (amount <= 0 || size === undefined) return amount <= 0 ? [[]] : [];
  const most = Math.ceil(amount / size);
  // Of the smallest as many as are wanted; of others as many as that, or fewer and smaller ones.
  const least = smaller.length === 0 ? most : 0;
  return Array.from({ length: most - least + 1 }, (_, less) => most - less)
    .flatMap((count) => {
      const large = Array.from({ length: count }, () => size);
      return coversOf(amount - count * size, smaller).map((rest) => [...large, ...rest]);
    })
    .filter((cover) => {
      const spare = cover.reduce((sum, one) => sum + one, 0) - amount;
      return spare < (cover.at(-1) ?? Number.POSITIVE_INFINITY);
    });
}

const keep = ({ name, left, keptUntil }: Open, take: Volume): CartonUse => ({
  carton: name,
  take,
  left,
  keepUntil: left > 0 ? keptUntil : null,
});

/** What the pour takes from cartons already open, the oldest first; one too old for it is too old for those after it. */
function takeOpened(open: readonly Open[], pour: Pour, end: Instant) {
  let missing = pour.needs;
  let wasted = 0;
  const [uses, kept]: [CartonUse[], Open[]] = [[], []];
  for (const carton of open) {
    if (carton.keptUntil < pour.until) {
      if (carton.keptUntil < end) wasted += carton.left;
      else kept.push(carton);
      continue;
    }
    const take = volume(Math.min(carton.left, missing));
    missing = subtract(missing, take);
    const rest = { ...carton, left: subtract(carton.left, take) };
    if (take > 0) uses.push(keep(rest, take));
    if (rest.left > 0) kept.push(rest);
  }
  return { uses, kept, wasted, missing };
}

/** New cartons emptied one after the other; what the last one leaves is kept if it may be. */
function openNew(cover: readonly number[], missing: Volume, pour: number, keptUntil: Instant | null) {
  const spare = cover.reduce((sum, one) => sum + one, 0) - missing;
  const uses = cover.map((size, index): CartonUse => {
    const left = volume(index === cover.length - 1 ? spare : 0);
    return {
      carton: `new:${pour}.${index}`,
      take: volume(size - left),
      left,
      keepUntil: left > 0 ? keptUntil : null,
    };
  });
  const name = `new:${pour}.${cover.length - 1}`;
  const kept: readonly Open[] =
    spare > 0 && keptUntil !== null ? [{ name, keptUntil, left: volume(spare) }] : [];
  return { uses, kept, wasted: keptUntil === null ? spare : 0 };
}

function bestFrom(pours: readonly Pour[], store: Store) {
  const sizes = store.sizes.filter((size) => size > 0).toSorted((a, b) => b - a);
  const known = new Map<string, Choice>();
  const best = (index: number, open: readonly Open[]): Choice => {
    const key = `${index} ${open.map((one) => `${one.name} ${one.left}`).join(' ')}`;
    const found = known.get(key) ?? find(index, open);
    known.set(key, found);
    return found;
  };
  const find = (index: number, open: readonly Open[]): Choice => {
    const pour = pours[index];
    if (pour === undefined) {
      const wasted = volumeOf(open.filter((one) => one.keptUntil < store.end));
      return { wasted, opened: 0, kept: volumeOf(open) - wasted, uses: [] };
    }
    const taken = takeOpened(open, pour, store.end);
    const keptUntil = store.keepFor === null ? null : after(pour.at, store.keepFor);
    return coversOf(taken.missing, sizes)
      .map((cover): Choice => {
        const fresh = openNew(cover, taken.missing, index, keptUntil);
        const rest = best(index + 1, [...taken.kept, ...fresh.kept]);
        return {
          wasted: taken.wasted + fresh.wasted + rest.wasted,
          opened: cover.length + rest.opened,
          kept: rest.kept,
          uses: [[...taken.uses, ...fresh.uses], ...rest.uses],
        };
      })
      .reduce((a, b) => (isLess(b, a) ? b : a));
  };
  return best;
}

/** Cartons from the store are numbered as they are opened. */
function numbered(uses: Uses): Uses {
  const numbers = new Map<string, string>();
  const nameOf = (carton: string): string => {
    if (!carton.startsWith('new:')) return carton;
    const name = numbers.get(carton) ?? `new:${numbers.size + 1}`;
    numbers.set(carton, name);
    return name;
  };
  return uses.map((some) => some.map((use) => ({ ...use, carton: nameOf(use.carton) })));
}

/** [PL21] The cartons for each pour. Least thrown away, then fewest opened, then least still open; the oldest first. */
export function chooseCartons(pours: readonly Pour[], store: Store): readonly Chosen[] {
  if (!store.sizes.some((size) => size > 0)) return pours.map(() => ({ uses: [], oldestUntil: null }));
  const { keepFor } = store;
  const opened =
    keepFor === null
      ? []
      : store.opened
          .filter((one) => one.remaining > 0)
          .map(({ id, openedAt, remaining }) => ({
            name: `open:${id}`,
            keptUntil: after(openedAt, keepFor),
            left: remaining,
          }))
          .toSorted((a, b) => a.keptUntil - b.keptUntil);
  const uses = numbered(bestFrom(pours, store)(0, opened).uses);
  const until = new Map(opened.map((one) => [one.name, one.keptUntil]));
  return uses.map((some, index) => {
    const kept = some.flatMap((use) => until.get(use.carton) ?? []);
    const at = (pours[index] as Pour).at;
    for (const use of some) {
      if (!until.has(use.carton) && keepFor !== null) until.set(use.carton, after(at, keepFor));
    }
    return { uses: some, oldestUntil: kept.length === 0 ? null : instant(Math.min(...kept)) };
  });
}
