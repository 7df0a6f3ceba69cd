import type { Figure } from '../../plan/figure.ts';
import type { Chamber, DeadLeg, GasPath, GasSpot, Spot } from '../../plan/purge.ts';
import { figure, input } from '../figure.ts';
import type { MemberGeometry } from '../frame/frame-geometry.ts';
import { placeAt } from '../geometry/centreline.ts';
import { ORIGIN } from '../geometry/vector.ts';
import { ARGON_AIR_DIFFUSIVITY } from './argon.ts';
import type { Opening } from './bores.ts';
import { timeFigures } from './chamber-figures.ts';
import type { ChamberFlow } from './chamber-flow.ts';
import type { ChamberTimes } from './chamber-times.ts';
import { damStations } from './dam-pockets.ts';
import { clearingTime, type DeadBore } from './dead-legs.ts';
import { widestWays, type GasWay } from './gas-ways.ts';
import type { GasNetwork } from './gas-network.ts';
import { heightProfile } from './height-profile.ts';
import type { Filling, PurgeContext } from './purge-context.ts';
import { joined, onStations } from './stretches.ts';

/** A chamber as the plan shows it: what is in it, where gas passes, its times, the ways of the gas, and where none runs. */
export function chamberOf(
  chamber: ChamberFlow,
  context: PurgeContext,
  work: {
    readonly setup: number;
    readonly filling: Filling;
    readonly times: ChamberTimes;
    readonly dead: readonly DeadBore[];
  },
): Chamber {
  const { members, welds, bore } = context;
  const { number, bores, length, litres, network } = chamber;
  const lengthInput = input('l', 'chamber-length', length, 'mm');
  const bottom = lowestPlace(chamber, context);
  const gas = (opening: Opening): GasSpot => gasSpot(opening, members, bottom);
  const vents = chamber.vents.map(gas);
  const feed = gas(chamber.feed ?? holeToDrill(bottom));
  const rise = (vents[0]?.height ?? feed.height) - feed.height;
  return {
    number,
    setup: work.setup,
    stretches: bores.flatMap(({ member, from, to }) => {
      const geometry = members[member];
      return geometry === undefined ? [] : onStations(geometry, { from, to });
    }),
    welds: chamber.welds.flatMap((weld) => welds[weld]?.site.name ?? []),
    volume: figure(litres, 'L', 'V = π d² l / 4', [input('d', 'bore', bore, 'mm'), lengthInput], ['geometry']),
    length: figure(length, 'mm', 'l', [lengthInput], ['geometry']),
    ...timeFigures(chamber, context, work.filling, work.times),
    feed,
    vents,
    rise: figure(
      rise,
      'mm',
      'h = h_v − h_f',
      [input('h_v', 'height-of-vent', feed.height + rise, 'mm'), input('h_f', 'height-of-feed', feed.height, 'mm')],
      ['geometry'],
    ),
    taped: chamber.openings.flatMap((opening) =>
      opening.kind === 'gap' && opening !== chamber.feed && !chamber.vents.includes(opening)
        ? [{ ...spotOf(opening, members), weld: opening.name }]
        : [],
    ),
    dams: bores.flatMap((one) => {
      const member = members[one.member];
      if (member === undefined) return [];
      return damStations(one, member).map((station) => spotOf({ member: one.member, station }, members));
    }),
    plugs: plugsOf(chamber, members),
    pluggedHoles: chamber.openings.flatMap((opening) =>
      opening.kind === 'hole' && opening !== chamber.feed && !chamber.vents.includes(opening)
        ? [Number(opening.name)]
        : [],
    ),
    ventShares: network === null ? [] : ventShares(network, vents.length),
    paths: network === null ? [] : widestWays(network).map((way) => pathOf(way, chamber, network, context)),
    deadLegs: work.dead.map((leg) => deadLegOf(leg, chamber, context, work.filling)),
  };
}

type Place = { readonly member: number; readonly station: number };

function spotOf({ member, station }: Place, members: readonly MemberGeometry[]): Spot {
  const geometry = members[member];
  const point = geometry === undefined ? undefined : placeAt(geometry.centreline, station)?.point;
  return { member: geometry?.name ?? '', station, point: point ?? ORIGIN };
}

const gasSpot = (
  opening: Opening,
  members: readonly MemberGeometry[],
  bottom: Place & { height: number },
): GasSpot => ({
  ...spotOf(opening, members),
  kind: opening.kind,
  bore: opening.bore,
  name: opening.name,
  height: opening.height - bottom.height,
});

/** Where a chamber that nothing opens would have to be opened: a hole without a number, at its lowest place. */
const holeToDrill = (bottom: Place & { height: number; bore: number }): Opening => ({
  kind: 'hole',
  name: '',
  beyond: [],
  ...bottom,
});

/** The lowest place of a chamber, at an end of one of its bores where several are as low. */
function lowestPlace({ bores }: ChamberFlow, { members, up, ventBore }: PurgeContext) {
  let lowest = { member: 0, station: 0, height: Infinity, bore: ventBore };
  for (const bore of bores) {
    const member = members[bore.member];
    if (member === undefined) continue;
    for (const { from, to } of onStations(member, bore)) {
      const heights = heightProfile(member.centreline, from, to, up);
      const height = Math.min(...heights);
      if (height >= lowest.height) continue;
      const atEnd = (heights.at(-1) ?? height) <= height && (heights[0] ?? height) > height;
      lowest = { ...lowest, member: bore.member, station: atEnd ? to : from, height };
    }
  }
  return lowest.height === Infinity ? { ...lowest, height: 0 } : lowest;
}

/** Open ends of the chamber: stopped, with the hose or the vent hole in the plug; a plate that vents by its hole is not. */
function plugsOf({ openings, vents }: ChamberFlow, members: readonly MemberGeometry[]): Chamber['plugs'] {
  return openings.flatMap((opening) => {
    const { kind, member, station } = opening;
    const geometry = members[member];
    const end = kind === 'end' || (kind === 'plate' && !vents.includes(opening));
    if (!end || geometry === undefined) return [];
    const { member: name, point } = spotOf(opening, members);
    return [{ member: name, end: station > geometry.centreline.length / 2 ? 'finish' : 'start', point }];
  });
}

/** What leaves by each vent of what comes in. */
function ventShares({ graph, flows, flow }: GasNetwork, vents: number): Figure[] {
  const outlets = graph.tubes.length + graph.passages.length;
  return Array.from({ length: vents }, (_, vent) => {
    const leaves = Math.abs(flows[outlets + vent] ?? 0);
    return figure(
      (100 * leaves) / flow,
      'percent',
      's = 100 Q_v/Q',
      [input('Q_v', 'flow-of-the-vent', leaves, 'L/min'), input('Q', 'pre-purge-flow', flow, 'L/min')],
      ['gas-network', 'argon-data'],
    );
  });
}

function pathOf(way: GasWay, { bores }: ChamberFlow, network: GasNetwork, { members }: PurgeContext): GasPath {
  const parts = way.edges.flatMap((edge) => {
    const tube = network.graph.tubes[edge];
    if (tube === undefined) return [];
    const forward = (network.flows[edge] ?? 0) >= 0;
    return [{ bore: tube.bore, from: forward ? tube.from : tube.to, to: forward ? tube.to : tube.from }];
  });
  return {
    stretches: joined(parts, bores, members),
    vent: way.vent,
    share: figure(
      100 * way.share,
      'percent',
      's = 100 Q_w/Q',
      [
        input('Q_w', 'flow-of-the-way', way.share * network.flow, 'L/min'),
        input('Q', 'pre-purge-flow', network.flow, 'L/min'),
      ],
      ['gas-network', 'argon-data'],
    ),
  };
}

function deadLegOf(leg: DeadBore, { bores }: ChamberFlow, context: PurgeContext, { step }: Filling): DeadLeg {
  const length = input('l', 'dead-leg', leg.length, 'mm');
  return {
    stretches: joined(leg.parts, bores, context.members),
    length: figure(leg.length, 'mm', 'l', [length], ['geometry']),
    clears: figure(
      clearingTime(leg.length, step),
      's',
      't = (4 l²/(π² D)) ln((4/π)(C₀/C₂)), l in m',
      [
        length,
        input('D', 'diffusivity', ARGON_AIR_DIFFUSIVITY, 'm2/s'),
        input('C₀', 'air-oxygen', step.start, 'ppm'),
        input('C₂', 'target-oxygen', step.target, 'ppm'),
      ],
      ['dead-leg', 'argon-data'],
    ),
    points: pointsOf(leg, context.bore),
    welds: leg.welds.flatMap((weld) => context.welds[weld]?.site.name ?? []),
  };
}

/** Which way a dead leg points, away from the gas; within a bore it is level. */
export const pointsOf = ({ rise }: DeadBore, bore: number): DeadLeg['points'] =>
  rise > bore ? 'up' : rise < -bore ? 'down' : 'level';
