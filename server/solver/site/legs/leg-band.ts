import { doubtParts, type DoubtPart, type Pick, type SiteStudy } from '../site-study.ts';
import type { LegCut } from './leg-cut.ts';

/** A cut is sawn and dressed to within this [mm]: common practice, no source. */
const SAWN = 0.5;

/** What a weld pulls in is known to within this share of itself: common practice, no source. */
const PULL_SHARE = 0.5;

/** ± of a leg's length from sawing both ends and from what its welds pull in [mm]. */
export const cuttingDoubt = ({ footDraws, headDraws }: LegCut): number =>
  Math.hypot(SAWN, SAWN, PULL_SHARE * footDraws, PULL_SHARE * headDraws);

/** What a length of a leg as cut is doubtful by, the cutting among it, largest first. */
export const lengthParts = (study: SiteStudy, pick: Pick, cut: LegCut): DoubtPart[] =>
  [...doubtParts(study, pick), { from: 'cutting' as const, name: '', field: '', plusMinus: cuttingDoubt(cut) }].sort(
    (a, b) => b.plusMinus - a.plusMinus,
  );
