import type { Finish } from '../../job/finish.ts';
import type { Preparation, WeldSymbol } from '../../plan/welding.ts';
import type { Welding } from '../../job/welding.ts';
import { isFlush } from '../finish/finish-steps.ts';
import type { WeldSetting } from './settings.ts';

const ELEMENTARY: Readonly<Record<Preparation, WeldSymbol['elementary']>> = {
  'square-tight': 'square',
  'square-gap': 'square',
  bevel: 'v',
  saddle: 'flare-bevel',
  fillet: 'fillet',
};

/**
 * What a weld symbol says. A butt round a tube is one weld and needs no circle (AWS A2.4, from memory); what is ground
 * flush is said to be. Saddles and pads are round the outside of the tube and stay as high as they are: they have a size,
 * and no flush face.
 */
export function weldSymbol(
  { form, preparation, process, leg }: WeldSetting,
  gap: number,
  work: { readonly welding: Welding; readonly finish: Pick<Finish, 'treatment'> },
): WeldSymbol {
  const { treatment } = work.finish;
  return {
    standard: work.welding.symbols,
    elementary: ELEMENTARY[preparation],
    allRound: form !== 'butt',
    flush: form === 'butt' && isFlush(treatment),
    angle: preparation === 'bevel' ? 2 * work.welding.groove.angle : null,
    gap: form === 'butt' ? gap : null,
    leg,
    process,
  };
}
