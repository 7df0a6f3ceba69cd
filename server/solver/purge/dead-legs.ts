import { DisjointSets } from '../disjoint-sets.ts';
import type { MemberGeometry } from '../frame/frame-geometry.ts';
import type { Vector3 } from '../geometry/vector.ts';
import { ARGON_AIR_DIFFUSIVITY } from './argon.ts';
import { distances, tubeLength, type Tube } from './bore-graph.ts';
import { alongBore, NEAR, type Bore, type Site } from './bores.ts';
import { buriedEnds } from './buried.ts';
import { onMember } from './dam-pockets.ts';
import { alongFlow, passingTime, runs, type GasNetwork } from './gas-network.ts';
import { heightAt } from './openings.ts';
import type { Filling } from './purge-context.ts';
import type { OxygenStep } from './purge-models.ts';

/** Bore that no gas runs through, from where it hangs on bore with gas. */
export type DeadBore = {
  /** Tubes of the graph; `from` is the end nearer to the gas. */
  readonly parts: readonly { readonly bore: number; readonly from: number; readonly to: number }[];
  /** From the gas to the farthest place [mm], without what lies inside of the tubes that it sits on. */
  readonly length: number;
  /** How much higher the farthest place is than where it hangs [mm]. */
  readonly rise: number;
  /** Indices of welds that stand in it. */
  readonly welds: readonly number[];
  /** How many places it opens into bore with gas by. */
  readonly mouths: number;
  /** Whether all of them are holes under saddles. */
  readonly behindHole: boolean;
  /** Bore in it [mm], and the gas that passes where it hangs [L/min]. */
  readonly bored: number;
  readonly passing: number;
};

type Frame = {
  readonly members: readonly MemberGeometry[];
  readonly bores: readonly Bore[];
  readonly up: Vector3;
  readonly outsideDiameter: number;
};

/** The dead legs of a chamber: bore that no gas runs through, each with what hangs on it. */
export function deadBores(network: GasNetwork, sites: readonly Site[], frame: Frame): DeadBore[] {
  const { graph } = network;
  const { tubes, passages } = graph;
  const dead = tubes.map((_, index) => !runs(network, index));
  if (!dead.includes(true)) return [];
  const withGas = graph.nodes.map(() => false);
  withGas[network.feed] = true;
  for (const [edge, { a, b }] of network.edges.entries())
    if (runs(network, edge)) for (const node of [a, b]) if (node !== network.air) withGas[node] = true;
  const sources = [...withGas.keys()].filter((node) => withGas[node]);
  const isDead = (edge: number): boolean => (edge < tubes.length ? dead[edge] === true : !runs(network, edge));
  const buried = tubes.map((tube) => buriedEnds(tube, frame));
  const lengths = new Map(tubes.map((tube, edge) => [tube, tubeLength(tube) - inside(buried[edge])]));
  const lengthOf = (tube: Tube): number => lengths.get(tube) ?? 0;
  const far = distances(graph, sources, isDead, lengthOf);

  const ends = [...tubes, ...passages];
  const sets = new DisjointSets(ends.length);
  for (const node of graph.nodes.keys()) {
    if (withGas[node]) continue;
    const meeting = [...ends.keys()].filter(
      (edge) => isDead(edge) && (ends[edge]?.a === node || ends[edge]?.b === node),
    );
    for (const edge of meeting) sets.join(edge, meeting[0] ?? edge);
  }
  const deadTubes = [...tubes.keys()].filter(isDead);
  const legs = new Set(deadTubes.map((edge) => sets.of(edge)));
  return [...legs].map((leg): DeadBore => {
    const own = deadTubes.filter((edge) => sets.of(edge) === leg);
    const hung = [...ends.keys()].filter((edge) => isDead(edge) && sets.of(edge) === leg);
    const mouths = hung.flatMap((edge) =>
      [ends[edge]?.a ?? 0, ends[edge]?.b ?? 0].flatMap((node) => (withGas[node] === true ? [{ edge, node }] : [])),
    );
    return {
      ...deadBore(own, far, { ...frame, network, sites, lengthOf, buriedFrom: (edge) => buried[edge]?.from ?? 0 }),
      mouths: mouths.length,
      behindHole: mouths.length > 0 && mouths.every(({ edge }) => edge >= tubes.length),
      bored: own.reduce((sum, edge) => sum + (tubes[edge] === undefined ? 0 : tubeLength(tubes[edge])), 0),
      passing: Math.min(network.flow, ...mouths.map(({ node }) => passingFlow(network, node))),
    };
  });
}

const inside = (ends: { from: number; to: number } | undefined): number => (ends?.from ?? 0) + (ends?.to ?? 0);

/** Gas that leaves a node [L/min]. */
const passingFlow = (network: GasNetwork, node: number): number =>
  network.edges.reduce((sum, _, edge) => {
    const leaves = runs(network, edge) && alongFlow(network, edge)[0] === node;
    return leaves ? sum + Math.abs(network.flows[edge] ?? 0) : sum;
  }, 0);

/** Bores that the stream reaches into bore beside it; our own choice, within the 5 that a free jet needs to the wall. */
const MIXED_REACH = 3;

/** Whether the stream beside it keeps a dead end mixed: an open one that is no longer than three bores [mm]. */
export const isMixed = ({ length, behindHole }: DeadBore, bore: number): boolean =>
  !behindHole && length <= MIXED_REACH * bore;

function deadBore(
  own: readonly number[],
  far: readonly number[],
  work: Frame & {
    readonly network: GasNetwork;
    readonly sites: readonly Site[];
    readonly lengthOf: (tube: Tube) => number;
    readonly buriedFrom: (edge: number) => number;
  },
): Omit<DeadBore, 'mouths' | 'behindHole' | 'bored' | 'passing'> {
  const { network, members, bores, up, sites, lengthOf, buriedFrom } = work;
  const { tubes, nodes } = network.graph;
  let length = 0;
  let farthest = { bore: 0, station: 0 };
  const parts = own.flatMap((edge) => {
    const tube = tubes[edge];
    if (tube === undefined) return [];
    const [a, b] = [far[tube.a] ?? 0, far[tube.b] ?? 0];
    const reach = (a + b + lengthOf(tube)) / 2;
    if (reach >= length) {
      length = reach;
      farthest = { bore: tube.bore, station: tube.from + buriedFrom(edge) + reach - a };
    }
    const { bore, from, to } = tube;
    return [a <= b ? { bore, from, to } : { bore, from: to, to: from }];
  });
  const heightOf = ({ bore, station }: { bore: number; station: number }): number => {
    const index = bores[bore]?.member ?? -1;
    const member = members[index];
    return member === undefined ? 0 : heightAt(member, onMember(member, station), up);
  };
  const touched = own.flatMap((edge) => [tubes[edge]?.a ?? 0, tubes[edge]?.b ?? 0]);
  const nearest = touched.reduce((best, node) => ((far[node] ?? 0) < (far[best] ?? 0) ? node : best), touched[0] ?? 0);
  const hangs = nodes[nearest] ?? farthest;
  return {
    parts: [...parts].sort((one, other) => one.bore - other.bore || one.from - other.from),
    length,
    rise: heightOf(farthest) - heightOf(hangs),
    welds: [...new Set(sites.filter((site) => standsIn(site, own, work)).map(({ weld }) => weld))],
  };
}

/** Whether a weld stands in dead bore, and beside none that gas runs through. */
function standsIn(
  { member, station }: Site,
  own: readonly number[],
  { network, members, bores }: Frame & { readonly network: GasNetwork },
): boolean {
  const { tubes } = network.graph;
  const geometry = members[member];
  if (geometry === undefined) return false;
  const beside = [...tubes.keys()].filter((edge) => {
    const tube = tubes[edge];
    const bore = bores[tube?.bore ?? -1];
    if (tube === undefined || bore?.member !== member) return false;
    const along = alongBore(bore, geometry, station);
    if (along === undefined) return false;
    const seen = bore.ring ? [along, along + geometry.centreline.length] : [along];
    return seen.some((one) => one >= tube.from - NEAR && one <= tube.to + NEAR);
  });
  return (
    beside.length > 0 &&
    beside.every((edge) => own.includes(edge) || !runs(network, edge)) &&
    beside.some((edge) => own.includes(edge))
  );
}

/** Seconds until diffusion alone has cleared a dead leg [mm], t = (4 l²/π²D) ln((4/π)(C₀/C₂)); the first term of the series. */
export const clearingTime = (length: number, { start, target }: OxygenStep): number =>
  ((4 * (length / 1000) ** 2) / (Math.PI ** 2 * ARGON_AIR_DIFFUSIVITY)) * Math.log((4 / Math.PI) * (start / target));

/** Gas is never taken to stand still where more than this share of it goes. */
const LITTLE = 0.01;

/**
 * Tubes, by index, that so little gas creeps through that diffusion from both ends clears them sooner: two ways that all
 * but balance. They are dead legs like those that no gas runs through.
 *
 * @param area of the bore [mm²]
 */
export function stillTubes(network: GasNetwork, { step, volumes }: Filling, area: number): number[] {
  return network.graph.tubes.flatMap((tube, edge) => {
    if (!runs(network, edge) || Math.abs(network.flows[edge] ?? 0) > LITTLE * network.flow) return [];
    return volumes * passingTime(network, edge, area) > clearingTime(tubeLength(tube) / 2, step) ? [edge] : [];
  });
}
