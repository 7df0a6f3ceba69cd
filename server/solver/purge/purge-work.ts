import type { Purge } from '../../job/purge.ts';
import type { WeldWork } from '../welding/weld-work.ts';
import { chamberFlows, type ChamberFlow } from './chamber-flow.ts';
import { chamberTimes } from './chamber-times.ts';
import { rootCooling } from './root-cooling.ts';
import type { PurgeContext } from './purge-context.ts';

/** What the purge of a piece of work takes: times [s], gas [L]. */
export type PurgeWork = {
  readonly setups: number;
  readonly wait: number;
  readonly gasBefore: number;
  readonly purgeGas: number;
  readonly torchGas: number;
  readonly jobGas: number;
  /** From the first gas to the last, set-ups one after another with nothing between them. */
  readonly seconds: number;
};

/** Steps in which a hold is told [s]; our own choice. */
const HOLD_STEP = 5;

/** Gas kept on after the arc [s]: as typed, or until the root has cooled, rounded up to what a clock shows. */
export function holdTime(hold: Purge['hold'], cooling: number): number {
  return hold ?? HOLD_STEP * Math.ceil(cooling / HOLD_STEP);
}

/** Most heat of the welds for each length [J/mm]. */
export const mostHeat = (welds: readonly WeldWork[]): number => Math.max(0, ...welds.map(({ heat }) => heat));

/** The set-ups, waits and gas of the extent that the job asks for, in plain numbers. */
export const purgeWork = (context: PurgeContext): PurgeWork =>
  workOf(context, chamberFlows(context, context.purge.extent));

/**
 * Likewise for chambers that are known. A weld that heats two chambers is made once, while both are filled: its arc
 * counts once in time, and in the gas of both. Where the gas never reaches the target there is nothing to wait for.
 */
export function workOf(context: PurgeContext, chambers: readonly ChamberFlow[]): PurgeWork {
  const { purge, welds, filling, job } = context;
  const torchGas = welds.reduce((sum, weld) => sum + weld.torchGas, 0);
  const setups = chambers.length;
  if (filling === null || setups === 0)
    return { setups, wait: 0, gasBefore: 0, purgeGas: 0, torchGas, jobGas: torchGas, seconds: 0 };
  const hold = holdTime(purge.hold, rootCooling({ heat: mostHeat(welds), wall: job.tube.wall }));
  const { model, prePurgeFlow, weldingFlow } = purge;
  let [wait, purged] = [0, 0];
  const welded = new Set<number>();
  for (const chamber of chambers) {
    wait += chamberTimes(chamber, context, { filling, model, withLong: false }).printed;
    for (const weld of chamber.welds) {
      purged += welds[weld]?.arcTime ?? 0;
      welded.add(weld);
    }
  }
  const arcs = [...welded].reduce((sum, weld) => sum + (welds[weld]?.arcTime ?? 0), 0);
  const gasBefore = (prePurgeFlow * wait) / 60;
  const purgeGas = gasBefore + (weldingFlow * (purged + setups * hold)) / 60;
  return {
    setups,
    wait,
    gasBefore,
    purgeGas,
    torchGas,
    jobGas: purgeGas + torchGas,
    seconds: wait + arcs + setups * hold,
  };
}
