import { BufferAttribute, BufferGeometry, Vector3 } from 'three';
import type { MemberCurve } from './member-curve.ts';

/** Flat sides of a drawn tube: its outline looks round at any size on the screen; our own choice. */
export const SIDES = 24;

/** The corners of one ring, worked out once. */
const ROUND = Array.from({ length: SIDES }, (_, side) => {
  const angle = (side / SIDES) * 2 * Math.PI;
  return { cos: Math.cos(angle), sin: Math.sin(angle) };
});

/** Any direction square to another. */
function squareTo(direction: Vector3): Vector3 {
  const least = Math.abs(direction.z) < 0.9 ? new Vector3(0, 0, 1) : new Vector3(1, 0, 0);
  return least.cross(direction).normalize();
}

/**
 * The skin of a tube about its centreline. The rings do not twist: from one to the next the first generator is carried
 * along by the turn of the direction alone, which is exact on straights and arcs.
 *
 * @param radius half of the outside diameter [mm]
 * @returns positions with normals; each ring has a seam of two vertices
 */
export function tubeGeometry(curve: MemberCurve, radius: number): BufferGeometry {
  const shares = curve.samples();
  const round = SIDES + 1;
  const positions = new Float32Array(shares.length * round * 3);
  const normals = new Float32Array(shares.length * round * 3);
  const index = new Uint32Array((shares.length - 1) * SIDES * 6);
  const [middle, along, other] = [new Vector3(), new Vector3(), new Vector3()];
  let across: Vector3 | undefined;
  let at = 0;
  for (const [ring, share] of shares.entries()) {
    curve.getPoint(share, middle);
    curve.getTangent(share, along);
    across = across === undefined ? squareTo(along) : across.addScaledVector(along, -across.dot(along)).normalize();
    other.crossVectors(along, across);
    for (let side = 0; side < round; side += 1) {
      const { cos, sin } = ROUND[side % SIDES] ?? { cos: 1, sin: 0 };
      const x = across.x * cos + other.x * sin;
      const y = across.y * cos + other.y * sin;
      const z = across.z * cos + other.z * sin;
      const here = ring * round + side;
      normals[3 * here] = x;
      normals[3 * here + 1] = y;
      normals[3 * here + 2] = z;
      positions[3 * here] = middle.x + radius * x;
      positions[3 * here + 1] = middle.y + radius * y;
      positions[3 * here + 2] = middle.z + radius * z;
      if (ring === 0 || side === 0) continue;
      const before = here - round;
      for (const corner of [before - 1, before, here - 1, before, here, here - 1]) {
        index[at] = corner;
        at += 1;
      }
    }
  }
  return geometryOf(positions, normals, index);
}

/**
 * The two cut ends of a tube, as the saw leaves them: a ring of wall about the bore.
 *
 * @param from,to inner and outer radius [mm]; 0 for a disc
 */
export function endGeometry(curve: MemberCurve, from: number, to: number): BufferGeometry {
  const positions: number[] = [];
  const normals: number[] = [];
  const index: number[] = [];
  for (const [share, sense] of [
    [0, -1],
    [1, 1],
  ] as const) {
    const middle = curve.getPoint(share);
    const out = curve.getTangent(share).multiplyScalar(sense);
    const across = squareTo(out);
    const other = out.clone().cross(across);
    const first = positions.length / 3;
    for (let side = 0; side <= SIDES; side += 1) {
      const angle = (side / SIDES) * 2 * Math.PI;
      for (const radius of [from, to]) {
        const place = middle.clone().addScaledVector(across, radius * Math.cos(angle));
        place.addScaledVector(other, radius * Math.sin(angle));
        positions.push(place.x, place.y, place.z);
        normals.push(out.x, out.y, out.z);
      }
      if (side === 0) continue;
      const here = first + 2 * side;
      index.push(here - 2, here - 1, here, here - 1, here + 1, here);
    }
  }
  return geometryOf(new Float32Array(positions), new Float32Array(normals), new Uint32Array(index));
}

/** The outer edge of both cut ends, as pairs of points for lines. @param radius half of the outside diameter [mm] */
export function edgeGeometry(curve: MemberCurve, radius: number): BufferGeometry {
  const positions: number[] = [];
  for (const share of [0, 1]) {
    const middle = curve.getPoint(share);
    const across = squareTo(curve.getTangent(share));
    const other = curve.getTangent(share).cross(across);
    for (let side = 0; side < SIDES; side += 1) {
      for (const corner of [side, side + 1]) {
        const angle = (corner / SIDES) * 2 * Math.PI;
        const place = middle.clone().addScaledVector(across, radius * Math.cos(angle));
        place.addScaledVector(other, radius * Math.sin(angle));
        positions.push(place.x, place.y, place.z);
      }
    }
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(positions), 3));
  return geometry;
}

function geometryOf(positions: Float32Array, normals: Float32Array, index: Uint32Array): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(positions, 3));
  geometry.setAttribute('normal', new BufferAttribute(normals, 3));
  geometry.setIndex(new BufferAttribute(index, 1));
  return geometry;
}
