// A joint whose second piece is moved anyhow in space: what is said about its faces gives their planes back.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { CutJoint } from '../../server/solver/correction/cut-joint.ts';
import { cutFace } from '../../server/solver/correction/joint-face.ts';
import { scrapSides } from '../../server/solver/correction/scrap-sides.ts';
import { planJoints } from '../../server/solver/correction/joint-plan.ts';
import { placeAt } from '../../server/solver/geometry/centreline.ts';
import { inverted, turnAbout, turned } from '../../server/solver/geometry/rigid-motion.ts';
import {
  add,
  angleBetween,
  cross,
  dot,
  scale,
  subtract,
  unit,
  type Vector3,
} from '../../server/solver/geometry/vector.ts';
import { faceStation } from '../../server/solver/joints/face-wrap.ts';
import { lengthAlong, pointOn } from '../../server/solver/joints/generators.ts';
import { outsideOf, sidesOf } from '../../server/solver/joints/outside.ts';
import { frameOfMembers, members } from './tubes-in-space.ts';
import { settledClosing } from '../solver/settled-closing.ts';

const job = newJob('run');
const tube = { ...job.tube, outsideDiameter: 38.1, wall: 1.65 };
const context = { tube, tape: 1, paperThickness: 0, templateStations: 24, templates: true, quality: 'B' } as const;
// a turn below a millionth is none: nothing tells it from rounding
const small = fc.integer({ min: -120_000, max: 120_000 }).map((parts) => parts / 1e6);

/** The faces that close on each other when what is after a joint is turned by a rotation vector: they bisect the kink. */
function closedBy(member: CutJoint['member'], stationA: number, stationB: number, turn: Vector3): CutJoint {
  const [a, b] = [placeAt(member.centreline, stationA)!, placeAt(member.centreline, stationB)!];
  const motion = turnAbout(b.point, turn, subtract(a.point, b.point));
  const after = turned(motion, b.tangent);
  const bisector = unit(add(a.tangent, after))!;
  return {
    member,
    stationA,
    stationB,
    meetsA: stationA,
    meetsB: stationB,
    normalA: bisector,
    normalB: turned(inverted({ ...motion, shift: { x: 0, y: 0, z: 0 } }), bisector),
    kink: angleBetween(a.tangent, after),
    hiLo: 0,
    twist: 0,
    letIn: null,
    point: a.point,
    range: { from: stationA, to: stationB },
    bounds: { from: 'end', to: 'bend' },
  };
}

it('tilt and its direction give the plane back, marks and wraps lie in it', () => {
  fc.assert(
    fc.property(
      members,
      fc.double({ min: 0.1, max: 0.8, noNaN: true }),
      fc.double({ min: 20, max: 200, noNaN: true }),
      fc.record({ x: small, y: small, z: small }),
      (member, at, removed, turn) => {
        const stationA = at * member.centreline.length;
        const joint = closedBy(member, stationA, stationA + removed, turn);
        const frame = frameOfMembers(member);
        const { joints } = planJoints([joint], frame, settledClosing(job.closing), { ...context });
        const [planned] = joints;
        for (const [face, normal] of [
          [planned!.faceA, joint.normalA],
          [planned!.faceB, joint.normalB],
        ] as const) {
          const station = face.station.value;
          const { tangent, point } = placeAt(member.centreline, station)!;
          const outside = outsideOf(member, station, sidesOf(frame))!;
          const [tilt, direction] = [face.tilt.value, face.tiltDirection].map(
            (degrees) => (degrees * Math.PI) / 180,
          ) as [number, number];
          const side = add(scale(outside, Math.cos(direction)), scale(cross(tangent, outside), Math.sin(direction)));
          const back = subtract(scale(tangent, Math.cos(tilt)), scale(side, Math.sin(tilt)));
          expect(dot(subtract(back, normal), subtract(back, normal))).toBeLessThan(1e-18);
          expect(face.saw.offSquare.value).toBe(face.tilt.value);

          const { runs } = cutFace({ member, station, normal }, sidesOf(frame));
          /** Station at which a generator has gone a length from another station: halved, lengths grow with stations. */
          const stationAt = (generator: { radius: number; angle: number }, ring: number, length: number): number => {
            let [low, high] = [ring - 9000, ring + 9000];
            for (let step = 0; step < 100; step += 1) {
              const middle = (low + high) / 2;
              if (lengthAlong(runs, generator, ring, middle) < length) low = middle;
              else high = middle;
            }
            return (low + high) / 2;
          };
          const offPlane = (generator: { radius: number; angle: number }, at: number) =>
            dot(subtract(pointOn(runs, generator, at)!, point), normal);
          if (face.template !== null && face.template.second === null) {
            for (const { angle, outer, inner } of face.template.stations) {
              const generator = { radius: 19.05, angle: (angle * Math.PI) / 180 };
              expect(Math.abs(offPlane(generator, stationAt(generator, station, outer)))).toBeLessThan(1e-9);
              const bore = { ...generator, radius: 17.4 };
              expect(Math.abs(offPlane(bore, stationAt(bore, station, inner)))).toBeLessThan(1e-9);
            }
            for (const [girth, ordinate] of face.template.curve) {
              const generator = { radius: 19.05, angle: (2 * Math.PI * girth) / face.template.wrapLength };
              expect(Math.abs(offPlane(generator, stationAt(generator, station, ordinate)))).toBeLessThan(1e-9);
            }
          }
          for (const marks of [face.marks, face.check!]) {
            const from = marks.from === 'far-end' ? member.centreline.length : 0;
            if (marks.from === 'bend-start' || marks.from === 'bend-end') continue;
            for (const { angle, distance } of marks.generators) {
              const generator = { radius: 19.05, angle: (angle * Math.PI) / 180 };
              const way = marks.towards === 'finish' ? 1 : -1;
              expect(Math.abs(offPlane(generator, stationAt(generator, from, way * distance.value)))).toBeLessThan(
                1e-9,
              );
            }
          }
        }
      },
    ),
    { numRuns: 60 },
  );
});

it('the long and the short side of the scrap are the widest and the narrowest that there are', () => {
  fc.assert(
    fc.property(
      members,
      fc.double({ min: 0.1, max: 0.8, noNaN: true }),
      fc.double({ min: 20, max: 200, noNaN: true }),
      fc.record({ x: small, y: small, z: small }),
      (member, at, removed, turn) => {
        const stationA = at * member.centreline.length;
        const joint = closedBy(member, stationA, stationA + removed, turn);
        const sides = sidesOf(frameOfMembers(member));
        const first = cutFace({ member, station: joint.stationA, normal: joint.normalA }, sides);
        const own = cutFace({ member, station: joint.stationB, normal: joint.normalB }, sides);
        const second = { ...own, runs: first.runs };
        const found = scrapSides({ first, second }, 19.05);
        const widths = Array.from({ length: 1440 }, (_, index) => {
          const generator = { radius: 19.05, angle: (index * Math.PI) / 720 };
          return lengthAlong(first.runs, generator, faceStation(first, generator)!, faceStation(second, generator)!);
        });
        expect(found.missed).toBe(false);
        expect(Math.abs(found.long - Math.max(...widths))).toBeLessThan(0.01);
        expect(Math.abs(found.short - Math.min(...widths))).toBeLessThan(0.01);
      },
    ),
    { numRuns: 100 },
  );
});
