import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { add, cross, dot, length, scale, squareTo, subtract, type Vector3 } from '../../geometry/vector.ts';
import type { LaidLeg, LaidSite } from '../laid-site.ts';
import { legWay } from '../legs/leg-way.ts';

/** Movements of the frame that are held this weakly, over those held best, are free. Our own choice. */
const WEAK = 1e-3;

/** A small movement of a rigid body: of a point of it, and its turn times a size [both in the same unit]. */
type Movement = { readonly shift: Vector3; readonly turn: Vector3 };

/**
 * The legs whose heads can go sideways. The frame is taken as rigid; its hinge holds it but for the turn about it, and each
 * leg holds its head along itself and turns freely at both ends. A head that some movement takes across its leg, while all
 * of them hold, sways. A hinge with one leg that has a lever about it holds everything; legs alone must be six at least.
 *
 * @returns for each leg of the site in order, true where its head sways; false where there is no such leg
 */
export function freeToSway({ frame, legs }: Pick<LaidSite, 'frame' | 'legs'>): readonly boolean[] {
  const laid = legs.filter((leg) => leg !== null);
  const hinge = frame?.hinge ?? null;
  const [first] = laid;
  if (first === undefined) return legs.map(() => false);
  const about = hinge?.at ?? first.head;
  // movements by shift and by turn weigh alike at this distance
  const size = Math.max(1, ...laid.map(({ head }) => length(subtract(head, about))));
  const lever = (at: Vector3): Vector3 => scale(subtract(at, about), 1 / size);
  const rows = laid.flatMap((leg) => {
    const along = legWay(leg)?.along;
    return along === undefined ? [] : [rowOf({ shift: along, turn: cross(lever(leg.head), along) })];
  });
  if (hinge !== null) {
    const none = { x: 0, y: 0, z: 0 };
    const side = squareTo(hinge.axis);
    for (const turn of [side, cross(hinge.axis, side)]) rows.push(rowOf({ shift: none, turn }));
    for (const shift of [hinge.axis, side, cross(hinge.axis, side)]) rows.push(rowOf({ shift, turn: none }));
  }
  const free = freeMovements(rows);
  return legs.map((leg) => leg !== null && free.some((movement) => across(leg, movement, lever(leg.head)) > WEAK));
}

const rowOf = ({ shift, turn }: Movement): number[] => [shift.x, shift.y, shift.z, turn.x, turn.y, turn.z];

/** Movements that no row holds, square to each other: the null space of the rows, by the eigenvectors of their squares. */
function freeMovements(rows: readonly (readonly number[])[]): Movement[] {
  const held = new Matrix(6, 6);
  for (const row of rows)
    for (const [i, a] of row.entries()) for (const [j, b] of row.entries()) held.set(i, j, held.get(i, j) + a * b);
  const { eigenvectorMatrix, realEigenvalues } = new EigenvalueDecomposition(held, { assumeSymmetric: true });
  const most = Math.max(...realEigenvalues);
  return realEigenvalues.flatMap((value, index): Movement[] => {
    if (value > WEAK ** 2 * most) return [];
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = eigenvectorMatrix.getColumn(index);
    return [{ shift: { x: a, y: b, z: c }, turn: { x: d, y: e, z: f } }];
  });
}

/** How far a movement takes the head of a leg across it. */
function across(leg: LaidLeg, { shift, turn }: Movement, lever: Vector3): number {
  const goes = add(shift, cross(turn, lever));
  const along = legWay(leg)?.along;
  return along === undefined ? 0 : length(subtract(goes, scale(along, dot(goes, along))));
}
