import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Way, WayKey } from '../../server/plan/correction.ts';
import type { PlanPiece } from '../../server/plan/frame.ts';
import type { FlatPoint } from '../../server/plan/view.ts';
import { placeAt, type Centreline } from '../../server/solver/geometry/centreline.ts';
import { planPieces } from '../../server/solver/geometry/plan-pieces.ts';
import { sliceCentreline } from '../../server/solver/geometry/slice.ts';
import { add, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { misfitPicture } from '../../server/solver/views/misfit-picture.ts';
import { PROJECTIONS } from '../../server/solver/views/projection.ts';
import {
  bend,
  faceAt,
  FLAT,
  frameOf,
  hoopLine,
  jointOf,
  laidIn,
  memberOf,
  straight,
  vector,
  wayOf,
} from './made-up-ways.ts';

const Z = vector(0, 0, 1);
const wanted = frameOf([memberOf('hoop', hoopLine())], Z);
const line = wanted.members[0]!.centreline;
const FACTORS = [1, 2, 5, 10, 20, 50, 100];
const SIZE = sizeOfHoop();

const shiftPieces = (pieces: readonly PlanPiece[], by: Vector3): PlanPiece[] =>
  pieces.map((piece) =>
    piece.kind === 'straight'
      ? { ...piece, from: add(piece.from, by), to: add(piece.to, by) }
      : { ...piece, from: add(piece.from, by), to: add(piece.to, by), centre: add(piece.centre, by) },
  );
const shifted = (by: Vector3, of: Centreline = line, key: WayKey = 'splice-fewest', name = 'hoop'): Way =>
  wayOf(key, { members: [{ name, pieces: shiftPieces(planPieces(of), by) }] });

const apart = (a: FlatPoint, b: FlatPoint): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
/** Distance of a point from a drawn line. */
const fromLine = (at: FlatPoint, points: readonly FlatPoint[]): number =>
  Math.min(
    ...points.slice(1).map((to, index) => {
      const from = points[index]!;
      const [x, y] = [to[0] - from[0], to[1] - from[1]];
      const share = Math.max(0, Math.min(1, ((at[0] - from[0]) * x + (at[1] - from[1]) * y) / (x * x + y * y || 1)));
      return apart(at, [from[0] + share * x, from[1] + share * y]);
    }),
  );

describe('the ways over the wanted frame', () => {
  it('lie on it where nothing is left over, however it is cut', () => {
    const whole = planPieces(line);
    const cut = [
      sliceCentreline(line, 0, 700),
      sliceCentreline(line, 700, 1234),
      sliceCentreline(line, 1234, line.length),
    ];
    const ways = [
      wayOf('leave', { members: [{ name: 'hoop', pieces: whole }] }),
      wayOf('splice-fewest', { members: [{ name: 'hoop', pieces: cut.flatMap(planPieces) }] }),
    ];
    const picture = misfitPicture(wanted, ways)!;
    expect(picture.enlarged).toBe(100);
    for (const way of picture.ways) {
      for (const at of way.lines[0]!) expect(fromLine(at, picture.wanted[0]!)).toBeLessThan(1);
      expect(apart(way.lines[0]![0]!, picture.wanted[0]![0]!)).toBeLessThan(0.02);
      expect(apart(way.lines[0]!.at(-1)!, picture.wanted[0]!.at(-1)!)).toBeLessThan(0.02);
    }
  });

  it('stand off it by what they miss, as many times as is said, up to 12 % of its size', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 150, noNaN: true }),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        (misfit, turn) => {
          const by = vector(misfit * Math.cos(turn), misfit * Math.sin(turn), 0);
          const { enlarged, wanted: goal, ways } = misfitPicture(wanted, [shifted(by)])!;
          const feet = [ways[0]!.lines[0]![0]!, ways[0]!.lines[0]!.at(-1)!];
          for (const [index, foot] of feet.entries()) {
            const at = index === 0 ? goal[0]![0]! : goal[0]!.at(-1)!;
            expect(foot[0] - at[0]).toBeCloseTo(enlarged * by.x, 1);
            expect(foot[1] - at[1]).toBeCloseTo(enlarged * by.y, 1);
          }
          expect(FACTORS).toContain(enlarged);
          const next = FACTORS[FACTORS.indexOf(enlarged) + 1];
          const shown = 0.12 * SIZE;
          if (enlarged > 1) expect(enlarged * misfit).toBeLessThanOrEqual(shown + 1e-6);
          if (next !== undefined) expect(next * misfit).toBeGreaterThan(shown - 1e-6);
        },
      ),
    );
  });

  it('show the true frame where the factor is 1, and twice the distance where it is 2', () => {
    const far = shifted(vector(0, -110, 0), line, 'leave');
    const near = wayOf('splice-fewest', {
      members: [{ name: 'hoop', pieces: planPieces(hoopLine(FLAT, { crown: 738 })) }],
    });
    const alone = misfitPicture(wanted, [near])!;
    const together = misfitPicture(wanted, [far, near])!;
    expect([alone.enlarged, together.enlarged]).toEqual([1, 1]);
    const own = hoopLine(FLAT, { crown: 738 });
    const truth = Array.from({ length: 2000 }, (_, index): FlatPoint => {
      const { point } = placeAt(own, (own.length * index) / 1999)!;
      return [point.x, point.y];
    });
    for (const at of together.ways[1]!.lines[0]!) expect(fromLine(at, truth)).toBeLessThan(0.1);
    const [half, twice] = [5.5, 11].map((by) => misfitPicture(wanted, [shifted(vector(by, 0, 0))])!);
    expect([half!.enlarged, twice!.enlarged]).toEqual([20, 10]);
    expect(half!.ways[0]!.lines).toEqual(twice!.ways[0]!.lines);
  });

  it('hold a crown that was cut shorter against the whole wanted crown: its corners keep to the corners', () => {
    const shorter = hoopLine(FLAT, { crown: 770 });
    const way = wayOf('splice-fewest', {
      members: [{ name: 'hoop', pieces: planPieces(shorter) }],
      joints: [jointOf('hoop', faceAt(1000), faceAt(1030), { point: placeAt(shorter, shorter.length / 2)!.point })],
    });
    const picture = misfitPicture(wanted, [way])!;
    expect(picture.enlarged).toBe(2);
    const cornerOf = (of: Centreline): FlatPoint => {
      const [first, second] = of.pieces;
      const { point } = placeAt(of, first!.length + second!.length / 2)!;
      return [point.x, point.y];
    };
    const [own, goal] = [cornerOf(shorter), cornerOf(line)];
    const corner: FlatPoint = [goal[0] + 2 * (own[0] - goal[0]), goal[1] + 2 * (own[1] - goal[1])];
    expect(Math.min(...picture.ways[0]!.lines[0]!.map((at) => apart(at, corner)))).toBeLessThan(0.02);
    expect(fromLine(picture.ways[0]!.joints[0]!, picture.ways[0]!.lines[0]!)).toBeLessThan(0.5);
    // the middle of the one belongs to the middle of the other
    const [mine, theirs] = [shorter, line].map((of) => placeAt(of, of.length / 2)!.point);
    expect(picture.ways[0]!.joints[0]![0]).toBeCloseTo(theirs!.x + 2 * (mine!.x - theirs!.x), 1);
  });

  it.each([
    ['on a straight', 950],
    ['in a corner', 900],
  ])('follow a ring that begins somewhere else, %s', (_, begins) => {
    const side = [straight(200), bend(Math.PI / 2), straight(200)];
    const ring = laidIn(FLAT, [...side, ...side, ...side, ...side]);
    const frame = frameOf([memberOf('ring', ring, true)], Z);
    const begun = [sliceCentreline(ring, begins, ring.length), sliceCentreline(ring, 0, begins)].flatMap(planPieces);
    const by = vector(6, 2, 0);
    const way = wayOf('splice-closest', { members: [{ name: 'ring', pieces: shiftPieces(begun, by) }] });
    const picture = misfitPicture(frame, [way])!;
    expect(picture.enlarged).toBe(10);
    const start = placeAt(ring, begins)!.point;
    const [x, y] = picture.ways[0]!.lines[0]![0]!;
    expect(x).toBeCloseTo(start.x + 60, 1);
    expect(y).toBeCloseTo(start.y + 20, 1);
    const moved = picture.wanted[0]!.map(([left, up]): FlatPoint => [left + 60, up + 20]);
    for (const at of picture.ways[0]!.lines[0]!) expect(fromLine(at, moved)).toBeLessThan(1);
  });

  it('show a member that lost a corner by what is nearest', () => {
    const bar = laidIn(FLAT, [straight(600)], vector(5, 0, 0));
    const way = wayOf('splice-own', { members: [{ name: 'hoop', pieces: planPieces(bar) }] });
    const { enlarged, ways } = misfitPicture(wanted, [way])!;
    for (const [x] of ways[0]!.lines[0]!) expect(x).toBeCloseTo(5 * enlarged, 1);
  });

  it('are seen along the axis that shows most of what they miss, in a frame in space', () => {
    const bar = laidIn({ right: vector(0, 1, 0), up: Z }, [straight(500)], vector(300, 0, 0));
    const frame = frameOf([memberOf('hoop', line), memberOf('bar', bar)], null);
    const seen = (by: Vector3) => misfitPicture(frame, [shifted(by)])!.wanted;
    const along = (key: 'top' | 'face' | 'side') =>
      misfitPicture(frame, [shifted(vector(1, 1, 1))], PROJECTIONS[key])!.wanted;
    expect(seen(vector(4, 3, 0.1))).toEqual(along('top'));
    expect(seen(vector(4, 0.1, 3))).toEqual(along('face'));
    expect(seen(vector(0.1, 4, 3))).toEqual(along('side'));
  });

  it('are those that are possible, within bounds that hold them all, and nothing where there are none', () => {
    const out = { ...shifted(vector(500, 0, 0)), possible: false };
    const { ways, bounds, wanted: goal } = misfitPicture(wanted, [out, shifted(vector(0, 9, 0), line, 'rebend')])!;
    expect(ways.map(({ key }) => key)).toEqual(['rebend']);
    const points = [...goal, ...ways.flatMap(({ lines }) => lines)].flat();
    expect(bounds).toEqual([
      Math.min(...points.map(([x]) => x)),
      Math.min(...points.map(([, y]) => y)),
      Math.max(...points.map(([x]) => x)),
      Math.max(...points.map(([, y]) => y)),
    ]);
    expect(misfitPicture(wanted, [out])).toBeNull();
    expect(misfitPicture(wanted, [])).toBeNull();
  });
});

/** Longest side of the box round the wanted hoop [mm]. */
function sizeOfHoop(): number {
  const points = Array.from({ length: 4001 }, (_, index) => placeAt(line, (line.length * index) / 4000)!.point);
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
}
