import type { Purge, Welding } from '../../job/purge.ts';
import type { Tube } from '../../job/tube.ts';
import type { Finding } from '../../plan/finding.ts';
import type { PurgePlan } from '../../plan/purge.ts';
import { figure, input } from '../figure.ts';
import type { MemberGeometry } from '../frame/frame-geometry.ts';
import { chamberOf } from './chamber.ts';
import { flowFigures } from './flow-figures.ts';
import { gasOxygen } from './gas.ts';
import { typedGasEnds, type GasEnds } from './gas-ends.ts';
import { bottleFigures, gasUsed } from './job-gas.ts';
import { dammedPocket, wholeBores, type Pocket } from './pockets.ts';
import { closedBores, gasFindings, nearDams, targetBelowGas } from './purge-findings.ts';
import { fromAir } from './purge-models.ts';
import { roomFigures } from './room-figures.ts';
import { sitesOf, type PurgeJoint, type Site } from './sites.ts';

/**
 * How the bores of a frame are filled with argon for its welds: chambers with their times and gas, where it goes in and
 * out, the pressure, the leak it bears, the bottle and the room.
 *
 * @param work purge and torch settings, the tube, the frame's members, and its joints with their arc times
 * @returns the plan, null where nothing is welded or the gas never reaches the target; the number of set-ups; findings
 */
export function planPurge(work: {
  readonly purge: Purge;
  readonly welding: Welding;
  readonly tube: Tube;
  readonly members: readonly MemberGeometry[];
  readonly joints: readonly PurgeJoint[];
}): { purge: PurgePlan | null; setups: number; findings: Finding[] } {
  const { purge, welding, tube, members, joints } = work;
  const sites = sitesOf(members, joints);
  if (sites.length === 0) return { purge: null, setups: 0, findings: [] };
  const { ends, findings } = typedGasEnds(purge, members);
  const filled = pocketsFor(purge, { members, sites, ends });
  const { pockets } = filled;
  const oxygen = gasOxygen(purge.gas);
  const unreached = targetBelowGas(purge.targetOxygen, oxygen.value);
  findings.push(...filled.findings, ...closedBores(pockets, purge), ...nearDams({ ...work, pockets }));
  if (unreached !== null) return { purge: null, setups: pockets.length, findings: [...findings, unreached] };

  const bore = tube.outsideDiameter - 2 * tube.wall;
  const step = fromAir({ target: purge.targetOxygen, supply: oxygen.value });
  const chambers = pockets.map((pocket, index) => chamberOf(pocket, index + 1, { purge, bore, step }));
  const { seconds, ...gas } = gasUsed({ purge, welding, chambers, pockets, joints });
  const { usable, ...bottle } = bottleFigures(purge.bottle, gas.jobGas.value);
  const target = input('C₂', 'target-oxygen', purge.targetOxygen, 'ppm');
  const plan: PurgePlan = {
    gasOxygen: oxygen,
    targetOxygen: figure(purge.targetOxygen, 'ppm', 'C₂', [target], ['typed']),
    chambers,
    ...flowFigures(purge, { bore, supply: oxygen.value }),
    ...gas,
    ...bottle,
    ...roomFigures({ purge, welding }, { litres: gas.jobGas.value, seconds }),
  };
  return {
    purge: plan,
    setups: pockets.length,
    findings: [...findings, ...gasFindings(plan, { purge, welding, bore, usable })],
  };
}

/** The whole bore of each member that a weld heats, or a pocket between dams at each place that it heats. */
function pocketsFor(
  { extent, damDistance }: Purge,
  frame: { members: readonly MemberGeometry[]; sites: readonly Site[]; ends: GasEnds },
): { pockets: Pocket[]; findings: Finding[] } {
  if (extent === 'whole-frame') return { pockets: wholeBores(frame.members, frame.sites, frame.ends), findings: [] };
  const dammed = frame.sites.map((site) => dammedPocket(site, damDistance, frame.ends));
  return { pockets: dammed.map(({ pocket }) => pocket), findings: dammed.flatMap((one) => one.findings) };
}
