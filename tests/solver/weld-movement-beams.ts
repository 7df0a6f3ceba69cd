import { inverse, Matrix } from 'ml-matrix';
import { cross, length, scale, squareTo, subtract, type Vector3 } from '../../server/solver/geometry/vector.ts';

export type Tube = { readonly outsideDiameter: number; readonly wall: number };

/** Modulus [MPa] and Poisson's ratio; the first falls out of what is compared. */
const E = 193_000;
const NU = 0.3;

/** A rigid arm: turns move its far end by ω × arm. */
export function carrying(arm: Vector3): Matrix {
  const carried = Matrix.identity(6);
  const rows = [
    [0, arm.z, -arm.y],
    [-arm.z, 0, arm.x],
    [arm.y, -arm.x, 0],
  ];
  for (const [row, values] of rows.entries())
    for (const [column, value] of values.entries()) carried.set(row, 3 + column, value);
  return carried;
}

/** Two stretches end to end with nothing in between that is held or loaded. */
export function condensed(a: Matrix, b: Matrix): Matrix {
  const block = (of: Matrix, row: number, column: number): Matrix =>
    of.subMatrix(6 * row, 6 * row + 5, 6 * column, 6 * column + 5);
  const give = inverse(Matrix.add(block(a, 1, 1), block(b, 0, 0)));
  const [up, down] = [block(a, 0, 1), block(b, 1, 0)];
  const whole = Matrix.zeros(12, 12);
  whole.setSubMatrix(Matrix.sub(block(a, 0, 0), up.mmul(give).mmul(block(a, 1, 0))), 0, 0);
  whole.setSubMatrix(
    up
      .mmul(give)
      .mmul(block(b, 0, 1))
      .mul(-1),
    0,
    6,
  );
  whole.setSubMatrix(
    down
      .mmul(give)
      .mmul(block(a, 1, 0))
      .mul(-1),
    6,
    0,
  );
  whole.setSubMatrix(Matrix.sub(block(b, 1, 1), down.mmul(give).mmul(block(b, 0, 1))), 6, 6);
  return whole;
}

/** The straight beam of every textbook, in the frame's axes. */
export function beamStiffness(from: Vector3, to: Vector3, tube: Tube): Matrix {
  const [outer, inner] = [tube.outsideDiameter, tube.outsideDiameter - 2 * tube.wall];
  const area = (Math.PI / 4) * (outer ** 2 - inner ** 2);
  const second = (Math.PI / 64) * (outer ** 4 - inner ** 4);
  const L = length(subtract(to, from));
  const local = Matrix.zeros(12, 12);
  const both = (a: number, b: number, value: number): void => {
    local.set(a, b, value);
    local.set(b, a, value);
  };
  for (const [index, value] of [
    [0, (E * area) / L],
    [3, ((E / (2 * (1 + NU))) * 2 * second) / L],
  ] as const) {
    both(index, index, value);
    both(index + 6, index + 6, value);
    both(index, index + 6, -value);
  }
  const EI = E * second;
  for (const [across, turn, sign] of [
    [1, 5, 1],
    [2, 4, -1],
  ] as const) {
    both(across, across, (12 * EI) / L ** 3);
    both(across + 6, across + 6, (12 * EI) / L ** 3);
    both(across, across + 6, (-12 * EI) / L ** 3);
    both(turn, turn, (4 * EI) / L);
    both(turn + 6, turn + 6, (4 * EI) / L);
    both(turn, turn + 6, (2 * EI) / L);
    both(across, turn, (sign * 6 * EI) / L ** 2);
    both(across, turn + 6, (sign * 6 * EI) / L ** 2);
    both(across + 6, turn, (-sign * 6 * EI) / L ** 2);
    both(across + 6, turn + 6, (-sign * 6 * EI) / L ** 2);
  }
  const x = scale(subtract(to, from), 1 / L);
  const y = squareTo(x);
  const z = cross(x, y);
  const turned = Matrix.zeros(12, 12);
  for (let part = 0; part < 4; part += 1)
    for (const [row, axis] of [x, y, z].entries())
      for (const [column, value] of [axis.x, axis.y, axis.z].entries())
        turned.set(3 * part + row, 3 * part + column, value);
  return turned.transpose().mmul(local).mmul(turned);
}
