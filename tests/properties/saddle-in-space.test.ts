// A wrap laid back on the tube in space: every point of the inner edge must lie on the partner's outer surface, at
// either end, for any angle and any small offset. This holds only where angles, signs and sides are all right.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { centrelineFromChain, placeAt } from '../../server/solver/geometry/centreline.ts';
import {
  add,
  angleBetween,
  cross,
  dot,
  length,
  rotate,
  scale,
  subtract,
  type Vector3,
} from '../../server/solver/geometry/vector.ts';
import { outsideAt } from '../../server/solver/joints/outside.ts';
import { saddleSeat, saddleWrap } from '../../server/solver/joints/saddle-wrap.ts';
import { wrapForPlane } from '../../server/solver/joints/wrap.ts';

const tube = { outsideDiameter: 38.1, wall: 1.65 };
const frame = { key: 'k', member: 'm', place: 'p', tube, paperThickness: 0.1, stations: 24 } as const;
const free = { kind: 'free' } as const;
const x = { x: 1, y: 0, z: 0 };
const z = { x: 0, y: 0, z: 1 };

const straight = (name: string, from: Vector3, direction: Vector3): MemberGeometry => ({
  name,
  centreline: centrelineFromChain({ point: from, direction, normal: z }, [{ kind: 'straight', length: 400 }]),
  closed: false,
  closing: null,
  start: free,
  finish: free,
});

it('every inner point of a saddle lies on the partner', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('start' as const, 'finish' as const),
      fc.double({ min: 0.3, max: Math.PI - 0.3, noNaN: true }),
      fc.double({ min: -1.6, max: 1.6, noNaN: true }),
      fc.double({ min: 0, max: 6, noNaN: true }),
      (end, angle, offset, roll) => {
        const member = straight('m', { x: 0, y: 0, z: 0 }, x);
        const station = end === 'start' ? 0 : 400;
        const direction = rotate(rotate(x, z, angle), x, roll);
        const across = rotate(z, x, roll);
        const foot = add({ x: station, y: 0, z: 0 }, scale(across, offset));
        const partner = straight('p', subtract(foot, scale(direction, 150)), direction);
        const seat = { kind: 'saddle', onto: 'p', station: 150, axisAngle: angle, offset } as const;
        const middle = { x: 200, y: -70, z: 30 };
        const read = saddleSeat(member, { end, seat }, partner, middle)!;
        expect(read.axisAngle).toBeCloseTo(Math.min(angle, Math.PI - angle), 9);
        // an offset below a thousandth of a micrometre is none
        expect(Math.abs(read.offset)).toBeCloseTo(Math.abs(offset) < 1e-6 ? 0 : Math.abs(offset), 9);
        const wrap = saddleWrap({ ...frame, ringStation: station, scrap: end }, { ...read, end, mainRadius: 19.05 })!;
        const outside = outsideAt(member, station, middle)!;
        const quarter = cross(x, outside);
        for (const { angle: degrees, inner, cut } of wrap.template.stations) {
          const turn = (degrees * Math.PI) / 180;
          const radial = add(scale(outside, Math.cos(turn)), scale(quarter, Math.sin(turn)));
          const point = add({ x: station + inner, y: 0, z: 0 }, scale(radial, 17.4));
          const away = subtract(point, foot);
          expect(length(subtract(away, scale(direction, dot(away, direction))))).toBeCloseTo(19.05, 6);
          // no metal of the member stands further towards the partner than the cut
          expect(end === 'start' ? cut - inner : inner - cut).toBeGreaterThanOrEqual(-1e-9);
        }
      },
    ),
  );
});

it('every inner point of a saddle on a bent partner lies on the bend', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 150, max: 3000, noNaN: true }),
      fc.double({ min: 0.9, max: Math.PI - 0.9, noNaN: true }),
      fc.double({ min: 0, max: 6, noNaN: true }),
      fc.constantFrom('start' as const, 'finish' as const),
      (radius, angle, roll, end) => {
        const member = straight('m', { x: 0, y: 0, z: 0 }, x);
        const station = end === 'start' ? 0 : 400;
        const foot = { x: station, y: 0, z: 0 };
        const direction = rotate(rotate(x, z, angle), x, roll);
        const normal = rotate(z, x, roll);
        const partner: MemberGeometry = {
          ...member,
          name: 'p',
          centreline: centrelineFromChain({ point: foot, direction, normal }, [
            { kind: 'arc', radius, angle: 1, rotation: 0, made: 'die' },
          ]),
        };
        const seat = { kind: 'saddle', onto: 'p', station: 0, axisAngle: angle, offset: 0 } as const;
        const read = saddleSeat(member, { end, seat }, partner, null)!;
        const wrap = saddleWrap({ ...frame, ringStation: station, scrap: end }, { ...read, end, mainRadius: 19.05 })!;
        const centre = add(foot, scale(cross(normal, direction), radius));
        const acute = outsideAt(member, station, null);
        expect(acute).toBeUndefined(); // a straight without a middle: angles count from the acute side
        const away = end === 'start' ? x : scale(x, -1);
        const main = dot(away, direction) < 0 ? scale(direction, -1) : direction;
        const square = subtract(main, scale(away, dot(away, main)));
        const outside = scale(square, 1 / length(square));
        for (const { angle: degrees, inner } of wrap.template.stations) {
          const turn = (degrees * Math.PI) / 180;
          const radial = add(scale(outside, Math.cos(turn)), scale(cross(x, outside), Math.sin(turn)));
          const from = subtract(add({ x: station + inner, y: 0, z: 0 }, scale(radial, 17.4)), centre);
          const height = dot(from, normal);
          const inPlane = length(subtract(from, scale(normal, height)));
          expect(Math.hypot(inPlane - radius, height)).toBeCloseTo(19.05, 6);
        }
      },
    ),
  );
});

it('every outer point of a plane wrap on an arc lies in one plane, tilted as asked', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 0.4, noNaN: true }),
      fc.double({ min: 0, max: 6.2, noNaN: true }),
      fc.double({ min: 100, max: 4000, noNaN: true }),
      (tilt, tiltDirection, radius) => {
        const arc = centrelineFromChain({ point: { x: 0, y: 0, z: 0 }, direction: x, normal: z }, [
          { kind: 'arc', radius, angle: 1, rotation: 0, made: 'die' },
        ]);
        const member: MemberGeometry = {
          name: 'm',
          centreline: arc,
          closed: false,
          closing: null,
          start: free,
          finish: free,
        };
        const station = radius / 2;
        const here = placeAt(arc, station)!;
        const outside = outsideAt(member, station, null)!;
        const template = wrapForPlane({
          ...frame,
          ringStation: station,
          scrap: 'finish',
          tilt,
          tiltDirection,
          arc: { radius },
        })!;
        const side = add(
          scale(outside, Math.cos(tiltDirection)),
          scale(cross(here.tangent, outside), Math.sin(tiltDirection)),
        );
        const normal = subtract(scale(here.tangent, Math.cos(tilt)), scale(side, Math.sin(tilt)));
        expect(angleBetween(normal, here.tangent)).toBeCloseTo(tilt, 9);
        for (const { angle: degrees, outer } of template.stations) {
          const turn = (degrees * Math.PI) / 180;
          const reach = radius + 19.05 * Math.cos(turn);
          const there = placeAt(arc, station + (outer / reach) * radius)!;
          const out = scale(cross(z, there.tangent), -1);
          const radial = add(scale(out, Math.cos(turn)), scale(cross(there.tangent, out), Math.sin(turn)));
          const point = add(there.point, scale(radial, 19.05));
          expect(dot(subtract(point, here.point), normal)).toBeCloseTo(0, 6);
        }
      },
    ),
  );
});
