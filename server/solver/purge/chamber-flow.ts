import type { Purge } from '../../job/purge.ts';
import type { MemberGeometry } from '../frame/frame-geometry.ts';
import { alongBore, boreAt, connectedBores, wholeBores, type Bore, type Opening, type Site } from './bores.ts';
import { boreGraph, nodeAt, type BoreGraph } from './bore-graph.ts';
import { damOpenings, damPockets, onMember } from './dam-pockets.ts';
import { atOnePlace, feedAndVents, usableOpenings, type Passing } from './feed-and-vents.ts';
import { deadBores, isMixed, stillTubes, type DeadBore } from './dead-legs.ts';
import { gasNetwork, type GasNetwork } from './gas-network.ts';
import { slowestWay } from './gas-ways.ts';
import { freeBore } from './lance.ts';
import { heightAt } from './openings.ts';
import type { PurgeContext } from './purge-context.ts';

/** A chamber with its gas, in plain numbers. */
export type ChamberFlow = Passing & {
  readonly number: number;
  readonly extent: Purge['extent'];
  readonly bores: readonly Bore[];
  readonly openings: readonly Opening[];
  readonly sites: readonly Site[];
  /** Of the whole frame; bores and sites name them by index. */
  readonly members: readonly MemberGeometry[];
  /** Welds made while it is filled, by index, in order. */
  readonly welds: readonly number[];
  /** Bore in it [mm], and what that holds [L]. */
  readonly length: number;
  readonly litres: number;
  readonly graph: BoreGraph;
  /** null: there is no way in or out. */
  readonly network: GasNetwork | null;
  /** Longest time of the gas on its way [s]; without a way what the flow takes to fill it once. */
  readonly residence: number;
  /** With the dead ends that the stream mixes, and never under what the flow takes to fill all of it once [s]. */
  readonly mixing: number;
  /** Bore that clears by diffusion alone; dead ends that the stream beside them mixes are none of it. */
  readonly dead: readonly DeadBore[];
  /** Edges of that way. */
  readonly slowest: readonly number[];
};

/** Chambers that were worked out for a context: its purge and the choices of gas beside it ask for the same. */
const KNOWN = new WeakMap<PurgeContext, Map<Purge['extent'], readonly ChamberFlow[]>>();

/**
 * The chambers that are filled for the welds: bores that connect and hold a place that a weld heats, whole, or as pockets
 * between dams. Numbered from 1 in the order of the frame's members. Worked out once for each context.
 */
export function chamberFlows(context: PurgeContext, extent: Purge['extent']): readonly ChamberFlow[] {
  const known = KNOWN.get(context) ?? new Map<Purge['extent'], readonly ChamberFlow[]>();
  KNOWN.set(context, known);
  const found = known.get(extent) ?? flowsOf(context, extent);
  known.set(extent, found);
  return found;
}

function flowsOf(context: PurgeContext, extent: Purge['extent']): ChamberFlow[] {
  const { members, holes, sites, openings, ventBore: vent, up, purge } = context;
  if (sites.length === 0) return [];
  const dams = extent === 'dams';
  const bores = dams ? damPockets(sites, holes, members, purge.damDistance) : wholeBores(members);
  const solid = openings.filter(({ kind }) => kind !== 'gap');
  const heightOf = (member: number, station: number): number => {
    const geometry = members[member];
    return geometry === undefined ? 0 : heightAt(geometry, station, up);
  };
  const inside = new Map<number, { sites: Site[]; openings: Opening[] }>();
  const of = (index: number) => {
    const known = inside.get(index) ?? { sites: [], openings: [] };
    inside.set(index, known);
    return known;
  };
  for (const site of sites) {
    const index = boreAt(bores, members, site.member, site.station);
    if (index !== undefined) of(index).sites.push(site);
  }
  for (const opening of openings) {
    const index = boreAt(bores, members, opening.member, opening.station);
    if (index !== undefined) of(index).openings.push(opening);
  }
  if (dams)
    for (const [index, pocket] of bores.entries())
      of(index).openings.push(...damOpenings(pocket, { members, solid, bore: vent, heightAt: heightOf }));
  const order = new Map(openings.map((opening, index) => [opening, index]));
  const flows: ChamberFlow[] = [];
  for (const group of connectedBores(bores, holes, members)) {
    const own = group.flatMap((index) => of(index).sites);
    if (own.length === 0) continue;
    const found = group
      .flatMap((index) => of(index).openings)
      .sort((a, b) => (order.get(a) ?? openings.length) - (order.get(b) ?? openings.length));
    const chamber = {
      number: flows.length + 1,
      extent,
      bores: group.flatMap((index) => bores[index] ?? []),
      openings: found,
      sites: own,
    };
    flows.push(filled(chamber, context));
  }
  return flows;
}

type Found = Pick<ChamberFlow, 'number' | 'extent' | 'bores' | 'openings' | 'sites'>;

/** Leads gas through a chamber. */
function filled(chamber: Found, context: PurgeContext): ChamberFlow {
  const { members, holes, purge, bore, area, up } = context;
  const { bores, openings, sites } = chamber;
  const length = bores.reduce((sum, one) => sum + one.to - one.from, 0);
  const litres = (area * length) / 1e6;
  const tip = lanceTip(chamber, context);
  const places = tip === null ? openings : [...openings, tip];
  const graph = boreGraph(bores, members, holes, places);
  const passing = feedAndVents({ bores, members, graph, openings }, context.typed, bore);
  const found = {
    ...chamber,
    ...passing,
    members,
    welds: [...new Set(sites.map(({ weld }) => weld))].sort((a, b) => a - b),
    length,
    litres,
    graph,
  };
  const flow = purge.prePurgeFlow;
  const enters = passing.lance ? (tip ?? passing.feed) : passing.feed;
  const feed = enters === null ? undefined : nodeAt(graph, bores, members, enters);
  const once = (60 * litres) / flow;
  if (feed === undefined) return { ...found, network: null, residence: once, mixing: once, slowest: [], dead: [] };
  const vents = passing.vents.map((one) => ({
    node: nodeAt(graph, bores, members, one) ?? 0,
    bore: freeBore(one, passing),
  }));
  const sizes = { bore, holeBore: Math.min(purge.holes.bore, bore), flow };
  let network = gasNetwork(graph, feed, vents, sizes);
  const shut = new Set<number>();
  for (let still = stillIn(network, context); still.length > 0; still = stillIn(network, context)) {
    for (const tube of still) shut.add(tube);
    network = gasNetwork(graph, feed, vents, sizes, shut);
  }
  const { residence, edges } = slowestWay(network, area);
  // where no bore lies between feed and vent it is filled past the hose, if at all
  const onWay = residence > 0 ? residence : once;
  const { outsideDiameter } = context.job.tube;
  const blind = deadBores(network, sites, { members, bores, up, outsideDiameter });
  // the stream fills a dead end that it mixes as well: each is taken to hang on the slowest way
  const beside = blind
    .filter((leg) => isMixed(leg, bore))
    .reduce((sum, { bored, passing: flowThere }) => sum + (60 * area * bored) / 1e6 / flowThere, 0);
  return {
    ...found,
    network,
    residence: onWay,
    mixing: Math.max(onWay + beside, once),
    slowest: edges,
    dead: blind.filter((leg) => !isMixed(leg, bore)),
  };
}

const stillIn = (network: GasNetwork, { filling, area }: PurgeContext): number[] =>
  filling === null ? [] : stillTubes(network, filling, area);

/**
 * Where the tip of a lance comes to lie where all gas must pass at one place: the farther end of that bore, or the far
 * side of a ring. Null where there are two places.
 */
function lanceTip({ openings, bores }: Found, { members }: PurgeContext): { member: number; station: number } | null {
  const { usable } = usableOpenings(openings);
  const [one] = usable;
  if (one === undefined || !atOnePlace(usable)) return null;
  const bore = bores[boreAt(bores, members, one.member, one.station) ?? -1];
  const member = members[one.member];
  if (bore === undefined || member === undefined) return null;
  const along = alongBore(bore, member, one.station) ?? bore.from;
  const { length } = member.centreline;
  if (bore.ring) return { member: one.member, station: (along + length / 2) % length };
  const tip = along - bore.from > bore.to - along ? bore.from : bore.to;
  return { member: one.member, station: onMember(member, tip) };
}
