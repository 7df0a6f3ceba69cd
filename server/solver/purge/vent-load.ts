import type { ChamberFlow } from './chamber-flow.ts';
import { tightForLance } from './lance.ts';
import { poolLoad, type HoleDrop, type PoolLoad } from './pool-load.ts';
import { USUAL_PRESSURE, ventFlow, ventPressure } from './vent.ts';
import type { PurgeContext } from './purge-context.ts';

/** What the weld pool bears that bears the most, while the joints close and all of the welding flow goes out by the vents. */
export type VentLoad = {
  /** Null where no chamber has a way out: a vent of the typed bore stands for one. */
  readonly pool: PoolLoad | null;
  /** Pressure behind it at the welding flow [Pa]; what of it is lost in bores, and at each hole on the way to the air. */
  readonly pressure: number;
  readonly inBores: number;
  readonly holes: readonly HoleDrop[];
  /** The flow that makes 100 Pa [L/min]. */
  readonly flowFor100Pa: number;
};

/** How near the flow for 100 Pa is found, as a share, and the most steps that it takes: a few do. */
const [NEAR_ENOUGH, MOST_STEPS] = [1e-12, 40];

/** The pool of several chambers that bears the most at a flow [L/min]; a hole too tight for its lance is told by itself. */
export function worstPool(chambers: readonly ChamberFlow[], flow: number): PoolLoad | null {
  let worst: PoolLoad | null = null;
  for (const chamber of chambers) {
    const load = tightForLance(chamber) === null ? poolLoad(chamber, flow) : null;
    if (load !== null && (worst === null || load.pressure > worst.pressure)) worst = load;
  }
  return worst;
}

/** What the pools bear at the welding flow; a vent of the usual bore stands for one where there is none. */
export function ventLoad(
  chambers: readonly ChamberFlow[],
  { purge: { weldingFlow }, ventBore }: Pick<PurgeContext, 'purge' | 'ventBore'>,
): VentLoad {
  const pool = worstPool(chambers, weldingFlow);
  if (pool === null) {
    const pressure = ventPressure({ flow: weldingFlow, bore: ventBore });
    const flowFor100Pa = ventFlow({ pressure: USUAL_PRESSURE, bore: ventBore });
    return {
      pool,
      pressure,
      inBores: 0,
      holes: [{ flow: weldingFlow, bore: ventBore, pressure, vent: null }],
      flowFor100Pa,
    };
  }
  const { pressure, inBores, holes } = pool;
  return { pool, pressure, inBores, holes, flowFor100Pa: flowFor100Pa(chambers, weldingFlow, pressure) };
}

/**
 * The flow that makes 100 Pa behind the pool that bears the most [L/min]. Pressure grows with a power of the flow between
 * 1, bores alone, and 2, holes alone: by the power between the last two flows it closes in.
 */
function flowFor100Pa(chambers: readonly ChamberFlow[], start: number, atStart: number): number {
  let [flow, pressure, power] = [start, atStart, 2];
  for (let step = 0; step < MOST_STEPS && Math.abs(pressure / USUAL_PRESSURE - 1) > NEAR_ENOUGH; step += 1) {
    const next = flow * (USUAL_PRESSURE / pressure) ** (1 / power);
    const then = worstPool(chambers, next)?.pressure ?? pressure;
    const slope = Math.log(then / pressure) / Math.log(next / flow);
    power = slope >= 1 && slope <= 2 ? slope : 2;
    [flow, pressure] = [next, then];
  }
  return flow;
}
