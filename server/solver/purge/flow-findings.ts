import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import type { ChamberFlow } from './chamber-flow.ts';
import type { PurgeContext } from './purge-context.ts';
import { flowAtReynolds, LAMINAR_LIMIT, reynolds } from './purge-models.ts';
import { coolingOf, holdTime } from './purge-work.ts';
import { targetHigh } from './target-findings.ts';
import { HIGHEST_PRESSURE, USUAL_PRESSURE } from './vent.ts';
import { ventLoad, type VentLoad } from './vent-load.ts';
import { easedPools, roundedDown, throttleField } from './vent-ways-out.ts';

export { targetBelowGas } from './target-findings.ts';

/** Longest hold that can be typed [s]; server/job/purge.ts. */
const LONGEST_HOLD = 3600;

/** Most gas in any tube of the chambers before welding [L/min]. */
export const mostTubeFlow = (chambers: readonly ChamberFlow[]): number =>
  Math.max(
    0,
    ...chambers.flatMap(({ network }) =>
      network === null ? [] : network.graph.tubes.map((_, edge) => Math.abs(network.flows[edge] ?? 0)),
    ),
  );

/** What the flows, the vents, the hold and the target have to say, `load` being what the pools bear. */
export function flowFindings(chambers: readonly ChamberFlow[], context: PurgeContext, load: VentLoad): Finding[] {
  const wayOut = load.pressure <= USUAL_PRESSURE ? null : easedPools(chambers, context, load);
  return [...ventTroubles(load, context).map((found) => ({ ...found, wayOut })), ...otherFindings(chambers, context)];
}

/** The same, with nothing tried to put the pressure behind the pools right. */
export const flowTroubles = (chambers: readonly ChamberFlow[], context: PurgeContext): Finding[] => [
  ...ventTroubles(ventLoad(chambers, context), context),
  ...otherFindings(chambers, context),
];

const otherFindings = (chambers: readonly ChamberFlow[], context: PurgeContext): Finding[] => [
  ...turbulence(chambers, context),
  ...holdFindings(context),
  ...targetHigh(context),
];

function ventTroubles(load: VentLoad, context: PurgeContext): Finding[] {
  const { pressure, pool, flowFor100Pa } = load;
  if (pressure <= USUAL_PRESSURE) return [];
  const { weldingFlow } = context.purge;
  const grade = pressure > HIGHEST_PRESSURE ? 'stop' : 'caution';
  const weld = pool === null ? undefined : context.welds[pool.weld]?.site.name;
  const data = { value: pressure, high: USUAL_PRESSURE, ...(weld === undefined ? {} : { weld }) };
  const flow = { value: weldingFlow, high: roundedDown(flowFor100Pa) };
  return [
    finding('vent-pressure-high', grade, throttleField(load, context), data),
    finding('closing-flow-lower', 'note', '/purge/weldingFlow', flow),
  ];
}

function turbulence(chambers: readonly ChamberFlow[], { bore }: PurgeContext): Finding[] {
  const number = reynolds({ bore, flow: mostTubeFlow(chambers) });
  if (number <= LAMINAR_LIMIT) return [];
  // no tube has more than all of it, however the ways share it then
  const slower = Math.floor(10 * flowAtReynolds(bore, LAMINAR_LIMIT)) / 10;
  const wayOut = slower > 0 ? { field: '/purge/prePurgeFlow', value: slower } : null;
  const data = { value: number, high: LAMINAR_LIMIT };
  return [finding('purge-flow-turbulent', 'caution', '/purge/prePurgeFlow', data, wayOut)];
}

function holdFindings(context: PurgeContext): Finding[] {
  const { purge } = context;
  const cooling = coolingOf(context);
  if (purge.hold === null || purge.hold >= cooling) return [];
  const enough = holdTime(null, cooling);
  const wayOut = { field: '/purge/hold', value: enough <= LONGEST_HOLD ? enough : null };
  return [finding('hold-short', 'caution', '/purge/hold', { value: purge.hold, low: cooling }, wayOut)];
}
