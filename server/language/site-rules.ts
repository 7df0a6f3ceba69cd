import type { Figure } from '../plan/figure.ts';
import type { LevelRow, SiteResidual } from '../plan/site.ts';

/** Steeper than this a person holds the level upright against a line and reads how far off plumb it is [degrees]. */
const STEEP = 45;

/** Which way a line is told, on the page, the sheets and in files: by what a level laid along it shows. */
export const isSteep = ({ along }: Pick<LevelRow, 'along'>): boolean => along.value > STEEP;

/** Below this a residual is rounding [mm or degrees]: as many readings as it takes leave none. */
const NOTHING = 1e-6;

/** Those of readings that are more than it takes; just as many fit by themselves, which says nothing of them. */
export const tellingResiduals = (residuals: readonly SiteResidual[]): readonly SiteResidual[] =>
  residuals.some(({ residual }) => Math.abs(residual.value) > NOTHING) ? residuals : [];

/** Lengths nearer to each other than this are one [mm]: rounding. */
const SAME = 1e-6;

/** What a gap is beside the room that is asked for, with the limits that findings have. */
export function gapGrade(gap: Figure, clearance: Figure): 'struck' | 'under' | 'enough' {
  if (gap.value < -SAME) return 'struck';
  return gap.value < clearance.value - SAME ? 'under' : 'enough';
}
