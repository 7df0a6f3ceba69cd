/**
 * How far along a straight tube a plane cuts a generator [mm], from where it cuts the axis.
 * z(φ) = r tan α cos φ, derived: the plane through the axis at 0, tilted by α, longest at φ = 0.
 *
 * @param cut radius of the surface marked [mm], tilt off square and generator [rad]
 */
export const planeOrdinate = (cut: { radius: number; tilt: number; generator: number }): number =>
  cut.radius * Math.tan(cut.tilt) * Math.cos(cut.generator);

/**
 * Width of a wedge between two planes that meet on a hinge [mm], 0 beyond the hinge.
 * w(φ) = (tan α1 + tan α2)(h + r cos φ), derived.
 *
 * @param wedge radius and distance of the hinge from the axis on the φ = 180° side [mm]; tilts, generator [rad]
 */
export const wedgeWidth = (wedge: {
  radius: number;
  hinge: number;
  tilts: { first: number; second: number };
  generator: number;
}): number =>
  (Math.tan(wedge.tilts.first) + Math.tan(wedge.tilts.second)) *
  Math.max(0, wedge.hinge + wedge.radius * Math.cos(wedge.generator));
