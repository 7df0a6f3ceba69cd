import { alongBore, NEAR, type Opening } from './bores.ts';
import type { ChamberFlow } from './chamber-flow.ts';
import { runs, type GasNetwork } from './gas-network.ts';
import { networkFlow, type Resistance } from './network-flow.ts';
import { ventBore } from './vent.ts';

/** A hole that gas passes on its way from a weld pool to the air: flow [L/min], bore [mm], pressure lost there [Pa]. */
export type HoleDrop = {
  readonly flow: number;
  readonly bore: number;
  readonly pressure: number;
  /** The vent that it is; null: a hole under a saddle. */
  readonly vent: Opening | null;
};

/** The weld pool of a chamber that bears the most. */
export type PoolLoad = {
  readonly chamber: ChamberFlow;
  /** Index of its weld. */
  readonly weld: number;
  /** Pressure behind it [Pa]; what of it is lost in bores, and at each hole on the way to the air. */
  readonly pressure: number;
  readonly inBores: number;
  readonly holes: readonly HoleDrop[];
};

/** Pressure that is lost along an edge, with the sign of its flow [Pa]. */
const lost = ({ linear, square }: Resistance, flow: number): number => flow * (linear + square * Math.abs(flow));

/** The edge that leads on from each node towards the air: where gas leaves it with the gas, else over still bore. */
function onwards({ edges, air }: GasNetwork, flows: readonly number[], flow: number): number[] {
  const next = new Array<number>(air + 1).fill(-1);
  const queue = [air];
  const reached = new Set(queue);
  const incident = Array.from({ length: air + 1 }, (): number[] => []);
  for (const [edge, { a, b }] of edges.entries()) {
    incident[a]?.push(edge);
    incident[b]?.push(edge);
  }
  for (const node of queue)
    for (const edge of incident[node] ?? []) {
      const { a, b } = edges[edge] ?? { a: node, b: node };
      const other = a === node ? b : a;
      if (reached.has(other)) continue;
      reached.add(other);
      next[other] = edge;
      queue.push(other);
    }
  const carries = new Array<number>(air + 1).fill(0);
  for (const [edge, { a, b }] of edges.entries()) {
    if (!runs({ flows, flow }, edge)) continue;
    const from = (flows[edge] ?? 0) >= 0 ? a : b;
    const carried = Math.abs(flows[edge] ?? 0);
    if (carried <= (carries[from] ?? 0)) continue;
    carries[from] = carried;
    next[from] = edge;
  }
  return next;
}

/**
 * Pressure behind each weld pool of a chamber at a flow [L/min], where it is the highest: what is lost from there to the
 * air, laminar along the bores and by Bernoulli at every hole. Null where there is no way for gas.
 */
export function poolLoad(chamber: ChamberFlow, flow: number): PoolLoad | null {
  const { network, sites, bores, members } = chamber;
  if (network === null || chamber.vents.length === 0) return null;
  const { graph, edges, feed, air } = network;
  const flows = networkFlow(air + 1, edges, { from: feed, to: air, flow });
  const next = onwards(network, flows, flow);
  const pressures = new Array<number>(air + 1).fill(0);
  const wayFrom = (from: number): number[] => {
    const way: number[] = [];
    for (let node = from; node !== air && way.length <= edges.length;) {
      const edge = next[node] ?? -1;
      const ends = edges[edge];
      if (ends === undefined) break;
      way.push(edge);
      node = ends.a === node ? ends.b : ends.a;
    }
    return way;
  };
  for (const node of graph.nodes.keys())
    pressures[node] = wayFrom(node).reduce((sum, edge) => {
      const one = edges[edge];
      return one === undefined ? sum : sum + Math.abs(lost(one, flows[edge] ?? 0));
    }, 0);

  let most: { weld: number; pressure: number; node: number } | null = null;
  for (const site of sites) {
    const member = members[site.member];
    if (member === undefined) continue;
    for (const tube of graph.tubes) {
      const bore = bores[tube.bore];
      if (bore?.member !== site.member) continue;
      const along = alongBore(bore, member, site.station);
      if (along === undefined) continue;
      const seen = (bore.ring ? [along, along + member.centreline.length] : [along]).find(
        (one) => one >= tube.from - NEAR && one <= tube.to + NEAR,
      );
      if (seen === undefined) continue;
      const [atA, atB] = [pressures[tube.a] ?? 0, pressures[tube.b] ?? 0];
      const share = tube.to > tube.from ? Math.min(1, Math.max(0, (seen - tube.from) / (tube.to - tube.from))) : 0;
      const pressure = atA + share * (atB - atA);
      if (most === null || pressure > most.pressure)
        most = { weld: site.weld, pressure, node: atA <= atB ? tube.a : tube.b };
    }
  }
  if (most === null) return null;
  const firstVent = graph.tubes.length + graph.passages.length;
  const holes = wayFrom(most.node).flatMap((edge): HoleDrop[] => {
    const one = edges[edge];
    if (one === undefined || edge < graph.tubes.length) return [];
    const through = Math.abs(flows[edge] ?? 0);
    const vent = edge < firstVent ? null : (chamber.vents[edge - firstVent] ?? null);
    return [{ flow: through, bore: ventBore({ flow: 1, pressure: one.square }), pressure: lost(one, through), vent }];
  });
  const { weld, pressure } = most;
  const inBores = Math.max(0, pressure - holes.reduce((sum, hole) => sum + hole.pressure, 0));
  return { chamber, weld, pressure, inBores, holes };
}
