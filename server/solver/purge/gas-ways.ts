import { alongFlow, passingTime, runs, type GasNetwork } from './gas-network.ts';
import { CLEARLY_MORE } from './rounding.ts';

/** A way of the gas from the feed to a vent: edges in order, the vent by index, and the share of the gas that takes it. */
export type GasWay = { readonly edges: readonly number[]; readonly vent: number; readonly share: number };

/** More ways than a frame has in a shop; a grid of tubes could have thousands. */
const MOST_WAYS = 60;

/** The edges that gas leaves each node by. */
function leaving(network: GasNetwork): number[][] {
  const out = Array.from({ length: network.air + 1 }, (): number[] => []);
  for (const edge of network.edges.keys()) if (runs(network, edge)) out[alongFlow(network, edge)[0]]?.push(edge);
  return out;
}

/** The edge that leads through the first vent to the air; those of the others follow. */
const firstOutlet = ({ graph }: GasNetwork): number => graph.tubes.length + graph.passages.length;

/** The way to the air by the edge that each node was reached by (−1: none), from the feed on. */
function wayBy(network: GasNetwork, by: readonly number[]): number[] {
  const edges: number[] = [];
  for (let node = network.air; (by[node] ?? -1) >= 0;) {
    const edge = by[node] ?? -1;
    edges.unshift(edge);
    [node] = alongFlow(network, edge);
  }
  return edges;
}

/**
 * Longest time that gas is on its way from the feed to a vent [s], whatever way it takes, and the edges of that way.
 * Pressure falls along every way, so that no way leads round in a circle and the latest arrival is found node by node.
 *
 * @param area of the bore [mm²]
 */
export function slowestWay(network: GasNetwork, area: number): { residence: number; edges: readonly number[] } {
  const out = leaving(network);
  const waiting = new Array<number>(network.air + 1).fill(0);
  for (const edge of out.flat()) {
    const [, to] = alongFlow(network, edge);
    waiting[to] = (waiting[to] ?? 0) + 1;
  }
  const latest = new Array<number>(network.air + 1).fill(0);
  const by = new Array<number>(network.air + 1).fill(-1);
  const ready = [network.feed];
  for (const node of ready) {
    for (const edge of out[node] ?? []) {
      const [, to] = alongFlow(network, edge);
      const arrival = (latest[node] ?? 0) + passingTime(network, edge, area);
      if ((by[to] ?? -1) < 0 || arrival > CLEARLY_MORE * (latest[to] ?? 0)) {
        latest[to] = arrival;
        by[to] = edge;
      }
      waiting[to] = (waiting[to] ?? 0) - 1;
      if (waiting[to] === 0) ready.push(to);
    }
  }
  return { residence: latest[network.air] ?? 0, edges: wayBy(network, by) };
}

/**
 * The ways of the gas, in the order of the edges. Streams that meet mix before they part again, so that the share
 * of a way is the product of the shares that it takes at each node.
 *
 * @returns at most 60 ways; `all` is false where there are more
 */
export function gasWays(network: GasNetwork): { ways: GasWay[]; all: boolean } {
  const out = leaving(network);
  const outlets = firstOutlet(network);
  const ways: GasWay[] = [];
  let all = true;
  const follow = (node: number, edges: readonly number[], share: number): void => {
    if (ways.length >= MOST_WAYS) {
      all = false;
      return;
    }
    const on = out[node] ?? [];
    const sum = on.reduce((total, edge) => total + Math.abs(network.flows[edge] ?? 0), 0);
    for (const edge of on) {
      const part = (share * Math.abs(network.flows[edge] ?? 0)) / sum;
      const [, to] = alongFlow(network, edge);
      if (to === network.air) ways.push({ edges, vent: edge - outlets, share: part });
      else follow(to, [...edges, edge], part);
    }
  };
  follow(network.feed, [], 1);
  return { ways, all };
}

/** Gas that is left when the widest ways are taken off: rounding. */
const REST = 1e-9;

/**
 * The stream taken apart into ways, the widest first: each takes as much as its narrowest part still carries, so that
 * there are no more ways than edges and their shares make up all of the gas.
 */
export function widestWays(network: GasNetwork): GasWay[] {
  const outlets = firstOutlet(network);
  const left = network.flows.map((flow) => Math.abs(flow));
  const ways: GasWay[] = [];
  for (;;) {
    const { edges, carried } = widestWay(network, left);
    const last = edges.at(-1);
    if (last === undefined || carried <= REST * network.flow) break;
    for (const edge of edges) left[edge] = (left[edge] ?? 0) - carried;
    ways.push({ edges: edges.slice(0, -1), vent: last - outlets, share: carried });
  }
  const all = ways.reduce((sum, { share }) => sum + share, 0);
  return ways.map((way) => ({ ...way, share: way.share / all }));
}

/** The way to the air whose narrowest part still carries most, nodes taken in the order of what reaches them. */
function widestWay(network: GasNetwork, left: readonly number[]): { edges: number[]; carried: number } {
  const out = leaving(network);
  const reached = new Array<number>(network.air + 1).fill(0);
  const by = new Array<number>(network.air + 1).fill(-1);
  const done = new Set<number>();
  reached[network.feed] = Infinity;
  for (;;) {
    let node = -1;
    for (const [one, most] of reached.entries())
      if (most > 0 && !done.has(one) && (node < 0 || most > CLEARLY_MORE * (reached[node] ?? 0))) node = one;
    if (node < 0 || node === network.air) break;
    done.add(node);
    for (const edge of out[node] ?? []) {
      const [, to] = alongFlow(network, edge);
      const carried = Math.min(reached[node] ?? 0, left[edge] ?? 0);
      if (carried <= CLEARLY_MORE * (reached[to] ?? 0)) continue;
      reached[to] = carried;
      by[to] = edge;
    }
  }
  return { edges: wayBy(network, by), carried: reached[network.air] ?? 0 };
}
