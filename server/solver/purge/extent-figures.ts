import type { Purge } from '../../job/purge.ts';
import type { Finding } from '../../plan/finding.ts';
import type { ExtentWork } from '../../plan/purge.ts';
import { figure, input } from '../figure.ts';
import type { PurgeContext } from './purge-context.ts';
import type { PurgeWork } from './purge-work.ts';

/** What an extent takes, and what keeps it from being done. */
export function extentFigures(
  extent: Purge['extent'],
  { purge, job }: PurgeContext,
  work: PurgeWork,
  findings: readonly Finding[],
): ExtentWork {
  const { setups, wait, gasBefore, purgeGas, seconds } = work;
  const { setUp, each } = job.rates.times.purge;
  const count = input('n', 'chambers', setups, 'count');
  const waiting = input('t', 'wait', wait, 's');
  const before = input('V_pre', 'gas-before-welding', gasBefore, 'L');
  const onward = input('V_w', 'gas-while-welding', purgeGas - gasBefore, 'L');
  const inAll = input('T', 'wait-arcs-and-holding', seconds, 's');
  const known = setUp !== null && each !== null;
  return {
    extent,
    setups: figure(setups, 'count', 'n', [count], ['geometry']),
    wait: figure(wait, 's', 't = Σ tᵢ', [count, waiting], ['geometry']),
    gasBefore: figure(
      gasBefore,
      'L',
      'V_pre = Q t/60',
      [input('Q', 'pre-purge-flow', purge.prePurgeFlow, 'L/min'), waiting],
      ['geometry', 'typed'],
    ),
    gas: figure(purgeGas, 'L', 'V_p = V_pre + V_w', [before, onward], ['geometry', 'typed']),
    minutes: known
      ? figure(
          seconds / 60 + setUp + setups * each,
          'min',
          't = T/60 + t_s + n t_e',
          [inAll, input('t_s', 'set-up-time', setUp, 'min'), count, input('t_e', 'time-of-each', each, 'min')],
          ['geometry', 'typed'],
        )
      : figure(seconds / 60, 'min', 't = T/60', [inAll], ['geometry', 'typed']),
    stops: [...new Set(findings.filter(({ grade }) => grade === 'stop').map(({ code }) => code))],
  };
}
