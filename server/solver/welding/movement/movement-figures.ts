import type { Band, Figure } from '../../../plan/figure.ts';
import type { OrderedWeld } from '../../../plan/welding.ts';
import { SHRINKAGE_DOUBT } from '../../correction/weld-limits.ts';
import { band, figure, input } from '../../figure.ts';
import { DEGREES, RADIANS } from '../../geometry/angle.ts';
import type { WeldInfluence } from './weld-influences.ts';
import { pullOf } from './quarters.ts';

/** 0.5 to 1° for 0.75°: a third either way; common practice, no source. */
const PULL_DOUBT = 1 / 3;

/** So many welds stand in a working by themselves, the rest in one sum. */
const MOST_TOLD = 12;

/** What one weld adds to a size. */
type Part = { readonly weld: string; readonly amount: number; readonly each: number };

/** What a weld does to a size in some order [mm, for 1 rad of pull]. */
export type PulledBy = (influence: WeldInfluence, check: number) => number;

export function pulledBy(order: readonly OrderedWeld[]): PulledBy {
  const pulls = new Map(order.map(({ weld, quarters }) => [weld, pullOf(quarters)]));
  return ({ weld, outside, top }, check) => {
    const pull = pulls.get(weld.name);
    return pull === undefined ? 0 : pull.outside * (outside[check] ?? 0) + pull.top * (top[check] ?? 0);
  };
}

/** What shrinkage alone does to a size [mm]. */
export function shrinkageFigure(welds: readonly WeldInfluence[], check: number): Figure {
  const parts = welds.map(({ weld, shrinkage }): Part => {
    const each = shrinkage[check] ?? 0;
    return { weld: weld.name, amount: each * weld.shrinkage, each };
  });
  const told = tellingOf(parts);
  const inputs = told.flatMap(({ weld, each }) => {
    const own = welds.find((one) => one.weld.name === weld);
    return [
      input(`s_${weld}`, 'size-for-each-mm-of-shrinkage', each, 'ratio'),
      input(`S_${weld}`, 'shrinkage', own?.weld.shrinkage ?? 0, 'mm'),
    ];
  });
  const { total, rest, doubt } = summed(parts, told);
  return figure(
    total,
    'mm',
    `Δ = Σ s_i S_i${rest === null ? '' : ' + r'}`,
    [...inputs, ...(rest === null ? [] : [input('r', 'the-other-welds', rest, 'mm')])],
    ['elastic-frame'],
    bandOf(SHRINKAGE_DOUBT * doubt, 'shrinkage-of-each-weld'),
  );
}

/**
 * What pull adds to a size in an order [mm].
 *
 * @param perTurn what each weld does in that order
 * @param pull of one joint, once round [rad]
 */
export function pullFigure(welds: readonly WeldInfluence[], check: number, perTurn: PulledBy, pull: number): Figure {
  const parts = welds.map((influence): Part => {
    const each = perTurn(influence, check);
    return { weld: influence.weld.name, amount: each * pull, each };
  });
  const told = tellingOf(parts);
  const { total, rest, doubt } = summed(parts, told);
  return figure(
    total,
    'mm',
    `Δ = θ Σ k_i${rest === null ? '' : ' + r'}`,
    [
      input('θ', 'pull-of-one-joint', pull * DEGREES, 'deg'),
      ...told.map(({ weld, each }) => input(`k_${weld}`, 'size-for-each-degree', each * RADIANS, 'mm/deg')),
      ...(rest === null ? [] : [input('r', 'the-other-welds', rest, 'mm')]),
    ],
    ['elastic-frame', 'weld-quarters', 'weld-pull'],
    bandOf(PULL_DOUBT * doubt, 'pull-of-each-joint'),
  );
}

/**
 * How far the place that stands off most does so, when the frame is laid back on where it was [mm].
 *
 * @param order the quarters of every weld
 * @param pull of one joint, once round [rad]
 */
export function shapeFigure(welds: readonly WeldInfluence[], order: readonly OrderedWeld[], pull: number): Figure {
  const pulls = new Map(order.map(({ weld, quarters }) => [weld, pullOf(quarters)]));
  const off = new Array<number>(welds[0]?.outsideOff.length ?? 0).fill(0);
  for (const { weld, outsideOff, topOff } of welds) {
    const share = pulls.get(weld.name) ?? { outside: 0, top: 0 };
    for (const [at, before] of off.entries())
      off[at] = before + pull * (share.outside * (outsideOff[at] ?? 0) + share.top * (topOff[at] ?? 0));
  }
  let most = 0;
  for (let at = 0; at + 2 < off.length; at += 3)
    most = Math.max(most, Math.hypot(off[at] ?? 0, off[at + 1] ?? 0, off[at + 2] ?? 0));
  return figure(
    most,
    'mm',
    'max |u|',
    [
      input('θ', 'pull-of-one-joint', pull * DEGREES, 'deg'),
      input('n', 'ends-corners-and-welds', off.length / 3, 'count'),
    ],
    ['elastic-frame', 'weld-quarters', 'weld-pull'],
    bandOf(PULL_DOUBT * most, 'pull-of-each-joint'),
  );
}

/** The largest of some figures in size. */
export function largestFigure(figures: readonly Figure[]): Figure {
  const [first, ...others] = figures;
  const most = others.reduce((best, one) => (Math.abs(one.value) > Math.abs(best?.value ?? 0) ? one : best), first);
  return figure(
    Math.abs(most?.value ?? 0),
    'mm',
    'max |Δ|',
    [input('n', 'check-dimensions', figures.length, 'count')],
    ['elastic-frame', 'weld-quarters', 'weld-pull'],
    most?.band ?? null,
  );
}

/** The parts that stand in the working: those that do anything, the greatest where they are many. */
function tellingOf(parts: readonly Part[]): Part[] {
  const doing = parts.filter(({ each }) => each !== 0);
  if (doing.length <= MOST_TOLD) return doing;
  const least = doing.map(({ amount }) => Math.abs(amount)).sort((a, b) => b - a)[MOST_TOLD - 1] ?? 0;
  return doing.filter(({ amount }) => Math.abs(amount) >= least).slice(0, MOST_TOLD);
}

/**
 * Sum of the parts, and of those that are not told [mm]. Doubt of what welds have alike adds up, what each has by
 * itself does not: the larger of both stands.
 */
function summed(parts: readonly Part[], told: readonly Part[]): { total: number; rest: number | null; doubt: number } {
  const total = parts.reduce((sum, { amount }) => sum + amount, 0);
  const others = parts.filter((part) => part.each !== 0 && !told.includes(part));
  return {
    total,
    rest: others.length === 0 ? null : others.reduce((sum, { amount }) => sum + amount, 0),
    doubt: Math.max(Math.abs(total), Math.hypot(...parts.map(({ amount }) => amount))),
  };
}

const bandOf = (plusMinus: number, from: string): Band | null => (plusMinus === 0 ? null : band(plusMinus, from));
