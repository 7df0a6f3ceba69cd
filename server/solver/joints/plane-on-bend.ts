/**
 * A bend seen along its axis [mm, rad]: its centre is the origin, it turns right-handed about z, the turn θ counts
 * from x. Before `from` and after `to` the tube runs on straight; ∓Infinity where it does not end.
 */
export type BentTubeSpan = { readonly radius: number; readonly from: number; readonly to: number };

/** A plane n · P = d in the bend's axes [mm]. */
export type CutPlane = {
  readonly normal: { readonly x: number; readonly y: number; readonly z: number };
  readonly distance: number;
};

/** A generator: radius of the surface [mm], angle [rad] from the outside of the bend, a quarter turn at +z. */
export type BendGenerator = { readonly radius: number; readonly angle: number };

/**
 * Where a plane cuts one generator of a bent tube. Derived; checked against root search and dense meshes.
 *
 * @param near turn that the cut is looked for beside, because a plane meets a bend more than once [rad]
 * @returns the turn θ [rad] where the cut lies in the bend (else null), and the length along the generator from the
 *   line θ = 0 [mm]; undefined where the plane misses the generator
 */
export function planeOnBend(
  bend: BentTubeSpan,
  plane: CutPlane,
  generator: BendGenerator,
  near: number,
): { turn: number | null; along: number } | undefined {
  const { normal, distance } = plane;
  const reach = bend.radius + generator.radius * Math.cos(generator.angle); // ρ = R + r cos φ
  const rest = distance - normal.z * generator.radius * Math.sin(generator.angle); // d − n_z r sin φ
  const candidates: { turn: number | null; along: number }[] = [];

  // θ = ψ ± arccos[(d − n_z r sin φ)/(m ρ)]
  const cosine = rest / (Math.hypot(normal.x, normal.y) * reach);
  if (Math.abs(cosine) <= 1) {
    const middle = Math.atan2(normal.y, normal.x);
    for (const side of [1, -1]) {
      const raw = middle + side * Math.acos(cosine);
      const turn = raw - 2 * Math.PI * Math.round((raw - near) / (2 * Math.PI));
      if (turn >= bend.from && turn <= bend.to) candidates.push({ turn, along: reach * turn });
    }
  }
  // on the straights: s = (d − n_z r sin φ − ρ (n_x cos θ + n_y sin θ)) / (n_y cos θ − n_x sin θ)
  for (const [end, way] of [
    [bend.from, -1],
    [bend.to, 1],
  ] as const) {
    if (!Number.isFinite(end)) continue;
    const ahead = normal.y * Math.cos(end) - normal.x * Math.sin(end);
    const beyond = (rest - reach * (normal.x * Math.cos(end) + normal.y * Math.sin(end))) / ahead;
    if (Number.isFinite(beyond) && beyond * way > 0) candidates.push({ turn: null, along: reach * end + beyond });
  }
  return candidates.sort((a, b) => Math.abs(a.along - near * reach) - Math.abs(b.along - near * reach))[0];
}

/**
 * The plane through the centreline at a turn, tilted off square: by `inPlane` in the plane of the bend (longer at
 * the outside where positive) and by `outOfPlane` across it (longer at −z where positive) [rad].
 */
export function tiltedPlane(
  bend: { readonly radius: number },
  at: number,
  tilt: { readonly inPlane: number; readonly outOfPlane: number },
): CutPlane {
  const level = Math.cos(tilt.outOfPlane);
  const normal = {
    x: level * (-Math.cos(tilt.inPlane) * Math.sin(at) - Math.sin(tilt.inPlane) * Math.cos(at)),
    y: level * (Math.cos(tilt.inPlane) * Math.cos(at) - Math.sin(tilt.inPlane) * Math.sin(at)),
    z: Math.sin(tilt.outOfPlane),
  };
  return { normal, distance: bend.radius * (normal.x * Math.cos(at) + normal.y * Math.sin(at)) };
}
