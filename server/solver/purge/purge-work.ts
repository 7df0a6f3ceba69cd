import type { Purge } from '../../job/purge.ts';
import { floorTime } from '../welding/operating-factor.ts';
import type { WeldWork } from '../welding/weld-work.ts';
import { chamberFlows } from './chamber-flow.ts';
import { chamberTimes } from './chamber-times.ts';
import { rootCooling } from './root-cooling.ts';
import type { PurgeContext } from './purge-context.ts';
import { setUpsOf, type SetUp } from './set-ups.ts';

/** What the purge of a piece of work takes: times [s], gas [L]. */
export type PurgeWork = {
  readonly setups: number;
  readonly chambers: number;
  /** Of each set-up until the last of its chambers is full, and of all together. */
  readonly waits: readonly number[];
  readonly wait: number;
  /** Of all chambers added up: at the pre-purge flow, and turned down while others of their set-up are not full yet. */
  readonly filling: number;
  readonly ready: number;
  /** Arcs of all welds; and each as often as there are chambers in its set-up. */
  readonly arcs: number;
  readonly arcsPurged: number;
  /** Gas kept on in each set-up after its last arc. */
  readonly hold: number;
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

/** Until the root of the hottest weld has cooled [s]. */
export const coolingOf = ({ welds, job }: Pick<PurgeContext, 'welds' | 'job'>): number =>
  rootCooling({ heat: mostHeat(welds), wall: job.tube.wall });

/** The set-ups, waits and gas of the extent that the job asks for, in plain numbers. */
export const purgeWork = (context: PurgeContext): PurgeWork =>
  workOf(context, setUpsOf(chamberFlows(context, context.purge.extent)));

/**
 * Likewise for set-ups that are known. Chambers of a set-up are filled side by side, each by its own hose; one that is
 * full before the last is turned down to the welding flow, which each then keeps through all welding of the set-up, from
 * tack to last arc, and the hold. Where the gas never reaches the target there is nothing to wait for.
 */
export function workOf(context: PurgeContext, setUps: readonly SetUp[]): PurgeWork {
  const { purge, welds, filling } = context;
  const torchGas = welds.reduce((sum, weld) => sum + weld.torchGas, 0);
  const setups = setUps.length;
  const counted = { setups, chambers: setUps.reduce((sum, { chambers }) => sum + chambers.length, 0), torchGas };
  if (filling === null || setups === 0) return { ...counted, ...NO_GAS, jobGas: torchGas };
  const hold = holdTime(purge.hold, coolingOf(context));
  const { model, prePurgeFlow, weldingFlow } = purge;
  const waits: number[] = [];
  const sums = { wait: 0, filling: 0, ready: 0, arcs: 0, arcsPurged: 0 };
  for (const setUp of setUps) {
    const times = setUp.chambers.map(
      (chamber) => chamberTimes(chamber, context, { filling, model, withLong: false }).printed,
    );
    const wait = Math.max(...times);
    const arcs = setUp.welds.reduce((sum, weld) => sum + (welds[weld]?.arcTime ?? 0), 0);
    waits.push(wait);
    sums.wait += wait;
    for (const time of times) {
      sums.filling += time;
      sums.ready += wait - time;
    }
    sums.arcs += arcs;
    sums.arcsPurged += times.length * arcs;
  }
  const gasBefore = (prePurgeFlow * sums.filling + weldingFlow * sums.ready) / 60;
  const purgeGas = gasBefore + (weldingFlow * (floorTime(sums.arcsPurged) + counted.chambers * hold)) / 60;
  return {
    ...counted,
    ...sums,
    waits,
    hold,
    gasBefore,
    purgeGas,
    jobGas: purgeGas + torchGas,
    seconds: sums.wait + floorTime(sums.arcs) + setups * hold,
  };
}

const NO_GAS = {
  waits: [],
  wait: 0,
  filling: 0,
  ready: 0,
  arcs: 0,
  arcsPurged: 0,
  hold: 0,
  gasBefore: 0,
  purgeGas: 0,
  seconds: 0,
} as const;
