import type { Figure } from '../../../plan/figure.ts';
import { figure, input } from '../../figure.ts';
import { signedChanges, type SiteStudy } from '../site-study.ts';
import { cuttingDoubt } from './leg-band.ts';
import { cutLength } from './leg-cut.ts';
import { signedPerDegree } from './leg-slope.ts';
import type { LegSlope } from './leg-slopes.ts';
import type { LegStudy } from './leg-study.ts';

/** When a leg's turn comes, from 1, and its ± once those before it stand. */
export type LegTurn = { readonly order: number; readonly bandThen: Figure };

/** What is doubtful about one leg [mm]: its change with each doubtful value, the cutting, and its length for a degree of the first slope. */
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
 * the cutting of the first in the same measure. Legs of a frame without a hinge share no one turn: they come in the order in
 * which they fix the first slope, and keep their ±. Derived; the order is our own choice.
 *
 * @param slope what the legs set first
 */
export function legTurns(
  study: SiteStudy,
  legs: readonly LegStudy[],
  slope: LegSlope | undefined,
): ReadonlyMap<number, LegTurn> {
  const isHinged = (study.laid.frame?.hinge ?? null) !== null;
  const all = legs.map((leg) => doubtful(study, leg, slope));
  const first = leastOf(
    all.filter(({ perDegree }) => perDegree !== undefined),
    fixes,
  );
  const waiting = all.map((leg) => ({ leg, bandThen: bandThen(leg, isHinged ? first : undefined) }));
  const turns = new Map<number, LegTurn>();
  while (waiting.length > 0) {
    const next =
      waiting.find(({ leg }) => leg === first && isHinged) ??
      leastOf(isHinged ? [] : waiting.filter(({ leg }) => fixes(leg) < Infinity), ({ leg }) => fixes(leg)) ??
      leastOf(waiting, (one) => one.bandThen.value);
    if (next === undefined) break;
    waiting.splice(waiting.indexOf(next), 1);
    turns.set(next.leg.index, { order: turns.size + 1, bandThen: next.bandThen });
  }
  return turns;
}

/** How far a leg leaves the slope open [degrees]; endless where it does not set it. */
const fixes = ({ plusMinus, perDegree }: Doubtful): number =>
  perDegree === undefined ? Infinity : plusMinus / Math.abs(perDegree);

function doubtful(study: SiteStudy, { index, cut, at, pick }: LegStudy, slope: LegSlope | undefined): Doubtful {
  const length = pick((one) => cutLength(one, at.headTip));
  const changes = signedChanges(study, length);
  const cutting = cuttingDoubt(cut);
  return {
    index,
    changes,
    cutting,
    perDegree: slope && signedPerDegree(slope, study.laid, index),
    plusMinus: Math.hypot(...changes, cutting),
  };
}

function bandThen(leg: Doubtful, first: Doubtful | undefined): Figure {
  const measured = Math.hypot(...leg.changes);
  const c = input('c', 'measured-and-doubtful', measured, 'mm');
  const b = input('b', 'sawing-and-welding', leg.cutting, 'mm');
  const from = ['leg-order', 'leg-saw'] as const;
  if (first === undefined || leg === first || leg.perDegree === undefined || first.perDegree === undefined)
    return figure(leg.plusMinus, 'mm', '± = √(c² + b²)', [c, b], from);
  const share = leg.perDegree / first.perDegree;
  const left = Math.hypot(...leg.changes.map((change, index) => change - share * (first.changes[index] ?? 0)));
  return figure(
    Math.hypot(left, leg.cutting, share * first.cutting),
    'mm',
    '± = √(m² + b² + (b₁ p / p₁)²), m² = Σ (δc − δc₁ p / p₁)², c² = Σ δc², c₁² = Σ δc₁²',
    [
      input('m', 'measured-and-left-open', left, 'mm'),
      c,
      input('c₁', 'measured-and-doubtful-of-the-first-leg', Math.hypot(...first.changes), 'mm'),
      b,
      input('b₁', 'sawing-and-welding-of-the-first-leg', first.cutting, 'mm'),
      input('p', 'leg-for-a-degree', leg.perDegree, 'mm/deg'),
      input('p₁', 'leg-for-a-degree-of-the-first-leg', first.perDegree, 'mm/deg'),
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
