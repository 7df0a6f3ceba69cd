import type { CorrectionPlan } from '../../plan/correction.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { fromPlanPieces } from '../geometry/from-plan-pieces.ts';
import type { MadeLine } from './laid-site.ts';

/** The frame that will stand there: as the chosen way leaves it, or as wanted where nothing came back or it is made anew. */
export function madeLines(
  wanted: FrameGeometry,
  correction: Pick<CorrectionPlan, 'ways' | 'chosen'> | null,
): readonly MadeLine[] {
  const way = correction?.ways.find(({ key }) => key === correction.chosen);
  const asWanted = wanted.members.map(({ name, closed, centreline }) => ({ name, closed, centreline }));
  if (way === undefined || way.key === 'new-frame') return asWanted;
  return asWanted.map((member) => {
    const made = way.members.find(({ name }) => name === member.name);
    const centreline = made === undefined ? undefined : fromPlanPieces(made.pieces);
    return centreline === undefined || centreline.pieces.length === 0 ? member : { ...member, centreline };
  });
}
