import { describe, expect, it } from 'vitest';
import type { FlatPoint, View } from '../../server/plan/view.ts';
import type { Weld } from '../../server/plan/welding.ts';
import type { FrameGeometry, MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { placeAt } from '../../server/solver/geometry/centreline.ts';
import { planPieces } from '../../server/solver/geometry/plan-pieces.ts';
import { scale, add } from '../../server/solver/geometry/vector.ts';
import { planViews, type Drawn } from '../../server/solver/views/plan-views.ts';
import { project } from '../../server/solver/views/projection.ts';
import { weldOf } from './made-up-chambers.ts';
import {
  faceAt,
  FLAT,
  frameOf,
  hoopLine,
  jointOf,
  laidIn,
  made,
  memberOf,
  straight,
  vector,
  wayOf,
} from './made-up-ways.ts';

const DIAMETER = 40;
const hoop = memberOf('hoop', hoopLine());
const whole = hoop.centreline.length;
/** A bar that leans on both legs: its ends stand on their axes. */
const LEAN = Math.PI / 6;
const bar: MemberGeometry = {
  ...memberOf(
    'bar',
    laidIn({ right: vector(0, 0, 1), up: vector(Math.cos(LEAN), Math.sin(LEAN), 0) }, [straight(600)]),
  ),
  start: { kind: 'saddle', onto: 'hoop', station: 0, axisAngle: Math.PI / 2 - LEAN, offset: 0 },
};
const frame = frameOf([hoop, bar], vector(0, 0, 1));

const drawn = (welds: readonly Weld[], more: Partial<Drawn> = {}): View[] =>
  planViews({
    wanted: frame,
    cameBack: null,
    correction: null,
    purge: null,
    welding: { welds: [...welds] },
    fromFinish: new Set(),
    outsideDiameter: DIAMETER,
    ...more,
  });

const joints = (view: View) => view.marks.filter(({ kind }) => kind === 'joint');
const near = ([x, y]: FlatPoint) => [expect.closeTo(x, 1) as number, expect.closeTo(y, 1) as number];

describe('the marks of the welds', () => {
  it('are there for every weld by its name, on the frame that is welded', () => {
    const at = (station: number) => ({ station, point: placeAt(hoop.centreline, station)!.point });
    const [view] = drawn([
      weldOf('S1', { kind: 'saddle', form: 'saddle', member: 'bar', onto: 'hoop' }),
      weldOf('P1', { kind: 'pad', form: 'pad', ...at(0) }),
      weldOf('P2', { kind: 'pad', form: 'pad', ...at(whole) }),
      weldOf('C1', { kind: 'closing', ...at(700) }),
    ]);
    expect(joints(view!).map(({ label, layer }) => [label, layer])).toEqual([
      ['S1', 'wanted'],
      ['P1', 'wanted'],
      ['P2', 'wanted'],
      ['C1', 'wanted'],
    ]);
    const [saddle, first, second, closing] = joints(view!);
    // where the bar comes out of the leg: half a diameter over the sine of the angle between them
    const out = DIAMETER / 2 / Math.cos(LEAN);
    expect(saddle!.at).toEqual(near([out * Math.cos(LEAN), out * Math.sin(LEAN)]));
    expect(first!.at).toEqual([0, 0]);
    for (const pad of [first, second]) expect(pad!.towards).toEqual([expect.closeTo(0, 9), expect.closeTo(-1, 9)]);
    const { x, y } = placeAt(hoop.centreline, 700)!.point;
    expect(closing!.at).toEqual(near([x, y]));
  });

  it('of a saddle stand square beside its tube, upwards, in whatever view', () => {
    const weld = weldOf('S1', { kind: 'saddle', form: 'saddle', member: 'bar', onto: 'hoop' });
    const views = drawn([weld], { wanted: { ...frame, planeNormal: null } });
    expect(views).toHaveLength(4);
    for (const view of views) {
      const [{ towards } = { towards: [0, 0] as FlatPoint }] = joints(view);
      const [x, y] = project(view, vector(Math.cos(LEAN), Math.sin(LEAN), 0));
      expect(Math.hypot(...towards)).toBeCloseTo(1, 9);
      expect(towards[0] * x + towards[1] * y).toBeCloseTo(0, 9);
      expect(towards[1] > 1e-9 || towards[0] > 0).toBe(true);
    }
  });

  it('are on the frame that came back where that is put right, cut joints where they are closed', () => {
    const cameBack = frameOf([memberOf('hoop', hoopLine(FLAT, { crown: 862 })), bar], vector(0, 0, 1));
    const line = cameBack.members[0]!.centreline;
    const point = placeAt(hoop.centreline, whole / 2)!.point;
    const [a, b] = [faceAt(line.length / 2 - 31), faceAt(line.length / 2 + 31)];
    const way = wayOf('splice-fewest', {
      joints: [jointOf('hoop', a, b, { point })],
      members: frame.members.map(({ name, centreline }) => ({ name, pieces: planPieces(centreline) })),
    });
    const foot = { member: 'hoop', station: line.length, point: placeAt(line, line.length)!.point };
    const [view] = drawn(
      [
        weldOf('1', { joint: 1, station: line.length / 2, point: placeAt(line, line.length / 2)!.point }),
        weldOf('P1', { kind: 'pad', ...foot }),
      ],
      { cameBack, correction: { ways: [way], chosen: 'splice-fewest', differences: [] } },
    );
    expect(joints(view!)).toMatchObject([
      { label: '1', layer: 'corrected', at: near([point.x, point.y]), towards: [0, 1] },
      { label: 'P1', layer: 'came-back', at: near([foot.point.x, foot.point.y]) },
    ]);
  });

  it('of a let-in piece stand at both of its ends', () => {
    const cameBack = frameOf([memberOf('hoop', hoopLine(FLAT, { crown: 700 }))], vector(0, 0, 1));
    const half = 50;
    const [from, to] = [whole / 2 - half, whole / 2 + half].map((station) => placeAt(hoop.centreline, station)!.point);
    const piece = { length: made(2 * half), cutLength: made(2 * half), radius: made(2400), angle: made(2.4, 'deg') };
    const way = wayOf('splice-closest', {
      joints: [
        jointOf('hoop', faceAt(900), faceAt(900), {
          number: 2,
          kind: 'let-in',
          letIn: { ...piece, tiltA: made(0), tiltB: made(0), templates: [] },
          // halfway between its faces, beside the rolled piece
          point: scale(add(from!, to!), 1 / 2),
        }),
      ],
      members: [{ name: 'hoop', pieces: planPieces(hoop.centreline) }],
    });
    const letIn = { kind: 'let-in' as const, joint: 2, station: 900 };
    const [view] = drawn([weldOf('2A', letIn), weldOf('2B', letIn)], {
      cameBack,
      correction: { ways: [way], chosen: 'splice-closest', differences: [] },
    });
    expect(joints(view!)).toMatchObject([
      { label: '2A', layer: 'corrected', at: near([from!.x, from!.y]) },
      { label: '2B', layer: 'corrected', at: near([to!.x, to!.y]) },
    ]);
  });

  it('are none where nothing is welded, and stay where a tube is not known', () => {
    expect(joints(drawn([])[0]!)).toEqual([]);
    expect(joints(drawn([], { welding: null })[0]!)).toEqual([]);
    const lost = weldOf('P1', { kind: 'pad', member: 'nobody', point: vector(3, 4, 0) });
    expect(joints(drawn([lost])[0]!)).toMatchObject([{ label: 'P1', at: [3, 4], towards: [0, 1] }]);
    const broken: FrameGeometry = { ...frame, members: [{ ...bar, centreline: { pieces: [], length: 0 } }] };
    const flat = drawn([weldOf('S1', { kind: 'saddle', member: 'bar' })], { wanted: broken });
    expect(joints(flat[0]!)).toMatchObject([{ label: 'S1', towards: [0, 1] }]);
  });
});
