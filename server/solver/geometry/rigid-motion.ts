import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { add, cross, dot, ORIGIN, rotate, scale, subtract, unit, type Vector3 } from './vector.ts';

/** A rigid motion: p → R p + shift [mm]. The rows of R are the images' coordinates: R = (x, y, z)ᵀ. */
export type RigidMotion = { readonly x: Vector3; readonly y: Vector3; readonly z: Vector3; readonly shift: Vector3 };

/** The motion that leaves everything where it is. */
export const UNMOVED: RigidMotion = {
  x: { x: 1, y: 0, z: 0 },
  y: { x: 0, y: 1, z: 0 },
  z: { x: 0, y: 0, z: 1 },
  shift: ORIGIN,
};

export const turned = ({ x, y, z }: RigidMotion, a: Vector3): Vector3 => ({ x: dot(x, a), y: dot(y, a), z: dot(z, a) });

export const moved = ({ x, y, z, shift }: RigidMotion, a: Vector3): Vector3 => ({
  x: dot(x, a) + shift.x,
  y: dot(y, a) + shift.y,
  z: dot(z, a) + shift.z,
});

/** First `inner`, then `outer`. */
export function composed(outer: RigidMotion, inner: RigidMotion): RigidMotion {
  const columns = transposed(inner);
  const row = (of: Vector3): Vector3 => ({ x: dot(of, columns.x), y: dot(of, columns.y), z: dot(of, columns.z) });
  return { x: row(outer.x), y: row(outer.y), z: row(outer.z), shift: moved(outer, inner.shift) };
}

const transposed = ({ x, y, z }: RigidMotion) => ({
  x: { x: x.x, y: y.x, z: z.x },
  y: { x: x.y, y: y.y, z: z.y },
  z: { x: x.z, y: y.z, z: z.z },
});

export function inverted(motion: RigidMotion): RigidMotion {
  const back = { ...transposed(motion), shift: ORIGIN };
  return { ...back, shift: scale(turned(back, motion.shift), -1) };
}

/**
 * A turn about a point, then a shift.
 *
 * @param turn rotation vector: its direction is the axis, its length the angle [rad], right-handed
 */
export function turnAbout(point: Vector3, turn: Vector3, shift: Vector3): RigidMotion {
  const angle = Math.hypot(turn.x, turn.y, turn.z);
  const axis = unit(turn);
  if (axis === undefined) return { ...UNMOVED, shift };
  const ex = rotate(UNMOVED.x, axis, angle);
  const ey = rotate(UNMOVED.y, axis, angle);
  const ez = rotate(UNMOVED.z, axis, angle);
  const rows = {
    x: { x: ex.x, y: ey.x, z: ez.x },
    y: { x: ex.y, y: ey.y, z: ez.y },
    z: { x: ex.z, y: ey.z, z: ez.z },
    shift: ORIGIN,
  };
  return { ...rows, shift: add(subtract(point, turned(rows, point)), shift) };
}

/** The rotation vector of a motion [rad]: unit axis times angle, 0 … π. */
export function turnOf({ x, y, z }: RigidMotion): Vector3 {
  const twice = { x: z.y - y.z, y: x.z - z.x, z: y.x - x.y };
  const sine = Math.hypot(twice.x, twice.y, twice.z) / 2;
  const angle = Math.atan2(sine, (x.x + y.y + z.z - 1) / 2);
  if (sine > NO_SINE) return scale(twice, angle / (2 * sine));
  if (angle < 1) return ORIGIN;
  // half a turn: R = 2 n nᵀ − 1, so the column with the largest diagonal leads along the axis
  const columns = [
    { x: x.x + 1, y: y.x, z: z.x },
    { x: x.y, y: y.y + 1, z: z.y },
    { x: x.z, y: y.z, z: z.z + 1 },
  ];
  const longest = columns.reduce((best, one) => (dot(one, one) > dot(best, best) ? one : best));
  return scale(unit(longest) ?? ORIGIN, angle);
}

/** Sines below this are rounding. */
const NO_SINE = 1e-12;

/** Two points and how much the pair counts. */
export type PointPair = { readonly from: Vector3; readonly to: Vector3; readonly weight: number };

/**
 * The motion that lays points on their partners with the least weighted sum of squared distances (Horn 1987, Closed-form
 * solution of absolute orientation using unit quaternions, section 4: the eigenvector of the largest eigenvalue of N).
 *
 * @param axis where given, the motion turns about this direction alone and shifts square to it (a frame in one plane)
 */
export function bestMotion(pairs: readonly PointPair[], axis: Vector3 | null = null): RigidMotion {
  const total = pairs.reduce((sum, { weight }) => sum + weight, 0);
  if (total <= 0) return UNMOVED;
  let [from, to] = [ORIGIN, ORIGIN];
  for (const pair of pairs) {
    from = add(from, scale(pair.from, pair.weight / total));
    to = add(to, scale(pair.to, pair.weight / total));
  }
  const arms = pairs.map((pair) => ({
    a: subtract(pair.from, from),
    b: subtract(pair.to, to),
    weight: pair.weight,
  }));
  const turn = axis === null ? freeTurn(arms) : turnInPlane(arms, axis);
  const shift = subtract(to, from);
  const flat = axis === null ? shift : subtract(shift, scale(axis, dot(shift, axis)));
  return turnAbout(from, turn, flat);
}

type Arm = { readonly a: Vector3; readonly b: Vector3; readonly weight: number };

function turnInPlane(arms: readonly Arm[], axis: Vector3): Vector3 {
  let [along, across] = [0, 0];
  for (const { a, b, weight } of arms) {
    const flatA = subtract(a, scale(axis, dot(a, axis)));
    const flatB = subtract(b, scale(axis, dot(b, axis)));
    along += weight * dot(flatA, flatB);
    across += weight * dot(axis, cross(flatA, flatB));
  }
  return along === 0 && across === 0 ? ORIGIN : scale(axis, Math.atan2(across, along));
}

function freeTurn(arms: readonly Arm[]): Vector3 {
  const s = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  for (const { a, b, weight } of arms) {
    const [p, q] = [
      [a.x, a.y, a.z],
      [b.x, b.y, b.z],
    ] as const;
    for (let row = 0; row < 3; row += 1)
      for (let column = 0; column < 3; column += 1)
        s[3 * row + column] = (s[3 * row + column] ?? 0) + weight * (p[row] ?? 0) * (q[column] ?? 0);
  }
  const [xx = 0, xy = 0, xz = 0, yx = 0, yy = 0, yz = 0, zx = 0, zy = 0, zz = 0] = s;
  const size = Math.hypot(...s);
  if (size === 0) return ORIGIN;
  const { eigenvectorMatrix, realEigenvalues } = new EigenvalueDecomposition(
    new Matrix([
      [xx + yy + zz, yz - zy, zx - xz, xy - yx],
      [yz - zy, xx - yy - zz, xy + yx, zx + xz],
      [zx - xz, xy + yx, -xx + yy - zz, yz + zy],
      [xy - yx, zx + xz, yz + zy, -xx - yy + zz],
    ]),
    { assumeSymmetric: true },
  );
  const largest = Math.max(...realEigenvalues);
  // points on one line, or at one place, leave a turn open: of all best turns the least one is taken
  let [w, x, y, z] = [0, 0, 0, 0];
  for (const [index, value] of realEigenvalues.entries()) {
    if (largest - value > 1e-9 * size) continue;
    const [vw = 0, vx = 0, vy = 0, vz = 0] = eigenvectorMatrix.getColumn(index);
    [w, x, y, z] = [w + vw * vw, x + vw * vx, y + vw * vy, z + vw * vz];
  }
  const sine = Math.hypot(x, y, z);
  return sine === 0 ? ORIGIN : scale({ x, y, z }, (2 * Math.atan2(sine, w)) / sine);
}
