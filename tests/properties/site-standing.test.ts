import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Site } from '../../server/job/site.ts';
import type { Slope, Standing } from '../../server/job/standing.ts';
import {
  composed,
  inverted,
  moved,
  turnAbout,
  turned,
  turnOf,
  type RigidMotion,
} from '../../server/solver/geometry/rigid-motion.ts';
import {
  add,
  cross,
  dot,
  length,
  ORIGIN,
  rotate,
  scale,
  subtract,
  unit,
  type Vector3,
} from '../../server/solver/geometry/vector.ts';
import type { LaidFrame } from '../../server/solver/site/laid-site.ts';
import { turnToTwo } from '../../server/solver/site/standing/least-turn.ts';
import { leastTurnApart, type Rise } from '../../server/solver/site/standing/least-turn-apart.ts';
import { turnTo } from '../../server/solver/site/standing/turn-to.ts';
import { place, sourceOf, stand, UPRIGHT } from '../solver/site/standing-site.ts';

const RUNS = { numRuns: 150, seed: 24 };
const DEGREE = Math.PI / 180;

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const vector = fc
  .record({ x: between(-1, 1), y: between(-1, 1), z: between(-1, 1) })
  .filter((one) => length(one) > 0.2);
const direction = vector.map((one) => unit(one)!);
/** A structure that lies up to some 15° out of level. */
const lying = fc.record({ x: between(-0.2, 0.2), y: between(-0.2, 0.2) }).map(({ x, y }) => unit({ x, y, z: 1 })!);
const slope = (angle: number) =>
  fc.record({
    along: vector,
    angle: between(-angle, angle),
    to: fc.constantFrom('level' as const, 'structure' as const),
  });
const placing = fc
  .record({ x: direction, y: direction, origin: vector })
  .filter(({ x, y }) => length(cross(x, y)) > 0.1)
  .map(({ x, y, origin }): Site['placing'] => ({ by: 'axes', origin: scale(origin, 900), x, y }));

const HINGE = { from: place('start'), to: place('finish') };
const standing = (change: Partial<Standing>): Standing => ({
  hinge: null,
  slopes: [],
  height: null,
  swing: null,
  ...change,
});
const uprightOf = ({ to }: Pick<Slope, 'to'>, up: Vector3): Vector3 => (to === 'level' ? up : UPRIGHT);

/** The slope as a person would find it [degrees]: of two points of the frame, the rise over their distance. */
function measured({ motion }: LaidFrame, { along, to }: Pick<Slope, 'along' | 'to'>, up: Vector3): number {
  const way = subtract(
    moved(motion, add({ x: 37, y: -11, z: 5 }, scale(along, 800))),
    moved(motion, { x: 37, y: -11, z: 5 }),
  );
  return Math.asin(dot(way, uprightOf({ to }, up)) / length(way)) / DEGREE;
}

/** The middle of the hoop's first corner. */
function cornerOf({ lines }: LaidFrame): Vector3 {
  const arc = lines[0]!.centreline.pieces[1]!;
  if (arc.kind !== 'arc') throw new Error('a hoop has a corner after its first leg');
  const centre = add(arc.start, scale(cross(arc.normal, arc.direction), arc.radius));
  return add(centre, rotate(subtract(arc.start, centre), arc.normal, arc.angle / 2));
}

/** The turn of a frame from how it was placed. */
const turnFrom = (placed: LaidFrame, stood: LaidFrame): RigidMotion => composed(stood.motion, inverted(placed.motion));

describe('a frame on a hinge', () => {
  it('comes to the slope that is asked for, its hinge where it was, by the least turn that does', () => {
    let reached = 0;
    fc.assert(
      fc.property(placing, lying, slope(60), (by, up, asked) => {
        const placed = stand(sourceOf({ placing: by, standing: standing({ hinge: HINGE }) }), { up }).frame!;
        const source = sourceOf({ placing: by, standing: standing({ hinge: HINGE, slopes: [asked] }) });
        const { frame, findings } = stand(source, { up });
        const { at, axis } = placed.hinge!;
        const before = turned(placed.motion, unit(asked.along)!);
        const rises = (angle: number) => dot(rotate(before, axis, angle), uprightOf(asked, up));
        const sine = Math.sin(asked.angle * DEGREE);
        if (findings.some(({ code }) => code === 'slope-not-reached')) {
          for (let degree = 0; degree < 360; degree += 1)
            expect((rises(degree * DEGREE) - sine) * (rises(0) - sine)).toBeGreaterThan(0);
          expect(frame!.turn).toBe(0);
          return;
        }
        reached += 1;
        expect(measured(frame!, asked, up)).toBeCloseTo(asked.angle, 9);
        for (const along of [-400, 0, 700]) {
          const point = moved(inverted(placed.motion), add(at, scale(axis, along)));
          expect(length(subtract(moved(frame!.motion, point), moved(placed.motion, point)))).toBeLessThan(1e-9);
        }
        // nothing nearer does: up to there the slope is not passed, except where both ways are as near
        if (findings.length > 0 || Math.abs(rises(0) - sine) < 1e-9) return;
        const side = Math.sign(rises(0) - sine);
        for (let share = -0.98; share < 0.99; share += 0.04) {
          expect(Math.sign(rises(share * frame!.turn) - sine)).toBe(side);
        }
      }),
      RUNS,
    );
    expect(reached).toBeGreaterThan(50);
  });

  it('lifts a place to the height that is asked for', () => {
    fc.assert(
      fc.property(placing, lying, between(-200, 200), (by, up, value) => {
        const over = { x: 10, y: 20, z: 30 };
        const height = { at: place('corner'), over, value, to: 'level' as const };
        const bare = stand(sourceOf({ placing: by, standing: standing({ hinge: HINGE }) }), { up }).frame!;
        const { frame, findings } = stand(sourceOf({ placing: by, standing: standing({ hinge: HINGE, height }) }), {
          up,
        });
        const now = dot(subtract(cornerOf(frame!), over), up);
        if (findings.some(({ code }) => code === 'height-not-reached')) {
          const { low, high } = findings[0]!.data as { low: number; high: number };
          expect(value < low || value > high).toBe(true);
          expect(frame!.turn).toBe(0);
        } else expect(now).toBeCloseTo(value, 8);
        expect(length(subtract(frame!.hinge!.at, bare.hinge!.at))).toBe(0);
      }),
      RUNS,
    );
  });

  it('turns alike at a thousandth and at a thousand times its size', () => {
    const number = between(-100, 100);
    fc.assert(
      fc.property(number, number, number, number, (still, along, across, goal) => {
        const found = turnTo({ still, along, across }, goal, 100);
        for (const size of [1e-3, 1e3]) {
          const equation = { still: size * still, along: size * along, across: size * across };
          const scaled = turnTo(equation, size * goal, size * 100);
          if ('turn' in found) expect(scaled).toMatchObject({ turn: expect.closeTo(found.turn, 6) as number });
          else expect((scaled as typeof found).low / size).toBeCloseTo(found.low, 9);
        }
      }),
      RUNS,
    );
  });
});

describe('a frame without a hinge', () => {
  it('comes to one slope and goes on heading the same way', () => {
    fc.assert(
      fc.property(placing, lying, slope(80), (by, up, asked) => {
        const placed = stand(sourceOf({ placing: by }), { up }).frame!;
        const { frame, findings } = stand(sourceOf({ placing: by, standing: standing({ slopes: [asked] }) }), { up });
        expect(measured(frame!, asked, up)).toBeCloseTo(asked.angle, 9);
        if (findings.length > 0) return;
        const upright = uprightOf(asked, up);
        const heading = (of: LaidFrame) => unit(cross(upright, turned(of.motion, asked.along)))!;
        expect(dot(heading(placed), heading(frame!))).toBeCloseTo(1, 9);
        // the slope changes by no more than the turn: the least turn is the change of the slope
        const change = Math.abs(asked.angle - measured(placed, asked, up));
        expect(frame!.turn / DEGREE).toBeCloseTo(change, 8);
      }),
      RUNS,
    );
  });

  it('comes to two slopes and a height at once, turning less than any other turn that does', () => {
    let solved = 0;
    fc.assert(
      fc.property(placing, lying, slope(35), slope(35), between(-500, 500), (by, up, one, two, value) => {
        const height = { at: place('finish'), over: { x: 1, y: 2, z: 3 }, value, to: 'structure' as const };
        const placed = stand(sourceOf({ placing: by }), { up }).frame!;
        const source = sourceOf({ placing: by, standing: standing({ slopes: [one, two], height }) });
        const { frame, findings } = stand(source, { up });
        if (findings.some(({ code }) => code === 'slopes-at-odds')) return;
        solved += 1;
        expect(measured(frame!, one, up)).toBeCloseTo(one.angle, 9);
        expect(measured(frame!, two, up)).toBeCloseTo(two.angle, 9);
        const finish = frame!.lines[0]!.centreline.pieces.at(-1)!;
        expect(add(finish.start, scale(finish.direction, finish.length)).z - 3).toBeCloseTo(value, 8);
        const turn = turnOf(turnFrom(placed, frame!));
        expect(length(turn)).toBeCloseTo(frame!.turn, 7);
        // no part of the turn runs along the one line about which both slopes stay: to first order nothing shortens it
        const [first, second] = [one, two].map((asked) =>
          cross(unit(turned(frame!.motion, asked.along))!, uprightOf(asked, up)),
        );
        const keeps = cross(first!, second!);
        if (length(keeps) > 0.05) expect(dot(turn, unit(keeps)!)).toBeCloseTo(0, 6);
      }),
      RUNS,
    );
    expect(solved).toBeGreaterThan(30);
  });

  it('finds the same turn for two uprights that are one as in closed form, and one near it for uprights near each other', () => {
    const rise = fc.record({ along: direction, sine: between(-0.5, 0.5) });
    let compared = 0;
    fc.assert(
      fc.property(rise, rise, lying, (one, two, up) => {
        const rises: [Rise, Rise] = [
          { ...one, up },
          { ...two, up },
        ];
        const closed = turnToTwo(...rises);
        fc.pre(closed !== undefined && !closed.eitherWay && length(closed.turn) < 1.2);
        // not where the slopes can only just be had: there the root is a double one
        const normal = unit(cross(one.along, two.along))!;
        const upright = rotate(up, unit(closed.turn) ?? UPRIGHT, -length(closed.turn));
        fc.pre(Math.abs(dot(upright, normal)) > 0.1);
        compared += 1;
        const near = add(closed.turn, { x: 0.05, y: -0.04, z: 0.06 });
        const solved = leastTurnApart(rises[0], rises[1], near);
        expect(length(subtract(solved!, closed.turn))).toBeLessThan(1e-9);
        const other = unit(add(up, { x: 1e-4, y: 0, z: 0 }))!;
        const apart = turnToTwo(rises[0], { ...rises[1], up: other });
        expect(length(subtract(apart!.turn, closed.turn))).toBeLessThan(0.02);
      }),
      RUNS,
    );
    expect(compared).toBeGreaterThan(40);
  });

  it('against two uprights turns less than any other turn found by looking all round', () => {
    const rise = fc.record({ along: direction, sine: between(-0.4, 0.4) });
    fc.assert(
      fc.property(rise, rise, lying, (one, two, up) => {
        const rises: [Rise, Rise] = [
          { ...one, up },
          { ...two, up: UPRIGHT },
        ];
        const found = turnToTwo(...rises);
        fc.pre(found !== undefined && !found.eitherWay);
        const least = Math.min(...allRound(...rises));
        // steps of 1° round the circle find it to their square
        expect(length(found.turn)).toBeLessThan(least + 1e-3);
      }),
      { numRuns: 60, seed: 3 },
    );
  });
});

/** Turns that meet both slopes [rad], for the first direction all round its circle: the second then has two places. */
function allRound(one: Rise, two: Rise): number[] {
  const share = dot(one.along, two.along);
  const side = unit(cross(one.along, two.along))!;
  const beside = unit(cross(one.up, { x: 1, y: 0.3, z: 0 }))!;
  const cosine = Math.sqrt(1 - one.sine ** 2);
  return Array.from({ length: 720 }, (_, step) => step * 0.5 * DEGREE).flatMap((angle) => {
    const first = add(scale(one.up, one.sine), scale(rotate(beside, one.up, angle), cosine));
    // e₂ on e₂ · e₁ = share and e₂ · v₂ = sine
    const across = dot(first, two.up);
    const squares = 1 - across ** 2;
    const [a, b] = [(share - across * two.sine) / squares, (two.sine - across * share) / squares];
    const flat = add(scale(first, a), scale(two.up, b));
    const left = 1 - dot(flat, flat);
    if (left < 0) return [];
    const normal = unit(cross(first, two.up))!;
    return [1, -1].map((sign) => {
      const second = add(flat, scale(normal, sign * Math.sqrt(left)));
      const third = unit(cross(first, second))!;
      const row = (axis: 'x' | 'y' | 'z'): Vector3 =>
        [
          [first, one.along],
          [cross(third, first), cross(side, one.along)],
          [third, side],
        ].reduce((sum, [to, from]) => add(sum, scale(from!, to![axis])), ORIGIN);
      return length(turnOf({ x: row('x'), y: row('y'), z: row('z'), shift: ORIGIN }));
    });
  });
}

describe('a frame placed by points', () => {
  it('lies where it was moved to, whatever the motion', () => {
    fc.assert(
      fc.property(vector, vector, (turn, shift) => {
        const motion = turnAbout(ORIGIN, scale(turn, 2), scale(shift, 2000));
        const pairs = (['start', 'corner', 'finish'] as const).map((spot) => ({ at: place(spot), point: spot }));
        const source = sourceOf({ placing: { by: 'points', pairs } });
        const unmoved = stand(sourceOf()).frame!;
        const { pieces } = unmoved.lines[0]!.centreline;
        const last = pieces.at(-1)!;
        const points = {
          start: moved(motion, pieces[0]!.start),
          corner: moved(motion, cornerOf(unmoved)),
          finish: moved(motion, add(last.start, scale(last.direction, last.length))),
        };
        const { frame, findings } = stand(source, { points });
        expect(findings).toEqual([]);
        for (const misfit of frame!.misfits) expect(misfit).toBeLessThan(1e-8);
        const probe = { x: 100, y: -200, z: 300 };
        expect(length(subtract(moved(frame!.motion, probe), moved(motion, probe)))).toBeLessThan(1e-8);
      }),
      RUNS,
    );
  });
});
