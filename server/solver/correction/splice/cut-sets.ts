import type { Vector3 } from '../../geometry/vector.ts';
import { dot } from '../../geometry/vector.ts';
import { placeAt } from '../../geometry/centreline.ts';
import type { Edge, FrameGraph } from './frame-graph.ts';

/** Stretches of tube whose cutting parts a frame in two, each half in one piece: numbers of the graph's edges. */
export type CutSet = readonly number[];

/** Stretches that one cut set may go through when it is sought stretch by stretch; more only along a plane. */
const MOST_EDGES = 4;

/** Steps of the search for each count of cuts, so that a wild frame ends too; our own choice. */
const MOST_STEPS = 20_000;

/** Planes that are laid through the frame in each direction. */
const PLANES = 9;

/**
 * Every way of parting a frame in two with few cuts, and every way of parting it along a plane: the plane may cross as
 * many members as it likes.
 *
 * @param usable whether a joint could stand on an edge
 * @param axes directions in which planes are laid through the frame
 * @returns complete false where the search for few cuts ended before it had seen all
 */
export function cutSets(
  graph: FrameGraph,
  usable: (edge: number) => boolean,
  axes: readonly Vector3[],
): { sets: CutSet[]; complete: boolean } {
  const found = new Map<string, CutSet>();
  const take = (sides: Int8Array): void => {
    const set = graph.edges.flatMap((edge, index) => (sides[edge.start] === sides[edge.finish] ? [] : [index]));
    if (set.length === 0 || !set.every(usable) || !eachInOnePiece(graph, sides)) return;
    found.set(set.join(), set);
  };
  // an edge that ends where it began (a ring that nothing sits on) parts nothing when it is cut once
  const few = fewCuts(graph);
  for (const sides of few.found) take(sides);
  for (const axis of axes) for (const sides of alongPlanes(graph, axis)) take(sides);
  return { sets: [...found.values()].sort((a, b) => a.length - b.length), complete: few.complete };
}

/** The vertices that edges really end at, each after one that it hangs together with. */
function orderOf({ edges }: FrameGraph): number[] {
  const near = new Map<number, number[]>();
  const add = (from: number, to: number) => near.set(from, [...(near.get(from) ?? []), to]);
  for (const { start, finish } of edges) {
    add(start, finish);
    add(finish, start);
  }
  const order: number[] = [];
  const seen = new Set<number>();
  for (const root of near.keys()) {
    const waiting = seen.has(root) ? [] : [root];
    seen.add(root);
    for (let at = waiting.shift(); at !== undefined; at = waiting.shift()) {
      order.push(at);
      for (const next of near.get(at) ?? []) {
        if (seen.has(next)) continue;
        seen.add(next);
        waiting.push(next);
      }
    }
  }
  return order;
}

/**
 * Every split of the vertices that crosses few edges: sides are given out one by one, and too many crossings end it. One
 * crossing is tried before two, so that what is left out for time are the larger sets.
 */
function fewCuts(graph: FrameGraph): { found: Int8Array[]; complete: boolean } {
  const order = orderOf(graph);
  // a cut set that leaves each half in one piece crosses every loop twice or not at all: one edge more than there are loops
  const most = Math.min(MOST_EDGES, graph.edges.length - order.length + 2);
  const sides = new Int8Array(graph.vertices).fill(-1);
  const meeting = order.map((vertex) =>
    graph.edges.filter(({ start, finish }) => (start === vertex) !== (finish === vertex)),
  );
  const found: Int8Array[] = [];
  let [steps, allowed, complete] = [0, 0, true];
  const give = (place: number, crossed: number): void => {
    steps += 1;
    if (steps > MOST_STEPS) complete = false;
    if (crossed > allowed || steps > MOST_STEPS) return;
    const vertex = order[place];
    if (vertex === undefined) {
      if (crossed === allowed) found.push(sides.slice());
      return;
    }
    for (const side of place === 0 ? [0] : [0, 1]) {
      sides[vertex] = side;
      const more = (meeting[place] ?? []).filter((edge: Edge) => {
        const other = sides[edge.start === vertex ? edge.finish : edge.start];
        return other !== -1 && other !== side;
      });
      give(place + 1, crossed + more.length);
    }
    sides[vertex] = -1;
  };
  for (allowed = 1; allowed <= most; allowed += 1) {
    steps = 0;
    give(0, 0);
  }
  return { found, complete };
}

/** Splits by planes square to an axis, as far from each other as the frame is long. */
function alongPlanes(graph: FrameGraph, axis: Vector3): Int8Array[] {
  const heights = new Map<number, number>();
  for (const { member, from, to, start, finish } of graph.edges) {
    const line = graph.members[member]?.centreline;
    if (line === undefined) continue;
    for (const [vertex, station] of [
      [start, from],
      [finish, to > line.length ? to - line.length : to],
    ] as const) {
      const point = placeAt(line, station)?.point;
      if (point !== undefined) heights.set(vertex, dot(point, axis));
    }
  }
  let [low, high] = [Infinity, -Infinity];
  for (const height of heights.values()) [low, high] = [Math.min(low, height), Math.max(high, height)];
  return Array.from({ length: PLANES }, (_, index) => {
    const at = low + ((high - low) * (index + 0.5)) / PLANES;
    const sides = new Int8Array(graph.vertices);
    for (const [vertex, height] of heights) sides[vertex] = height > at ? 1 : 0;
    return sides;
  });
}

/** Whether each side of a split hangs together by itself. */
function eachInOnePiece(graph: FrameGraph, sides: Int8Array): boolean {
  const order = orderOf(graph);
  for (const side of [0, 1]) {
    const own = order.filter((vertex) => sides[vertex] === side);
    const [root] = own;
    if (root === undefined) return false;
    const seen = new Set([root]);
    for (let grown = true; grown;) {
      grown = false;
      for (const { start, finish } of graph.edges) {
        if (sides[start] !== side || sides[finish] !== side || seen.has(start) === seen.has(finish)) continue;
        seen.add(start);
        seen.add(finish);
        grown = true;
      }
    }
    if (seen.size !== own.length) return false;
  }
  return true;
}
