/**
 * Of all plans of the least cost, which has the earliest visits, and then the earliest starts?
 * All of them are followed forwards together, visit by visit, always to the earliest place that keeps the least cost;
 * what may differ among those that come to the same visit is which container is up.
 */
import type { Gaps } from './gaps.ts';
import type { Rows } from './rows.ts';
import { canFollow, type Succession, wasteUntil } from './succession.ts';

export type Path = { readonly visits: readonly number[]; readonly starts: readonly number[] };

/** At a visit, with the container that is up after it. */
type Node = { readonly start: number; readonly place: number; readonly after: Node[]; ends: boolean };

export function earliestPath(succession: Succession, gaps: Gaps, rows: Rows): Path {
  const root: Node = { start: 0, place: 0, after: [], ends: false };
  const layers = [[root]];
  for (;;) {
    const nodes = layers.at(-1)!;
    const place = Math.min(...nodes.map(nextPlace));
    if (place === Number.POSITIVE_INFINITY) break;
    layers.push(step(nodes, place));
  }
  return pathFrom(root, layers);

  function lastPlace(node: Node): number {
    return Math.min(gaps.last[node.place]!, succession.rowEnd[node.start]!);
  }

  /** The earliest place of a next visit that keeps the least cost. */
  function nextPlace(node: Node): number {
    const last = lastPlace(node);
    for (let next = node.place + 1; next <= last; next++)
      if (staysUp(node, next) || isFollowed(node, next)) return next;
    return Number.POSITIVE_INFINITY;
  }

  function step(nodes: readonly Node[], place: number): Node[] {
    const next = new Map<number, Node>();
    for (const node of nodes) {
      if (place > lastPlace(node)) continue;
      for (const start of [
        ...(isFollowed(node, place) ? [place] : []),
        ...(staysUp(node, place) ? [node.start] : []),
      ]) {
        const child = next.get(start) ?? { start, place, after: [], ends: false };
        next.set(start, child);
        node.after.push(child);
      }
    }
    return [...next.values()];
  }

  function keepsLeast(node: Node, place: number, cost: number, waste: number): boolean {
    const now = rows.base[node.start]! + node.place;
    return rows.cost[now] === gaps.cost[gaps.base[node.place]! + place]! + cost && rows.waste[now] === waste;
  }

  function staysUp(node: Node, place: number): boolean {
    const then = rows.base[node.start]! + place;
    return keepsLeast(node, place, rows.cost[then]!, rows.waste[then]!);
  }

  function isFollowed(node: Node, place: number): boolean {
    return (
      canFollow(succession.following, node.start, place) &&
      keepsLeast(
        node,
        place,
        rows.startCost[place]!,
        rows.startWaste[place]! + wasteUntil(succession, node.start, place),
      )
    );
  }
}

/** Nodes that were left behind by an earlier visit elsewhere lead to no end; a start comes before staying up. */
function pathFrom(root: Node, layers: readonly (readonly Node[])[]): Path {
  for (const node of layers.at(-1)!) node.ends = true;
  for (const nodes of layers.toReversed())
    for (const node of nodes) node.ends ||= node.after.some((next) => next.ends);
  const [visits, starts]: [number[], number[]] = [[], []];
  for (let node = root; ; ) {
    const next = node.after.find((one) => one.ends);
    if (next === undefined) return { visits, starts };
    visits.push(next.place);
    if (next.start === next.place) starts.push(next.place);
    node = next;
  }
}
