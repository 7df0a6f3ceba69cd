import { turnOf } from '../../geometry/rigid-motion.ts';
import { add, cross, dot, ORIGIN, rotate, scale, squareTo, unit, type Vector3 } from '../../geometry/vector.ts';
import type { Rise } from './least-turn-apart.ts';

/** Two unit directions that are not in line, and the way out of their plane. */
type Pair = readonly [one: Vector3, two: Vector3];

/**
 * Turns that meet both slopes exactly, as rotation vectors [rad], with the first direction at so many places round the
 * circle that its slope leaves it: the second is then in one of two places, or the circle misses it there.
 */
export function turnsAllRound(one: Rise, two: Rise, places: number): Vector3[] {
  const between = dot(one.along, two.along);
  const beside = scale(squareTo(one.up), Math.sqrt(1 - one.sine * one.sine));
  return Array.from({ length: places }, (_, index) => (2 * Math.PI * index) / places).flatMap((angle) => {
    const first = add(scale(one.up, one.sine), rotate(beside, one.up, angle));
    return seconds(first, between, two).flatMap((second) => {
      const turn = turnBetween([one.along, two.along], [first, second]);
      return turn === undefined ? [] : [turn];
    });
  });
}

/** Where a second direction can be: at its angle to the first one, and at its slope. */
function seconds(first: Vector3, between: number, { up, sine }: Rise): Vector3[] {
  const share = dot(first, up);
  const squares = 1 - share * share;
  const normal = unit(cross(first, up));
  if (normal === undefined || squares === 0) return [];
  const flat = add(scale(first, (between - share * sine) / squares), scale(up, (sine - share * between) / squares));
  const left = 1 - dot(flat, flat);
  if (left < 0) return [];
  const off = scale(normal, Math.sqrt(left));
  return [add(flat, off), add(flat, scale(off, -1))];
}

/** The turn that lays two directions on two others at the same angle. */
function turnBetween(from: Pair, to: Pair): Vector3 | undefined {
  const [out, onto] = [from, to].map(([one, two]) => unit(cross(one, two)));
  if (out === undefined || onto === undefined) return undefined;
  const axes = [
    [from[0], to[0]],
    [cross(out, from[0]), cross(onto, to[0])],
    [out, onto],
  ] as const;
  // R = Σ to ⊗ from
  const row = (axis: 'x' | 'y' | 'z'): Vector3 =>
    axes.reduce((sum, [was, is]) => add(sum, scale(was, is[axis])), ORIGIN);
  return turnOf({ x: row('x'), y: row('y'), z: row('z'), shift: ORIGIN });
}
