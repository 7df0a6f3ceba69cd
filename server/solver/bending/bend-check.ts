import type { Band, Figure } from '../../plan/figure.ts';
import { band, figure, input } from '../figure.ts';
import { withTape, type BendContext, type PlannedArc } from './planned-arc.ts';
import { beyondStraight, beyondToCrown } from './over-bend.ts';

const DEGREE = 180 / Math.PI;

/**
 * The size that a tape reaches after a bend, along the straight before it: from the sawn end or the outside of the
 * leg before, to the outside of the leg beyond (or the top of the crown that follows).
 *
 * @param neighbours the arcs before and after; `firstStraight` from the sawn end to the first arc [mm]
 * @returns null for a rolled arc and where no straight lies before the bend
 */
export function bendCheck(
  arc: PlannedArc,
  neighbours: { before: PlannedArc | undefined; after: PlannedArc | undefined; firstStraight: number },
  context: BendContext,
): Figure | null {
  const { before, after, firstStraight } = neighbours;
  const { outsideDiameter } = context.tube;
  if (
    arc.piece.made === 'rolled' ||
    (before !== undefined && (arc.before !== 'straight' || before.piece.made === 'rolled'))
  ) {
    return null;
  }
  const crown = arc.next === 'arc' && after?.piece.made === 'rolled' && after.rotation === 0 ? after.piece : undefined;
  if (arc.next === 'arc' && crown === undefined) return null;
  const straight = before === undefined ? firstStraight : arc.feed;
  const behind = before === undefined ? 0 : beyondStraight(before.piece, outsideDiameter);
  const ahead =
    crown === undefined ? beyondStraight(arc.piece, outsideDiameter) : beyondToCrown(arc.piece, crown, outsideDiameter);
  if (ahead === undefined) return null;
  return figure(
    straight + behind + ahead,
    'mm',
    crown === undefined
      ? 'k = Y + h₁ + h₂, h = (R + D / 2) tan(min(θ, 90°) / 2)'
      : 'k = Y + h₁ + h₂, h₂ = R sin θ + R_c (1 − sin θ) + D / 2',
    [
      input('Y', 'straight', straight, 'mm'),
      input('h₁', 'beyond-before', behind, 'mm'),
      input('h₂', 'beyond-after', ahead, 'mm'),
      input('R', 'radius-after-release', arc.piece.radius, 'mm'),
      input('θ', 'angle', arc.piece.angle * DEGREE, 'deg'),
      input('D', 'outside-diameter', outsideDiameter, 'mm'),
      ...(crown === undefined ? [] : [input('R_c', 'crown-radius', crown.radius, 'mm')]),
    ],
    ['geometry'],
    checkBand(arc, crown, context),
  );
}

/** ± of the check: the bend's own angle, by how far it turns the outer line, the tube's diameter, and the tape. */
function checkBand(arc: PlannedArc, crown: { radius: number } | undefined, context: BendContext): Band | null {
  const { angle, radius } = arc.piece;
  const { plusMinus, from } = context.law.bandFor(angle);
  const half = context.tolerance === null ? 0 : context.tolerance.outsideDiameter / 2;
  const ofTube = half > 0 ? ['tube-tolerance'] : [];
  const turned =
    crown !== undefined
      ? Math.abs((radius - crown.radius) * Math.cos(angle)) * plusMinus
      : angle > Math.PI / 2
        ? 0 // over the outside of the bend itself, which the angle does not move
        : // d/dθ (R + D/2) tan(θ/2)
          ((radius + context.tube.outsideDiameter / 2) / (2 * Math.cos(angle / 2) ** 2)) * plusMinus;
  return withTape(band(Math.hypot(turned, half), ...(turned > 0 ? from : []), ...ofTube), context);
}
