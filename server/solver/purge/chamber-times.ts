import type { Purge } from '../../job/purge.ts';
import { bleedTime } from './bleed.ts';
import { tubeLength } from './bore-graph.ts';
import type { ChamberFlow } from './chamber-flow.ts';
import { runs, type GasNetwork } from './gas-network.ts';
import { gasWays, type GasWay } from './gas-ways.ts';
import { descent, heightProfile } from './height-profile.ts';
import { longVolumes, tubesInRow, type TubesInRow } from './purge-models.ts';
import type { Filling, PurgeContext } from './purge-context.ts';
import { onStations } from './stretches.ts';
import { CLEARLY_MORE } from './rounding.ts';

/** Seconds until a chamber has the target by each model; `longTube` null where that one does not hold. */
export type ChamberTimes = {
  readonly plug: number;
  readonly longTube: LatestWay | null;
  readonly wellMixed: number;
  /** Until dead legs no longer keep the vent over the target by what diffuses out of them; 0 without any. */
  readonly bleed: number;
  /** Of the model chosen in the job, or the cautious one where that has no answer. */
  readonly printed: number;
};

/** The way by which the target arrives last, with its time [s]. */
export type LatestWay = { readonly time: number; readonly row: TubesInRow };

/**
 * Plug flow arrives when the gas of the slowest way does. Well mixed, each way is one vessel that the gas stays in as
 * long as it is on its way: t = τ ln((C₀ − Cᵢ)/(C₂ − Cᵢ)), for one way V/Q times that; never less than with all of the
 * chamber in one vessel, dead legs too, and never before dead legs bleed little enough. The long tube takes each way as tubes in a row; the chamber has it when the
 * latest way does.
 *
 * @param withLong whether the long-tube time is wanted; it takes the longest to work out
 */
export function chamberTimes(
  chamber: ChamberFlow,
  context: PurgeContext,
  { filling, model, withLong }: { filling: Filling; model: Purge['model']; withLong: boolean },
): ChamberTimes {
  const { residence, mixing, dead } = chamber;
  const bleed = dead.length === 0 ? 0 : bleedTime(dead, filling.step, bledBy(context));
  const wellMixed = Math.max(mixing * filling.volumes, bleed);
  const rows = withLong || model === 'long-tube' ? longWays(chamber, context) : null;
  const longTube = rows === null ? null : latestWay(rows, filling);
  const printed = model === 'long-tube' && longTube !== null ? longTube.time : wellMixed;
  return { plug: residence, longTube, wellMixed, bleed, printed };
}

/** What dead legs bleed by, and the flow that takes it away [L/min]. */
export const bledBy = ({ purge, bore, job }: PurgeContext) => ({
  bore,
  holeBore: Math.min(purge.holes.bore, bore),
  wall: job.tube.wall,
  flow: purge.prePurgeFlow,
});

function latestWay(rows: readonly TubesInRow[], { volumes, quantile }: Filling): LatestWay | null {
  let latest: LatestWay | null = null;
  for (const row of rows) {
    const time = row.residence * longVolumes(row, { wellMixed: volumes, quantile });
    if (latest === null || time > CLEARLY_MORE * latest.time) latest = { time, row };
  }
  return latest;
}

/**
 * The ways of the gas as tubes in a row; null where the long-tube model does not hold: in pockets between dams, without
 * a way through, where gas comes back past a lance, where there are dead legs, where it is turbulent, where it runs down
 * by more than a bore, so that it falls through lighter air and mixes, and where there are more ways than can be looked
 * at.
 */
export function longWays(chamber: ChamberFlow, context: PurgeContext): TubesInRow[] | null {
  const { network, extent, lance, trouble } = chamber;
  if (network === null || extent === 'dams' || lance || trouble !== null) return null;
  if (network.graph.tubes.some((_, tube) => !runs(network, tube))) return null;
  const { ways, all } = gasWays(network);
  if (!all) return null;
  const rows: TubesInRow[] = [];
  for (const way of ways) {
    const row = tubesInRow(sweptTubes(way, network, context.bore));
    if (row === null || wayDescent(way, chamber, network, context) >= context.bore) return null;
    rows.push(row);
  }
  return rows;
}

const sweptTubes = ({ edges }: GasWay, { graph, flows }: GasNetwork, bore: number) =>
  edges.flatMap((edge) => {
    const tube = graph.tubes[edge];
    return tube === undefined ? [] : [{ length: tubeLength(tube), bore, flow: Math.abs(flows[edge] ?? 0) }];
  });

/** How far the gas of a way runs down at most [mm]. */
export function wayDescent(
  { edges }: GasWay,
  { bores }: ChamberFlow,
  network: GasNetwork,
  { members, up }: PurgeContext,
): number {
  const heights = edges.flatMap((edge): number[] => {
    const tube = network.graph.tubes[edge];
    const member = members[bores[tube?.bore ?? -1]?.member ?? -1];
    if (tube === undefined || member === undefined) return [];
    const [from, to] = (network.flows[edge] ?? 0) >= 0 ? [tube.from, tube.to] : [tube.to, tube.from];
    return onStations(member, { from, to }).flatMap((one) => heightProfile(member.centreline, one.from, one.to, up));
  });
  return descent(heights);
}
