// Generators of a tube that bends in several planes, and planes across it, held against ways that share nothing with the
// solver but the centreline: the frame carried along in small steps by two reflections, lengths added up chord by chord,
// cuts found by a change of sign and halving.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { placeAt } from '../../server/solver/geometry/centreline.ts';
import { pieceStations } from '../../server/solver/geometry/slice.ts';
import { add, cross, dot, length, scale, subtract, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { cutFace } from '../../server/solver/correction/joint-face.ts';
import { generatorRuns, lengthAlong, planeCrossing, pointOn } from '../../server/solver/joints/generators.ts';
import { outsideOf } from '../../server/solver/joints/outside.ts';
import { leaning, members } from './tubes-in-space.ts';

const RADIUS = 19.05;
const SIDES = { middle: { x: 0, y: 0, z: 0 }, normal: null };
const share = fc.double({ min: 0.05, max: 0.95, noNaN: true });
const angle = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });

/** Carries a direction from one station to another by double reflection (Wang and others, ACM Trans. Graphics 27, 2008). */
function carried({ centreline }: MemberGeometry, direction: Vector3, from: number, to: number, steps: number): Vector3 {
  let reference = direction;
  let here = placeAt(centreline, from)!;
  for (let step = 1; step <= steps; step += 1) {
    const next = placeAt(centreline, from + ((to - from) * step) / steps)!;
    const first = subtract(next.point, here.point);
    const mirrored = (a: Vector3, by: Vector3) => subtract(a, scale(by, (2 * dot(by, a)) / dot(by, by)));
    const second = subtract(next.tangent, mirrored(here.tangent, first));
    const once = mirrored(reference, first);
    reference = dot(second, second) < 1e-24 ? once : mirrored(once, second);
    here = next;
  }
  return reference;
}

const surface = (member: MemberGeometry, outside: Vector3, station: number, turn: number): Vector3 => {
  const { point, tangent } = placeAt(member.centreline, station)!;
  const radial = add(scale(outside, Math.cos(turn)), scale(cross(tangent, outside), Math.sin(turn)));
  return add(point, scale(radial, RADIUS));
};

describe('generators', () => {
  it('run on without twist through bends in different planes', () => {
    fc.assert(
      fc.property(members, share, share, angle, (member, a, b, turn) => {
        fc.pre(Math.abs(a - b) > 0.01);
        const [from, to] = [a * member.centreline.length, b * member.centreline.length];
        const outside = outsideOf(member, from, SIDES)!;
        const runs = generatorRuns(member.centreline, from, outside);
        const there = pointOn(runs, { radius: RADIUS, angle: turn }, to)!;
        const expected = surface(member, carried(member, outside, from, to, 2000), to, turn);
        expect(length(subtract(there, expected))).toBeLessThan(1e-4);
      }),
      { numRuns: 40 },
    );
  });

  it('are as long as the curve on the surface, chord by chord', () => {
    fc.assert(
      fc.property(members, share, share, angle, (member, a, b, turn) => {
        const [from, to] = [a * member.centreline.length, b * member.centreline.length];
        const runs = generatorRuns(member.centreline, from, outsideOf(member, from, SIDES)!);
        const generator = { radius: RADIUS, angle: turn };
        const steps = 4000;
        let sum = 0;
        let here = pointOn(runs, generator, from)!;
        for (let step = 1; step <= steps; step += 1) {
          const next = pointOn(runs, generator, from + ((to - from) * step) / steps)!;
          sum += length(subtract(next, here));
          here = next;
        }
        expect(Math.abs(lengthAlong(runs, generator, from, to))).toBeCloseTo(sum, 3);
        expect(lengthAlong(runs, generator, from, to)).toBeCloseTo(-lengthAlong(runs, generator, to, from), 12);
      }),
      { numRuns: 30 },
    );
  });
});

it('a plane meets a generator where the sign of its distance changes, in bends, straights and across several of them', () => {
  let crossings = 0;
  let runOut = 0;
  fc.assert(
    fc.property(
      members,
      fc.integer({ min: 1, max: 4 }),
      fc.oneof(fc.double({ min: -25, max: 25, noNaN: true }), fc.double({ min: -150, max: 150, noNaN: true })),
      fc.double({ min: 0, max: 0.6, noNaN: true }),
      angle,
      (member, tangentPoint, beside, tilt, side) => {
        const station = pieceStations(member.centreline)[tangentPoint]! + beside;
        const normal = leaning(member, station, tilt, side);
        const face = cutFace({ member, station, normal }, SIDES);
        const away = (turn: number, s: number) =>
          dot(subtract(pointOn(face.runs, { radius: RADIUS, angle: turn }, s)!, face.plane.point), normal);
        const kinds = new Set<unknown>();
        for (let index = 0; index < 12; index += 1) {
          const turn = (index * Math.PI) / 6;
          // the change of sign nearest to the station, then halving
          let found: [number, number] | undefined;
          for (let step = 0; step < 400 && found === undefined; step += 1) {
            for (const way of [1, -1]) {
              const [near, far] = [station + way * step * 0.25, station + way * (step + 1) * 0.25];
              if (found === undefined && away(turn, near) * away(turn, far) <= 0) found = [near, far];
            }
          }
          const cut = planeCrossing(face.runs, { radius: RADIUS, angle: turn }, face.plane, station);
          if (found === undefined) continue;
          let [low, high] = found;
          const sign = Math.sign(away(turn, low));
          for (let step = 0; step < 60; step += 1) {
            const middle = (low + high) / 2;
            if (Math.sign(away(turn, middle)) === sign) low = middle;
            else high = middle;
          }
          expect(Math.abs(cut! - (low + high) / 2)).toBeLessThan(1e-6);
          kinds.add(face.runs.find(({ to }) => cut! <= to)?.piece);
          crossings += 1;
        }
        if (kinds.size > 1) runOut += 1;
      },
    ),
    { numRuns: 150 },
  );
  expect(crossings).toBeGreaterThan(1500);
  expect(runOut).toBeGreaterThan(5);
});
