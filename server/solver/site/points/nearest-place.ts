import { dot, length, ORIGIN, subtract, type Vector3 } from '../../geometry/vector.ts';
import { squaresAt, type KnownDistance } from './known-distance.ts';

/** Steps of the search; from a start near the end it takes three to six, where circles only touch some forty; our own choice. */
const MOST_STEPS = 80;
/** The last step is shorter than this share of the distances: a Newton step leaves its square, which is rounding. */
const LAST = 1e-7;
/** The search gives up on steps that are damped beyond this, which are rounding. */
const MOST_DAMPING = 1e12;
/** First damping, in what the distances weigh: our own choice. */
const DAMPING = 1e-3;

/** Half the gradient and half the matrix of second derivatives of the sum of squares, the matrix by its upper half. */
type Slopes = {
  readonly gradient: Vector3;
  readonly xx: number;
  readonly xy: number;
  readonly xz: number;
  readonly yy: number;
  readonly yz: number;
  readonly zz: number;
};

/**
 * The place near a start where the squared residuals of all distances, each in its own accuracy, come to least:
 * Newton's steps with the whole second derivative, since where the distances only just meet, or lack a little, the part
 * that Gauss and Newton leave out is all there is. A step that makes things worse is damped (Levenberg).
 *
 * @param flat the place stays at the z of the start
 */
export function nearestPlace(known: readonly KnownDistance[], start: Vector3, flat: boolean): Vector3 {
  const reach = Math.max(...known.map(({ distance }) => distance));
  const weight = known.reduce((sum, { accuracy }) => sum + accuracy ** -2, 0);
  let place = start;
  let squares = squaresAt(place, known);
  let damping = 0;
  let slopes = slopesAt(place, known, flat);
  for (let count = 0; count < MOST_STEPS && damping < MOST_DAMPING * weight; count += 1) {
    const step = stepFrom(slopes, damping);
    const next = step === undefined ? place : subtract(place, step);
    // so near the end better and worse are rounding
    if (step !== undefined && length(step) <= LAST * reach) return damping === 0 ? next : place;
    const then = step === undefined ? Infinity : squaresAt(next, known);
    if (then > squares) {
      damping = Math.max(10 * damping, DAMPING * weight);
      continue;
    }
    [place, squares] = [next, then];
    damping = damping > DAMPING * weight ? damping / 10 : 0;
    slopes = slopesAt(place, known, flat);
  }
  return place;
}

function slopesAt(place: Vector3, known: readonly KnownDistance[], flat: boolean): Slopes {
  let { x, y, z } = ORIGIN;
  let [xx, xy, xz, yy, yz, zz] = [0, 0, 0, 0, 0, 0];
  for (const { from, distance, accuracy } of known) {
    const arm = subtract(place, from);
    const size = Math.sqrt(dot(arm, arm));
    if (size === 0) continue; // at the known point itself every way is as good
    const weight = accuracy ** -2;
    const [ex, ey, ez] = [arm.x / size, arm.y / size, arm.z / size];
    const off = size - distance;
    const round = off / size; // how the sphere's own roundness counts
    [x, y, z] = [x + weight * off * ex, y + weight * off * ey, z + weight * off * ez];
    xx += weight * (round + (1 - round) * ex * ex);
    yy += weight * (round + (1 - round) * ey * ey);
    zz += weight * (round + (1 - round) * ez * ez);
    xy += weight * (1 - round) * ex * ey;
    xz += weight * (1 - round) * ex * ez;
    yz += weight * (1 - round) * ey * ez;
  }
  return flat
    ? { gradient: { x, y, z: 0 }, xx, xy, xz: 0, yy, yz: 0, zz: 1 }
    : { gradient: { x, y, z }, xx, xy, xz, yy, yz, zz };
}

/** Solves (H + damping) step = gradient by Cholesky; undefined where that is no way down. */
function stepFrom({ gradient, xx, xy, xz, yy, yz, zz }: Slopes, damping: number): Vector3 | undefined {
  const a = xx + damping;
  if (!(a > 0)) return undefined;
  const [b, c] = [xy / a, xz / a];
  const d = yy + damping - b * xy;
  if (!(d > 0)) return undefined;
  const e = (yz - b * xz) / d;
  const f = zz + damping - c * xz - e * e * d;
  if (!(f > 0)) return undefined;
  const second = gradient.y - b * gradient.x;
  const third = gradient.z - c * gradient.x - e * second;
  const z = third / f;
  const y = second / d - e * z;
  const x = gradient.x / a - b * y - c * z;
  return dot({ x, y, z }, gradient) >= 0 && Number.isFinite(x + y + z) ? { x, y, z } : undefined;
}
