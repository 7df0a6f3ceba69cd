import type { Way } from '../../plan/correction.ts';
import type { Said } from '../../plan/readings-fit.ts';
import { misfitOf } from './compare-ways.ts';

/** Costs that differ by less are alike [minor units]: the smallest coin. */
const ALIKE = 1;

/** Further off by less is not worth telling [mm]: less than a tape reads off; our own choice. */
const FURTHER = 0.1;

/**
 * What the recommended way costs beside a new frame, and beside the cheapest of the other possible ways that cost less;
 * of that one also by how much it misses more. Nothing of ways whose cost is open, and nothing where its own is.
 *
 * @returns sentences by key; cost [minor units for one frame], off [mm]
 */
export function costBesideOthers(ways: readonly Way[], recommended: Way['key'] | null): Said[] {
  const taken = ways.find(({ key }) => key === recommended);
  const own = taken?.cost?.value;
  if (taken === undefined || own === undefined) return [];
  const others = ways.flatMap((way) =>
    way.possible && way !== taken && way.cost !== null ? [{ way, less: own - way.cost.value }] : [],
  );
  const [cheapest] = others
    .filter(({ way, less }) => way.key !== 'new-frame' && less >= ALIKE)
    .toSorted((one, other) => other.less - one.less);
  const anew = others.find(({ way }) => way.key === 'new-frame');
  return [
    ...(anew === undefined ? [] : [besideNew(anew.less)]),
    ...(cheapest === undefined ? [] : [besideCheaper(taken, cheapest)]),
  ];
}

const say = (key: string, data: Said['data']): Said => ({ key: `money.${key}`, data });

function besideNew(less: number): Said {
  if (Math.abs(less) < ALIKE) return say('as-new', {});
  return less < 0 ? say('cheaper-than-new', { cost: -less }) : say('dearer-than-new', { cost: less });
}

function besideCheaper(taken: Way, { way, less }: { readonly way: Way; readonly less: number }): Said {
  const data = { other: way.key, cost: less };
  const off = misfitOf(way) - misfitOf(taken);
  return off >= FURTHER ? say('other-less-but-off', { ...data, off }) : say('other-less', data);
}
