import type { Band, Figure } from '../../plan/figure.ts';
import { band, figure, input } from '../figure.ts';
import { DEGREES } from '../geometry/angle.ts';
import { pieceEnd } from '../geometry/slice.ts';
import { cross, dot, length, subtract } from '../geometry/vector.ts';
import { radiusBand, withTape, type BendContext, type PlannedArc } from './planned-arc.ts';
import { beyondStraight, beyondToCrown } from './over-bend.ts';

/**
 * The size that a tape reaches after a bend, along the straight before it: from the sawn end or the outside of the
 * leg before, to the outside of the leg beyond (or the top of the crown that follows).
 *
 * @param neighbours the arcs before and after; `firstStraight` from the sawn end to the first arc [mm]
 * @returns null for a rolled arc, and where neither a straight lies before the bend nor a crown between parallel legs
 */
export function bendCheck(
  arc: PlannedArc,
  neighbours: {
    before: PlannedArc | undefined;
    after: PlannedArc | undefined;
    /** The arc before the one before. */
    second: PlannedArc | undefined;
    firstStraight: number;
  },
  context: BendContext,
): Figure | null {
  const { before, after, second, firstStraight } = neighbours;
  const { outsideDiameter } = context.tube;
  if (before?.piece.made === 'rolled' && second !== undefined) return acrossCrown(arc, before, second, context);
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
      input('θ', 'angle', arc.piece.angle * DEGREES, 'deg'),
      input('D', 'outside-diameter', outsideDiameter, 'mm'),
      ...(crown === undefined ? [] : [input('R_c', 'crown-radius', crown.radius, 'mm')]),
    ],
    ['geometry'],
    checkBand(arc, before, crown, context),
  );
}

/** Two directions this near are parallel [–]: rounding. */
const PARALLEL = 1e-6;

/**
 * Across a crown between two bends that follow it at once, all in one plane: from the outside of the leg before to the
 * outside of the leg beyond, where the two are parallel. Plane geometry; null where they are not.
 */
function acrossCrown(arc: PlannedArc, crown: PlannedArc, second: PlannedArc, context: BendContext): Figure | null {
  const flat = arc.before === 'arc' && crown.before === 'arc' && arc.rotation === 0 && crown.rotation === 0;
  const { point: end, tangent } = pieceEnd(arc.piece);
  const { start, direction, angle } = second.piece;
  if (!flat || second.piece.made !== 'die' || length(cross(tangent, direction)) > PARALLEL) return null;
  const { outsideDiameter } = context.tube;
  const apart = length(cross(subtract(end, start), direction));
  // the first of the two bends swings the far leg about its own end
  const lever = Math.abs(dot(subtract(end, pieceEnd(second.piece).point), direction));
  const { plusMinus, from } = context.law.bandFor(angle);
  const size = context.tolerance?.outsideDiameter ?? 0;
  const named = [...(lever * plusMinus > NOTHING ? from : []), ...(size > NOTHING ? ['tube-tolerance'] : [])];
  return figure(
    apart + outsideDiameter,
    'mm',
    'k = w + D',
    [input('w', 'centre-to-centre', apart, 'mm'), input('D', 'outside-diameter', outsideDiameter, 'mm')],
    ['geometry'],
    withTape(band(Math.hypot(lever * plusMinus, size), ...named), context),
  );
}

/**
 * ± of the check: the angles of this bend and of the one before, by how far they turn their outer lines, the radius
 * after release, the tube's diameter, and the tape.
 */
function checkBand(
  arc: PlannedArc,
  before: PlannedArc | undefined,
  crown: { radius: number } | undefined,
  context: BendContext,
): Band | null {
  const { law, tolerance } = context;
  // d/dθ and d/dR of (R + D/2) tan(θ/2); above a right angle the outside of the bend itself, R + D/2
  const turn = ({ piece: { angle, radius } }: PlannedArc): number =>
    angle > Math.PI / 2 ? 0 : (radius + context.tube.outsideDiameter / 2) / (2 * Math.cos(angle / 2) ** 2);
  const grow = ({ ofDie, piece: { angle } }: PlannedArc): number =>
    ofDie ? Math.tan(Math.min(angle, Math.PI / 2) / 2) : 0;
  const own = law.bandFor(arc.piece.angle);
  const ahead =
    crown === undefined ? turn(arc) : Math.abs((arc.piece.radius - crown.radius) * Math.cos(arc.piece.angle));
  const behind = before === undefined ? 0 : turn(before) * law.bandFor(before.piece.angle).plusMinus;
  const turned = Math.hypot(ahead * own.plusMinus, behind);
  const radius = radiusBand(grow(arc) + (before === undefined ? 0 : grow(before)), context);
  const ends = before === undefined ? 0.5 : 1;
  const size = (tolerance?.outsideDiameter ?? 0) * ends;
  const named = [
    ...(turned > NOTHING ? own.from : []),
    ...(radius?.from ?? []),
    ...(size > NOTHING ? ['tube-tolerance'] : []),
  ];
  return withTape(band(Math.hypot(turned, radius?.plusMinus ?? 0, size), ...new Set(named)), context);
}

/** Rounding of lengths [mm]. */
const NOTHING = 1e-9;
