import fc from 'fast-check';
import type { FrameGeometry, MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { centrelineFromChain, placeAt, type Link } from '../../server/solver/geometry/centreline.ts';
import { add, cross, dot, rotate, scale, subtract, unit, type Vector3 } from '../../server/solver/geometry/vector.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A member of straights and bends in turned planes, anywhere in space. */
export function memberOf(name: string, links: readonly Link[], turn: number): MemberGeometry {
  const direction = unit({ x: Math.cos(turn), y: Math.sin(turn), z: 0.4 }) ?? { x: 1, y: 0, z: 0 };
  const normal = unit(cross(direction, { x: 0.3, y: 0.2, z: 1 })) ?? { x: 0, y: 0, z: 1 };
  const end = { kind: 'free' } as const;
  const centreline = centrelineFromChain({ point: { x: 120, y: -60, z: 35 }, direction, normal }, links);
  return { name, centreline, closed: false, closing: null, start: end, finish: end };
}

/** Straight, bend, a straight that may be short, bend in another plane, straight; 38.1 mm tube fits all its radii. */
export const members = fc
  .record({
    first: number(200, 900),
    between: number(5, 400),
    last: number(200, 900),
    radii: fc.tuple(number(80, 300), number(100, 2500)),
    angles: fc.tuple(number(0.2, 2), number(0.1, 1)),
    rotation: number(-3, 3),
    turn: number(0, 6),
  })
  .map(({ first, between, last, radii, angles, rotation, turn }) =>
    memberOf(
      'run',
      [
        { kind: 'straight', length: first },
        { kind: 'arc', radius: radii[0], angle: angles[0], rotation: 0, made: 'die' },
        { kind: 'straight', length: between },
        { kind: 'arc', radius: radii[1], angle: angles[1], rotation, made: 'rolled' },
        { kind: 'straight', length: last },
      ],
      turn,
    ),
  );

/** A unit normal that leans by `tilt` off the tube at a station, towards any side [rad]. */
export function leaning(member: MemberGeometry, station: number, tilt: number, side: number): Vector3 {
  const { tangent } = placeAt(member.centreline, station)!;
  const square = Math.abs(tangent.z) < 0.9 ? { x: 0, y: 0, z: 1 } : { x: 1, y: 0, z: 0 };
  const across = unit(subtract(square, scale(tangent, dot(square, tangent))))!;
  const way = rotate(across, tangent, side);
  return add(scale(tangent, Math.cos(tilt)), scale(way, Math.sin(tilt)));
}

export const frameOfMembers = (...all: MemberGeometry[]): FrameGeometry => ({
  members: all,
  checks: [],
  feet: [],
  corners: [],
  planeNormal: null,
});
