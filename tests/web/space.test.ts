import fc from 'fast-check';
import { Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Frame } from '../../server/job/frame.ts';
import type { MemberPlan } from '../../server/plan/frame.ts';
import { plan } from '../../server/solver/plan.ts';
import { MemberCurve } from '../../web/components/space/member-curve.ts';
import { SIDES, tubeGeometry } from '../../web/components/space/tube-geometry.ts';
import { focusedMember, spaceMarks } from '../../web/state/space-marks.ts';
import { Turning, wheeled } from '../../web/state/turning.ts';
import { uncrowded, type Label } from '../../web/state/uncrowded.ts';
import { AS_AT_FIRST, axesOf, heldBall, nearer, scaleOf, stepped, turned } from '../../web/state/viewpoint.ts';

const SHAPES: readonly Frame['shape'][] = ['hoop', 'ring', 'offset', 'straight', 'run', 'members'];
const size = { width: 400, height: 300 };

function membersOf(shape: Frame['shape']): readonly MemberPlan[] {
  const frame = plan(newJob(shape)).frame;
  if (frame === null) throw new Error('There is no frame.');
  return frame.members;
}

const far = (point: Vector3, { x, y, z }: { x: number; y: number; z: number }): number =>
  point.distanceTo(new Vector3(x, y, z));

describe.each(SHAPES)('the centreline in space: %s', (shape) => {
  it('passes through both ends of every piece of the plan, as long as the plan says', () => {
    for (const { pieces } of membersOf(shape)) {
      const curve = new MemberCurve(pieces);
      let station = 0;
      for (const piece of pieces) {
        expect(far(curve.getPoint((station + 1e-9) / curve.length), piece.from)).toBeLessThan(1e-6);
        station += piece.length;
        expect(far(curve.getPoint((station - 1e-9) / curve.length), piece.to)).toBeLessThan(1e-6);
      }
      expect(curve.getLength()).toBeCloseTo(station, 9);
    }
  });

  it('lies on its arcs, runs at one speed, and has its tangents along itself', () => {
    for (const { pieces } of membersOf(shape)) {
      const curve = new MemberCurve(pieces);
      let start = 0;
      for (const piece of pieces) {
        for (const share of [0.1, 0.37, 0.9]) {
          const station = start + share * piece.length;
          const [here, next] = [
            curve.getPointAt(station / curve.length),
            curve.getPointAt((station + 0.01) / curve.length),
          ];
          if (piece.kind === 'arc') expect(far(here, piece.centre)).toBeCloseTo(piece.radius, 6);
          expect(here.distanceTo(next)).toBeCloseTo(0.01, 6);
          const along = next.sub(here).normalize();
          expect(along.dot(curve.getTangentAt(station / curve.length))).toBeGreaterThan(1 - 1e-6);
        }
        start += piece.length;
      }
    }
  });

  it('has a skin at half of the diameter all round, that does not twist and faces outwards', () => {
    for (const { pieces } of membersOf(shape)) {
      const curve = new MemberCurve(pieces);
      const skin = tubeGeometry(curve, 19);
      const shares = curve.samples();
      const [places, normals] = [skin.getAttribute('position'), skin.getAttribute('normal')];
      expect(places.count).toBe(shares.length * (SIDES + 1));
      for (const [ring, share] of shares.entries()) {
        const middle = curve.getPoint(share);
        for (let side = 0; side <= SIDES; side += 1) {
          const at = ring * (SIDES + 1) + side;
          const out = new Vector3().fromBufferAttribute(places, at).sub(middle);
          expect(Math.abs(out.length() - 19)).toBeLessThan(0.01);
          expect(out.normalize().dot(new Vector3().fromBufferAttribute(normals, at))).toBeGreaterThan(0.999);
          if (ring === 0) continue;
          const before = new Vector3().fromBufferAttribute(normals, at - SIDES - 1);
          expect(out.dot(before)).toBeGreaterThan(Math.cos((8 * Math.PI) / 180));
        }
      }
      const [a, b, c] = [0, 1, 2].map((corner) => new Vector3().fromBufferAttribute(places, skin.index!.getX(corner)));
      const facing = b!.clone().sub(a!).cross(c!.clone().sub(a!));
      expect(facing.dot(new Vector3().fromBufferAttribute(normals, skin.index!.getX(0)))).toBeGreaterThan(0);
    }
  });

  it('is drawn by chords that lie within a tenth of a millimetre of it', () => {
    for (const { pieces } of membersOf(shape)) {
      const curve = new MemberCurve(pieces);
      const shares = curve.samples();
      for (const [at, share] of shares.slice(1).entries()) {
        const before = shares[at] ?? 0;
        const middle = curve.getPoint(before).lerp(curve.getPoint(share), 0.5);
        expect(middle.distanceTo(curve.getPoint((before + share) / 2))).toBeLessThan(0.1001);
      }
    }
  });

  it('has a bend for every row of the bend table', () => {
    for (const { pieces, bends } of membersOf(shape))
      expect(new MemberCurve(pieces).bends()).toHaveLength(bends.length);
  });
});

describe('the viewpoint', () => {
  it('has axes square to each other, right-handed, at any turn', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 359 }), fc.integer({ min: -90, max: 90 }), (turn, tilt) => {
        const { right, up, out } = axesOf({ ...AS_AT_FIRST, turn, tilt });
        const [r, u, o] = [right, up, out].map(({ x, y, z }) => new Vector3(x, y, z));
        expect(r!.clone().cross(u!).distanceTo(o!)).toBeLessThan(1e-12);
        expect(Math.abs(r!.dot(u!))).toBeLessThan(1e-12);
      }),
    );
  });

  it('begins as the pictorial view of the plan', () => {
    const { right, up } = axesOf(AS_AT_FIRST);
    expect([right.x, right.y, right.z]).toEqual(
      [0.5 ** 0.5, -(0.5 ** 0.5), 0].map((value): unknown => expect.closeTo(value, 12)),
    );
    expect([up.x, up.y, up.z]).toEqual([1, 1, 2].map((value): unknown => expect.closeTo(value / Math.sqrt(6), 12)));
  });

  it('comes back from every step, and stops overhead', () => {
    for (const [there, back] of [
      ['left', 'right'],
      ['up', 'down'],
      ['nearer', 'farther'],
    ] as const) {
      const returned = stepped(stepped(AS_AT_FIRST, there), back);
      expect([returned.turn, returned.tilt, returned.nearness]).toEqual(
        [AS_AT_FIRST.turn, AS_AT_FIRST.tilt, AS_AT_FIRST.nearness].map((value): unknown => expect.closeTo(value, 9)),
      );
    }
    expect(turned(AS_AT_FIRST, 0, -500).tilt).toBe(90);
    expect(stepped(nearer(turned(AS_AT_FIRST, 40, 20), 3), 'reset')).toBe(AS_AT_FIRST);
  });

  it('leaves what lies under the wheel where it is', () => {
    const ball = { middle: { x: 0, y: 0, z: 0 }, radius: 500 };
    const from = { ...AS_AT_FIRST, aside: { right: 0.2, up: -0.1 } };
    const to = wheeled(from, -300, [310, 80], size);
    const under = (view: typeof from) => [
      (310 - size.width / 2 - view.aside.right * size.height) / scaleOf(ball, view, size),
      (size.height / 2 - 80 - view.aside.up * size.height) / scaleOf(ball, view, size),
    ];
    expect(to.nearness).toBeGreaterThan(1.5);
    expect(under(to)).toEqual(under(from).map((value): unknown => expect.closeTo(value, 6)));
  });

  it('keeps its ball while a frame changes a little, and takes another where it does not fit', () => {
    const before = { middle: { x: 0, y: 0, z: 0 }, radius: 100 };
    const within = { middle: { x: 20, y: 0, z: 0 }, radius: 75 };
    expect(heldBall(before, within)).toBe(before);
    for (const other of [
      { ...within, radius: 85 },
      { ...before, radius: 49 },
    ])
      expect(heldBall(before, other)).toBe(other);
    expect(heldBall(null, within)).toBe(within);
  });
});

describe('fingers on the view', () => {
  it('turn with one, and only touch where they hold still', () => {
    const turning = new Turning();
    turning.press(1, [100, 100], false);
    expect(turning.move(1, [102, 100], AS_AT_FIRST, size)).toBe(AS_AT_FIRST);
    expect(turning.lift(1)).toBe(true);
    turning.press(1, [100, 100], false);
    const seen = turning.move(1, [175, 100], AS_AT_FIRST, size);
    expect([seen.turn, seen.tilt]).toEqual([AS_AT_FIRST.turn - 45, AS_AT_FIRST.tilt]);
    expect(turning.lift(1)).toBe(false);
    expect(turning.move(1, [300, 300], seen, size)).toBe(seen);
  });

  it('bring nearer with two, by as much as they part', () => {
    const turning = new Turning();
    turning.press(1, [150, 150], false);
    turning.press(2, [250, 150], false);
    const apart = turning.move(2, [350, 150], turning.move(1, [150, 150], AS_AT_FIRST, size), size);
    expect([apart.nearness, apart.turn]).toEqual([expect.closeTo(2, 9), AS_AT_FIRST.turn]);
    expect([turning.lift(1), turning.lift(2)]).toEqual([false, false]);
  });

  it('move it with the shift key', () => {
    const turning = new Turning();
    turning.press(1, [0, 0], true);
    expect(turning.move(1, [30, -60], AS_AT_FIRST, size).aside).toEqual({ right: 0.1, up: 0.2 });
  });
});

describe('what is written in space', () => {
  it('are the points of a run, and those of the member that is typed in', () => {
    const run = newJob('run');
    const marks = spaceMarks(run, '/frame/points/1/y');
    expect(marks.map(({ number, focused }) => [number, focused])).toEqual(marks.map((_, at) => [at + 1, at === 1]));
    const members = newJob('members');
    expect(spaceMarks(members, '')).toEqual([]);
    if (members.frame.shape !== 'members') throw new Error('This job has no members.');
    expect(focusedMember(members, '/frame/members/0/name')).toBe(members.frame.members[0]?.name);
    expect(focusedMember(members, '/frame/shape')).toBeNull();
  });

  it('stands clear, the first of two that would lie on each other', () => {
    const label = (text: string, x: number, y: number): Label => ({ text, at: [x, y] });
    const shown = uncrowded([label('1', 0, 0), label('2', 5, 5), label('3', 5, 30), label('12', 16, 0)]);
    expect(shown.map(({ text }) => text)).toEqual(['1', '3', '12']);
    const ringed = uncrowded([{ ...label('1', 0, 0), ring: 10 }, label('2', 14, 0), label('3', 16, 0)]);
    expect(ringed.map(({ text }) => text)).toEqual(['1', '3']);
  });
});
