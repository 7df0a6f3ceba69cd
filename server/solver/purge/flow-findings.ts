import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import type { ChamberFlow } from './chamber-flow.ts';
import type { PurgeContext } from './purge-context.ts';
import { flowAtReynolds, LAMINAR_LIMIT, reynolds } from './purge-models.ts';
import { holdTime, mostHeat } from './purge-work.ts';
import { rootCooling } from './root-cooling.ts';
import { HIGHEST_PRESSURE, USUAL_PRESSURE, ventBore } from './vent.ts';
import { ventLoad } from './vent-load.ts';

/** Targets that colour charts go by [ppm]. */
const USUAL_TARGETS = [20, 50, 100, 500, 1000, 5000, 10_000, 50_000] as const;
/** Longest hold that can be typed [s]; server/job/purge.ts. */
const LONGEST_HOLD = 3600;

/** A target that the gas itself does not reach; the way out is the next usual target that it does. */
export function targetBelowGas(target: number, supply: number): Finding | null {
  if (target > supply) return null;
  const next = USUAL_TARGETS.find((usual) => usual > supply);
  return finding(
    'target-below-gas',
    'stop',
    '/purge/targetOxygen',
    { value: target, low: supply },
    next === undefined ? null : { field: '/purge/targetOxygen', value: next },
  );
}

/** Most gas in any tube of the chambers before welding [L/min]. */
export const mostTubeFlow = (chambers: readonly ChamberFlow[]): number =>
  Math.max(
    0,
    ...chambers.flatMap(({ network }) =>
      network === null ? [] : network.graph.tubes.map((_, edge) => Math.abs(network.flows[edge] ?? 0)),
    ),
  );

/** What the flows, the vents and the hold have to say. */
export function flowFindings(chambers: readonly ChamberFlow[], context: PurgeContext): Finding[] {
  return [...ventFindings(chambers, context), ...turbulence(chambers, context), ...holdFindings(context)];
}

function ventFindings(chambers: readonly ChamberFlow[], context: PurgeContext): Finding[] {
  const { purge, bore } = context;
  const load = ventLoad(chambers, purge.weldingFlow, Math.min(purge.ventBore, bore));
  if (load.pressure <= USUAL_PRESSURE) return [];
  const wayOut = easedVents(chambers, context, load.flowFor100Pa);
  const grade = load.pressure > HIGHEST_PRESSURE ? 'stop' : 'caution';
  return [
    finding('vent-pressure-high', grade, '/purge/ventBore', { value: load.pressure, high: USUAL_PRESSURE }, wayOut),
    finding(
      'closing-flow-lower',
      'note',
      '/purge/weldingFlow',
      { value: purge.weldingFlow, high: load.flowFor100Pa },
      wayOut,
    ),
  ];
}

/** Wider vents that bring every chamber to 100 Pa; a lower welding flow where none can, since the bore or a hole is narrower. */
function easedVents(
  chambers: readonly ChamberFlow[],
  { purge, bore }: PurgeContext,
  flowFor100Pa: number,
): Finding['wayOut'] {
  const needed = ventBore({ flow: purge.weldingFlow, pressure: USUAL_PRESSURE });
  const widths = chambers.map(({ vents }) => {
    const own = vents.filter(({ kind }) => kind === 'end' || kind === 'gap' || kind === 'dam');
    const rest = vents.filter((one) => !own.includes(one)).reduce((sum, one) => sum + one.bore ** 2, 0);
    if (vents.length === 0 || rest >= needed ** 2) return 0;
    return Math.sqrt((needed ** 2 - rest) / own.length);
  });
  const wide = Math.ceil(10 * (widths.length === 0 ? needed : Math.max(...widths))) / 10;
  if (wide > 0 && wide <= bore) return { field: '/purge/ventBore', value: wide };
  const lower = Math.floor(10 * flowFor100Pa) / 10;
  return lower > 0 ? { field: '/purge/weldingFlow', value: lower } : null;
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

function holdFindings({ purge, welds, job }: PurgeContext): Finding[] {
  const cooling = rootCooling({ heat: mostHeat(welds), wall: job.tube.wall });
  if (purge.hold === null || purge.hold >= cooling) return [];
  const enough = holdTime(null, cooling);
  const wayOut = { field: '/purge/hold', value: enough <= LONGEST_HOLD ? enough : null };
  return [finding('hold-short', 'caution', '/purge/hold', { value: purge.hold, low: cooling }, wayOut)];
}
