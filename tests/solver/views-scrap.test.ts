import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { FlatPoint } from '../../server/plan/view.ts';
import { cutFace, jointFace } from '../../server/solver/correction/joint-face.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { placeAt } from '../../server/solver/geometry/centreline.ts';
import { add, cross, dot, rotate, scale, subtract, unit, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { sidesOf } from '../../server/solver/joints/outside.ts';
import { project, PROJECTIONS } from '../../server/solver/views/projection.ts';
import { scrapOutline, scrapsOf } from '../../server/solver/views/scrap.ts';
import { faceAt, frameOf, hoopLine, jointOf, memberOf, vector, type Plane } from './made-up-ways.ts';

const DIAMETER = 40;
const tube = { ...newJob('hoop').tube, outsideDiameter: DIAMETER };
const context = { tube, tape: 1, paperThickness: 0.1, templateStations: 16, templates: false, quality: 'B' } as const;

/** A hoop that stands askew in space. */
const axis = unit(vector(1, 2, 3))!;
const ASKEW: Plane = { right: rotate(vector(1, 0, 0), axis, 0.7), up: rotate(vector(0, 1, 0), axis, 0.7) };
const frame: FrameGeometry = frameOf([memberOf('hoop', hoopLine(ASKEW))], null);
const [hoop] = frame.members;

/** A face whose normal is turned off the tube's way by some angle, about a direction square to it. */
function leaning(station: number, side: 'A' | 'B', tilt: number, about: number) {
  const { tangent } = placeAt(hoop!.centreline, station)!;
  const across = unit(cross(tangent, vector(0.3, 0.4, 0.5)))!;
  const normal = rotate(tangent, rotate(across, tangent, about), tilt);
  const face = cutFace({ member: hoop!, station, normal }, sidesOf(frame));
  return { normal, face: jointFace(hoop!, face, { side, number: 1 }, context) };
}

const left = ([x, y]: readonly [number, number]): FlatPoint => [-y / Math.hypot(x, y), x / Math.hypot(x, y)];

describe('the scrap of a splice', () => {
  it.each([
    ['on a straight', 200],
    ['on the crown', 1100],
  ])('ends in the planes of its faces, in every view, %s', (_, station) => {
    fc.assert(
      fc.property(
        fc.tuple(fc.double({ min: 0, max: 0.3, noNaN: true }), fc.double({ min: 0, max: 6.28, noNaN: true })),
        fc.tuple(fc.double({ min: 0, max: 0.3, noNaN: true }), fc.double({ min: 0, max: 6.28, noNaN: true })),
        fc.constantFrom('top', 'face', 'side', 'pictorial'),
        ([tiltA, aboutA], [tiltB, aboutB], key) => {
          const [a, b] = [leaning(station, 'A', tiltA, aboutA), leaning(station + 62, 'B', tiltB, aboutB)];
          const view = PROJECTIONS[key];
          const [scrap] = scrapsOf([jointOf('hoop', a.face, b.face)], frame);
          const [one = [], other = []] = scrapOutline(scrap!, view, DIAMETER).edges;
          const ends = [
            { at: station, normal: a.normal, drawn: [one[0]!, other[0]!] },
            { at: station + 62, normal: b.normal, drawn: [one.at(-1)!, other.at(-1)!] },
          ];
          for (const { at, normal, drawn } of ends) {
            const { point, tangent } = placeAt(hoop!.centreline, at)!;
            const across = left(project(view, tangent));
            const generator: Vector3 = add(scale(view.right, across[0]), scale(view.up, across[1]));
            for (const [index, side] of [1, -1].entries()) {
              const onRing = add(point, scale(generator, (side * DIAMETER) / 2));
              // along the tube from the square ring to the plane of the face
              const along = dot(subtract(point, onRing), normal) / dot(tangent, normal);
              const [x, y] = project(view, add(onRing, scale(tangent, along)));
              expect(drawn[index]![0]).toBeCloseTo(x, 1);
              expect(drawn[index]![1]).toBeCloseTo(y, 1);
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('is as long on its inside and its outside as the marks of its faces say', () => {
    const flat = frameOf([memberOf('hoop', hoopLine())], vector(0, 0, 1));
    const [member] = flat.members;
    const faces = [1000, 1062].map((station, index) => {
      const { tangent } = placeAt(member!.centreline, station)!;
      const normal = rotate(tangent, vector(0, 0, 1), index === 0 ? 0.02 : -0.03);
      const cut = cutFace({ member: member!, station, normal }, sidesOf(flat));
      return jointFace(member!, cut, { side: index === 0 ? 'A' : 'B', number: 1 }, context);
    });
    const [a, b] = faces;
    expect(a!.marks.from).toBe(b!.marks.from);
    expect(a!.marks.towards).toBe(b!.marks.towards);
    const sense = a!.marks.towards === 'finish' ? 1 : -1;
    const marked = [0, 2].map(
      (at) => sense * (b!.marks.generators[at]!.distance.value - a!.marks.generators[at]!.distance.value),
    );
    const [scrap] = scrapsOf([jointOf('hoop', a!, b!)], flat);
    const drawn = scrapOutline(scrap!, PROJECTIONS.top, DIAMETER)
      .edges.slice(0, 2)
      .map((edge) =>
        edge.slice(1).reduce((sum, [x, y], index) => sum + Math.hypot(x - edge[index]![0], y - edge[index]![1]), 0),
      );
    // outlines are rounded to a hundredth, and chords cut a rolled arc short by less
    expect(drawn.toSorted()).toEqual(marked.toSorted().map((length) => expect.closeTo(length, 1) as number));
    expect(Math.abs(marked[0]! - marked[1]!)).toBeGreaterThan(1);
  });

  it('is a circle where the tube is seen from its end', () => {
    const upright = frameOf([memberOf('hoop', hoopLine({ right: vector(1, 0, 0), up: vector(0, 0, 1) }))], null);
    const [scrap] = scrapsOf([jointOf('hoop', faceAt(100), faceAt(160))], upright);
    const { edges } = scrapOutline(scrap!, PROJECTIONS.top, DIAMETER);
    expect(edges).toHaveLength(2);
    for (const [x, y] of edges.flat()) expect(Math.hypot(x, y)).toBeCloseTo(DIAMETER / 2, 1);
  });

  it('is nothing where nothing is cut out', () => {
    expect(scrapsOf([jointOf('hoop', faceAt(300), faceAt(300))], frame)).toEqual([]);
    expect(scrapsOf([], frame)).toEqual([]);
  });
});
