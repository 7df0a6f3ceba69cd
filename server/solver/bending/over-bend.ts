/** A bend beside a straight: centreline radius [mm] and angle [rad]. */
export type BendBeside = { readonly radius: number; readonly angle: number };

/**
 * How far the outside of the leg beyond a bend lies past the end of the straight, along the straight [mm]. Up to a
 * right angle it is where the outer line of that leg meets the outer line of the straight, (R + D/2) tan(θ/2): lay a
 * straightedge on the leg. Above a right angle it is the outside of the bend itself, R + D/2. Plane geometry.
 */
export const beyondStraight = (bend: BendBeside, outsideDiameter: number): number =>
  (bend.radius + outsideDiameter / 2) * Math.tan(Math.min(bend.angle, Math.PI / 2) / 2);

/**
 * The same to the top of a crown that follows a corner of less than a right angle: where the crown runs square to the
 * straight, its outside is the furthest point. Undefined where the crown ends before that.
 *
 * @param crown radius and angle of the arc that follows at once, turning the same way
 */
export function beyondToCrown(bend: BendBeside, crown: BendBeside, outsideDiameter: number): number | undefined {
  if (bend.angle >= Math.PI / 2 || bend.angle + crown.angle < Math.PI / 2) return undefined;
  // centre of the crown lies on the line through the end of the bend and its centre
  return bend.radius * Math.sin(bend.angle) + crown.radius * (1 - Math.sin(bend.angle)) + outsideDiameter / 2;
}
