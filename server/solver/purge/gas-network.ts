import { ARGON_VISCOSITY, CUBIC_METRES_PER_SECOND } from './argon.ts';
import { tubeLength, type BoreGraph } from './bore-graph.ts';
import { networkFlow, type Resistance } from './network-flow.ts';
import { ventPressure } from './vent.ts';

/** A flow under this share of the gas is none: what is left of rounding, or of two ways that balance. */
const NO_FLOW = 1e-6;

/**
 * Gas on its way through a chamber. Edges are the tubes of the graph, then its holes, then one for each vent, which
 * leads to the node `air`; `flows` [L/min] are positive from a to b.
 */
export type GasNetwork = {
  readonly graph: BoreGraph;
  readonly edges: readonly Resistance[];
  readonly flows: readonly number[];
  readonly feed: number;
  readonly air: number;
  readonly flow: number;
};

/** Pressure lost along a bore for each L/min, laminar: 128 µ L/(π d⁴) [Pa], Hagen and Poiseuille; lengths in mm. */
export const boreResistance = ({ length, bore }: { readonly length: number; readonly bore: number }): number =>
  (128 * ARGON_VISCOSITY * (length / 1000) * CUBIC_METRES_PER_SECOND) / (Math.PI * (bore / 1000) ** 4);

/**
 * Lets gas in at one node and out through vents, each at room pressure: laminar in the tubes, by Bernoulli through holes
 * and vents.
 *
 * @param vents nodes and bores [mm] of the vents
 * @param sizes bore of the tube, bore of holes under saddles [mm], and the flow [L/min]
 * @param shut tubes that gas is taken to stand still in, by index
 */
export function gasNetwork(
  graph: BoreGraph,
  feed: number,
  vents: readonly { readonly node: number; readonly bore: number }[],
  sizes: { readonly bore: number; readonly holeBore: number; readonly flow: number },
  shut: ReadonlySet<number> = new Set(),
): GasNetwork {
  const { bore, holeBore, flow } = sizes;
  const air = graph.nodes.length;
  const hole = ventPressure({ flow: 1, bore: holeBore });
  const edges = [
    ...graph.tubes.map((tube): Resistance => ({
      a: tube.a,
      b: tube.b,
      linear: boreResistance({ length: tubeLength(tube), bore }),
      square: 0,
    })),
    ...graph.passages.map(({ a, b }): Resistance => ({ a, b, linear: 0, square: hole })),
    ...vents.map((vent): Resistance => ({
      a: vent.node,
      b: air,
      linear: 0,
      square: ventPressure({ flow: 1, bore: vent.bore }),
    })),
  ];
  // a tube that leads back to its own node carries nothing
  const open = shut.size === 0 ? edges : edges.map((edge, index) => (shut.has(index) ? { ...edge, b: edge.a } : edge));
  return { graph, edges, flows: networkFlow(air + 1, open, { from: feed, to: air, flow }), feed, air, flow };
}

/** Whether gas runs through an edge, and not just what rounding leaves. */
export const runs = ({ flows, flow }: Pick<GasNetwork, 'flows' | 'flow'>, edge: number): boolean =>
  Math.abs(flows[edge] ?? 0) > NO_FLOW * flow;

/** The node that an edge's gas comes from, and the one that it goes to. */
export function alongFlow({ edges, flows }: Pick<GasNetwork, 'edges' | 'flows'>, edge: number): [number, number] {
  const { a, b } = edges[edge] ?? { a: 0, b: 0 };
  return (flows[edge] ?? 0) >= 0 ? [a, b] : [b, a];
}

/** Seconds that gas takes through a tube of the graph; nothing through a hole or a vent. */
export function passingTime({ graph, flows }: GasNetwork, edge: number, area: number): number {
  const tube = graph.tubes[edge];
  return tube === undefined ? 0 : (60 * area * tubeLength(tube)) / 1e6 / Math.abs(flows[edge] ?? 0);
}
