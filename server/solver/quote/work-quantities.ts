import type { Job } from '../../job/job.ts';
import type { QuotePart } from '../../plan/quote.ts';
import type { WeldForm } from '../../job/welding.ts';
import { finishMinutesOf } from '../finish/finish-minutes.ts';
import type { JobWork } from '../pricing.ts';
import { cutList } from '../stock/cut-list.ts';
import type { WeldWork } from '../welding/weld-work.ts';
import { byOperation } from './operations.ts';
import type { Quantities } from './quantities.ts';

const sumOf = (welds: readonly WeldWork[], pick: (weld: WeldWork) => number): number =>
  welds.reduce((sum, weld) => sum + pick(weld), 0);

/** What a piece of work on a frame takes, without the legs under it. */
export function workQuantities(job: Job, { effort, welds, purge, gas }: JobWork): Quantities {
  const { finish, tube } = job;
  const left = finish.treatment === 'none' && finish.cleaning === 'none';
  const welded = sumOf(welds, ({ length }) => length) / 1000;
  const arc = sumOf(welds, ({ arcTime }) => arcTime) / 60;
  const wait = purge.wait / 60;
  const filler = sumOf(welds, ({ fillerMass }) => fillerMass);
  const { grinding, blending } = finishMinutesOf(finish, welds);
  const counts = {
    bend: effort.bends,
    cut: effort.cuts,
    fit: welds.length,
    purge: purge.setups,
    bottle: 0,
    weld: welds.length,
    finish: left ? 0 : welds.length,
  };
  return {
    pieces: cutList({ effort, legs: [], tube }),
    counts,
    metres: {
      bend: effort.bentTube / 1000,
      // once round the tube for each cut
      cut: (effort.cuts * Math.PI * tube.outsideDiameter) / 1000,
      fit: welded,
      purge: 0,
      bottle: 0,
      weld: welded,
      finish: left ? 0 : welded,
    },
    process: byOperation((operation) =>
      operation === 'weld' ? arc : operation === 'purge' ? wait : operation === 'finish' ? grinding + blending : 0,
    ),
    purgeGas: purge.purgeGas,
    torchGas: purge.torchGas,
    filler,
    welds: welds.length,
    anew: isAnew(effort, gas.frame),
    parts: {
      gas: [...part('purge', purge.purgeGas, 'L'), ...part('torch', purge.torchGas, 'L')],
      filler: FORMS.flatMap((form) =>
        part(
          form,
          sumOf(
            welds.filter(({ site }) => site.form === form),
            ({ fillerMass }) => fillerMass,
          ),
          'g',
        ),
      ),
      purge: part('waiting', wait, 'min'),
      weld: part('arc', arc, 'min'),
      finish: [...part('grinding', grinding, 'min'), ...part('blending', blending, 'min')],
    },
  };
}

/** Whether every member is made from new tube. */
const isAnew = ({ pieces }: JobWork['effort'], { members }: JobWork['gas']['frame']): boolean =>
  members.every(({ name }) => pieces.some(({ kind, of }) => (kind === 'member' || kind === 'length') && of === name));

const FORMS: readonly WeldForm[] = ['butt', 'saddle', 'pad'];

const part = (key: string, value: number, unit: QuotePart['unit']): QuotePart[] =>
  value > 0 ? [{ key, name: '', value, unit }] : [];
