import type { Figure } from '../../../plan/figure.ts';
import { figure, input } from '../../figure.ts';
import type { SiteStudy } from '../site-study.ts';
import { cuttingDoubt } from './leg-band.ts';
import { cutLength } from './leg-cut.ts';
import { signedPerDegree } from './leg-slope.ts';
import type { LegStudy } from './leg-study.ts';

/** When a leg's turn comes, from 1, and its ± once those before it stand. */
export type LegTurn = { readonly order: number; readonly bandThen: Figure };

/** What is doubtful about one leg [mm]: its change with each doubtful value, the cutting, and its length for a degree. */
type Doubtful = {
  readonly index: number;
  readonly changes: readonly number[];
  readonly cutting: number;
  readonly perDegree: number | undefined;
  readonly plusMinus: number;
};

/** Bands nearer to each other than this share are alike, and the leg that the job lists first comes first. */
const ALIKE = 1e-9;

/**
 * In which order legs are cut and set up: first the leg that fixes the slope best, which is the one whose ± is least for
 * its length a degree. Once it stands, the frame rests on it, and whatever was wrong with its length has become a turn of
 * the frame about its hinge; the other legs are then fitted to the frame as it stands. So for each doubtful value the others
 * are off by c − c₁ p / p₁ (c the change of a leg's length, p its length a degree, ₁ the first leg's), and they take over
 * the cutting of the first in the same measure. Legs of a frame without a hinge share no one turn: they come in the order
 * of their ±, and keep it. Derived; the order is our own choice.
 */
export function legTurns(study: SiteStudy, legs: readonly LegStudy[]): ReadonlyMap<number, LegTurn> {
  const all = legs.map((leg) => doubtful(study, leg));
  const first = leastOf(
    all.filter(({ perDegree }) => perDegree !== undefined),
    ({ plusMinus, perDegree = 0 }) => plusMinus / Math.abs(perDegree),
  );
  const then = all.map((leg) => ({ leg, bandThen: bandThen(leg, first) }));
  const waiting = [...then];
  const turns = new Map<number, LegTurn>();
  while (waiting.length > 0) {
    const next =
      waiting.find(({ leg }) => leg === first) ?? leastOf(waiting, (one) => one.bandThen.value) ?? waiting[0];
    if (next === undefined) break;
    waiting.splice(waiting.indexOf(next), 1);
    turns.set(next.leg.index, { order: turns.size + 1, bandThen: next.bandThen });
  }
  return turns;
}

function doubtful(study: SiteStudy, { index, cut, at, pick }: LegStudy): Doubtful {
  const length = pick((one) => cutLength(one, at.headTip));
  const exact = length(study.laid) ?? 0;
  const changes = study.varied.map(({ laid }) => (length(laid) ?? exact) - exact);
  const cutting = cuttingDoubt(cut);
  return {
    index,
    changes,
    cutting,
    perDegree: signedPerDegree(study.laid, index),
    plusMinus: Math.hypot(...changes, cutting),
  };
}

function bandThen(leg: Doubtful, first: Doubtful | undefined): Figure {
  const b = input('b', 'sawing-and-welding', leg.cutting, 'mm');
  const from = ['leg-order', 'leg-saw'] as const;
  if (first === undefined || leg === first || leg.perDegree === undefined || first.perDegree === undefined)
    return figure(leg.plusMinus, 'mm', '± = √(Σ c² + b²)', [b], from);
  const share = leg.perDegree / first.perDegree;
  const changes = leg.changes.map((change, index) => change - share * (first.changes[index] ?? 0));
  return figure(
    Math.hypot(...changes, leg.cutting, share * first.cutting),
    'mm',
    '± = √(Σ (c − r c₁)² + b² + (r b₁)²), r = p / p₁',
    [
      b,
      input('r', 'share-of-the-first-leg', share, 'ratio'),
      input('b₁', 'sawing-and-welding-of-the-first-leg', first.cutting, 'mm'),
    ],
    from,
  );
}

/** The one that is least by a number; of several alike the first. */
function leastOf<One>(all: readonly One[], by: (one: One) => number): One | undefined {
  let best: One | undefined;
  for (const one of all) if (best === undefined || by(one) < by(best) * (1 - ALIKE)) best = one;
  return best;
}
