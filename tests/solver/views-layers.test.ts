import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FlatPoint, View } from '../../server/plan/view.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { placeAt } from '../../server/solver/geometry/centreline.ts';
import { planPieces } from '../../server/solver/geometry/plan-pieces.ts';
import { cross, dot, unit, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { planViews, type Drawn } from '../../server/solver/views/plan-views.ts';
import { facing, project, PROJECTIONS } from '../../server/solver/views/projection.ts';
import { chamberOf, gasSpot, weldOf } from './made-up-chambers.ts';
import {
  FLAT,
  faceAt,
  frameOf,
  hoopLine,
  jointOf,
  laidIn,
  memberOf,
  straight,
  vector,
  wayOf,
  type Plane,
} from './made-up-ways.ts';

const UPRIGHT: Plane = { right: vector(0, 1, 0), up: vector(0, 0, 1) };

/** A hoop lying down and a bar standing beside it: a frame in space. */
const inSpace = (crown: number): FrameGeometry =>
  frameOf(
    [memberOf('hoop', hoopLine(FLAT, { crown })), memberOf('bar', laidIn(UPRIGHT, [straight(500)], vector(300, 0, 0)))],
    null,
  );
const inPlane = (crown: number, plane: Plane = FLAT): FrameGeometry =>
  frameOf([memberOf('hoop', hoopLine(plane, { crown }))], cross(plane.right, plane.up));

/** A frame 62 too wide that a slug out of its crown puts right, with a feed at its datum end. */
function spliced(wanted: FrameGeometry, cameBack: FrameGeometry, given: Partial<Drawn> = {}): Drawn {
  const middle = cameBack.members[0]!.centreline.length / 2;
  const point = placeAt(wanted.members[0]!.centreline, middle - 31)!.point;
  const way = wayOf('splice-fewest', {
    joints: [jointOf('hoop', faceAt(middle - 31), faceAt(middle + 31), { number: 7, point })],
    members: wanted.members.map(({ name, centreline }) => ({ name, pieces: planPieces(centreline) })),
  });
  return {
    wanted,
    cameBack,
    correction: {
      ways: [way, wayOf('leave'), { ...way, key: 'new-frame', joints: [] }],
      chosen: 'splice-fewest',
      differences: [],
    },
    purge: { chambers: [chamberOf({ feed: gasSpot('end', 'hoop', 0) })] },
    welding: { welds: [weldOf('7', { joint: 7, member: 'hoop', station: middle })] },
    fromFinish: new Set(),
    outsideDiameter: 40,
    ...given,
  };
}

const layer = (view: View, role: View['layers'][number]['role']) => view.layers.find((one) => one.role === role);
const roles = (view: View) => view.layers.map(({ role }) => role);
const close = (points: readonly FlatPoint[]) =>
  points.map(([x, y]) => [expect.closeTo(x, 1) as number, expect.closeTo(y, 1) as number]);

describe('the views of a correction', () => {
  const views = planViews(spliced(inSpace(800), inSpace(862)));

  it('show every frame, what is cut out, its joints and its gas in each view of a frame in space', () => {
    expect(views.map(({ key }) => key)).toEqual(['top', 'face', 'side', 'pictorial']);
    for (const view of views) {
      expect(roles(view)).toEqual(['wanted', 'came-back', 'corrected', 'scrap']);
      const { at } = view.marks.find(({ kind }) => kind === 'joint')!;
      const { joints } = spliced(inSpace(800), inSpace(862)).correction!.ways[0]!;
      expect([at]).toEqual(close([project(PROJECTIONS[view.key], joints[0]!.point)]));
      const feed = view.marks.find(({ kind }) => kind === 'feed')!;
      expect(feed).toMatchObject({ layer: 'came-back', label: '1' });
    }
  });

  it('have the sizes of both frames where a view is square to an axis, each with its own value', () => {
    for (const view of views.filter(({ key }) => key !== 'pictorial')) {
      const widths = view.dimensions.filter(({ key }) => key === 'width-at-feet');
      if (view.key === 'side') expect(widths.length).toBeLessThanOrEqual(2);
      else expect(widths.map(({ layer: of }) => of)).toEqual(['wanted', 'came-back']);
      const wide = ({ layer: of }: { layer: string }) => inSpace(of === 'wanted' ? 800 : 862);
      for (const width of widths) {
        const { from, to } = wide(width).checks[0]!;
        expect(width.value).toBeCloseTo(Math.hypot(to.point.x - from.point.x, to.point.y - from.point.y) + 40, 9);
      }
    }
    expect(views.at(-1)!.dimensions).toEqual([]);
  });

  it('draw the frame that came back where it is laid, with how far along it each point stands', () => {
    const cameBack = inSpace(862);
    for (const view of views) {
      const drawn = layer(view, 'came-back')!.members;
      for (const [index, { centreline, stations }] of drawn.entries()) {
        const line = cameBack.members[index]!.centreline;
        expect(stations).toHaveLength(centreline.length);
        expect(centreline).toEqual(
          close(stations!.map((at) => project(PROJECTIONS[view.key], placeAt(line, at)!.point))),
        );
      }
      expect(layer(view, 'wanted')!.members.every((member) => member.stations === undefined)).toBe(true);
    }
  });

  it('show no corrected frame where it is left, and purge the new one where one is made', () => {
    const drawn = spliced(inSpace(800), inSpace(862));
    const left = planViews({ ...drawn, correction: { ...drawn.correction!, chosen: 'leave' } });
    for (const view of left) expect(roles(view)).toEqual(['wanted', 'came-back']);
    const fresh = planViews({ ...drawn, correction: { ...drawn.correction!, chosen: 'new-frame' } });
    for (const view of fresh) {
      expect(roles(view)).toEqual(['wanted', 'came-back', 'corrected']);
      expect(view.marks.find(({ kind }) => kind === 'feed')!.layer).toBe('wanted');
    }
    const never = planViews({ ...drawn, cameBack: null, correction: null });
    for (const view of never) expect(roles(view)).toEqual(['wanted']);
  });

  it('hold everything that is drawn in their bounds', () => {
    for (const { bounds, layers } of views) {
      const points = layers.flatMap(({ members }) => members.flatMap(({ edges }) => edges.flat()));
      for (const [x, y] of points) {
        expect(x).toBeGreaterThanOrEqual(bounds[0]);
        expect(y).toBeGreaterThanOrEqual(bounds[1]);
        expect(x).toBeLessThanOrEqual(bounds[2]);
        expect(y).toBeLessThanOrEqual(bounds[3]);
      }
    }
  });
});

it('a flat frame looks the same square to its plane, whichever plane that is', () => {
  const flat = planViews(spliced(inPlane(800), inPlane(862)))[0]!;
  const share = fc.double({ min: -1, max: 1, noNaN: true });
  fc.assert(
    fc.property(fc.tuple(share, share, share), ([x, y, z]) => {
      const normal: Vector3 | undefined = unit(vector(x, y, z));
      fc.pre(normal !== undefined && Math.hypot(x, y, z) > 0.1);
      const plane = facing(normal);
      expect(dot(cross(plane.right, plane.up), normal)).toBeCloseTo(Math.abs(normal.z) > 1 - 1e-9 ? normal.z : 1, 6);
      fc.pre(normal.z > -1 + 1e-6);
      const view = planViews(spliced(inPlane(800, plane), inPlane(862, plane)))[0]!;
      expect(view.key).toBe('face');
      for (const [index, { role, members }] of view.layers.entries()) {
        const other = flat.layers[index]!;
        expect(role).toBe(other.role);
        expect(members.flatMap(({ edges }) => edges.flat())).toEqual(
          close(other.members.flatMap(({ edges }) => edges.flat())),
        );
      }
      expect(view.dimensions.flatMap(({ line }) => line)).toEqual(close(flat.dimensions.flatMap(({ line }) => line)));
    }),
    { numRuns: 40 },
  );
});
