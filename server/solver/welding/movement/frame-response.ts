import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import type { MemberGeometry } from '../../frame/frame-geometry.ts';
import { add, cross, scale, subtract, type Vector3 } from '../../geometry/vector.ts';
import { spanningTree } from './spanning-tree.ts';
import { stretchFlexibility, type FrameScale } from './stretch-flexibility.ts';
import type { TubeGraph } from './tube-graph.ts';

/** A small deformation at one place of a stretch: how what is beyond it moves [mm] and turns [rad] about that place. */
export type Strain = {
  readonly stretch: number;
  readonly point: Vector3;
  readonly move: Vector3;
  readonly turn: Vector3;
};

/** How a whole frame follows strains: each by itself, on a frame that nothing holds. */
export type FrameResponse = {
  /** How a point that is held by a vertex moves for one strain [mm]. */
  readonly moveAt: (vertex: number, point: Vector3, strain: number) => Vector3;
  /** Which connected part of the frame a vertex belongs to; parts that are apart know nothing of each other. */
  readonly bodyOf: (vertex: number) => number;
};

/** Added to what every loop gives way by, as a share of the most: a loop without any length then holds still. */
const LEAST_GIVE = 1e-12;

/**
 * The frame as a linear-elastic one, by the flexibility method: cut in each loop, it is a tree in which every part
 * moves rigidly; six forces and moments at each cut close the loops again. E falls out. Derived.
 */
export function frameResponse(
  members: readonly MemberGeometry[],
  graph: TubeGraph,
  frame: FrameScale,
  strains: readonly Strain[],
): FrameResponse {
  const { branches, loops, bodyOf } = spanningTree(graph);
  const columns = strains.length;
  const imposed = graph.stretches.map((): { strain: number; twist: number[] }[] => []);
  for (const [strain, one] of strains.entries()) imposed[one.stretch]?.push({ strain, twist: twistOf(one, frame) });

  const throughOf = graph.stretches.map((): { loop: number; sign: number }[] => []);
  for (const [loop, parts] of loops.entries())
    for (const { stretch, sign } of parts) throughOf[stretch]?.push({ loop, sign });
  const give = Matrix.zeros(6 * loops.length, 6 * loops.length);
  const open = Matrix.zeros(6 * loops.length, columns);
  const flexibilities = graph.stretches.map(({ member, from, to }, stretch) => {
    const through = throughOf[stretch] ?? [];
    const line = members[member]?.centreline;
    if (through.length === 0 || line === undefined) return null;
    const flexibility = stretchFlexibility(line, from, to, frame);
    for (const one of through) {
      for (const other of through) addBlock(give, one.loop, other.loop, one.sign * other.sign, flexibility);
      for (const { strain, twist } of imposed[stretch] ?? [])
        for (const [row, value] of twist.entries()) addTo(open, 6 * one.loop + row, strain, -one.sign * value);
    }
    return flexibility;
  });
  const closing = closed(give, open);

  const twists = bodyOf.map(() => new Float64Array(6 * columns));
  for (const { vertex, parent, stretch, sign } of branches) {
    const [own, above] = [twists[vertex], twists[parent]];
    if (own === undefined || above === undefined) continue;
    own.set(above);
    for (const { strain, twist } of imposed[stretch] ?? [])
      for (const [row, value] of twist.entries()) own[6 * strain + row] = (own[6 * strain + row] ?? 0) + sign * value;
    const flexibility = flexibilities[stretch];
    if (flexibility === null || flexibility === undefined || closing === null) continue;
    addStretched(own, flexibility, wrenches(closing, throughOf[stretch] ?? []), sign);
  }
  const { middle, size } = frame;
  return {
    moveAt: (vertex, point, strain) => {
      const twist = twists[vertex];
      const value = (row: number): number => twist?.[6 * strain + row] ?? 0;
      const move = { x: value(0), y: value(1), z: value(2) };
      const turn = { x: value(3), y: value(4), z: value(5) };
      return add(scale(move, size), cross(turn, subtract(point, middle)));
    },
    bodyOf: (vertex) => bodyOf[vertex] ?? -1,
  };
}

/** A strain as a twist at the middle of the frame: u + p × θ, θ. */
function twistOf({ point, move, turn }: Strain, { middle, size }: FrameScale): number[] {
  const moved = scale(add(move, cross(subtract(point, middle), turn)), 1 / size);
  return [moved.x, moved.y, moved.z, turn.x, turn.y, turn.z];
}

/** What closes the loops: F X = −gap, a column for each strain; null for a tree. */
function closed(give: Matrix, open: Matrix): Matrix | null {
  if (give.rows === 0 || open.columns === 0) return null;
  const most = Math.max(...give.diagonal());
  for (let row = 0; row < give.rows; row += 1) addTo(give, row, row, most > 0 ? LEAST_GIVE * most : 1);
  return new CholeskyDecomposition(give).solve(open);
}

/** Force and moment through a stretch, a row of six for each strain. */
function wrenches(closing: Matrix, through: readonly { loop: number; sign: number }[]): Float64Array {
  const wrench = new Float64Array(6 * closing.columns);
  for (const { loop, sign } of through) {
    for (let row = 0; row < 6; row += 1) {
      for (let strain = 0; strain < closing.columns; strain += 1) {
        const at = 6 * strain + row;
        wrench[at] = (wrench[at] ?? 0) + sign * closing.get(6 * loop + row, strain);
      }
    }
  }
  return wrench;
}

/** Adds how a stretch gives way to what goes through it. */
function addStretched(twist: Float64Array, flexibility: readonly number[], wrench: Float64Array, sign: number): void {
  for (let begin = 0; begin < twist.length; begin += 6) {
    for (let row = 0; row < 6; row += 1) {
      let sum = 0;
      for (let column = 0; column < 6; column += 1)
        sum += (flexibility[6 * row + column] ?? 0) * (wrench[begin + column] ?? 0);
      twist[begin + row] = (twist[begin + row] ?? 0) + sign * sum;
    }
  }
}

const addTo = (matrix: Matrix, row: number, column: number, value: number): void => {
  matrix.set(row, column, matrix.get(row, column) + value);
};

function addBlock(matrix: Matrix, one: number, other: number, sign: number, block: readonly number[]): void {
  for (let row = 0; row < 6; row += 1)
    for (let column = 0; column < 6; column += 1)
      addTo(matrix, 6 * one + row, 6 * other + column, sign * (block[6 * row + column] ?? 0));
}
