import type { PurgePlan } from '../../plan/purge.ts';
import { figure, input } from '../figure.ts';
import type { ChamberFlow } from './chamber-flow.ts';
import type { PurgeContext } from './purge-context.ts';
import { holdTime, mostHeat, type PurgeWork } from './purge-work.ts';
import { rootCooling } from './root-cooling.ts';

/** Gas for all set-ups and all arcs. */
export function gasFigures(
  { purge, welds, job }: PurgeContext,
  chambers: readonly ChamberFlow[],
  work: PurgeWork,
): Pick<PurgePlan, 'purgeGas' | 'torchGas' | 'jobGas'> {
  const purged = chambers
    .flatMap((chamber) => chamber.welds)
    .reduce((sum, weld) => sum + (welds[weld]?.arcTime ?? 0), 0);
  const hold = holdTime(purge.hold, rootCooling({ heat: mostHeat(welds), wall: job.tube.wall }));
  return {
    purgeGas: figure(
      work.purgeGas,
      'L',
      'V_p = V_pre + Q (t + n h)/60',
      [
        input('V_pre', 'gas-before-welding', work.gasBefore, 'L'),
        input('Q', 'welding-flow', purge.weldingFlow, 'L/min'),
        input('t', 'arc-time-purged', purged, 's'),
        input('n', 'chambers', chambers.length, 'count'),
        input('h', 'hold', hold, 's'),
      ],
      ['geometry', 'typed'],
    ),
    torchGas: figure(
      work.torchGas,
      'L',
      'V_t = n V_w',
      [
        input('n', 'welds', welds.length, 'count'),
        input('V_w', 'torch-gas-of-a-weld', work.torchGas / Math.max(1, welds.length), 'L'),
      ],
      ['geometry', 'typed'],
    ),
    jobGas: figure(
      work.jobGas,
      'L',
      'V = V_p + V_t',
      [input('V_p', 'purge-gas', work.purgeGas, 'L'), input('V_t', 'torch-gas', work.torchGas, 'L')],
      ['geometry'],
    ),
  };
}
