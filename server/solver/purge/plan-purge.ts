import type { Finding } from '../../plan/finding.ts';
import type { PurgePlan } from '../../plan/purge.ts';
import { figure, input } from '../figure.ts';
import { planBottle } from './bottle-plan.ts';
import { chamberOf } from './chamber.ts';
import { chamberFlows, type ChamberFlow } from './chamber-flow.ts';
import { lookedAt, passingTroubles, troublesOf } from './chamber-troubles.ts';
import { withWaysOut } from './chamber-ways-out.ts';
import { damFindings } from './dam-findings.ts';
import { extentFigures } from './extent-figures.ts';
import { flowFigures } from './flow-figures.ts';
import { flowFindings, flowTroubles, mostTubeFlow, targetBelowGas } from './flow-findings.ts';
import { gasFigures } from './gas-figures.ts';
import { gasOxygen } from './gas.ts';
import { meterVerdicts } from './meters.ts';
import type { Filling, PurgeContext } from './purge-context.ts';
import { workOf, type PurgeWork } from './purge-work.ts';
import { planRoom } from './room-plan.ts';
import { setUpOf, setUpsOf, type SetUp } from './set-ups.ts';
import { tintFigure } from './tint.ts';
import { ventLoad } from './vent-load.ts';

const EXTENTS = ['whole-frame', 'dams'] as const;

/**
 * How the bores of a frame are filled with argon for its welds: chambers with their times and gas, where it goes in and
 * out and which way it runs, the pressure, the leak it bears, meter readings, the bottle and the room. The numbers are
 * those of `purgeWork`.
 *
 * @returns the plan, null where nothing is welded or the gas never reaches the target; findings
 */
export function planPurge(context: PurgeContext): { purge: PurgePlan | null; findings: Finding[] } {
  const { purge, filling, welds, sites } = context;
  if (welds.length === 0 || sites.length === 0) return { purge: null, findings: [...context.findings] };
  const setUps = setUpsOf(chamberFlows(context, purge.extent));
  const chambers = setUps.flatMap((setUp) => setUp.chambers);
  const oxygen = gasOxygen(purge.gas);
  if (filling === null) {
    const told = chambers.map((chamber) => passingTroubles(chamber, context));
    const troubles = withWaysOut(chambers, told, context);
    const unreached = targetBelowGas(purge.targetOxygen, oxygen.value);
    return {
      purge: null,
      findings: [...context.findings, ...troubles, ...(unreached === null ? [] : [unreached])],
    };
  }
  const looked = setUps.flatMap((setUp) =>
    setUp.chambers.map((chamber) => ({ ...lookedAt(chamber, context, filling), setup: setUp.number })),
  );
  const told = looked.map((one) => troublesOf(one, context, filling));
  const troubles = withWaysOut(chambers, told, context);
  const work = workOf(context, setUps);
  const load = ventLoad(chambers, context);
  const common = [...damFindings(chambers, context), ...flowFindings(chambers, context, load)];
  const { meters, findings: readings } = meterVerdicts({ context, filling, chambers });
  const { bottle, findings: ofBottle } = planBottle(purge.bottle, work.jobGas);
  const { room, findings: ofRoom } = planRoom({
    purge,
    ...released(context, setUps, work),
    bottleLitres: bottle.contents.value,
  });
  const target = input('C₂', 'target-oxygen', purge.targetOxygen, 'ppm');
  const plan: PurgePlan = {
    gasOxygen: oxygen,
    targetOxygen: figure(purge.targetOxygen, 'ppm', 'C₂', [target], ['typed']),
    colour: tintFigure(purge.targetOxygen),
    setups: setUps.map((setUp) => setUpOf(setUp, looked, context)),
    chambers: looked.map(({ chamber, ...one }) => chamberOf(chamber, context, { filling, ...one })),
    ...flowFigures(context, filling, { load, tubeFlow: mostTubeFlow(chambers) }),
    extents: EXTENTS.map((extent) => {
      const own = extent === purge.extent;
      if (own) return extentFigures(extent, context, work, [...context.findings, ...troubles, ...common]);
      const found = setUpsOf(chamberFlows(context, extent));
      const inThem = found.flatMap((setUp) => setUp.chambers);
      const said = [...context.findings, ...stopsOf(inThem, context, filling)];
      return extentFigures(extent, context, workOf(context, found), said);
    }),
    meters,
    ...gasFigures(context, work),
    bottle,
    room,
  };
  return { purge: plan, findings: [...context.findings, ...troubles, ...common, ...readings, ...ofBottle, ...ofRoom] };
}

/** What is wrong with an extent that the job does not ask for. */
const stopsOf = (chambers: readonly ChamberFlow[], context: PurgeContext, filling: Filling): Finding[] => [
  ...chambers.flatMap((chamber) => troublesOf(lookedAt(chamber, context, filling), context, filling)),
  ...damFindings(chambers, context),
  ...flowTroubles(chambers, context),
];

/** Stops that keep chambers from being filled, by finding code, each once. */
export function extentStops(chambers: readonly ChamberFlow[], context: PurgeContext): string[] {
  const { filling, purge } = context;
  const found =
    filling === null
      ? [
          ...chambers.flatMap((chamber) => passingTroubles(chamber, context)),
          ...[targetBelowGas(purge.targetOxygen, gasOxygen(purge.gas).value)].filter((one) => one !== null),
        ]
      : stopsOf(chambers, context, filling);
  return [...new Set([...context.findings, ...found].filter(({ grade }) => grade === 'stop').map(({ code }) => code))];
}

/** What the job lets out into the room: gas [L], the time of it [s], and the largest flow [L/min] at any time of it. */
function released(
  { purge, welds }: PurgeContext,
  setUps: readonly SetUp[],
  { jobGas, torchGas, seconds }: PurgeWork,
): { litres: number; seconds: number; largestFlow: number } {
  const torchOf = (some: readonly number[]): number => Math.max(0, ...some.map((weld) => welds[weld]?.torchFlow ?? 0));
  if (purge.room.receives === 'torch') return { litres: torchGas, seconds, largestFlow: torchOf([...welds.keys()]) };
  const flows = setUps.map((setUp) => {
    const hoses = setUp.chambers.length;
    return Math.max(hoses * purge.prePurgeFlow, hoses * purge.weldingFlow + torchOf(setUp.welds));
  });
  return { litres: jobGas, seconds, largestFlow: Math.max(...flows) };
}
