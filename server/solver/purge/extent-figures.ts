import type { Purge } from '../../job/purge.ts';
import type { Finding } from '../../plan/finding.ts';
import type { ExtentWork } from '../../plan/purge.ts';
import { figure, input } from '../figure.ts';
import { numbered, termsOf } from '../numbered-symbols.ts';
import { floorTime } from '../welding/operating-factor.ts';
import { FACTOR, floorBand, gasBeforeFigure, purgeGasFigure } from './gas-figures.ts';
import type { PurgeContext } from './purge-context.ts';
import type { PurgeWork } from './purge-work.ts';

/** What an extent takes, and what keeps it from being done. */
export function extentFigures(
  extent: Purge['extent'],
  { purge, job }: PurgeContext,
  work: PurgeWork,
  findings: readonly Finding[],
): ExtentWork {
  const { setups, waits, wait, arcs, hold, seconds } = work;
  const { setUp: ready, each: filled } = job.rates.labour.purge;
  const setUp = ready.value;
  const each = filled.value;
  const count = input('n', 'set-ups', setups, 'count');
  const gone = [
    input('t', 'wait', wait, 's'),
    input('T', 'arc-time', arcs, 's'),
    FACTOR,
    count,
    input('h', 'hold', hold, 's'),
  ];
  const time = '(t + T/f + n h)/60';
  const known = setUp !== null && each !== null;
  return {
    extent,
    setups: figure(setups, 'count', 'n', [count], ['geometry']),
    wait: figure(
      wait,
      's',
      `t = ${termsOf('t', setups, ' + ')}`,
      waits.map((one, index) => input(numbered('t', index + 1), 'wait-of-a-set-up', one, 's')),
      ['gas-network', 'geometry'],
    ),
    gasBefore: gasBeforeFigure(purge, work),
    gas: purgeGasFigure(purge, work),
    minutes: figure(
      seconds / 60 + (known ? setUp + setups * each : 0),
      'min',
      known ? `M = ${time} + t_s + n t_e` : `M = ${time}`,
      known ? [...gone, input('t_s', 'set-up-time', setUp, 'min'), input('t_e', 'time-of-each', each, 'min')] : gone,
      ['gas-network', 'operating-factor', 'typed'],
      floorBand(floorTime(arcs) / 60),
    ),
    stops: [...new Set(findings.filter(({ grade }) => grade === 'stop').map(({ code }) => code))],
  };
}
